package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"thawbook/app/desk"
)

// beforeNextPage is what to look at before next winter: findings, an alarm tried at several lines, what happened.
func beforeNextPage(v desk.BeforeNext, look func(desk.Sentence), read func(string)) fyne.CanvasObject {
	told := part(sentence(v.Sentence))
	for _, s := range v.Doubts {
		told.Add(sentenceRow(s, look))
	}
	if len(v.Findings) > 0 {
		told.Add(findingRows(v.Findings, look))
	}
	alarm := part(heading("An alarm, tried on this winter"), body(v.Alarm))
	if len(v.Alarms.Rows) > 0 {
		alarm.Add(tableOf(v.Alarms, look, read))
	}
	happened := part(heading("What happened in the barn"), body(v.Happened), byHandfuls(8, len(v.Events), func(i int) fyne.CanvasObject {
		e := v.Events[i]
		return sentenceRow(desk.Sentence{Text: e.Text, Sure: e.Sure, Mark: e.Mark, Look: e.Look}, look)
	}))
	page := parted(told, alarm, happened, part(hairline(), captions(v.Cautions)))
	return container.NewVScroll(container.New(inset{20, 14, 12, 16}, page))
}

// findingRow is a finding with what to look at and the way to its place in the Timeline.
func findingRow(f desk.FindingView, look func(desk.Sentence)) fyne.CanvasObject {
	return sentenceRow(desk.Sentence{Text: f.Text + " " + f.Do, Sure: f.Sure, Mark: f.Mark, Look: f.Look}, look)
}
