package desk

import (
	"math"
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// barn is one barn's judgement with what it was judged by, as the sentences ask for it.
type barn struct {
	in analysis.Input
	r  analysis.Review
	u  Units
}

// newBarn shows times in the barn's own zone.
func newBarn(in analysis.Input, r analysis.Review, u Units) barn {
	u.Zone = in.Zone
	return barn{in, r, u}
}

// span is the bees' time.
func (b barn) span() series.Span { return series.Span{From: b.r.BeesIn, To: b.r.BeesOut} }

// place is where the room's air was read: the room, or the control logger where none hangs in the room.
func (b barn) place() string {
	for _, l := range b.in.Loggers {
		if l.Place == "room" && l.TempC.Len()+l.RelHum.Len() > 0 {
			return "room"
		}
	}
	return "control"
}

// roomLoggers are the loggers whose air is the room's.
func (b barn) roomLoggers() []analysis.Logger {
	var out []analysis.Logger
	for _, l := range b.in.Loggers {
		if l.Place == b.place() && l.TempC.Len()+l.RelHum.Len() > 0 {
			out = append(out, l)
		}
	}
	return out
}

// unread says that no logger read the room's air.
func (b barn) unread() bool { return b.r.Traces.Room.Len()+b.r.Traces.RoomRelHum.Len() == 0 }

// quantity is the room's row of a quantity over the whole bees' time.
func (b barn) quantity(name string) (analysis.QuantityRow, bool) {
	for _, q := range b.r.Quantities {
		if q.Quantity == name && q.Place == b.place() && q.Logger == "" && q.Phase == "" {
			return q, true
		}
	}
	return analysis.QuantityRow{}, false
}

// band is one band of a room quantity; ok only where enough is known for numbers.
func (b barn) band(quantity, name string) (analysis.BandRow, bool) {
	q, ok := b.quantity(quantity)
	if !ok || !q.Mean.OK {
		return analysis.BandRow{}, false
	}
	for _, row := range q.Bands {
		if row.Name == name {
			return row, true
		}
	}
	return analysis.BandRow{}, false
}

// errK is the 95 % half-width of the room's temperature, K.
func (b barn) errK() float64 {
	if e := b.r.Traces.RoomErrK; e > 0 {
		return e
	}
	return b.worstErrK()
}

// worstErrK is the largest 95 % half-width of the room's thermometers, K.
func (b barn) worstErrK() float64 {
	e := 0.0
	for _, l := range b.roomLoggers() {
		e = math.Max(e, l.TempErrK)
	}
	return e
}

// hives is the most hives that stood in the barn at once; 0 without a ledger.
func (b barn) hives() int {
	count, most := 0, 0
	for _, h := range b.in.Heads {
		count += h.Change
		most = max(most, count)
	}
	return most
}

// spells are the spells of some kinds at a place.
func (b barn) spells(place string, kinds ...string) []analysis.Spell {
	var out []analysis.Spell
	for _, s := range b.r.Spells {
		for _, k := range kinds {
			if s.Kind == k && s.Place == place {
				out = append(out, s)
			}
		}
	}
	return out
}

// longestDays is the stretch of most days a sentence calls by its dates.
const longestDays = 10

// bulk is the shortest stretch of local days that holds more than half of the spells' hours, with the hours
// in it. ok is false when no stretch of up to ten days does: then the hours are scattered.
func (b barn) bulk(spells []analysis.Spell) (s series.Span, hours float64, ok bool) {
	if len(spells) == 0 || b.in.Zone == nil {
		return s, 0, false
	}
	whole := series.Span{From: spells[0].Span.From, To: spells[0].Span.To}
	for _, sp := range spells {
		whole.To = max(whole.To, sp.Span.To)
	}
	days := series.LocalDays(whole, b.in.Zone)
	per, total := make([]float64, len(days)), 0.0
	for i, d := range days {
		per[i] = hoursIn(spells, d)
		total += per[i]
	}
	for n := 1; n <= min(longestDays, len(days)); n++ {
		if at, sum := fullest(per, n); sum > total/2 {
			return series.Span{From: days[at].From, To: days[at+n-1].To}, sum, true
		}
	}
	return s, 0, false
}

// fullest is where n neighbours add up to most, and to how much.
func fullest(v []float64, n int) (at int, most float64) {
	for i := 0; i+n <= len(v); i++ {
		sum := 0.0
		for _, x := range v[i : i+n] {
			sum += x
		}
		if sum > most {
			at, most = i, sum
		}
	}
	return at, most
}

// hoursIn shares each spell's hours out over its own span.
func hoursIn(spells []analysis.Spell, s series.Span) float64 {
	sum := 0.0
	for _, sp := range spells {
		if part := min(sp.Span.To, s.To) - max(sp.Span.From, s.From); part > 0 {
			sum += sp.Hours * float64(part) / float64(sp.Span.To-sp.Span.From)
		}
	}
	return sum
}

// peak is the spell that went farthest out.
func peak(spells []analysis.Spell) analysis.Spell {
	best := spells[0]
	for _, s := range spells[1:] {
		if math.Abs(s.Peak-s.Limit) > math.Abs(best.Peak-best.Limit) {
			best = s
		}
	}
	return best
}

// spansOf are the stretches of spells inside a span.
func spansOf(spells []analysis.Spell, s series.Span) []series.Span {
	var out []series.Span
	for _, sp := range spells {
		out = append(out, sp.Span)
	}
	return series.Intersect(out, []series.Span{s})
}

// outdoorMean is the time-weighted outdoor temperature over some stretches, °C; ok when most of them are
// known.
func (b barn) outdoorMean(spans []series.Span) (tempC float64, ok bool) {
	area, knownMS := 0.0, int64(0)
	for _, bin := range b.r.Traces.Outdoor.Bins(spans) {
		area, knownMS = area+bin.Area, knownMS+bin.KnownMS
	}
	if 2*knownMS <= series.LengthMS(spans) || knownMS == 0 {
		return 0, false
	}
	return area / float64(knownMS), true
}

// calledShare is how much of some stretches every thermostat stage was called for together; ok when there
// are such stages.
func (b barn) calledShare(spans []series.Span) (share float64, ok bool) {
	all, stages := spans, 0
	for _, name := range b.thermostatStages() {
		all = series.Intersect(all, b.calledOn(name))
		stages++
	}
	length := series.LengthMS(spans)
	if stages == 0 || length == 0 {
		return 0, false
	}
	return float64(series.LengthMS(all)) / float64(length), true
}

// thermostatStages names the stages that switch by temperature, the smallest first.
func (b barn) thermostatStages() []string {
	var out []string
	for _, st := range analysis.Thermostats(b.in.Stages) {
		out = append(out, st.Name)
	}
	return out
}

// calledOn is when a stage was called for, over all its settings.
func (b barn) calledOn(stage string) []series.Span {
	var out []series.Span
	for _, row := range b.r.Stages {
		if row.Name == stage && row.Called != nil {
			out = append(out, row.Called.On...)
		}
	}
	return out
}

// listed joins words as a sentence does: "a", "a and b", "a, b and c".
func listed(words []string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// capital makes the first letter of a sentence a capital.
func capital(s string) string {
	if s == "" {
		return s
	}
	r := []rune(s)
	return strings.ToUpper(string(r[0])) + string(r[1:])
}
