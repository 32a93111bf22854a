package desk

import (
	"math"
	"sort"
	"strings"
	"time"

	"thawbook/analysis/series"
)

// Glance is a winter at a glance: 24 hours a day of the barn's clock, day after day of the bees' time.
type Glance struct {
	Hours  []GlanceHour // hour 0 of the first day first
	Months []GlanceMonth
	units  Units
}

// GlanceMonth is a month's name and the day, counted from 0, at which it begins or the winter does.
type GlanceMonth struct {
	Name string
	Day  int
}

// GlanceHour is an hour with what the room was for half of it at least: "warm" or "cold", and "damp" or "dry"; empty for
// neither.
type GlanceHour struct {
	Span
	Temp, Air string
	Judged    bool // in the bees' time
	Known     bool // at least half of it
	tempC     float64
	relHum    float64
}

// glance is the room's winter by its spells, so that it shows what Spells lists.
func (b barn) glance() Glance {
	bees := b.span()
	if bees.To <= bees.From || b.unread() {
		return Glance{}
	}
	g := Glance{units: b.u}
	first, last := b.u.local(bees.From), b.u.local(bees.To-1)
	zone := first.Location()
	end := time.Date(last.Year(), last.Month(), last.Day(), 0, 0, 0, 0, zone)
	for day := time.Date(first.Year(), first.Month(), first.Day(), 0, 0, 0, 0, zone); !day.After(end); day = day.AddDate(0, 0, 1) {
		if len(g.Hours) == 0 || day.Day() == 1 {
			g.Months = append(g.Months, GlanceMonth{day.Format("January"), len(g.Hours) / 24})
		}
		for h := range 24 {
			g.Hours = append(g.Hours, b.glanceHour(time.Date(day.Year(), day.Month(), day.Day(), h, 0, 0, 0, zone).UnixMilli(), bees))
		}
	}
	for _, s := range b.r.Spells {
		if s.Place == b.place() {
			g.mark(s.Kind, s.Span)
		}
	}
	return g
}

// glanceHour is an hour as far as it is known, without its state.
func (b barn) glanceHour(from int64, bees Span) GlanceHour {
	h := GlanceHour{Span: Span{From: from, To: from + series.HourMS}, tempC: math.NaN(), relHum: math.NaN()}
	h.Judged = h.From < bees.To && h.To > bees.From
	half := int64(series.HourMS / 2)
	if bin := b.r.Traces.Room.Bin(h.Span); bin.KnownMS >= half {
		h.tempC, h.Known = bin.Weighted(), true
	}
	if bin := b.r.Traces.RoomRelHum.Bin(h.Span); bin.KnownMS >= half {
		h.relHum, h.Known = bin.Weighted(), true
	}
	return h
}

// mark gives the hours of which a spell takes half and more its kind.
func (g Glance) mark(kind string, s Span) {
	from := sort.Search(len(g.Hours), func(i int) bool { return g.Hours[i].To > s.From })
	for i := from; i < len(g.Hours) && g.Hours[i].From < s.To; i++ {
		h := &g.Hours[i]
		if min(h.To, s.To)-max(h.From, s.From) < series.HourMS/2 {
			continue
		}
		switch kind {
		case "warm", "cold":
			h.Temp = kind
		case "damp", "dry":
			h.Air = kind
		}
	}
}

// Days is how many days the glance has.
func (g Glance) Days() int { return len(g.Hours) / 24 }

// Read is an hour in words.
func (g Glance) Read(i int) string {
	if i < 0 || i >= len(g.Hours) {
		return ""
	}
	h := g.Hours[i]
	parts := []string{g.units.Clock(h.From)}
	if !h.Judged {
		parts = append(parts, "outside the bees' time")
	}
	if !h.Known {
		return strings.Join(append(parts, "not known"), ", ")
	}
	if !math.IsNaN(h.tempC) {
		parts = append(parts, strings.TrimSpace(h.Temp+" "+g.units.Temp(h.tempC)))
	}
	if !math.IsNaN(h.relHum) {
		parts = append(parts, strings.TrimSpace(h.Air+" "+Percent(h.relHum)))
	}
	return strings.Join(parts, ", ")
}
