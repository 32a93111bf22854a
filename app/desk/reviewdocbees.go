package desk

import (
	"time"

	"thawbook/analysis"
)

// BeesSeenDoc is what the traces propose for when the bees went in and came out.
type BeesSeenDoc struct {
	In  EdgeDoc `json:"in"`
	Out EdgeDoc `json:"out"`
}

// EdgeDoc is one of the two; at is null where it can't be told, until where it is not later than that.
type EdgeDoc struct {
	At     *string `json:"at"`
	Until  *string `json:"until"`
	Sure   string  `json:"sure"`
	Reason string  `json:"reason"`
	Logger *string `json:"logger"`
}

func beesSeenDoc(s analysis.BeesSeen, zone *time.Location) BeesSeenDoc {
	return BeesSeenDoc{edgeDoc(s.In, zone), edgeDoc(s.Out, zone)}
}

func edgeDoc(e analysis.Edge, zone *time.Location) EdgeDoc {
	d := EdgeDoc{Sure: e.Sure, Reason: e.Reason, Logger: textOrNull(e.Logger)}
	if e.OK() {
		at := clock(e.At, zone)
		d.At = &at
	}
	if e.Until > 0 {
		until := clock(e.Until, zone)
		d.Until = &until
	}
	return d
}
