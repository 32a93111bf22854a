package desk

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"thawbook/analysis"
)

// ownRows are the whole winter's temperatures of each of the room's loggers.
func (b barn) ownRows() (out []analysis.QuantityRow) {
	for _, q := range b.r.Quantities {
		if q.Quantity == "air_temperature" && q.Place == b.place() && q.Logger != "" && q.Phase == "" && q.Mean.OK {
			out = append(out, q)
		}
	}
	return out
}

// goodOf is a row's good band, empty where it has none.
func goodOf(q analysis.QuantityRow) (good analysis.BandRow) {
	for _, band := range q.Bands {
		if band.Name == "good" {
			return band
		}
	}
	return good
}

// mostLoggers is how many loggers the table has at most.
const mostLoggers = 12

// loggerTable has a row for each of the room's loggers by itself, those outside the band longest first; none where there is
// but one.
func (b barn) loggerTable() Table {
	rows := b.ownRows()
	if len(rows) < 2 {
		return Table{}
	}
	outside := func(q analysis.QuantityRow) float64 { good := goodOf(q); return good.HoursBelow + good.HoursAbove }
	slices.SortStableFunc(rows, func(x, y analysis.QuantityRow) int { return cmp.Compare(outside(y), outside(x)) })
	t := Table{Columns: []Column{{Title: "Logger"}, {Title: "Lowest", Number: true}, {Title: "Mean", Number: true}, {Title: "Highest", Number: true},
		{Title: "Below", Unit: "h", Number: true}, {Title: "Inside", Unit: "h", Number: true}, {Title: "Above", Unit: "h", Number: true}}}
	for _, q := range rows[:min(len(rows), mostLoggers)] {
		t.Rows = append(t.Rows, append([]string{q.Logger}, b.exposureCells(q, b.u.Temp)[1:]...))
		b.lookAtExposure(&t, q, 1)
	}
	return t
}

// bandSide is one side of the good band.
type bandSide struct {
	word, most string
	limit      func(analysis.BandRow) *float64
	hours      func(analysis.BandRow) (float64, analysis.Range)
	peak       func(analysis.QuantityRow) analysis.Figure
}

var bandSides = []bandSide{
	{"below", "coldest", func(r analysis.BandRow) *float64 { return r.Low },
		func(r analysis.BandRow) (float64, analysis.Range) { return r.HoursBelow, r.BelowRange },
		func(q analysis.QuantityRow) analysis.Figure { return q.Min }},
	{"above", "warmest", func(r analysis.BandRow) *float64 { return r.High },
		func(r analysis.BandRow) (float64, analysis.Range) { return r.HoursAbove, r.AboveRange },
		func(q analysis.QuantityRow) analysis.Figure { return q.Max }},
}

// byItself names the loggers that were longest below and above the good band, where they were so for longer than the room's
// mean even if they read as far off as they may: "By itself far end was below 2 °C for 412 h, at coldest −4.5 °C." The
// hours are those of the longest.
func (b barn) byItself() (text string, hours float64) {
	mean, ok := b.band("air_temperature", "good")
	if !ok {
		return "", 0
	}
	var parts []string
	for _, side := range bandSides {
		q, longest := b.longestOutside(side, mean)
		if longest == 0 {
			continue
		}
		edge := "its band"
		if limit := side.limit(mean); limit != nil {
			edge = b.u.LimitWithUnit(*limit)
		}
		parts = append(parts, q.Logger+" was "+side.word+" "+edge+" for "+Hours(longest)+", at "+side.most+" "+b.u.Temp(side.peak(q).Mid))
		hours = math.Max(hours, longest)
	}
	if len(parts) == 0 {
		return "", 0
	}
	return "By itself " + strings.Join(parts, ", and ") + ".", hours
}

// longestOutside is the logger that was longest on a side of the band, of those surely an hour longer there than the mean.
func (b barn) longestOutside(side bandSide, mean analysis.BandRow) (logger analysis.QuantityRow, hours float64) {
	room, _ := side.hours(mean)
	for _, q := range b.ownRows() {
		if h, r := side.hours(goodOf(q)); r.Low >= room+1 && h > hours {
			logger, hours = q, h
		}
	}
	return logger, hours
}
