package figure

import (
	"image"
	"math"
	"slices"

	"gonum.org/v1/plot"

	"thawbook/analysis/series"
)

// Layout says where the parts of a figure lie on a page of one size, in device pixels.
type Layout struct {
	Plot  image.Rectangle   // what the time axis spans, from the first lane's top to the last one's bottom
	Lanes []image.Rectangle // the data area of each lane
	View  series.Span

	scale  float64
	bars   barSize
	lanes  []laneScale
	ticks  []TimeTick
	spans  []Period
	strip  bool // phases and marks are named above the lanes
	names  int  // width of the label column right of the plot
	second int  // width of the second value axis right of that
}

type valueTick = plot.Tick

// laneScale holds a lane's value scales, in printed units.
type laneScale struct {
	low, high   float64
	low2, high2 float64 // of the traces on a scale of their own
	own         bool    // whether there are such
	ticks       []valueTick
	ticks2      []valueTick
}

// Design sizes, in design pixels.
const (
	edge      = 8.0  // free edge of the page
	headH     = 20.0 // title line above a lane
	laneGap   = 8.0
	axisH     = 40.0 // the two lines of the time axis
	stripH    = 20.0
	fontSize  = 12.0
	labelLine = 15.0
	minLaneH  = 20.0
	maxNames  = 132.0
	swatch    = 12.0
)

// barSize is how high tracks of bars and the gaps between them and between their rows are, in design pixels.
type barSize struct{ track, gap, rowGap float64 }

// Bars stand closer where the curves would have less than a height per weight.
var (
	roomyBars = barSize{track: 9, gap: 2, rowGap: 6}
	tightBars = barSize{track: 6, gap: 1, rowGap: 4}
)

const lowCurves = 25.0

// MinSize is the smallest page, in design pixels, on which nothing is cut short.
func (f *Figure) MinSize() (w, h float64) {
	h = 2*edge + axisH + stripH
	for i := range f.Lanes {
		h += f.Lanes[i].headHeight() + laneGap + max(minLaneH, f.Lanes[i].barHeight(tightBars))
	}
	return 480, h
}

// Layout places the figure on a page of w × h device pixels at scale device pixels per design pixel.
func (f *Figure) Layout(w, h int, scale float64) Layout {
	f.prepare()
	l := Layout{View: f.view(), scale: scale, strip: len(f.Marks) > 0 || slices.ContainsFunc(f.Shades, func(s Shade) bool { return s.Name != "" })}
	l.placeLanes(f, h)
	left := 0.0
	for i := range f.Lanes {
		l.lanes = append(l.lanes, f.laneScale(i, l.Lanes[i].Dy(), scale))
		left = max(left, f.leftWidth(i, l.lanes[i], scale))
	}
	l.rightColumns(f)
	x0 := l.px(edge) + int(math.Ceil(left))
	x1 := max(w-l.names-l.second-l.px(edge), x0+l.px(40))
	for i := range l.Lanes {
		l.Lanes[i].Min.X, l.Lanes[i].Max.X = x0, x1
		l.Plot = l.Plot.Union(l.Lanes[i])
	}
	wanted := int(float64(x1-x0) / (scale * 52))
	l.ticks, l.spans = TimeTicks{Zone: f.Zone, Wanted: wanted}.Scale(l.View)
	return l
}

func (l *Layout) px(design float64) int { return int(math.Round(design * l.scale)) }

func (l *Layout) font(bold bool) typeface { return typeface{bold: bold, px: fontSize * l.scale} }

// placeLanes shares the height: bar lanes get what their rows need, curve lanes the rest by weight.
func (l *Layout) placeLanes(f *Figure, h int) {
	y := edge
	if l.strip {
		y += stripH
	}
	l.bars = roomyBars
	perWeight := f.curveHeight(float64(h)/l.scale-y, l.bars)
	if perWeight < lowCurves {
		l.bars = tightBars
		perWeight = f.curveHeight(float64(h)/l.scale-y, l.bars)
	}
	for i := range f.Lanes {
		y += f.Lanes[i].headHeight()
		height := f.Lanes[i].barHeight(l.bars)
		if f.Lanes[i].Kind == Curves {
			height = max(minLaneH, perWeight*f.Lanes[i].weight())
		}
		l.Lanes = append(l.Lanes, image.Rect(0, l.px(y), 0, l.px(y+height)))
		y += height + laneGap
	}
}

// curveHeight is what a height leaves to the curves beside bars of a size, per weight, in design pixels.
func (f *Figure) curveHeight(h float64, bars barSize) float64 {
	free, weight := h-edge-axisH-laneGap*float64(len(f.Lanes)-1), 0.0
	for i := range f.Lanes {
		free -= f.Lanes[i].headHeight() + f.Lanes[i].barHeight(bars)
		weight += f.Lanes[i].weight()
	}
	return free / weight
}

func (l *Lane) headHeight() float64 {
	if l.Bare {
		return 0
	}
	return headH
}

func (l *Lane) weight() float64 {
	switch {
	case l.Kind == Bars:
		return 0
	case l.Height > 0:
		return l.Height
	}
	return 1
}

func (l *Lane) barHeight(size barSize) float64 {
	if l.Kind != Bars {
		return 0
	}
	h := 0.0
	for _, r := range l.Rows {
		h += r.height(size) + size.rowGap
	}
	return h
}

func (r BarRow) height(size barSize) float64 {
	return max(r.tracksHeight(size), fontSize)
}

// laneScale fits the value scales of lane i into a height of h device pixels.
func (f *Figure) laneScale(i, h int, scale float64) laneScale {
	lane := &f.Lanes[i]
	if lane.Kind == Bars {
		return laneScale{}
	}
	shared, own := f.reachOf(lane).in(f.view()), f.valueRange(lane, true)
	var s laneScale
	both := shared.with(own.Low).with(own.High)
	s.own = own.known() && shared.known() && both.High-both.Low > 1.6*(shared.High-shared.Low)
	if own.known() && !s.own {
		shared = both
	}
	if lane.Range != nil {
		shared = *lane.Range
	}
	if !shared.known() {
		shared = Range{0, 1}
	}
	wanted := int(float64(h) / (scale * 30))
	s.low, s.high = ordered(lane.shown(shared.Low), lane.shown(shared.High))
	if lane.Range == nil {
		pad := 0.03 * (s.high - s.low)
		s.low, s.high = widen(s.low-pad, s.high+pad)
	}
	s.ticks = ValueTicks{Wanted: wanted}.Ticks(s.low, s.high)
	if s.own {
		s.low2, s.high2 = widen(lane.shown(own.Low), lane.shown(own.High))
		s.ticks2 = ValueTicks{Wanted: wanted}.Ticks(s.low2, s.high2)
	}
	return s
}

func ordered(a, b float64) (float64, float64) { return min(a, b), max(a, b) }

var noRange = Range{math.Inf(1), math.Inf(-1)}

func (r Range) known() bool { return r.High >= r.Low }

func (r Range) with(v float64) Range {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return r
	}
	return Range{min(r.Low, v), max(r.High, v)}
}

// valueRange returns the extremes, inside the focus, of the lane's traces that ask for a scale of their
// own, or of those that do not.
func (f *Figure) valueRange(lane *Lane, own bool) Range {
	r := noRange
	for i := range lane.Traces {
		t := &lane.Traces[i]
		if t.OwnScale != own || t.Pyramid == nil {
			continue
		}
		s := f.Focus
		if s.To <= s.From {
			s = series.Span{From: t.Curve.Readings.At[0], To: t.Curve.Readings.At[t.Curve.Len()-1] + 1}
		}
		in := t.rangeIn(s)
		r = r.with(in.Low).with(in.High)
	}
	return r
}

// leftWidth returns the room lane i needs left of the plot, in device pixels.
func (f *Figure) leftWidth(i int, s laneScale, scale float64) float64 {
	face := typeface{px: fontSize * scale}
	w := 24 * scale
	for _, t := range s.ticks {
		w = max(w, f.fonts.width(t.Label, face)+8*scale)
	}
	for _, r := range f.Lanes[i].Rows {
		w = max(w, min(f.fonts.width(r.Name, face), maxNames*scale)+10*scale)
	}
	return w
}

// rightColumns finds the widths of the label column and the second axis.
func (l *Layout) rightColumns(f *Figure) {
	face := l.font(false)
	names, second := 0.0, 0.0
	for i := range f.Lanes {
		lane := &f.Lanes[i]
		for _, t := range lane.Traces {
			names = max(names, f.fonts.width(t.Name, face)+(swatch+6)*l.scale)
		}
		if at := limitsAt(lane, l.View); len(at) == 2 { // the widest there can be of limits
			names = max(names, f.fonts.width(bandText(lane, at[0], at[1]), face))
		}
		for _, s := range limitLabels(lane, l.View) {
			names = max(names, f.fonts.width(s.text, face))
		}
		for _, t := range l.lanes[i].ticks2 {
			second = max(second, f.fonts.width(t.Label, face)+12*l.scale)
		}
	}
	l.names = int(math.Ceil(min(names, maxNames*l.scale) + 12*l.scale))
	l.second = int(math.Ceil(second))
}

// TimeToPixel returns the x of an instant; outside the plot for one outside the view.
func (l Layout) TimeToPixel(t int64) float64 {
	return float64(l.Plot.Min.X) + float64(t-l.View.From)*float64(l.Plot.Dx())/float64(l.View.To-l.View.From)
}

// PixelToTime returns the instant at x, ms UTC.
func (l Layout) PixelToTime(x float64) int64 {
	return l.View.From + int64(math.Round((x-float64(l.Plot.Min.X))*float64(l.View.To-l.View.From)/float64(l.Plot.Dx())))
}

// LaneAt returns the index of the lane whose data area holds y, or -1.
func (l Layout) LaneAt(y float64) int {
	for i, r := range l.Lanes {
		if y >= float64(r.Min.Y) && y < float64(r.Max.Y) {
			return i
		}
	}
	return -1
}

// y returns where a printed value lies in lane i, on its own scale or the shared one.
func (l *Layout) y(i int, v float64, own bool) float64 {
	s, r := l.lanes[i], l.Lanes[i]
	low, high := s.low, s.high
	if own && s.own {
		low, high = s.low2, s.high2
	}
	return float64(r.Max.Y) - (v-low)/(high-low)*float64(r.Dy())
}
