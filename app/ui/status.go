package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// status is the line at the bottom: what the pointer reads, and how far long work has come.
type status struct {
	reading *prose
	what    *prose
	bar     *widget.ProgressBar
	cancel  *widget.Button
	busy    *fyne.Container
	line    *fyne.Container
	object  fyne.CanvasObject
}

func newStatus(cancel func()) *status {
	s := &status{
		reading: line("", theme.SizeNameCaptionText, theme.ColorNameForeground, false),
		what:    line("", theme.SizeNameCaptionText, colorMuted, false),
		bar:     widget.NewProgressBar(),
		cancel:  widget.NewButton("Cancel", cancel),
	}
	s.bar.TextFormatter = func() string { return "" }
	s.busy = container.NewHBox(container.New(inset{0, 8, 8, 0}, container.New(fixed{width: 300}, s.what)), container.New(inset{0, 8, 0, 8}, container.New(fixed{160, 14}, s.bar)), s.cancel)
	s.busy.Hide()
	s.line = bordered(nil, nil, nil, s.busy, container.New(inset{16, 9, 8, 0}, s.reading))
	s.object = container.NewVBox(hairline(), container.New(fixed{height: 34}, s.line))
	return s
}

// read shows what the pointer reads.
func (s *status) read(text string) { s.reading.setText(text) }

func (s *status) begin(what string) {
	s.what.setText(what)
	s.bar.SetValue(0)
	s.busy.Show()
	s.line.Refresh()
}

func (s *status) tell(done, total int64, what string) {
	if total > 0 {
		s.bar.SetValue(float64(done) / float64(total))
	}
	if what != "" {
		s.what.setText(what)
	}
}

// end gives the room back to the reading.
func (s *status) end() {
	s.busy.Hide()
	s.line.Refresh()
}
