package desk

import (
	"strings"
	"testing"

	"thawbook/analysis/series"
	"thawbook/app/engine"
)

// The window's notes name what to press, and nothing that is written in a plan only; a clock that stands as before is
// not "moved by 0 s".
func TestTheWindowsNotesSpeakOfTheWindow(t *testing.T) {
	for _, c := range []struct {
		remark series.Remark
		want   string
	}{
		{series.Remark{Code: engine.WaitsForAnswer, Args: []string{"shed", "shed.csv", "temperature_unit"}}, "Logger shed: the file shed.csv waits for an answer and is left out until then: °C or °F? It is asked under Files."},
		{series.Remark{Code: engine.SameReadings, Args: []string{"east", "b.csv", "a.csv", "0"}}, "Logger east: the file b.csv repeats readings of a.csv; each is counted once."},
		{series.Remark{Code: engine.ClockImpossibleHour, Args: []string{"east", "b.csv"}}, "Logger east, file b.csv: readings in an hour that summer time skipped. If the clock never changes, say so under Files, Clock."},
	} {
		if got := windowNote(c.remark); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	for code := range joiningNotes {
		if got := windowNote(series.Remark{Code: code, Args: make([]string, strings.Count(joiningNotes[code], "%s"))}); strings.ContainsAny(got, "_[") {
			t.Errorf("%s: %q", code, got)
		}
	}
}
