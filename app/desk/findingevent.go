package desk

import (
	"cmp"
	"fmt"
	"math"

	"thawbook/analysis"
)

// eventFindingWords are the findings about events and the alarm: what was seen, and what to look at.
var eventFindingWords = map[string]findingText{
	"power_cut": {func(b barn, f analysis.Finding) string {
		return b.cutsWords(f) + " " + b.climbWords(f)
	}, "Look at what tells of a power cut, and test it. A generator must carry every fan, with its exhaust outdoors; the transfer switch is an electrician's work. No unvented burner for heat; carbon dioxide " +
		"is high within an hour or two of the fans stopping: air first, measure, and have a second person outside."},
	"power_cut_may_be": {func(b barn, f analysis.Finding) string {
		outside := ""
		if f.Figure("outdoors_c").OK {
			outside = ", with cold air outside"
		}
		return "The room climbed as it does without fans" + outside + ": it may have been a power cut. " + b.climbWords(f)
	}, "Look whether anyone remembers a cut that day, and note it; a record of one fan would tell for certain."},
	"light_leak": {func(_ barn, f analysis.Finding) string {
		return "On " + whole(f, "days", "day") + " there was light in the " + f.About + " at the same time of day, between " + hourOfDay(f.Figure("from_hour")) + " and " + hourOfDay(f.Figure("to_hour")) + "."
	}, "Go in at that hour without a lamp and look for daylight at traps, flaps and doors. A visit with a lamp every day looks the same."},
	"alarm_missed": {func(b barn, f analysis.Finding) string {
		if !f.Figure("due").OK {
			return "In the hours that are known an alarm at " + b.alarmLine(f) + " would have called at least " + timesWords(justLow(f.Figure("missed"))) + " more than you noted."
		}
		return "An alarm at " + b.alarmLine(f) + " would " + wouldHave("called", f.Figure("due")) + "; your notes lack at least " + number(f.Figure("missed").Low, 0) + " of these calls."
	}, "Test the alarm by warming its sensor, all the way to the phone. It should hang among the hives and not depend on the fans' control."},
	"alarm_late": {func(b barn, f analysis.Finding) string {
		times, latest := f.Figure("late"), f.Figure("latest_min")
		latest.Low = max(0, latest.Low) // it may have been in time
		return "The alarm called late " + timesWords(times) + inBrackets(times) + ", by up to " + withUnit(number(latest.Mid, 0), "min") + inBrackets(latest) + ", " + isSet(f) + b.alarmLine(f) + "."
	}, "Look at its limit, its delay and where its sensor hangs."},
	"alarm_without_cause": {func(b barn, f analysis.Finding) string {
		return "The alarm called " + timesWords(f.Figure("calls")) + " while the room's logger gave no cause at " + b.alarmLine(f) + "."
	}, "Look at where its sensor hangs and at its limit: an alarm that calls for nothing gets switched off."},
}

// cutsWords are "The power was off on 4 February."
func (b barn) cutsWords(f analysis.Finding) string {
	day := ""
	if f.Look.To > f.Look.From {
		day = " on " + b.u.Dates(f.Look)
	}
	if n := f.Figure("cuts"); n.OK && n.Mid > 1 {
		return "The power was off " + whole(f, "cuts", "time") + ", the worst of them" + cmp.Or(day, " as follows") + "."
	}
	return "The power was off" + day + "."
}

// climbWords are what the log measured of a climb: the first hour and the later hours apart, and how long to the alarm.
func (b barn) climbWords(f analysis.Finding) string {
	first, later, alarm := f.Figure("first_hour_k_per_h"), f.Figure("later_k_per_h"), f.Figure("hours_to_alarm_h")
	if !first.OK {
		return "It was too short, or too little is known of it, to say how fast the room climbed."
	}
	text, climbed := "The room climbed by "+b.diffRange(first)+" in the first hour", "by "
	if b.u.DiffValue(first.Mid) < 0.05 {
		text, climbed = "The room did not climb in the first hour", "climbed by "
	}
	switch {
	case later.OK && later.Mid < 0:
		text += " and fell by " + b.smallDiff(-later.Mid) + " in each later one"
	case later.OK:
		text += " and " + climbed + b.smallDiff(later.Mid) + " in each later one"
	}
	switch {
	case !alarm.OK:
		return text + "."
	case alarm.High > alarm.Low:
		return text + "; at that pace " + b.alarmLimit() + " lies " + HoursRange(alarm.Low, alarm.High) + " from the start."
	}
	return text + "; " + b.alarmLimit() + " was reached in " + Hours(alarm.Mid) + "."
}

// diffRange is a difference with its range, "1.5 °C (1.3–1.8 °C)"; without one where both ends read alike.
func (b barn) diffRange(f analysis.Figure) string {
	low, high := number(b.u.DiffValue(f.Low), 1), number(b.u.DiffValue(f.High), 1)
	if low == high {
		return b.u.Diff(f.Mid)
	}
	return b.u.Diff(f.Mid) + " (" + withUnit(rangeOf(low, high), b.u.TempSymbol()) + ")"
}

// smallDiff is a difference that is more than nothing, "less than 0.1 °C" where it would round to none.
func (b barn) smallDiff(diffK float64) string {
	if d := b.u.DiffValue(diffK); d > 0 && d < 0.05 {
		return "less than " + withUnit(number(0.1, 1), b.u.TempSymbol())
	}
	return b.u.Diff(diffK)
}

// isSet is "set to " of the keeper's own alarm line, of the house's "if it is set to ".
func isSet(f analysis.Finding) string {
	if f.Figure("limit_c").Evidence == analysis.YourSetting {
		return "set to "
	}
	return "if it is set to "
}

// justLow is a figure that is its own lower end.
func justLow(f analysis.Figure) analysis.Figure { return analysis.Figure{Mid: f.Low, OK: f.OK} }

// alarmLimit is where the alarm would call, "8 °C".
func (b barn) alarmLimit() string {
	if len(b.r.Alarms) == 0 {
		return "the alarm's limit"
	}
	return b.u.LimitWithUnit(b.r.Alarms[0].Line.LimitC)
}

// alarmLine is a finding's line, "8 °C for 30 min".
func (b barn) alarmLine(f analysis.Finding) string {
	return b.limitFor(f.Figure("limit_c").Mid, f.Figure("delay_min").Mid)
}

// limitFor is "8 °C for 30 min".
func (b barn) limitFor(limitC, delayMin float64) string {
	return b.u.LimitWithUnit(limitC) + " for " + withUnit(number(delayMin, 0), "min")
}

// whole is a whole figure with its noun.
func whole(f analysis.Finding, name, noun string) string {
	return plural(number(f.Figure(name).Mid, 0), noun, noun+"s")
}

// hourOfDay is an hour of the local day as a clock shows it.
func hourOfDay(f analysis.Figure) string {
	minutes := int(math.Round(60 * f.Mid))
	return fmt.Sprintf("%02d:%02d", minutes/60, minutes%60)
}
