package desk

import (
	"strings"
	"testing"
	"time"

	"thawbook/analysis"
)

// What is proposed is the instant by the winter's clock: 12:20 UTC is 14:20 in Tallinn in November. Where the loggers
// can't tell, nothing is proposed and it is said why.
func TestDaysReadOffTheLoggersAreProposed(t *testing.T) {
	tallinn, err := time.LoadLocation("Europe/Tallinn")
	if err != nil {
		t.Fatal(err)
	}
	at := time.Date(2024, 11, 8, 12, 20, 0, 0, time.UTC).UnixMilli()
	for _, c := range []struct {
		edge analysis.Edge
		side int
		want DayProposal
	}{
		{analysis.Edge{At: at, Sure: analysis.EdgeLikely, Reason: "stood_warmer", Logger: "Shed"}, 0,
			DayProposal{"2024-11-08 14:20", "The logger Shed came from a warmer place and settled in the barn then. The bees likely came with it, and may have come later."}},
		{analysis.Edge{At: at, Sure: analysis.EdgeLikely, Reason: "swung_with_days", Logger: "Shed"}, 1,
			DayProposal{"2024-11-08 14:20", "The logger Shed kept calm until then, and rose and fell with day and night after. That is likely, not certain."}},
		{analysis.Edge{Sure: analysis.EdgeCantTell, Reason: "record_ends_inside", Logger: "Shed"}, 1,
			DayProposal{"", "The logger Shed can't tell: nothing in its record shows it going out."}},
		{analysis.Edge{Sure: analysis.EdgeCantTell, Reason: "no_stay"}, 0,
			DayProposal{"", "The loggers can't tell: none shows a fortnight or more of a barn's calm air."}},
	} {
		if got := proposalOf(c.edge, edgeWords[c.side], tallinn); got != c.want {
			t.Errorf("%+v:\n got %q\nwant %q", c.edge, got, c.want)
		}
	}
}

// A record of a barn's calm air from its first to its last reading shows neither day; there is no barn 9.
func TestARecordInsideTheBarnProposesNothing(t *testing.T) {
	b := added(t, keeper(t), Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	in, out := b.BeesSeen(0)
	if in.Text != "" || out.Text != "" || !strings.Contains(in.Why, "can't tell") || !strings.Contains(out.Why, "can't tell") {
		t.Errorf("%+v, %+v", in, out)
	}
	if in, _ := b.BeesSeen(9); in != (DayProposal{}) {
		t.Errorf("of no barn: %+v", in)
	}
}
