package analysis

import (
	"math"
	"slices"

	"thawbook/analysis/series"
)

// AlarmLine is a limit, °C, and for how many minutes the air must stay beyond it before an alarm calls.
type AlarmLine struct {
	LimitC   float64
	Low      bool // it calls below the limit
	DelayMin float64
	Own      bool // what the keeper's alarm is set to
}

// houseAlarms are the lines every barn's air is tried on: the house rule of 8 °C for 30 min first, then a degree
// earlier and two later, then a low one at the frost line (common practice, no source).
var houseAlarms = []AlarmLine{
	{LimitC: 8, DelayMin: 30}, {LimitC: 7, DelayMin: 30}, {LimitC: 10, DelayMin: 30}, {LimitC: 0, Low: true, DelayMin: 30},
}

// alarmLines are the lines the barn's air is tried on, that of its own alarm first; what of it nobody said is the house's.
func (in Input) alarmLines() []AlarmLine {
	own := houseAlarms[0]
	if in.AlarmC == nil && in.AlarmMin == nil {
		return houseAlarms
	}
	if in.AlarmC != nil {
		own.LimitC = *in.AlarmC
	}
	if in.AlarmMin != nil {
		own.DelayMin = *in.AlarmMin
	}
	others := slices.DeleteFunc(slices.Clone(houseAlarms), func(line AlarmLine) bool { return line == own })
	own.Own = true
	return append([]AlarmLine{own}, others...)
}

// AlarmRow is what an alarm at one line would have done over a barn's winter. It is worked out from the log
// afterwards: the alarm's own sensor hung elsewhere and had its own error.
type AlarmRow struct {
	Line      AlarmLine
	Place     string // whose air it is tried on
	Logger    string // empty for a place's mean
	Calls     Figure // how many; low and high with every reading one sensor error off
	Due       []AlarmCall
	Missed    Figure  // calls that were due, with the alarm not off, and are not in the keeper's log; low: for certain
	NoCause   []int64 // logged calls, ms UTC, for which the air gave no cause at this line, its logger's error allowed for
	CantTell  []int64 // logged calls at times the air is not known, or for which it gave cause only within that error
	UnknownMS int64   // of the bees' time, for which nothing can be said
}

// AlarmCall is one call that was due: when the air passed the limit, when the delay was over, and when the air
// came back to the limit or was lost sight of, ms UTC. With every reading one sensor error nearer to calling it was due at
// the earliest, with every reading one further from it at the latest, or, where it would not have been due at all, by when
// the air came back.
type AlarmCall struct {
	Crossed, Due, Back int64
	Earliest, Latest   int64
	PeakC              float64
	CutFrom, CutTo     bool   // crossing or coming back was not seen: a gap, or an end of the bees' time
	Off                bool   // the keeper noted that the alarm was off when the call was due
	Logged             *int64 // the first logged call of this stretch; nil where there is none
}

// Late is how many minutes after its due instant a call was logged, with what the reading may be off by; negative is before it.
func (c AlarmCall) Late() Figure {
	if c.Logged == nil {
		return unknown("not_logged")
	}
	after := func(due int64) float64 { return float64(*c.Logged-due) / minuteMS }
	return enclosing(WorkedOut, after(c.Due), after(c.Earliest), after(c.Latest))
}

// alarmAir is whose air an alarm is tried on: the logger at its sensor, else the one beside the thermostat, where an
// alarm's sensor hangs as a rule, else the room's mean.
func (j judgement) alarmAir() Logger {
	for _, place := range []string{"alarm", "control"} {
		for _, l := range spotAt(j.spots, place).loggers {
			if l.TempC.Len() > 0 {
				return l
			}
		}
	}
	return j.room.mean
}

// alarms try the alarm's air on every line.
func alarms(j judgement) []AlarmRow {
	rows := []AlarmRow{}
	air := j.alarmAir()
	if air.TempC.Len() == 0 {
		return rows
	}
	lines := j.alarmLines()
	due := make([][alarmShifts][]AlarmCall, len(lines))
	stepMin := float64(air.TempC.Interval()) / minuteMS
	j.spread(alarmShifts*len(due), func(i int) {
		line, k := lines[i/alarmShifts], i%alarmShifts
		due[i/alarmShifts][k] = callsDue(air.TempC, j.beesTime, line.shifts(air.TempErrK, stepMin)[k])
	})
	for i, line := range lines {
		row := alarmRow(air.TempC, j.beesTime, line, j.Notes, due[i])
		row.Place, row.Logger = air.Place, air.Name
		rows = append(rows, row)
	}
	return rows
}

// alarmRow sets the calls due at a line, and at its shifts, against the keeper's calls and the stretches of his notes in
// which the alarm was off. The crossing is that of the exact line; a call is due a delay later if the air stayed beyond
// the limit throughout; back at the limit the alarm is ready again. (The house's rule for exact lines; common practice
// for the alarm, no source.)
func alarmRow(air series.Curve, s series.Span, line AlarmLine, notes []Note, due [alarmShifts][]AlarmCall) AlarmRow {
	row := AlarmRow{Line: line, Due: due[0], NoCause: []int64{}, CantTell: []int64{}}
	row.UnknownMS = max(0, s.To-s.From-air.KnownMS(s))
	eager, sure := due[1], due[2]
	counts := make([]float64, 0, alarmShifts)
	for _, calls := range due {
		counts = append(counts, float64(len(calls)))
	}
	row.Calls = enclosing(WorkedOut, counts[0], counts[1:]...)
	if float64(row.UnknownMS) > (1-enoughOfWinter)*float64(s.To-s.From) {
		row.Calls = unknown("too_little_known")
	}
	row.hold(alarmLogOf(notes, s), air, eager, sure)
	return row
}

// alarmShifts is at how many shifts of a line the calls are counted.
const alarmShifts = 7

// shifts are the line as it is, with readings errK nearer to calling, and errK further from it; then, for the count of
// calls alone, both with a delay one step of the record shorter and longer, for the air may have been beyond the limit so
// much longer or shorter than is seen, and half of that: between the ends there may be more calls than at either, for
// what is one stretch at the one, and none at the other, may be several in the middle.
func (line AlarmLine) shifts(errK, stepMin float64) [alarmShifts]AlarmLine {
	if line.Low {
		errK = -errK
	}
	return [alarmShifts]AlarmLine{line, line.moved(-errK, 0), line.moved(errK, 0),
		line.moved(-errK, -stepMin), line.moved(errK, stepMin), line.moved(-errK/2, -stepMin/2), line.moved(errK/2, stepMin/2)}
}

// moved is the line with its limit some K higher and its delay some minutes longer; a delay is never below nought.
func (line AlarmLine) moved(byK, byMin float64) AlarmLine {
	line.LimitC, line.DelayMin = line.LimitC+byK, max(0, line.DelayMin+byMin)
	return line
}

// callsDue are the calls of an alarm at a line over a span.
func callsDue(air series.Curve, s series.Span, line AlarmLine) []AlarmCall {
	delayMS := line.DelayMin * minuteMS
	due := []AlarmCall{}
	for _, r := range pastLine(air, s, line) {
		if length := r.To - r.From; length < delayMS || length == delayMS && !r.CutTo {
			continue
		}
		due = append(due, AlarmCall{
			Crossed: int64(math.Round(r.From)), Due: int64(math.Round(r.From + delayMS)), Back: int64(math.Round(r.To)),
			PeakC: r.Peak, CutFrom: r.CutFrom, CutTo: r.CutTo,
		})
	}
	return due
}

// pastLine are the runs of the air beyond an alarm's limit.
func pastLine(air series.Curve, s series.Span, line AlarmLine) []series.Run {
	if line.Low {
		return stretches{s}.below(air, line.LimitC)
	}
	return stretches{s}.above(air, line.LimitC)
}

// alarmLog is what the keeper noted of his alarm: its calls, rising, and the stretches it was off.
type alarmLog struct {
	calls []int64
	off   []series.Span
}

// alarmLogOf reads the notes of kinds "alarm call" and "alarm off". An alarm noted off without an end was off until
// the next logged call shows that it was on, or to the end of the span.
func alarmLogOf(notes []Note, s series.Span) (log alarmLog) {
	for _, n := range notesOf(notes, "alarm call") {
		if s.From <= n.At && n.At <= s.To {
			log.calls = append(log.calls, n.At)
		}
	}
	slices.Sort(log.calls)
	for _, n := range notesOf(notes, "alarm off") {
		until := s.To
		if i, _ := slices.BinarySearch(log.calls, n.At); i < len(log.calls) {
			until = log.calls[i]
		}
		if n.Until != nil {
			until = *n.Until
		}
		log.off = append(log.off, series.Span{From: n.At, To: until})
	}
	log.off = series.Union(log.off)
	return log
}

// alarmSlackMS is how long before the crossing or after the return a logged call still belongs to a stretch: the
// alarm's sensor is another, and calls are written down later (common practice, no source).
const alarmSlackMS = series.HourMS

// A logged call does not say whether it was for heat or cold. It counts against a low line where the air stood no more
// than lowCallK above it, and against the others where it stood above lowCallK, which is the frost line's share of the
// same (common practice, no source).
const lowCallK = 2

// concerns says whether a call logged at an air temperature is for this line; one at unknown air is for those above.
func (line AlarmLine) concerns(tempC float64, known bool) bool {
	if line.Low {
		return known && tempC <= line.LimitC+lowCallK
	}
	return !known || tempC > lowCallK
}

// hold sets the due calls against the log. eager and sure are those that would have been due with every reading one
// sensor error nearer to calling, and one further from it.
func (row *AlarmRow) hold(log alarmLog, air series.Curve, eager, sure []AlarmCall) {
	for i, c := range row.Due {
		row.Due[i].Off = coversAt(log.off, c.Due)
		row.Due[i].Earliest, row.Due[i].Latest = dueBetween(c, eager, sure)
	}
	held := 0
	for _, at := range log.calls {
		v, known := air.At(at)
		if !row.Line.concerns(v, known) {
			continue
		}
		held++
		switch i := stretchAt(row.Due, at); {
		case i >= 0 && row.Due[i].Logged == nil:
			row.Due[i].Logged = &at
		case i >= 0:
		case !known, stretchAt(eager, at) >= 0:
			row.CantTell = append(row.CantTell, at)
		default:
			row.NoCause = append(row.NoCause, at)
		}
	}
	row.Missed = unknown("no_alarm_log")
	if len(log.calls) > 0 && (held > 0 || !row.Line.Low) {
		row.Missed = row.missed(eager, sure)
	}
}

// dueBetween is when a call was due at the earliest and at the latest.
func dueBetween(c AlarmCall, eager, sure []AlarmCall) (earliest, latest int64) {
	earliest, latest = c.Due, c.Back
	for _, e := range eager {
		if e.Crossed <= c.Crossed && c.Back <= e.Back {
			earliest = min(earliest, e.Due)
		}
	}
	if i := slices.IndexFunc(sure, func(o AlarmCall) bool { return c.Crossed <= o.Crossed && o.Crossed <= c.Back }); i >= 0 {
		latest = sure[i].Due
	}
	return earliest, max(latest, c.Due)
}

// missed counts the due calls with the alarm on that nobody logged; low are those that were due for certain: even with
// every reading one sensor error further from calling, and in no stretch for which, with every reading one nearer to
// it, a call is logged.
func (row *AlarmRow) missed(eager, sure []AlarmCall) Figure {
	n, certain := 0.0, 0.0
	for _, c := range row.Due {
		if c.Logged != nil || c.Off {
			continue
		}
		n++
		if slices.ContainsFunc(sure, func(o AlarmCall) bool { return c.Crossed <= o.Crossed && o.Crossed <= c.Back }) && !row.loggedWith(c, eager) {
			certain++
		}
	}
	return enclosing(WorkedOut, n, certain)
}

// loggedWith says whether a call is logged in the stretch that holds this one when the readings lie nearer to calling.
func (row *AlarmRow) loggedWith(c AlarmCall, eager []AlarmCall) bool {
	for _, e := range eager {
		if e.Crossed > c.Crossed || c.Back > e.Back {
			continue
		}
		return slices.ContainsFunc(row.Due, func(d AlarmCall) bool { return d.Logged != nil && e.Crossed <= d.Crossed && d.Back <= e.Back })
	}
	return false
}

// stretchAt is the due call whose stretch beyond the limit an instant belongs to, the one due nearest to it; −1
// for none.
func stretchAt(due []AlarmCall, at int64) int {
	best := -1
	for i, c := range due {
		if at < c.Crossed-alarmSlackMS || at > c.Back+alarmSlackMS {
			continue
		}
		if best < 0 || apart(at, c.Due) < apart(at, due[best].Due) {
			best = i
		}
	}
	return best
}

// apart is the time between two instants, ms.
func apart(a, b int64) int64 { return max(a-b, b-a) }

// coversAt says whether any of some spans holds an instant.
func coversAt(spans []series.Span, at int64) bool {
	return slices.ContainsFunc(spans, func(s series.Span) bool { return s.From <= at && at < s.To })
}
