package importers

import (
	"bytes"
	"context"
	"errors"
	"math/rand"
	"slices"
	"testing"
)

// FuzzRead holds the reader to its promises on any bytes: it refuses or it reads; every row is accounted for
// in every column; places lie in the file; the same bytes in other pieces give the same export.
func FuzzRead(f *testing.F) {
	for _, c := range layouts {
		if len(c.in) < 4096 {
			f.Add([]byte(c.in))
		}
	}
	for _, c := range timeLayouts {
		f.Add([]byte(c.in))
	}
	f.Add([]byte("Zeit;T °C\n31.12. 23:50;4,5\n31.12. 24:00;4,4\n01.01. 01:00;4,4\n"))
	for _, printed := range []string{"-999", ">99", "1,234.5", "---"} {
		f.Add([]byte(barnLog(printed, printed)))
	}
	for _, c := range arrangements {
		if len(c.in) < 4096 {
			f.Add([]byte(c.in))
		}
	}
	for _, c := range refusals {
		if len(c.in) < 4096 {
			f.Add([]byte(c.in))
		}
	}
	f.Fuzz(func(t *testing.T, file []byte) {
		before := bytes.Clone(file)
		e, err := Read(context.Background(), bytes.NewReader(file), "f.csv", nil)
		again, errAgain := Read(context.Background(), &pieces{file, rand.New(rand.NewSource(int64(len(file))))}, "f.csv", nil)
		if !bytes.Equal(file, before) {
			t.Fatal("the file was changed")
		}
		var why *Refusal
		if err != nil {
			if !errors.As(err, &why) || errAgain == nil || errAgain.Error() != err.Error() {
				t.Fatalf("%v, in pieces %v", err, errAgain)
			}
			return
		}
		if errAgain != nil || describe(e) != describe(again) {
			t.Fatalf("in pieces it reads otherwise: %v", errAgain)
		}
		checkExport(t, e, 1+bytes.Count(file, []byte("\n"))+bytes.Count(file, []byte("\r")))
	})
}

// checkExport holds an export to what is true of any.
func checkExport(t *testing.T, e *Export, lines int) {
	t.Helper()
	if e.Layout.FirstDataLine < 1 || e.Layout.FirstDataLine > lines || e.BadTime > e.Rows || len(e.Series) == 0 {
		t.Errorf("%+v, %d of %d rows bad, %d series", e.Layout, e.BadTime, e.Rows, len(e.Series))
	}
	perColumn := map[int]int{}
	for _, s := range e.Series {
		perColumn[s.ColumnIndex] += len(s.Val) + s.Missing + s.Unreadable
		sum := s.Summary()
		steps := slices.Clone(s.FaceMS)
		slices.Sort(steps)
		if len(s.FaceMS) != len(s.Val) || sum.Duplicates != len(s.Val)-len(slices.Compact(steps)) || sum.Min > sum.Max {
			t.Errorf("%s: %+v", s.Column, sum)
		}
	}
	for column, n := range perColumn {
		if all := e.Rows - e.BadTime; n > all || n < all && e.Tables == 1 {
			t.Errorf("column %d accounts for %d of %d rows", column, n, e.Rows-e.BadTime)
		}
	}
	for _, r := range e.Remarks {
		if r.Line > r.LastLine || r.LastLine > lines || r.Count < 1 || r.Column > maxColumns {
			t.Errorf("%+v in %d lines", r, lines)
		}
	}
}
