package desk

import (
	"math"
	"strconv"
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// Strip is a stage's share of time on, 0–1, in cells side by side; NaN where nothing is known.
type Strip struct {
	Name, Kind, Top string
	Ran             bool // from a record; else called for
	Shares          []float64
	Ticks           []Tick
	said            string // what is read out of a cell, before its share
}

// Tick is a word at the left edge of a cell.
type Tick struct {
	Name string
	Cell int
}

// Pattern is when stages were on, by hour of the day or by the air outside: a sentence each and a strip each.
type Pattern struct {
	Title, Text string
	Strips      []Strip
	cells       []string // what each cell is, for reading
}

// Read says for how much of a cell's time each stage was on; empty where there is no such cell.
func (p Pattern) Read(cell int) string {
	if cell < 0 || cell >= len(p.cells) {
		return ""
	}
	var parts []string
	for _, s := range p.Strips {
		share := noNumber
		if !math.IsNaN(s.Shares[cell]) {
			share = "in " + OfHundred(s.Shares[cell]) + " hours"
		}
		parts = append(parts, s.said+" "+share)
	}
	return p.cells[cell] + ": " + strings.Join(parts, ", ")
}

// patterns are both patterns of the stages that switch by a thermostat; none without such stages.
func (b barn) patterns() []Pattern {
	if len(b.thermostatStages()) == 0 {
		return nil
	}
	return []Pattern{b.hourPattern(), b.outdoorPattern()}
}

// hourPattern is by hour of the local day.
func (b barn) hourPattern() Pattern {
	p := Pattern{Title: "By hour of the day"}
	for h := range 24 {
		p.cells = append(p.cells, clockHour(h)+" to "+clockHour(h+1))
	}
	ticks := []Tick{{clockHour(0), 0}, {clockHour(6), 6}, {clockHour(12), 12}, {clockHour(18), 18}}
	p.fill(b, func(r analysis.StageRow) []analysis.Share { return r.ByHour }, 0, 23, ticks, hoursMostly)
	return p
}

// outdoorPattern is by whole degrees outside.
func (b barn) outdoorPattern() Pattern {
	p := Pattern{Title: "By the air outside"}
	low, high := math.MaxInt, math.MinInt
	for _, r := range b.r.Stages {
		for _, s := range r.ByOutdoor {
			low, high = min(low, s.At), max(high, s.At)
		}
	}
	if low > high {
		p.Text = "How the stages go by the air outside can't be told: " + lacks("no_outdoor") + "."
		return p
	}
	ticks := p.degrees(b.u, low, high)
	p.fill(b, func(r analysis.StageRow) []analysis.Share { return r.ByOutdoor }, low, high, ticks, b.outdoorMostly)
	return p
}

// degrees gives a pattern a cell for every degree outside; the ticks stand at every fifth.
func (p *Pattern) degrees(u Units, low, high int) (ticks []Tick) {
	for d := low; d <= high; d++ {
		p.cells = append(p.cells, u.LimitWithUnit(float64(d))+" outside")
		if d%5 == 0 {
			ticks = append(ticks, Tick{u.LimitWithUnit(float64(d)), d - low})
		}
	}
	return ticks
}

// sharesAt are a cell's shares from one hour or degree to another; NaN where there is none.
func sharesAt(shares []analysis.Share, first, last int) []float64 {
	out := make([]float64, last-first+1)
	for i := range out {
		out[i] = math.NaN()
	}
	for _, x := range shares {
		out[x.At-first] = float64(x.OnMS) / float64(x.KnownMS)
	}
	return out
}

// calledOrRan says whether hours are those of a record or those worked out.
func calledOrRan(ran bool) string {
	if ran {
		return "ran"
	}
	return "called for"
}

// fill sets a strip and a sentence for every stage and setting period that has shares, from one hour or degree to another.
func (p *Pattern) fill(b barn, of func(analysis.StageRow) []analysis.Share, first, last int, ticks []Tick, says func([]analysis.Share) string) {
	periods := map[string]int{}
	for _, r := range b.r.Stages {
		if r.Setting.Thermostat() {
			periods[r.Name]++
		}
	}
	var texts []string
	for _, r := range b.r.Stages {
		shares := of(r)
		if len(shares) == 0 {
			continue
		}
		s := Strip{Name: r.Name, Kind: calledOrRan(r.Ran != nil), Top: Percent(1), Ran: r.Ran != nil, Ticks: ticks, Shares: sharesAt(shares, first, last)}
		if periods[r.Name] > 1 {
			s.Name += " from " + b.u.Date(r.Setting.Span.From)
		}
		s.said = s.Name + " " + s.Kind
		p.Strips = append(p.Strips, s)
		verb := " was called for "
		if s.Ran {
			verb = " ran "
		}
		texts = append(texts, capital(s.Name)+verb+says(shares)+".")
	}
	p.Text = strings.Join(texts, " ")
}

// mostlyHours is the longest stretch of the day that a stage is said to keep to (a third of the day for more than half
// of its time; common practice, no source).
const mostlyHours = 8

// hoursMostly is "mostly from 13:00 to 17:00": the shortest stretch of the day that holds more than half of a stage's
// time on, each hour counted by its share.
func hoursMostly(shares []analysis.Share) string {
	var day [24]float64
	total, onMS := 0.0, int64(0)
	for _, s := range shares {
		day[s.At] = float64(s.OnMS) / float64(s.KnownMS)
		total, onMS = total+day[s.At], onMS+s.OnMS
	}
	if hours(onMS) < 1 {
		return "for less than an hour in all"
	}
	for n := 1; n <= mostlyHours; n++ {
		if at, sum := fullest(append(day[:], day[:n-1]...), n); sum > total/2 {
			return "mostly from " + clockHour(at) + " to " + clockHour((at+n)%24)
		}
	}
	return "about as much at one hour of the day as at another"
}

// A stage goes by the air outside where it was on so much more of the time on the warm side of some degree than on the
// cold side, with a tenth of the known time at least on either (common practice, no source).
const (
	outdoorApart = 0.2
	outdoorSide  = 0.1
)

// outdoorMostly is "in 71 of 100 hours with 3 °C and more outside, in 6 of 100 below that", at the degree that parts the
// two the most.
func (b barn) outdoorMostly(shares []analysis.Share) string {
	var onMS, knownMS float64
	for _, s := range shares {
		onMS, knownMS = onMS+float64(s.OnMS), knownMS+float64(s.KnownMS)
	}
	if onMS < series.HourMS {
		return "for less than an hour in all"
	}
	var belowOn, below, most float64
	text := ""
	for _, s := range shares {
		if below >= outdoorSide*knownMS && knownMS-below >= outdoorSide*knownMS {
			cold, warm := belowOn/below, (onMS-belowOn)/(knownMS-below)
			if apart := math.Abs(warm - cold); apart >= outdoorApart && apart > most {
				most = apart
				text = "in " + OfHundred(warm) + " hours with " + b.u.LimitWithUnit(float64(s.At)) + " and more outside, in " + OfHundred(cold) + " below that"
			}
		}
		belowOn, below = belowOn+float64(s.OnMS), below+float64(s.KnownMS)
	}
	if text == "" {
		return "about as much in warm weather as in cold"
	}
	return text
}

// clockHour is "13:00".
func clockHour(h int) string {
	if h < 10 {
		return "0" + strconv.Itoa(h) + ":00"
	}
	return strconv.Itoa(h) + ":00"
}
