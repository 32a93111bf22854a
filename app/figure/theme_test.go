package figure

import (
	"image/color"
	"math"
	"testing"
)

// 21 and 1 are the ends of the range the definition in WCAG 2.2 gives; #777777 on white, 4.48, is the
// example commonly quoted as just failing 4.5 (from memory).
func TestContrastFormula(t *testing.T) {
	white := rgb(0xFFFFFF)
	for _, r := range []struct {
		c    color.NRGBA
		want float64
		tol  float64
	}{{rgb(0), 21, 1e-12}, {white, 1, 1e-12}, {rgb(0x777777), 4.48, 0.005}} {
		if got := Contrast(r.c, white); math.Abs(got-r.want) > r.tol || got != Contrast(white, r.c) {
			t.Errorf("contrast of %v on white is %v, want %v", r.c, got, r.want)
		}
	}
}

// WCAG 2.2: 4.5 for text (1.4.3), 3 for what has to be seen to understand a graphic (1.4.11). Hairlines,
// the tint and the washes are decoration: the limits they stand for are ruled and printed.
func TestThemesAreLegible(t *testing.T) {
	for _, th := range []Theme{Light(), Dark()} {
		grounds := map[string]color.NRGBA{"paper": th.Paper, "surface": th.Surface, "band": th.Tint}
		for where, g := range grounds {
			for name, c := range map[string]color.NRGBA{"ink": th.Ink, "muted": th.Muted, "accent": th.Accent} {
				if r := Contrast(c, g); r < 4.5 {
					t.Errorf("dark %v: %s on %s is %.2f, want 4.5 for text", th.Dark, name, where, r)
				}
			}
			for i, c := range append([]color.NRGBA{th.Bar, th.Weather}, th.Traces...) {
				if r := Contrast(c, g); r < 3 {
					t.Errorf("dark %v: mark %d on %s is %.2f, want 3", th.Dark, i, where, r)
				}
			}
		}
		for _, g := range []color.NRGBA{th.Paper, th.Surface} {
			if r := Contrast(th.Hatch, g); r < 3 {
				t.Errorf("dark %v: hatching is %.2f, want 3", th.Dark, r)
			}
			for _, s := range th.States {
				if r := Contrast(s.Edge, g); r < 3 {
					t.Errorf("dark %v: edge of %s is %.2f, want 3", th.Dark, s.Name, r)
				}
			}
		}
	}
}

// The weather's line is fainter than a logger's that has no colour, and that fainter than the room's.
func TestTheWeatherRecedes(t *testing.T) {
	for _, th := range []Theme{Light(), Dark()} {
		f := &Figure{Theme: th}
		weather, logger, room := f.traceColor(&Trace{Muted: true, Outside: true}), f.traceColor(&Trace{Muted: true}), f.traceColor(&Trace{})
		if w, l, r := Contrast(weather, th.Surface), Contrast(logger, th.Surface), Contrast(room, th.Surface); 1.4*w > l || l > r {
			t.Errorf("dark %v: the weather is %.1f, a logger %.1f, the room %.1f", th.Dark, w, l, r)
		}
	}
}

// The six colours as published by Okabe and Ito (2008), as far as the program uses them.
func TestStateColours(t *testing.T) {
	want := map[string]uint32{"warm": 0xD55E00, "cold": 0x0072B2, "damp": 0x009E73, "dry": 0xE69F00, "dew": 0x56B4E9, "frost": 0xCC79A7}
	for name, v := range want {
		if got := Light().State(name); got.Fill != rgb(v) || got.Name != name {
			t.Errorf("%s is %v, want %06X", name, got, v)
		}
	}
	if Dark().State("sunny").Name != "unknown" {
		t.Error("a word that is no state has a state's colour")
	}
}
