package analysis

import "thawbook/analysis/series"

// period is one stage over one setting period: what is known of when its rule asked for it, and of when it ran.
type period struct {
	stage  string
	set    Setting
	time   stretches
	called *view // nil without a temperature to go by, and for a timer, which has no instants
	ran    *view // nil without a record

	recordMS int64        // the record's sampling interval; 0 where every entry is a change
	speed    series.Curve // recorded, 0–1 of full speed; empty: full speed
}

// view is when something is known to be on and to be off: by the best guess, and by the guesses at both ends of
// what is unsure in it. A record has one guess three times.
type view struct {
	tries    [3][]segment // best, and at the low and the high end of the thermostat's offset
	evidence Evidence
}

// seenBy is the view of something recorded.
func seenBy(segs []segment, e Evidence) *view {
	return &view{[3][]segment{segs, segs, segs}, e}
}

// over is the part of a view in some time.
func (v view) over(s stretches) *view {
	for i := range v.tries {
		v.tries[i] = clip(v.tries[i], s)
	}
	return &v
}

// then is the view of one thing after another, in order of time.
func (v *view) then(next *view) *view {
	switch {
	case v == nil:
		return next
	case next == nil:
		return v
	}
	out := &view{evidence: v.evidence}
	if next.evidence != v.evidence {
		out.evidence = WorkedOut
	}
	for i := range out.tries {
		out.tries[i] = append(append([]segment{}, v.tries[i]...), next.tries[i]...)
	}
	return out
}

// best is what is known best of when a stage was on: its record, else what it was called for.
func (p period) best() *view {
	if p.ran != nil {
		return p.ran
	}
	return p.called
}

// periods are every stage's setting periods within the scored time.
func periods(j judgement) (out []period) {
	for _, st := range j.Stages {
		record, recorded := recordOf(j.Loggers, st.Name)
		var ran *view
		if recorded {
			ran = seenBy(held(record), Recorded)
		}
		for _, set := range st.Settings {
			time := stretches(series.Intersect([]series.Span{set.Span}, j.scored))
			if len(time) == 0 {
				continue
			}
			p := period{stage: st.Name, set: set, time: time, called: j.calledView(set, time)}
			if recorded {
				p.ran, p.recordMS, p.speed = ran.over(time), sampledEvery(record), speedOf(j.Loggers, st.Name)
			}
			out = append(out, p)
		}
	}
	return out
}

// calledView is when a setting's rule asked for its stage.
func (j judgement) calledView(set Setting, time stretches) *view {
	switch {
	case set.Timer:
		return nil
	case set.AlwaysOn:
		return seenBy(throughout(time), YourSetting)
	case j.control.TempC.Len() == 0:
		return nil
	}
	v := view{evidence: WorkedOut}
	for i, shift := range j.sight.shifts() {
		v.tries[i] = j.sight.called(set, time, shift)
	}
	return &v
}

// throughout is on all the time.
func throughout(s stretches) (out []segment) {
	for _, p := range s {
		out = append(out, segment{float64(p.From), float64(p.To), true})
	}
	return out
}

// sampledEvery is a record's sampling interval, or 0 for a list of changes, each of which holds to the next
// however late.
func sampledEvery(record series.Curve) int64 {
	if record.MaxStepMS > listStepMS {
		return 0
	}
	return record.Interval()
}

const listStepMS = 1 << 50 // a gap limit above this, 36 000 years, is none
