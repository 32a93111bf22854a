package analysis

import (
	"slices"
	"testing"
)

// By hand: weeks of one air outside, two of them with the room at 7 °C, one above the band. At 8 °C outside no fan could have held it,
// though the days around were as warm; at 4 °C outside it had been held in just such weather, so the weather does not tell the two
// weeks apart.
func TestAirWarmerThanTheLimitIsReasonEnough(t *testing.T) {
	for outC, want := range map[float64]bool{8: true, 4: false} {
		room := through(0, 1000, 0.5, func(h float64) float64 {
			if h >= 400 && h < 736 {
				return 7
			}
			return 5
		})
		in := one(room, room.Map(func(float64) float64 { return 0.6 }), span(0, 1000))
		in.Loggers = append(in.Loggers, Logger{Name: "yard", Place: "outdoor", TempC: through(0, 1000, 0.5, func(float64) float64 { return outC })})
		for _, s := range Judge(in).Spells {
			if s.Kind != "warm" || s.Place != "room" {
				continue
			}
			if got := slices.ContainsFunc(s.WentWith, func(c Cause) bool { return c.Code == OutdoorWarm }); got != want {
				t.Errorf("%v °C outside: went with warm air: %v, want %v", outC, got, want)
			}
		}
	}
}

// By hand: the keeper lets the room be 6 °C in deep winter and 10 °C from hour 500 on. Air of 5 °C outside is within 3 K of the
// first limit, so it could not have cooled the room then, and 5 K below the second, so that it could: of two spells with just
// that weather and none of it around them, the first went with warm air outside and the second did not.
func TestWarmAirOutsideIsThatOfThePhase(t *testing.T) {
	spells := [][2]float64{{200, 220}, {700, 720}}
	at := func(h float64, lead float64) int {
		return slices.IndexFunc(spells, func(s [2]float64) bool { return h >= s[0]-lead && h < s[1] })
	}
	room := through(0, 1000, 0.5, func(h float64) float64 {
		if i := at(h, 0); i >= 0 {
			return []float64{7, 11}[i]
		}
		return 4
	})
	outdoors := through(0, 1000, 0.5, func(h float64) float64 {
		if at(h, 6) >= 0 {
			return 5
		}
		return -10
	})
	in := one(room, room.Map(func(float64) float64 { return 0.6 }), span(0, 1000))
	late := int64(500 * hourMS)
	in.Phases = []PhaseSetting{{Name: lateWinter, From: &late, Bands: Bands{TempC: Band{GoodHigh: ptr(10), WatchHigh: ptr(11), ActHigh: ptr(12)}}}}
	in.Loggers = append(in.Loggers, Logger{Name: "yard", Place: "outdoor", TempC: outdoors})
	found := 0
	for _, s := range Judge(in).Spells {
		if s.Kind != "warm" || s.Place != "room" {
			continue
		}
		found++
		with := slices.ContainsFunc(s.WentWith, func(c Cause) bool { return c.Code == OutdoorWarm })
		if early := s.Span.From < late; with != early {
			t.Errorf("the spell from hour %.0f went with warm air outside: %v", float64(s.Span.From)/hourMS, with)
		}
	}
	if found != 2 {
		t.Errorf("%d warm spells, want 2", found)
	}
}
