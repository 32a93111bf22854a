package ui

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/chart"
	"thawbook/app/desk"
)

func shownLanes(c *laneChoice, all []chart.Lane) string {
	var titles []string
	for _, l := range c.of(all) {
		titles = append(titles, l.Title)
	}
	return strings.Join(titles, " ")
}

// Lanes are folded, put up by one, shown alone, and all shown again; a lane another barn has in addition comes last.
func TestLanesAreFoldedAndReordered(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(&Theme{})
	all := []chart.Lane{{Title: "Temperature"}, {Title: "Humidity"}, {Title: "Stages"}}
	c := &laneChoice{}
	changes := 0
	rows := c.rows(all, func() { changes++ })
	test.NewTempWindow(t, rows).Resize(fyne.NewSize(400, 300))
	buttons := func(text string) (out []*widget.Button) {
		find(rows, func(b *widget.Button) bool {
			if b.Text == text {
				out = append(out, b)
			}
			return false
		})
		return out
	}
	test.Tap(buttons("")[2])
	if got := shownLanes(c, all); got != "Temperature Stages Humidity" {
		t.Errorf("after one up: %s", got)
	}
	test.Tap(buttons("Only this")[1])
	if got := shownLanes(c, all); got != "Stages" {
		t.Errorf("alone: %s", got)
	}
	test.Tap(buttons("Show all, as they came")[0])
	if got := shownLanes(c, append(slices.Clone(all), chart.Lane{Title: "Added heat"})); got != "Temperature Humidity Stages Added heat" {
		t.Errorf("all: %s", got)
	}
	check, _ := find(rows, func(k *widget.Check) bool { return k.Text == "Humidity" })
	check.SetChecked(false)
	if got := shownLanes(c, all); got != "Temperature Stages" || changes != 4 {
		t.Errorf("folded: %s; drawn anew %d times, want 4", got, changes)
	}
	for _, l := range all {
		c.fold(l.Title, true)
	}
	if got := shownLanes(c, all); got != "Temperature Humidity Stages" {
		t.Errorf("with all folded nothing is to be seen but %q", got)
	}
}

// A lane that is left out until it is asked for comes with all, or by its own press, and then stays.
func TestALaneIsLeftOutUntilItIsAskedFor(t *testing.T) {
	all := []chart.Lane{{Title: "Temperature"}, {Title: "Elsewhere"}, {Title: "Stages"}}
	left := &laneChoice{aside: []string{"Elsewhere"}}
	if got := shownLanes(left, all); got != "Temperature Stages" {
		t.Errorf("at first: %s", got)
	}
	left.raise("Stages", all)
	left.fold("Elsewhere", false)
	if got := shownLanes(left, all); got != "Temperature Stages Elsewhere" {
		t.Errorf("asked for: %s", got)
	}
	left.fold("Elsewhere", true)
	left.all(all)
	if got := shownLanes(left, all); got != "Temperature Elsewhere Stages" {
		t.Errorf("all: %s", got)
	}
}

// The right button copies a table as a spreadsheet takes it.
func TestATableIsCopied(t *testing.T) {
	app := test.NewTempApp(t)
	app.Settings().SetTheme(&Theme{})
	table := tableOf(desk.Table{Columns: []desk.Column{{Title: "Stage"}, {Title: "Ran", Unit: "h", Number: true}}, Rows: [][]string{{"first", "12"}}}, nil, func(string) {})
	w := test.NewTempWindow(t, table)
	w.Resize(fyne.NewSize(400, 300))
	test.TapSecondary(table.(*copyable))
	if w.Canvas().Overlays().Top() == nil {
		t.Fatal("no menu is offered")
	}
	table.(*copyable).menu().Items[0].Action()
	if got := app.Clipboard().Content(); got != "Stage\tRan, h\nfirst\t12\n" {
		t.Errorf("%q", got)
	}
}

// Show leads to the Timeline, and from there a button leads back.
func TestShowHasAWayBack(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "warm.csv", 9))
	s.settled(t)
	s.showPage(2)
	s.look(desk.Sentence{Look: s.plot.view()})
	if s.page != 1 {
		t.Fatalf("page %d, want the Timeline", s.page)
	}
	test.Tap(s.button(t, "Back to Spells"))
	if s.page != 2 {
		t.Errorf("page %d, want Spells", s.page)
	}
}

// Escape closes what lanes are picked with, and the keys are then whose they were.
func TestEscapeClosesThePickerOfLanes(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(&Theme{})
	under := widget.NewButton("Lanes…", nil)
	w := test.NewTempWindow(t, under)
	w.Resize(fyne.NewSize(400, 300))
	heard := 0
	w.Canvas().SetOnTypedKey(func(*fyne.KeyEvent) { heard++ })
	(&timelinePage{}).pickLanes(under, widget.NewLabel("Temperature"))
	for _, key := range []fyne.KeyName{fyne.KeyHome, fyne.KeyEscape, fyne.KeyHome} {
		w.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: key})
	}
	if top := w.Canvas().Overlays().Top(); top != nil {
		t.Error("it stayed open")
	}
	if heard != 1 {
		t.Errorf("%d keys were heard beneath it, want the one after it closed", heard)
	}
}
