package sampledata

// heatSource is added heat that goes into the floor: a loop that runs with a stage, or one that runs with the sun.
type heatSource struct {
	name, kind string
	withStage  string  // "" for one that runs with the sun
	watts      float64 // of a loop that runs with a stage
	areaM2     float64 // of collectors
}

// The sun's loop runs from the first brightness on and until the second, W/m² on the level; this share of what falls
// on the collectors comes down to the floor. Made up.
const (
	sunOnWM2    = 260
	sunOffWM2   = 160
	sunIntoHeat = 0.45
)

// heating is the heat sources of a barn on their way through the winter.
type heating struct {
	sources []heatSource
	stage   []int // the one each is wired with, −1 for none
	on      []bool
}

func newHeating(sources []heatSource, stages []stage) *heating {
	h := &heating{sources: sources, on: make([]bool, len(sources))}
	for _, s := range sources {
		with := -1
		for i := range stages {
			if stages[i].name == s.withStage {
				with = i
			}
		}
		h.stage = append(h.stage, with)
	}
	return h
}

// follow turns every loop on or off; its pump needs power too.
func (h *heating) follow(ran []bool, sunWM2 float64, power bool) {
	for i, with := range h.stage {
		asked := sunWM2 >= sunOnWM2 || h.on[i] && sunWM2 > sunOffWM2
		if with >= 0 {
			asked = ran[with]
		}
		h.on[i] = asked && power
	}
}

// floorW is the heat that goes into the floor.
func (h *heating) floorW(sunWM2 float64) float64 {
	sum := 0.0
	for i, s := range h.sources {
		if h.on[i] {
			sum += s.watts + s.areaM2*sunIntoHeat*sunWM2
		}
	}
	return sum
}
