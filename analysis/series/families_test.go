package series_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"thawbook/analysis/series"
)

// A family is a curve whose figures are known from its formula: four days from startMS with a reading
// every five minutes, and its mean and extremes over any span by calculus.
type family struct {
	name string
	at   func(h float64) float64                 // value at h hours past the start
	mean func(from, to float64) float64          // mean over hours from to to
	ends func(from, to float64) (lo, hi float64) // extremes
	tol  float64                                 // what straight lines between readings cost
}

const startMS = 1_330_905_600_000 // 2012-03-05 00:00 UTC

var omega = 2 * math.Pi / 24 // a day's wave, per hour

var families = []family{
	{"constant", func(float64) float64 { return 4 },
		func(_, _ float64) float64 { return 4 },
		func(_, _ float64) (float64, float64) { return 4, 4 }, 1e-12},
	{"ramp", func(h float64) float64 { return 2 + h/8 },
		func(from, to float64) float64 { return 2 + (from+to)/16 },
		func(from, to float64) (float64, float64) { return 2 + from/8, 2 + to/8 }, 1e-12},
	// A chord of h hours lies at most 3·(ωh)²/8 off a sine of amplitude 3: 1.8e-4 for five minutes.
	{"sine", func(h float64) float64 { return 5 + 3*math.Sin(omega*h) },
		func(from, to float64) float64 {
			return 5 + 3*(math.Cos(omega*from)-math.Cos(omega*to))/(omega*(to-from))
		},
		func(from, to float64) (float64, float64) {
			lo, hi := math.Inf(1), math.Inf(-1)
			for h := from; ; h = min(to, h+1.0/60) {
				lo, hi = min(lo, math.Sin(omega*h)), max(hi, math.Sin(omega*h))
				if h == to {
					return 5 + 3*lo, 5 + 3*hi
				}
			}
		}, 1.8e-4},
}

// curve samples the family every five minutes for four days, first and last included.
func (f family) curve() series.Curve {
	c := series.Curve{MaxStepMS: 5 * minute}
	for at := int64(0); at <= 4*day; at += 5 * minute {
		c.Readings.At, c.Val = append(c.Readings.At, startMS+at), append(c.Val, f.at(float64(at)/hour))
	}
	return c
}

// square is 2 for an hour, 6 for an hour and so on, switching within a minute.
func square() series.Curve {
	c := series.Curve{MaxStepMS: hour}
	for at := int64(0); at < 4*day; at += 2 * hour {
		c.Readings.At = append(c.Readings.At, startMS+at, startMS+at+hour-minute, startMS+at+hour, startMS+at+2*hour-minute)
		c.Val = append(c.Val, 2, 2, 6, 6)
	}
	return c
}

// cellings are the ways of cutting four days and a bit into cells.
func cellings(t *testing.T) map[string][]series.Span {
	s := series.Span{From: startMS, To: startMS + 4*day}
	cells := map[string][]series.Span{
		"1 min": series.Steps(s, minute, 0), "5 min": series.Steps(s, 5*minute, 0),
		"10 min": series.Steps(s, 10*minute, 0), "15 min": series.Steps(s, 15*minute, 0),
		"1 h": series.Steps(s, hour, 0), "1 h from :07": series.Steps(s, hour, 7*minute),
	}
	for _, name := range []string{"UTC", "America/Montreal", "Australia/Lord_Howe", "Australia/Adelaide"} {
		cells["days of "+name] = series.LocalDays(s, zone(t, name))
	}
	return cells
}

func TestFamiliesInBins(t *testing.T) {
	for _, f := range families {
		c := f.curve()
		for how, cells := range cellings(t) {
			n, known := 0, int64(0)
			for _, b := range c.Bins(cells) {
				from, to := float64(b.From-startMS)/hour, float64(b.To-startMS)/hour
				lo, hi := f.ends(from, to)
				near(t, f.name+" "+how+" mean", b.Weighted(), f.mean(from, to), f.tol)
				near(t, f.name+" "+how+" min", b.Min, lo, f.tol)
				near(t, f.name+" "+how+" max", b.Max, hi, f.tol)
				n, known = n+b.N, known+b.KnownMS
			}
			if n != c.Len()-1 || known != 4*day {
				t.Errorf("%s %s: %d readings over %d ms; the last one lies outside", f.name, how, n, known)
			}
			if t.Failed() {
				return
			}
		}
	}
}

func TestFamiliesAcrossClockChanges(t *testing.T) {
	// The ramp over days of 23, 25, 23.5 and 24.5 hours: the mean is the value at the middle of the day,
	// and the readings are counted every five minutes.
	for _, row := range []struct {
		zone, day string
		hours     float64
	}{
		{"America/Montreal", "2012-03-11", 23}, {"America/Montreal", "2012-11-04", 25},
		{"Australia/Lord_Howe", "2023-10-01", 23.5}, {"Australia/Lord_Howe", "2023-04-02", 24.5},
	} {
		c := series.Curve{MaxStepMS: 5 * minute}
		from := clock(t, row.day) - 2*day
		for at := int64(0); at <= 5*day; at += 5 * minute {
			c.Readings.At, c.Val = append(c.Readings.At, from+at), append(c.Val, float64(at)/hour)
		}
		for _, b := range c.Bins(series.LocalDays(whole(c), zone(t, row.zone))) {
			local := time.UnixMilli(b.From).In(zone(t, row.zone))
			if local.Format(time.DateOnly) != row.day {
				continue
			}
			near(t, row.day+" hours", float64(b.KnownMS)/hour, row.hours, 0)
			near(t, row.day+" readings", float64(b.N), row.hours*12, 0)
			near(t, row.day+" mean", b.Weighted(), (float64(b.From+b.To)/2-float64(from))/hour, 1e-9)
		}
	}
}

func TestFamiliesOutsideLimits(t *testing.T) {
	s := series.Span{From: startMS, To: startMS + 4*day}
	ramp := families[1].curve().Outside(s, 5, 10)
	// 2 + h/8 is below 5 for 24 h and above 10 for 32 h: triangles 24·3/2 and 32·4/2.
	near(t, "ramp, hours below", ramp.BelowMS/hour, 24, 1e-9)
	near(t, "ramp, area below", ramp.BelowArea/hour, 36, 1e-9)
	near(t, "ramp, hours above", ramp.AboveMS/hour, 32, 1e-9)
	near(t, "ramp, area above", ramp.AboveArea/hour, 64, 1e-9)

	flat := families[0].curve().Outside(s, 4, 4)
	near(t, "constant at both limits is inside", flat.BelowMS+flat.AboveMS+flat.BelowArea+flat.AboveArea, 0, 0)
	flat = families[0].curve().Outside(s, 4.5, math.Inf(1))
	near(t, "constant below", flat.BelowMS/hour, 96, 0)
	near(t, "constant, area below", flat.BelowArea/hour, 48, 1e-9)

	// 3 sin above 1.5: a third of each day, area 6/ω·cos(π/6) - 1.5·8 a day.
	sine := families[2].curve().Outside(s, math.Inf(-1), 6.5)
	near(t, "sine, hours above", sine.AboveMS/hour, 32, 2e-3)
	near(t, "sine, area above", sine.AboveArea/hour, 4*(6/omega*math.Cos(math.Pi/6)-12), 8e-3)

	// Half of each two hours high, switching within a minute that crosses 4 at its middle.
	sq := square().Outside(s, 4, 4)
	near(t, "square, hours above", sq.AboveMS/hour, 48-0.5/60, 1e-9)
	near(t, "square, hours below", sq.BelowMS/hour, 48-0.5/60, 1e-9)
	near(t, "square, hours known", float64(sq.KnownMS)/hour, 96-1.0/60, 1e-9)

	nan := families[0].curve().Outside(s, math.NaN(), 3)
	if !math.IsNaN(nan.BelowMS) || !math.IsNaN(nan.BelowArea) || nan.AboveMS != 4*day {
		t.Errorf("an unknown limit gave %+v", nan)
	}
}

func TestFamiliesInRuns(t *testing.T) {
	s := series.Span{From: startMS, To: startMS + 4*day}
	ramp := families[1].curve()
	if got, want := ramp.Above(s, 10), []series.Run{{From: startMS + 64*hour, To: startMS + 96*hour, CutTo: true, Peak: 14}}; !slices.Equal(got, want) {
		t.Errorf("ramp above: %+v", got)
	}
	if got, want := ramp.Below(s, 5), []series.Run{{From: startMS, To: startMS + 24*hour, CutFrom: true, Peak: 2}}; !slices.Equal(got, want) {
		t.Errorf("ramp below: %+v", got)
	}
	if got := families[0].curve().Above(s, 4); got != nil {
		t.Errorf("constant at the limit: %+v", got)
	}
	if got := families[0].curve().Above(s, 3.9); len(got) != 1 || !got[0].CutFrom || !got[0].CutTo || got[0].To-got[0].From != 4*day {
		t.Errorf("constant above: %+v", got)
	}
	sine := families[2].curve().Above(s, 6.5) // above from 2 h to 10 h of each day
	if len(sine) != 4 {
		t.Fatalf("sine: %d runs", len(sine))
	}
	for d, r := range sine {
		near(t, "sine from", (r.From-startMS)/hour, float64(24*d)+2, 1e-3)
		near(t, "sine to", (r.To-startMS)/hour, float64(24*d)+10, 1e-3)
		near(t, "sine peak", r.Peak, 8, 1e-12)
	}
	high := square().Above(s, 4)
	if len(high) != 48 || high[0].From != startMS+hour-minute/2 || high[0].To != startMS+2*hour-minute/2 || !high[47].CutTo {
		t.Errorf("square: %d runs, first %+v", len(high), high[0])
	}
}

// A line from 10 to 30 in twenty minutes, then nothing until the hour: of the first half hour two thirds are known, with
// their middle at 20, of the second nothing.
func TestMeansWhereEnoughIsKnown(t *testing.T) {
	c, halves := line(t, "10 20 30 _ _ _ 40"), []series.Span{{From: 0, To: 30 * minute}, {From: 30 * minute, To: hour}}
	for least, want := range map[float64]float64{0: 20, 0.6: 20, 0.7: math.NaN()} {
		means := c.Means(halves, least)
		if v := means[0]; v != want && !(math.IsNaN(v) && math.IsNaN(want)) {
			t.Errorf("known to two thirds, %v asked for: %v, want %v", least, v, want)
		}
		if !math.IsNaN(means[1]) {
			t.Errorf("the mean of nothing is %v", means[1])
		}
	}
	near(t, "share", c.Bin(halves[0]).Share(), 2.0/3, 1e-12)
	near(t, "share of no time", c.Bin(series.Span{}).Share(), 0, 0)
}
