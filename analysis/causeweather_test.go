package analysis

import (
	"slices"
	"testing"
)

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
