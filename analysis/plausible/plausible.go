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
	temp    []hours // per trace
	relHum  []hours
}

// NewRoom prepares the loggers of one place. outdoor is the temperature outdoors, °C; it may be empty, and
// must be for loggers that hang outdoors themselves.
func NewRoom(traces []Trace, outdoor series.Curve) *Room {
	r := &Room{traces: slices.Clone(traces)}
	grid := gridOf(traces)
	for i := range r.traces {
		t := &r.traces[i]
		t.TempStepK, t.RelHumStep = stepOr(t.TempStepK, t.TempC), stepOr(t.RelHumStep, t.RelHum)
	}
	for _, t := range traces {
		r.temp = append(r.temp, hoursOf(grid, t.TempC))
		r.relHum = append(r.relHum, hoursOf(grid, t.RelHum))
	}
	r.outdoor = hoursOf(grid, outdoor)
	return r
}

// Findings is what there is to say of logger i, sorted by start and code. A stretch whose columns are
// swapped or whose unit is wrong is only said to be so.
func (r *Room) Findings(i int) []Finding {
	if i < 0 || i >= len(r.traces) {
		return nil
	}
	misread := r.misread(i)
	out := slices.Clone(misread)
	for _, f := range slices.Concat(r.sentinels(i), r.stuck(i), r.saturated(i), r.jumps(i), r.drifting(i), r.carried(i), r.wet(i)) {
		if !slices.ContainsFunc(misread, func(m Finding) bool { return len(series.Intersect([]series.Span{m.Span}, []series.Span{f.Span})) > 0 }) {
			out = append(out, f)
		}
	}
	slices.SortStableFunc(out, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.Span.From, b.Span.From), cmp.Compare(a.Code, b.Code), cmp.Compare(a.Quantity, b.Quantity))
	})
	return out
}
