package ui

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
)

// Parts stand below one another; where a tall page has room for two columns the order stays and the higher one is as low as
// it can be: of 500, 200, 200 and 100 the first stands on the left. A part too wide for a column keeps all in one.
func TestPartsStandInTwoColumns(t *testing.T) {
	test.NewTempApp(t)
	high := func(h, w float32) fyne.CanvasObject {
		r := canvas.NewRectangle(color.Black)
		r.SetMinSize(fyne.NewSize(w, h))
		return r
	}
	for _, c := range []struct {
		name  string
		width float32
		parts []fyne.CanvasObject
		left  int
	}{
		{"narrow", 1000, []fyne.CanvasObject{high(500, 100), high(200, 100), high(200, 100), high(100, 100)}, 4},
		{"wide", 1640, []fyne.CanvasObject{high(500, 100), high(200, 100), high(200, 100), high(100, 100)}, 1},
		{"low", 1640, []fyne.CanvasObject{high(300, 100), high(200, 100)}, 2},
		{"a wide table", 1640, []fyne.CanvasObject{high(500, 100), high(500, 1200)}, 2},
	} {
		page := parted(c.parts...)
		page.Resize(fyne.NewSize(c.width, 800))
		left, bottom := 0, float32(0)
		for _, o := range c.parts {
			if o.Position().X == 0 {
				left++
			}
			if o.Position().X+o.Size().Width > c.width+1 && c.name != "a wide table" {
				t.Errorf("%s: a part reaches to %v", c.name, o.Position().X+o.Size().Width)
			}
			bottom = max(bottom, o.Position().Y+o.MinSize().Height)
		}
		if left != c.left || page.MinSize().Height != bottom {
			t.Errorf("%s: %d on the left, %v high; want %d and %v", c.name, left, page.MinSize().Height, c.left, bottom)
		}
	}
}
