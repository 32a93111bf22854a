package desk

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"thawbook/analysis/series"
	"thawbook/app/engine"
	"thawbook/app/winter"
)

// clockDoubted is the suggestion on a logger's clock; open is false where the keeper said to leave it.
func (b Book) clockDoubted(l winter.Logger, p engine.Proposal) (d FileDoubt, open bool) {
	if slices.ContainsFunc(l.Kept, func(k winter.Exclusion) bool { return k.Reason == engine.DoubtClock }) {
		return d, false
	}
	keep := winter.Exclusion{From: p.Remark.Span.From, To: p.Remark.Span.To, Reason: engine.DoubtClock}
	return FileDoubt{
		Text: clockDoubt(p.Remark), Take: winter.MoveClock{At: p.Slot, AheadMS: l.AheadMS + p.AheadMS}, Keep: winter.Keep{At: p.Slot, Stretches: []winter.Exclusion{keep}},
		TakeIt: "Set it right by that", KeepIt: "Leave the clock",
	}, true
}

// clockTaken is what the keeper set down on a logger's clock besides its zone.
func (b Book) clockTaken(l winter.Logger, at Slot) (out []LeftOut) {
	if l.AheadMS != 0 {
		text := fmt.Sprintf("Its clock is taken to be %s; its readings are moved by that.", aheadWords(float64(l.AheadMS)/minuteMS))
		out = append(out, LeftOut{text, "Take it back", winter.MoveClock{At: at}})
	}
	if len(l.Anchors) > 0 {
		text := "Held against a watch: " + b.anchorWords(l) + "."
		out = append(out, LeftOut{text, "Take it back", winter.SetClock{At: at, Zone: l.Zone, FollowsDST: l.FollowsDST}})
	}
	return out
}

const minuteMS = 60 * 1000

// anchorWords are "on 3 November 2024 14:30 it said 3 November 2024 14:12", and how the clock went between two.
func (b Book) anchorWords(l winter.Logger) string {
	first, last := l.Anchors[0], l.Anchors[len(l.Anchors)-1]
	text := fmt.Sprintf("when the watch said %s it said %s", faceWords(winter.Face(first.At, b.zone())), faceWords(first.FaceMS))
	days := float64(last.At-first.At) / (24 * series.HourMS)
	if len(l.Anchors) < 2 || days < 1 {
		return text
	}
	gained := float64((last.FaceMS-first.FaceMS)-(last.At-first.At)) / minuteMS
	word := "gained"
	if gained < 0 {
		word, gained = "lost", -gained
	}
	return fmt.Sprintf("%s; by the last of %d it had %s %s in %s", text, len(l.Anchors), word, withUnit(minuteNumber(gained), "min"), Days(float64(last.At-first.At)))
}

// minuteNumber is a number of minutes, with a digit behind the point below ten of them.
func minuteNumber(min float64) string {
	if min < 10 {
		return number(min, 1)
	}
	return number(min, 0)
}

// DSTWords are the choices of whether a logger's clock followed summer time.
var DSTWords = []string{"as the file shows", "it followed", "it did not"}

// ClockText is a logger's clock as it is typed and chosen.
type ClockText struct {
	Zone, DST string
	Pairs     []ClockPair
}

// ClockPair is what the keeper's watch said and what the logger said at the same moment.
type ClockPair struct{ Watch, Logger string }

// ClockText is a logger's clock as it can be edited.
func (b Book) ClockText(at Slot) ClockText {
	l, _ := b.doc.Logger(at)
	out := ClockText{Zone: l.Zone, DST: dstWord(l.FollowsDST)}
	for _, a := range l.Anchors {
		out.Pairs = append(out.Pairs, ClockPair{typedFace(winter.Face(a.At, b.zone())), typedFace(a.FaceMS)})
	}
	return out
}

// typedFace is a clock face as it is typed.
func typedFace(ms int64) string {
	t := time.UnixMilli(ms).UTC()
	if t.Second() != 0 {
		return t.Format("2006-01-02 15:04:05")
	}
	return t.Format("2006-01-02 15:04")
}

// dstWord is the choice for whether a clock followed summer time.
func dstWord(follows *bool) string {
	switch {
	case follows == nil:
		return DSTWords[0]
	case *follows:
		return DSTWords[1]
	}
	return DSTWords[2]
}

// followsOf is what such a choice says; nil leaves it to the file.
func followsOf(word string) *bool {
	i := slices.Index(DSTWords, word)
	if i <= 0 {
		return nil
	}
	follows := i == 1
	return &follows
}

// SetClock is the edit that sets a logger's clock down as typed; problem is a sentence where it can't be taken so.
func (b Book) SetClock(at Slot, t ClockText) (edit winter.Edit, problem string) {
	e := winter.SetClock{At: at, Zone: strings.TrimSpace(t.Zone), FollowsDST: followsOf(t.DST)}
	for _, pair := range t.Pairs {
		if strings.TrimSpace(pair.Watch+pair.Logger) == "" {
			continue
		}
		a, err := b.anchor(pair)
		if err != nil {
			return nil, Sentenced(err)
		}
		e.Anchors = append(e.Anchors, a)
	}
	slices.SortFunc(e.Anchors, func(a, b winter.Anchor) int { return cmp.Compare(a.FaceMS, b.FaceMS) })
	if _, err := e.Apply(b.doc); err != nil {
		return nil, Sentenced(err)
	}
	return e, ""
}

// anchor is a pair as instants.
func (b Book) anchor(pair ClockPair) (a winter.Anchor, err error) {
	at, err := momentIn(pair.Watch, b.zone())
	if err != nil {
		return a, err
	}
	face, err := momentIn(pair.Logger, time.UTC)
	if err != nil {
		return a, err
	}
	if face == nil || at == nil {
		return a, fmt.Errorf("a comparison needs both: what your watch said and what the logger said at that moment")
	}
	return winter.Anchor{FaceMS: *face, At: *at}, nil
}
