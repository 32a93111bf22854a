package figure

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"testing"

	"thawbook/analysis/series"
)

// notepad is a sheet that keeps the boxes of the strings set on it.
type notepad struct {
	faces *faces
	texts []noted
}

type noted struct {
	text                     string
	left, right, top, bottom float64
}

func (n *notepad) fill(image.Rectangle, color.NRGBA)                       {}
func (n *notepad) hatch(image.Rectangle, float64, color.NRGBA)             {}
func (n *notepad) columns(image.Rectangle, []layer)                        {}
func (n *notepad) polyline(image.Rectangle, []point, float64, color.NRGBA) {}
func (n *notepad) text(s string, x, y float64, f typeface, c color.NRGBA) {
	// Capitals and digits of Liberation Sans are 0.69 em high, descenders 0.21 em (its own metrics).
	n.texts = append(n.texts, noted{s, x, x + n.faces.width(s, f), y - 0.69*f.px, y + 0.21*f.px})
}

func (a noted) overlaps(b noted) bool {
	return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

// checkPage reports strings that meet each other or the edge of the page.
func checkPage(t *testing.T, what string, n *notepad, w, h int) {
	t.Helper()
	for i, a := range n.texts {
		if a.left < 0 || a.top < 0 || a.right > float64(w) || a.bottom > float64(h) {
			t.Errorf("%s: %q leaves the page: %+v", what, a.text, a)
		}
		for _, b := range n.texts[:i] {
			if a.overlaps(b) {
				t.Errorf("%s: %q meets %q", what, a.text, b.text)
			}
		}
	}
}

func TestNoTextMeetsAnother(t *testing.T) {
	f := sampleFigure(Light(), tenMinutes)
	whole := f.View
	for w := 700; w <= 1900; w += 60 {
		for _, days := range []float64{150, 40, 9, 2, 0.3} {
			for _, scale := range []float64{1, 1.5} {
				from := whole.From + int64(0.37*float64(whole.To-whole.From))
				f.View = series.Span{From: from, To: from + int64(days*dayMS)}
				if days == 150 {
					f.View = whole
				}
				pw, ph := int(float64(w)*scale), int(640*scale)
				l := f.Layout(pw, ph, scale)
				n := &notepad{faces: &f.fonts}
				f.draw(n, &l, image.Rect(0, 0, pw, ph))
				checkPage(t, fmt.Sprintf("%d px × %v, %v days", w, scale, days), n, pw, ph)
			}
		}
	}
}

func TestNamesOfManyTraces(t *testing.T) {
	f := sampleFigure(Light(), tenMinutes)
	lane := &f.Lanes[0]
	for i := range 24 {
		tr := lane.Traces[1]
		tr.Name = fmt.Sprintf("logger %d with a name that is far too long", i)
		lane.Traces = append(lane.Traces, tr)
	}
	l := f.Layout(900, 560, 1)
	n := &notepad{faces: &f.fonts}
	f.draw(n, &l, image.Rect(0, 0, 900, 560))
	checkPage(t, "many loggers", n, 900, 560)
	more := 0
	for _, s := range n.texts {
		var k int
		if c, _ := fmt.Sscanf(s.text, "+\u2009%d more", &k); c == 1 {
			more = k
		}
	}
	named := 0
	for _, n := range f.labels(&l, 0, lane.byImportance(nil)) {
		if n.width > 0 {
			named++
		}
	}
	if more+named != len(lane.Traces) {
		t.Errorf("%d named and %d more, want %d together", named, more, len(lane.Traces))
	}
}

func TestTimeAndPixelsGoBackAndForth(t *testing.T) {
	f := sampleFigure(Light(), tenMinutes)
	l := f.Layout(1280, 800, 1)
	if x := l.TimeToPixel(f.View.From); x != float64(l.Plot.Min.X) {
		t.Errorf("the view begins at %v, the plot at %d", x, l.Plot.Min.X)
	}
	if x := l.TimeToPixel(f.View.To); math.Abs(x-float64(l.Plot.Max.X)) > 1e-9 {
		t.Errorf("the view ends at %v, the plot at %d", x, l.Plot.Max.X)
	}
	perPixel := (f.View.To - f.View.From) / int64(l.Plot.Dx())
	for _, at := range []int64{f.View.From, f.View.From + 12345678, f.View.To} {
		if back := l.PixelToTime(l.TimeToPixel(at)); back < at-perPixel/1000 || back > at+perPixel/1000 {
			t.Errorf("%d comes back as %d", at, back)
		}
	}
	for i, r := range l.Lanes {
		if got := l.LaneAt(float64(r.Min.Y+r.Max.Y) / 2); got != i {
			t.Errorf("lane %d is found as %d", i, got)
		}
	}
	if l.LaneAt(0) != -1 {
		t.Error("there is a lane at the very top")
	}
}

// The outdoor line goes by a scale of its own only where the common one would leave the room too little.
func TestOwnScale(t *testing.T) {
	f := sampleFigure(Light(), tenMinutes)
	if l := f.Layout(1280, 800, 1); !l.lanes[0].own || l.lanes[0].low < 0 || l.lanes[0].low2 > -15 {
		t.Errorf("outdoor by the room's scale: %+v", l.lanes[0])
	}
	mild := f.Lanes[0].Traces[3].Curve.Map(func(v float64) float64 { return 4 + v/20 })
	f.Lanes[0].Traces[3] = Trace{Name: "outdoor", Curve: mild, OwnScale: true}
	if l := f.Layout(1280, 800, 1); l.lanes[0].own || l.second != 0 {
		t.Errorf("a mild outdoors has a scale of its own: %+v", l.lanes[0])
	}
}

func TestShownUnits(t *testing.T) {
	f := sampleFigure(Light(), tenMinutes)
	before := f.Layout(1280, 800, 1)
	y := before.y(0, 6, false)
	f.Lanes[0].Unit, f.Lanes[0].Shown = "°F", func(v float64) float64 { return v*1.8 + 32 }
	l := f.Layout(1280, 800, 1)
	if got := limitLabels(&f.Lanes[0], f.View); got[0].text != "42.8\u2009°F" || got[1].text != "35.6\u2009°F" {
		t.Errorf("limits read %v", got)
	}
	if now := l.y(0, 42.8, false); math.Abs(now-y) > float64(l.Lanes[0].Dy())/5 {
		t.Errorf("6 °C lies at %v, 42.8 °F at %v", y, now)
	}
	t0 := f.View.From + 20*dayMS
	if c, r := f.Lanes[0].Traces[0].Curve, f.Read(t0)[0]; r.Known {
		if v, _ := c.At(t0); math.Abs(r.Value-(v*1.8+32)) > 1e-12 || r.Unit != "°F" {
			t.Errorf("%v °C reads %+v", v, r)
		}
	} else {
		t.Error("the room mean is not known on day 20")
	}
}

// On a low page bars stand closer, and what they give up the curves have; nothing reaches below the time axis.
func TestBarsMakeRoomForCurves(t *testing.T) {
	rows := []BarRow{{Name: "two", Tracks: make([]Track, 2)}, {Name: "one", Tracks: make([]Track, 1)}}
	f := &Figure{Lanes: []Lane{{Title: "Temperature", Height: 3}, {Title: "Humidity", Height: 2}, {Title: "Stages", Kind: Bars, Rows: rows}}}
	high, low := f.Layout(900, 500, 1), f.Layout(900, 270, 1)
	if roomy, tight := high.Lanes[2].Dy(), low.Lanes[2].Dy(); tight >= roomy || tight < 2*int(fontSize) {
		t.Errorf("bars take %d of a high page and %d of a low one", roomy, tight)
	}
	if curves, bars := low.Lanes[0].Dy()+low.Lanes[1].Dy(), low.Lanes[2]; curves < bars.Dy() || bars.Max.Y > 270-int(axisH) {
		t.Errorf("curves %d, bars %v", curves, bars)
	}
}

// A strip above the lanes is kept free for names alone: where nothing is named the lanes begin as if there were no shades.
func TestNoStripWithoutNames(t *testing.T) {
	top := func(shades ...Shade) int {
		f := sampleFigure(Light(), 6*series.HourMS)
		f.Marks, f.Shades = nil, shades
		return f.Layout(900, 600, 1).Plot.Min.Y
	}
	if bare, shaded, named := top(), top(Shade{Outside: true}), top(Shade{Name: "deep winter"}); shaded != bare || named <= bare {
		t.Errorf("lanes begin at %d, shaded at %d, named at %d", bare, shaded, named)
	}
}
