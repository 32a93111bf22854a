package desk

import (
	"cmp"
	"fmt"
	"strings"

	"thawbook/analysis/series"
	"thawbook/app/engine"
)

// NoteDoc is a note on the data as JSON: its code, one sentence, and how often it was met.
type NoteDoc struct {
	Code  string `json:"code"`
	Text  string `json:"text"`
	Count int    `json:"count"`
}

func noteDocs(remarks []series.Remark) []NoteDoc {
	out := []NoteDoc{}
	for _, r := range remarks {
		out = append(out, NoteDoc{Code: r.Code, Text: ReviewNote(r), Count: max(1, r.Count)})
	}
	return out
}

// reviewNotes are the sentences of notes on a review as a whole.
var reviewNotes = map[string]string{
	"bees_time_assumed":         "Nobody said when the bees went in or came out, so the whole record of the room is judged. Give both dates to judge only the bees' time.",
	"bees_time_half_seen":       "Nobody said when the bees went in or came out. One of the days is read off the loggers; for the other an end of the record is taken. Give both dates to judge only the bees' time.",
	"bees_time_from_traces":     "When the bees went in and came out is read off the loggers: when they came into the barn and left it. If the bees came or went on other days, set those down.",
	"bees_in_assumed":           "Nobody said when the bees went in, so the room's record is judged from its beginning. Give the date to judge only the bees' time.",
	"bees_in_from_traces":       "When the bees went in is read off the loggers: when they came into the barn. If it was on another day, set it down.",
	"bees_out_assumed":          "Nobody said when the bees came out, so the room's record is judged to its end. Give the date to judge only the bees' time.",
	"bees_out_from_traces":      "When the bees came out is read off the loggers: when they left the barn. If it was on another day, set it down.",
	"no_room_temperature":       "No logger of this barn measured its air, so nothing can be said of its temperature. Say which logger hung in the room.",
	"room_is_control":           "No logger hung in the room itself; the control logger stands for the room's air.",
	"temperature_is_control":    "No logger in the room measured temperature; the control logger's stands for the room's.",
	"humidity_is_control":       "No logger in the room measured humidity; the control logger's stands for the room's.",
	"no_humidity":               "No logger of this barn measured humidity, so nothing can be said of damp, dryness or wet walls.",
	"no_common_time":            "The two barns have no hours in common in which bees were in both.",
	"other_winter":              "Two winters are set side by side, day by day. They had weather of their own, so what was alike in the same weather outdoors tells more than the means; and one winter is one winter.",
	"limits_differ":             "The two barns have limits of their own; hours outside are counted against the laxer of the two in both.",
	"no_outdoor":                "There is no outdoor temperature, so hours of wet walls can't be worked out. A logger in the shade outdoors, or a weather station's file, would settle it.",
	"alarm_is_room_mean":        "No logger hung beside the alarm's sensor or the thermostat, so its calls are held against the air of the room.",
	"control_is_room_mean":      "No logger is named as the one beside the thermostat, so the mean of the room's loggers stands for it.",
	"offset_not_estimated":      "The room's temperature turned too seldom at the stages' settings to tell how far the logger reads from the thermostat; its whole error is allowed for.",
	"undecided_at_an_end":       "Were the logger off by its whole error, the temperature would have stood between on and off all the time and the rule would settle nothing. The hours hold if the logger reads about as the thermostat does; both in the same melting ice would settle it.",
	"in_step_with_timer":        "The record is sampled in step with the timer, so it sees the same moment of every round and says little of how long the fan ran. A logger every 7 minutes would settle it.",
	"thermostat_apart":          "The record shows the stage starting or stopping at temperatures apart from those it is set to, by more than the logger's error: the thermostat switches elsewhere than it says, or the logger reads wrong. Both in the same melting ice would settle it.",
	"offset_half_stage_spacing": "The logger's possible error reaches half the distance between two stages, so it can hardly tell one stage from the next.",
}

// joiningNotes are the sentences of notes on loggers and their files; %s stands for the arguments in order.
var joiningNotes = map[string]string{
	"plan_refused":             "The plan could not be read: %s",
	engine.NoneAlike:           "%s has no barn of the same name as one of this winter; its barns: %s. Give them one name and set it beside again.",
	engine.NothingChosen:       "Logger %s: the file %s holds no column that could be its own. Name the column as its channel, or take the file away from it.",
	"logger_elsewhere":         "Logger %s was not in the barn for %s h of the bees' time: its record shows it coming in later or leaving before. These hours count until you leave them out; or the bees' days are others.",
	engine.SeveralLoggers:      "Logger %s: the file %s holds several loggers and the first was taken. Name the one meant as its channel.",
	engine.OfNoStage:           "Logger %s: the file %s records what ran, and of which stage or heat source is not set down; until then it counts for nothing.",
	engine.NoState:             "Logger %s is to show when %s ran, but its files hold no column of states.",
	engine.SameFile:            "The files %s and %s hold the same log, byte for byte. If they are meant to be two loggers, one was saved under both names.",
	engine.WaitsForAnswer:      "Logger %s: the file %s waits for an answer and is left out until then (%s): inspect asks the question, and an [[answer]] in the plan settles it.",
	engine.AnswerUnused:        "An answer for %s (question %s) fits no file of the plan. Check the name in the [[answer]].",
	engine.ClockSkippedHour:    "Logger %s, file %s: its clock was put forward with summer time, and was read so.",
	engine.ClockRepeatedHour:   "Logger %s, file %s: its clock was put back with winter time, and was read so.",
	engine.ClockAssumedFixed:   "Logger %s, file %s: summer time began or ended within the log and the clock does not show it; it is taken as never changed.",
	engine.ClockContradicts:    "Logger %s, file %s: its clock followed one change of summer time and not another; say which is right with follows_dst.",
	engine.ClockImpossibleHour: "Logger %s, file %s: readings in an hour that summer time skipped. If the clock never changes, say so with follows_dst.",
	engine.ClockZoneAssumed:    "The files that name no time zone, %s of them, are read in the winter's, %s, until the question on the Files screen is answered. A logger set to another one stands hours beside the others.",
	engine.ClockLost:           "Logger %s, file %s: its clock began anew at a date of years ago; the readings with such dates were left out.",
	engine.SecondsMissing:      "Logger %s, file %s: its times have no seconds and each minute comes %s times; the readings were put evenly into their minutes.",
	engine.ClockZoneUnknown:    "Logger %s, file %s: the time zone “%s” is not known; the winter's is taken. Name the right one as the logger's zone.",
	engine.SameTimeDropped:     "Logger %s, file %s: some times come twice with different values; the first of each is kept.",
	engine.SortedRows:          "Logger %s, file %s: some rows were out of order and were put in order.",
	engine.Duplicates:          "Logger %s, file %s: some rows come twice; one of each is kept.",
	engine.SameReadings:        "Logger %s: the file %s repeats readings of %s, moved by %s s; each is counted once.",
	engine.StateByLimit:        "Logger %s, file %s: it ran where the record lies above %s, half way between its two levels.",
	engine.SpeedRead:           "Logger %s, file %s: it records the fan's speed; %s is taken as full speed, at which the plan's flow and watts hold, and a twentieth of that as standing.",
	engine.LoggerFault:         "Logger %s could not be put together: an internal fault of the program. Everything else was worked out.",
	engine.BarnFault:           "Barn %s could not be judged: an internal fault of the program. The other barns were.",
	engine.ReadoutsDiffer:      "Logger %s: the files %s and %s differ at the same times; the earlier read-out is kept.",
}

// doubtNote is the sentence for readings that can hardly be right. Its argument number value (0-based; 0 is none)
// gets the unit of the quantity that the argument before it names, that of a level or of a difference.
type doubtNote struct {
	text  string
	value int
	level bool
}

// doubtNotes say what is odd first and what may be done then.
var doubtNotes = map[string]doubtNote{
	engine.DoubtStuck:      {"Logger %s: its %s stood at %s for %s h, far longer than it ever else stays on one value. Look whether it was read right; the stretch can be left out.", 2, true},
	engine.DoubtSaturated:  {text: "Logger %s: its humidity stood at 100 %% for %s h while the air can't have been so damp: the sensor was wet. The stretch can be left out."},
	engine.DoubtJumping:    {"Logger %s: its %s jumped and came straight back, by %s at most. Air does not do that; the readings can be left out.", 2, false},
	engine.DoubtSentinel:   {"Logger %s: its %s holds values that no air there has, such as %s. They most likely stand for a failed reading and can be left out.", 2, true},
	engine.DoubtSwapped:    {text: "Logger %s: its temperature and humidity fit each other's column. Where the file's header is wrong the two can be read the other way round; else the stretch can be left out."},
	engine.DoubtFahrenheit: {text: "Logger %s: its temperatures, about %s, would fit as °F: %s °C. Where the file's header is wrong they can be read so; else the stretch can be left out."},
	engine.DoubtDrift:      {"Logger %s: its %s parted slowly from its neighbours, by %s in all. Check it in ice or over salt; it can be left out.", 2, false},
	engine.DoubtDriftOfTwo: {"Loggers %s and %s part slowly: the first's %s changed by %s against the other's. Two alone don't tell which of them drifts; check both in ice or over salt.", 3, false},
	engine.DoubtCarried:    {text: "Logger %s: at the beginning or end of its log it was out of the room for %s h, outdoors or in a house. The stretch can be left out."},
	engine.DoubtElsewhere:  {"Logger %s: its %s lies %s from all the others in the room, from end to end. See where it hung; until then it can be left out.", 2, false},
	engine.DoubtApart:      {"Logger %s: its %s lay %s from all the others in the room. See whether it was read right and where it hung then; the stretch can be left out.", 2, false},
	engine.DoubtWet:        {text: "Logger %s: after it was wet its humidity took %s h to come down to its neighbours'. The stretch can be left out."},
	engine.DoubtIce:        {text: "%s: the column “%s” is worked out over ice, ours over water; they differ by about %s (K, or g/m³). Both are right in their way."},
	engine.DoubtFormula:    {text: "%s: the column “%s” follows another formula than ours; they differ by about %s (K, or g/m³). Ours is used."},
	engine.DoubtSwap:       {text: "%s: the column “%s” fits only if temperature and humidity are swapped; as read they differ by about %s (K, or g/m³). See how the file was read."},
	engine.DoubtOff:        {text: "%s: the column “%s” does not follow from the temperature and humidity beside it, in %s of 100 readings. It may belong to another sensor, or be a mean or an extreme of other readings."},
}

// sentence puts a remark's arguments into the text.
func (n doubtNote) sentence(args []string) string {
	said := anyOf(args)
	if n.value > 0 {
		unit := " K"
		switch humid := args[n.value-1] == "humidity"; {
		case humid && n.level:
			unit = " %"
		case humid:
			unit = " points"
		case n.level:
			unit = " °C"
		}
		said[n.value] = args[n.value] + unit
	}
	return fmt.Sprintf(n.text, said...)
}

// ReviewNote is the sentence for a note on a review or on one of its inputs.
func ReviewNote(r series.Remark) string {
	if text, ok := reviewNotes[r.Code]; ok {
		return text
	}
	if r.Code == engine.SameReadings && len(r.Args) == 4 && r.Args[3] == "0" {
		return fmt.Sprintf("Logger %s: the file %s repeats readings of %s; each is counted once.", r.Args[0], r.Args[1], r.Args[2])
	}
	if r.Code == engine.FileRefused && len(r.Args) > 1 {
		_, why := Refusal(r.Args[0], refusal{Code: r.Args[1], Args: r.Args[2:], Line: r.Line, Column: r.Column})
		return "Left out: " + sentence(why)
	}
	if text, ok := joiningNotes[r.Code]; ok && strings.Count(text, "%s") == len(r.Args) {
		return fmt.Sprintf(text, anyOf(r.Args)...)
	}
	if text := settingNote(r); text != "" {
		return text
	}
	if note, ok := doubtNotes[r.Code]; ok && strings.Count(note.text, "%s") == len(r.Args) {
		return note.sentence(r.Args)
	}
	return strings.TrimSpace(strings.ReplaceAll(r.Code, "_", " ") + ": " + strings.Join(r.Args, ", "))
}

// windowNote is the note as the window says it: where the doors name what to write in a plan, it names what to press.
func windowNote(r series.Remark) string {
	if r.Code == engine.WaitsForAnswer && len(r.Args) == 3 {
		return fmt.Sprintf("Logger %s: the file %s waits for an answer and is left out until then: %s It is asked under Files.",
			r.Args[0], r.Args[1], cmp.Or(shortQuestions[r.Args[2]], "one question."))
	}
	return pressed.Replace(ReviewNote(r))
}

// pressed puts what to press in the place of what to write in a plan.
var pressed = strings.NewReplacer(
	"Give them one name and", "Give them one name (Edit, Rename) and",
	"with follows_dst", "under Files, Clock",
	"name its zone.", "name its zone under Files, Clock.",
	"as the logger's zone.", "under Files, Clock.",
	" Check the name in the [[answer]].", "",
)

func anyOf(args []string) []any {
	out := make([]any, len(args))
	for i, a := range args {
		out[i] = a
	}
	return out
}
