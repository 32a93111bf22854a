package chart

import "thawbook/app/figure"

// The parts a chart is put together from, so that a screen needs to know the chart alone.
type (
	Figure  = figure.Figure
	Lane    = figure.Lane
	Band    = figure.Band
	Range   = figure.Range
	BarRow  = figure.BarRow
	Track   = figure.Track
	Shade   = figure.Shade
	Mark    = figure.Mark
	Theme   = figure.Theme
	Reading = figure.Reading
)

// What a lane shows, and what a bar rests on.
const (
	Bars   = figure.Bars
	Ran    = figure.Ran
	Called = figure.Called
)

// Light and Dark are the two themes; NewTrace is a curve ready to be drawn.
var (
	Light    = figure.Light
	Dark     = figure.Dark
	NewTrace = figure.NewTrace
)
