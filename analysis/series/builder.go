package series

// builder makes a curve reading by reading, in rising time.
type builder struct {
	Curve
	cut bool // the next reading starts a new piece
}

// newBuilder makes room for n readings.
func newBuilder(n int, maxStepMS int64) *builder {
	r := Readings{At: make([]int64, 0, n), Val: make([]float64, 0, n)}
	return &builder{Curve: Curve{Readings: r, MaxStepMS: maxStepMS}}
}

// add appends a reading; one without a finite value is left out and cuts the curve. A cut becomes a
// break only where the step would else be bridged.
func (b *builder) add(t int64, v float64) {
	if !isFinite(v) {
		b.cut = true
		return
	}
	if n := b.Len(); b.cut && n > 0 && t-b.Readings.At[n-1] <= b.MaxStepMS {
		b.Breaks = append(b.Breaks, t)
	}
	b.Readings.At, b.Val, b.cut = append(b.Readings.At, t), append(b.Val, v), false
}
