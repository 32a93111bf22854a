package desk

import (
	"strings"

	"thawbook/analysis"
)

// exposureTable has a row per quantity of the room's air and per surface's margin, over the whole winter and by phase,
// and a line for each that can't be told. A name stands once.
func (b barn) exposureTable() (t Table, untold []string) {
	t.Columns = []Column{{Title: "What"}, {Title: "When"}, {Title: "Band"}, {Title: "Lowest", Number: true}, {Title: "Mean", Number: true},
		{Title: "Highest", Number: true}, {Title: "Below", Unit: "h", Number: true}, {Title: "Inside", Unit: "h", Number: true}, {Title: "Above", Unit: "h", Number: true}}
	last := ""
	for _, q := range b.r.Quantities {
		name, show := b.exposureOf(q)
		if show == nil {
			continue
		}
		title := name
		if name == last {
			title = ""
		}
		last = name
		t.Rows = append(t.Rows, append([]string{title, phaseWhen(q.Phase)}, b.exposureCells(q, show)...))
		b.lookAtExposure(&t, q, 3)
		if !q.Mean.OK && q.Phase == "" {
			untold = append(untold, name+" can't be told: "+lacks(q.Mean.Unknown)+".")
		}
	}
	return t, untold
}

// exposureOf is what a row is called, and how its values are shown; nil for those of other places and single loggers.
func (b barn) exposureOf(q analysis.QuantityRow) (name string, show func(float64) string) {
	switch {
	case q.Quantity == "surface_margin" && q.Mean.Unknown == "no_surface":
		return "Margin", b.u.Diff
	case q.Quantity == "surface_margin":
		return "Margin of the " + q.Place, b.u.Diff
	case q.Logger != "" || q.Place != b.place():
		return "", nil
	}
	switch q.Quantity {
	case "air_temperature":
		return "Temperature", b.u.Temp
	case "relative_humidity":
		return "Humidity", func(v float64) string { return Percent(v / 100) }
	case "dew_point":
		return "Dew point", b.u.Temp
	}
	return "", nil
}

// phaseWhen names a row's time.
func phaseWhen(phase string) string {
	if phase == "" {
		return "whole winter"
	}
	return phase
}

// exposureCells are band, least, mean and greatest value, and the hours below, inside and above the good band.
func (b barn) exposureCells(q analysis.QuantityRow, show func(float64) string) []string {
	cells := []string{noValue, noValue, noValue, noValue, noValue, noValue, noValue}
	for i, f := range []analysis.Figure{q.Min, q.Mean, q.Max} {
		if f.OK {
			cells[1+i] = show(f.Mid)
		}
	}
	if len(q.Bands) == 0 || !q.Mean.OK {
		return cells
	}
	g := q.Bands[0]
	edge := show
	if q.Quantity == "air_temperature" {
		edge = b.u.LimitWithUnit
	}
	cells[0] = bandText(g.Low, g.High, edge)
	cells[4], cells[5], cells[6] = hoursWithin(g.HoursBelow, g.BelowRange), hoursNumber(g.HoursIn), hoursWithin(g.HoursAbove, g.AboveRange)
	return cells
}

// bandText is "2–6 °C"; a band that changes with the phases has no one text.
func bandText(low, high *float64, show func(float64) string) string {
	switch {
	case low == nil && high == nil:
		return "by phase"
	case low == nil:
		return "up to " + show(*high)
	case high == nil:
		return show(*low) + " and more"
	}
	from, _, _ := strings.Cut(show(*low), thinSpace)
	return rangeOf(from, show(*high))
}

// hoursWithin is "84 (31–152)", without brackets where it makes no difference.
func hoursWithin(h float64, r analysis.Range) string {
	if hoursNumber(r.Low) == hoursNumber(r.High) {
		return hoursNumber(h)
	}
	return hoursNumber(h) + " (" + rangeOf(hoursNumber(r.Low), hoursNumber(r.High)) + ")"
}
