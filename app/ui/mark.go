package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"thawbook/app/desk"
)

// Each mark has a shape of its own: a tick, a triangle, a filled square, a question mark in a ring.
var markShapes = map[desk.Mark]string{
	desk.MarkGood:    `<path d="M1.6 8.6L3.4 6.8L6.4 9.8L12.8 3.4L14.6 5.2L6.4 13.4z" fill="#000000"/>`,
	desk.MarkWatch:   `<path d="M8 2L15 14H1z" fill="#000000"/>`,
	desk.MarkAct:     `<path d="M2 2H14V14H2z" fill="#000000"/>`,
	desk.MarkUnknown: `<path d="M8 1.2A6.8 6.8 0 1 0 8 14.8A6.8 6.8 0 1 0 8 1.2M8 3A5 5 0 1 1 8 13A5 5 0 1 1 8 3" fill="#000000" fill-rule="evenodd"/>`,
}

var markInks = map[desk.Mark]fyne.ThemeColorName{
	desk.MarkGood: colorGood, desk.MarkWatch: colorWatch, desk.MarkAct: colorAct, desk.MarkUnknown: colorMuted,
}

// markIcon is the picture of a mark in its colour of the theme; nil for no mark.
func markIcon(m desk.Mark) fyne.Resource {
	shape, ok := markShapes[m]
	if !ok {
		return nil
	}
	svg := `<svg xmlns="http://www.w3.org/2000/svg" width="16" height="16" viewBox="0 0 16 16">` + shape + `</svg>`
	r := theme.NewThemedResource(fyne.NewStaticResource("mark-"+string(m)+".svg", []byte(svg)))
	r.ColorName = markInks[m]
	return r
}
