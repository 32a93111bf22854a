package desk

import (
	"strings"
	"testing"

	"thawbook/analysis"
	"thawbook/app/winter"
)

func TestNotesInWords(t *testing.T) {
	v := func(f float64) *float64 { return &f }
	for want, n := range map[string]winter.Note{
		"sweepings, 3 pails":                      {Kind: "sweepings", Value: v(3), Unit: "pails"},
		"sweepings, 2.5 barrels, mostly old bees": {Kind: "sweepings", Value: v(2.5), Unit: "barrels", Text: "mostly old bees."},
		"doors open":                              {Kind: "doors open"},
		"Both doors for an hour":                  {Kind: "doors open", Text: "Both doors for an hour."},
		"12 boxes wet along the wall":             {Kind: "seen", Value: v(12), Text: "boxes wet along the wall"},
		"dead count, 5 of 50 looked at":           {Kind: "dead count", Value: v(5), Of: v(50)},
		"all quiet":                               {Kind: "other", Text: "all quiet"},
	} {
		if got := plain(saw(n)); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestSettingDownANote(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	for _, c := range []struct {
		note NoteText
		want string // of the problem; "" when it is taken
	}{
		{NoteText{Day: "2024-11-14", Kind: "dead count", Value: "5", Of: "50"}, ""},
		{NoteText{Day: "2024-11-15", Kind: "sweepings", Value: "2,5", Unit: "pails"}, ""},
		{NoteText{Day: "2024-11-16 08:30", Kind: "power cut"}, ""},
		{NoteText{Day: "2024-11-17", Kind: "other", Text: " Quiet. "}, ""},
		{NoteText{Day: "2024-11-18", Kind: "alarm call"}, ""}, // of the alarm's log, not of what the keeper saw
		{NoteText{Day: "2024-11-18", Kind: "dead count", Value: "5", Of: "some"}, "no number of hives"},
		{NoteText{Day: "2024-11-18", Kind: "dead count", Value: "5", Of: "0"}, "no number of hives"},
		{NoteText{Day: "2024-11-18", Kind: "dead count", Value: "51", Of: "50"}, "More are dead"},
		{NoteText{Day: "2024-11-18", Kind: "dead count", Of: "50"}, "how many of the 50"},
		{NoteText{Kind: "power cut"}, "Say when it was"},
		{NoteText{Day: "soon", Kind: "power cut"}, "is no day"},
		{NoteText{Day: "2024-11-15", Kind: "sweepings", Value: "some", Unit: "pails"}, "is no number"},
		{NoteText{Day: "2024-11-15", Kind: "sweepings", Value: "-1", Unit: "pails"}, "is no number"},
		{NoteText{Day: "2024-11-15", Kind: "sweepings", Unit: "pails"}, "Say how many"},
		{NoteText{Day: "2024-11-15", Kind: "other"}, "Say how many"},
	} {
		edit, problem := b.AddNote(0, c.note)
		if (c.want == "") != (problem == "") || !strings.Contains(problem, c.want) {
			t.Errorf("%+v: %q, want %q", c.note, problem, c.want)
		}
		if problem == "" {
			b = edited(t, k, b, edit)
		}
	}
	v, _ := b.Barn(0, Units{})
	if want := "You noted 17 November: Quiet; 16 November: power cut; 15 November: sweepings, 2.5 pails."; plain(v.Header.Noted) != want {
		t.Errorf("%q, want %q", v.Header.Noted, want)
	}
	if b.Undo != "a note" {
		t.Errorf("undo %q", b.Undo)
	}
}

func TestFileNames(t *testing.T) {
	for name, want := range map[string]string{"Winter 2024–25": "Winter 2024–25.thawbook", "a/b:c": "a-b-c.thawbook", " ": "winter.thawbook", "..": "winter.thawbook"} {
		if got := FileName(Book{doc: winter.Winter{Name: name}}, ".thawbook"); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}

// A note speaks of damp where one of its clauses does and does not deny it, or by its kind.
func TestWhatANoteSpeaksOf(t *testing.T) {
	v := func(f float64) *float64 { return &f }
	damp, dry := seenWords[0].words, seenWords[1].words
	for _, c := range []struct {
		note  winter.Note
		words []string
		want  bool
	}{
		{winter.Note{Text: "Lids damp to the touch."}, damp, true},
		{winter.Note{Text: "No mould, lids wet."}, damp, true},
		{winter.Note{Text: "No mould, nothing wet; all quiet"}, damp, false},
		{winter.Note{Text: "The north wall wasn’t wet"}, damp, false},
		{winter.Note{Kind: "wet boxes", Value: v(12)}, damp, true},
		{winter.Note{Kind: "wet boxes", Value: v(0)}, damp, false},
		{winter.Note{Kind: "sweepings", Value: v(3)}, damp, false},
		{winter.Note{Text: "Much too dry in here"}, dry, true},
		{winter.Note{Text: "Boxes dry"}, damp, false},
	} {
		if got := speaksOf(c.note, c.words); got != c.want {
			t.Errorf("%+v: %t", c.note, got)
		}
	}
}

// Three pails swept two days after the last of 600 hives went out are half a pail per hundred of those that had stood there.
func TestSweepingsOfAnEmptiedBarn(t *testing.T) {
	n := winter.Note{At: 5, Kind: "sweepings", Value: new(float64), Unit: "pails"}
	*n.Value = 3
	if got := plain(perHundred(n, []analysis.HeadChange{{At: 1, Change: 600}, {At: 3, Change: -600}})); got != " (0.5 pails per 100 hives)" {
		t.Errorf("%q", got)
	}
}
