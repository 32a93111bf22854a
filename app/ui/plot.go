package ui

import (
	"fyne.io/fyne/v2"

	"thawbook/app/desk"
)

type plot struct{ object fyne.CanvasObject }

func newPlot(t desk.Timeline, dark bool, read func(string)) *plot { return &plot{gap(1, 1)} }

func (p *plot) look(s desk.Span) {}
