package plausible

import (
	"cmp"
	"slices"

	"thawbook/analysis/series"
)

// The codes of findings, with their Figures. Temperatures are in °C and K, humidity is 0–1, times in hours.
const (
	Stuck      = "stuck"         // one value for very long: the value; hours; hours this logger usually stays on one value
	Saturated  = "saturated"     // stood at 100 % while the air can't have: hours; humidity of its neighbours, or NaN
	Jumping    = "jumping"       // away and straight back: the size of the step; the largest usual one
	Sentinel   = "sentinel"      // a value no air has, or far from all others: the value; the middle of the others
	Swapped    = "swapped"       // temperature and humidity stand in each other's column: middle of the "temperature"; of the "humidity"
	Fahrenheit = "fahrenheit"    // °F in a column of °C: the middle as it stands; converted; of its neighbours, or NaN
	Drift      = "drift"         // parts slowly from its neighbours: change over the span
	DriftOfTwo = "drift_of_two"  // two part slowly and there is no third to say which; said of the first: change against the other over the span
	CarriedOut = "carried_out"   // follows the air outdoors at an end of the log: middle distance from the room; from outdoors
	WetSensor  = "wet_sensor"    // dries slowly after it was wet: how far above its neighbours at first; hours
	Elsewhere  = "elsewhere"     // far from all its neighbours from end to end: how far
	Apart      = "apart"         // far from all its neighbours for a while: how far
	FormulaIce = "formula_ice"   // the file's own column is worked out over ice: disagreement with ours, of the worst reading but one in twenty; share of readings that disagree
	Formula    = "formula_other" // … by another formula: the same two
	FormulaSwp = "formula_swap"  // … from swapped temperature and humidity: the same two
	FormulaOff = "formula_off"   // some or all of it does not follow from its temperature and humidity: the same two
)

// Quantity says which of a logger's quantities a finding is about.
type Quantity int

// The quantities a finding can be about.
const (
	Temperature Quantity = iota
	Humidity
	Both
)

// Sureness is how sure a finding is.
type Sureness int

// Perhaps is a sign that has an innocent explanation too; Likely is one that hardly has.
const (
	Perhaps Sureness = iota
	Likely
)

// Finding is one thing about a logger that looks wrong, and where.
type Finding struct {
	Code     string
	Quantity Quantity
	Span     series.Span
	Sure     Sureness
	Figures  []float64 // what the code says; NaN where there is nothing to say
	Beside   string    // of two that part, the other's name
}

// Trace is what one logger said: °C and 0–1, either empty when it has none. The steps are the printed
// resolutions; 0 when they are not known, then the smallest change it ever showed stands for them. Resting
// says that it hangs in the air of a room where bees should rest, so that warmth itself is suspect.
type Trace struct {
	Name                  string
	TempC, RelHum         series.Curve
	TempStepK, RelHumStep float64
	Resting               bool
}

// Room is the loggers that hang in one place and what was outdoors, hour by hour. It is never changed
// once made and may be asked from several goroutines.
type Room struct {
	traces  []Trace
	outdoor hours
	temp    *crowd
	relHum  *crowd
	levels  []float64 // the middle of each logger's temperatures, NaN where too little is known
}

// Spread shares out work(0) to work(n−1) and comes back when it is done, or was given up.
type Spread func(n int, work func(i int))

// inTurn does one after the other.
func inTurn(n int, work func(i int)) {
	for i := range n {
		work(i)
	}
}

// NewRoom prepares the loggers of one place. outdoor is the temperature outdoors, °C; it may be empty, and
// must be for loggers that hang outdoors themselves.
func NewRoom(traces []Trace, outdoor series.Curve) *Room {
	return NewRoomSpread(traces, outdoor, inTurn)
}

// NewRoomSpread is NewRoom with its work shared out. After work that was given up the room is good for nothing,
// but may be asked.
func NewRoomSpread(traces []Trace, outdoor series.Curve, spread Spread) *Room {
	r := &Room{traces: slices.Clone(traces)}
	grid := gridOf(traces)
	temp, relHum := make([]series.Curve, len(traces)), make([]series.Curve, len(traces))
	spread(len(traces), func(i int) {
		t := &r.traces[i]
		t.TempStepK, t.RelHumStep = stepOr(t.TempStepK, t.TempC), stepOr(t.RelHumStep, t.RelHum)
	})
	for i, t := range traces {
		temp[i], relHum[i] = t.TempC, t.RelHum
	}
	r.temp, r.relHum = newCrowd(grid, temp, spread), newCrowd(grid, relHum, spread)
	r.outdoor = hoursOf(grid, outdoor)
	r.levels = make([]float64, len(traces))
	spread(len(traces), func(i int) { r.levels[i] = levelOf(r.temp.all[i]) })
	for _, c := range []*crowd{r.temp, r.relHum} {
		c.trends = make([]trend, len(traces))
		spread(len(traces), func(i int) { c.trends[i] = r.trendOf(c, i) })
	}
	return r
}

// Findings is what there is to say of logger i, sorted by start and code. A stretch whose columns are
// swapped or whose unit is wrong is only said to be so.
func (r *Room) Findings(i int) []Finding { return r.FindingsUntil(i, func() bool { return false }) }

// FindingsUntil is Findings, given up between two rules once nobody waits any more.
func (r *Room) FindingsUntil(i int, over func() bool) []Finding {
	if i < 0 || i >= len(r.traces) {
		return nil
	}
	misread := r.misread(i)
	out := slices.Clone(misread)
	for _, rule := range []func(int) []Finding{r.sentinels, r.stuck, r.saturated, r.jumps, r.drifting, r.carried, r.wet, r.elsewhere, r.apart} {
		if over() {
			return nil
		}
		for _, f := range rule(i) {
			if !slices.ContainsFunc(misread, func(m Finding) bool { return len(series.Intersect([]series.Span{m.Span}, []series.Span{f.Span})) > 0 }) {
				out = append(out, f)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.Span.From, b.Span.From), cmp.Compare(a.Code, b.Code), cmp.Compare(a.Quantity, b.Quantity))
	})
	return out
}
