package analysis

import (
	"math"
	"slices"
	"testing"

	"thawbook/analysis/series"
)

// climb is 4 °C at 00:00, a degree an hour, to 9.5 °C at 05:30.
func climbing() series.Curve { return through(0, 5.5, 0.5, func(h float64) float64 { return 4 + h }) }

func alarmCall(h float64) Note { return Note{At: int64(h * hourMS), Kind: "alarm call"} }

// The house's worked example: a degree an hour from 4 °C at 00:00 passes 8 °C at 04:00; half an hour later, 04:30, the
// call is due; logged at 05:10 it was 40 min late. At 7 °C it would have been due at 03:30.
func TestTheWorkedAlarm(t *testing.T) {
	logged := []Note{alarmCall(5 + 10.0/60)}
	row := alarmAt(climbing(), 0.5, span(0, 5.5), AlarmLine{LimitC: 8, DelayMin: 30}, logged)
	if len(row.Due) != 1 {
		t.Fatalf("%d calls, want one", len(row.Due))
	}
	c := row.Due[0]
	near(t, "crossed", float64(c.Crossed)/hourMS, 4, 1e-6)
	near(t, "due", float64(c.Due)/hourMS, 4.5, 1e-6)
	late := c.Late() // a reading half a degree off stands half an hour off
	if !late.OK {
		t.Fatal("the logged call is not found")
	}
	near(t, "late", late.Mid, 40, 1e-3)
	near(t, "late at least", late.Low, 10, 1e-3)
	near(t, "late at most", late.High, 70, 1e-3)
	near(t, "missed", row.Missed.Mid, 0, 0)
	if len(row.NoCause) != 0 || c.CutFrom || !c.CutTo {
		t.Errorf("%+v", row)
	}
	row = alarmAt(climbing(), 0.5, span(0, 5.5), AlarmLine{LimitC: 7, DelayMin: 30}, logged)
	near(t, "due at 7 °C", float64(row.Due[0].Due)/hourMS, 3.5, 1e-6)
}

// The review tries the house's line first.
func TestAReviewTriesItsAlarmLines(t *testing.T) {
	in := one(climbing(), series.Curve{}, span(0, 5.5))
	in.Notes = []Note{alarmCall(5 + 10.0/60)}
	rows := Judge(in).Alarms
	if len(rows) == 0 || rows[0].Line != (AlarmLine{LimitC: 8, DelayMin: 30}) || rows[0].Calls.Mid != 1 {
		t.Fatalf("%+v", rows)
	}
	// Half a degree either way: at 8.5 it was due at 05:00, within the log, and at 7.5 too.
	if rows[0].Calls.Low != 1 || rows[0].Calls.High != 1 {
		t.Errorf("range %v to %v, want 1 to 1", rows[0].Calls.Low, rows[0].Calls.High)
	}
	if rows := Judge(Input{}).Alarms; len(rows) != 0 {
		t.Errorf("without a room: %+v", rows)
	}
}

// An alarm set to 9 °C for 15 min: a degree an hour from 4 °C at 00:00 passes 9 °C at 05:00, the call is due at 05:15. The
// house's line is tried behind it, and of a delay alone the limit is the house's.
func TestTheKeepersOwnAlarmComesFirst(t *testing.T) {
	in := one(climbing(), series.Curve{}, span(0, 5.5))
	in.AlarmC, in.AlarmMin = ptr(9), ptr(15)
	rows := Judge(in).Alarms
	if len(rows) != 5 || !rows[0].Line.Own || rows[1].Line != houseAlarms[0] || len(rows[0].Due) != 1 {
		t.Fatalf("%+v", rows)
	}
	near(t, "due", float64(rows[0].Due[0].Due)/hourMS, 5.25, 1e-6)
	in.AlarmC, in.AlarmMin = nil, ptr(30)
	if rows = Judge(in).Alarms; len(rows) != 4 || rows[0].Line != (AlarmLine{LimitC: 8, DelayMin: 30, Own: true}) {
		t.Errorf("%+v", rows)
	}
}

// Of a winter of which the air is known for less than half nobody can say how often an alarm would have called.
func TestAnAlarmNeedsHalfOfTheWinter(t *testing.T) {
	for known, want := range map[float64]bool{49: false, 51: true} {
		row := alarmAt(through(0, known, 0.5, constant(4)), 0.5, span(0, 100), AlarmLine{LimitC: 8, DelayMin: 30}, nil)
		if row.Calls.OK != want {
			t.Errorf("%g of 100 h known: %+v", known, row.Calls)
		}
	}
}

// The alarm hangs by the thermostat, 0.4 K warmer than the room's mean: 8 °C at 03:36 there, at 04:00 in the room. A logger
// at the alarm's own sensor, half a degree colder, knows best: 8 °C at 04:30, due at 05:00.
func TestAnAlarmIsTriedWhereItHangs(t *testing.T) {
	at := func(shiftK float64) series.Curve {
		return through(0, 5.5, 0.5, func(h float64) float64 { return 4 + shiftK + h })
	}
	in := one(climbing(), series.Curve{}, span(0, 5.5))
	in.Notes = []Note{alarmCall(5)}
	for _, step := range []struct {
		add        *Logger
		dueH       float64
		place, who string
		remarked   bool
	}{
		{nil, 4.5, "room", "", true},
		{&Logger{Name: "far", Place: "room", TempC: at(0)}, 4.5, "room", "", true},
		{&Logger{Name: "by it", Place: "control", TempC: at(0.4)}, 4.1, "control", "by it", false},
		{&Logger{Name: "siren", Place: "alarm", TempC: at(-0.5)}, 5, "alarm", "siren", false},
	} {
		if step.add != nil {
			in.Loggers = append(in.Loggers, *step.add)
		}
		r := Judge(in)
		row := r.Alarms[0]
		near(t, "due", float64(row.Due[0].Due)/hourMS, step.dueH, 1e-3)
		remarked := slices.ContainsFunc(r.Remarks, func(m series.Remark) bool { return m.Code == "alarm_is_room_mean" })
		if row.Place != step.place || row.Logger != step.who || remarked != step.remarked {
			t.Errorf("%s %q, remarked %v; want %+v", row.Place, row.Logger, remarked, step)
		}
	}
}

// Every row by hand on straight lines against 8 °C for 30 min, hourly readings.
func TestCallsDue(t *testing.T) {
	na := math.NaN()
	for _, row := range []struct {
		name string
		c    series.Curve
		line AlarmLine
		due  []float64
	}{
		// 7→9 crosses at 0.5, back at 1.5: an hour above.
		{"once", line(0, 1, 7, 9, 7), AlarmLine{LimitC: 8, DelayMin: 30}, []float64{1}},
		{"an hour above is no call after an hour", line(0, 1, 7, 9, 7), AlarmLine{LimitC: 8, DelayMin: 60}, nil},
		{"back under and above again", line(0, 1, 7, 9, 7, 9, 7), AlarmLine{LimitC: 8, DelayMin: 30}, []float64{1, 3}},
		{"touching the limit is no crossing", line(0, 1, 7, 8, 8, 7), AlarmLine{LimitC: 8, DelayMin: 0}, nil},
		{"no delay", line(0, 1, 7, 9, 7), AlarmLine{LimitC: 8}, []float64{0.5}},
		// −1 at 2: below 0 from 1.5 to 2.5.
		{"low", line(0, 1, 1, 1, -1, 1), AlarmLine{LimitC: 0, Low: true, DelayMin: 30}, []float64{2}},
		{"a gap: above on both sides", line(0, 1, 7, 9, 9, na, na, 9, 9), AlarmLine{LimitC: 8, DelayMin: 30}, []float64{1, 5.5}},
		{"above when the log ends", line(0, 1, 7, 7, 9), AlarmLine{LimitC: 8, DelayMin: 30}, []float64{2}},
	} {
		got := callsDue(row.c, span(0, 10), row.line)
		if len(got) != len(row.due) {
			t.Errorf("%s: %d calls, want %d: %+v", row.name, len(got), len(row.due), got)
			continue
		}
		for i, h := range row.due {
			near(t, row.name, float64(got[i].Due)/hourMS, h, 1e-6)
		}
	}
}

// A second logger that comes in makes a break, not an end: the mean of 9 and 10 stays above 8 throughout.
func TestALoggerComingInDoesNotResetTheAlarm(t *testing.T) {
	room := series.Mean([]series.Curve{through(0, 4, 0.25, constant(9)), through(1, 4, 0.25, constant(10))}, 15*minuteMS)
	got := callsDue(room, span(0, 4), AlarmLine{LimitC: 8, DelayMin: 120})
	if len(got) != 1 {
		t.Fatalf("%d calls, want one: %+v", len(got), got)
	}
	near(t, "due", float64(got[0].Due)/hourMS, 2, 1e-6)
	near(t, "peak", got[0].PeakC, 9.5, 1e-9)
}

// Four humps above 8 °C, due at 1, 5, 9 and 13 h. The first is logged in time, at the second the alarm was off,
// the third is missed, the fourth is logged twice; at 20 h there is a call without a cause.
func TestTheLogIsSetAgainstTheAir(t *testing.T) {
	air := line(0, 1, 7, 9, 7, 7, 7, 9, 7, 7, 7, 9, 7, 7, 7, 9, 7, 7, 7, 7, 7, 7, 7, 7)
	until := int64(7 * hourMS)
	notes := []Note{alarmCall(1.25), {At: 4 * hourMS, Until: &until, Kind: "alarm off"}, alarmCall(13), alarmCall(13.5), alarmCall(20)}
	row := alarmAt(air, 0, span(0, 23), AlarmLine{LimitC: 8, DelayMin: 30}, notes)
	if len(row.Due) != 4 {
		t.Fatalf("%d calls, want 4", len(row.Due))
	}
	late := row.Due[0].Late()
	near(t, "the first was late", late.Mid, 15, 1e-3)
	if !row.Due[1].Off || row.Due[1].Logged != nil || row.Due[2].Off || row.Due[2].Logged != nil {
		t.Errorf("second and third: %+v, %+v", row.Due[1], row.Due[2])
	}
	late = row.Due[3].Late()
	near(t, "the fourth was in time", late.Mid, 0, 1e-3)
	near(t, "missed", row.Missed.Mid, 1, 0)
	if len(row.NoCause) != 1 || row.NoCause[0] != 20*hourMS {
		t.Errorf("without cause: %v, want 20 h alone", row.NoCause)
	}
	low := alarmAt(air, 0, span(0, 23), AlarmLine{LimitC: 0, Low: true, DelayMin: 30}, notes)
	if len(low.NoCause) != 0 || low.Missed.OK {
		t.Errorf("calls of a warm room say nothing of a low line: %+v", low)
	}
}

func TestWithoutALogNothingIsMissed(t *testing.T) {
	row := alarmAt(climbing(), 0.5, span(0, 5.5), AlarmLine{LimitC: 8, DelayMin: 30}, nil)
	if row.Missed.OK || row.Missed.Unknown != "no_alarm_log" {
		t.Errorf("%+v, want unknown", row.Missed)
	}
	// A call while the log is silent can't be judged.
	air := line(0, 1, 7, 7, math.NaN(), math.NaN(), math.NaN(), 7, 7)
	row = alarmAt(air, 0, span(0, 6), AlarmLine{LimitC: 8, DelayMin: 30}, []Note{alarmCall(3)})
	if len(row.CantTell) != 1 || len(row.NoCause) != 0 || row.UnknownMS != 4*hourMS {
		t.Errorf("%+v", row)
	}
}

// An alarm noted off without an end was off until a logged call shows it on.
func TestAnAlarmLeftOff(t *testing.T) {
	air := line(0, 1, 7, 9, 7, 7, 9, 7, 7, 9, 7)
	notes := []Note{{At: 0, Kind: "alarm off"}, alarmCall(4.25)}
	row := alarmAt(air, 0, span(0, 8), AlarmLine{LimitC: 8, DelayMin: 30}, notes)
	if len(row.Due) != 3 || !row.Due[0].Off || row.Due[2].Off || row.Missed.Mid != 1 {
		t.Errorf("%+v", row)
	}
}

// Two humps of 8.2 °C and one of 10 °C, an hour and more above 8 °C each; the logger may be half a degree off. At 8.5 °C only
// the third was due: of three that nobody logged one is missed for certain. A call at 7.7 °C may have had its cause, one
// at 4 °C had none.
func TestAlarmsWithinTheLoggersError(t *testing.T) {
	air := line(0, 1, 4, 8.2, 8.2, 8.2, 4, 4, 4, 8.2, 8.2, 8.2, 4, 4, 4, 10, 10, 10, 4, 4, 4, 7.7, 7.7, 7.7, 4, 4, 4, 4, 4)
	row := alarmAt(air, 0.5, span(0, 28), AlarmLine{LimitC: 8, DelayMin: 30}, []Note{alarmCall(21), alarmCall(26)})
	if row.Missed.Mid != 3 || row.Missed.Low != 1 || row.Calls.Low != 1 || row.Calls.Mid != 3 || row.Calls.High != 4 {
		t.Errorf("missed %+v, calls %+v", row.Missed, row.Calls)
	}
	if len(row.CantTell) != 1 || row.CantTell[0] != 21*hourMS || len(row.NoCause) != 1 || row.NoCause[0] != 26*hourMS {
		t.Errorf("can't tell %v, no cause %v", row.CantTell, row.NoCause)
	}
}

// The air falls 0.2 K below the limit for a quarter of an hour between two stretches above it, with one call logged at
// the first: loggers of ±0.5 K can't tell two stretches from one, so no call was missed for certain. After a fall of
// 2 K a second call was due and is missed.
func TestAShortDipWithinTheErrorMissesNoCall(t *testing.T) {
	for dip, want := range map[float64]float64{7.8: 0, 6: 1} {
		air := line(0, 0.25, 7, 7, 10, 10, 10, 10, 10, dip, 10, 10, 10, 10, 7, 7)
		notes := []Note{{At: int64(1 * hourMS), Kind: "alarm call"}}
		row := alarmAt(air, 0.5, span(0, 3.25), AlarmLine{LimitC: 8, DelayMin: 30}, notes)
		if len(row.Due) != 2 || row.Missed.Mid != 1 || row.Missed.Low != want {
			t.Errorf("dip to %g °C: %d due, missed %+v, want 2 due, one missed of which %g for certain", dip, len(row.Due), row.Missed, want)
		}
	}
}

// Three times for an hour the air stands at 7.9 °C, 7.6 °C between: at 8 °C nothing calls, at 7.5 °C it is one stretch, and at
// 7.75 °C three, a delay of 30 min within each (arithmetic). A logger of ±0.5 K can't tell which it was.
func TestBetweenTheEndsThereMayBeMoreCalls(t *testing.T) {
	air := line(0, 0.25, 7, 7.9, 7.9, 7.9, 7.9, 7.9, 7.6, 7.6, 7.9, 7.9, 7.9, 7.9, 7.9, 7.6, 7.6, 7.9, 7.9, 7.9, 7.9, 7.9, 7)
	row := alarmAt(air, 0.5, span(0, 5), AlarmLine{LimitC: 8, DelayMin: 30}, nil)
	if c := row.Calls; c.Mid != 0 || c.Low != 0 || c.High != 3 {
		t.Errorf("calls %+v, want 0 to 3", c)
	}
}

// alarmAt is the row of an alarm at any line over an air temperature whose logger may be off by errK.
func alarmAt(air series.Curve, errK float64, s series.Span, line AlarmLine, notes []Note) AlarmRow {
	var due [alarmShifts][]AlarmCall
	for i, shifted := range line.shifts(errK, float64(air.Interval())/minuteMS) {
		due[i] = callsDue(air, s, shifted)
	}
	return alarmRow(air, s, line, notes, due)
}
