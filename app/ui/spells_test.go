package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/desk"
)

// A press on a row says what went with the spell and leads to it; a press on a head puts the longest first.
func TestSpellsTable(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(&Theme{})
	h := func(hour int64) int64 { return hour * series.HourMS }
	view := desk.SpellsOf(analysis.Input{}, analysis.Review{Spells: []analysis.Spell{
		{Kind: "warm", Place: "room", Quantity: "air_temperature", Span: series.Span{From: h(0), To: h(3)}, Hours: 3, Peak: 7},
		{Kind: "damp", Place: "room", Quantity: "relative_humidity", Span: series.Span{From: h(24), To: h(36)}, Hours: 12, Peak: 88},
	}}, desk.Units{})
	var shown desk.Sentence
	read := ""
	page := newSpellsPage(view, func(s desk.Sentence) { shown = s }, func(says string) { read = says })
	w := test.NewTempWindow(t, page)
	w.Resize(fyne.NewSize(900, 600))
	list, _ := find(page, func(*widget.List) bool { return true })
	list.Select(1)
	if _, ok := find(page, func(p *prose) bool { return strings.HasPrefix(p.text, "Damp in the room from 2 January 00:00") }); !ok {
		t.Error("the chosen spell says nothing")
	}
	way, _ := find(page, func(b *widget.Button) bool { return b.Text == "Show" })
	test.Tap(way)
	if shown.Look.From != h(24) {
		t.Errorf("shown %+v, want the second spell", shown.Look)
	}
	damp, ok := find(page, func(l *spellLine) bool { return l.row.Look.From == h(24) })
	if !ok {
		t.Fatal("no line for the second spell")
	}
	damp.TappedSecondary(&fyne.PointEvent{AbsolutePosition: fyne.NewPos(200, 200)})
	if w.Canvas().Overlays().Top() == nil {
		t.Error("the right button opens nothing")
	}
	w.Canvas().Overlays().Remove(w.Canvas().Overlays().Top())
	shown = desk.Sentence{}
	clip := fyne.CurrentApp().Clipboard()
	for _, c := range []struct {
		label string
		done  func() bool
	}{
		{"Show in the Timeline", func() bool { return shown.Look.From == h(24) }},
		{"Copy the spell", func() bool {
			return strings.HasPrefix(clip.Content(), "2 January 00:00\tDamp\troom\t12\t") && strings.Contains(clip.Content(), "from 2 January")
		}},
		{"Copy all spells", func() bool {
			return strings.HasPrefix(clip.Content(), "Began\tWhat\t") && strings.Count(clip.Content(), "\n") == 3
		}},
	} {
		for _, i := range damp.menu().Items {
			if i.Label == c.label {
				i.Action()
			}
		}
		if !c.done() {
			t.Errorf("%s: shown %+v, copied %q", c.label, shown, clip.Content())
		}
	}
	head, ok := find(page, func(b *headButton) bool { return b.Text == "Lasted, h" })
	if !ok {
		t.Fatal("no head to press")
	}
	head.MouseIn(&desktop.MouseEvent{})
	if want := "Lasted: from its begin to its end, a short break counted in."; read != want {
		t.Errorf("over the head the pointer reads %q, want %q", read, want)
	}
	if head.MouseOut(); read != "" {
		t.Errorf("beside it %q", read)
	}
	test.Tap(head)
	first, _ := find(page, func(p *prose) bool { return p.text == "Warm" || p.text == "Damp" })
	if first.text != "Damp" {
		t.Errorf("%s stands first, want the longest", first.text)
	}
}
