package ui

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Variant is which of the two palettes is shown.
type Variant string

// The variants a keeper can choose.
const (
	System Variant = "system"
	Light  Variant = "light"
	Dark   Variant = "dark"
)

// Names of the theme's own colours and sizes.
const (
	colorSurface fyne.ThemeColorName = "surface"
	colorMuted   fyne.ThemeColorName = "muted"
	colorGood    fyne.ThemeColorName = "good"
	colorWatch   fyne.ThemeColorName = "watch"
	colorAct     fyne.ThemeColorName = "act"
	colorBar     fyne.ThemeColorName = "bar"
	sizeSentence fyne.ThemeSizeName  = "sentence"
)

// Theme is a quiet page: paper, ink, hairlines and one accent.
type Theme struct{ Variant Variant }

type palette map[fyne.ThemeColorName]color.NRGBA

func rgb(v uint32) color.NRGBA {
	return color.NRGBA{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v), A: 0xFF}
}

func tint(v uint32, a uint8) color.NRGBA {
	c := rgb(v)
	c.A = a
	return c
}

var lightPalette = pages(0xFAFAF7, 0xFFFFFF, 0x1F2328, 0x59636E, 0xD8DEE4, 0x0B57C4, palette{
	colorGood: rgb(0x59636E), colorWatch: rgb(0x8A6100), colorAct: rgb(0xB34D00), colorBar: rgb(0x3D5A80),
	theme.ColorNameForegroundOnPrimary: rgb(0xFFFFFF),
})

var darkPalette = pages(0x14171A, 0x1C2024, 0xE6E8EA, 0xA0A8B0, 0x30363D, 0x7AB0FF, palette{
	colorGood: rgb(0xA0A8B0), colorWatch: rgb(0xE69F00), colorAct: rgb(0xF08040), colorBar: rgb(0x8FB0D9),
	theme.ColorNameForegroundOnPrimary: rgb(0x14171A),
})

// pages fills a palette from its six inks.
func pages(paper, surface, ink, muted, line, accent uint32, own palette) palette {
	p := palette{
		theme.ColorNameBackground: rgb(paper), colorSurface: rgb(surface), theme.ColorNameForeground: rgb(ink),
		colorMuted: rgb(muted), theme.ColorNamePlaceHolder: rgb(muted), theme.ColorNameDisabled: rgb(muted),
		theme.ColorNameSeparator: rgb(line), theme.ColorNameInputBorder: rgb(muted), theme.ColorNameShadow: tint(0, 0x30),
		theme.ColorNamePrimary: rgb(accent), theme.ColorNameHyperlink: rgb(accent), theme.ColorNameFocus: tint(accent, 0x50),
		theme.ColorNameButton: tint(ink, 0x0E), theme.ColorNameDisabledButton: tint(ink, 0x08),
		theme.ColorNameHover: tint(ink, 0x10), theme.ColorNamePressed: tint(ink, 0x20), theme.ColorNameSelection: tint(accent, 0x40),
		theme.ColorNameInputBackground: rgb(surface), theme.ColorNameMenuBackground: rgb(surface),
		theme.ColorNameOverlayBackground: rgb(surface), theme.ColorNameHeaderBackground: rgb(paper),
		theme.ColorNameScrollBar: tint(muted, 0x90), theme.ColorNameScrollBarBackground: tint(muted, 0x10),
		theme.ColorNameError: own[colorAct], theme.ColorNameWarning: own[colorWatch], theme.ColorNameSuccess: rgb(muted),
		theme.ColorNameForegroundOnError: rgb(paper), theme.ColorNameForegroundOnWarning: rgb(paper), theme.ColorNameForegroundOnSuccess: rgb(paper),
	}
	for name, c := range own {
		p[name] = c
	}
	return p
}

// IsDark says whether the dark page is shown, given what the system asks for.
func (t Theme) IsDark(system fyne.ThemeVariant) bool {
	return t.Variant == Dark || t.Variant != Light && system == theme.VariantDark
}

// Color is a colour of the page, as fyne.Theme.
func (t Theme) Color(name fyne.ThemeColorName, system fyne.ThemeVariant) color.Color {
	p, stock := lightPalette, theme.VariantLight
	if t.IsDark(system) {
		p, stock = darkPalette, theme.VariantDark
	}
	if c, ok := p[name]; ok {
		return c
	}
	return theme.DefaultTheme().Color(name, stock)
}

// Font is the toolkit's own, as fyne.Theme.
func (t Theme) Font(style fyne.TextStyle) fyne.Resource { return theme.DefaultTheme().Font(style) }

// Icon is the toolkit's own, as fyne.Theme.
func (t Theme) Icon(name fyne.ThemeIconName) fyne.Resource { return theme.DefaultTheme().Icon(name) }

// Size is a size of the page, as fyne.Theme.
func (t Theme) Size(name fyne.ThemeSizeName) float32 {
	switch name {
	case theme.SizeNameText:
		return 14
	case theme.SizeNameCaptionText:
		return 12
	case sizeSentence, theme.SizeNameSubHeadingText:
		return 19
	case theme.SizeNameHeadingText:
		return 22
	case theme.SizeNameInputRadius, theme.SizeNameSelectionRadius:
		return 3
	}
	return theme.DefaultTheme().Size(name)
}
