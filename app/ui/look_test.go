package ui

import (
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"thawbook/app/chart"
	"thawbook/app/desk"
)

// contrast is the contrast ratio of W3C, Web Content Accessibility Guidelines 2.2.
func contrast(a, b color.Color) float64 {
	la, lb := luminance(a), luminance(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

func luminance(c color.Color) float64 {
	part := func(v uint32) float64 {
		s := float64(v) / 0xFFFF
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	r, g, b, _ := c.RGBA()
	return 0.2126*part(r) + 0.7152*part(g) + 0.0722*part(b)
}

// The guideline's own example: #777777 on white is 4.48:1, just short of 4.5:1.
func TestContrastFormula(t *testing.T) {
	if got := contrast(rgb(0x777777), rgb(0xFFFFFF)); math.Abs(got-4.48) > 0.005 {
		t.Errorf("%v", got)
	}
}

// 4.5:1 for text and 3:1 for marks: WCAG 2.2, criteria 1.4.3 and 1.4.11.
func TestContrast(t *testing.T) {
	for _, v := range []Variant{Light, Dark} {
		th := Theme{Variant: v}
		at := func(n fyne.ThemeColorName) color.Color { return th.Color(n, theme.VariantLight) }
		for _, ground := range []fyne.ThemeColorName{theme.ColorNameBackground, colorSurface} {
			for _, text := range []fyne.ThemeColorName{theme.ColorNameForeground, colorMuted, theme.ColorNamePrimary, theme.ColorNameHyperlink, theme.ColorNamePlaceHolder, theme.ColorNameDisabled} {
				if c := contrast(at(text), at(ground)); c < 4.5 {
					t.Errorf("%s: %s on %s is %.2f:1", v, text, ground, c)
				}
			}
			for _, m := range []fyne.ThemeColorName{colorGood, colorWatch, colorAct, colorBar, theme.ColorNameInputBorder} {
				if c := contrast(at(m), at(ground)); c < 3 {
					t.Errorf("%s: mark %s on %s is %.2f:1", v, m, ground, c)
				}
			}
		}
		if c := contrast(at(theme.ColorNameForegroundOnPrimary), at(theme.ColorNamePrimary)); c < 4.5 {
			t.Errorf("%s: text on the accent is %.2f:1", v, c)
		}
	}
}

func TestVariants(t *testing.T) {
	const unset = fyne.ThemeVariant(2) // neither dark nor light
	for _, c := range []struct {
		own    Variant
		system fyne.ThemeVariant
		dark   bool
	}{
		{Light, theme.VariantDark, false}, {Dark, theme.VariantLight, true},
		{System, theme.VariantDark, true}, {System, theme.VariantLight, false}, {System, unset, false},
	} {
		if got := (Theme{Variant: c.own}).IsDark(c.system); got != c.dark {
			t.Errorf("%s, system %v: dark %v", c.own, c.system, got)
		}
	}
}

func TestSizes(t *testing.T) {
	th := Theme{}
	for name, want := range map[fyne.ThemeSizeName]float32{theme.SizeNameText: 14, theme.SizeNameCaptionText: 12, sizeSentence: 19} {
		if got := th.Size(name); got != want {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
}

func TestEveryMarkHasItsOwnShape(t *testing.T) {
	seen := map[string]bool{}
	for _, m := range []desk.Mark{desk.MarkGood, desk.MarkWatch, desk.MarkAct, desk.MarkUnknown} {
		shape := markShapes[m]
		if shape == "" || seen[shape] || markIcon(m) == nil {
			t.Errorf("%s has no shape of its own", m)
		}
		seen[shape] = true
	}
	if markIcon(desk.MarkNone) != nil {
		t.Error("no mark has a picture")
	}
}

func TestProseKeepsANumberWithItsUnit(t *testing.T) {
	test.NewTempApp(t)
	p := body("It was 4\u2009°C warm")
	for _, l := range p.broken(1) {
		if l == "°C" || l == "4" {
			t.Errorf("broken into %q", p.broken(1))
		}
	}
	p.Resize(fyne.NewSize(60, 10))
	if len(p.lines) < 2 || p.MinSize().Height < 2*body("x").MinSize().Height {
		t.Errorf("%d lines, height %v", len(p.lines), p.MinSize().Height)
	}
	p.Resize(fyne.NewSize(600, 10))
	if len(p.lines) != 1 {
		t.Errorf("%d lines in ample room", len(p.lines))
	}
}

func TestALineIsCutWithAnEllipsis(t *testing.T) {
	test.NewTempApp(t)
	p := line("a very long name of a logger", theme.SizeNameText, theme.ColorNameForeground, false)
	p.Resize(fyne.NewSize(80, 20))
	got := []rune(p.lines[0].Text)
	if got[len(got)-1] != '…' || p.measure(string(got)).Width > 80 {
		t.Errorf("%q", string(got))
	}
}

func TestDayStripsReadTheDayUnderThePointer(t *testing.T) {
	test.NewTempApp(t)
	s := show(t)
	s.take(t, planFile(t))
	strips, ok := find(s.win.Content(), func(*shareStrips) bool { return true })
	if !ok {
		t.Fatal("no strips on the Stages page")
	}
	strips.Resize(fyne.NewSize(stripLeft+stripRight+200, 200))
	strips.MouseMoved(at(stripLeft+1, 10))
	if got := s.status.reading.text; len(got) < 10 || got[:16] != "13 November 2024" {
		t.Errorf("%q", got)
	}
	strips.MouseOut()
	if s.status.reading.text != "" {
		t.Error("the reading stays")
	}
}

// The toolkit measures whole lines: each fits, and would not with the first word of the next. One line that is cut fits
// too, and would not with one letter more.
func TestProseFillsItsLines(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(Theme{Variant: Light})
	text := "338 hives, in 12 November 2023, out 4 April 2024: AVATAR To. Ångström 143 days, of which 2 are unknown; Types vary."
	for _, p := range []*prose{body(text), sentence(text), caption(text)} {
		for _, room := range []float32{90, 200, 333} {
			lines := p.broken(room)
			if len(lines) < 2 || strings.Join(lines, " ") != text {
				t.Fatalf("broken into %q", lines)
			}
			for i, l := range lines[:len(lines)-1] {
				next, _, _ := strings.Cut(lines[i+1], " ")
				if p.measure(l).Width > room && strings.Contains(l, " ") || p.measure(l+" "+next).Width <= room {
					t.Errorf("in %v: %q, then %q", room, l, next)
				}
			}
			short, _ := strings.CutSuffix(p.shortened(room), "…")
			longer := text[:len(short)+2]
			if p.measure(short+"…").Width > room || !strings.HasPrefix(text, short) || p.measure(longer+"…").Width <= room {
				t.Errorf("in %v: cut to %q", room, short)
			}
		}
	}
	if got := body("a  b\n\nc").broken(500); len(got) != 3 || got[0] != "a  b" || got[2] != "c" {
		t.Errorf("%q", got)
	}
	if got := line(text, theme.SizeNameText, theme.ColorNameForeground, false).shortened(1); got != "…" {
		t.Errorf("no room: %q", got)
	}
}

// A figure changes its palette where it stands: the theme, and the ink of every logger's line; the mean and the weather
// have the theme's own.
func TestAFigureChangesItsPalette(t *testing.T) {
	lane := desk.Lane{Traces: []desk.Trace{{Name: "a", Role: desk.Thin}, {Name: "b", Role: desk.Thin}, {Name: "mean"}, {Name: "outdoors", Role: desk.Outside}}}
	f := figureOf(desk.Timeline{Lanes: []desk.Lane{lane}})
	for dark, theme := range map[bool]chart.Theme{false: chart.Light(), true: chart.Dark()} {
		inPalette(f, dark)
		got := f.Lanes[0].Traces
		if got[0].Color != theme.Traces[0] || got[1].Color != theme.Traces[1] || got[2].Color.A != 0 || got[3].Color.A != 0 || f.Theme.Paper != theme.Paper {
			t.Errorf("dark %v: %v %v %v %v", dark, got[0].Color, got[1].Color, got[2].Color, got[3].Color)
		}
	}
}

// The keys stand in the items' own ink: the toolkit is left none to write in its fainter one. They stand below one another.
func TestMenusSayTheirKeysLegibly(t *testing.T) {
	s := show(t)
	keys := 0
	for _, m := range s.win.MainMenu().Items {
		var at []float32
		for _, i := range m.Items {
			if i.Shortcut == nil {
				continue
			}
			if _, faint := i.Shortcut.(fyne.KeyboardShortcut); faint {
				t.Errorf("%s: its key is written by the toolkit", i.Label)
			}
			label, key, ok := strings.Cut(i.Label, "Ctrl+")
			if !ok || len(key) != 1 {
				t.Errorf("%q says no key", i.Label)
			}
			at = append(at, fyne.MeasureText(label, theme.TextSize(), fyne.TextStyle{}).Width)
			keys++
		}
		if len(at) > 0 && slices.Max(at)-slices.Min(at) > 4 {
			t.Errorf("%s: the keys begin at %v", m.Label, at)
		}
	}
	if keys < 15 {
		t.Errorf("%d keys", keys)
	}
}
