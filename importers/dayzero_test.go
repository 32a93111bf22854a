package importers

import (
	"context"
	"strings"
	"testing"
	"time"
)

// A spreadsheet's day 44515 is 15 November 2021 counted from 1900, 16 November 2025 from 1904.
func TestDayZeroAnswered(t *testing.T) {
	file := "Shed, winter 2025/26\ndate,temp C\n44515,4.5\n44515.5,4.4\n"
	for answer, want := range map[string]time.Time{"1900": time.Date(2021, 11, 15, 0, 0, 0, 0, time.UTC), "1904": time.Date(2025, 11, 16, 0, 0, 0, 0, time.UTC)} {
		e, err := Read(context.Background(), strings.NewReader(file), "f.csv", Answers{"day_zero": answer})
		if err != nil {
			t.Fatal(err)
		}
		if got := e.Series[0].FaceMS[0]; got != want.UnixMilli() || len(e.Questions)+len(e.Remarks) > 0 {
			t.Errorf("%s: %s, %v %v", answer, time.UnixMilli(got).UTC(), e.Questions, e.Remarks)
		}
	}
}
