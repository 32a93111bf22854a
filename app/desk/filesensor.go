package desk

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"thawbook/analysis/series"
	"thawbook/app/engine"
	"thawbook/app/winter"
)

// FileDoubt is what about a logger's readings or clock can hardly be right, with the edits that act on it and that
// keep everything as it is. Either is one press, and one press takes it back.
type FileDoubt struct {
	Text           string
	Take, Keep     winter.Edit // Take is nil where nothing can be set right by a press
	TakeIt, KeepIt string      // on the buttons
	Also           winter.Edit // another way to act on it; nil: none
	AlsoIt         string

	Mark Mark // of a doubt; a suggestion has none

	quantity string // "" for all
	spans    []series.Span
}

// reasonWord is why something is left out, in words: the keeper's own, else those of the doubt it was left out for.
func reasonWord(reason string) string {
	if word, ok := doubtReasons[reason]; ok {
		return word
	}
	return reason
}

// doubtReasons are the doubts as short reasons.
var doubtReasons = map[string]string{
	engine.DoubtStuck: "it stood still", engine.DoubtSaturated: "the sensor was wet", engine.DoubtJumping: "it jumped and came straight back", engine.DoubtSentinel: "values no air has",
	engine.DoubtSwapped: "temperature and humidity swapped", engine.DoubtFahrenheit: "°F taken for °C", engine.DoubtDrift: "it parted slowly from its neighbours",
	engine.DoubtCarried: "it was not in the room", engine.DoubtElsewhere: "it hung elsewhere", engine.DoubtApart: "far from all the others in the room", engine.DoubtWet: "the sensor was still drying",
}

// doubts are what about the readings of the logger in a slot can hardly be right. They hold for the winter that was
// reviewed.
func (b Book) doubts(l winter.Logger, at Slot, u Units) (out []FileDoubt) {
	if b.stale {
		return nil
	}
	for _, p := range b.looked.proposals {
		if p.Slot == at {
			if d, open := b.doubt(l, p, u); open {
				d.Mark = MarkWatch
				out = append(out, d)
			}
		}
	}
	return append(out, b.alongsideOf(at, u)...)
}

// doubt is a proposal as it is shown; open is false where the keeper said to keep all of it.
func (b Book) doubt(l winter.Logger, p engine.Proposal, u Units) (d FileDoubt, open bool) {
	if p.AheadMS != 0 {
		return b.clockDoubted(l, p)
	}
	stretches := openStretches(l, p)
	if len(stretches) == 0 {
		return d, false
	}
	d = FileDoubt{
		Text: b.doubtSentence(l, p, stretches, u), Keep: winter.Keep{At: p.Slot, Stretches: stretches}, TakeIt: "Leave it out", KeepIt: "Keep it",
		quantity: stretches[0].Quantity,
	}
	for _, x := range stretches {
		d.spans = append(d.spans, series.Span{From: x.From, To: x.To})
	}
	if len(p.Exclusions) > 0 {
		d.Take = winter.Exclude{At: p.Slot, Stretches: stretches}
	}
	if len(p.Rereads) > 0 {
		d.Also, d.AlsoIt = d.Take, d.TakeIt
		d.Take, d.TakeIt = reread(p.Rereads), rereadWords[p.Remark.Code]
	}
	return d, true
}

// rereadWords are the presses that read files otherwise.
var rereadWords = map[string]string{engine.DoubtFahrenheit: "Read it as °F", engine.DoubtSwapped: "Read the two the other way round"}

// reread is the edit that gives answers, each for its file.
func reread(all []winter.Answer) (out winter.SetAnswers) {
	for _, a := range all {
		out = append(out, winter.SetAnswer{Files: []string{a.File}, ID: a.ID, Option: a.Option})
	}
	return out
}

// openStretches are those of a proposal that the keeper did not say to keep; of one that leaves nothing out, all it
// speaks of.
func openStretches(l winter.Logger, p engine.Proposal) []winter.Exclusion {
	all := slices.Clone(p.Exclusions)
	if len(all) == 0 {
		for _, s := range p.Spans {
			all = append(all, winter.Exclusion{From: s.From, To: s.To, Reason: p.Remark.Code})
		}
	}
	return slices.DeleteFunc(all, func(x winter.Exclusion) bool {
		return slices.ContainsFunc(l.Kept, func(k winter.Exclusion) bool {
			shared := min(k.To, x.To) - max(k.From, x.From)
			return k.Reason == x.Reason && k.Quantity == x.Quantity && 2*shared >= x.To-x.From
		})
	})
}

// doubtSentence says what is odd, and when.
func (b Book) doubtSentence(l winter.Logger, p engine.Proposal, stretches []winter.Exclusion, u Units) string {
	text := doubtNote(doubtNotes[p.Remark.Code]).inUnits(p.Remark.Args, u)
	if own, ok := strings.CutPrefix(text, "Logger "+l.Name+": "); ok {
		text = capital(own)
	}
	days := b.stretches(stretches, stretches[0])
	if n := len(stretches); n > mostNamed {
		days = fmt.Sprintf("%d times, %s", n, b.stretchWords(winter.Exclusion{From: stretches[0].From, To: stretches[n-1].To}))
	}
	return capital(days) + ": " + uncapital(text)
}

// uncapital is a sentence to go on with after a colon.
func uncapital(text string) string {
	if strings.HasPrefix(text, "It") || strings.HasPrefix(text, "At") || strings.HasPrefix(text, "After") {
		return strings.ToLower(text[:1]) + text[1:]
	}
	return text
}

// inUnits is the sentence with its figures in the units that are shown.
func (n doubtNote) inUnits(args []string, u Units) string {
	said := slices.Clone(args)
	switch {
	case n.value > 0 && args[n.value-1] != "humidity":
		v, _ := strconv.ParseFloat(args[n.value], 64)
		said[n.value] = u.Diff(v)
		if n.level {
			said[n.value] = u.Temp(v)
		}
		return fmt.Sprintf(n.text, anyOf(said)...)
	}
	return n.sentence(args)
}

// doubted says whether something about the readings of a file's loggers can hardly be right.
func (b Book) doubted(name string) bool {
	if b.stale {
		return false
	}
	return slices.ContainsFunc(b.looked.proposals, func(p engine.Proposal) bool {
		l, ok := b.doc.Logger(p.Slot)
		if !ok || !l.HasFile(name) {
			return false
		}
		_, open := b.doubt(l, p, Units{})
		return open
	})
}

// settled is what the keeper set down on a logger's readings and clock, each with the press that takes it back.
func (b Book) settled(l winter.Logger, at Slot, u Units) []LeftOut {
	return slices.Concat(b.leftOut(l, at), b.keptIn(l, at), b.clockTaken(l, at), b.checked(l, at, u))
}

// keptIn is what looked odd and was kept.
func (b Book) keptIn(l winter.Logger, at Slot) (out []LeftOut) {
	for _, of := range sorts(l.Kept) {
		text := "Kept " + b.stretches(l.Kept, of) + ofQuantity(of.Quantity)
		if why := reasonWord(of.Reason); why != of.Reason {
			text += ", though " + why
		}
		switch of.Reason {
		case engine.DoubtClock:
			text = "Its clock is left as it is"
		case sideBySide:
			text = "It did not hang beside others " + b.stretches(l.Kept, of)
		}
		out = append(out, LeftOut{text + ", as you said.", "Ask again", winter.AskAgain{At: at, Reason: of.Reason, Quantity: of.Quantity}})
	}
	return out
}
