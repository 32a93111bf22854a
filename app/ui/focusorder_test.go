package ui

import (
	"fmt"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// focusables are the objects of the window, or of the sheet over it, that take the keys, in the order of the tree, and those that can be pressed but
// not by a key.
func (s *shown) focusables() (taking []fyne.Focusable, deaf []string) {
	var gather func(o fyne.CanvasObject)
	gather = func(o fyne.CanvasObject) {
		if !o.Visible() {
			return
		}
		if d, ok := o.(fyne.Disableable); ok && d.Disabled() {
			return
		}
		f, keys := o.(fyne.Focusable)
		_, press := o.(fyne.Tappable)
		if sheet, ok := o.(*widget.PopUp); ok { // a press beside its content is nobody's
			gather(sheet.Content)
			return
		}
		if tabs, ok := o.(*pageTabs); ok {
			gather(tabs.titles)
			gather(tabs.page())
			return
		}
		switch {
		case keys:
			taking = append(taking, f)
			return
		case press:
			deaf = append(deaf, fmt.Sprintf("%T", o))
		}
		for _, c := range below(o) {
			gather(c)
		}
	}
	if over := s.win.Canvas().Overlays().Top(); over != nil {
		for _, c := range below(over) {
			gather(c)
		}
	} else {
		gather(s.win.Content())
	}
	return taking, deaf
}

// Tab goes once through all that can be pressed and back to the first, never to what stands above and left of what it left.
func TestTabGoesThroughEveryPageAndSheetAsItIsRead(t *testing.T) {
	if testing.Short() {
		t.Skip("it judges the demo winters")
	}
	for name, plan := range winters(t) {
		s := show(t)
		s.win.Resize(fyne.NewSize(1280, 800))
		s.take(t, plan)
		for i, page := range pageNames {
			s.turnTo(t, i)
			s.walked(t, page+", "+name)
		}
		for s.compared = range comparedTabs {
			s.refresh()
			s.turnTo(t, sideBySidePage)
			s.walked(t, fmt.Sprintf("Side by side %d, %s", s.compared, name))
		}
		s.compared = 0
		s.turnToFiles(t)
		s.walked(t, "Files, "+name)
		s.turnTo(t, 0)
		for _, label := range s.sheets() {
			s.choose(t, label)
			s.walked(t, label+", "+name)
			s.closeSheets()
		}
	}
}

func (s *shown) walked(t *testing.T, where string) {
	t.Helper()
	want, deaf := s.focusables()
	if len(want) == 0 {
		t.Errorf("%s: nothing takes the keys", where)
	}
	if len(deaf) > 0 {
		t.Errorf("%s: no key presses %v", where, deaf)
	}
	c := s.win.Canvas()
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject
	seen := map[fyne.Focusable]bool{}
	c.Unfocus()
	c.FocusNext()
	for last := fyne.Focusable(nil); c.Focused() != nil && !seen[c.Focused()]; c.FocusNext() {
		now := c.Focused()
		seen[now] = true
		if last != nil {
			a, b := last.(fyne.CanvasObject), now.(fyne.CanvasObject)
			from, to := at(a), at(b)
			if to.Y+b.Size().Height <= from.Y+1 && to.X <= from.X+1 {
				t.Errorf("%s: Tab goes from %T at %v back to %T at %v", where, a, from, b, to)
			}
		}
		last = now
	}
	for _, f := range want {
		if !seen[f] {
			t.Errorf("%s: Tab never comes to %T at %v", where, f, at(f.(fyne.CanvasObject)))
		}
	}
	if len(seen) > len(want) {
		t.Errorf("%s: Tab comes to %d, seen are %d", where, len(seen), len(want))
	}
}

// The page's key turns its parts one after another and comes back to the first.
func TestTheKeyOfSideBySideTurnsItsParts(t *testing.T) {
	s := show(t)
	s.take(t, planFile(t))
	item := s.pageItem(sideBySidePage, fyne.Key6)
	item.Action()
	s.turnTo(t, sideBySidePage)
	var turned []string
	for range s.comparing.pages {
		turned = append(turned, s.comparing.titles.titles[s.comparing.chosen()].Text)
		item.Action()
	}
	if want := []string{"In figures", "On one time axis", "Hours and weather", "How sure?"}; !slices.Equal(turned, want) || s.compared != 0 {
		t.Errorf("turned %v, then part %d", turned, s.compared)
	}
}
