package ui

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

// threePages are three pages in a window of a width, with the numbers of those chosen so far.
func threePages(t *testing.T, width float32) (w fyne.Window, tabs *pageTabs, turned *[]int) {
	test.NewTempApp(t).Settings().SetTheme(&Theme{})
	tabs, turned = newPageTabs(), &[]int{}
	for _, title := range []string{"First", "The second", "Third"} {
		tabs.add(title, func() fyne.CanvasObject { return body(title + " page") })
	}
	tabs.turned = func() { *turned = append(*turned, tabs.chosen()) }
	w = test.NewTempWindow(t, tabs)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(width, 400))
	return w, tabs, turned
}

// A press on a title turns to its page, one on the chosen title or beside them all turns nothing, and the page lies below its title.
func TestATitleTurnsToItsPage(t *testing.T) {
	w, tabs, turned := threePages(t, 600)
	press := func(title int) {
		at, size := tabs.titles.cell(title)
		test.TapCanvas(w.Canvas(), tabs.titles.Position().Add(at).AddXY(size.Width/2, size.Height/2))
	}
	press(2)
	press(2)
	press(1)
	test.TapCanvas(w.Canvas(), fyne.NewPos(590, 10))
	if !slices.Equal(*turned, []int{2, 1}) {
		t.Errorf("turned to %v, want 2 and 1", *turned)
	}
	page, ok := find(tabs, func(p *prose) bool { return p.text == "The second page" })
	at, size := tabs.titles.cell(1)
	if top := fyne.CurrentApp().Driver().AbsolutePositionForObject(page).Y; !ok || top < at.Y+size.Height {
		t.Errorf("the page lies at %v, its title ends at %v", top, at.Y+size.Height)
	}
}

// The arrows turn the pages while the titles have the keys, and stop at either end.
func TestArrowsTurnThePages(t *testing.T) {
	w, tabs, turned := threePages(t, 600)
	w.Canvas().Focus(tabs.titles)
	for _, key := range []fyne.KeyName{fyne.KeyLeft, fyne.KeyRight, fyne.KeyRight, fyne.KeyRight, fyne.KeyLeft} {
		tabs.titles.TypedKey(&fyne.KeyEvent{Name: key})
	}
	if !slices.Equal(*turned, []int{1, 2, 1}) {
		t.Errorf("turned to %v, want 1, 2, 1", *turned)
	}
}

// Where the titles have no room in one line they go on below, each whole, and the page begins below the last.
func TestTitlesGoOnBelow(t *testing.T) {
	_, tabs, _ := threePages(t, 150)
	lines := map[float32]bool{}
	for i, title := range tabs.titles.titles {
		at, size := tabs.titles.cell(i)
		if lines[at.Y] = true; at.X < 0 || at.X+size.Width > tabs.titles.Size().Width {
			t.Errorf("%s lies from %v to %v of %v", title.Text, at.X, at.X+size.Width, tabs.titles.Size().Width)
		}
	}
	last, size := tabs.titles.cell(2)
	if len(lines) < 2 || tabs.page().Position().Y < last.Y+size.Height {
		t.Errorf("%d lines, the page begins at %v, the titles end at %v", len(lines), tabs.page().Position().Y, last.Y+size.Height)
	}
}

// The chosen title is underlined, the one under the pointer has a ground, and the ring is seen with the keys alone.
func TestTitlesShowWhatIsChosenPointedAtAndFocused(t *testing.T) {
	_, tabs, _ := threePages(t, 600)
	seen := func() (out []bool) {
		for _, o := range test.WidgetRenderer(tabs.titles).Objects()[:3] {
			out = append(out, o.Visible())
		}
		return out
	}
	if got := seen(); !slices.Equal(got, []bool{false, true, false}) {
		t.Errorf("ground, line, ring at first: %v", got)
	}
	at, _ := tabs.titles.cell(2)
	tabs.titles.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at.AddXY(1, 1)}})
	tabs.titles.FocusGained()
	if got := seen(); !slices.Equal(got, []bool{true, true, true}) {
		t.Errorf("ground, line, ring with pointer and keys: %v", got)
	}
	if ground := test.WidgetRenderer(tabs.titles).Objects()[0].(*canvas.Rectangle); ground.Position() != at {
		t.Errorf("the ground lies at %v, the title at %v", ground.Position(), at)
	}
	tabs.titles.MouseOut()
	tabs.titles.FocusLost()
	if got := seen(); !slices.Equal(got, []bool{false, true, false}) {
		t.Errorf("ground, line, ring at last: %v", got)
	}
}
