package ui

import (
	"fmt"
	"image/color"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/sampledata"
)

// Every screen with no data, one logger's and all, light and dark, is walked over as it is laid out: words lie inside the
// window and what holds them, none lies on another, all stand out from their ground.

const emptyPlan = "[winter]\nname = \"Nothing yet\"\nzone = \"UTC\"\n[[barn]]\nname = \"North barn\"\n"

// winters are plans of three winters: nothing, one logger and all there can be.
func winters(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	write := func(name string, made []sampledata.File, err error) {
		if err != nil {
			t.Fatal(err)
		}
		dir := t.TempDir()
		for _, f := range made {
			if err := os.WriteFile(filepath.Join(dir, f.Name), f.Data, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		out[name] = filepath.Join(dir, "winter.toml")
	}
	rich, err := sampledata.Demo(t.Context(), func(int, int) {})
	write("rich", rich, err)
	thin, err := sampledata.Thin(t.Context(), func(int, int) {})
	write("thin", thin, err)
	write("empty", []sampledata.File{{Name: "winter.toml", Data: []byte(emptyPlan)}}, nil)
	return out
}

// comparedTabs are the tabs of two barns side by side.
const comparedTabs = 4

func TestScreens(t *testing.T) {
	if testing.Short() {
		t.Skip("it judges the demo winters")
	}
	for name, plan := range winters(t) {
		s := show(t)
		s.screen(t, "start, before "+name)
		s.take(t, plan)
		for _, v := range []Variant{Light, Dark} {
			s.setVariant(v)
			s.main.until(t, "the page is made anew", func() bool { return len(s.centre.Objects) > 0 && len(s.rail.inside.Objects) > 0 })
			for _, size := range []fyne.Size{{Width: 1280, Height: 800}, {Width: 1920, Height: 1080}} {
				s.win.Resize(size)
				for i, page := range pageNames {
					s.turnTo(t, i)
					s.screen(t, fmt.Sprintf("%s, %s, %s, %v", page, name, v, size.Width))
					s.explained(t, page+", "+name)
				}
				for s.compared = range comparedTabs {
					s.refresh()
					s.turnTo(t, sideBySidePage)
					s.screen(t, fmt.Sprintf("Side by side %d, %s, %s, %v", s.compared, name, v, size.Width))
				}
				s.compared = 0
				s.turnToFiles(t)
				s.screen(t, fmt.Sprintf("Files, %s, %s, %v", name, v, size.Width))
			}
		}
		s.turnTo(t, 0)
		for _, label := range s.sheets() {
			s.choose(t, label)
			s.screen(t, label+", "+name)
			s.closeSheets()
		}
	}
}

// explained says of every figure of a page that it has a line that explains it.
func (s *shown) explained(t *testing.T, page string) {
	t.Helper()
	for _, m := range s.meanings() {
		if word, help, ok := strings.Cut(m, ": "); !ok || word == "" || len(help) < 10 {
			t.Errorf("%s: %q explains nothing", page, m)
		}
	}
}

// turnTo turns to a page and waits until it is made.
func (s *shown) turnTo(t *testing.T, page int) {
	t.Helper()
	s.showPage(page)
	s.main.until(t, "the page is made", func() bool {
		return s.tabs != nil && s.tabs.chosen() == page && !s.barnViews.making && !s.besideViews.making
	})
	s.settled(t)
}

// turnToFiles turns to the files and waits until the one shown is made.
func (s *shown) turnToFiles(t *testing.T) {
	t.Helper()
	s.showFiles()
	s.settled(t)
	s.main.until(t, "the file is made", func() bool { return !s.fileViews.making })
}

// sheets are the menu's items that open something to be read or filled in.
func (s *shown) sheets() (out []string) {
	for _, m := range s.win.MainMenu().Items {
		for _, i := range m.Items {
			label, more, _ := strings.Cut(i.Label, "…")
			if opens := more == "" && strings.HasSuffix(i.Label, "…") || strings.HasPrefix(more, " "); opens && !i.Disabled && !slices.Contains([]string{"Open winter or plan", "Take barns over", "Give back the original files"}, label) {
				out = append(out, label+"…")
			}
		}
	}
	return append(out, "Keys and cautions", "About Thawbook")
}

// word is a text on the screen: what it says, where it lies, what of that can be seen, and on what ground.
type word struct {
	*canvas.Text
	at, sight box
	ground    color.Color
	field     bool // in a field, which moves along under what is typed
}

// box is a part of the window, as its corners.
type box struct{ x0, y0, x1, y1 float32 }

func (b box) and(o box) box {
	return box{max(b.x0, o.x0), max(b.y0, o.y0), min(b.x1, o.x1), min(b.y1, o.y1)}
}

// empty says that less than a pixel is left.
func (b box) empty() bool { return b.x1-b.x0 < 1 || b.y1-b.y0 < 1 }

func boxOf(at fyne.Position, size fyne.Size) box {
	return box{at.X, at.Y, at.X + size.Width, at.Y + size.Height}
}

// painted is a filled rectangle, in the order it is painted.
type painted struct {
	box
	fill color.Color
}

// eye walks over what is painted.
type eye struct {
	paper color.Color
	fills []painted
	words []word
	plots []*canvas.Raster
	field bool
}

func (e *eye) look(o fyne.CanvasObject, at fyne.Position, clip box) {
	if !o.Visible() {
		return
	}
	at = at.Add(o.Position())
	here := boxOf(at, o.Size())
	switch w := o.(type) {
	case *canvas.Rectangle:
		e.fills = append(e.fills, painted{here.and(clip), w.FillColor})
	case *canvas.Text:
		e.read(w, at, clip)
	case *canvas.Raster:
		if !here.and(clip).empty() {
			e.plots = append(e.plots, w)
		}
	case *fyne.Container:
		for _, c := range w.Objects {
			e.look(c, at, clip)
		}
	case *container.Scroll:
		before := e.field
		e.field = e.field || w.Direction == container.ScrollHorizontalOnly || w.Direction == container.ScrollNone
		e.look(w.Content, at, clip.and(here))
		e.field = before
	case fyne.Widget:
		if _, list := w.(*widget.List); list {
			clip = clip.and(here)
		}
		for _, c := range test.WidgetRenderer(w).Objects() {
			e.look(c, at, clip)
		}
	}
}

// read takes a text in, where any of it can be seen.
func (e *eye) read(w *canvas.Text, at fyne.Position, clip box) {
	size := w.MinSize()
	switch w.Alignment {
	case fyne.TextAlignTrailing:
		at.X += w.Size().Width - size.Width
	case fyne.TextAlignCenter:
		at.X += (w.Size().Width - size.Width) / 2
	}
	at.Y += (w.Size().Height - size.Height) / 2
	all := boxOf(at, size)
	if w.Text == "" || all.and(clip).empty() {
		return
	}
	e.words = append(e.words, word{w, all, all.and(clip), e.groundAt((all.x0+all.x1)/2, (all.y0+all.y1)/2), e.field})
}

// groundAt is what is painted so far at a point.
func (e *eye) groundAt(x, y float32) color.Color {
	ground := e.paper
	for _, f := range e.fills {
		if x >= f.x0 && x < f.x1 && y >= f.y0 && y < f.y1 && f.fill != nil {
			ground = over(f.fill, ground)
		}
	}
	return ground
}

// over is a colour laid on another.
func over(top, below color.Color) color.Color {
	r, g, b, a := top.RGBA()
	rb, gb, bb, _ := below.RGBA()
	mix := func(t, u uint32) uint16 { return uint16(t + u*(0xFFFF-a)/0xFFFF) }
	return color.RGBA64{mix(r, rb), mix(g, gb), mix(b, bb), 0xFFFF}
}

// screen checks what the window shows.
func (s *shown) screen(t *testing.T, name string) {
	t.Helper()
	size := s.win.Canvas().Size()
	look := func(o fyne.CanvasObject, what string) {
		e := &eye{paper: s.theme.Color(theme.ColorNameBackground, theme.VariantLight)}
		e.look(o, fyne.NewPos(0, 0), boxOf(fyne.NewPos(0, 0), size))
		if len(e.words) == 0 {
			t.Errorf("%s%s: nothing to read", name, what)
		}
		for i, w := range e.words {
			if problem := e.problemOf(i, w, size); problem != "" {
				t.Errorf("%s%s: %q %s", name, what, w.Text.Text, problem)
			}
		}
		for i, plot := range e.plots {
			if inks := inksOf(plot); inks < 2 {
				t.Errorf("%s%s: plot %d is blank: %d colour", name, what, i+1, inks)
			}
		}
	}
	if over := s.win.Canvas().Overlays().Top(); over != nil {
		look(over, ", over it")
		return
	}
	if least := s.win.Content().MinSize(); least.Width > size.Width || least.Height > size.Height {
		t.Errorf("%s: it takes %v, the window has %v", name, least, size)
	}
	look(s.win.Content(), "")
}

// inksOf is how many colours a plot has; it is counted no further than matters.
func inksOf(plot *canvas.Raster) int {
	im, seen := plot.Generator(int(plot.Size().Width), int(plot.Size().Height)), map[color.Color]bool{}
	for y := im.Bounds().Min.Y; y < im.Bounds().Max.Y; y += 3 {
		for x := im.Bounds().Min.X; x < im.Bounds().Max.X && len(seen) < 10; x++ {
			seen[im.At(x, y)] = true
		}
	}
	return len(seen)
}

// problemOf is what is wrong with a word; empty for nothing. 4.5:1 is WCAG 2.2, criterion 1.4.3.
func (e *eye) problemOf(i int, w word, window fyne.Size) string {
	if w.field {
		return ""
	}
	if w.at.x0 < -1 || w.at.x1 > window.Width+1 {
		return fmt.Sprintf("reaches out of the window, from %v to %v of %v", w.at.x0, w.at.x1, window.Width)
	}
	if w.sight.x0 > w.at.x0+1 || w.sight.x1 < w.at.x1-1 {
		return fmt.Sprintf("is cut: from %v to %v of %v to %v can be seen", w.sight.x0, w.sight.x1, w.at.x0, w.at.x1)
	}
	if c := contrast(w.Color, w.ground); c < 4.5 {
		return fmt.Sprintf("stands out from its ground by %.2f:1", c)
	}
	for _, o := range e.words[:i] {
		if both := w.sight.and(o.sight); both.x1-both.x0 > 2 && both.y1-both.y0 > 4 {
			return fmt.Sprintf("lies on %q at %.0f, %.0f", o.Text.Text, both.x0, both.y0)
		}
	}
	return ""
}

// What the checks look for they see: a text that is cut, one that lies on another, one of too little contrast.
func TestTheEyeSees(t *testing.T) {
	app := test.NewTempApp(t)
	app.Settings().SetTheme(Theme{Variant: Light})
	text := func(s string, grey uint32, x, y float32) *canvas.Text {
		c := canvas.NewText(s, rgb(grey))
		c.Move(fyne.NewPos(x, y))
		c.Resize(c.MinSize())
		return c
	}
	for want, objects := range map[string][]fyne.CanvasObject{
		"":                    {text("dry", 0, 10, 10), text("damp", 0, 10, 60)},
		"lies on":             {text("dry", 0, 10, 10), text("damp", 0, 14, 12)},
		"out of the window":   {text("a word too far", 0, 280, 10)},
		"stands out from its": {text("faint", 0x999999, 10, 10)},
	} {
		e := &eye{paper: rgb(0xFFFFFF)}
		e.look(container.NewWithoutLayout(objects...), fyne.NewPos(0, 0), box{0, 0, 400, 200})
		last := len(e.words) - 1
		if got := e.problemOf(last, e.words[last], fyne.NewSize(300, 200)); want == "" && got != "" || !strings.Contains(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if inks := inksOf(canvas.NewRasterWithPixels(func(int, int, int, int) color.Color { return rgb(0xFFFFFF) })); inks > 1 {
		t.Errorf("a blank plot has %d colours", inks)
	}
}
