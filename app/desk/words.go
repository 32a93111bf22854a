package desk

import "thawbook/analysis"

// Mark is the state shown beside a name: a shape and a colour in the window, never the colour alone.
type Mark string

// The marks.
const (
	MarkGood    Mark = "good"    // nothing to do
	MarkWatch   Mark = "watch"   // worth an eye
	MarkAct     Mark = "act"     // something to do
	MarkUnknown Mark = "unknown" // can't tell
	MarkNone    Mark = ""        // no judgement is due
)

// Word names a mark for those who do not see it.
func (m Mark) Word() string {
	switch m {
	case MarkGood:
		return "all well"
	case MarkWatch:
		return "worth a look"
	case MarkAct:
		return "needs attention"
	case MarkUnknown:
		return "can't tell"
	}
	return ""
}

// stateWord is the short answer to one of the four questions.
func stateWord(s analysis.State) string {
	switch s {
	case analysis.Yes:
		return "Yes"
	case analysis.Mostly:
		return "Mostly"
	case analysis.No:
		return "No"
	}
	return "Can't tell"
}

// oftenWord is the short answer to whether something undesired was there.
func oftenWord(s analysis.State) string {
	if s == analysis.Mostly {
		return "At times"
	}
	return stateWord(s)
}

// goodWhenYes and goodWhenNo turn an answer into a mark: having held is good, having been damp is not.
func goodWhenYes(s analysis.State) Mark {
	return map[analysis.State]Mark{analysis.Yes: MarkGood, analysis.Mostly: MarkWatch, analysis.No: MarkAct, analysis.Unknown: MarkUnknown}[s]
}

func goodWhenNo(s analysis.State) Mark {
	return map[analysis.State]Mark{analysis.No: MarkGood, analysis.Mostly: MarkWatch, analysis.Yes: MarkAct, analysis.Unknown: MarkUnknown}[s]
}

// evidenceWord says what a figure rests on.
func evidenceWord(e analysis.Evidence) string {
	switch e {
	case analysis.Recorded:
		return "recorded"
	case analysis.WorkedOut:
		return "worked out"
	case analysis.YourSetting:
		return "your setting"
	case analysis.Assumed:
		return "assumed"
	}
	return "not said"
}

// restsOn is the line under a sentence that says what it rests on; empty where it was worked out from the readings, as
// nearly all is.
func restsOn(e analysis.Evidence) string {
	switch e {
	case analysis.Recorded:
		return "By a record."
	case analysis.YourSetting:
		return "From what you set down."
	case analysis.Assumed:
		return "Rests on what was taken because nothing is set down."
	}
	return ""
}

// spellWord names the kind of a spell.
func spellWord(kind string) string {
	switch kind {
	case "moist":
		return "high dew point"
	case "warm", "cold", "damp", "dry":
		return kind
	case "dew":
		return "wet"
	case "frost":
		return "frosted"
	}
	return "outside the band"
}

// lacks says what is missing where a figure is not known, as the end of "can't be told: …".
func lacks(reason string) string {
	if text, ok := lackTexts[reason]; ok {
		return text
	}
	return "the files do not hold enough for it"
}

var lackTexts = map[string]string{
	"too_little_known":       "too few hours were recorded",
	"less_than_a_day":        "the bees' time here is less than a day, which is too little to judge by",
	"record_outside_dates":   "the room's record lies outside the dates set down for the bees",
	"nothing_known":          "nothing was recorded",
	"no_outdoor":             "there is no outdoor temperature",
	"no_humidity":            "no logger in the room recorded humidity",
	"no_head_count":          "the number of hives is not set down",
	"no_room_temperature":    "no logger in the room recorded temperature",
	"not_read_together":      "no logger in the room recorded temperature and humidity at the same time",
	"no_surface":             "no wall or ceiling is listed",
	"no_room":                "there is no reading from the room",
	"no_control_temperature": "no logger shows the temperature the thermostat goes by",
	"no_stages":              "fewer than two fan stages with a thermostat are set down",
	"no_watts":               "the fan's watts are not set down",
	"hours_unknown":          "the hours are not known",
	"no_whole_run":           "no run was seen from start to end",
	"runs_too_short_to_see":  "the logger reads too seldom to see the runs",
	"range_too_wide":         "the logger's error leaves the hours too uncertain to name",
}
