package desk

import (
	"slices"
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// Shell is the left rail: the winter, its barns with their loggers, and what hangs nowhere yet.
type Shell struct {
	Title   string // of the window
	Winter  string
	Note    string // of the winter as a whole
	Files   FilesRow
	Barns   []BarnEntry
	Outdoor []LoggerEntry // weather that holds for every barn
	Tray    []LoggerEntry
}

// FilesRow leads to the winter's files; Mark and Note say whether one waits.
type FilesRow struct {
	Note string
	Mark Mark
}

// BarnEntry is a barn in the rail.
type BarnEntry struct {
	Name, Note string
	Mark       Mark
	Loggers    []LoggerEntry
}

// LoggerEntry is a logger in the rail: where it hangs and, where something is amiss, what.
type LoggerEntry struct {
	Name, Place, Note string
	Mark              Mark
	At                Slot
	Waits             string // the file of its that waits for an answer; empty when none does
}

// Header is the top of a barn: who stood there and when, and the four answers.
type Header struct {
	Name, Line string
	Noted      string // what the keeper saw; empty when he noted nothing
	Answers    []AnswerCard
}

// AnswerCard is one of the four questions with its short answer.
type AnswerCard struct {
	Question, Word, Figure, Sentence string
	Help                             string // what the answer means
	Mark                             Mark
}

// HeaderOf is the header of one barn.
func HeaderOf(in analysis.Input, r analysis.Review, u Units) Header {
	b := newBarn(in, r, u)
	answers := []AnswerCard{b.held(), b.damp(), b.dry(), b.fans()}
	for i, kind := range []string{"held", "damp", "dry", "fans"} {
		answers[i].Help = HelpLine(kind)
	}
	return Header{Name: r.Barn, Line: b.whoAndWhen(), Answers: answers}
}

// BarnMark is the worst of what the answers say about the air: held, damp, dry.
func BarnMark(v analysis.Verdict) Mark {
	worst, known := MarkGood, false
	for _, m := range []Mark{goodWhenYes(v.Held.State), goodWhenNo(v.Damp.State), goodWhenNo(v.Dry.State)} {
		switch m {
		case MarkUnknown:
			continue
		case MarkAct:
			return MarkAct
		case MarkWatch:
			worst = MarkWatch
		}
		known = true
	}
	if !known {
		return MarkUnknown
	}
	return worst
}

// whoAndWhen is "338 hives, in 12 November 2023, out 4 April 2024: 143 days, 2 unknown".
func (b barn) whoAndWhen() string {
	if b.r.BeesOut <= b.r.BeesIn {
		return b.noTime()
	}
	var parts []string
	if n := float64(b.hives()); n > 0 {
		parts = append(parts, hives(n))
	}
	by := b.r.BeesBy
	from, to := "in ", "out "
	if by.In == analysis.Assumed {
		from = "record from "
	}
	if by.Out == analysis.Assumed {
		to = "record to "
	}
	parts = append(parts, from+b.u.DateYear(b.r.BeesIn), to+b.u.DateYear(b.r.BeesOut))
	line := capital(strings.Join(parts, ", "))
	if by == (analysis.BeesBy{In: analysis.Assumed, Out: analysis.Assumed}) {
		line = strings.Replace(line, ", record to ", " to ", 1)
	}
	line += ": " + b.length()
	if text := endsWords[by]; text != "" {
		line += ". " + text
	}
	return line + "."
}

// noTime says why there is nothing to judge.
func (b barn) noTime() string {
	said := b.r.BeesBy.In == analysis.YourSetting || b.r.BeesBy.Out == analysis.YourSetting
	switch n := b.roomReadings(); {
	case n > 0 && said:
		return "The room's record lies outside the date set down for the bees, so there is no time to judge."
	case n == 1:
		return "There is a single reading from the room and no dates are set down, so there is no time to judge yet."
	case said:
		return "There is no reading from the room and only one date is set down, so there is no time to judge yet."
	}
	return "There is no reading from the room and no dates are set down, so there is no time to judge yet."
}

// roomReadings is how many readings there are from the room, of temperature or humidity, whichever are more.
func (b barn) roomReadings() int { return max(b.r.Traces.Room.Len(), b.r.Traces.RoomRelHum.Len()) }

// endsWords say what the two ends of the bees' time rest on, where the keeper did not set down both.
var endsWords = map[analysis.BeesBy]string{
	{In: analysis.Assumed, Out: analysis.Assumed}:       "When the bees went in and came out is not set down: the whole record is taken (assumed)",
	{In: analysis.WorkedOut, Out: analysis.Assumed}:     "When the bees went in and came out is not set down: the first day is read off the loggers, the last is where the record ends (assumed)",
	{In: analysis.Assumed, Out: analysis.WorkedOut}:     "When the bees went in and came out is not set down: the first day is where the record begins, the last is read off the loggers (assumed)",
	{In: analysis.WorkedOut, Out: analysis.WorkedOut}:   "The days are read off the loggers; set them down if the bees came or went on others",
	{In: analysis.YourSetting, Out: analysis.Assumed}:   "When the bees came out is not set down: the record is taken to its end (assumed)",
	{In: analysis.YourSetting, Out: analysis.WorkedOut}: "The day the bees came out is read off the loggers; set it down if it was another",
	{In: analysis.Assumed, Out: analysis.YourSetting}:   "When the bees went in is not set down: the record is taken from its beginning (assumed)",
	{In: analysis.WorkedOut, Out: analysis.YourSetting}: "The day the bees went in is read off the loggers; set it down if it was another",
}

// inHoursBelowMS is the length of time from which it is told in days.
const inHoursBelowMS = 36 * series.HourMS

// length is the bees' time in days, hours where it is short, and how much of it is unknown.
func (b barn) length() string {
	whole := float64(b.r.BeesOut - b.r.BeesIn)
	text := Days(whole)
	if whole < inHoursBelowMS {
		text = Hours(whole / series.HourMS)
	}
	unknownMS := whole * (1 - b.r.Coverage)
	switch {
	case unknownMS < 1000:
		return text + ", all known"
	case unknownMS < inHoursBelowMS:
		return text + ", " + Hours(unknownMS/3600/1000) + " unknown"
	}
	return text + ", " + strings.TrimSuffix(strings.TrimSuffix(Days(unknownMS), " days"), " day") + " unknown"
}

func (b barn) held() AnswerCard {
	a := b.r.Verdict.Held
	card := AnswerCard{Question: "Held?", Word: stateWord(a.State), Mark: goodWhenYes(a.State)}
	row, ok := b.band("air_temperature", "good")
	if !a.Figure.OK || !ok {
		return card.withoutFigure(a)
	}
	card.Figure = Percent(a.Figure.Mid / 100)
	card.Sentence = OfHundred(a.Figure.Mid/100) + " hours " + b.inside(row) + "."
	return card
}

func (b barn) damp() AnswerCard {
	a := b.r.Verdict.Damp
	card := AnswerCard{Question: "Damp?", Word: oftenWord(a.State), Mark: goodWhenNo(a.State)}
	if !a.Figure.OK {
		return card.withoutFigure(a)
	}
	card.Word, card.Figure = notAtAll(a), Hours(a.Figure.Mid)
	limit := "very damp air"
	if row, ok := b.band("relative_humidity", "watch"); ok && row.High != nil {
		limit = "air above " + Percent(*row.High/100) + " for 6" + thinSpace + "h or longer"
	}
	if b.judgedSurfaces() > 0 {
		limit += ", or a wet wall or ceiling"
	}
	card.Sentence = capital(limit) + ": " + orNever(a.Figure)
	return card
}

// judgedSurfaces counts the listed walls and ceilings; cold metal is no part of the answer.
func (b barn) judgedSurfaces() int {
	n := 0
	for _, s := range b.r.Surfaces {
		if s.Kind != "metal" && s.DewHours.OK {
			n++
		}
	}
	return n
}

func (b barn) dry() AnswerCard {
	a := b.r.Verdict.Dry
	card := AnswerCard{Question: "Dry?", Word: oftenWord(a.State), Mark: goodWhenNo(a.State)}
	row, ok := b.band("relative_humidity", "good")
	if !a.Figure.OK || !ok {
		return card.withoutFigure(a)
	}
	limit := "the limit of the phase"
	if row.Low != nil {
		limit = Percent(*row.Low / 100)
	}
	card.Word, card.Figure = notAtAll(a), Hours(a.Figure.Mid)
	card.Sentence = "Below " + limit + " for a day or longer: " + orNever(a.Figure)
	return card
}

// notAtAll is the short answer to whether something undesired was there; No with some hours of it is hardly.
func notAtAll(a analysis.Answer) string {
	if a.State == analysis.No && a.Figure.Mid >= 0.5 {
		return "Hardly"
	}
	return oftenWord(a.State)
}

// orNever ends a sentence with a number of hours, and how many they may have been.
func orNever(f analysis.Figure) string {
	text := "never"
	if f.Mid > 0 {
		text = Hours(f.Mid)
	}
	if hoursNumber(f.Low) != hoursNumber(f.High) {
		text += ", may be " + HoursRange(f.Low, f.High)
	}
	return text + "."
}

func (b barn) fans() AnswerCard {
	a := b.r.Verdict.Fans
	card := AnswerCard{Question: "Fans?", Word: fansWord(a.State)}
	if !a.Figure.OK {
		card = card.withoutFigure(a)
		if len(b.in.Stages) == 0 {
			card.Sentence = "No fan stages are set down."
		}
		return card
	}
	card.Mark = MarkWatch
	if a.State == analysis.Yes {
		card.Mark = MarkGood
	}
	card.Figure = Percent(a.Figure.Mid / 100)
	if a.State == analysis.No { // the word is of the big ones, and so is the figure
		card.Figure = Percent(1 - a.Figure.Mid/100)
	}
	card.Sentence = b.carried(a.Figure)
	if OfHundred(a.Figure.Low/100) != OfHundred(a.Figure.High/100) {
		card.Sentence += ", may be " + shareRange(a.Figure)
	}
	card.Sentence += "."
	return card
}

// carried says how much of the winter the small fans carried.
func (b barn) carried(share analysis.Figure) string {
	return b.smallFans() + " carried " + OfHundred(share.Mid/100) + " hours alone"
}

// smallFans are the fans that are always on and the first stage above them, by their names.
func (b barn) smallFans() string {
	var names []string
	for _, st := range b.in.Stages {
		if slices.ContainsFunc(st.Settings, func(s analysis.Setting) bool { return s.AlwaysOn }) {
			names = append(names, st.Name)
		}
	}
	if above := b.thermostatStages(); len(above) > 0 && !slices.Contains(names, above[0]) {
		names = append(names, above[0])
	}
	return capital(listed(names))
}

// fansWord answers whether the small fans were enough.
func fansWord(s analysis.State) string {
	switch s {
	case analysis.Yes:
		return "Small ones did"
	case analysis.Mostly:
		return "Mostly small"
	case analysis.No:
		return "Big ones too"
	}
	return "Can't tell"
}

func (c AnswerCard) withoutFigure(a analysis.Answer) AnswerCard {
	c.Word, c.Mark, c.Figure = stateWord(analysis.Unknown), MarkUnknown, ""
	c.Sentence = capital(lacks(a.Figure.Unknown)) + "."
	return c
}
