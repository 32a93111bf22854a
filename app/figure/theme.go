package figure

import (
	"image/color"
	"math"
)

// Theme holds the colours of a figure. Text colours stand at least 4.5:1 against Paper and Surface,
// marks at least 3:1 (W3C, WCAG 2.2, success criteria 1.4.3 and 1.4.11).
type Theme struct {
	Dark    bool
	Paper   color.NRGBA // the page
	Surface color.NRGBA // the data area
	Ink     color.NRGBA // text and the firm line
	Muted   color.NRGBA // secondary text, thin lines
	Weather color.NRGBA // the line of the weather, behind the others
	Line    color.NRGBA // hairlines
	Accent  color.NRGBA // what is chosen
	Tint    color.NRGBA // the safe band
	Outside color.NRGBA // wash over what is not judged
	Bar     color.NRGBA // stage bars
	Hatch   color.NRGBA // unknown
	Traces  []color.NRGBA
	States  []State
}

// State is the colour of a condition of the barn, never used without its word or hatching. Fill is the
// colour of the Okabe–Ito set (Okabe & Ito, Color Universal Design, 2008); Edge is the same hue moved
// towards the ink until it stands 3:1 against Paper and Surface, for outlines, hatching and lines.
type State struct {
	Name       string // warm, cold, damp, dry, dew, frost
	Fill, Edge color.NRGBA
}

// Light returns the colours for a light page.
func Light() Theme {
	t := Theme{
		Paper: rgb(0xFAFAF7), Surface: rgb(0xFFFFFF), Ink: rgb(0x1F2328), Muted: rgb(0x59636E),
		Line: rgb(0xD8DEE4), Accent: rgb(0x0B57C4), Tint: rgb(0xEEF3E6), Weather: rgb(0x828A94),
		Outside: color.NRGBA{0x59, 0x63, 0x6E, 0x1C}, Bar: rgb(0x3D5A80), Hatch: rgb(0x8A929A),
		Traces: []color.NRGBA{rgb(0x3F6FA3), rgb(0xA0522D), rgb(0x4F7F3A), rgb(0x80508F), rgb(0x8A6A12), rgb(0x2C7F86)},
	}
	t.States = states(t)
	return t
}

// Dark returns the colours for a dark page.
func Dark() Theme {
	t := Theme{
		Dark:  true,
		Paper: rgb(0x14171A), Surface: rgb(0x1C2024), Ink: rgb(0xE6E8EA), Muted: rgb(0xA0A8B0),
		Line: rgb(0x30363D), Accent: rgb(0x7AB0FF), Tint: rgb(0x28302A), Weather: rgb(0x747D86),
		Outside: color.NRGBA{0xA0, 0xA8, 0xB0, 0x1C}, Bar: rgb(0x8FB0D9), Hatch: rgb(0x6E767E),
		Traces: []color.NRGBA{rgb(0x7FB0E0), rgb(0xE09A6C), rgb(0x93C47D), rgb(0xC79AD6), rgb(0xD6B656), rgb(0x6CC5CB)},
	}
	t.States = states(t)
	return t
}

// State returns the colours of the named condition, and the unknown grey for any other word.
func (t Theme) State(name string) State {
	for _, s := range t.States {
		if s.Name == name {
			return s
		}
	}
	return State{Name: "unknown", Fill: t.Hatch, Edge: t.Hatch}
}

func states(t Theme) []State {
	list := []State{
		{Name: "warm", Fill: rgb(0xD55E00)}, {Name: "cold", Fill: rgb(0x0072B2)},
		{Name: "damp", Fill: rgb(0x009E73)}, {Name: "dry", Fill: rgb(0xE69F00)},
		{Name: "dew", Fill: rgb(0x56B4E9)}, {Name: "frost", Fill: rgb(0xCC79A7)},
	}
	for i := range list {
		list[i].Edge = legible(list[i].Fill, t, 3)
	}
	return list
}

// legible moves c towards the ink in small steps until it stands ratio against paper and surface.
func legible(c color.NRGBA, t Theme, ratio float64) color.NRGBA {
	for k := 0.0; k < 1; k += 0.02 {
		m := mix(c, t.Ink, k)
		if Contrast(m, t.Paper) >= ratio && Contrast(m, t.Surface) >= ratio {
			return m
		}
	}
	return t.Ink
}

// Contrast returns the contrast ratio of two opaque colours, 1 to 21, by the formula of W3C, Web Content
// Accessibility Guidelines 2.2, "contrast ratio" and "relative luminance".
func Contrast(a, b color.NRGBA) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func luminance(c color.NRGBA) float64 {
	lin := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*lin(c.R) + 0.7152*lin(c.G) + 0.0722*lin(c.B)
}

func rgb(v uint32) color.NRGBA {
	return color.NRGBA{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v), A: 0xFF}
}

// mix returns a, moved the share k of the way to b; opaque.
func mix(a, b color.NRGBA, k float64) color.NRGBA {
	f := func(x, y uint8) uint8 { return uint8(math.Round(float64(x) + (float64(y)-float64(x))*k)) }
	return color.NRGBA{R: f(a.R, b.R), G: f(a.G, b.G), B: f(a.B, b.B), A: 0xFF}
}

// alpha returns c with its opacity multiplied by k.
func alpha(c color.NRGBA, k float64) color.NRGBA {
	c.A = uint8(math.Round(float64(c.A) * min(max(k, 0), 1)))
	return c
}
