package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// blankWindow shows a window with the page's ground and nothing on it. Bringing up the screen's driver and reading the fonts
// take longest of all that comes before the first page, and neither needs the other: they are done at once.
func blankWindow(app fyne.App) fyne.Window {
	w := app.NewWindow("Thawbook")
	w.SetContent(canvas.NewRectangle(theme.Color(theme.ColorNameBackground)))
	w.SetPadded(false)
	w.Resize(windowSize(app.Preferences()))
	read := running(readFonts)
	w.Show()
	<-read // until then nothing else may measure text
	return w
}

// windowSize is how large the window was when it was left; at first as large as the screens of small laptops hold.
func windowSize(p fyne.Preferences) fyne.Size {
	return fyne.NewSize(float32(p.FloatWithFallback(prefWidth, 1200)), float32(p.FloatWithFallback(prefHeight, 690)))
}

// keepWindowSize remembers how large the window is.
func keepWindowSize(p fyne.Preferences, w fyne.Window) {
	size := w.Canvas().Size()
	p.SetFloat(prefWidth, float64(size.Width))
	p.SetFloat(prefHeight, float64(size.Height))
}

// readFonts has the toolkit read the fonts of the styles that are used.
func readFonts() {
	for _, style := range []fyne.TextStyle{{}, {Bold: true}} {
		fyne.MeasureText("T", theme.TextSize(), style)
	}
}
