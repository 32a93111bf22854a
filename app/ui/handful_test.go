package ui

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// Every object of a long list is made once and stands in its place, a handful at a press.
func TestALongListIsMadeByHandfuls(t *testing.T) {
	test.NewTempApp(t)
	made := 0
	list := byHandfuls(2, 2*handful+1, func(i int) fyne.CanvasObject { made++; return caption(fmt.Sprint(i)) })
	for _, c := range []struct {
		shown int
		left  string
	}{{handful, "Show 25 more of the 26 left"}, {2 * handful, "Show 1 more of the 1 left"}, {2*handful + 1, ""}} {
		more, left := find(list, func(*widget.Button) bool { return true })
		if made != c.shown || left != (c.left != "") || left && more.Text != c.left {
			t.Fatalf("%d made, wanted %d; a button: %v", made, c.shown, left)
		}
		for i := range c.shown {
			if p := list.Objects[i].(*prose); p.text != fmt.Sprint(i) {
				t.Fatalf("%q stands in place %d", p.text, i)
			}
		}
		if left {
			test.Tap(more)
		}
	}
}
