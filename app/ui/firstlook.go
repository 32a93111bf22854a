package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

const readable = 780 // widest line of running text

// firstLookPage is a barn's winter in plain sentences; look shows a sentence's stretch in the Timeline.
func firstLookPage(f desk.FirstLook, notes []string, look func(desk.Sentence)) fyne.CanvasObject {
	told := part(titled(f.Headline, f.Sure))
	for _, s := range f.Sentences {
		told.Add(sentenceRow(s, look))
	}
	page := parted(told)
	if len(f.Findings) > 0 {
		worth := part(heading("Worth a look before next winter"), findingRows(f.Findings, look))
		if f.More != "" {
			worth.Add(caption(f.More))
		}
		page.Add(worth)
	}
	page.Add(part(hairline(), captions(f.Cautions)))
	if len(notes) > 0 {
		page.Add(notesOn(notes))
	}
	return container.NewVScroll(container.New(inset{20, 14, 12, 16}, page))
}

// findingRows are findings one below the other.
func findingRows(all []desk.FindingView, look func(desk.Sentence)) fyne.CanvasObject {
	return byHandfuls(10, len(all), func(i int) fyne.CanvasObject { return findingRow(all[i], look) })
}

// sentenceRow is one sentence with its mark, how sure it is, and the way to its place in the Timeline. The right button copies
// it.
func sentenceRow(s desk.Sentence, look func(desk.Sentence)) fyne.CanvasObject {
	icon := gap(14, 14)
	if res := markIcon(s.Mark); res != nil {
		icon = container.NewVBox(container.New(fixed{14, 14}, widget.NewIcon(res)))
	}
	words := container.New(column{gap: 2}, body(s.Text))
	if s.Sure != "" {
		words.Add(caption(s.Sure))
	}
	var way fyne.CanvasObject
	if s.Look.To > s.Look.From {
		way = container.NewVBox(newTabButton("Show", func() { look(s) }))
	}
	copied := newCopyable(words, "Copy the sentence", func() string { return strings.TrimSpace(s.Text + " " + s.Sure) }, nothing, func(string) {})
	return container.New(sentenceLayout{}, icon, copied, orGap(way))
}

func orGap(o fyne.CanvasObject) fyne.CanvasObject {
	if o == nil {
		return gap(1, 1)
	}
	return o
}

// notesOn lists the notes on the data, folded away.
func notesOn(notes []string) fyne.CanvasObject {
	list := byHandfuls(2, len(notes), func(i int) fyne.CanvasObject { return caption(notes[i]) })
	return widget.NewAccordion(widget.NewAccordionItem("Notes on the data", list))
}

// titled is a screen's sentence with how sure it is beneath.
func titled(text, sure string) *fyne.Container {
	c := container.New(column{gap: 2}, sentence(text))
	if sure != "" {
		c.Add(caption(sure))
	}
	return c
}

// captions are small lines close together.
func captions(all []string) *fyne.Container {
	c := container.New(column{gap: 2})
	for _, text := range all {
		c.Add(caption(text))
	}
	return c
}

// sentenceLayout sets a mark, a column of words and a button side by side.
type sentenceLayout struct{}

const markWide, wayWide = 24, 72

// Layout places the three, as fyne.Layout.
func (sentenceLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	o[0].Move(fyne.NewPos(0, 3))
	o[0].Resize(fyne.NewSize(14, o[0].MinSize().Height))
	w := size.Width - markWide - wayWide
	o[1].Move(fyne.NewPos(markWide, 0))
	o[1].Resize(fyne.NewSize(w, o[1].MinSize().Height))
	o[1].Resize(fyne.NewSize(w, o[1].MinSize().Height))
	o[2].Move(fyne.NewPos(size.Width-wayWide, -8))
	o[2].Resize(fyne.NewSize(wayWide, o[2].MinSize().Height))
}

// MinSize is as high as the words, as fyne.Layout.
func (sentenceLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(o[1].MinSize().Width+markWide+wayWide, max(o[1].MinSize().Height, o[2].MinSize().Height-16))
}
