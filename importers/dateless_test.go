package importers

import (
	"context"
	"slices"
	"strings"
	"testing"
	"time"
)

// Times of day lie on the day that is said of the first row and on those after it: two midnights pass in the file.
func TestTimesOnTheDaySaid(t *testing.T) {
	const file = "time,T °C\n22:00,4.5\n06:00,4.4\n14:00,4.4\n22:00,4.3\n06:00,4.4\n"
	e, err := Read(context.Background(), strings.NewReader(file), "f.csv", Answers{"first_day": "2024-02-28"})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"28 22", "29 06", "29 14", "29 22", "01 06"}
	var got []string
	for _, ms := range e.Series[0].FaceMS {
		got = append(got, time.UnixMilli(ms).UTC().Format("02 15"))
	}
	if !slices.Equal(got, want) || len(e.Questions)+len(e.Remarks) > 0 {
		t.Errorf("%v, want %v; %v %v", got, want, e.Questions, e.Remarks)
	}
	for _, answer := range []string{"28.02.2024", "2024-02-30", "yesterday"} {
		e, err := Read(context.Background(), strings.NewReader(file), "f.csv", Answers{"first_day": answer})
		if err != nil || len(e.Questions) != 1 || len(e.Remarks) != 1 || e.Remarks[0].Code != RemarkNoAnswer {
			t.Errorf("%q: %+v, %v", answer, e, err)
		}
	}
}

// What the file's name or the lines above say of days is proposed, those a date may be each, at most four.
func TestDaysProposed(t *testing.T) {
	const rows = "time,T °C\n22:00,4.5\n06:00,4.4\n"
	for _, c := range []struct{ name, in, want string }{
		{"alder.csv", rows, ""},
		{"alder_2025-11-15.csv", rows, "2025-11-15"},
		{"logs/2025-11/alder_20251115_2.csv", rows, "2025-11-15"},
		{"alder 05.11.2025.csv", rows, "2025-11-05 2025-05-11"},
		{"2025-11-15 to 2026-01-03.csv", rows, "2025-11-15 2026-01-03"},
		{"alder.csv", "15.11.2025 to 17.11.2025\n" + rows + strings.Repeat("14:00,4.5\n22:00,4.4\n06:00,4.3\n", 9), "2025-11-15 2025-11-17"},
		{"serial 20259915.csv", rows, ""},
	} {
		e, err := Read(context.Background(), strings.NewReader(c.in), c.name, nil)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		if got := strings.Join(e.Questions[0].Options, " "); got != c.want || e.Questions[0].ID != "first_day" {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
