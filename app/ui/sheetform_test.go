package ui

import "testing"

// A stage is set down in the window: what is wrong is said in place, then the edit is kept and the stage is judged.
func TestAStageIsSetDown(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "one.csv", 5))
	s.settled(t)
	s.stageSheet()
	pop := s.win.Canvas().Overlays().Top()
	fields := s.entries()
	if len(fields) < 6 {
		t.Fatalf("%d fields, want those of an empty row", len(fields))
	}
	if s.win.Canvas().Focused() != fields[0] {
		t.Error("the first field is not where typing begins")
	}
	fields[0].SetText("first")
	fields[1].SetText("4")
	s.press(t, "Set")
	if _, ok := find(pop, func(p *prose) bool { return p.text == "Row 1, first needs both: when it goes on and when it goes off." }); !ok {
		t.Error("what is wrong is not said")
	}
	fields[2].SetText("3.5")
	s.press(t, "Add a stage")
	if n := len(s.entries()); n != 2*len(fields) {
		t.Errorf("%d fields after a row was added, want %d", n, 2*len(fields))
	}
	s.press(t, "Set")
	s.settled(t)
	barn, _ := s.book.Barn(0, s.units)
	if len(barn.Stages.Table.Rows) != 1 || barn.Stages.Table.Rows[0][0] != "first" {
		t.Errorf("%v", barn.Stages.Table.Rows)
	}
}
