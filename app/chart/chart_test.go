package chart

import (
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"thawbook/analysis/series"
	"thawbook/app/figure"
)

const hour = series.HourMS

// waves is a figure of 100 days of hourly readings with one stage.
func waves() *figure.Figure {
	var r series.Readings
	for i := int64(0); i <= 2400; i++ {
		r.At, r.Val = append(r.At, i*hour), append(r.Val, 4+2*math.Sin(float64(i)/24))
	}
	c := series.Curve{Readings: r, MaxStepMS: 2 * hour}
	return &figure.Figure{Theme: figure.Light(), Lanes: []figure.Lane{
		{Title: "Air temperature", Unit: "°C", Traces: []figure.Trace{figure.NewTrace("room", c, color.NRGBA{})}},
		{Title: "Stages", Kind: figure.Bars, Rows: []figure.BarRow{{Name: "one", Tracks: []figure.Track{{On: []figure.Span{{From: 0, To: 1200 * hour}}}}}}},
	}}
}

// shown puts a chart of f in a window of 900 × 500 and has it drawn.
func shown(t *testing.T, f *figure.Figure) (*Chart, fyne.Window) {
	t.Helper()
	test.NewTempApp(t)
	c := New(f)
	w := test.NewTempWindow(t, c)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(900, 500))
	w.Canvas().Capture()
	return c, w
}

// at is where an instant lies on the chart.
func at(c *Chart, ms int64) fyne.Position {
	return fyne.NewPos(float32(c.layout.TimeToPixel(ms)), float32(c.layout.Lanes[0].Min.Y+20))
}

func pressAt(c *Chart, p fyne.Position, m fyne.KeyModifier) {
	c.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: p}, Button: desktop.MouseButtonPrimary, Modifier: m})
}

func drag(c *Chart, from, to fyne.Position, m fyne.KeyModifier) {
	pressAt(c, from, m)
	c.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: to}})
	c.MouseUp(&desktop.MouseEvent{})
	c.DragEnd()
}

func near(a, b, tolerance int64) bool { return a-b <= tolerance && b-a <= tolerance }

// pixelMS is how long a pixel is.
func pixelMS(c *Chart) int64 { return (c.View().To-c.View().From)/int64(c.layout.Plot.Dx()) + 1 }

func TestStartsWithTheWhole(t *testing.T) {
	c, _ := shown(t, waves())
	if whole := (figure.Span{From: 0, To: 2400 * hour}); c.View() != whole || c.Whole() != whole {
		t.Errorf("view %v of %v, want %v", c.View(), c.Whole(), whole)
	}
	if m := c.MinSize(); m.Width < 300 || m.Height < 150 || m.Height > 500 {
		t.Errorf("least size %v", m)
	}
}

// What lay under the pointer lies under it when it has moved.
func TestDragMovesTheView(t *testing.T) {
	c, _ := shown(t, waves())
	c.SetView(figure.Span{From: 800 * hour, To: 1200 * hour})
	calls := 0
	c.OnView = func(figure.Span) { calls++ }
	from, to := at(c, 1000*hour), at(c, 1100*hour)
	held := c.layout.PixelToTime(float64(from.X))
	drag(c, from, to, 0)
	if got := c.layout.PixelToTime(float64(to.X)); !near(got, held, pixelMS(c)) || calls != 1 {
		t.Errorf("the pointer held %d and now shows %d (%d calls)", held, got, calls)
	}
	if v := c.View(); v.To-v.From != 400*hour {
		t.Errorf("dragging changed the length to %d", v.To-v.From)
	}
}

func TestViewStaysInside(t *testing.T) {
	c, _ := shown(t, waves())
	c.SetView(figure.Span{From: 100 * hour, To: 200 * hour})
	drag(c, at(c, 110*hour), fyne.NewPos(5000, 100), 0)
	if v := c.View(); v != (figure.Span{From: 0, To: 100 * hour}) {
		t.Errorf("dragged past the beginning: %v", v)
	}
	for range 60 {
		c.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	}
	if v := c.View(); v.To > 2400*hour || v.To-v.From != 100*hour {
		t.Errorf("moved past the end: %v", v)
	}
	for range 100 {
		c.TypedRune('+')
	}
	if v := c.View(); v.To-v.From != shortestView {
		t.Errorf("zoomed in to %d ms, want %d", v.To-v.From, shortestView)
	}
	for range 100 {
		c.TypedRune('-')
	}
	if c.View() != c.Whole() {
		t.Errorf("zoomed out to %v", c.View())
	}
	c.SetView(figure.Span{From: -5000 * hour, To: 9000 * hour})
	if c.View() != c.Whole() {
		t.Errorf("set beyond the whole: %v", c.View())
	}
}

func TestWheelZoomsAtThePointer(t *testing.T) {
	c, _ := shown(t, waves())
	p := at(c, 700*hour)
	held := c.layout.PixelToTime(float64(p.X))
	for _, dy := range []float32{notch, notch, notch, -notch} {
		before := c.View()
		c.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: p}, Scrolled: fyne.NewDelta(0, dy)})
		if got := c.layout.PixelToTime(float64(p.X)); !near(got, held, pixelMS(c)) {
			t.Errorf("the pointer held %d and now shows %d", held, got)
		}
		if shorter := c.View().To-c.View().From < before.To-before.From; shorter != (dy > 0) {
			t.Errorf("turned by %v: from %v to %v", dy, before, c.View())
		}
	}
	before := c.View()
	c.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: p}, Scrolled: fyne.NewDelta(-notch, 0)})
	if v := c.View(); v.From <= before.From || v.To-v.From != before.To-before.From {
		t.Errorf("sideways: from %v to %v", before, v)
	}
}

func TestShiftDragMeasures(t *testing.T) {
	c, _ := shown(t, waves())
	var got []figure.Span
	c.OnMeasure = func(s figure.Span) { got = append(got, s) }
	view := c.View()
	drag(c, at(c, 900*hour), at(c, 600*hour), fyne.KeyModifierShift)
	if len(got) != 1 || !near(got[0].From, 600*hour, pixelMS(c)) || !near(got[0].To, 900*hour, pixelMS(c)) {
		t.Fatalf("measured %v, want once 600 h to 900 h", got)
	}
	if c.View() != view || c.selection.Hidden || c.Selected() != got[0] {
		t.Errorf("view %v, mark hidden %v", c.View(), c.selection.Hidden)
	}
	left := float64(c.selection.Position().X)
	if want := c.layout.TimeToPixel(got[0].From); math.Abs(left-want) > 1 {
		t.Errorf("the mark begins at %v, want %v", left, want)
	}
	c.SetView(figure.Span{From: 1000 * hour, To: 1500 * hour})
	if !c.selection.Hidden {
		t.Error("the mark is seen outside its time")
	}
	c.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if len(got) != 2 || got[1] != (figure.Span{}) || c.Selected() != (figure.Span{}) {
		t.Errorf("escape: %v", got)
	}
}

func TestClickDropsTheMark(t *testing.T) {
	c, _ := shown(t, waves())
	c.Select(figure.Span{From: 10 * hour, To: 20 * hour})
	pressAt(c, at(c, 500*hour), 0)
	c.MouseUp(&desktop.MouseEvent{})
	if c.Selected() != (figure.Span{}) || !c.selection.Hidden {
		t.Error("a click leaves the mark")
	}
}

// Pointing must not draw the plot again: it is counted where the figure is drawn.
func TestHoverDrawsNothing(t *testing.T) {
	c, w := shown(t, waves())
	var instants []int64
	var last []figure.Reading
	left := 0
	c.OnHover = func(ms int64, r []figure.Reading) { instants, last = append(instants, ms), r }
	c.OnLeave = func() { left++ }
	drawn := c.drawn
	if drawn == 0 {
		t.Fatal("the plot was never drawn")
	}
	for h := int64(100); h <= 2300; h += 100 {
		test.MoveMouse(w.Canvas(), at(c, h*hour))
		w.Canvas().Capture()
	}
	if c.drawn != drawn {
		t.Errorf("drawn %d times while pointing", c.drawn-drawn)
	}
	if len(instants) != 23 || !near(instants[4], 500*hour, pixelMS(c)) {
		t.Errorf("pointed at %v", instants)
	}
	if len(last) != 2 || !last[0].Known || last[0].Unit != "°C" || last[1].On {
		t.Errorf("at 2300 h: %+v", last)
	}
	if c.cursor.Hidden || math.Abs(float64(c.cursor.Position1.X)-float64(at(c, 2300*hour).X)) > 1 {
		t.Errorf("the cursor is at %v", c.cursor.Position1)
	}
	test.MoveMouse(w.Canvas(), fyne.NewPos(3, 300))
	if !c.cursor.Hidden || left != 1 {
		t.Errorf("left of the plot the cursor stays (%d)", left)
	}
	c.SetView(figure.Span{From: 0, To: 50 * hour})
	w.Canvas().Capture()
	if c.drawn != drawn+1 {
		t.Errorf("moving the view drew %d times, want once", c.drawn-drawn)
	}
}

func TestKeys(t *testing.T) {
	c, w := shown(t, waves())
	c.SetView(figure.Span{From: 1000 * hour, To: 1400 * hour})
	w.Canvas().Focus(c)
	if c.ring.Hidden {
		t.Error("the focus is not shown")
	}
	rows := []struct {
		key  fyne.KeyName
		want figure.Span
	}{
		{fyne.KeyRight, figure.Span{From: 1040 * hour, To: 1440 * hour}},
		{fyne.KeyLeft, figure.Span{From: 1000 * hour, To: 1400 * hour}},
		{fyne.KeyPageDown, figure.Span{From: 1360 * hour, To: 1760 * hour}},
		{fyne.KeyPageUp, figure.Span{From: 1000 * hour, To: 1400 * hour}},
		{fyne.KeyDown, figure.Span{From: 900 * hour, To: 1500 * hour}},
		{fyne.KeyUp, figure.Span{From: 1000 * hour, To: 1400 * hour}},
		{fyne.KeyHome, c.Whole()},
	}
	for _, r := range rows {
		c.TypedKey(&fyne.KeyEvent{Name: r.key})
		if c.View() != r.want {
			t.Errorf("%s: %v, want %v", r.key, c.View(), r.want)
		}
	}
	test.Type(c, "+")
	if v := c.View(); v != (figure.Span{From: 400 * hour, To: 2000 * hour}) {
		t.Errorf("+: %v", v)
	}
	w.Canvas().Unfocus()
	if !c.ring.Hidden {
		t.Error("the focus is shown after it went")
	}
}

func TestPressTakesTheFocus(t *testing.T) {
	c, w := shown(t, waves())
	pressAt(c, at(c, 500*hour), 0)
	if w.Canvas().Focused() != c {
		t.Error("a press on the plot does not focus it")
	}
}

func TestAnotherFigureKeepsTheView(t *testing.T) {
	c, w := shown(t, waves())
	v := figure.Span{From: 300 * hour, To: 500 * hour}
	c.SetView(v)
	c.SetFigure(waves())
	if c.View() != v {
		t.Errorf("view %v, want %v", c.View(), v)
	}
	c.SetFigure(nil)
	w.Canvas().Capture()
	c.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(300, 200)}})
	c.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, 25)})
	c.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
}

func TestWholeCanBeWider(t *testing.T) {
	c, _ := shown(t, waves())
	c.SetWhole(figure.Span{From: -100 * hour, To: 2500 * hour})
	c.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	if v := c.View(); v != (figure.Span{From: -100 * hour, To: 2500 * hour}) {
		t.Errorf("view %v", v)
	}
}

// On a dense screen the plot has more pixels, and time lies where the pointer is all the same.
func TestDenseScreen(t *testing.T) {
	c, w := shown(t, waves())
	w.Canvas().(interface{ SetScale(float32) }).SetScale(2)
	c.Refresh()
	w.Canvas().Capture()
	if c.im.Rect.Dx() < 1700 {
		t.Fatalf("%d pixels for 900 units at scale 2", c.im.Rect.Dx())
	}
	var got int64
	c.OnHover = func(ms int64, _ []figure.Reading) { got = ms }
	x := float32(c.layout.TimeToPixel(1200*hour) / 2)
	c.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, 100)}})
	if !near(got, 1200*hour, 2*pixelMS(c)) {
		t.Errorf("pointing at 1200 h reads %d h", got/hour)
	}
}
