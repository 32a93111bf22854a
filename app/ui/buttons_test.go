package ui

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// buttons are those on the screen that can be pressed, with what they say.
func (s *shown) buttons() (out []fyne.Tappable, labels []string) {
	var gather func(o fyne.CanvasObject)
	add := func(b fyne.Tappable, label string, disabled bool) {
		if !disabled {
			out, labels = append(out, b), append(labels, label)
		}
	}
	gather = func(o fyne.CanvasObject) {
		if !o.Visible() {
			return
		}
		switch b := o.(type) {
		case *tabButton:
			add(b, b.Text, b.Disabled())
		case *keyButton:
			add(b, b.Text, b.Disabled())
		case *widget.Button:
			add(b, b.Text, b.Disabled())
		case *row:
			add(b, b.title, false)
		case *keyRow:
			add(b, b.title, false)
		default:
			for _, c := range below(o) {
				gather(c)
			}
		}
	}
	gather(s.win.Content())
	return out, labels
}

// Every button of every page is pressed once: nothing breaks, and what it opens Escape closes.
func TestEveryButton(t *testing.T) {
	if testing.Short() {
		t.Skip("it judges the demo winters")
	}
	for name, plan := range winters(t) {
		s := show(t)
		s.take(t, plan)
		for page := range len(pageNames) + 1 {
			turn := func() {
				if page == len(pageNames) {
					s.turnToFiles(t)
				} else {
					s.turnTo(t, page)
				}
			}
			turn()
			_, labels := s.buttons()
			for i, label := range labels {
				turn()
				all, _ := s.buttons()
				if i >= len(all) {
					break
				}
				test.Tap(all[i])
				s.settled(t)
				s.escape(t, name+", page "+label)
				if s.left || s.win == nil || !s.book.Loaded() {
					t.Fatalf("%s: %q left the winter", name, label)
				}
			}
		}
		if len(s.troubles) > 0 {
			t.Errorf("%s: %v", name, s.troubles)
		}
	}
}

// escape closes whatever is open as the key does.
func (s *shown) escape(t *testing.T, what string) {
	t.Helper()
	canvas := s.win.Canvas()
	for range 3 {
		if canvas.Overlays().Top() == nil {
			return
		}
		if f := canvas.Focused(); f != nil {
			f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		}
		if key := canvas.OnTypedKey(); key != nil && canvas.Overlays().Top() != nil {
			key(&fyne.KeyEvent{Name: fyne.KeyEscape})
		}
	}
	if top := canvas.Overlays().Top(); top != nil {
		t.Errorf("%s: Escape does not close what it opened", what)
		canvas.Overlays().Remove(top)
	}
}
