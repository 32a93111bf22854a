package desk

import (
	"slices"
	"strings"
	"testing"

	"thawbook/app/winter"
)

// The list of notes shows what was noted, and what it does not show stays: to the millisecond when, of how many.
func TestNoteSheet(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	five, fifty, until := 5.0, 50.0, int64(1731672000000)
	was := []winter.Note{{At: 1731628800123, Kind: "dead count", Value: &five, Of: &fifty, Unit: "hives"}, {At: 1731668400000, Until: &until, Kind: "swarm", Text: "on the roof"}}
	b = edited(t, k, b, winter.SetSettings{Barn: 0, Of: "notes", Notes: was})
	s := b.NoteSheet(0)
	if !slices.Contains(s.Columns[1].Choices, "swarm") || !slices.Equal(s.Rows[0].Cells, []string{"2024-11-15 00:00", "dead count", "5", "hives", ""}) {
		t.Fatalf("%v %v", s.Columns[1].Choices, s.Rows)
	}
	s.Rows[1].Cells[4] = "in the eaves"
	rows := append(s.Rows, SheetRow{Cells: []string{"2024-11-16", "sweepings", "2", "", ""}})
	edit, problem := s.Edit(rows)
	if problem != "" {
		t.Fatal(problem)
	}
	b = edited(t, k, b, edit)
	got := b.doc.Barns[0].Notes
	if len(got) != 3 || got[0].At != was[0].At || got[0].Of == nil || *got[0].Of != 50 || got[1].Until == nil || *got[1].Until != until || got[1].Text != "in the eaves" || got[2].Unit != "pails" {
		t.Errorf("%+v", got)
	}
	for want, cells := range map[string][]string{
		"Row 1: Say when it was":                                         {"", "other", "", "", "damp"},
		"Row 1: what was counted is one of pails, barrels and kg":        {"2024-11-16", "sweepings", "2", "tons", ""},
		"Row 1: Say how many, or say it in words":                        {"2024-11-16", "sweepings", "", "", ""},
		"Row 1: “none” is no number of things; write one such as 3 or 2": {"2024-11-16", "sweepings", "none", "", ""},
	} {
		if _, problem := s.Edit([]SheetRow{{Cells: cells}}); !strings.HasPrefix(problem, want) {
			t.Errorf("%q, want %q", problem, want)
		}
	}
}

// The Timeline has the notes, and reads those near an instant.
func TestNotesOnTheTimeline(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	at := int64(1731668400000)
	b = edited(t, k, b, winter.AddNote{Barn: 0, Note: winter.Note{At: at, Kind: "other", Text: "Dry in there."}})
	v, ok := b.Barn(0, Units{})
	if !ok {
		t.Fatal("the barn is not judged")
	}
	if got := v.Timeline.NotedNear(at+900, 1000); got != "You noted 15 November: Dry in there." {
		t.Errorf("%q", got)
	}
	if got := v.Timeline.NotedNear(at+1100, 1000); got != "" {
		t.Errorf("too far away: %q", got)
	}
}
