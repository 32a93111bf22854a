package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"thawbook/analysis/series"
	"thawbook/app/desk"
)

// Of more than two barns the other is picked; the curves and what the ranges are made of lie behind tabs.
func TestAnotherBarnIsPicked(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(&Theme{})
	day := series.Readings{At: []int64{0, 24 * series.HourMS}, Val: []float64{4, 5}}
	lane := desk.Lane{Title: "Temperature", Traces: []desk.Trace{{Name: "North", Curve: series.Curve{Readings: day}}}}
	v := desk.TwoBarns{Sentence: "North was warmer.", Others: []string{"South", "East"}, Table: desk.Table{Columns: []desk.Column{{Title: "What"}}, Rows: [][]string{{"Temperature"}}},
		Apart:  desk.Table{Columns: []desk.Column{{Title: "Hour"}, {Title: "In North"}}, Rows: [][]string{{"4 February 18:00", "doors open"}}},
		Behind: desk.Table{Columns: []desk.Column{{Title: "Block"}}}, Both: desk.Timeline{Lanes: []desk.Lane{lane}}}
	picked := -1
	p := newTwoBarnsPage(v, figureOf(v.Both), &laneChoice{}, nil, func(string) {}, func(other int) { picked = other }, func() {})
	w := test.NewTempWindow(t, p.object)
	w.Resize(fyne.NewSize(1000, 600))
	pick, ok := find(p.object, func(s *widget.Select) bool { return s.Selected == "South" })
	if !ok {
		t.Fatal("there is nothing to pick the other barn with")
	}
	pick.SetSelected("East")
	if picked != 1 {
		t.Errorf("picked %d, want the second", picked)
	}
	if p.tabs.choose(1); p.curves.plot == nil || p.curves.plot.Size().Height < 200 {
		t.Error("the curves of both are not drawn")
	}
	p.tabs.choose(2)
	if _, ok := find(p.object, func(p *prose) bool { return p.text == "doors open" }); !ok {
		t.Error("what was going on in the hours farthest apart is not told")
	}
	p.tabs.choose(3)
	if _, ok := find(p.object, func(p *prose) bool { return p.text == "Block" }); !ok {
		t.Error("what the ranges are made of is not told")
	}
}

// A winter of one barn says what it takes, and has neither table nor plot.
func TestOneBarnHasNothingBesideIt(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(&Theme{})
	p := newTwoBarnsPage(desk.TwoBarns{Sentence: "None.", Lacks: "It takes two."}, nil, nil, nil, nil, nil, nil)
	if _, ok := find(p.object, func(p *prose) bool { return p.text == "It takes two." }); !ok || p.tabs != nil {
		t.Error("it does not say what it lacks")
	}
}

// Another winter's file is worked out beside the window and shown on the same screen; one that is refused is told of.
func TestAnotherWinterIsShownBeside(t *testing.T) {
	s := show(t)
	s.take(t, planFile(t))
	s.showPage(5)
	if b := s.button(t, "Beside another winter…"); b.Disabled() {
		t.Error("it can't be pressed")
	}
	other := planFile(t)
	if err := os.WriteFile(other, []byte(strings.Replace(plan, "Two rooms", "The winter before", 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	s.setBeside(other)
	s.settled(t)
	if _, ok := find(s.win.Content(), func(p *widget.Select) bool { return p.Selected == "Upper, The winter before" }); !ok {
		t.Error("the other winter is not what is chosen")
	}
	s.lacks(t, "Paired by day of winter")
	s.setBeside(filepath.Join(t.TempDir(), "none.toml"))
	s.settled(t)
	s.lacks(t, "none.toml does not exist", "Upper, The winter before")
}
