package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// status is the line at the bottom: what the pointer reads, and how far long work has come.
type status struct {
	reading *widget.RichText
	what    *widget.RichText
	bar     *widget.ProgressBar
	cancel  *widget.Button
	busy    *fyne.Container
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
	s.busy = container.NewHBox(container.New(fixedWidth{300}, s.what), container.New(fixedWidth{160}, s.bar), s.cancel)
	s.busy.Hide()
	s.object = container.NewVBox(hairline(), container.New(fixedHeight{34}, container.NewBorder(nil, nil, nil, s.busy, s.reading)))
	return s
}

// read shows what the pointer reads.
func (s *status) read(text string) { setText(s.reading, text) }

func (s *status) begin(what string) {
	setText(s.what, what)
	s.bar.SetValue(0)
	s.busy.Show()
}

func (s *status) tell(done, total int64, what string) {
	if total > 0 {
		s.bar.SetValue(float64(done) / float64(total))
	}
	if what != "" {
		setText(s.what, what)
	}
}

func (s *status) end() { s.busy.Hide() }

// fixedHeight gives a bar its height and leaves its width to the window.
type fixedHeight struct{ height float32 }

// Layout gives the objects all there is, as fyne.Layout.
func (f fixedHeight) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Resize(size)
	}
}

// MinSize has the fixed height, as fyne.Layout.
func (f fixedHeight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	w := float32(0)
	for _, o := range objects {
		w = max(w, o.MinSize().Width)
	}
	return fyne.NewSize(w, f.height)
}
