package analysis

import (
	"math"
	"testing"

	"thawbook/analysis/moistair"
	"thawbook/analysis/series"
)

// moist is a logger that reads a temperature, and air that holds so much water vapour, every half hour.
func moist(name, place string, tempC series.Curve, pa func(h float64) float64) Logger {
	hum := series.Curve{}
	at := 0
	if tempC.Len() > 0 {
		hum = through(float64(tempC.Readings.At[0])/hourMS, float64(tempC.Readings.At[tempC.Len()-1])/hourMS, 0.5, func(h float64) float64 {
			at++
			return pa(h) / moistair.SatPresWaterPa(tempC.Val[at-1])
		})
	}
	return Logger{Name: name, Place: place, TempC: tempC, RelHum: hum}
}

// What each trace tells was written into it. A logger lay on a table and was hung at hour 100; outdoors it is −8 °C, and the air
// holds 300 Pa of vapour. Bees give off water: 100 Pa more (four times what is lost in the loggers' errors, and more than the 64 Pa
// that balances need). They come through doors that let the room fall by 1.5 K at hour 130, with it while a second load warms the
// room at 130, slowly and without a door, or not to be told.
func TestTheirWaterTellsWhenTheBeesCame(t *testing.T) {
	table := []point{{40, 20}, {99, 20}, {99.5, 8}}
	doors := append([]point{{100, 3}, {130, 3}, {130.5, 1.5}, {131.5, 1.5}, {135, 3}}, held6(200, 1000, 4, 5.5)...)
	climb := append([]point{{100, -2}, {130, -2}, {140, 4}}, held6(150, 1000, 4, 5.5)...)
	calm := append([]point{{100, 3}, {200, 3}}, held6(206, 1000, 4, 5.5)...)
	from := func(hour float64) func(float64) float64 {
		return func(h float64) float64 {
			if h < 100 || h >= hour {
				return 400
			}
			return 300
		}
	}
	for _, c := range []struct {
		name   string
		trace  []point
		pa     func(h float64) float64
		at     float64
		until  float64
		reason string
	}{
		{"through doors", doors, from(130), 130, 0, "grew_moist"},
		{"with it, and more of them later", climb, from(100), 100, 0, "stood_warmer"},
		{"later, as it grew warm", climb, from(130), 130, 0, "grew_warm"},
		{"without a door", calm, from(160), 100, 172, "stood_warmer"},
		{"never moist", calm, from(2000), 100, 0, "stood_warmer"},
	} {
		yard := moist("yard", "outdoor", through(0, 1000, 0.5, constant(-8)), constant(300))
		e := beesSeen(staysOf([]Logger{moist("one", "room", story(append(table, c.trace...)...), c.pa)}, yard, inTurn)).In
		if math.Abs(float64(e.At)/hourMS-c.at) > 2 || math.Abs(float64(e.Until)/hourMS-c.until) > 3 || e.Reason != c.reason || e.Sure != EdgeLikely {
			t.Errorf("%s: hour %.1f until %.1f, %+v; want %v until %v", c.name, float64(e.At)/hourMS, float64(e.Until)/hourMS, e, c.at, c.until)
		}
	}
}

// One logger was hung two days before the bees and saw them come through the doors at hour 130; another, that saw no doors, came a
// day earlier. What the water tells goes before when a logger was hung.
func TestWaterGoesBeforeWhenALoggerWasHung(t *testing.T) {
	yes := BeesSeen{In: Edge{At: 130, Sure: EdgeLikely, Reason: grewMoist}}
	hung := BeesSeen{In: Edge{At: 60, Sure: EdgeSure, Reason: "stood_warmer"}}
	wet := BeesSeen{In: Edge{At: 60, Sure: EdgeSure, Reason: "stood_warmer", wet: true}}
	if e := beesSeen([]BeesSeen{hung, yes}).In; e.At != 130 {
		t.Errorf("%+v", e)
	}
	if e := beesSeen([]BeesSeen{wet, yes}).In; e.At != 60 {
		t.Errorf("where the air was moist from the first: %+v", e)
	}
}

// From a table at 20 °C a logger rode for an hour and a half in a truck at −9 °C to a barn at 4 °C, where it hung from hour 100 on;
// another came to a barn that the weather of its first week took to 16 °C by day, as warm as some rooms are heated: that is no table.
func TestATruckAndAWarmWeekAreNoBarnAndNoTable(t *testing.T) {
	warm := []point{{40, 21}, {98, 21}, {98.5, 6}}
	for h := 100.0; h < 270; h += 24 {
		warm = append(warm, point{h, 5}, point{h + 12, 17})
	}
	for name, trace := range map[string][]point{
		"truck":     append([]point{{40, 20}, {98, 20}, {98.5, -9}, {99.5, -9}, {100, 4}}, held6(103, 1000, 4, 5.5)...),
		"warm week": append(warm, held6(270, 1100, 4, 5.5)...),
	} {
		e := beesSeen(staysOf([]Logger{{Name: "one", Place: "room", TempC: story(trace...)}}, Logger{}, inTurn)).In
		if math.Abs(float64(e.At)/hourMS-100) > 2 || e.Reason != "stood_warmer" {
			t.Errorf("%s: hour %.1f, %+v", name, float64(e.At)/hourMS, e)
		}
	}
}
