package winter

// SetSettings sets down a barn's fan stages, surfaces, heat sources, hives in and out, phases, stretches that are not
// judged or the keeper's notes; a list that is nil stays. A record that waits for a stage or heat source of its name is
// taken to be of it.
type SetSettings struct {
	Barn       int
	Of         string // the kind of edit: stages, surfaces, heats, heads, phases, exclusions or notes
	Stages     []Stage
	Surfaces   []Surface
	Heats      []HeatSource
	Heads      []HeadCount
	Phases     []Phase
	Exclusions []Exclusion
	Notes      []Note
}

// Apply is Edit's.
func (e SetSettings) Apply(w Winter) (Winter, error) {
	if e.Barn < 0 || e.Barn >= len(w.Barns) {
		return w, noList(e.Barn)
	}
	return w.withBarn(e.Barn, func(b *Barn) {
		replace(&b.Stages, e.Stages)
		replace(&b.Surfaces, e.Surfaces)
		replace(&b.Heats, e.Heats)
		replace(&b.Heads, e.Heads)
		replace(&b.Phases, e.Phases)
		replace(&b.Exclusions, e.Exclusions)
		replace(&b.Notes, e.Notes)
		b.Loggers = b.linked()
	}), nil
}

// replace puts a list in another's place unless it is nil; an empty one leaves none.
func replace[T any](list *[]T, by []T) {
	switch {
	case len(by) > 0:
		*list = by
	case by != nil:
		*list = nil
	}
}

// What is Edit's.
func (e SetSettings) What() string { return e.Of }

// Field is Edit's.
func (SetSettings) Field() string { return "" }

// SetRoom sets down what a barn's room is: its volume, nil where it is not known, whether water lines run in it, and what
// its alarm is set to, nil for the house's line.
type SetRoom struct {
	Barn             int
	VolumeM3         *float64
	WaterLines       bool
	AlarmC, AlarmMin *float64
}

// Apply is Edit's.
func (e SetRoom) Apply(w Winter) (Winter, error) {
	if e.Barn < 0 || e.Barn >= len(w.Barns) {
		return w, noList(e.Barn)
	}
	return w.withBarn(e.Barn, func(b *Barn) {
		b.VolumeM3, b.WaterLines, b.AlarmC, b.AlarmMin = e.VolumeM3, e.WaterLines, e.AlarmC, e.AlarmMin
	}), nil
}

// What is Edit's.
func (SetRoom) What() string { return "room" }

// Field is Edit's.
func (SetRoom) Field() string { return "" }

// SetBands sets down the limits all barns of the winter are judged by.
type SetBands struct{ Bands Bands }

// Apply is Edit's.
func (e SetBands) Apply(w Winter) (Winter, error) {
	w.Bands = e.Bands
	return w, nil
}

// What is Edit's.
func (SetBands) What() string { return "bands" }

// Field is Edit's.
func (SetBands) Field() string { return "" }
