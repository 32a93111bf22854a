package series

// builder makes a curve reading by reading, in rising time.
type builder struct {
	Curve
	cut   bool    // the next reading starts a new piece
	along []int64 // the instants it is made along: as long as it takes every one of them it shares them
}

// newBuilder makes room for as many readings as there are instants, which it shares if it takes each of them.
func newBuilder(along []int64, maxStepMS int64) *builder {
	return &builder{Curve: Curve{Readings: Readings{Val: make([]float64, 0, len(along))}, MaxStepMS: maxStepMS}, along: along}
}

// add appends a reading; one without a finite value is left out and cuts the curve. A cut becomes a
// break only where the step would else be bridged.
func (b *builder) add(t int64, v float64) {
	if !isFinite(v) {
		b.cut = true
		return
	}
	n := len(b.Val)
	if b.cut && n > 0 && t-b.Readings.At[n-1] <= b.MaxStepMS {
		b.Breaks = append(b.Breaks, t)
	}
	if n < len(b.along) && b.along[n] == t {
		b.Readings.At = b.along[: n+1 : n+1]
	} else {
		b.own(n)
		b.Readings.At = append(b.Readings.At, t)
	}
	b.Val, b.cut = append(b.Val, v), false
}

// own ends the sharing of the first n instants.
func (b *builder) own(n int) {
	if b.along != nil {
		b.Readings.At, b.along = append(make([]int64, 0, len(b.along)), b.along[:n]...), nil
	}
}
