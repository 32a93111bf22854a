package desk

import (
	"strings"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// The sentences with their figures, read aloud.
func TestWhatIsSaidOfEventsAndAlarms(t *testing.T) {
	exact := func(name string, v float64) analysis.NamedFigure {
		return analysis.NamedFigure{Name: name, Figure: analysis.Figure{Mid: v, Low: v, High: v, OK: true}}
	}
	ranged := analysis.NamedFigure{Name: "hours_to_alarm_h", Figure: analysis.Figure{Mid: 17, Low: 13, High: 25, OK: true}}
	line := []analysis.NamedFigure{exact("limit_c", 8), exact("delay_min", 30)}
	for _, row := range []struct {
		code    string
		figures []analysis.NamedFigure
		want    string
	}{
		{"power_cut", []analysis.NamedFigure{exact("cuts", 1), exact("first_hour_k_per_h", 1.5), exact("later_k_per_h", 0.2), ranged},
			"The power was off. The room climbed by 1.5 °C in the first hour and by 0.2 °C in each later one; at that pace 8 °C lies 13–25 h from the start."},
		{"power_cut", []analysis.NamedFigure{exact("cuts", 2), {Name: "first_hour_k_per_h", Figure: figureOf(3, 2.7, 3.4)}, exact("hours_to_alarm_h", 4)},
			"The power was off 2 times, the worst of them as follows. The room climbed by 3.0 °C (2.7–3.4 °C) in the first hour; 8 °C was reached in 4 h."},
		{"power_cut", []analysis.NamedFigure{exact("cuts", 1), exact("first_hour_k_per_h", -0.4), exact("later_k_per_h", -0.2)},
			"The power was off. The room did not climb in the first hour and fell by 0.2 °C in each later one."},
		{"power_cut", []analysis.NamedFigure{exact("cuts", 1)}, "The power was off. It was too short, or too little is known of it, to say how fast the room climbed."},
		{"light_leak", []analysis.NamedFigure{exact("days", 7), exact("from_hour", 12), exact("to_hour", 16.5)},
			"On 7 days there was light in the room at the same time of day, between 12:00 and 16:30."},
		{"alarm_missed", append(line, exact("due", 5), exact("missed", 2)), "An alarm at 8 °C for 30 min would have called 5 times; your notes lack at least 2 of these calls."},
		{"alarm_late", append(line, exact("late", 1), analysis.NamedFigure{Name: "latest_min", Figure: analysis.Figure{OK: true, Mid: 40, Low: 31, High: 49}}), "The alarm called late once, by up to 40 min (31–49), if it is set to 8 °C for 30 min."},
		{"alarm_without_cause", append(line, exact("calls", 3)), "The alarm called 3 times while the room's logger gave no cause at 8 °C for 30 min."},
	} {
		v := barn{r: analysis.Review{Alarms: []analysis.AlarmRow{{Line: analysis.AlarmLine{LimitC: 8}}}}}.finding(analysis.Finding{Code: row.code, About: "room", Figures: row.figures})
		if got := strings.ReplaceAll(v.Text, "\u2009", " "); got != row.want {
			t.Errorf("%s:\n got %q\nwant %q", row.code, got, row.want)
		}
	}
	dated := analysis.Finding{Code: "power_cut", Look: series.Span{From: day0 + 20*hourMS, To: day0 + 23*hourMS}}
	if got := (barn{}).finding(dated).Text; !strings.HasPrefix(got, "The power was off on 1 November.") {
		t.Errorf("the day is lacking: %q", got)
	}
	do := eventFindingWords["power_cut"].do
	for _, caution := range []string{"exhaust outdoors", "transfer switch", "carbon dioxide", "second person", "unvented burner"} {
		if !strings.Contains(do, caution) {
			t.Errorf("a power cut's advice lacks %q", caution)
		}
	}
}

// Where it can't be told how often an alarm would have called, it is not said to have called some times all the same.
func TestMissedCallsOfAWinterHalfKnown(t *testing.T) {
	in := rich(t)
	room := in.Loggers[0].TempC
	in.Loggers[0].TempC = room.Slice(series.Span{From: day0 + 45*24*hourMS, To: day0 + 60*24*hourMS}) // round the hot days
	in.Notes = []analysis.Note{{At: day0 + 55*24*hourMS, Kind: "alarm call"}}
	for _, f := range Findings(in, analysis.Judge(in), Units{}) {
		if strings.Contains(f.Text, "alarm at") {
			if want := "In the hours that are known an alarm at 8 °C for 30 min would have called at least once more than you noted."; plain(f.Text) != want {
				t.Errorf("%q, want %q", f.Text, want)
			}
			return
		}
	}
	t.Error("no finding of the alarm")
}
