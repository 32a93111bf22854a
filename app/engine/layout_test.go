package engine

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"thawbook/app/winter"
	"thawbook/importers"
)

// aDay is a log of nine hours of a date under a header.
func aDay(header, date string) string {
	var text strings.Builder
	text.WriteString(header)
	for h := range 9 {
		fmt.Fprintf(&text, "%s %02d:00,4.0,60\n", date, h)
	}
	return text.String()
}

// What was said of one file holds for another written the same way, with another serial number in its header and
// read with or without answers; not for one with another header, not where the content decides, and not against
// what was said of the file itself.
func TestAnAnswerHoldsForTheLayout(t *testing.T) {
	header := "when (logger %s),temp (°C),RH (%%)\n"
	dir := folder(t, map[string]string{
		"a.csv":     aDay(fmt.Sprintf(header, "20611"), "01/02/2026"),
		"later.csv": aDay(fmt.Sprintf(header, "99120"), "03/04/2026"),
		"sure.csv":  aDay(fmt.Sprintf(header, "20611"), "01/13/2026"),
		"own.csv":   aDay(fmt.Sprintf(header, "20611"), "05/06/2026"),
		"other.csv": aDay("day,temp (°C),RH (%)\n", "01/02/2026"),
	})
	asked, err := Inspect(context.Background(), []string{dir + "/a.csv"}, nil, nil)
	if err != nil || len(asked[0].Export.Questions) != 1 {
		t.Fatal(err)
	}
	answers := []winter.Answer{
		{File: "own.csv", ID: "day_month", Option: "mdy"},
		{File: "a.csv", ID: "day_month", Option: "dmy", Layout: LayoutOf(asked[0].Export)},
	}
	read, err := Inspect(context.Background(), []string{dir}, answers, nil)
	if err != nil {
		t.Fatal(err)
	}
	want := []struct {
		name, order string
		open        int
		remembered  bool
	}{{"a.csv", "dmy", 0, true}, {"later.csv", "dmy", 0, true}, {"other.csv", "", 1, false}, {"own.csv", "mdy", 0, false}, {"sure.csv", "mdy", 0, false}}
	for i, w := range want {
		f := read[i]
		if !strings.HasSuffix(f.Name, w.name) || w.order != "" && f.Export.Layout.Clock.Order != w.order || len(f.Export.Questions) != w.open || len(f.Remembered) > 0 != w.remembered {
			t.Errorf("%s: %+v, %v, %v", f.Name, f.Export.Layout.Clock, f.Export.Questions, f.Remembered)
		}
	}
	if LayoutOf(read[0].Export) != LayoutOf(asked[0].Export) {
		t.Error("an answer changed the mark of the layout")
	}
}

// Columns are grouped in every file written the same way, though none of them asks; the review is another for it.
func TestColumnsAreGroupedInEveryFileOfALayout(t *testing.T) {
	header, rows := "time,Temp A,RH A,Temp B,RH B\n", ""
	for h := range 9 {
		rows += fmt.Sprintf("2026-01-13 %02d:00,4,60,5,70\n", h)
	}
	dir := folder(t, map[string]string{"one.csv": header + rows, "two.csv": header + strings.ReplaceAll(rows, "-13 ", "-14 ")})
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Loggers: []winter.Logger{{Name: "A", Files: []string{"*.csv"}, Place: "room", Channel: "A"}}}}}
	cache := &Cache{}
	before, err := Review(context.Background(), w, Folder(dir), cache, nil)
	if err != nil {
		t.Fatal(err)
	}
	w.Answers = []winter.Answer{{File: "one.csv", ID: Pairing, Option: "2+5:A, 3+4:B", Layout: LayoutOf(before.Files[0].Export)}}
	after, err := Review(context.Background(), w, Folder(dir), cache, nil)
	if err != nil {
		t.Fatal(err)
	}
	was, is := before.Inputs[0].Loggers[0].RelHum, after.Inputs[0].Loggers[0].RelHum
	if was.Len() != 18 || is.Len() != 18 || was.Val[0] != 0.6 || is.Val[0] != 0.7 || is.Val[17] != 0.7 {
		t.Errorf("%d readings of %v, then %d of %v", was.Len(), was.Val, is.Len(), is.Val)
	}
	if codes := codes(after.Remarks); len(codes) != len(before.Remarks) {
		t.Errorf("%v", codes)
	}
}

// Files without a header are alike when the same columns hold values.
func TestLayoutsWithoutAHeader(t *testing.T) {
	of := func(columns ...int) string {
		e := &importers.Export{Layout: importers.Layout{Delimiter: ","}}
		for _, c := range columns {
			e.Series = append(e.Series, importers.Series{ColumnIndex: c})
		}
		return LayoutOf(e)
	}
	if of(2, 3) != of(3, 2, 3) || of(2, 3) == of(2, 4) || LayoutOf(nil) != "" {
		t.Error("told apart wrongly")
	}
	if !PerLayout("day_month") || PerLayout("year") {
		t.Error("a year is a file's own")
	}
}
