package plausible

import (
	"math"
	"slices"
)

// A logger in a room where bees rest did not read the room's air in a stretch of three hours and more, with breaks of six hours at
// most, in which it lay more than 8 K from the middle of the others while two of them at least lay within 4 K of that middle:
// another column's values, a failing sensor, or a place of its own for a while. From 16 K on nothing in such a room explains it.
// What was carried out of the room (carried) or lies so from end to end (elsewhere) is not said again. (Common practice, no
// source.)
const (
	apartHours, apartBreak = 3, 6
	apartSureK             = 2 * elsewhereK
)

// apart finds where logger i read far from all the others for a while.
func (r *Room) apart(i int) (out []Finding) {
	own := r.temp.all[i]
	near, n := r.temp.others(i)
	if !r.traces[i].Resting || !own.any() || n < 2 || len(r.elsewhere(i)) > 0 {
		return nil
	}
	carried := r.carried(i)
	for _, run := range runsOf(len(own.val), apartHours, apartBreak, func(k int) bool {
		return math.Abs(own.val[k]-near.val[k]) > elsewhereK && r.temp.company(k, near.val[k]) >= 2
	}) {
		span := own.span(run[0], run[1])
		if slices.ContainsFunc(carried, func(f Finding) bool { return f.Span.From < span.To && span.From < f.Span.To }) {
			continue
		}
		away, sure := median(own.minus(near).val[run[0]:run[1]]), Perhaps
		if math.Abs(away) >= apartSureK {
			sure = Likely
		}
		out = append(out, Finding{Apart, Temperature, span, sure, []float64{away}, ""})
	}
	return out
}

// company is how many of an hour's values lie near one.
func (c *crowd) company(hour int, tempC float64) int {
	row := c.sorted[hour]
	from, _ := slices.BinarySearch(row, tempC-companyK)
	to, _ := slices.BinarySearch(row, math.Nextafter(tempC+companyK, math.Inf(1)))
	return to - from
}
