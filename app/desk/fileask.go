package desk

import (
	"regexp"
	"slices"
	"strings"
	"time"

	"thawbook/app/engine"
	"thawbook/app/winter"
)

// FileQuestion is something only the keeper can know of a file, with the answers there are.
type FileQuestion struct {
	ID, Text string
	Options  []FileOption
	Alike    []string // the other files written the same way that ask the same
	Others   string   // those in a sentence
	Before   string   // what was answered for another file written the same way
	Pairing  bool     // it is about columns, which can be said one by one too
	Typed    string   // how an answer is typed, as an example; "" where it is chosen alone

	layouts map[string]string             // of the files that ask, where they may be written in several ways
	layout  string                        // for whose files the answer holds; "" where it is the file's own
	moved   map[string][]winter.Regrouped // what becomes of the loggers, by the answer
}

// FileOption is an answer with what the file would then say.
type FileOption struct{ Option, Label, Preview string }

// optionWords are the answers in a keeper's words.
var optionWords = map[string]string{
	"dmy": "Day first", "mdy": "Month first", "ymd": "Year first", "degC": "°C", "degF": "°F", "K": "Kelvin", "percent": "Percent", "fraction": "Fraction of one",
	".": "The point", ",": "The comma", own: "Your own logger's", "in_order": "First to first", "apart": "None to any",
	"air_temperature": "Temperature", "relative_humidity": "Humidity", "other": "Neither", "1900": "From 1900", "1904": "From 1904",
}

// optionWord is an answer in a keeper's words, else as it is.
func optionWord(option string) string {
	if word, ok := optionWords[option]; ok {
		return word
	}
	if day, ok := optionDay(option); ok {
		return day
	}
	if unit, columns, ok := strings.Cut(option, ":"); ok && optionWords[unit] != "" {
		return optionWords[unit] + " in " + columnsNamed(columns)
	}
	return capital(strings.ReplaceAll(option, "_", " "))
}

// columnsNamed are "columns 2 and 4".
func columnsNamed(numbers string) string {
	all := strings.FieldsFunc(numbers, func(r rune) bool { return r == '+' || r == ',' || r == ' ' })
	return oneOrMany(len(all), "column ", "columns ") + listed(all)
}

// shortQuestions are what a file that waits asks, in a few words.
var shortQuestions = map[string]string{
	"day_month": "day or month first?", "day_zero": "days from 1900 or 1904?", "temperature_unit": "°C or °F?", "humidity_unit": "percent or fraction?", "year": "of which year?", firstDay: "begun on which day?", "quantity": "temperature or humidity?",
	"decimal_mark": "point or comma?", engine.Pairing: "which columns belong together?",
}

// waits says whether a file is held back by a question.
func waits(f engine.File) bool { return holdingQuestion(f) != "" }

// holdingQuestion is the first question that holds a file back, or "". The zone holds nothing back: the winter's
// stands for it.
func holdingQuestion(f engine.File) string {
	for _, id := range questionIDs(f) {
		if id != "zone" && id != "dst" {
			return id
		}
	}
	return ""
}

func questionIDs(f engine.File) (out []string) {
	if f.Export == nil {
		return nil
	}
	for _, q := range f.Export.Questions {
		out = append(out, q.ID)
	}
	return out
}

// questions are what a file asks.
func (b Book) questions(f engine.File, u Units) (out []FileQuestion) {
	if f.Export == nil {
		return nil
	}
	if b.asksZone(f.Name) {
		out = append(out, b.zoneQuestion(f))
	}
	for _, q := range f.Export.Questions {
		ask := FileQuestion{ID: q.ID, Text: withoutCodes(QuestionOf(q.ID, q.Columns)), Before: b.answeredBefore(f, q.ID), Pairing: q.ID == engine.Pairing, moved: map[string][]winter.Regrouped{}}
		if engine.PerLayout(q.ID) {
			ask.layout = engine.LayoutOf(f.Export)
		}
		if q.ID == firstDay {
			ask.Typed = exampleDay
		}
		for _, p := range b.looked.previews[f.Name] {
			if p.id == q.ID {
				ask.Options = append(ask.Options, FileOption{p.option, optionWord(p.option), p.words(u)})
			}
		}
		for _, other := range b.alike(f) {
			if q.ID == firstDay && other.Name != f.Name || !slices.Contains(questionIDs(other), q.ID) {
				continue
			}
			if other.Name != f.Name {
				ask.Alike = append(ask.Alike, other.Name)
			}
			ask.follow(other, b.looked.previews[other.Name])
		}
		ask.Others = othersWords(ask.Alike)
		out = append(out, ask)
	}
	return out
}

// othersWords are "b.csv and c.csv are written the same way and ask the same."
func othersWords(alike []string) string {
	return namedOrCounted(alike) + " " + oneOrMany(len(alike), "is written the same way and asks the same.", "are written the same way and ask the same.")
}

// follow notes what becomes of a file's loggers with each answer to which columns belong together.
func (q *FileQuestion) follow(f engine.File, all []preview) {
	for _, p := range all {
		if q.Pairing && p.id == q.ID {
			q.moved[p.option] = append(q.moved[p.option], moved(f, p.loggers)...)
		}
	}
}

// codes are the answers' codes that a question names for programs.
var codes = regexp.MustCompile(` \([a-z_]+\)`)

// withoutCodes is a question as it is asked on the screen.
func withoutCodes(question string) string { return codes.ReplaceAllString(question, "") }

// answeredBefore says what was answered for another file written the same way.
func (b Book) answeredBefore(f engine.File, id string) string {
	all := b.alike(f)
	for _, a := range b.doc.Answers {
		if i := fileNamed(all, a.File); i > 0 && a.ID == id {
			return "For " + a.File + ", which is written the same way, you said: " + optionWord(a.Option) + "."
		}
	}
	return ""
}

const faceLayout = "2 January 2006 15:04"

// words are "first reading 3 April 2024 12:00, 4.2 °C; last 5 April 2024 12:00", and where a unit is asked
// "first reading 4.2 °C; all 3.1 °C to 5.0 °C".
func (p preview) words(u Units) string {
	switch {
	case p.quantity == "":
		return "no reading could be used"
	case p.id == "pairing":
		return p.paired(u)
	case strings.HasSuffix(p.id, "_unit"):
		return "first reading " + p.value(p.val, u) + "; all " + p.value(p.low, u) + " to " + p.value(p.high, u)
	}
	return "first reading " + faceWords(p.firstMS) + ", " + p.value(p.val, u) + "; last " + faceWords(p.lastMS)
}

// paired are "inside 4.0 °C with 60 %; outside −3.0 °C with 85 %".
func (p preview) paired(u Units) string {
	var parts []string
	for _, x := range p.pairs {
		switch {
		case x.tempC != nil && x.relHum != nil:
			parts = append(parts, x.logger+" "+u.Temp(*x.tempC)+" with "+Percent(*x.relHum))
		case x.tempC != nil:
			parts = append(parts, x.logger+" "+u.Temp(*x.tempC)+" alone")
		case x.relHum != nil:
			parts = append(parts, x.logger+" "+Percent(*x.relHum)+" alone")
		}
	}
	return strings.Join(parts, "; ")
}

// value is a reading with its unit, without one while that is asked too.
func (p preview) value(v float64, u Units) string {
	switch {
	case isHeat(p.quantity) && p.unit != "":
		return u.Temp(v)
	case p.quantity == "relative_humidity":
		return Percent(v)
	}
	return shortest(v)
}

// faceDay is the day a clock showed.
func faceDay(ms int64) string { return time.UnixMilli(ms).UTC().Format("2 January 2006") }

// faceWords is what a clock showed.
func faceWords(ms int64) string { return time.UnixMilli(ms).UTC().Format(faceLayout) }

// Answered is the edit that answers a file's question: for all files written the same way, now and later, or with
// alone for this one.
func Answered(file string, q FileQuestion, option string, alone bool) winter.Edit {
	e := winter.SetAnswer{Files: append([]string{file}, q.Alike...), ID: q.ID, Option: option, Layout: q.layout}
	if alone {
		e.Files, e.Layout = e.Files[:1], ""
	}
	if q.layouts != nil && !alone {
		return q.byLayout(e)
	}
	if !q.Pairing {
		return e
	}
	loggers := slices.Clone(q.moved[option])
	loggers = slices.DeleteFunc(loggers, func(m winter.Regrouped) bool { return !slices.Contains(e.Files, m.File) })
	return winter.Regroup{Answer: e, Loggers: loggers}
}

// FileAnswer is an answer the keeper gave for a file, with the edit that takes it back; nil where loggers follow
// from it, which are grouped anew instead.
type FileAnswer struct {
	Text string
	Undo winter.Edit
}

// answered are the answers a file was read with: given for it by its name, or for files written the same way.
func (b Book) answered(f engine.File) (out []FileAnswer) {
	for _, a := range b.answersOf(f) {
		answer := FileAnswer{Text: answeredWords(a, f.Name)}
		if a.ID != engine.Pairing {
			answer.Undo = winter.SetAnswer{Files: []string{a.File}, ID: a.ID, Layout: a.Layout}
		}
		out = append(out, answer)
	}
	return out
}

// answersOf are the answers that hold for a file: its own, and those it was read with that still stand.
func (b Book) answersOf(f engine.File) []winter.Answer {
	own := slices.DeleteFunc(slices.Clone(b.doc.Answers), func(a winter.Answer) bool { return a.Layout != "" || a.File != f.Name })
	for _, a := range f.Remembered {
		if slices.Contains(b.doc.Answers, a) {
			own = append(own, a)
		}
	}
	return own
}

// answeredWords are "Are the dates written day first or month first? As you said for a.csv: day first."
func answeredWords(a winter.Answer, file string) string {
	text := withoutCodes(Question(a.ID))
	if i := strings.Index(text, "?"); i > 0 {
		text = text[:i+1]
	}
	said := optionWord(a.Option)
	if _, grouped := engine.ParseGroups(a.Option); grouped && a.ID == engine.Pairing {
		text, said = "Which columns belong together?", "as they stand below"
	}
	if a.ID == engine.SwappedColumns {
		said = columnsNamed(a.Option) + " the other way round"
	}
	if a.File != file {
		return text + " As you said for " + a.File + ": " + said + "."
	}
	return text + " You said: " + said + "."
}
