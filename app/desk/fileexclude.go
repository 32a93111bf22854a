package desk

import (
	"slices"
	"strconv"
	"strings"

	"thawbook/app/winter"
)

// LeftOut is what the keeper set down on a logger's readings, with the edit that takes it back.
type LeftOut struct {
	Text  string
	Label string // of the button
	Undo  winter.Edit
}

// leftOut is what of a logger is not used, a line for each reason and quantity.
func (b Book) leftOut(l winter.Logger, at Slot) (out []LeftOut) {
	for _, of := range sorts(l.Exclusions) {
		text := "Left out " + b.stretches(l.Exclusions, of) + ofQuantity(of.Quantity) + becauseOf(of.Reason) + "."
		out = append(out, LeftOut{text, "Count it again", winter.Include{At: at, Reason: of.Reason, Quantity: of.Quantity}})
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

// stretchWords are the local days of a stretch, "from 3 April 2025" where it has no end.
func (b Book) stretchWords(x winter.Exclusion) string {
	u := Units{Zone: b.zone()}
	if x.To-x.From > 1000*366*24*3600*1000 {
		return "from " + u.DateYear(x.From)
	}
	return u.Dates(Span{From: x.From, To: x.To})
}

// LeaveOutWords are the choices of what is left out of a logger's readings.
var LeaveOutWords = []string{"all it recorded", "its temperature", "its humidity"}

// quantityChosen is the quantity of such a choice, "" for all.
func quantityChosen(choice string) string {
	switch choice {
	case LeaveOutWords[1]:
		return winter.OfTemperature
	case LeaveOutWords[2]:
		return winter.OfHumidity
	}
	return ""
}

// LeaveOut is the edit that leaves a stretch of a logger's readings out, between two days as typed; problem
// is a sentence where it can't be taken so.
func (b Book) LeaveOut(at Slot, from, to, quantity, reason string) (edit winter.Edit, problem string) {
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
	e := winter.Exclude{At: at, Stretches: []winter.Exclusion{{From: *start, To: *end, Reason: strings.TrimSpace(reason), Quantity: quantityChosen(quantity)}}}
	if _, err := e.Apply(b.doc); err != nil {
		return nil, Sentenced(err)
	}
	return e, ""
}
