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
	w.Resize(fyne.NewSize(1280, 800))
	read := running(readFonts)
	w.Show()
	<-read // until then nothing else may measure text
	return w
}

// readFonts has the toolkit read the fonts of the styles that are used.
func readFonts() {
	for _, style := range []fyne.TextStyle{{}, {Bold: true}} {
		fyne.MeasureText("T", theme.TextSize(), style)
	}
}
