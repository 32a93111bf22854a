package desk

import (
	"slices"
	"strconv"
	"strings"

	"thawbook/app/engine"
	"thawbook/app/winter"
)

// FileDoubt is what about a logger's readings can hardly be right, with the edit that leaves them out.
type FileDoubt struct {
	Text    string
	LeaveIt winter.Edit // nil where leaving out is no help
}

// LeftOut is what of a logger's readings is not used for one reason, with the edit that takes it back.
type LeftOut struct {
	Text string
	Undo winter.Edit
}

// leftOut is what of a logger is not used, a line for each reason and quantity.
func (b Book) leftOut(l winter.Logger, at Slot) (out []LeftOut) {
	for _, of := range sorts(l.Exclusions) {
		text := "Left out " + b.stretches(l.Exclusions, of) + ofQuantity(of.Quantity) + becauseOf(of.Reason) + "."
		out = append(out, LeftOut{text, winter.Include{At: at, Reason: of.Reason, Quantity: of.Quantity}})
	}
	return out
}

// ofQuantity is ", of its humidity", nothing for all.
func ofQuantity(quantity string) string {
	if quantity == "" {
		return ""
	}
	return ", of its " + quantity
}

// sorts are the reasons of stretches with the quantity they are of, each once.
func sorts(all []winter.Exclusion) (out []winter.Exclusion) {
	for _, x := range all {
		if of := (winter.Exclusion{Reason: x.Reason, Quantity: x.Quantity}); !slices.Contains(out, of) {
			out = append(out, of)
		}
	}
	return out
}

// stretches are the days of the stretches of one sort, a few of them by name.
func (b Book) stretches(all []winter.Exclusion, of winter.Exclusion) string {
	var days []string
	for _, x := range all {
		if x.Reason == of.Reason && x.Quantity == of.Quantity {
			days = append(days, b.stretchWords(x))
		}
	}
	days = slices.Compact(days)
	if n := len(days) - mostNamed; n > 0 {
		return strings.Join(days[:mostNamed], ", ") + " and " + strconv.Itoa(n) + " more stretches"
	}
	return listed(days)
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
	engine.DoubtCarried: "it was not in the room", engine.DoubtWet: "the sensor was still drying",
}

// doubts are what about the readings of the logger in a slot can hardly be right. They hold for the winter that was
// reviewed.
func (b Book) doubts(l winter.Logger, at Slot) (out []FileDoubt) {
	if b.stale {
		return nil
	}
	for _, p := range b.looked.proposals {
		if p.Slot != at {
			continue
		}
		d := FileDoubt{Text: ReviewNote(p.Remark)}
		if len(p.Exclusions) > 0 {
			d.LeaveIt = winter.Exclude{At: at, Stretches: p.Exclusions}
		}
		out = append(out, d)
	}
	for _, r := range b.looked.doubts {
		if (r.Code == engine.DoubtClock || r.Code == engine.DoubtClockHours) && r.Args[0] == l.Name && at.List != TrayList {
			out = append(out, FileDoubt{Text: ReviewNote(r)})
		}
	}
	return out
}

// doubted says whether something about the readings of a file's loggers can hardly be right.
func (b Book) doubted(name string) bool {
	return !b.stale && slices.ContainsFunc(b.looked.proposals, func(p engine.Proposal) bool {
		l, ok := b.doc.Logger(p.Slot)
		return ok && slices.ContainsFunc(l.Files, func(own string) bool { return isFile(own, name) })
	})
}

// stretchWords are the local days of a stretch, "from 3 April 2025" where it has no end.
func (b Book) stretchWords(x winter.Exclusion) string {
	u := Units{Zone: b.zone()}
	if x.To-x.From > 1000*366*24*3600*1000 {
		return "from " + u.DateYear(x.From)
	}
	return u.Dates(Span{From: x.From, To: x.To})
}

// LeaveOut is the edit that leaves a stretch of a logger's readings out, between two days as typed; problem
// is a sentence where it can't be taken so.
func (b Book) LeaveOut(at Slot, from, to, reason string) (edit winter.Edit, problem string) {
	start, err := b.moment(from)
	if err != nil {
		return nil, Sentenced(err)
	}
	end, err := b.moment(to)
	if err != nil {
		return nil, Sentenced(err)
	}
	if start == nil || end == nil {
		return nil, "Say from when to when: days like 2024-11-12, or with their times, 2024-11-12 14:30."
	}
	e := winter.Exclude{At: at, Stretches: []winter.Exclusion{{From: *start, To: *end, Reason: strings.TrimSpace(reason)}}}
	if _, err := e.Apply(b.doc); err != nil {
		return nil, Sentenced(err)
	}
	return e, ""
}
