package ui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"
)

// stillFile is forty days of hourly readings from 13 November 2024 on that change every hour, but for four days from 3
// December on.
func stillFile(t *testing.T, dir string) string {
	t.Helper()
	var text strings.Builder
	text.WriteString("time,temperature (°C)\n")
	at := time.Date(2024, time.November, 13, 0, 0, 0, 0, time.UTC)
	for h := range 40 * 24 {
		v := 4 + float64(h*h%17)/10
		if h >= 480 && h < 576 {
			v = 4.4
		}
		fmt.Fprintf(&text, "%s,%.2f\n", at.Add(time.Duration(h)*time.Hour).Format("2006-01-02 15:04"), v)
	}
	path := filepath.Join(dir, "still.csv")
	if err := os.WriteFile(path, []byte(text.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// What looks odd is kept, asked again, left out and counted again, a press each.
func TestOddReadingsAreAnsweredInPlace(t *testing.T) {
	s := show(t)
	s.take(t, stillFile(t, t.TempDir()))
	s.choose(t, "Files")
	s.settled(t)
	s.lacks(t, "its temperature stood at 4.4 °C for 9")
	for _, press := range []struct{ button, then string }{
		{"Keep it", "though it stood still, as you said."}, {"Ask again", "its temperature stood at 4.4 °C for 9"},
		{"Leave it out", "of its temperature: it stood still."}, {"Count it again", "its temperature stood at 4.4 °C for 9"},
	} {
		test.Tap(s.button(t, press.button))
		s.settled(t)
		s.lacks(t, press.then)
	}
}

// A check that says nothing is told so, and a comparison with a watch is set down.
func TestAClockAndACheckAreTyped(t *testing.T) {
	s := show(t)
	s.take(t, stillFile(t, t.TempDir()))
	s.choose(t, "Files")
	s.settled(t)
	test.Tap(s.button(t, "Check…"))
	typed(t, s, "such as 2024-11-12 10:00", "2024-11-14 10:00")
	typed(t, s, "such as 2024-11-12 11:30", "2024-11-14 12:00")
	s.press(t, "Look what it said")
	s.settled(t)
	s.lacks(t, "never stayed close to 0 °C and steady for 8 h") // eight readings, one an hour
	s.press(t, "Close")
	test.Tap(s.button(t, "Clock…"))
	typed(t, s, "my watch: 2025-04-10 14:30", "2024-12-20 12:00")
	typed(t, s, "the logger: 2025-04-10 14:12", "2024-12-20 11:48")
	s.press(t, "Set it down")
	s.settled(t)
	s.lacks(t, "when the watch said 20 December 2024 12:00 it said 20 December 2024 11:48")
	test.Tap(s.button(t, "Take it back"))
	s.settled(t)
}

// typed writes into the first field with a hint.
func typed(t *testing.T, s *shown, hint, text string) {
	t.Helper()
	e, ok := find(s.win.Canvas().Overlays().Top(), func(e *keyEntry) bool { return e.PlaceHolder == hint && e.Text == "" })
	if !ok {
		t.Fatalf("no field %q", hint)
	}
	e.SetText(text)
}
