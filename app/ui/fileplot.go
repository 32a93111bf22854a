package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"thawbook/app/desk"
)

const plotHigh, plotNameWide, plotScaleWide = 44, 132, 72

// smallPlot is a file's column as one strip: its name, the strokes, its highest and lowest reading; beneath the
// last strip the days.
func smallPlot(p desk.FilePlot, days bool) fyne.CanvasObject {
	name := container.New(fixed{width: plotNameWide}, line(p.Name, theme.SizeNameCaptionText, theme.ColorNameForeground, false))
	low, high := line(p.Low, theme.SizeNameCaptionText, colorMuted, false), line(p.High, theme.SizeNameCaptionText, colorMuted, false)
	scale := container.New(inset{8, 0, 0, 0}, container.New(fixed{width: plotScaleWide}, bordered(high, low, nil, nil)))
	strip := canvas.NewRaster(func(w, h int) image.Image { return marked(strokes(p.Columns, w, h), p.Marks) })
	strip.SetMinSize(fyne.NewSize(plotScaleWide, plotHigh))
	page := container.New(column{gap: 2}, bordered(nil, nil, name, scale, strip))
	if days {
		from, to := caption(p.From), caption(p.To)
		to.align = fyne.TextAlignTrailing
		page.Add(container.New(inset{plotNameWide + 4, 0, plotScaleWide + 12, 0}, container.NewGridWithColumns(2, from, to)))
	}
	return page
}

// strokes draws a stroke for each column of a plot, joined to the one before where both are known.
func strokes(all []desk.PlotColumn, w, h int) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	if len(all) == 0 || w == 0 || h < 4 {
		return img
	}
	rule, ink := theme.Color(theme.ColorNameSeparator), theme.Color(colorMuted)
	fill(img, 0, float64(h-1), float64(w), float64(h), rule)
	each, room := float64(w)/float64(len(all)), float64(h-4)
	thick := max(1, float64(h)/plotHigh)
	for i, c := range all {
		if !c.Known {
			continue
		}
		low, high := c.Low, c.High
		if i > 0 && all[i-1].Known { // no hole between one stroke and the next
			low, high = min(low, all[i-1].High), max(high, all[i-1].Low)
		}
		y0, y1 := room*(1-high)+1, room*(1-low)+1
		fill(img, float64(i)*each, y0, float64(i+1)*each, max(y1, y0+thick), ink)
	}
	return img
}

// A mark is a bar along the upper edge for what looks odd and along the lower for what is left out, never so short that
// it can't be seen.
const markHigh, markLeast = 4, 5

// marked puts the marks of a plot over its strokes.
func marked(img *image.RGBA, marks []desk.PlotMark) *image.RGBA {
	w, h := float64(img.Rect.Dx()), float64(img.Rect.Dy())
	thick := max(1, h/plotHigh)
	for _, m := range marks {
		from, to := m.From*w, m.To*w
		if least := markLeast * thick; to-from < least {
			from, to = (from+to-least)/2, (from+to+least)/2
		}
		if m.Odd {
			fill(img, from, 0, to, markHigh*thick, theme.Color(colorWatch))
			continue
		}
		fill(img, from, h-markHigh*thick, to, h, theme.Color(theme.ColorNameForeground))
	}
	return img
}
