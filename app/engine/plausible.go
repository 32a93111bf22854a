package engine

import (
	"context"
	"math"
	"slices"
	"strconv"
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/plausible"
	"thawbook/analysis/series"
	"thawbook/app/winter"
	"thawbook/importers"
)

// The remarks of readings that can hardly be right: the codes of package plausible with a word in front, and
// two of clocks. Temperatures are in °C and K, humidity is in percent.
const (
	DoubtStuck      = "doubt_stuck"         // Args: logger, quantity, value, hours
	DoubtSaturated  = "doubt_saturated"     // Args: logger, hours
	DoubtJumping    = "doubt_jumping"       // Args: logger, quantity, size of the largest
	DoubtSentinel   = "doubt_sentinel"      // Args: logger, quantity, value
	DoubtSwapped    = "doubt_swapped"       // Args: logger
	DoubtFahrenheit = "doubt_fahrenheit"    // Args: logger, value as it stands, value converted
	DoubtDrift      = "doubt_drift"         // Args: logger, quantity, change
	DoubtDriftOfTwo = "doubt_drift_of_two"  // Args: logger, other logger, quantity, change
	DoubtCarried    = "doubt_carried_out"   // Args: logger, hours
	DoubtElsewhere  = "doubt_elsewhere"     // Args: logger, quantity, how far from its neighbours
	DoubtApart      = "doubt_apart"         // Args: logger, quantity, how far from its neighbours
	DoubtWet        = "doubt_wet_sensor"    // Args: logger, hours
	DoubtClock      = "doubt_clock"         // Args: logger, other logger, minutes ahead, half-width in minutes, how many clocks agree
	DoubtClockHours = "doubt_clock_hours"   // Args: logger, other logger, hours ahead, half-width in minutes, how many clocks agree
	DoubtIce        = "doubt_formula_ice"   // Args: file, column, disagreement
	DoubtFormula    = "doubt_formula_other" // Args: file, column, disagreement
	DoubtSwap       = "doubt_formula_swap"  // Args: file, column, disagreement
	DoubtOff        = "doubt_formula_off"   // Args: file, column, percent of readings
)

// Proposal is stretches of one logger's readings that the keeper may want left out, or by how much its clock seems
// to be ahead, and why. Nothing is left out or moved unasked.
type Proposal struct {
	Slot       winter.Slot // the logger's place in the winter
	Quantity   plausible.Quantity
	Sure       plausible.Sureness
	Remark     series.Remark
	Exclusions []winter.Exclusion // of the quantity
	Spans      []series.Span      // where it looks odd, whether leaving it out would help or not
	Rereads    []winter.Answer    // with which its files would be read as they fit; none where it is not whole files
	AheadMS    int64              // to be taken from the logger's times; 0 when it is not about the clock
}

// doubts are what one place's loggers or one file left.
type doubts struct {
	proposals []Proposal
	remarks   []series.Remark
}

// Proposals looks for readings of a reviewed winter that can hardly be right: the proposals that the keeper
// can take up, and all there is to remark, those of the proposals included, grouped by logger and code. It is
// no part of a review, which it leaves as it is, and is worked out only when somebody looks; its work grows with the
// readings and stops soon after the context does. The error is the context's.
func Proposals(ctx context.Context, r Result) ([]Proposal, []series.Remark, error) {
	places := placesOf(r)
	found := make([]doubts, len(places)+len(r.Files))
	spreadUntil(ctx)(len(found), func(i int) {
		if i < len(places) {
			found[i] = places[i].doubts(ctx)
			return
		}
		found[i] = doubts{remarks: derivedDoubts(ctx, r.Files[i-len(places)])}
	})
	if err := ctx.Err(); err != nil {
		return nil, nil, err
	}
	var proposals []Proposal
	remarks := []series.Remark{}
	for _, d := range found {
		proposals, remarks = append(proposals, d.proposals...), append(remarks, d.remarks...)
	}
	for i := range proposals {
		proposals[i].Rereads = rereads(r, proposals[i])
	}
	return proposals, remarks, nil
}

// place is loggers that should read alike, with what was outdoors.
type place struct {
	slots   []winter.Slot
	loggers []analysis.Logger
	outdoor series.Curve
	rest    bool // the room in which the bees rest
}

// placesOf are the places of a winter's loggers: outdoors, each barn's room with its control logger, and
// every other logger by itself.
func placesOf(r Result) (out []place) {
	for b, in := range r.Inputs {
		own := len(r.Winter.Barns[b].Loggers)
		if len(in.Loggers) < own {
			continue
		}
		if b == 0 {
			out = append(out, gathering(winter.OutdoorList, in.Loggers[own:], func(analysis.Logger) bool { return true }))
		}
		room := gathering(b, in.Loggers[:own], isRoom)
		room.outdoor, room.rest = outdoorOf(in.Loggers[own:]), true
		out = append(out, room)
		for k, l := range in.Loggers[:own] {
			if !isRoom(l) {
				out = append(out, place{slots: []winter.Slot{{List: b, Index: k}}, loggers: []analysis.Logger{l}})
			}
		}
	}
	return out
}

// isRoom says whether a logger hangs in the air of the room.
func isRoom(l analysis.Logger) bool { return l.Place == "room" || l.Place == "control" }

// gathering is the loggers of a list that belong together.
func gathering(list int, loggers []analysis.Logger, belongs func(analysis.Logger) bool) (out place) {
	for k, l := range loggers {
		if belongs(l) {
			out.slots, out.loggers = append(out.slots, winter.Slot{List: list, Index: k}), append(out.loggers, l)
		}
	}
	return out
}

// outdoorOf is the first outdoor logger with a temperature.
func outdoorOf(loggers []analysis.Logger) series.Curve {
	for _, l := range loggers {
		if l.TempC.Len() > 0 {
			return l.TempC
		}
	}
	return series.Curve{}
}

// doubts are those of one place's loggers.
func (p place) doubts(ctx context.Context) (out doubts) {
	traces := make([]plausible.Trace, len(p.loggers))
	for i, l := range p.loggers {
		traces[i] = plausible.Trace{Name: l.Name, TempC: l.TempC, RelHum: l.RelHum, TempStepK: l.TempStepK, Resting: p.rest}
	}
	spread := spreadUntil(ctx)
	room := plausible.NewRoomSpread(traces, p.outdoor, spread)
	each := make([][]Proposal, len(p.loggers))
	spread(len(each), func(i int) {
		each[i] = proposalsOf(p.loggers[i].Name, p.slots[i], room.FindingsUntil(i, func() bool { return ctx.Err() != nil }))
	})
	for _, own := range append(each, p.clocks(spread)) {
		for _, proposal := range own {
			out.proposals = append(out.proposals, proposal)
			out.remarks = append(out.remarks, proposal.Remark)
		}
	}
	return out
}

// proposalsOf gathers a logger's findings, one proposal for each code and quantity.
func proposalsOf(name string, slot winter.Slot, findings []plausible.Finding) (out []Proposal) {
	var worst []float64
	for _, f := range findings {
		code := "doubt_" + f.Code
		i := slices.IndexFunc(out, func(p Proposal) bool { return p.Remark.Code == code && p.Quantity == f.Quantity })
		if i < 0 {
			i = len(out)
			out = append(out, Proposal{Slot: slot, Quantity: f.Quantity, Sure: f.Sure, Remark: series.Remark{Code: code, Span: f.Span}})
			worst = append(worst, math.Inf(-1))
		}
		p := &out[i]
		p.Sure = max(p.Sure, f.Sure)
		p.Remark.Count++
		p.Remark.Span.To = max(p.Remark.Span.To, f.Span.To)
		if weight := weightOf(f); weight > worst[i] {
			worst[i], p.Remark.Args = weight, append([]string{name}, argsOf(f)...)
		}
		p.Spans = append(p.Spans, f.Span)
		if f.Code != plausible.DriftOfTwo {
			p.Exclusions = append(p.Exclusions, winter.Exclusion{From: f.Span.From, To: f.Span.To, Reason: code, Quantity: exclusionOf[f.Quantity]})
		}
	}
	return out
}

// exclusionOf is what is left out for a finding on a quantity.
var exclusionOf = map[plausible.Quantity]string{plausible.Temperature: winter.OfTemperature, plausible.Humidity: winter.OfHumidity, plausible.Both: ""}

// weightOf orders findings of one code: the largest jump, the longest stretch.
func weightOf(f plausible.Finding) float64 {
	if f.Code == plausible.Jumping {
		return math.Abs(f.Figures[0])
	}
	return float64(f.Span.To - f.Span.From)
}

// argsOf are a finding's arguments after the logger: figures in °C, K, percent and hours.
func argsOf(f plausible.Finding) []string {
	scale := 1.0
	what := "temperature"
	if f.Quantity == plausible.Humidity {
		scale, what = 100, "humidity"
	}
	value := func(i int) string { return figure(f.Figures[i] * scale) }
	hours := figure(math.Round(float64(f.Span.To-f.Span.From) / series.HourMS))
	switch f.Code {
	case plausible.Stuck:
		return []string{what, value(0), hours}
	case plausible.Swapped:
		return nil
	case plausible.DriftOfTwo:
		return []string{f.Beside, what, value(0)}
	case plausible.Fahrenheit:
		return []string{value(0), value(1)}
	case plausible.Saturated, plausible.CarriedOut, plausible.WetSensor:
		return []string{hours}
	}
	return []string{what, value(0)}
}

// figure is a number to two digits behind the point at most.
func figure(v float64) string { return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64) }

// derivedDoubts hold a file's own dew points and absolute humidities against ours.
func derivedDoubts(ctx context.Context, f File) (out []series.Remark) {
	if f.Export == nil || holding(f.Export) != "" {
		return nil
	}
	for i := range f.Export.Series {
		s := &f.Export.Series[i]
		kind, ok := checkable(s)
		temp, relHum := besides(f.Export, s)
		if !ok || temp == nil || relHum == nil || ctx.Err() != nil {
			continue
		}
		trace := plausible.Trace{TempC: bare(f.Name, temp), RelHum: bare(f.Name, relHum), TempStepK: printed(temp), RelHumStep: printed(relHum)}
		found, off := plausible.Derived(trace, bare(f.Name, s), kind, printed(s))
		if off {
			r := series.Remark{Code: "doubt_" + found.Code, Args: []string{f.Name, strings.TrimSpace(s.Column), figure(found.Figures[0])}, Column: s.ColumnIndex, Count: 1, Span: found.Span}
			if found.Code == plausible.FormulaOff {
				r.Args[2] = figure(math.Ceil(100 * found.Figures[1]))
			}
			out = joinedTo(out, r)
		}
	}
	return out
}

// joinedTo adds a remark, to one of the same code and column where there is one: a file with several loggers says
// it once, with the larger figure.
func joinedTo(all []series.Remark, r series.Remark) []series.Remark {
	i := slices.IndexFunc(all, func(o series.Remark) bool { return o.Code == r.Code && o.Args[1] == r.Args[1] && o.Column == r.Column })
	if i < 0 {
		return append(all, r)
	}
	all[i].Count++
	old, _ := strconv.ParseFloat(all[i].Args[2], 64)
	if now, _ := strconv.ParseFloat(r.Args[2], 64); now > old {
		all[i].Args = r.Args
	}
	return all
}

// checkable is what a series can be checked as.
func checkable(s *importers.Series) (plausible.Kind, bool) {
	switch {
	case s.Quantity == importers.DewPoint:
		return plausible.DewPoint, true
	case s.Quantity == importers.AbsoluteHumidity && s.Unit == "g/m3":
		return plausible.AbsHumidity, true
	}
	return 0, false
}

// besides are the temperature and humidity of the same logger of a file, the nearest columns if there are more.
func besides(export *importers.Export, s *importers.Series) (temp, relHum *importers.Series) {
	nearer := func(old, other *importers.Series) *importers.Series {
		if old == nil || abs(int64(other.ColumnIndex-s.ColumnIndex)) < abs(int64(old.ColumnIndex-s.ColumnIndex)) {
			return other
		}
		return old
	}
	for i := range export.Series {
		other := &export.Series[i]
		switch {
		case other.Logger != s.Logger || len(other.FaceMS) == 0:
		case other.Quantity == importers.AirTemperature:
			temp = nearer(temp, other)
		case other.Quantity == importers.RelativeHumidity:
			relHum = nearer(relHum, other)
		}
	}
	return temp, relHum
}

// bare is a series on its own clock, in order of time.
func bare(file string, s *importers.Series) series.Curve {
	r, _ := tidy(file, s.FaceMS, s.Val)
	return series.Curve{Readings: r.readings}
}

// printed is a series' printed resolution in the house unit.
func printed(s *importers.Series) float64 {
	step := math.Pow10(-s.Decimals)
	switch s.Unit {
	case "degF":
		return step * kelvinPerFahrenheit
	case "percent":
		return step / 100
	}
	return step
}
