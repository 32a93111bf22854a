package plausible

import "math"

// A logger was carried out when, in the last or first hours of its log, it read nearer to the air outdoors
// than to the room, while room and outdoors lay more than 6 K apart, or, beside others, more than 6 K warmer than both,
// as in a house. The room is its neighbours; alone, the
// middle of the week next to the stretch. Two hours and more count, two weeks at most. Alone, three days at
// most, only from a room that keeps calm (half as far again as it goes on 19 of 20 hours of that week), and only
// with a step of half the way to the room within three hours where the stretch ends: a longer or softer one may
// be the room itself, doors open. Of two loggers the one that stayed nearer to its own level of that week was not
// carried: the other was, into a house perhaps. (Common practice, no source.)
const (
	carriedApartK    = 6
	carriedLeast     = 2
	carriedMost      = 14 * dayHours
	carriedMostAlone = 3 * dayHours
	carriedWeek      = 7 * dayHours
	carriedCalm      = 1.5
)

// carried finds whether logger i hung outdoors at either end of its log.
func (r *Room) carried(i int) (out []Finding) {
	own := r.temp.all[i]
	if !own.any() || !r.outdoor.any() {
		return nil
	}
	near, n := r.temp.others(i)
	first, last := firstKnown(own.val), lastKnown(own.val)
	for _, side := range []struct{ start, step int }{{last, -1}, {first, 1}} {
		room := func(k int) float64 { return near.val[k] }
		most := carriedMost
		if n == 0 {
			level, calm := levelBeside(own, side.start, side.step)
			if math.Abs(own.val[side.start]-level) <= carriedCalm*calm {
				continue
			}
			room, most = func(int) float64 { return level }, carriedMostAlone
		}
		length := r.outside(own, room, n > 0, side.start, side.step, first, last)
		if n == 1 && length > 0 && gone(own, side.start, side.step, length) < gone(near, side.start, side.step, length) {
			continue
		}
		if length >= carriedLeast && length <= most && (n > 0 || r.abrupt(own, room, side.start, side.step, length)) {
			out = append(out, r.carriedOut(i, room, side.start, side.step, length))
		}
	}
	return out
}

// gone is how far, K, a logger was from its own level while a stretch at an end lasted; 0 where that is not known.
func gone(h hours, start, step, length int) float64 {
	level, _ := levelBeside(h, start, step)
	var away []float64
	for n, k := 0, start; n < length && k >= 0 && k < len(h.val); n, k = n+1, k+step {
		if d := math.Abs(h.val[k] - level); isKnown(d) {
			away = append(away, d)
		}
	}
	if len(away) == 0 {
		return 0
	}
	return median(away)
}

// levelBeside is the middle of the week that a stretch of three days at an end is followed by, going inwards,
// and how far from it the logger stays for 19 of 20 hours.
func levelBeside(own hours, start, step int) (level, calm float64) {
	a, b := start+step*carriedMostAlone, start+step*(carriedMostAlone+carriedWeek)
	a, b = max(0, min(a, b)), min(len(own.val), max(a, b))
	if a >= b {
		return math.NaN(), math.NaN()
	}
	level = median(own.val[a:b])
	var away []float64
	for _, v := range own.val[a:b] {
		away = append(away, math.Abs(v-level))
	}
	return level, quantile(0.95, away)
}

// outside is how many hours from an end on the logger was outdoors or, where that can be told, in a house. An hour that can't be judged does not
// end the stretch, but does not count at its inner end either.
func (r *Room) outside(own hours, room func(int) float64, houses bool, start, step, first, last int) (length int) {
	for n, k := 1, start; k >= first && k <= last && n <= carriedMost+1; n, k = n+1, k+step {
		in, out := math.Abs(own.val[k]-room(k)), math.Abs(own.val[k]-r.outdoor.val[k])
		if !isKnown(in) || !isKnown(out) {
			continue
		}
		housed := houses && own.val[k]-max(room(k), r.outdoor.val[k]) > carriedApartK
		if !housed && (in <= out || math.Abs(room(k)-r.outdoor.val[k]) <= carriedApartK) {
			return length
		}
		length = n
	}
	return length
}

// abrupt says whether the logger went half of the way to the room within the three hours round the stretch's
// inner end.
func (r *Room) abrupt(own hours, room func(int) float64, start, step, length int) bool {
	last := start + step*(length-1)
	inside := last + 2*step
	if inside < 0 || inside >= len(own.val) {
		return false
	}
	return math.Abs(own.val[inside]-own.val[last-step]) >= math.Abs(room(last)-r.outdoor.val[last])/2
}

// carriedOut is the finding for the hours at one end. The hour in which it was carried, half in and half
// out, goes with them.
func (r *Room) carriedOut(i int, room func(int) float64, start, step, length int) Finding {
	own := r.temp.all[i]
	a, b := start, start+step*(length-1)
	a, b = min(a, b), max(a, b)
	var in, out []float64
	for k := a; k <= b; k++ {
		in, out = append(in, math.Abs(own.val[k]-room(k))), append(out, math.Abs(own.val[k]-r.outdoor.val[k]))
	}
	if step < 0 {
		a = max(a-1, 0)
	} else {
		b = min(b+1, len(own.val)-1)
	}
	sure := Likely
	if _, n := r.temp.others(i); n == 0 {
		sure = Perhaps
	}
	return Finding{CarriedOut, Both, own.span(a, b+1), sure, []float64{median(in), median(out)}, ""}
}
