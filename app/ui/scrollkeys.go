package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// keyStep is how far an arrow key scrolls a page.
const keyStep = 40

// scrollByKey moves a scroll as a key asks: a line, a page less a line, to either end.
func scrollByKey(s *container.Scroll, key fyne.KeyName) {
	if s == nil {
		return
	}
	page := s.Size().Height - keyStep
	by := map[fyne.KeyName]float32{
		fyne.KeyUp: -keyStep, fyne.KeyDown: keyStep, fyne.KeyPageUp: -page, fyne.KeyPageDown: page,
		fyne.KeyHome: -s.Offset.Y, fyne.KeyEnd: s.Content.Size().Height,
	}[key]
	most := max(0, s.Content.Size().Height-s.Size().Height)
	if to := min(most, max(0, s.Offset.Y+by)); to != s.Offset.Y {
		s.ScrollToOffset(fyne.NewPos(s.Offset.X, to))
	}
}

// typed scrolls the page that is shown, while nothing on it has the keys.
func (u *UI) typed(e *fyne.KeyEvent) { scrollByKey(firstScroll(u.centre), e.Name) }

// firstScroll is the first scroll among the objects of a page, or nil.
func firstScroll(page fyne.CanvasObject) *container.Scroll {
	return scrollOf(page, func(*container.Scroll) bool { return true })
}

// tallest gives content that is higher than its room a scroll.
func tallest(content fyne.CanvasObject, width, room float32) fyne.CanvasObject {
	content.Resize(fyne.NewSize(width, content.MinSize().Height))
	content.Resize(fyne.NewSize(width, content.MinSize().Height)) // running text knows its height once it has a width
	if content.MinSize().Height <= room {
		return content
	}
	return container.New(fixed{height: room}, container.NewVScroll(content))
}
