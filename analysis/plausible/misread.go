package plausible

import (
	"math"
	"slices"
)

// Two ways of misreading a file show in the level. Against neighbours, an hour is misread when the value
// lies more than 8 K off theirs as it stands and within 3 K when read the other way; two days of such hours,
// no more than six hours apart and half of them within 1.5 K, are a stretch. A file is misread from its first
// reading to its last, so a stretch that does not begin and end with the log, at hours that can't be judged,
// or with a jump of more than 8 K, is chance. Alone, only a whole log is doubted, against what a wintering
// room can be: bees rest below about 10 °C and a room above 25 °C for a winter would have had them flying
// (CAPA leaflet on winter biology: least metabolism at 5–10 °C). Humidity and temperature correlate alike
// whichever is called which, so only levels can tell a swap. (Limits: common practice, no source.)
const (
	offAsItStandsK             = 8
	fitsK, fitsMostlyK         = 3, 1.5
	misreadHours, misreadApart = 48, 6
	aloneShare                 = 0.95
	restLowC, restHighC        = -10, 15
	flyingC                    = 25
	tooDry, dampest            = 0.25, 1.05
)

// celsius is a temperature in °F read as what it is.
func celsius(f float64) float64 { return (f - 32) / 1.8 }

// misread finds where logger i has its columns swapped, or °F taken for °C.
func (r *Room) misread(i int) []Finding {
	temp, relHum := r.temp.all[i], r.relHum.all[i]
	if !temp.any() {
		return nil
	}
	if near, n := r.temp.others(i); n > 0 {
		return r.misreadBeside(temp, relHum, near)
	}
	if !r.traces[i].Resting {
		return nil
	}
	return r.misreadAlone(temp, relHum)
}

// misreadBeside holds a logger's hours against its neighbours'.
func (r *Room) misreadBeside(temp, relHum, near hours) (out []Finding) {
	if relHum.any() {
		for _, run := range fitting(temp, near, func(k int) float64 { return 100 * relHum.val[k] }) {
			if quantile(0.95, temp.val[run[0]:run[1]]) <= 100*dampest {
				out = append(out, swap(temp, relHum, run, Likely))
			}
		}
	}
	if len(out) > 0 {
		return out
	}
	for _, run := range fitting(temp, near, func(k int) float64 { return celsius(temp.val[k]) }) {
		out = append(out, inFahrenheit(temp, run, median(near.val[run[0]:run[1]]), Likely))
	}
	return out
}

// fitting lists the stretches in which another reading of a logger's hours fits the neighbours' and the one
// that stands does not.
func fitting(temp, near hours, other func(k int) float64) [][2]int {
	off := make([]float64, len(temp.val))
	for k := range off {
		off[k] = math.Abs(other(k) - near.val[k])
	}
	runs := runsOf(len(off), misreadHours, misreadApart, func(k int) bool {
		return math.Abs(temp.val[k]-near.val[k]) > offAsItStandsK && off[k] < fitsK
	})
	return slices.DeleteFunc(runs, func(r [2]int) bool {
		return median(off[r[0]:r[1]]) > fitsMostlyK || !breaksOff(temp, off, r[0]-1, 1) || !breaksOff(temp, off, r[1], -1)
	})
}

// breaksOff says whether hour k, the one next to a stretch, is no hour of the same file as those further
// along by step: unknown, or a jump away.
func breaksOff(temp hours, off []float64, k, step int) bool {
	if k < 0 || k >= len(off) || !isKnown(off[k]) {
		return true
	}
	outer, inner := max(0, min(k-step, len(off)-1)), k+2*step
	return inner < 0 || inner >= len(off) || !(math.Abs(temp.val[inner]-temp.val[outer]) <= offAsItStandsK)
}

// misreadAlone holds a logger's whole log against what a wintering room can be.
func (r *Room) misreadAlone(temp, relHum hours) []Finding {
	run := [2]int{firstKnown(temp.val), lastKnown(temp.val) + 1}
	middle := median(temp.val)
	warm := share(temp.val, func(k int) bool { return temp.val[k] > flyingC })
	if run[1]-run[0] < misreadHours || warm < aloneShare {
		return nil
	}
	if dry := share(temp.val, func(k int) bool { return relHum.any() && relHum.val[k] <= tooDry }); dry >= aloneShare && middle <= 100*dampest {
		return []Finding{swap(temp, relHum, run, Perhaps)}
	}
	if rest := share(temp.val, func(k int) bool { c := celsius(temp.val[k]); return restLowC <= c && c <= restHighC }); rest >= aloneShare && r.colderOut(middle) {
		return []Finding{inFahrenheit(temp, run, math.NaN(), Perhaps)}
	}
	return nil
}

// colderOut says whether the air outdoors, where it is known, was colder than a room at that temperature by
// more than an unheated building can be.
func (r *Room) colderOut(roomC float64) bool {
	return !r.outdoor.any() || roomC-median(r.outdoor.val) > 20
}

// swap is a finding of swapped columns.
func swap(temp, relHum hours, run [2]int, sure Sureness) Finding {
	return Finding{Swapped, Both, temp.span(run[0], run[1]), sure, []float64{median(temp.val[run[0]:run[1]]), median(relHum.val[run[0]:run[1]])}, ""}
}

// inFahrenheit is a finding of °F in a column of °C.
func inFahrenheit(temp hours, run [2]int, near float64, sure Sureness) Finding {
	middle := median(temp.val[run[0]:run[1]])
	return Finding{Fahrenheit, Temperature, temp.span(run[0], run[1]), sure, []float64{middle, celsius(middle), near}, ""}
}

// share is how much of the known hours a rule holds for.
func share(val []float64, yes func(k int) bool) float64 {
	n, of := 0, 0
	for k, v := range val {
		if !isKnown(v) {
			continue
		}
		of++
		if yes(k) {
			n++
		}
	}
	return float64(n) / math.Max(1, float64(of))
}

// firstKnown is the index of the first known value, or the length.
func firstKnown(val []float64) int {
	for i, v := range val {
		if isKnown(v) {
			return i
		}
	}
	return len(val)
}

// lastKnown is the index of the last known value, or −1.
func lastKnown(val []float64) int {
	for i := len(val) - 1; i >= 0; i-- {
		if isKnown(val[i]) {
			return i
		}
	}
	return -1
}
