package desk

import (
	"strings"
	"testing"
)

// Every word has its meaning, in a line that begins with it.
func TestMeaningsAreThere(t *testing.T) {
	for _, m := range Meanings() {
		if word, text, ok := strings.Cut(m, ": "); !ok || word == "" || len(text) < 20 {
			t.Errorf("%q", m)
		}
	}
}

// What is explained twice stands once.
func TestEachExplanationStandsOnce(t *testing.T) {
	got := Unrepeated([]string{"Stage 1 called for, h: hours.", "Stage 2 called for, h: hours.", "Ran: a record."})
	if strings.Join(got, "|") != "Stage 1 called for, h: hours.|Ran: a record." {
		t.Errorf("%q", got)
	}
}

// The pointer reads of a table what its row is compared by where that is not plain, else what its column is.
func TestATableIsReadByRowOrColumn(t *testing.T) {
	table := Table{Columns: []Column{{Title: "Stage"}, {Title: "Ran", Unit: "h", Number: true}}, Rows: [][]string{{"1", "12"}, {"2", "9"}}, Helps: []string{"", "Only by night."}}
	for _, c := range []struct {
		row, column int
		want        string
	}{{-1, 1, "Ran, h: what a record of the fan itself shows."}, {0, 1, "Ran, h: what a record of the fan itself shows."}, {1, 1, "2: only by night."}, {0, 5, ""}} {
		if got := table.Read(c.row, c.column); got != c.want {
			t.Errorf("%d, %d: %q, want %q", c.row, c.column, got, c.want)
		}
	}
}
