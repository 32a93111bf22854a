package plausible_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"thawbook/analysis/plausible"
	"thawbook/analysis/series"
)

const monthMS = 28 * 24 * series.HourMS

// piece is four weeks of one logger of the open data, with what was outdoors.
type piece struct {
	name    string
	trace   plausible.Trace
	outdoor series.Curve
}

// pieces are the open data in stretches of four weeks.
func pieces(t *testing.T) (out []piece) {
	t.Helper()
	outC, outRelHum := measured(t, "d07_fi_attic_outdoor.csv", "Te", "RHe")
	atticC, atticRelHum := measured(t, "d06_fi_attic_air.csv", "T", "RH")
	houseC, houseRelHum := measured(t, "d08_fi_attic_indoor.csv", "T", "RH")
	first, last := outC.Readings.At[0], outC.Readings.At[outC.Len()-1]
	for k, s := range series.Steps(series.Span{From: first, To: last - monthMS/2}, monthMS, first) {
		name := func(what string) string { return fmt.Sprintf("%s, month %d", what, k+1) }
		out = append(out,
			piece{name("outdoors"), plausible.Trace{TempC: outC.Slice(s), RelHum: outRelHum.Slice(s)}, series.Curve{}},
			piece{name("attic"), plausible.Trace{TempC: atticC.Slice(s), RelHum: atticRelHum.Slice(s)}, outC.Slice(s)},
			piece{name("house"), plausible.Trace{TempC: houseC.Slice(s), RelHum: houseRelHum.Slice(s)}, outC.Slice(s)})
	}
	return out
}

// beside is what a second logger at the same spot would have said: an offset, and noise that lasts some hours.
func beside(t *testing.T, of plausible.Trace, seed uint64) plausible.Trace {
	t.Helper()
	random := rand.New(rand.NewPCG(seed, 1))
	like := func(c series.Curve, scale, step float64) series.Curve {
		offset, noise := scale*random.NormFloat64(), 0.0
		val := make([]float64, c.Len())
		for i := range val {
			noise = 0.7*noise + 0.4*scale*random.NormFloat64()
			val[i] = math.Round((c.Val[i]+offset+noise)/step) * step
		}
		return curve(t, c.Readings.At, val)
	}
	return plausible.Trace{TempC: like(of.TempC, 0.2, 0.1), RelHum: like(of.RelHum, 0.015, 0.001)}
}

// room is a piece with some loggers beside it.
func room(t *testing.T, p piece, neighbours int) []plausible.Trace {
	t.Helper()
	traces := []plausible.Trace{p.trace}
	for k := range neighbours {
		traces = append(traces, beside(t, p.trace, uint64(k+1)))
	}
	return traces
}

// Good data is left in peace: alone, beside one logger, and among four.
func TestGoodDataIsLeftInPeace(t *testing.T) {
	all := pieces(t)
	for _, neighbours := range []int{0, 1, 3} {
		asked, found := 0, 0
		for _, p := range all {
			traces := room(t, p, neighbours)
			r := plausible.NewRoom(traces, p.outdoor)
			for i := range traces {
				asked++
				if f := r.Findings(i); len(f) > 0 {
					found++
					t.Logf("%s, logger %d of %d: %+v", p.name, i+1, len(traces), f)
				}
			}
		}
		t.Logf("beside %d: %d of %d logs have a finding", neighbours, found, asked)
		if 50*found > asked {
			t.Errorf("beside %d: %d of %d good logs have a finding, more than one in fifty", neighbours, found, asked)
		}
	}
}

// The whole 594 days at once are no stretch for doubt either, nor when they are printed coarsely: then calm days
// stand still.
func TestGoodYearsAreLeftInPeace(t *testing.T) {
	outC, outRelHum := measured(t, "d07_fi_attic_outdoor.csv", "Te", "RHe")
	atticC, atticRelHum := measured(t, "d06_fi_attic_air.csv", "T", "RH")
	houseC, houseRelHum := measured(t, "d08_fi_attic_indoor.csv", "T", "RH")
	for _, p := range []piece{
		{"outdoors", plausible.Trace{TempC: outC, RelHum: outRelHum}, series.Curve{}},
		{"attic", plausible.Trace{TempC: atticC, RelHum: atticRelHum}, outC},
		{"house", plausible.Trace{TempC: houseC, RelHum: houseRelHum}, outC},
	} {
		for _, step := range []struct{ tempK, relHum float64 }{{0.01, 0.0001}, {0.1, 0.001}, {0.5, 0.01}, {1, 0.05}} {
			for neighbours := range 3 {
				traces := room(t, p, neighbours)
				for i := range traces {
					traces[i].TempC, traces[i].RelHum = printed(traces[i].TempC, step.tempK), printed(traces[i].RelHum, step.relHum)
				}
				for i := range traces {
					if f := plausible.NewRoom(traces, p.outdoor).Findings(i); len(f) > 0 {
						t.Errorf("%s in steps of %v, logger %d of %d: %+v", p.name, step, i+1, len(traces), f)
					}
				}
			}
		}
	}
}

// printed is a curve as it is printed in steps.
func printed(c series.Curve, step float64) series.Curve {
	return c.Map(func(v float64) float64 { return math.Round(v/step) * step })
}

// fault spoils a trace and says where.
type fault struct {
	code       string
	neighbours int
	only       string // the beginning of the pieces' names it is for; "" all
	spoil      func(t *testing.T, p piece, start int) (plausible.Trace, series.Span)
	least      float64 // the share of logs in which it must be found
}

// changed is a curve with some values changed, from index i up to j.
func changed(t *testing.T, c series.Curve, i, j int, f func(k int, v float64) float64) series.Curve {
	t.Helper()
	val := slices.Clone(c.Val)
	for k := i; k < min(j, len(val)); k++ {
		val[k] = f(k, val[k])
	}
	return curve(t, c.Readings.At, val)
}

// hoursFrom is the span of hourly readings [i, j) of a curve.
func hoursFrom(c series.Curve, i, j int) series.Span {
	return series.Span{From: c.Readings.At[i], To: c.Readings.At[min(j, c.Len())-1] + 1}
}

var faults = []fault{
	{plausible.Stuck, 1, "", func(t *testing.T, p piece, start int) (plausible.Trace, series.Span) {
		held := p.trace.TempC.Val[start]
		p.trace.TempC = changed(t, p.trace.TempC, start, start+96, func(int, float64) float64 { return held })
		return p.trace, hoursFrom(p.trace.TempC, start, start+96)
	}, 0.9},
	{plausible.Stuck, 0, "", func(t *testing.T, p piece, start int) (plausible.Trace, series.Span) {
		held := p.trace.RelHum.Val[start]
		p.trace.RelHum = changed(t, p.trace.RelHum, start, start+96, func(int, float64) float64 { return held })
		return p.trace, hoursFrom(p.trace.RelHum, start, start+96)
	}, 0.75}, // at 97 % and more a sensor may stand still
	{plausible.Saturated, 1, "house", func(t *testing.T, p piece, start int) (plausible.Trace, series.Span) {
		p.trace.RelHum = changed(t, p.trace.RelHum, start, start+36, func(int, float64) float64 { return 1 })
		return p.trace, hoursFrom(p.trace.RelHum, start, start+36)
	}, 1},
	{plausible.WetSensor, 1, "house", func(t *testing.T, p piece, start int) (plausible.Trace, series.Span) {
		p.trace.RelHum = changed(t, p.trace.RelHum, start, start+80, func(k int, v float64) float64 {
			return v + (1-v)*math.Exp(-float64(max(0, k-start-12))/10)
		})
		return p.trace, hoursFrom(p.trace.RelHum, start+16, start+30)
	}, 0.8},
	{plausible.Jumping, 0, "house", func(t *testing.T, p piece, start int) (plausible.Trace, series.Span) {
		p.trace.TempC = changed(t, p.trace.TempC, start, start+2, func(_ int, v float64) float64 { return v - 14 })
		return p.trace, hoursFrom(p.trace.TempC, start, start+2)
	}, 0.95},
	{plausible.Jumping, 0, "outdoors", func(t *testing.T, p piece, start int) (plausible.Trace, series.Span) {
		p.trace.TempC = changed(t, p.trace.TempC, start, start+1, func(_ int, v float64) float64 { return v + 40 })
		return p.trace, hoursFrom(p.trace.TempC, start, start+1)
	}, 0.95},
	{plausible.Sentinel, 0, "", func(t *testing.T, p piece, start int) (plausible.Trace, series.Span) {
		p.trace.TempC = changed(t, p.trace.TempC, start, start+5, func(int, float64) float64 { return -200 })
		return p.trace, hoursFrom(p.trace.TempC, start, start+5)
	}, 1},
	{plausible.Sentinel, 0, "house", func(t *testing.T, p piece, start int) (plausible.Trace, series.Span) {
		p.trace.TempC = changed(t, p.trace.TempC, start, start+30, func(int, float64) float64 { return -85 })
		return p.trace, hoursFrom(p.trace.TempC, start, start+30)
	}, 0.95},
	{plausible.Swapped, 1, "", func(t *testing.T, p piece, _ int) (plausible.Trace, series.Span) {
		c, h := p.trace.TempC, p.trace.RelHum
		p.trace.TempC = changed(t, h, 0, h.Len(), func(_ int, v float64) float64 { return 100 * v })
		p.trace.RelHum = changed(t, c, 0, c.Len(), func(_ int, v float64) float64 { return v / 100 })
		return p.trace, hoursFrom(c, 48, c.Len()-48)
	}, 0.75}, // an attic at 25 °C and 30 % reads nearly alike either way
	{plausible.Fahrenheit, 1, "", func(t *testing.T, p piece, _ int) (plausible.Trace, series.Span) {
		c := p.trace.TempC
		p.trace.TempC = changed(t, c, 0, c.Len(), func(_ int, v float64) float64 { return 1.8*v + 32 })
		return p.trace, hoursFrom(c, 48, c.Len()-48)
	}, 0.95},
	{plausible.Fahrenheit, 1, "house", func(t *testing.T, p piece, _ int) (plausible.Trace, series.Span) {
		c := p.trace.TempC
		p.trace.TempC = changed(t, c, 0, 200, func(_ int, v float64) float64 { return 1.8*v + 32 })
		return p.trace, hoursFrom(c, 10, 190)
	}, 0.95},
	{plausible.Drift, 3, "", func(t *testing.T, p piece, _ int) (plausible.Trace, series.Span) {
		c := p.trace.TempC
		p.trace.TempC = changed(t, c, 0, c.Len(), func(k int, v float64) float64 { return v + 2.5*float64(k)/float64(c.Len()) })
		return p.trace, hoursFrom(c, 48, c.Len()-48)
	}, 0.95},
	{plausible.Drift, 2, "house", func(t *testing.T, p piece, _ int) (plausible.Trace, series.Span) {
		c := p.trace.TempC
		p.trace.TempC = changed(t, c, 0, c.Len(), func(k int, v float64) float64 { return v - 1.2*float64(k)/float64(c.Len()) })
		return p.trace, hoursFrom(c, 48, c.Len()-48)
	}, 0.9},
	{plausible.DriftOfTwo, 1, "", func(t *testing.T, p piece, _ int) (plausible.Trace, series.Span) {
		c := p.trace.RelHum
		p.trace.RelHum = changed(t, c, 0, c.Len(), func(k int, v float64) float64 { return v - 0.15*float64(k)/float64(c.Len()) })
		return p.trace, hoursFrom(c, 48, c.Len()-48)
	}, 0.9},
	{plausible.CarriedOut, 1, "house", func(t *testing.T, p piece, _ int) (plausible.Trace, series.Span) {
		c := p.trace.TempC
		p.trace.TempC = changed(t, c, c.Len()-9, c.Len(), func(k int, _ float64) float64 { return p.outdoor.Val[k] + 0.3 })
		return p.trace, hoursFrom(c, c.Len()-7, c.Len())
	}, 0.8}, // in summer outdoors is as warm as the house
	{plausible.CarriedOut, 0, "house", func(t *testing.T, p piece, _ int) (plausible.Trace, series.Span) {
		c := p.trace.TempC
		p.trace.TempC = changed(t, c, 0, 12, func(k int, _ float64) float64 { return p.outdoor.Val[k] + 0.3 })
		return p.trace, hoursFrom(c, 0, 10)
	}, 0.7},
}

// Every fault that is put into the open data is found, where it was put, as often as its row says.
func TestFaultsPutIntoGoodDataAreFound(t *testing.T) {
	all := pieces(t)
	for n, f := range faults {
		random := rand.New(rand.NewPCG(uint64(n), 2))
		tried, found := 0, 0
		for _, p := range all {
			if len(p.name) < len(f.only) || p.name[:len(f.only)] != f.only {
				continue
			}
			spoilt, where := f.spoil(t, p, 100+random.IntN(400))
			traces := append([]plausible.Trace{spoilt}, room(t, p, f.neighbours)[1:]...)
			tried++
			if covers(plausible.NewRoom(traces, p.outdoor).Findings(0), f.code, where) {
				found++
			}
		}
		t.Logf("%s %s beside %d: found in %d of %d", f.code, f.only, f.neighbours, found, tried)
		if tried == 0 || float64(found) < f.least*float64(tried) {
			t.Errorf("%s %s beside %d: found in %d of %d", f.code, f.only, f.neighbours, found, tried)
		}
	}
}

// covers says whether findings of a code cover at least nine tenths of a span.
func covers(findings []plausible.Finding, code string, where series.Span) bool {
	var spans []series.Span
	for _, f := range findings {
		if f.Code == code {
			spans = append(spans, f.Span)
		}
	}
	shared := series.Intersect(series.Union(spans), []series.Span{where})
	return float64(series.LengthMS(shared)) >= 0.9*float64(where.To-where.From)
}

// Rooms with next to nothing in them: no logger, no reading, one reading, two loggers at different times.
func TestNextToNothingIsLeftInPeace(t *testing.T) {
	one := curve(t, []int64{5}, []float64{4})
	day := func(from int64) series.Curve {
		var at []int64
		var val []float64
		for i := range int64(24) {
			at, val = append(at, (from+i)*series.HourMS), append(val, 4+float64(i%5)/10)
		}
		return curve(t, at, val)
	}
	damp := func(c series.Curve) series.Curve { return c.Map(func(v float64) float64 { return v / 10 }) }
	for _, traces := range [][]plausible.Trace{
		nil, {{}}, {{}, {}}, {{TempC: one}}, {{TempC: one, RelHum: damp(one)}, {}}, {{RelHum: damp(day(0))}, {TempC: day(0)}},
		{{TempC: day(0), Resting: true}, {TempC: day(1000), RelHum: damp(day(-1000))}, {TempC: one}},
	} {
		for _, outdoor := range []series.Curve{{}, one, day(10)} {
			r := plausible.NewRoom(traces, outdoor)
			for i := -1; i <= len(traces); i++ {
				if f := r.Findings(i); len(f) > 0 {
					t.Errorf("%d loggers, logger %d: %+v", len(traces), i, f)
				}
			}
		}
	}
	if s, ok := plausible.ClockShift(one, series.Curve{}); ok {
		t.Errorf("clocks of nothing: %+v", s)
	}
	if f, ok := plausible.Derived(plausible.Trace{TempC: one, RelHum: one}, one, plausible.DewPoint, 0.1); ok {
		t.Errorf("one reading: %+v", f)
	}
}

// A log that only one logger has can still be seen to be in °F, or swapped, where bees should rest.
func TestAWinteringRoomAlone(t *testing.T) {
	var at []int64
	var tempC, relHum []float64
	for i := range 24 * 30 {
		at = append(at, int64(i)*series.HourMS)
		tempC = append(tempC, 4.5+1.5*math.Sin(float64(i)/7))
		relHum = append(relHum, 0.65-0.1*math.Sin(float64(i)/7))
	}
	room := plausible.Trace{TempC: curve(t, at, tempC), RelHum: curve(t, at, relHum), Resting: true}
	inF, swapped := room, room
	inF.TempC = room.TempC.Map(func(v float64) float64 { return 1.8*v + 32 })
	swapped.TempC = room.RelHum.Map(func(v float64) float64 { return 100 * v })
	swapped.RelHum = room.TempC.Map(func(v float64) float64 { return v / 100 })
	hive := inF
	hive.Resting = false
	for _, c := range []struct {
		trace plausible.Trace
		want  string
	}{{room, ""}, {inF, plausible.Fahrenheit}, {swapped, plausible.Swapped}, {hive, ""}} {
		got := ""
		for _, f := range plausible.NewRoom([]plausible.Trace{c.trace}, series.Curve{}).Findings(0) {
			got += f.Code
		}
		if got != c.want {
			t.Errorf("found %q, want %q", got, c.want)
		}
	}
}

// After takeout one of two loggers stays in the open barn at −2 °C, with −6 °C outdoors, and the other lies in a house
// at 20 °C: the first reads nearer to outdoors than to its neighbour, and was not carried out for that.
func TestTheLoggerThatStayedWasNotCarriedOut(t *testing.T) {
	const hours, taken = 500, 476
	trace := func(name string, after float64) plausible.Trace {
		var at []int64
		var val []float64
		for h := range int64(hours) {
			v := 4 + 0.2*math.Sin(float64(h)/4)
			if h >= taken {
				v = after
			}
			at, val = append(at, h*series.HourMS), append(val, v)
		}
		return plausible.Trace{Name: name, TempC: curve(t, at, val)}
	}
	out := trace("outdoors", -6).TempC
	for i := range out.Val {
		out.Val[i] = -6
	}
	for _, c := range []struct {
		what         string
		stayed, went float64
	}{{"into a house", -2, 20}, {"outdoors", 4, -6}} {
		room := plausible.NewRoom([]plausible.Trace{trace("stayed", c.stayed), trace("went", c.went)}, out)
		after := series.Span{From: taken * series.HourMS, To: hours * series.HourMS}
		if covers(room.Findings(0), plausible.CarriedOut, after) {
			t.Errorf("%s: the logger that stayed was carried out", c.what)
		}
		if !covers(room.Findings(1), plausible.CarriedOut, after) {
			t.Errorf("%s: the other was not", c.what)
		}
	}
}

// Six days at the values of another column, 60 °C above three loggers of a room at 4 °C, are said to be no air of that room, for
// exactly those hours; half of a day at 10 K above them only perhaps. An hour is not, nor is 6 K, nor one of two that part, nor what is
// far off while the others part too.
func TestALoggerFarFromTheOthersForAWhile(t *testing.T) {
	const from, hours = 200, 500
	trace := func(name string, baseC, awayK float64, long int64) plausible.Trace {
		var at []int64
		var val []float64
		for h := range int64(hours) {
			v := baseC + 0.3*math.Sin(float64(h)/4)
			if h >= from && h < from+long {
				v += awayK
			}
			at, val = append(at, h*series.HourMS), append(val, v)
		}
		return plausible.Trace{Name: name, TempC: curve(t, at, val), Resting: true}
	}
	for _, c := range []struct {
		what   string
		others []float64
		awayK  float64
		long   int64
		want   []plausible.Sureness
	}{
		{"another column's values", []float64{4, 4.5, 3.8}, 60, 144, []plausible.Sureness{plausible.Likely}},
		{"half a day, 10 K", []float64{4, 4.5}, 10, 12, []plausible.Sureness{plausible.Perhaps}},
		{"an hour", []float64{4, 4.5}, 60, 1, nil},
		{"6 K", []float64{4, 4.5}, 6, 144, nil},
		{"of two", []float64{4}, 60, 144, nil},
		{"the others part", []float64{4, 14}, 60, 144, nil},
	} {
		traces := []plausible.Trace{trace("odd", 4.2, c.awayK, c.long)}
		for i, v := range c.others {
			traces = append(traces, trace(fmt.Sprint(i), v, 0, 0))
		}
		room := plausible.NewRoom(traces, series.Curve{})
		for i := range traces {
			var got []plausible.Sureness
			for _, f := range room.Findings(i) {
				if f.Code != plausible.Apart {
					continue
				}
				got = append(got, f.Sure)
				if want := (series.Span{From: from * series.HourMS, To: (from + c.long) * series.HourMS}); f.Span.From < want.From-series.HourMS || f.Span.To > want.To+series.HourMS || math.Abs(f.Figures[0]-c.awayK) > 1 {
					t.Errorf("%s: %v, %v K; want %v, %v K", c.what, f.Span, f.Figures[0], want, c.awayK)
				}
			}
			if want := c.want; i == 0 && !slices.Equal(got, want) || i > 0 && len(got) > 0 {
				t.Errorf("%s: logger %d: %v", c.what, i, got)
			}
		}
	}
}

// A box at 27 °C among three loggers of a room at 4 °C hung elsewhere; the others did not, nor does either of two that
// differ so much, as it can't be told which.
func TestALoggerThatHungElsewhere(t *testing.T) {
	trace := func(name string, tempC float64) plausible.Trace {
		var at []int64
		var val []float64
		for h := range int64(500) {
			at, val = append(at, h*series.HourMS), append(val, tempC+0.3*math.Sin(float64(h)/4))
		}
		return plausible.Trace{Name: name, TempC: curve(t, at, val), Resting: true}
	}
	for _, c := range []struct {
		temps []float64
		want  []bool
	}{{[]float64{4, 4.5, 27, 3.8}, []bool{false, false, true, false}}, {[]float64{4, 27, 4.5}, []bool{false, true, false}}, {[]float64{4, 27}, []bool{false, false}}} {
		var traces []plausible.Trace
		for i, v := range c.temps {
			traces = append(traces, trace(fmt.Sprint(i), v))
		}
		room := plausible.NewRoom(traces, series.Curve{})
		for i, want := range c.want {
			found := slices.ContainsFunc(room.Findings(i), func(f plausible.Finding) bool { return f.Code == plausible.Elsewhere })
			if found != want {
				t.Errorf("%v: logger %d hung elsewhere: %v, want %v", c.temps, i, found, want)
			}
		}
	}
}
