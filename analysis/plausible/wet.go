package plausible

import "math"

// A sensor that was wet reads high until it has dried: six hours and more near 100 % while its neighbours
// are at least a tenth drier, then a tail that falls to them without rising by more than 2 points in an
// hour. The tail ends where it is within 5 points of what it reads above them on other days; one shorter
// than three hours is no tail, one longer than ten days no drying. Without neighbours drying air looks the
// same and nothing is said. (Common practice, no source.)
const (
	wetAt                   = 0.97
	wetHours                = 6
	wetRise                 = 0.02
	wetEnds                 = 0.05
	wetTail, wetTailLongest = 3, 10 * dayHours
)

// wet finds the tails of a wet sensor's drying in logger i.
func (r *Room) wet(i int) (out []Finding) {
	near, n := r.relHum.others(i)
	own := r.relHum.all[i]
	if n == 0 || !own.any() {
		return nil
	}
	above := own.minus(near)
	usually := median(above.val)
	for _, run := range runsOf(len(own.val), wetHours, 0, func(k int) bool { return own.val[k] >= wetAt && above.val[k]-usually >= drierBy }) {
		from, to := run[1], tailEnd(above, run[1], usually)
		if hours := to - from; hours >= wetTail && hours <= wetTailLongest {
			out = append(out, Finding{WetSensor, Humidity, own.span(from, to), Likely, []float64{above.val[from], float64(hours)}, ""})
		}
	}
	return out
}

// tailEnd is the hour at which a tail that starts at hour k has come down; k when it never does.
func tailEnd(above hours, k int, usually float64) int {
	before := math.Inf(1)
	for j := k; j < len(above.val); j++ {
		v := above.val[j] - usually
		switch {
		case v <= wetEnds:
			return j
		case !isKnown(v) || v > before+wetRise:
			return k
		}
		before = v
	}
	return k
}
