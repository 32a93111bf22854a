package desk

import (
	"math"
	"slices"
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/winter"
)

// mostNotes is how many of the keeper's notes stand in a header.
const mostNotes = 3

// noted is what the keeper saw, the latest notes first; the alarm's log is held against the air elsewhere and would
// leave no room for what he saw. Where it parts from an answer it says so: the loggers
// saw the air where they hung, the keeper saw the barn.
func noted(notes []winter.Note, heads []analysis.HeadChange, r analysis.Review, u Units) string {
	var parts []string
	for i := len(notes) - 1; i >= 0 && len(parts) < mostNotes; i-- {
		if ofAlarm(notes[i]) {
			continue
		}
		parts = append(parts, u.Date(notes[i].At)+": "+saw(notes[i])+perHundred(notes[i], heads))
	}
	if len(parts) == 0 {
		return ""
	}
	return "You noted " + strings.Join(parts, "; ") + "." + parted(notes, r, u)
}

// notePoints are the keeper's notes on the Timeline.
func notePoints(notes []winter.Note) (out []Point) {
	for _, n := range notes {
		out = append(out, Point{At: n.At, Name: saw(n), Note: true})
	}
	return out
}

// NotedNear is what the keeper noted of an instant and so many ms around it; empty for nothing.
func (t Timeline) NotedNear(at, around int64) string {
	var parts []string
	for _, p := range t.Points {
		if p.Note && max(p.At-at, at-p.At) <= around {
			parts = append(parts, t.Units.Date(p.At)+": "+p.Name)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "You noted " + strings.Join(parts, "; ") + "."
}

// ofAlarm says whether a note is of the alarm's log.
func ofAlarm(n winter.Note) bool { return n.Kind == "alarm call" || n.Kind == "alarm off" }

// saw is a note in the keeper's words: what kind it is where the program knows the kind and the words don't
// say it, his number, his text.
func saw(n winter.Note) string {
	text := strings.TrimRight(n.Text, ". ")
	figure := ""
	if n.Value != nil {
		figure = strings.TrimSpace(number(*n.Value, decimalsOf(*n.Value)) + " " + n.Unit)
	}
	if n.Value != nil && n.Of != nil {
		figure += " of " + number(*n.Of, 0) + " looked at"
	}
	if n.Unit == "" && text != "" {
		return strings.TrimSpace(figure + " " + text)
	}
	kind := n.Kind
	if kind == "other" {
		kind = ""
	}
	return strings.Join(slices.DeleteFunc([]string{kind, figure, text}, func(s string) bool { return s == "" }), ", ")
}

// perHundred is " (0.5 pails per 100 hives)" for what is counted in things, where the number of hives is known: of those
// that stood there then, or, in a barn that was emptied, last.
func perHundred(n winter.Note, heads []analysis.HeadChange) string {
	count, hives := 0, 0
	for _, h := range heads {
		if h.At > n.At {
			break
		}
		if count += h.Change; count > 0 {
			hives = count
		}
	}
	if n.Value == nil || n.Unit == "" || len(NoteUnits(n.Kind)) == 0 || hives <= 0 {
		return ""
	}
	return " (" + number(*n.Value*100/float64(hives), 1) + " " + n.Unit + " per 100 hives)"
}

// decimalsOf is one for a number with a fraction.
func decimalsOf(v float64) int {
	if v == math.Trunc(v) {
		return 0
	}
	return 1
}

// seenWords are the words in a note that speak for an answer of "yes", and the kinds of spells that bear them out.
var seenWords = []struct {
	words []string
	of    func(analysis.Verdict) analysis.State
	name  string
	kinds []string
}{
	{[]string{"damp", "wet", "mould", "drip", "sweat"}, func(v analysis.Verdict) analysis.State { return v.Damp.State }, "damp", []string{"damp", "dew", "frost"}},
	{[]string{"parched", "dried out", "too dry"}, func(v analysis.Verdict) analysis.State { return v.Dry.State }, "dryness", []string{"dry"}},
}

// parted says where a note and an answer part, and whether the loggers read what the keeper saw on that day.
func parted(notes []winter.Note, r analysis.Review, u Units) string {
	text := ""
	for _, s := range seenWords {
		if s.of(r.Verdict) != analysis.No {
			continue
		}
		for _, n := range notes {
			if !speaksOf(n, s.words) {
				continue
			}
			text += " You saw " + s.name + " on " + u.Date(n.At)
			if spellAround(r.Spells, n.At, s.kinds) {
				text += "; so did the loggers, but not for long enough over the winter to change the answer."
			} else {
				text += "; the loggers, where they hung, did not."
			}
			break
		}
	}
	return text
}

// spellAround says whether a spell of one of the kinds lies within a day of an instant, ms UTC: a note seldom says
// the hour.
func spellAround(spells []analysis.Spell, at int64, kinds []string) bool {
	const day = 24 * series.HourMS
	return slices.ContainsFunc(spells, func(s analysis.Spell) bool {
		return slices.Contains(kinds, s.Kind) && s.Span.From < at+day && s.Span.To > at-day
	})
}

// notSo are the words that make of "wet" its contrary.
var notSo = []string{"no", "not", "nothing", "never", "none", "nowhere", "without", "isn't", "wasn't", "weren't", "aren't"}

// speaksOf says whether a note's words, or its kind, say that there was something: "no mould, lids wet" speaks of wet lids.
func speaksOf(n winter.Note, words []string) bool {
	text := n.Text
	if n.Value == nil || *n.Value != 0 {
		text += "." + n.Kind
	}
	clauses := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(".,;:!?()\n", r) })
	return slices.ContainsFunc(clauses, func(clause string) bool {
		denied := slices.ContainsFunc(strings.Fields(strings.ReplaceAll(clause, "’", "'")), func(w string) bool { return slices.Contains(notSo, w) })
		return !denied && holdsAny(clause, words)
	})
}

func holdsAny(text string, words []string) bool {
	for _, w := range words {
		if strings.Contains(text, w) {
			return true
		}
	}
	return false
}
