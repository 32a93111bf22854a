package desk

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// BeforeNext is what to look at before next winter: the findings, what an alarm would have done, and what happened
// in the barn.
type BeforeNext struct {
	Sentence string
	Doubts   []Sentence // readings that can hardly be right and count: to be decided first
	Findings []FindingView
	Alarm    string
	Alarms   Table
	Happened string
	Events   []EventView
	Cautions []string
}

// EventView is something that happened, in a sentence.
type EventView struct {
	Text string
	Sure string
	Mark Mark
	Look series.Span
}

// BeforeNextOf makes the Before next winter screen of one barn.
func BeforeNextOf(in analysis.Input, r analysis.Review, u Units) BeforeNext {
	b := newBarn(in, r, u)
	v := BeforeNext{Findings: Findings(in, r, u), Cautions: []string{cautionOneAtATime, cautionAir, cautionAlarm, cautionFans, cautionElectrics, cautionHeat}}
	switch n := len(v.Findings); n {
	case 0:
		v.Sentence = b.nothingFound()
	case 1:
		v.Sentence = "One thing is worth a look before next winter."
	default:
		v.Sentence = number(float64(n), 0) + " things are worth a look before next winter; what matters most comes first."
	}
	v.Alarm, v.Alarms = b.alarmTried()
	v.Happened, v.Events = b.happened()
	return v
}

// nothingFound says that no finding was made. Where the barn's answers are not all good it is the causes that are not
// known, and what would show most is said.
func (b barn) nothingFound() string {
	v := b.r.Verdict
	if v.Held.State == analysis.Yes && v.Damp.State == analysis.No && v.Dry.State == analysis.No {
		return "Nothing stands out that should be changed before next winter, as far as the files can tell."
	}
	return strings.TrimSpace("What to change before next winter can't be told from these files. " + b.settle())
}

// alarmTried says what an alarm on the air's temperature would have done at several lines: the house's in a sentence,
// all of them in a table, the lowest above first.
func (b barn) alarmTried() (string, Table) {
	if len(b.r.Alarms) == 0 {
		return "What an alarm would have done can't be told: there is no reading from the room.", Table{}
	}
	t := Table{Columns: []Column{{Title: "Alarm"}, {Title: "Calls", Number: true}, {Title: "First"}}}
	if slices.ContainsFunc(b.r.Alarms, func(row analysis.AlarmRow) bool { return b.loggedCalls(row) != "" }) {
		t.Columns = append(t.Columns, Column{Title: "In your log"})
	}
	for _, row := range slices.SortedStableFunc(slices.Values(b.r.Alarms), lowestAboveFirst) {
		first := ""
		if len(row.Due) > 0 {
			first = b.u.Clock(row.Due[0].Due)
		}
		cells := []string{b.sideOf(row.Line), countRange(row.Calls), first, b.loggedCalls(row)}
		t.Rows = append(t.Rows, cells[:len(t.Columns)])
		if len(row.Due) > 0 {
			t.lookAt(2, Span{From: row.Due[0].Crossed, To: row.Due[0].Back})
		}
	}
	row, whose, then := b.r.Alarms[0], "An alarm ", " would "
	if row.Line.Own {
		whose, then = "Your alarm, ", ", would "
	}
	if !row.Calls.OK {
		return "What an alarm would have done can't be told: " + lacks(row.Calls.Unknown) + ".", t
	}
	return whose + lowerFirst(b.sideOf(row.Line)) + then + wouldHave("called", row.Calls) + ", as " + b.alarmReader(row) + b.alarmUnknown(row) + ".", t
}

// alarmUnknown is "; 127 h of the bees' time are not known", where it is more than an hour.
func (b barn) alarmUnknown(row analysis.AlarmRow) string {
	if h := hours(row.UnknownMS); h >= 1 {
		return "; " + Hours(h) + " of the bees' time are not known"
	}
	return ""
}

// alarmReader says by whose readings an alarm was tried.
func (b barn) alarmReader(row analysis.AlarmRow) string {
	if row.Logger != "" {
		return row.Logger + " read"
	}
	if len(b.roomLoggers()) > 1 {
		return "the mean of the room's loggers read"
	}
	return "the room's logger read"
}

// lowestAboveFirst orders alarm lines by their limits, those below behind those above.
func lowestAboveFirst(a, b analysis.AlarmRow) int {
	if a.Line.Low != b.Line.Low {
		if a.Line.Low {
			return 1
		}
		return -1
	}
	return cmp.Compare(a.Line.LimitC, b.Line.LimitC)
}

// sideOf is "Above 8 °C for 30 min".
func (b barn) sideOf(l analysis.AlarmLine) string {
	side := "Above "
	if l.Low {
		side = "Below "
	}
	return side + b.limitFor(l.LimitC, l.DelayMin)
}

// loggedCalls says how the keeper's own log of calls fits a line; empty without a log.
func (b barn) loggedCalls(row analysis.AlarmRow) string {
	logged, late := 0, 0.0
	for _, c := range row.Due {
		if l := c.Late(); l.OK {
			logged, late = logged+1, math.Max(late, l.Mid)
		}
	}
	if logged+len(row.NoCause) == 0 {
		return ""
	}
	parts := []string{number(float64(logged), 0) + " of them logged"}
	if late >= 1 {
		parts = append(parts, "up to "+withUnit(number(late, 0), "min")+" late")
	}
	if n := len(row.NoCause); n > 0 {
		parts = append(parts, number(float64(n), 0)+" logged without cause")
	}
	return strings.Join(parts, ", ")
}

// countRange is a count with its range, "4" or "2–7".
func countRange(f analysis.Figure) string {
	if !f.OK {
		return noNumber
	}
	return number(f.Mid, 0) + inBrackets(f)
}

// inBrackets is the range of a whole figure behind it, " (2–7)"; nothing where it has none.
func inBrackets(f analysis.Figure) string {
	low, high := number(f.Low, 0), number(f.High, 0)
	if low == high {
		return ""
	}
	return " (" + rangeOf(low, high) + ")"
}

// timesWords are "never", "once", "4 times".
func timesWords(f analysis.Figure) string {
	switch {
	case !f.OK:
		return "an unknown number of times"
	case f.Mid == 0:
		return "never"
	case f.Mid == 1:
		return "once"
	}
	return number(f.Mid, 0) + " times"
}

// wouldHave are "never have called", "have called once".
func wouldHave(done string, f analysis.Figure) string {
	if f.OK && f.Mid == 0 {
		return "never have " + done
	}
	return "have " + done + " " + timesWords(f)
}

func lowerFirst(s string) string { return strings.ToLower(s[:1]) + s[1:] }

// alarmC is the limit of the alarm's line, °C.
func (b barn) alarmC() float64 {
	if len(b.r.Alarms) == 0 {
		return 8
	}
	return b.r.Alarms[0].Line.LimitC
}
