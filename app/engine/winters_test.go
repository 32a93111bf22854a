package engine

import (
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/app/winter"
)

// Two winters of one name are told apart by the year, or as the other file.
func TestWintersOfOneName(t *testing.T) {
	of := func(name string, year int) *Result {
		return &Result{Winter: winter.Winter{Name: name}, Barns: []analysis.Review{{Barn: "Upper", BeesIn: time.Date(year, time.November, 5, 0, 0, 0, 0, time.UTC).UnixMilli()}}}
	}
	open := of("Winter", 2024)
	for want, other := range map[string]*Result{
		"Upper, Last winter":             of("Last winter", 2023),
		"Upper, Winter (in from 2023)":   of("Winter", 2023),
		"Upper, Winter (the other file)": of("Winter", 2024),
	} {
		if got := InOtherWinter(open, other, 0); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
