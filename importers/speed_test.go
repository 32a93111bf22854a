package importers

import (
	"math"
	"slices"
	"testing"
)

// What a person reads in each head: a fan's speed has a unit of percent or hertz; wind has metres a second.
func TestSpeedIsKnownByNameAndUnit(t *testing.T) {
	for header, want := range map[string]Quantity{
		"Fan speed (%)": Speed, "Stage 2 [%]": Speed, "Drive output (Hz)": Speed, "Drehzahl, %": Speed, "Frequency Hz": Speed,
		"Wind speed (m/s)": Other, "Wind speed": Other, "Fan current (A)": Current, "Battery (%)": Other, "Humidity (%)": RelativeHumidity, "Fan": Other,
	} {
		name, unit := cutUnit(header)
		if got, _ := quantityOf(words(name), unit); got != want {
			t.Errorf("%q is %s, want %s", header, got, want)
		}
	}
}

// Full speed is 100 %, or the mains the record does not pass: 50 Hz in most of the world, 60 Hz in North America.
func TestFullSpeed(t *testing.T) {
	for _, row := range []struct {
		unit string
		val  []float64
		full float64
	}{
		{"percent", []float64{0, 20, 80}, 100}, {"Hz", []float64{0, 25, 48}, 50}, {"Hz", []float64{0, 25, 50.2}, 50}, {"Hz", []float64{0, 30, 60}, 60}, {"Hz", []float64{0, 87}, 0},
	} {
		full, ok := Series{Quantity: Speed, Unit: row.unit, Val: row.val}.FullSpeed()
		if full != row.full || ok != (row.full > 0) {
			t.Errorf("%s %v: %v %v, want %v", row.unit, row.val, full, ok, row.full)
		}
	}
	if _, ok := (Series{Quantity: Current, Unit: "A", Val: []float64{1}}).FullSpeed(); ok {
		t.Error("a current has a full speed")
	}
	s := Series{Quantity: Speed, Unit: "Hz", Val: []float64{0, 2, 25, 50}}
	state, limit, ok := s.AsState()
	if !ok || limit != 2.5 || !slices.Equal(state.Val, []float64{0, 0, 1, 1}) {
		t.Errorf("states %v above %v", state.Val, limit)
	}
	share, _ := s.AsSpeed()
	if !slices.Equal(share.Val, []float64{0, 0.04, 0.5, 1}) || math.IsNaN(share.Val[0]) {
		t.Errorf("shares %v", share.Val)
	}
}
