package importers

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"
)

// A file of very many tables is read in bounded time: no more of them are told apart than is allowed, and rows
// below are still rows.
func TestManyTables(t *testing.T) {
	var b strings.Builder
	for i := range 30_000 {
		fmt.Fprintf(&b, "time,temp of room %d °C\n2026-01-13 %02d:%02d,4.5\n", i, i/60%24, i%60)
	}
	start := time.Now()
	e, err := Read(context.Background(), strings.NewReader(b.String()), "f.csv", nil)
	if err != nil {
		t.Fatal(err)
	}
	if e.Tables != maxTables || e.Rows-e.BadTime != 30_000 {
		t.Errorf("%d tables, %d rows of which %d bad", e.Tables, e.Rows, e.BadTime)
	}
	if took := time.Since(start); took > 20*time.Second {
		t.Errorf("took %v", took)
	}
}

// The rows, lines and remarks of later tables count on from the first.
func TestTablesLines(t *testing.T) {
	text := "Logger: alder\ntime,temp °C\n2026-01-13 10:00,4.5\n\nLogger: rowan\ntime,temp °C\n2026-01-13 10:00,warm\n2026-01-13 10:10,4.5\nlost,4.5\n2026-01-13 10:30,4.5\n"
	e, err := Read(context.Background(), strings.NewReader(text), "f.csv", nil)
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]int{RemarkUnreadable: 7, RemarkBadTime: 9}
	for _, r := range e.Remarks {
		if want[r.Code] != r.Line || r.Count != 1 {
			t.Errorf("%+v", r)
		}
	}
	if len(e.Remarks) != 2 || e.Tables != 2 || e.Rows != 5 || e.BadTime != 1 {
		t.Errorf("%d remarks, %d tables, %d rows of which %d bad", len(e.Remarks), e.Tables, e.Rows, e.BadTime)
	}
}
