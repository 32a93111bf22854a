package desk

import (
	"strings"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// A stage under two settings is named once; one that was called for an hour more than it ran, of a whole winter, is not worth a
// word; one that stood for 20 h it was called for is.
func TestStagesThatRanAsCalledForAreNamedOnce(t *testing.T) {
	row := func(name string, called, ran float64) analysis.StageRow {
		return analysis.StageRow{Name: name, Agreement: &analysis.Agreement{KnownMS: 4000 * series.HourMS, Called: figureOf(called, called, called), Ran: figureOf(ran, ran, ran)}}
	}
	for _, c := range []struct {
		rows []analysis.StageRow
		want string
	}{
		{[]analysis.StageRow{row("Stage 2", 100, 100), row("Stage 2", 50, 50), row("Stage 3", 1, 0)}, "Stage 2 ran as long as called for, within what the loggers can tell."},
		{[]analysis.StageRow{row("Stage 2", 100, 100), row("Stage 3", 40, 20)}, "Stage 3 was called for 40 h and ran 20 h (called for at least 40 h, at most 40 h)."},
		{[]analysis.StageRow{row("Stage 3", 1, 0)}, ""},
	} {
		got := ""
		for _, s := range (barn{r: analysis.Review{Stages: c.rows}}).calledAndRan() {
			got = plain(s.Text)
		}
		if got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// A logger that stood elsewhere while bees were in is named with its hours.
func TestALoggerElsewhereIsNamedByFirstLook(t *testing.T) {
	b := barn{r: analysis.Review{Remarks: []series.Remark{{Code: "no_outdoor"}, {Code: "logger_elsewhere", Args: []string{"East", "5"}}}}}
	if got := b.outsiders(); got != "5\u00a0h of the record of East" {
		t.Errorf("%q", got)
	}
	if got := ReviewNote(b.r.Remarks[1]); !strings.HasPrefix(got, "Logger East was not in the barn for 5 h") {
		t.Errorf("%q", got)
	}
}
