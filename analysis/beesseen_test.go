package analysis

import (
	"math"
	"testing"
	"time"

	"thawbook/analysis/series"
)

// The house's worked example: one logger, every half hour, on a table at room temperature from 20 October, in the barn
// at 4 °C from 9 November 14:00 to 7 April 10:00, and back on the table to 20 April. Both days are read off the trace,
// and no hour of the time between lies outside the band.
func TestALoggerThatCameFromATable(t *testing.T) {
	start := instant(t, "2025-10-20 00:00")
	in, out := instant(t, "2025-11-09 14:00"), instant(t, "2026-04-07 10:00")
	c := series.Curve{MaxStepMS: hourMS}
	for at := start; at <= instant(t, "2026-04-20 00:00"); at += hourMS / 2 {
		v := 20 + math.Sin(float64(at)/hourMS)
		if at >= in && at <= out {
			v = 4 + 0.3*math.Sin(float64(at)/hourMS)
		}
		c.Readings.At, c.Val = append(c.Readings.At, at), append(c.Val, math.Round(10*v)/10)
	}
	r := Judge(Input{Name: "Alder", Zone: time.UTC, PressurePa: 101325, Loggers: []Logger{{Name: "one", Place: "room", TempC: c, TempErrK: 0.5}}})
	for _, edge := range []struct {
		what      string
		got, want int64
	}{{"in", r.BeesIn, in}, {"out", r.BeesOut, out}, {"seen in", r.Seen.In.At, in}, {"seen out", r.Seen.Out.At, out}} {
		if apart(edge.got, edge.want) > 24*hourMS {
			t.Errorf("%s: %v, want %v within a day", edge.what, time.UnixMilli(edge.got).UTC(), time.UnixMilli(edge.want).UTC())
		}
	}
	if r.BeesBy.Weaker() != WorkedOut || r.Seen.In.Reason != "stood_warmer" || r.Seen.In.Sure != EdgeLikely || r.Seen.Out.Sure != EdgeSure {
		t.Errorf("%s, %+v", r.BeesBy, r.Seen)
	}
	for _, b := range r.Quantities[0].Bands {
		if b.Name == "good" && (b.HoursAbove != 0 || b.HoursBelow != 0) {
			t.Errorf("%v h above, %v h below: want none", b.HoursAbove, b.HoursBelow)
		}
	}
}

// simBees is where loggers stood beyond the bees' time, and a barn without a door or cut.
func simBees(seed uint64) simBarn {
	return simBarn{seed: seed, hours: 183 * 24, in: 20*24 + 14, out: 169*24 + 9}
}

// beyondBees is a logger that stood elsewhere before and after its barn's bees.
func beyondBees(b simBarn, elsewhere func(h, outC float64) float64) func(h, roomC, outC float64) float64 {
	return func(h, roomC, outC float64) float64 {
		if h < b.in || h > b.out {
			return elsewhere(h, outC)
		}
		return roomC
	}
}

// seat is a truck's seat: the air outdoors, and up to 14 K of sun at noon.
func seat(h, outC float64) float64 { return outC + 14*math.Max(0, math.Cos(2*math.Pi*(h-13)/24)) }

func table(float64, float64) float64 { return 20 }

// From a table the step into the room is ten times what any room does in an hour: every edge must be found within a day.
// A truck's seat is told by its swing; how many of those edges are found within a day is reported.
func TestEdgesOfSimulatedWinters(t *testing.T) {
	const seeds = 10
	places := []struct {
		name                 string
		elsewhere            func(h, outC float64) float64
		outdoors             bool
		found, wrong, missed int
	}{{name: "table", elsewhere: table}, {name: "truck, outdoors known", elsewhere: seat, outdoors: true}, {name: "truck, no outdoors", elsewhere: seat}}
	for seed := uint64(1); seed <= seeds; seed++ {
		b := simBees(seed)
		trace := b.run()
		for k := range places {
			p := &places[k]
			in := simInput(b, trace, 30, beyondBees(b, p.elsewhere))
			outdoor := series.Curve{}
			if p.outdoors {
				outdoor = in.Loggers[1].TempC
			}
			seen := beesSeen(staysOf(in.Loggers[:1], Logger{TempC: outdoor}, inTurn))
			for i, edge := range []Edge{seen.In, seen.Out} {
				switch off := math.Abs(float64(edge.At)/hourMS - []float64{b.in, b.out}[i]); {
				case !edge.OK():
					p.missed++
				case off <= 24:
					p.found++
				default:
					p.wrong++
					t.Logf("%s, seed %d: edge %d is %.0f h off", p.name, seed, i, off)
				}
			}
		}
	}
	for _, p := range places {
		t.Logf("%s: of %d edges %d within a day, %d further off, %d can't be told", p.name, 2*seeds, p.found, p.wrong, p.missed)
	}
	if places[0].found < 2*seeds {
		t.Errorf("from a table %d of %d edges within a day, want all", places[0].found, 2*seeds)
	}
}

// A logger that hung in the barn all the while, one that lay on a table all winter, and one outdoors show no edge.
func TestWhatATraceCannotShow(t *testing.T) {
	for seed := uint64(1); seed <= 4; seed++ {
		b := simBees(seed)
		trace := b.run()
		for _, row := range []struct {
			name  string
			where func(h, roomC, outC float64) float64
		}{
			{"in the barn", func(h, roomC, _ float64) float64 {
				if h < b.in || h > b.out {
					return 4
				}
				return roomC
			}},
			{"on a table", func(float64, float64, float64) float64 { return 20 }},
			{"on a seat", func(h, _, outC float64) float64 { return seat(h, outC) }},
		} {
			in := simInput(b, trace, 30, row.where)
			if seen := beesSeen(staysOf(in.Loggers[:1], in.Loggers[1], inTurn)); seen.In.OK() || seen.Out.OK() {
				t.Errorf("seed %d, %s: %+v", seed, row.name, seen)
			}
		}
	}
	if seen := beesSeen(staysOf(nil, Logger{}, inTurn)); seen.In.OK() || seen.In.Reason != "no_stay" {
		t.Errorf("without a logger: %+v", seen)
	}
}

// A barn that runs out of cold air in its last ten days, 18 °C outside at noon and 8 °C at night, is as warm as that, and
// these are the hours that count: the bees were in to the end, and nothing of it may be taken for a table or a seat.
func TestAHotSpringIsNoTakeout(t *testing.T) {
	for seed := uint64(1); seed <= 3; seed++ {
		b := simBarn{seed: seed, hours: 120 * 24, in: 0, out: 200 * 24}
		b.outdoorC = func(h float64) float64 {
			if h < 110*24 {
				return -6 - 3*math.Cos(2*math.Pi*(h-3)/24)
			}
			return 13 - 5*math.Cos(2*math.Pi*(h-3)/24)
		}
		in := simInput(b, b.run(), 30, nil)
		for _, outdoor := range []series.Curve{{}, in.Loggers[1].TempC} {
			if seen := beesSeen(staysOf(in.Loggers[:1], Logger{TempC: outdoor}, inTurn)); seen.Out.OK() {
				t.Errorf("seed %d, outdoors known %v: %v, want none", seed, outdoor.Len() > 0, time.UnixMilli(seen.Out.At).UTC())
			}
		}
	}
}

// A logger that hangs in the barn from a week before the bees to a week after shows neither edge: 5 °C throughout. The
// always-on fan's record does: started on day 7 at 12:00, stopped on day 60 at 9:00, a cut of three hours on day 30
// aside. A thermostat's fan says nothing, nor does a record that ends with the fan.
func TestTheFanThatIsAlwaysOnShowsTheBees(t *testing.T) {
	ran := func(h float64) float64 {
		if h < 7*24+12 || h >= 60*24+9 || h >= 30*24 && h < 30*24+3 {
			return 0
		}
		return 1
	}
	barn := func(set Setting, days float64) Review {
		in := one(through(0, 67*24, 0.5, constant(5)), series.Curve{}, series.Span{})
		in.BeesIn, in.BeesOut = nil, nil
		set.Span = span(-1000, 10000)
		in.Stages = []Stage{{Name: "first", Settings: []Setting{set}}}
		in.Loggers = append(in.Loggers, Logger{Name: "relay", Place: "other", RecordsStage: "first", State: through(0, days*24, 0.25, ran)})
		return Judge(in)
	}
	r := barn(Setting{AlwaysOn: true}, 67)
	if r.Seen.In.Reason != "fan_started" || r.Seen.Out.Reason != "fan_stopped" || r.Seen.Out.Logger != "relay" {
		t.Fatalf("%+v", r.Seen)
	}
	near(t, "in", float64(r.BeesIn)/hourMS, 7*24+12, 0.25)
	near(t, "out", float64(r.BeesOut)/hourMS, 60*24+9, 0.25)
	if n := len(kinds(r.Events, powerCut)); n != 0 {
		t.Errorf("%d power cuts in a room that never climbed", n)
	}
	if r := barn(Setting{AlwaysOn: true}, 60); r.Seen.Out.OK() {
		t.Errorf("a record that ends with the fan: %+v", r.Seen.Out)
	}
	if r := barn(Setting{OnC: 6, OffC: 5}, 67); r.Seen.In.OK() || r.Seen.Out.OK() {
		t.Errorf("a thermostat's fan: %+v", r.Seen)
	}
}

// A day that swings 4 K stood in a wintering room where the outdoors swung 10 K, and not where they swung but 6 K: more
// than 0.6 of it. Where the outdoors hardly swung nothing is held against it.
func TestAStayDaySwingsLessThanTheOutdoors(t *testing.T) {
	day := func(swing float64) hourly {
		var h hourly
		for i := range dayHours {
			h.val = append(h.val, 4+swing*float64(i%2))
		}
		return h
	}
	for outdoor, want := range map[float64]bool{10: true, 6: false, 4.5: true} {
		if got := isStayDay(day(4), day(outdoor), 0); got != want {
			t.Errorf("outdoors swung %v K: %v", outdoor, got)
		}
	}
}

// A room that stands at −9 °C for a fortnight in the middle of the winter, as a fan would not stop, is no takeout: the logger
// stood in it for eight weeks more, and left for a kitchen at hour 2600. Nine days in a cellar at 8 °C after that are none in
// the barn.
func TestARoomThatFailedIsNotLeft(t *testing.T) {
	for _, cellar := range []bool{false, true} {
		in := one(through(-48, 3000, 0.25, func(h float64) float64 {
			switch {
			case h < 0, h >= 2600 && h < 2750:
				return 21
			case h >= 960 && h < 1300:
				return -9
			case h >= 2750 && h < 2750+9*24 && cellar:
				return 8
			case h >= 2750:
				return 21
			}
			return 4 + 0.2*math.Sin(h/4)
		}), series.Curve{}, span(0, 3000))
		in.BeesIn, in.BeesOut = nil, nil
		out := Judge(in).Seen.Out
		if !out.OK() || math.Abs(float64(out.At)/hourMS-2600) > 1 {
			t.Errorf("cellar %v: out at %v h, %s", cellar, float64(out.At)/hourMS, out.Sure)
		}
	}
}
