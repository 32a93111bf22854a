package desk

import (
	"strings"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

func figureOf(mid, low, high float64) analysis.Figure {
	return analysis.Figure{Mid: mid, Low: low, High: high, OK: true, Evidence: analysis.WorkedOut}
}

func TestAirAndWaterSays(t *testing.T) {
	lone := series.Curve{Readings: series.Readings{At: []int64{0}, Val: []float64{4}}}
	in := analysis.Input{
		Loggers:  []analysis.Logger{{Name: "mid", Place: "room", TempC: lone, RelHum: lone}},
		Surfaces: []analysis.Surface{{Name: "north wall", Kind: "wall"}}, Heats: []analysis.HeatSource{{Name: "floor", Kind: "floor"}},
	}
	r := analysis.Review{
		Surfaces: []analysis.SurfaceRow{{Name: "north wall", Kind: "wall", Factor: figureOf(0.66, 0.57, 0.74), DewHours: figureOf(23, 4.4, 65), FrostHours: figureOf(135, 0, 232), MouldIndex: figureOf(0.05, 0, 0.2)}},
		Dryness: []analysis.DryStretch{{Span: series.Span{From: 0, To: 48 * series.HourMS}, IntakePct: figureOf(23, 23, 23), HeatHours: figureOf(12, 12, 12),
			WeatherHours: figureOf(30, 30, 30), BothHours: figureOf(6, 6, 6), NeitherHours: figureOf(0, 0, 0)}},
		Uniformity: []analysis.Uniformity{{Place: "room", ApartHours: figureOf(47, 47, 49), KnownHours: 504, Weeks: []analysis.UnevenWeek{{Warmest: "far", Coldest: "mid"}}}},
		Heats:      []analysis.HeatRow{{Source: in.Heats[0], Overlap: figureOf(71, 71, 71)}},
	}
	r.Traces.RoomRelHum, r.Traces.Outdoor = lone, lone
	v := AirWaterOf(in, r, Units{})
	all := plain(strings.Join([]string{v.Sentence, strings.Join(v.Lacks, " "), v.Even, v.Dry[0].Text, strings.Join(v.Walls.Rows[0], "|"), strings.Join(v.Heat.Rows[0], "|"), strings.Join(v.Mould, " ")}, "\n"))
	for _, want := range []string{
		"The north wall was wet longest, 158 h; the air was parched for 48 h in 1 long stretch.",
		"1–2 January: parched for 48 h; the air outside, once as warm as the room, was at 23 %; 6 h with both dry weather and added heat, 12 h with added heat alone, 30 h with dry weather.",
		"were more than 2.0 °C apart in 9 of 100 hours; most weeks far was the warmest and mid the coldest.",
		"North wall|158|135|4.4–297|66 %, worked out", "Floor|unknown|no record|71", "mould index 0.1 (0.0–0.2) of 6",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("lacks %q:\n%s", want, all)
		}
	}
}

// With one thermometer and nothing else every line says what it would take.
func TestAirAndWaterSaysWhatItLacks(t *testing.T) {
	v := AirWaterOf(analysis.Input{}, analysis.Review{}, Units{})
	if len(v.Lacks) != 4 || !strings.Contains(v.Sentence, "can't be told") {
		t.Errorf("%q %q", v.Sentence, v.Lacks)
	}
}

// A power cut leads with its climbs: the first hour and the later hours apart, then the hours to the alarm line.
func TestBeforeNextWinterSays(t *testing.T) {
	named := func(name string, f analysis.Figure) analysis.NamedFigure {
		return analysis.NamedFigure{Name: name, Figure: f}
	}
	late := int64(5*series.HourMS + 10*60000)
	r := analysis.Review{
		Events: []analysis.Event{{Kind: "power cut", Span: series.Span{From: 0, To: 5 * series.HourMS}, Evidence: analysis.Recorded,
			Figures: []analysis.NamedFigure{named("climb_k", figureOf(3.2, 3.2, 3.2)), named("first_hour_k_per_h", figureOf(1.5, 1.3, 1.8)),
				named("later_k_per_h", figureOf(0.4, 0.3, 0.5)), named("hours_to_alarm_h", figureOf(7, 5, 9))}}},
		Alarms: []analysis.AlarmRow{{Line: analysis.AlarmLine{LimitC: 8, DelayMin: 30}, Calls: figureOf(1, 0, 3),
			Due: []analysis.AlarmCall{{Crossed: 4 * series.HourMS, Due: 4*series.HourMS + 30*60000, Logged: &late}}}},
	}
	v := BeforeNextOf(analysis.Input{}, r, Units{})
	all := plain(strings.Join([]string{v.Sentence, v.Alarm, strings.Join(v.Alarms.Rows[0], "|"), v.Events[0].Text, strings.Join(v.Cautions, " ")}, "\n"))
	for _, want := range []string{
		"What to change before next winter can't be told from these files. What would settle most: a logger file from inside the room.", "An alarm above 8 °C for 30 min would have called once",
		"Above 8 °C for 30 min|1 (0–3)|1 January 04:30|1 of them logged, up to 40 min late",
		"The fans stood still from 1 January 00:00 for 5 h; the room climbed 3.2 °C, 1.5 °C (1.3–1.8 °C) in the first hour and 0.4 °C an hour after that; 5–9 h to 8 °C.",
		"Change one setting at a time", "carbon dioxide", "no alarm",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("lacks %q:\n%s", want, all)
		}
	}
}

// "Nothing stands out" is said of a barn that held and was neither damp nor dry, and of no other.
func TestNothingStandsOutOnlyInAGoodWinter(t *testing.T) {
	answer := func(s analysis.State) analysis.Answer { return analysis.Answer{State: s} }
	for held, want := range map[analysis.State]bool{analysis.Yes: true, analysis.Mostly: false, analysis.Unknown: false} {
		r := analysis.Review{Verdict: analysis.Verdict{Held: answer(held), Damp: answer(analysis.No), Dry: answer(analysis.No)}}
		if got := BeforeNextOf(analysis.Input{}, r, Units{}).Sentence; strings.Contains(got, "Nothing stands out") != want {
			t.Errorf("held %v: %q", held, got)
		}
	}
}

// Loggers whose means agree may still have been apart in turn: 120 of 500 hours are 24 of 100, and not "no more apart
// than two such loggers may be".
func TestLoggersApartInTurnAreNotCalledAlike(t *testing.T) {
	mean := func(name string, c float64) analysis.QuantityRow {
		return analysis.QuantityRow{Quantity: "air_temperature", Place: "control", Logger: name, Mean: figureOf(c, c, c)}
	}
	r := analysis.Review{Quantities: []analysis.QuantityRow{mean("near", 4.4), mean("far", 4.4)},
		Uniformity: []analysis.Uniformity{{Place: "control", KnownHours: 500, ApartHours: figureOf(120, 120, 120)}}}
	got := plain(newBarn(analysis.Input{}, r, Units{}).spread()[0].Text)
	if !strings.Contains(got, "but further apart in many single hours") || strings.Contains(got, "no more apart") {
		t.Error(got)
	}
}

// A fifth of the winter is known: what an alarm would have done is not told from it; nor, of nine tenths, as if it were all.
func TestAnAlarmSaysWhatIsNotKnown(t *testing.T) {
	in := gappy(t)
	if text, _ := newBarn(in, analysis.Judge(in), Units{}).alarmTried(); plain(text) != "What an alarm would have done can't be told: too few hours were recorded." {
		t.Error(text)
	}
	in = rich(t)
	in.Loggers[0].TempC = in.Loggers[0].TempC.Slice(series.Span{From: day0 + 240*hourMS, To: *in.BeesOut})
	text, _ := newBarn(in, analysis.Judge(in), Units{}).alarmTried()
	if !strings.HasSuffix(plain(text), "; 241 h of the bees' time are not known.") {
		t.Error(text)
	}
}

// The keeper's own alarm is called his.
func TestTheAlarmOfTheBarnIsCalledItsOwn(t *testing.T) {
	in, limit := rich(t), 8.5
	in.AlarmC = &limit
	text, table := newBarn(in, analysis.Judge(in), Units{}).alarmTried()
	if !strings.HasPrefix(plain(text), "Your alarm, above 8.5 °C for 30 min, would have called once, as ") || len(table.Rows) != 5 {
		t.Errorf("%q, %d rows", text, len(table.Rows))
	}
}

// Lines are listed by their limits, and a log that was not kept has no column.
func TestAlarmLinesAreInOrder(t *testing.T) {
	line := func(c float64, low bool) analysis.AlarmRow {
		return analysis.AlarmRow{Line: analysis.AlarmLine{LimitC: c, DelayMin: 30, Low: low}, Calls: figureOf(1, 1, 1)}
	}
	r := analysis.Review{Alarms: []analysis.AlarmRow{line(8, false), line(7, false), line(10, false), line(0, true)}}
	text, table := newBarn(analysis.Input{}, r, Units{}).alarmTried()
	if !strings.HasPrefix(plain(text), "An alarm above 8 °C") || len(table.Columns) != 3 {
		t.Errorf("%q, %d columns", text, len(table.Columns))
	}
	for i, want := range []string{"Above 7 °C", "Above 8 °C", "Above 10 °C", "Below 0 °C"} {
		if got := plain(table.Rows[i][0]); !strings.HasPrefix(got, want) {
			t.Errorf("row %d is %q, want %s", i, got, want)
		}
	}
}

// The mark beside the humidity is that of the answer in the header: dry for a tenth of the time is worth a look, and
// where the answer is "dry, yes" there is something to do.
func TestHumidityBearsTheAnswersMark(t *testing.T) {
	low, high := 40.0, 75.0
	for dry, want := range map[analysis.State]Mark{analysis.Mostly: MarkWatch, analysis.Yes: MarkAct} {
		r := analysis.Review{Verdict: analysis.Verdict{Dry: analysis.Answer{State: dry}}, Quantities: []analysis.QuantityRow{{
			Quantity: "relative_humidity", Place: "control", Mean: figureOf(50, 50, 50),
			Bands: []analysis.BandRow{{Name: "good", Low: &low, High: &high, HoursIn: 900, HoursBelow: 100}}}}}
		if got := newBarn(analysis.Input{}, r, Units{}).humidity(); len(got) != 1 || got[0].Mark != want {
			t.Errorf("%v: %+v, want %s", dry, got, want)
		}
	}
}
