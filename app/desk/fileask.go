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
	Before   string   // what was answered for another file written the same way
}

// FileOption is an answer with what the file would then say.
type FileOption struct{ Option, Label, Preview string }

// optionWords are the answers in a keeper's words.
var optionWords = map[string]string{
	"dmy": "Day first", "mdy": "Month first", "ymd": "Year first", "degC": "°C", "degF": "°F", "K": "Kelvin", "percent": "Percent", "fraction": "Fraction of one",
	"in_order": "First to first", "apart": "None to any",
}

// optionWord is an answer in a keeper's words, else as it is.
func optionWord(option string) string {
	if word, ok := optionWords[option]; ok {
		return word
	}
	return capital(strings.ReplaceAll(option, "_", " "))
}

// waits says whether a file is held back by a question. The zone holds nothing back: the winter's stands for it.
func waits(f engine.File) bool {
	if f.Export == nil {
		return false
	}
	for _, q := range f.Export.Questions {
		if q.ID != "zone" && q.ID != "dst" {
			return true
		}
	}
	return false
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
	for _, q := range f.Export.Questions {
		ask := FileQuestion{ID: q.ID, Text: questionWords(q.ID), Before: b.answeredBefore(f, q.ID)}
		for _, p := range b.looked.previews[f.Name] {
			if p.id == q.ID {
				ask.Options = append(ask.Options, FileOption{p.option, optionWord(p.option), p.words(u)})
			}
		}
		for _, other := range b.files() {
			if other.Name != f.Name && slices.Contains(questionIDs(other), q.ID) && layoutOf(other) == layoutOf(f) {
				ask.Alike = append(ask.Alike, other.Name)
			}
		}
		out = append(out, ask)
	}
	return out
}

// codes are the answers' codes that a question names for programs.
var codes = regexp.MustCompile(` \([a-z_]+\)`)

// questionWords is a question as it is asked on the screen.
func questionWords(id string) string { return codes.ReplaceAllString(Question(id), "") }

// answeredBefore says what was answered for another file written the same way.
func (b Book) answeredBefore(f engine.File, id string) string {
	all := b.files()
	for _, a := range b.doc.Answers {
		if i := fileNamed(all, a.File); i >= 0 && a.ID == id && a.File != f.Name && layoutOf(all[i]) == layoutOf(f) {
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

// layoutOf is how a file is written, the same for files of one kind.
func layoutOf(f engine.File) string {
	if f.Export == nil {
		return ""
	}
	l := f.Export.Layout
	parts := []string{l.Delimiter}
	for _, c := range l.Clock.Columns {
		parts = append(parts, shortest(float64(c)))
	}
	for _, s := range f.Export.Series {
		parts = append(parts, shortest(float64(s.ColumnIndex))+s.Column+string(s.Quantity))
	}
	slices.Sort(parts)
	return strings.Join(slices.Compact(parts), "\n")
}

// Answered is the edit that answers a file's question, and with alike that of the others of its kind.
func Answered(file string, q FileQuestion, option string, alike bool) winter.Edit {
	files := []string{file}
	if alike {
		files = append(files, q.Alike...)
	}
	return winter.SetAnswer{Files: files, ID: q.ID, Option: option}
}

// FileAnswer is an answer the keeper gave for a file, with the edit that takes it back.
type FileAnswer struct {
	Text string
	Undo winter.Edit
}

// answered are the answers given for a file by its name.
func (b Book) answered(name string) (out []FileAnswer) {
	for _, a := range b.doc.Answers {
		if a.File == name {
			text := questionWords(a.ID)
			if i := strings.Index(text, "?"); i > 0 {
				text = text[:i+1]
			}
			out = append(out, FileAnswer{text + " You said: " + optionWord(a.Option) + ".", winter.SetAnswer{Files: []string{name}, ID: a.ID}})
		}
	}
	return out
}
