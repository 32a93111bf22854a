package analysis

// What events and alarms weigh (common practice, no source): a barn without power is lost within hours, and an alarm
// that does not call is none. A cut in which the room stayed below the alarm line did no harm yet, and comes behind what did.
const (
	missedWeight, lateWeight, noCauseWeight = 90, 60, 45
	cutWeight, shortCutWeight               = 85, 55
	maybeCutWeight                          = 50
	leakWeight                              = 55
	lateLeastMin                            = 15
)

// eventFindings are the power cut that weighs most, of those the one with the greatest climb, with how many there were as
// sure as it, and the leaks of light.
func eventFindings(_ judgement, r *Review) (out []Finding) {
	n, worst := 0, Finding{}
	for _, e := range r.Events {
		switch e.Kind {
		case lightLeak:
			out = append(out, Finding{Code: "light_leak", About: e.Place, Weight: leakWeight, Evidence: e.Evidence, Look: e.Span, Figures: e.Figures})
		case powerCut:
			f := cutFinding(e)
			switch {
			case n > 0 && f.Code != worst.Code && e.MayBe:
				continue
			case f.Code != worst.Code:
				n, worst = 0, f
			}
			if n++; f.Weight > worst.Weight || f.Weight == worst.Weight && f.Figure("climb_k").Mid > worst.Figure("climb_k").Mid {
				worst = f
			}
		}
	}
	if n > 0 {
		worst.Figures = append([]NamedFigure{{"cuts", count(n, worst.Evidence)}}, worst.Figures...)
		out = append(out, worst)
	}
	return out
}

// cutFinding is one power cut as a finding.
func cutFinding(e Event) Finding {
	f := Finding{Code: "power_cut", Weight: cutWeight, Evidence: e.Evidence, Look: e.Span, Figures: e.Figures}
	reached := f.Figure("hours_to_alarm_h")
	switch {
	case e.MayBe:
		f.Code, f.Weight = "power_cut_may_be", maybeCutWeight
	case f.Figure("peak_c").OK && !(reached.OK && reached.Evidence == Recorded):
		f.Weight = shortCutWeight
	}
	return f
}

// alarmFindings are the calls of the barn's alarm line, the house's where nobody said its own, that nobody logged although a log was kept, those logged late,
// and those logged without a cause.
func alarmFindings(_ judgement, r *Review) (out []Finding) {
	if len(r.Alarms) == 0 {
		return nil
	}
	row := r.Alarms[0]
	said := Assumed
	if row.Line.Own {
		said = YourSetting
	}
	add := func(code string, weight float64, figures ...NamedFigure) {
		line := []NamedFigure{{"limit_c", exactly(row.Line.LimitC, said)}, {"delay_min", exactly(row.Line.DelayMin, said)}}
		out = append(out, Finding{Code: code, Weight: weight, Evidence: WorkedOut, Figures: append(figures, line...)})
	}
	if row.Missed.OK && row.Missed.Low > 0 { // else the loggers' error may explain it
		add("alarm_missed", missedWeight, NamedFigure{"missed", row.Missed}, NamedFigure{"due", row.Calls})
	}
	if n, worst := late(row); n.Mid > 0 {
		add("alarm_late", lateWeight, NamedFigure{"late", n}, NamedFigure{"latest_min", worst})
	}
	if n := len(row.NoCause); n > 0 {
		add("alarm_without_cause", noCauseWeight, NamedFigure{"calls", count(n, WorkedOut)})
	}
	return out
}

// late is how many calls were logged a quarter of an hour late and more, and the latest of them in minutes.
func late(row AlarmRow) (n, worst Figure) {
	var counts [3]float64
	worst = unknown("none_late")
	for _, c := range row.Due {
		l := c.Late()
		if !l.OK {
			continue
		}
		for i, minutes := range []float64{l.Mid, l.Low, l.High} {
			if minutes >= lateLeastMin {
				counts[i]++
			}
		}
		if l.Mid >= lateLeastMin && (!worst.OK || l.Mid > worst.Mid) {
			worst = l
		}
	}
	return enclosing(WorkedOut, counts[0], counts[1:]...), worst
}
