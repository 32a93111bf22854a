package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// headerOf is the top of a barn: its name, who stood there and when, the four answers, and the way to set down when
// the bees went in and came out. What an answer means is read under the pointer.
func headerOf(h desk.Header, beesTime func(), read func(string)) fyne.CanvasObject {
	set := widget.NewButton("Bees in and out…", beesTime)
	set.Importance = widget.LowImportance
	name := line(h.Name, theme.SizeNameHeadingText, theme.ColorNameForeground, true)
	page := container.New(column{gap: 4}, bordered(nil, nil, nil, container.NewVBox(set), container.New(sideBySide{16}, name, body(h.Line))))
	cards := container.New(layout.NewGridLayoutWithColumns(len(h.Answers)))
	for _, a := range h.Answers {
		cards.Add(newPointed(container.New(inset{0, 0, 16, 0}, answerCard(a)), func(fyne.Position) string { return a.Question + " " + a.Help }, read))
	}
	page.Add(cards)
	if h.Noted != "" {
		page.Add(container.New(inset{right: 12}, caption(h.Noted)))
	}
	return container.NewVBox(container.New(inset{20, 10, 8, 6}, page), hairline())
}

// answerCard is a question, its short answer with a mark, one figure and one sentence.
func answerCard(a desk.AnswerCard) fyne.CanvasObject {
	top := container.New(&flow{gap: 8}, newProse(a.Question, theme.SizeNameText, colorMuted, false))
	if res := markIcon(a.Mark); res != nil {
		top.Add(container.New(fixed{14, 14}, widget.NewIcon(res)))
	}
	top.Add(newProse(a.Word, theme.SizeNameText, theme.ColorNameForeground, true))
	top.Add(line(a.Figure, theme.SizeNameText, theme.ColorNameForeground, false))
	return container.New(column{gap: 2}, top, caption(a.Sentence))
}
