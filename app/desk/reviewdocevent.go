package desk

import (
	"time"

	"thawbook/analysis"
)

// EventDoc is something that happened: figures by name, null where one is unknown; one with a range has two more,
// whose names end in _low and _high.
type EventDoc struct {
	Kind     string              `json:"kind"`
	Start    string              `json:"start"`
	End      string              `json:"end"`
	Place    string              `json:"place"`
	Evidence string              `json:"evidence"`
	MayBe    bool                `json:"may_be"`
	Noted    bool                `json:"noted"`
	Figures  map[string]*float64 `json:"figures"`
}

func eventDocs(events []analysis.Event, zone *time.Location) []EventDoc {
	out := []EventDoc{}
	for _, e := range events {
		d := EventDoc{
			Kind: e.Kind, Start: clock(e.Span.From, zone), End: clock(e.Span.To, zone), Place: e.Place,
			Evidence: string(e.Evidence), MayBe: e.MayBe, Noted: e.Noted, Figures: map[string]*float64{},
		}
		for _, f := range e.Figures {
			d.Figures[f.Name] = mid(f.Figure)
			if f.OK && f.High > f.Low {
				d.Figures[f.Name+"_low"], d.Figures[f.Name+"_high"] = &f.Low, &f.High
			}
		}
		out = append(out, d)
	}
	return out
}
