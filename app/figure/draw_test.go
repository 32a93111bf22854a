package figure

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"testing"

	"thawbook/analysis/series"
)

// ragged is a random curve with uneven steps, gaps and a break.
func ragged(n int, seed uint64) series.Curve {
	g := rand.New(rand.NewPCG(seed, 3))
	var r series.Readings
	at := int64(1_700_000_000_000)
	for i := 0; i < n; i++ {
		at += 60_000 + g.Int64N(120_000)
		if g.IntN(40) == 0 {
			at += series.HourMS * (1 + g.Int64N(5))
		}
		r.At, r.Val = append(r.At, at), append(r.Val, 5+3*g.NormFloat64())
	}
	return series.Curve{Readings: r, MaxStepMS: 30 * minuteMS, Breaks: []int64{r.At[n/2]}}
}

// Against the plain definition: a column covers the readings inside it and the line at its two edges.
func TestColumnsCoverTheLine(t *testing.T) {
	c := ragged(6000, 5)
	f := &Figure{Theme: Light(), Lanes: []Lane{{Range: &Range{0, 10}, Traces: []Trace{{Curve: c}}}}}
	for _, v := range []series.Span{f.Extent(), {From: c.Readings.At[100], To: c.Readings.At[900] + 7}} {
		f.View = v
		l := f.Layout(700, 400, 1)
		px, _ := f.columns(nil, nil, &l, 0, &f.Lanes[0].Traces[0])
		if len(px) != l.Plot.Dx() {
			t.Fatalf("%d columns for %d pixels", len(px), l.Plot.Dx())
		}
		for i, p := range px {
			want := bruteColumn(c, v, i, len(px))
			if p.known != want.known() {
				t.Fatalf("column %d known %v, want %v", i, p.known, want.known())
			}
			if !p.known {
				continue
			}
			top, bottom := l.y(0, want.High, false), l.y(0, want.Low, false)
			if math.Abs(p.top-top) > 1e-6 || math.Abs(p.bottom-bottom) > 1e-6 {
				t.Fatalf("column %d covers %v to %v, want %v to %v", i, p.top, p.bottom, top, bottom)
			}
		}
	}
}

func bruteColumn(c series.Curve, v series.Span, i, n int) Range {
	r := noRange
	left := float64(v.From) + float64(v.To-v.From)*float64(i)/float64(n)
	right := float64(v.From) + float64(v.To-v.From)*float64(i+1)/float64(n)
	for k, at := range c.Readings.At {
		if t := float64(at); t >= left && t < right {
			r = r.with(c.Val[k])
		}
		if !c.Joined(k) {
			continue
		}
		t0, t1 := float64(c.Readings.At[k-1]), float64(at)
		for _, e := range []float64{left, right} {
			// Where the line leaves a column it is in it, even if only at the edge; a piece that begins
			// or ends at the edge belongs to the column that holds its reading.
			if e > t0 && e < t1 || e == t1 && e == right && t0 < right || e == t0 && e == left {
				r = r.with(c.Val[k-1] + (c.Val[k]-c.Val[k-1])*(e-t0)/(t1-t0))
			}
		}
	}
	return r
}

var red = color.NRGBA{0xC0, 0, 0, 0xFF}

// reddish counts the pixels of a rectangle that carry the colour of the line.
func reddish(im *image.RGBA, r image.Rectangle) int {
	n := 0
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			if p := im.RGBAAt(x, y); int(p.R)-int(p.G) > 40 {
				n++
			}
		}
	}
	return n
}

// gapped is a level line with a gap of a third in its middle, read every step ms.
func gapped(step int64) *Figure {
	var r series.Readings
	for at := int64(0); at <= 30*series.HourMS; at += step {
		if at <= 10*series.HourMS || at >= 20*series.HourMS {
			r.At, r.Val = append(r.At, at), append(r.Val, 5+float64((at/step)%2))
		}
	}
	return &Figure{Theme: Light(), View: series.Span{From: 0, To: 30 * series.HourMS},
		Lanes: []Lane{{Range: &Range{0, 10}, Bands: []Band{{Low: 2, High: 4}}, Traces: []Trace{{Curve: series.Curve{Readings: r, MaxStepMS: 2 * step}, Color: red}}}}}
}

func TestNothingIsDrawnInAGap(t *testing.T) {
	for _, step := range []int64{20 * 1000, 15 * minuteMS} { // dense columns, then the line itself
		f := gapped(step)
		im := image.NewRGBA(image.Rect(0, 0, 900, 300))
		l := f.Draw(im, 1)
		x := func(hour float64) int { return int(l.TimeToPixel(int64(hour * series.HourMS))) }
		r := l.Lanes[0]
		if n := reddish(im, image.Rect(x(10)+3, r.Min.Y, x(20)-2, r.Max.Y)); n != 0 {
			t.Errorf("step %d ms: %d pixels of line in the gap", step, n)
		}
		for _, part := range [][2]float64{{0, 10}, {20, 30}} {
			for px := x(part[0]) + 2; px < x(part[1])-2; px++ {
				if reddish(im, image.Rect(px, r.Min.Y, px+1, r.Max.Y)) == 0 {
					t.Fatalf("step %d ms: no line at pixel %d", step, px)
				}
			}
		}
	}
}

func TestBandIsTinted(t *testing.T) {
	f := gapped(15 * minuteMS)
	im := image.NewRGBA(image.Rect(0, 0, 900, 300))
	l := f.Draw(im, 1)
	x := int(l.TimeToPixel(15*series.HourMS)) + 4 // in the gap, off the grid
	at := func(v float64) color.Color { return im.At(x, int(l.y(0, v, false))) }
	for v, want := range map[float64]color.NRGBA{3: f.Theme.Tint, 9: f.Theme.Surface, 1: f.Theme.Surface} {
		if got := color.NRGBAModel.Convert(at(v)); got != want {
			t.Errorf("at %v the page is %v, want %v", v, got, want)
		}
	}
}

// shades counts the different colours of a rectangle and how much of it has the first one's ground.
func inked(im *image.RGBA, r image.Rectangle, ground color.NRGBA) float64 {
	n := 0
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			if color.NRGBAModel.Convert(im.At(x, y)) != ground {
				n++
			}
		}
	}
	return float64(n) / float64(r.Dx()*r.Dy())
}

func TestBarsTellTheirEvidence(t *testing.T) {
	hours := func(a, b int64) []series.Span { return []series.Span{{From: a * series.HourMS, To: b * series.HourMS}} }
	f := &Figure{Theme: Light(), View: series.Span{From: 0, To: 30 * series.HourMS}, Lanes: []Lane{{Kind: Bars, Rows: []BarRow{
		{Name: "a", Tracks: []Track{{Style: Ran, On: hours(1, 9), Unknown: hours(10, 19)}}},
		{Name: "b", Tracks: []Track{{Style: Called, On: hours(1, 9)}}},
	}}}}
	im := image.NewRGBA(image.Rect(0, 0, 900, 200))
	l := f.Draw(im, 1)
	row := func(i int) (top, bottom int) {
		step := (l.Lanes[0].Dy()) / 2
		mid := l.Lanes[0].Min.Y + i*step + step/2
		return mid - 3, mid + 3
	}
	cell := func(i int, a, b int64) image.Rectangle {
		top, bottom := row(i)
		return image.Rect(int(l.TimeToPixel(a*series.HourMS))+4, top, int(l.TimeToPixel(b*series.HourMS))-4, bottom)
	}
	bar := f.Theme.Bar
	if k := inked(im, cell(0, 1, 9), bar); k > 0 {
		t.Errorf("%v of what ran is not solid", k)
	}
	if k := inked(im, cell(0, 10, 19), f.Theme.Surface); k < 0.2 || k > 0.9 {
		t.Errorf("%v of the unknown is hatched, want some and not all", k)
	}
	if k := inked(im, cell(1, 1, 9), bar); k != 1 {
		t.Errorf("what was called for is filled")
	}
	if k := inked(im, cell(0, 20, 29), f.Theme.Surface); k > 0.5 {
		t.Errorf("%v of the off time is inked", k)
	}
}

// Coverage against counting minutes.
func TestCoverageOfShortRuns(t *testing.T) {
	view := series.Span{From: 0, To: 100 * minuteMS}
	var on []series.Span
	for m := int64(3); m < 97; m += 7 {
		on = append(on, series.Span{From: m * minuteMS, To: (m + 2) * minuteMS})
	}
	got := coverage(nil, 10, view, on)
	for i := range got {
		want := 0.0
		for m := int64(i) * 10; m < int64(i+1)*10; m++ {
			if covers(on, m*minuteMS) {
				want += 0.1
			}
		}
		if math.Abs(got[i]-want) > 1e-9 {
			t.Errorf("column %d: %v, want %v", i, got[i], want)
		}
	}
}

func TestOutsideIsGrey(t *testing.T) {
	f := gapped(15 * minuteMS)
	f.Shades = []Shade{{Span: series.Span{From: 12 * series.HourMS, To: 14 * series.HourMS}, Outside: true}}
	im := image.NewRGBA(image.Rect(0, 0, 900, 300))
	l := f.Draw(im, 1)
	y := int(l.y(0, 9, false))
	in, out := im.RGBAAt(int(l.TimeToPixel(13*series.HourMS))+3, y), im.RGBAAt(int(l.TimeToPixel(15*series.HourMS))+3, y)
	if in == out {
		t.Errorf("what is not judged looks like the rest: %v", in)
	}
}

func TestImageIsUsedAgain(t *testing.T) {
	f := sampleFigure(Dark(), tenMinutes)
	im := image.NewRGBA(image.Rect(0, 0, 1000, 600))
	f.Draw(im, 1)
	first := append([]uint8(nil), im.Pix...)
	f.View.From += 40 * dayMS
	f.Draw(im, 1)
	f.View.From -= 40 * dayMS
	f.Draw(im, 1)
	for i := range first {
		if first[i] != im.Pix[i] {
			t.Fatalf("pixel byte %d differs after coming back", i)
		}
	}
	if n := testing.AllocsPerRun(3, func() { f.Draw(im, 1) }); n > 4000 {
		t.Errorf("%v allocations a frame", n)
	}
}

// The room's firm line lies over the loggers' thin ones, those over the weather, wherever they stand in the list.
func TestFirmLinesLieOnTop(t *testing.T) {
	lane := Lane{Traces: []Trace{{Name: "outdoor", Muted: true, OwnScale: true}, {Name: "east", Muted: true}, {Name: "room"}, {Name: "west", Muted: true}}}
	want := []string{"room", "east", "west", "outdoor"}
	for i, j := range lane.frontToBack(nil) {
		if lane.Traces[j].Name != want[i] {
			t.Errorf("place %d from the front is %s, want %s", i, lane.Traces[j].Name, want[i])
		}
	}
}

// A swing of two pixels' period has its middle halfway; a level line, a slope and the ends of a gap stay
// where they are.
func TestMiddleOfASwing(t *testing.T) {
	col := func(top, bottom float64, joined bool) pixelColumn { return pixelColumn{top, bottom, true, joined} }
	px := []pixelColumn{col(0, 12, false), col(8, 20, true), col(0, 12, true), col(8, 20, true), {},
		col(7, 7, false), col(7, 7, true), {}, col(0, 2, false), col(2, 4, true), col(4, 6, true)}
	want := []float64{8, 10, 10, 12, 0, 7, 7, 0, 1.5, 3, 4.5}
	last := 0.0
	for k, m := range middles(nil, px) {
		low, high := min(want[k], last), max(want[k], last)
		if !m.joined {
			low, high = want[k], want[k]
		}
		if m.known != px[k].known || m.known && (m.top != low || m.bottom != high) {
			t.Errorf("column %d: %+v, want %v to %v", k, m, low, high)
		}
		last = want[k]
	}
}

func TestEmptyFigures(t *testing.T) {
	im := image.NewRGBA(image.Rect(0, 0, 300, 200))
	for _, f := range []*Figure{{Theme: Light()}, {Theme: Light(), Lanes: []Lane{{Title: "nothing"}}},
		{Theme: Light(), Lanes: []Lane{{Traces: []Trace{{Name: "empty"}}, Bands: []Band{{Low: 2, High: 6}}}, {Kind: Bars}}}} {
		f.Draw(im, 1)
		if got := color.NRGBAModel.Convert(im.At(2, 2)); got != f.Theme.Paper {
			t.Errorf("an empty figure has no paper: %v", got)
		}
	}
}

// Twenty loggers as the Timeline draws them, temperature and humidity, one firm and the others thin under a veil. The aim is
// 11 ms for this.
func BenchmarkDraw(b *testing.B) {
	f := &Figure{Theme: Light(), Lanes: []Lane{
		{Title: "Temperature", Unit: "°C", Height: 3, Bands: []Band{{Low: 2, High: 6}}, Veil: true},
		{Title: "Relative humidity", Unit: "%", Height: 2, Bands: []Band{{Low: 2, High: 6}}, Veil: true}}}
	g := rand.New(rand.NewPCG(1, 2))
	for k := range 40 {
		var r series.Readings
		level := 3 + 3*g.Float64()
		for i := int64(0); i < 216_000; i++ {
			r.At = append(r.At, sampleStart+i*minuteMS)
			r.Val = append(r.Val, level+math.Sin(float64(i)/229)+0.2*g.NormFloat64())
		}
		lane, logger := &f.Lanes[k/20], k%20
		lane.Traces = append(lane.Traces, NewTrace("logger", series.Curve{Readings: r, MaxStepMS: 2 * minuteMS}, f.Theme.Traces[logger%len(f.Theme.Traces)]))
		lane.Traces[logger].Muted = logger > 0
	}
	im := image.NewRGBA(image.Rect(0, 0, 1600, 900))
	for b.Loop() {
		f.Draw(im, 1)
	}
}

// The weather on the loggers' own scale is no part of the room's spread: between a room at 6 and 8 °C and weather at
// 1 °C the page stays untinted, between the loggers it is tinted.
func TestTheWeatherWidensNoVeil(t *testing.T) {
	level := func(v float64) series.Curve {
		return series.Curve{Readings: series.Readings{At: []int64{0, 30 * series.HourMS}, Val: []float64{v, v}}, MaxStepMS: 30 * series.HourMS}
	}
	f := &Figure{Theme: Light(), View: series.Span{From: 0, To: 30 * series.HourMS}, Lanes: []Lane{{Range: &Range{0, 10}, Veil: true, Traces: []Trace{
		NewTrace("near", level(6), color.NRGBA{}), NewTrace("far", level(8), color.NRGBA{}), NewTrace("outdoors", level(1), color.NRGBA{})}}}}
	f.Lanes[0].Traces[2].Outside = true
	im := image.NewRGBA(image.Rect(0, 0, 900, 300))
	l := f.Draw(im, 1)
	x := int(l.TimeToPixel(15*series.HourMS)) + 4
	for v, tinted := range map[float64]bool{7: true, 3.5: false} {
		got := color.NRGBAModel.Convert(im.At(x, int(l.y(0, v, false))))
		if (got != f.Theme.Surface) != tinted {
			t.Errorf("at %v °C the page is %v, tinted %v", v, got, tinted)
		}
	}
}

// Of a crowd only the spread is seen: of a hundred loggers without lines of their own the lowest is at 2 and the highest
// at 8 °C, whichever they are, and from the one to the other the page is tinted.
func TestACrowdIsSeenAsItsSpread(t *testing.T) {
	lane := Lane{Range: &Range{0, 10}, Veil: true}
	for i := range 100 {
		v := map[int]float64{17: 8, 68: 2}[i]
		if v == 0 {
			v = 4 + float64(i)/100
		}
		tr := NewTrace("logger", series.Curve{Readings: series.Readings{At: []int64{0, 30 * series.HourMS}, Val: []float64{v, v}}, MaxStepMS: 30 * series.HourMS}, color.NRGBA{})
		tr.Muted, tr.Veiled = true, true
		lane.Traces = append(lane.Traces, tr)
	}
	f := &Figure{Theme: Light(), View: series.Span{From: 0, To: 30 * series.HourMS}, Lanes: []Lane{lane}}
	im := image.NewRGBA(image.Rect(0, 0, 900, 300))
	l := f.Draw(im, 1)
	x := int(l.TimeToPixel(15*series.HourMS)) + 4
	for v, tinted := range map[float64]bool{1.5: false, 2.5: true, 7.5: true, 8.5: false} {
		if got := color.NRGBAModel.Convert(im.At(x, int(l.y(0, v, false)))); (got != f.Theme.Surface) != tinted {
			t.Errorf("at %v °C the page is %v, tinted %v", v, got, tinted)
		}
	}
}

// A note is a rule over all lanes that takes no room from names: the phase between two marks is named with or without it.
func TestANoteTakesNoName(t *testing.T) {
	week := series.Span{From: 0, To: 7 * 24 * series.HourMS}
	draw := func(marks ...Mark) (Layout, *image.RGBA) {
		f := &Figure{Theme: Light(), View: week, Lanes: []Lane{{Range: &Range{0, 10}}}, Shades: []Shade{{Span: week, Name: "deep winter"}}, Marks: marks}
		im := image.NewRGBA(image.Rect(0, 0, 600, 300))
		return f.Draw(im, 1), im
	}
	at := week.To / 3
	l, with := draw(Mark{At: at, Name: "said at length, so that its name would reach over the phase's", Note: true})
	_, without := draw()
	x, strip := int(math.Round(l.TimeToPixel(at))), l.Plot.Min.Y
	if with.At(x, strip+40) == without.At(x, strip+40) {
		t.Error("the note has no rule")
	}
	for px := l.Plot.Min.X; px < l.Plot.Max.X; px++ {
		for y := 0; y < strip; y++ {
			if px >= x && px <= x+8 {
				continue
			}
			if with.At(px, y) != without.At(px, y) {
				t.Fatalf("the strip is other at %d, %d", px, y)
			}
		}
	}
}
