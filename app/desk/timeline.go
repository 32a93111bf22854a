package desk

import (
	"math"
	"slices"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// Timeline is a barn's winter on one time axis.
type Timeline struct {
	Sentence string
	Lanes    []Lane      // top to bottom
	Whole    series.Span // from the first to the last reading
	View     series.Span // shown first: the bees' time with a little before it
	Bees     series.Span
	Shades   []Shade
	Points   []Point
	Events   []EventView // those that have a row, by start
	Glance   Glance
	Units    Units
	Lacks    string // why there is nothing to draw; then there is nothing else
	ByLane   bool   // a reading is named by its lane: each is a barn
	Beside   bool   // each lane has a trace of one barn and one of another
}

// Lane is a strip of the Timeline: curves, or bars when Rows is set.
type Lane struct {
	Title, Unit, Help string
	Shown             func(float64) float64 // from the curves' unit to the printed one; nil: as it is
	Weight            float64
	Traces            []Trace
	Veil              bool
	Bands             []LaneBand
	Range             *[2]float64 // of the scale, in the curves' unit; nil: as the curves need
	Rows              []StageBar
	Rare              bool // what the rows show is drawn however short it was
	Aside             bool // left out until it is asked for
}

// Role says how a trace is drawn.
type Role int

// The roles of a trace.
const (
	Firm    Role = iota // what is judged
	Thin                // one of several loggers
	Outside             // the weather
)

// Trace is one curve of a lane.
type Trace struct {
	Name  string
	Curve series.Curve
	Role  Role

	OwnScale bool // its range would flatten the lane
}

// StageBar is one stage's row of bars: what ran above what was called for, each nil without its evidence.
type StageBar struct {
	Name        string
	Ran, Called *Stretches
}

// Stretches are when something was on, and when that can't be said.
type Stretches struct{ On, Unsure []series.Span }

// Shade is a named stretch; Outside lies beyond the bees' time.
type Shade struct {
	Span    series.Span
	Name    string
	Outside bool
}

// Point is a named instant.
type Point struct {
	At   int64
	Name string // of a note what was noted
	Note bool   // the keeper's own
}

// TimelineOf makes the Timeline of one barn.
func TimelineOf(in analysis.Input, r analysis.Review, u Units) Timeline {
	b := newBarn(in, r, u)
	t := Timeline{Units: b.u, Bees: b.span(), Sentence: b.timelineSentence()}
	for _, lane := range []func() (Lane, bool){b.temperatureLane, b.elsewhereLane, b.humidityLane, b.marginLane, b.stageLane, b.heatLane, b.eventLane} {
		if l, ok := lane(); ok {
			t.Lanes = append(t.Lanes, l)
		}
	}
	if len(t.Lanes) == 0 {
		t.Sentence = "There is nothing to draw yet."
		t.Lacks = "Hang a logger in the room: drop its file on the window, or pick a place for one that hangs nowhere yet."
		return t
	}
	t.Whole = extent(t.Lanes)
	t.View = b.firstView(t.Whole)
	t.Shades, t.Points, t.Glance, t.Events = b.shades(t.Whole), b.points(), b.glance(), b.timelineEvents()
	return t
}

// Hint says how to move about, and what the bars mean where there are any.
func (t Timeline) Hint() string {
	hint := HelpLine("timeline")
	switch bars := slices.ContainsFunc(t.Lanes, func(l Lane) bool { return len(l.Rows) > 0 && !l.Rare }); {
	case bars && len(t.Events) > 0:
		hint += " " + HelpLine("timeline_all_bars")
	case bars:
		hint += " " + HelpLine("timeline_bars")
	case len(t.Events) > 0:
		hint += " " + HelpLine("timeline_events")
	}
	return hint
}

// Aside are the titles of the lanes that are left out until they are asked for.
func (t Timeline) Aside() (titles []string) {
	for _, l := range t.Lanes {
		if l.Aside {
			titles = append(titles, l.Title)
		}
	}
	return titles
}

// firstView is the bees' time with a thirtieth of it before and hardly anything behind: once the bees are out the loggers are
// carried off, and where a line ends it should be the barn's.
func (b barn) firstView(whole series.Span) series.Span {
	bees := b.span()
	if bees.To <= bees.From {
		return whole
	}
	before := (bees.To - bees.From) / 30
	return series.Span{From: max(whole.From, bees.From-before), To: min(whole.To, bees.To+before/10)}
}

// timelineSentence names the longest spell to look at.
func (b barn) timelineSentence() string {
	spells := b.spells(b.place(), "warm", "cold")
	row, ok := b.quantity("air_temperature")
	if !ok || !row.Mean.OK {
		return "Too little of the room's temperature is known for one sentence about it."
	}
	text := "The room read " + b.tempRange(row.Min.Mid, row.Max.Mid)
	if len(spells) == 0 {
		return text + ", never outside " + b.safeBand() + " for as much as an hour."
	}
	l := longestSpell(spells)
	return text + "; the longest spell outside " + b.safeBand() + " was " + spellWord(l.Kind) + ", " + Hours(l.Hours) + " on " + b.u.Dates(l.Span) + "."
}

// safeBand is the temperatures the room should keep between, "2–6 °C".
func (b barn) safeBand() string {
	row, ok := b.band("air_temperature", "good")
	if !ok || row.Low == nil || row.High == nil {
		return "the safe temperatures"
	}
	return rangeOf(b.u.Limit(*row.Low), b.u.LimitWithUnit(*row.High))
}

// tempRange is "3.5–13.8 °C".
func (b barn) tempRange(lowC, highC float64) string {
	return withUnit(rangeOf(number(b.u.TempValue(lowC), 1), number(b.u.TempValue(highC), 1)), b.u.TempSymbol())
}

func (b barn) temperatureLane() (Lane, bool) {
	l := Lane{Title: "Temperature", Unit: b.u.TempSymbol(), Shown: b.u.TempValue, Weight: 3, Help: HelpLine("temperature")}
	l.addEach(b.roomLoggers(), func(g analysis.Logger) series.Curve { return g.TempC })
	l.add(b.roomName(), b.r.Traces.Room, Firm)
	l.add("outdoors", b.r.Traces.Outdoor, Outside)
	b.scaleApart(&l)
	l.Bands = b.tempBands()
	return l, len(l.Traces) > 0
}

// elsewhereLane shows the temperatures of the loggers that hang neither in the room's air nor outdoors. Where there are bars to
// see beside the curves, it has to be asked for.
func (b barn) elsewhereLane() (Lane, bool) {
	l := Lane{Title: "Elsewhere in the barn", Unit: b.u.TempSymbol(), Shown: b.u.TempValue, Weight: 1.5, Help: HelpLine("elsewhere"), Aside: len(b.in.Stages)+len(b.in.Heats) > 0}
	for _, g := range b.in.Loggers {
		if g.Place != b.place() && g.Place != "outdoor" {
			l.add(g.Name, g.TempC, Thin)
		}
	}
	l.Veil = len(l.Traces) > 1
	return l, len(l.Traces) > 0
}

// scaleApart gives the weather a scale of its own where its range is more than twice the room's.
func (b barn) scaleApart(l *Lane) {
	room := b.r.Traces.Room.Bin(b.span())
	for i, t := range l.Traces {
		if t.Role == Outside && len(l.Traces) > 1 {
			out := t.Curve.Bin(b.span())
			l.Traces[i].OwnScale = out.Max-out.Min > 2*(room.Max-room.Min)
		}
	}
}

func withTemperature(loggers []analysis.Logger) int {
	n := 0
	for _, l := range loggers {
		if l.TempC.Len() > 0 {
			n++
		}
	}
	return n
}

func (b barn) roomName() string {
	if withTemperature(b.roomLoggers()) > 1 {
		return "room, mean"
	}
	return b.place()
}

func (b barn) humidityLane() (Lane, bool) {
	l := Lane{Title: "Relative humidity", Unit: "%", Shown: func(v float64) float64 { return 100 * v }, Weight: 2, Help: HelpLine("humidity")}
	l.addEach(b.roomLoggers(), func(g analysis.Logger) series.Curve { return g.RelHum })
	l.add(b.roomName(), b.r.Traces.RoomRelHum, Firm)
	if len(l.Traces) == 0 {
		return l, false
	}
	l.Bands = b.bands("relative_humidity", func(bands analysis.Bands) analysis.Band { return bands.RelHumPct }, func(percent float64) float64 { return percent / 100 })
	return l, true
}

// coldestSurface is the listed surface with the smallest margin on average, cold metal only where nothing else is listed.
func (b barn) coldestSurface() (coldest analysis.SurfaceRow, ok bool) {
	least := math.Inf(1)
	for _, s := range b.r.Surfaces {
		mean := s.Margin.Bin(b.span()).Weighted()
		if s.Kind == "metal" {
			mean += 1000
		}
		if mean < least {
			coldest, least, ok = s, mean, true
		}
	}
	return coldest, ok
}

// marginLane shows the coldest listed surface.
func (b barn) marginLane() (Lane, bool) {
	s, ok := b.coldestSurface()
	if !ok {
		return Lane{}, false
	}
	l := Lane{Title: "Margin to wet", Unit: b.u.TempSymbol(), Shown: b.u.DiffValue, Weight: 1.5, Help: HelpLine("margin")}
	l.add(s.Name, s.Margin, Firm)
	l.Bands = []LaneBand{{Low: 0, High: math.Inf(1)}}
	return l, true
}

func (b barn) stageLane() (Lane, bool) {
	l := Lane{Title: "Fan stages", Help: HelpLine("stages")}
	for i := len(b.in.Stages) - 1; i >= 0; i-- {
		l.Rows = append(l.Rows, b.stageBar(b.in.Stages[i].Name))
	}
	return l, len(l.Rows) > 0
}

// heatLane shows when heat was added, by a record or with the stage it is wired to.
func (b barn) heatLane() (Lane, bool) {
	l := Lane{Title: "Added heat", Help: HelpLine("stages")}
	for _, h := range b.r.Heats {
		var none *Stretches
		if h.Called != nil || h.Ran != nil {
			l.Rows = append(l.Rows, StageBar{Name: h.Source.Name, Called: none.with(h.Called), Ran: none.with(h.Ran)})
		}
	}
	return l, len(l.Rows) > 0
}

func (b barn) stageBar(name string) StageBar {
	bar := StageBar{Name: name}
	for _, row := range b.r.Stages {
		if row.Name == name {
			bar.Called, bar.Ran = bar.Called.with(row.Called), bar.Ran.with(row.Ran)
		}
	}
	return bar
}

// with adds a period's work; nil stays nil where no period has any.
func (s *Stretches) with(w *analysis.Work) *Stretches {
	if w == nil {
		return s
	}
	if s == nil {
		s = &Stretches{}
	}
	return &Stretches{On: append(s.On, w.On...), Unsure: append(s.Unsure, w.Unsure...)}
}

func (l *Lane) add(name string, c series.Curve, role Role) {
	if c.Len() > 0 {
		l.Traces = append(l.Traces, Trace{Name: name, Curve: c, Role: role})
	}
}

// addEach adds a curve of each of the room's loggers, under a veil; where one alone has any, it is the room's.
func (l *Lane) addEach(room []analysis.Logger, of func(analysis.Logger) series.Curve) {
	for _, g := range room {
		l.add(g.Name, of(g), Thin)
	}
	if l.Veil = len(l.Traces) > 1; !l.Veil {
		l.Traces = nil
	}
}

// LaneBand is a safe range in the curves' unit; infinite is no limit, and an empty span all time.
type LaneBand struct {
	Low, High float64
	Span      Span
}

// tempBands are the safe ranges of the room's temperature.
func (b barn) tempBands() []LaneBand {
	return b.bands("air_temperature", func(bands analysis.Bands) analysis.Band { return bands.TempC }, b.u.shownLimit)
}

// bands are the good band of a quantity, or those of the phases where their limits differ; of takes it from a phase's bands and
// shown to the curves' unit.
func (b barn) bands(quantity string, of func(analysis.Bands) analysis.Band, shown func(float64) float64) (out []LaneBand) {
	q, _ := b.quantity(quantity)
	if all := goodOf(q); all.Low != nil && all.High != nil {
		return []LaneBand{{Low: shown(*all.Low), High: shown(*all.High)}}
	}
	for _, p := range b.r.Phases {
		limits := LaneBand{Low: math.Inf(-1), High: math.Inf(1), Span: p.Span}
		if low := of(p.Bands).GoodLow; low != nil {
			limits.Low = shown(*low)
		}
		if high := of(p.Bands).GoodHigh; high != nil {
			limits.High = shown(*high)
		}
		out = append(out, limits)
	}
	return out
}

// extent spans the judged curves of all lanes; the weather does not stretch it.
func extent(lanes []Lane) series.Span {
	var s series.Span
	for _, l := range lanes {
		for _, t := range l.Traces {
			from, to := t.Curve.Readings.At[0], t.Curve.Readings.At[t.Curve.Len()-1]
			if t.Role == Outside && len(l.Traces) > 1 {
				continue
			}
			if s.To == 0 {
				s = series.Span{From: from, To: to}
			}
			s.From, s.To = min(s.From, from), max(s.To, to)
		}
	}
	return s
}

// shades are the phases, what the keeper excludes, and what lies outside the bees' time.
func (b barn) shades(whole series.Span) []Shade {
	var out []Shade
	if whole.From < b.r.BeesIn {
		out = append(out, Shade{series.Span{From: whole.From, To: b.r.BeesIn}, "before bees in", true})
	}
	for _, p := range b.r.Phases {
		out = append(out, Shade{p.Span, p.Name, false})
	}
	for _, x := range series.Intersect(series.Union(b.in.Excluded), []series.Span{{From: b.r.BeesIn, To: b.r.BeesOut}}) {
		out = append(out, Shade{x, "not scored", true})
	}
	if whole.To > b.r.BeesOut {
		out = append(out, Shade{series.Span{From: b.r.BeesOut, To: whole.To}, "after bees out", true})
	}
	return out
}

func (b barn) points() []Point {
	var out []Point
	if b.r.BeesOut <= b.r.BeesIn {
		return nil
	}
	if b.r.BeesBy.In != analysis.Assumed {
		out = append(out, Point{At: b.r.BeesIn, Name: "bees in"})
	}
	if b.r.BeesBy.Out != analysis.Assumed {
		out = append(out, Point{At: b.r.BeesOut, Name: "bees out"})
	}
	return out
}

// Span is a stretch of time [From, To) in milliseconds UTC.
type Span = series.Span
