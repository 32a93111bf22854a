package desk

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/compare"
)

// stagesInWeather has, for every stage of one name in both barns, a strip each by whole degrees outside, and a sentence that
// takes the weather out.
func (s twoBarns) stagesInWeather() Pattern {
	p := Pattern{Title: "Fan stages by the air outside"}
	low, high := math.MaxInt, math.MinInt
	for _, w := range s.p.Weather.Stages {
		for _, x := range slices.Concat(w.A, w.B) {
			low, high = min(low, x.At), max(high, x.At)
		}
	}
	if low > high {
		return p
	}
	ticks := p.degrees(s.a.u, low, high)
	var texts []string
	for _, w := range s.p.Weather.Stages {
		for i, b := range []barn{s.a, s.b} {
			strip := Strip{Name: w.Name, Kind: []string{s.p.A, s.p.B}[i], Top: Percent(1), Ticks: ticks, Shares: sharesAt([][]analysis.Share{w.A, w.B}[i], low, high), Ran: b.ranOn(w.Name)}
			strip.said = w.Name + " of " + strip.Kind + " " + calledOrRan(strip.Ran)
			p.Strips = append(p.Strips, strip)
		}
		if a, b, ok := w.InSameWeather(); ok {
			texts = append(texts, fmt.Sprintf("In the same weather %s %s in %s hours in %s, %s in %s in %s.", w.Name, wasOn(s.a.ranOn(w.Name)), OfHundred(a), s.p.A, wasOn(s.b.ranOn(w.Name)), OfHundred(b), s.p.B))
		}
	}
	p.Text = strings.Join(texts, " ")
	return p
}

// wasOn is what is known of a stage's hours, in a sentence.
func wasOn(ran bool) string {
	if ran {
		return "ran"
	}
	return "was called for"
}

// ranOn says whether a stage's hours of a name are those a record shows.
func (b barn) ranOn(stage string) bool {
	for _, r := range b.r.Stages {
		if r.Name == stage && r.Ran != nil {
			return true
		}
	}
	return false
}

// warmth has a strip for each barn: in what share of the hours known in both its air was at a temperature or warmer.
func (s twoBarns) warmth() Pattern {
	p := Pattern{Title: "Time at each temperature or warmer"}
	e, from, to := s.warmthLevels()
	a, b := Strip{Name: s.p.A, Top: Percent(1), Ran: true, said: s.p.A}, Strip{Name: s.p.B, Top: Percent(1), Ran: true, said: s.p.B}
	for i := from; i < to; i++ {
		p.cells = append(p.cells, s.a.u.LimitWithUnit(e.Levels[i])+" or warmer")
		a.Shares, b.Shares = append(a.Shares, e.A[i]/e.KnownHours), append(b.Shares, e.B[i]/e.KnownHours)
		if e.Levels[i] == math.Trunc(e.Levels[i]) {
			a.Ticks = append(a.Ticks, Tick{s.a.u.LimitWithUnit(e.Levels[i]), i - from})
		}
	}
	if len(p.cells) > 0 {
		p.Strips = []Strip{a, b}
	}
	return p
}

// warmthLevels is the air's exposure over the whole common time, and between which of its levels either barn's hours change.
func (s twoBarns) warmthLevels() (e compare.Exposure, from, to int) {
	for _, e = range s.p.Exposures {
		if e.Quantity != compare.AirTemperature || e.Phase != "" {
			continue
		}
		for from < len(e.Levels) && e.A[from] >= e.KnownHours && e.B[from] >= e.KnownHours {
			from++
		}
		for to = from; to < len(e.Levels) && (e.A[to] > 0 || e.B[to] > 0); {
			to++
		}
		return e, from, to
	}
	return e, 0, 0
}

// levels are the hours behind warmth, in steps of a degree.
func (s twoBarns) levels() Table {
	t := Table{Columns: []Column{{Title: "At or above", Unit: s.a.u.TempSymbol()}, barnColumn(s.p.A, "h"), barnColumn(s.p.B, "h"), {Title: "Difference", Unit: "h", Number: true}}}
	e, from, to := s.warmthLevels()
	for i := from; i < to; i++ {
		if e.Levels[i] == math.Trunc(e.Levels[i]) {
			t.Rows = append(t.Rows, []string{s.a.u.Limit(e.Levels[i]), hoursNumber(e.A[i]), hoursNumber(e.B[i]), withSign(hoursNumber(e.A[i] - e.B[i]))})
		}
	}
	return t
}

// totalWords name a winter's totals, the unit each is shown in, and how many decimals it has.
var totalWords = map[string]struct {
	title    string
	decimals int
}{
	"bees_days":          {"Bees in, days", 0},
	"good_hours":         {"Inside the safe band, %", 0},
	"small_stages_alone": {"Small fans alone, %", 0},
	"air_changes":        {"Air changes an hour", 2},
	"energy":             {"Energy of the fans, kWh", 0},
	"energy_per_hive":    {"Energy of the fans, kWh a hive", 1},
}

// totals are the figures of each barn's own winter, beside one another.
func (s twoBarns) totals() Table {
	t := Table{Columns: []Column{{Title: "Each over its own bees' time"}, barnColumn(s.p.A, ""), barnColumn(s.p.B, ""), {Title: "Difference", Number: true}}}
	for _, total := range s.p.Totals {
		words, ok := totalWords[total.Quantity]
		if !ok {
			continue
		}
		shown := func(v float64) string { return number(v, words.decimals) }
		t.Helps = append(t.Helps, rowHelp[total.Quantity])
		t.Rows = append(t.Rows, []string{words.title, shownFigure(total.A).text(shown), shownFigure(total.B).text(shown), shownFigure(total.Difference).text(shown)})
	}
	return t
}
