package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// titleRow is a row of titles of which one is chosen, by a press or, while it has the keys, by the arrows. Where it has no
// room for all they go on below.
type titleRow struct {
	widget.BaseWidget
	titles []*canvas.Text
	chosen int
	over   int // the title under the pointer, or noTitle
	aims   bool
	press  func(i int)
}

// The white space round a title, what lies between two, how thick the line under the chosen one is, and the number of none.
const aroundTitle, betweenTitles, underTitle, noTitle = 8, 4, 2, -1

func newTitleRow() *titleRow {
	r := &titleRow{over: noTitle}
	r.ExtendBaseWidget(r)
	return r
}

func (r *titleRow) add(title string) {
	text := canvas.NewText(title, nil)
	text.TextStyle.Bold = true
	r.titles = append(r.titles, text)
}

// place lays the titles from the left, in as many lines as a width takes, and tells how high they are together.
func (r *titleRow) place(width float32) (high float32) {
	x, y := float32(0), float32(0)
	for _, t := range r.titles {
		size := t.MinSize().AddWidthHeight(2*aroundTitle, 2*aroundTitle)
		if x > 0 && x+size.Width > width {
			x, y = 0, high
		}
		t.Move(fyne.NewPos(x+aroundTitle, y+aroundTitle))
		t.Resize(t.MinSize())
		x, high = x+size.Width+betweenTitles, y+size.Height
	}
	return high
}

// cell is the place of a title with the white space round it.
func (r *titleRow) cell(i int) (at fyne.Position, size fyne.Size) {
	t := r.titles[i]
	return t.Position().SubtractXY(aroundTitle, aroundTitle), t.Size().AddWidthHeight(2*aroundTitle, 2*aroundTitle)
}

// titleAt is the title at a point of the row, or noTitle.
func (r *titleRow) titleAt(p fyne.Position) int {
	for i := range r.titles {
		at, size := r.cell(i)
		if in := p.Subtract(at); in.X >= 0 && in.Y >= 0 && in.X < size.Width && in.Y < size.Height {
			return i
		}
	}
	return noTitle
}

// point shows which title the pointer is on.
func (r *titleRow) point(i int) {
	if i != r.over {
		r.over = i
		r.Refresh()
	}
}

// Tapped chooses the title under the pointer, as fyne.Tappable.
func (r *titleRow) Tapped(e *fyne.PointEvent) {
	if i := r.titleAt(e.Position); i != noTitle {
		r.press(i)
	}
}

// MouseIn shows the title under the pointer, as desktop.Hoverable.
func (r *titleRow) MouseIn(e *desktop.MouseEvent) { r.point(r.titleAt(e.Position)) }

// MouseMoved shows the title under the pointer, as desktop.Hoverable.
func (r *titleRow) MouseMoved(e *desktop.MouseEvent) { r.point(r.titleAt(e.Position)) }

// MouseOut ends it, as desktop.Hoverable.
func (r *titleRow) MouseOut() { r.point(noTitle) }

// FocusGained shows the focus ring, as fyne.Focusable.
func (r *titleRow) FocusGained() { r.aims = true; r.Refresh() }

// FocusLost hides it, as fyne.Focusable.
func (r *titleRow) FocusLost() { r.aims = false; r.Refresh() }

// TypedRune does nothing, as fyne.Focusable.
func (r *titleRow) TypedRune(rune) {}

// TypedKey chooses the title before or behind, as fyne.Focusable; other keys are the page's.
func (r *titleRow) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyLeft:
		r.press(r.chosen - 1)
	case fyne.KeyRight:
		r.press(r.chosen + 1)
	default:
		passOn(r, e)
	}
}

// CreateRenderer draws the titles, as fyne.Widget.
func (r *titleRow) CreateRenderer() fyne.WidgetRenderer {
	shown := &titleRenderer{r, canvas.NewRectangle(nil), canvas.NewRectangle(nil), canvas.NewRectangle(nil)}
	shown.ring.StrokeWidth = underTitle
	shown.paint()
	return shown
}

// titleRenderer draws a row of titles: what lies under the pointer, under the chosen one, and round it while the row has the keys.
type titleRenderer struct {
	row                 *titleRow
	ground, under, ring *canvas.Rectangle
}

// Layout places the titles, as fyne.WidgetRenderer.
func (r *titleRenderer) Layout(size fyne.Size) {
	r.row.place(size.Width)
	r.paint()
}

// MinSize is the height of the titles at the row's present width, as fyne.WidgetRenderer.
func (r *titleRenderer) MinSize() fyne.Size {
	widest := float32(0)
	for _, t := range r.row.titles {
		widest = max(widest, t.MinSize().Width+2*aroundTitle)
	}
	return fyne.NewSize(widest, r.row.place(r.row.Size().Width))
}

// Refresh takes up another choice or theme, as fyne.WidgetRenderer.
func (r *titleRenderer) Refresh() {
	r.Layout(r.row.Size())
	canvas.Refresh(r.row)
}

// paint gives everything its colour and its place.
func (r *titleRenderer) paint() {
	ink, variant := r.row.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	for i, t := range r.row.titles {
		t.TextSize, t.Color = ink.Size(theme.SizeNameText), ink.Color(theme.ColorNameForeground, variant)
		if i == r.row.chosen {
			t.Color = ink.Color(theme.ColorNamePrimary, variant)
		}
	}
	r.ground.FillColor = ink.Color(theme.ColorNameHover, variant)
	r.under.FillColor = ink.Color(theme.ColorNamePrimary, variant)
	r.ring.StrokeColor = r.under.FillColor
	for _, b := range []*canvas.Rectangle{r.ground, r.ring} {
		b.CornerRadius = ink.Size(theme.SizeNameSelectionRadius)
	}
	r.put(r.ground, r.row.over, r.row.over != noTitle)
	r.put(r.ring, r.row.chosen, r.row.aims)
	r.put(r.under, r.row.chosen, true)
	r.under.Move(r.under.Position().AddXY(0, r.under.Size().Height-underTitle))
	r.under.Resize(fyne.NewSize(r.under.Size().Width, underTitle))
}

// put lays a rectangle over a title, or hides it.
func (r *titleRenderer) put(b *canvas.Rectangle, title int, seen bool) {
	b.Hidden = !seen
	if seen && title < len(r.row.titles) {
		at, size := r.row.cell(title)
		b.Move(at)
		b.Resize(size)
	}
}

// Objects are the titles on their grounds, as fyne.WidgetRenderer.
func (r *titleRenderer) Objects() []fyne.CanvasObject {
	out := []fyne.CanvasObject{r.ground, r.under, r.ring}
	for _, t := range r.row.titles {
		out = append(out, t)
	}
	return out
}

// Destroy has nothing to give back, as fyne.WidgetRenderer.
func (r *titleRenderer) Destroy() {}
