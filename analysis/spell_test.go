package analysis

import (
	"math"
	"slices"
	"testing"

	"thawbook/analysis/series"
)

func warmSpells(c series.Curve, s series.Span) []Spell {
	return beyond(c, []limited{{6, stretches{s}}}, 1, tempRule, Spell{Kind: "warm", Place: "room", Quantity: "air_temperature"})
}

// Every row by hand on straight lines against 6 °C.
func TestSpells(t *testing.T) {
	na := math.NaN()
	type spell struct {
		fromH, toH, hours, degreeHours, peak float64
		cut                                  bool
	}
	for _, row := range []struct {
		name string
		c    series.Curve
		want []spell
	}{
		// 5→7 crosses at 0.5, 7→9→7 stays, 7→5 crosses at 3.5; area: two triangles of 0.25, two trapezoids of 2.
		{"one hump", line(0, 1, 5, 7, 9, 7, 5), []spell{{0.5, 3.5, 3, 4.5, 9, false}}},
		{"equal to the limit is inside", line(0, 1, 6, 6, 6), nil},
		{"half an hour is no spell", line(0, 0.25, 5, 7, 7, 5), nil},
		// Outside 0.5–2.5 and 3.25–5.25 (pause 0.75 h): one spell, hours outside only.
		{"a short pause is bridged", line(0, 0.5, 5, 7, 7, 7, 7, 5, 5.5, 6.5, 7, 7, 7, 5), []spell{{0.25, 5.25, 4, 3.3125, 7, false}}},
		{"a gap cuts", line(0, 1, 7, 7, 7, na, na, 8, 8, 8), []spell{{0, 2, 2, 2, 7, true}, {5, 7, 2, 4, 8, true}}},
		{"the end of the bees' time cuts", line(0, 1, 5, 5, 5, 5, 5, 5, 5, 5, 7, 7, 7, 7), []spell{{7.5, 10, 2.5, 2.25, 7, true}}},
	} {
		got := warmSpells(row.c, span(0, 10))
		if len(got) != len(row.want) {
			t.Errorf("%s: %d spells, want %d: %+v", row.name, len(got), len(row.want), got)
			continue
		}
		for i, w := range row.want {
			g := got[i]
			near(t, row.name+": from", float64(g.Span.From)/hourMS, w.fromH, 1e-6)
			near(t, row.name+": to", float64(g.Span.To)/hourMS, w.toH, 1e-6)
			near(t, row.name+": hours", g.Hours, w.hours, 1e-9)
			near(t, row.name+": degree-hours", g.DegreeHours, w.degreeHours, 1e-6)
			near(t, row.name+": peak", g.Peak, w.peak, 0)
			if g.Cut != w.cut {
				t.Errorf("%s: cut %v, want %v", row.name, g.Cut, w.cut)
			}
		}
	}
}

// A hot logger that stops must not end a spell of the mean without saying so, nor start one.
func TestALoggerDroppingOutCutsASpellInsteadOfEndingIt(t *testing.T) {
	in := one(through(0, 40, 0.25, constant(5.5)), series.Curve{}, span(0, 40))
	in.Loggers = append(in.Loggers, Logger{Name: "top", Place: "room", TempC: through(0, 20, 0.25, constant(7.5)), TempErrK: 0.5})
	r := Judge(in)
	if len(r.Spells) != 1 {
		t.Fatalf("%d spells, want one: %+v", len(r.Spells), r.Spells)
	}
	s := r.Spells[0]
	if s.Kind != "warm" || !s.Cut {
		t.Errorf("%+v, want a warm spell marked as cut", s)
	}
	near(t, "its end is where the logger stopped", float64(s.Span.To)/hourMS, 20, 0.26)
	near(t, "mean of the two", s.Peak, 6.5, 1e-9)
	near(t, "the break costs no known time", r.Coverage, 1, 1e-6)
}

// Five loggers at 6.8 to 7.2 °C; the batteries of one run out after 20 h, and it was warm for 40 h on end. The same where
// the air was good for half an hour as it happened.
func TestABatteryThatRunsOutDoesNotEndASpell(t *testing.T) {
	for _, dip := range []bool{false, true} {
		in := one(series.Curve{}, series.Curve{}, span(0, 40))
		in.Loggers = nil
		for i := range 5 {
			to := 40.0
			if i == 4 {
				to = 20
			}
			at := through(0, to, 0.25, func(h float64) float64 {
				if dip && h == 20 {
					return 5.5
				}
				return 6.8 + 0.1*float64(i)
			})
			in.Loggers = append(in.Loggers, Logger{Name: string(rune('a' + i)), Place: "room", TempC: at})
		}
		r := Judge(in)
		if len(r.Spells) != 1 {
			t.Fatalf("dip %v: %d spells, want one: %+v", dip, len(r.Spells), r.Spells)
		}
		s := r.Spells[0]
		near(t, "from", float64(s.Span.From)/hourMS, 0, 1e-9)
		near(t, "to", float64(s.Span.To)/hourMS, 40, 1e-9)
		near(t, "peak", s.Peak, 7, 0.11)
		if want := map[bool]float64{false: 40, true: 39.6}[dip]; s.Hours < want-0.3 || s.Hours > 40 {
			t.Errorf("dip %v: %v h outside", dip, s.Hours)
		}
	}
}

// Cold from hour 10 to 20 and warm from 60 to 70: what came first stands first.
func TestSpellsStandInTheOrderOfTime(t *testing.T) {
	r := Judge(one(through(0, 100, 1, func(h float64) float64 {
		switch {
		case h >= 10 && h <= 20:
			return 1
		case h >= 60 && h <= 70:
			return 7
		}
		return 4
	}), series.Curve{}, span(0, 100)))
	if len(r.Spells) != 2 || r.Spells[0].Kind != "cold" || r.Spells[1].Kind != "warm" {
		t.Errorf("%+v", r.Spells)
	}
}

func TestSpellsAreSortedByStartKindAndPlace(t *testing.T) {
	in := one(through(0, 100, 1, constant(7)), through(0, 100, 1, constant(0.9)), span(0, 100))
	in.Loggers = append(in.Loggers, Logger{Name: "far", Place: "exhaust", TempC: through(0, 100, 1, constant(8))})
	var got []string
	for _, s := range Judge(in).Spells {
		got = append(got, s.Kind+" "+s.Place)
	}
	want := []string{"damp room", "moist room", "warm exhaust", "warm room"} // 7 °C at 90 % has its dew point at 5.5 °C
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// A logger in a hive reads 25 °C as it should, and one nobody knows the place of reads what it likes: neither has bands or spells.
func TestBandsAreNotOfAHive(t *testing.T) {
	in := one(through(0, 100, 1, constant(4)), series.Curve{}, span(0, 100))
	for _, place := range []string{"hive", "don't know"} {
		in.Loggers = append(in.Loggers, Logger{Name: place, Place: place, TempC: through(0, 100, 1, constant(25))})
	}
	r := Judge(in)
	for _, q := range r.Quantities {
		if q.Quantity == "air_temperature" && (len(q.Bands) > 0) != (q.Place == "room") {
			t.Errorf("%s: %+v", q.Place, q.Bands)
		}
	}
	if len(r.Spells) != 0 {
		t.Errorf("%+v", r.Spells)
	}
}
