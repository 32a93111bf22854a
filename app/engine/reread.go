package engine

import (
	"fmt"
	"slices"
	"strings"

	"thawbook/analysis/series"
	"thawbook/app/winter"
	"thawbook/importers"
)

// SwappedColumns is what the keeper says of columns that stand under each other's names; no file asks it.
const SwappedColumns = "swapped"

const temperatureUnit = "temperature_unit"

// rereads are the answers, for one file each, with which what looks misread would be read as it fits: a header that
// names the wrong unit, or two columns the wrong way round, does so for its whole file. nil where anything of it is
// not whole files.
func rereads(r Result, p Proposal) (out []winter.Answer) {
	l, ok := r.Winter.Logger(p.Slot)
	zone, err := winter.Location(r.Winter.Zone)
	if !ok || err != nil || p.Remark.Code != DoubtFahrenheit && p.Remark.Code != DoubtSwapped {
		return nil
	}
	explained := make([]bool, len(p.Spans))
	for _, f := range r.Files {
		if f.Export == nil || !l.HasFile(f.Name) {
			continue
		}
		picked := pick(l, f.Export)
		span := joiner{zone: zone}.spanOf(l, f.Export, picked)
		i := slices.IndexFunc(p.Spans, func(s series.Span) bool { return mostlyWithin(span, s) })
		if option := rereading(p.Remark.Code, f.Export, picked); i >= 0 && option.ID != "" {
			explained[i] = true
			option.File = f.Name
			out = append(out, besidesSaid(option, r.Winter.Answers))
		}
	}
	if slices.Contains(explained, false) {
		return nil
	}
	return out
}

// spanOf is from the first reading of a logger's temperature in a file to the last; empty where it has none.
func (j joiner) spanOf(l winter.Logger, export *importers.Export, p picked) series.Span {
	if p.temp == nil || len(p.temp.FaceMS) == 0 {
		return series.Span{}
	}
	c, _ := j.clock(l, export, p)
	ends, _ := c.instants([]int64{slices.Min(p.temp.FaceMS), slices.Max(p.temp.FaceMS)})
	return series.Span{From: ends[0], To: ends[1]}
}

// mostlyWithin says whether nine tenths of a span lie in another.
func mostlyWithin(span, other series.Span) bool {
	shared := min(span.To, other.To) - max(span.From, other.From)
	return span.To > span.From && 10*shared >= 9*(span.To-span.From)
}

// rereading is the answer that reads a logger's columns of a file otherwise; without an id where they can't be.
func rereading(code string, export *importers.Export, p picked) (out winter.Answer) {
	switch {
	case code == DoubtFahrenheit && loggersOf(pointers(export.Series)) > 1:
		return winter.Answer{ID: temperatureUnit, Option: fmt.Sprintf("degF:%d", p.temp.ColumnIndex)}
	case code == DoubtFahrenheit:
		return winter.Answer{ID: temperatureUnit, Option: "degF"}
	case p.relHum == nil || p.relHum.ColumnIndex == p.temp.ColumnIndex:
		return out
	}
	a, b := p.temp.ColumnIndex, p.relHum.ColumnIndex
	return winter.Answer{ID: SwappedColumns, Option: fmt.Sprintf("%d+%d", min(a, b), max(a, b))}
}

// besidesSaid is an answer on columns together with what was said of others of the same file.
func besidesSaid(a winter.Answer, all []winter.Answer) winter.Answer {
	i := slices.IndexFunc(all, func(o winter.Answer) bool { return o.File == a.File && o.ID == a.ID && o.Layout == "" })
	if i < 0 {
		return a
	}
	before := all[i].Option
	unit, column, some := strings.Cut(a.Option, ":")
	switch {
	case a.ID == SwappedColumns:
		a.Option = before + ", " + a.Option
	case some && strings.HasPrefix(before, unit+":"):
		a.Option = before + "+" + column
	}
	return a
}
