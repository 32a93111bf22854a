package series

// Zip is f of two curves at the instants where both have a reading, straight lines between: quantities
// derived from two others (dew point from temperature and humidity) are worked out this way, never from
// interpolated values. The gap limit is the wider of the two; where either line is broken between two
// such instants the result breaks too, and where f gives no finite number there is no reading.
func Zip(a, b Curve, f func(x, y float64) float64) Curve {
	along := a.Readings.At
	if b.Len() < a.Len() {
		along = b.Readings.At
	}
	out := newBuilder(along, max(a.MaxStepMS, b.MaxStepMS))
	sa, sb := seams{a.Breaks}, seams{b.Breaks}
	for i, j := 0, 0; i < a.Len() && j < b.Len(); {
		ta, tb := a.Readings.At[i], b.Readings.At[j]
		if ta == tb {
			out.add(ta, f(a.Val[i], b.Val[j]))
		}
		if ta <= tb {
			i++
			out.cut = out.cut || i < a.Len() && !a.joined(i, &sa)
		}
		if tb <= ta {
			j++
			out.cut = out.cut || j < b.Len() && !b.joined(j, &sb)
		}
	}
	return out.Curve
}

// ZipAlong is f of a's readings and of b's line at the same instants, where that line is known. The gap
// limit is a's; where either line is broken between two such instants the result breaks too, and where
// f gives no finite number there is no reading. It serves inputs on different clocks, such as room and
// outdoor temperature; for quantities of one logger use Zip.
func ZipAlong(a, b Curve, f func(x, y float64) float64) Curve {
	out := newBuilder(a.Readings.At, a.MaxStepMS)
	wa, wb := newWalker(a), newWalker(b)
	joined := false // b's step that ends in reading wb.k
	for ; wa.k < a.Len(); out.cut = !wa.step() || out.cut {
		t := a.Readings.At[wa.k]
		for wb.k < b.Len() && b.Readings.At[wb.k] < t {
			joined = wb.step()
			out.cut = out.cut || !joined
		}
		switch {
		case wb.k < b.Len() && b.Readings.At[wb.k] == t:
			out.add(t, f(a.Val[wa.k], b.Val[wb.k]))
		case joined:
			out.add(t, f(a.Val[wa.k], b.between(wb.k, float64(t-b.Readings.At[wb.k-1]))))
		default:
			out.cut = true
		}
	}
	return out.Curve
}

// walker goes along the readings of a curve, k the one it stands on.
type walker struct {
	c    Curve
	k    int
	seam seams
}

// newWalker stands on the first reading.
func newWalker(c Curve) walker { return walker{c: c, seam: seams{c.Breaks}} }

// step goes to the next reading and reports whether a straight line leads there.
func (w *walker) step() bool {
	w.k++
	return w.k < w.c.Len() && w.c.joined(w.k, &w.seam)
}
