package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// headerOf is the top of a barn: its name, who stood there and when, and the four answers.
func headerOf(h desk.Header) fyne.CanvasObject {
	title := container.New(column{gap: -12}, line(h.Name, theme.SizeNameHeadingText, theme.ColorNameForeground, true), body(h.Line))
	if h.Noted != "" {
		title.Add(caption(h.Noted))
	}
	cards := container.New(layout.NewGridLayoutWithColumns(len(h.Answers)))
	for _, a := range h.Answers {
		cards.Add(answerCard(a))
	}
	return container.NewVBox(container.New(inset{12, 4, 12, 0}, title), container.New(inset{12, 0, 12, 4}, cards), hairline())
}

// answerCard is a question, its short answer with a mark, one figure and one sentence.
func answerCard(a desk.AnswerCard) fyne.CanvasObject {
	question := prose(a.Question, theme.SizeNameCaptionText, colorMuted, false)
	question.Wrapping = fyne.TextWrapOff
	word := prose(a.Word, theme.SizeNameText, theme.ColorNameForeground, true)
	word.Wrapping = fyne.TextWrapOff
	figure := prose(a.Figure, theme.SizeNameText, theme.ColorNameForeground, false)
	figure.Wrapping = fyne.TextWrapOff
	top := container.NewHBox(question)
	if res := markIcon(a.Mark); res != nil {
		top.Add(widget.NewIcon(res))
	}
	top.Add(word)
	top.Add(figure)
	return container.New(column{gap: -12}, container.New(noGap{}, top.Objects...), caption(a.Sentence))
}

// noGap sets objects side by side, taking back the white space text brings along.
type noGap struct{}

// Layout sets the objects in a line, as fyne.Layout.
func (noGap) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for _, o := range objects {
		m := o.MinSize()
		if _, isIcon := o.(*widget.Icon); isIcon {
			m = fyne.NewSize(14, 14)
			x += 2
		}
		o.Resize(m)
		o.Move(fyne.NewPos(x, (size.Height-m.Height)/2))
		x += m.Width - 8
		if _, isIcon := o.(*widget.Icon); isIcon {
			x += 6
		}
	}
}

// MinSize is the line's, as fyne.Layout.
func (noGap) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for _, o := range objects {
		m := o.MinSize()
		s.Width, s.Height = s.Width+m.Width-8, max(s.Height, m.Height)
	}
	return s.Add(fyne.NewSize(8, 0))
}
