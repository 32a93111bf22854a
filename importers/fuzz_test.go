package importers

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"math/rand"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf16"
	"unicode/utf8"
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
	for _, c := range clockForms {
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
	for _, c := range slices.Concat(forms, houseForms) {
		f.Add([]byte(c.file))
	}
	for _, c := range slices.Concat(shapes, sheets, drawer, started, undecided) {
		f.Add([]byte(c.in))
	}
	f.Fuzz(func(t *testing.T, file []byte) {
		before, begun := bytes.Clone(file), time.Now()
		e, err := Read(context.Background(), bytes.NewReader(file), "f.csv", nil)
		if took := time.Since(begun); took > mostTime(len(file)) {
			t.Fatalf("%d bytes took %v", len(file), took)
		}
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

// mostTime is when reading a file counts as a hang: half a minute, and a second more for every 2 kB. Ten thousand times
// less is usual; the rest is for a machine that does much else.
func mostTime(size int) time.Duration {
	return 30*time.Second + time.Duration(size)*time.Second/2_000
}

// FuzzQuick holds the quick path to the plain one on any bytes: the same bits, remarks and refusals.
func FuzzQuick(f *testing.F) {
	at := time.Date(2026, 1, 13, 22, 0, 0, 0, time.UTC)
	for _, form := range quickForms {
		f.Add([]byte(form.header + form.row(at, 0) + "\n" + form.row(at.Add(time.Hour), 1) + "\n" + form.row(at.Add(3*time.Hour), 2) + "\n"))
	}
	for _, c := range clockForms {
		f.Add([]byte(c.in))
	}
	f.Fuzz(func(t *testing.T, file []byte) { samePaths(t, file) })
}

// FuzzSniff holds the recognition of encodings to its promise: a text says the same in UTF-8 and in UTF-16 of either
// order, with its mark.
func FuzzSniff(f *testing.F) {
	for _, c := range layouts {
		if len(c.in) < 1024 {
			f.Add(c.in)
		}
	}
	for _, c := range clockForms {
		f.Add(c.in)
	}
	f.Fuzz(func(t *testing.T, file string) {
		if !utf8.ValidString(file) || strings.ContainsAny(file, "\x00\ufeff\ufffd") {
			return
		}
		want, err := Read(context.Background(), strings.NewReader("\ufeff"+file), "f.csv", nil)
		for _, order := range []binary.AppendByteOrder{binary.LittleEndian, binary.BigEndian} {
			wide := order.AppendUint16(nil, 0xFEFF)
			for _, unit := range utf16.Encode([]rune(file)) {
				wide = order.AppendUint16(wide, unit)
			}
			got, errWide := Read(context.Background(), bytes.NewReader(wide), "f.csv", nil)
			if (err == nil) != (errWide == nil) || err != nil && err.Error() != errWide.Error() {
				t.Fatalf("%q: %v, in UTF-16 %v", file, err, errWide)
			}
			if err == nil && cutEncoding(got) != cutEncoding(want) {
				t.Fatalf("%q:\n%s\nin UTF-16\n%s", file, describe(want), describe(got))
			}
		}
	})
}

// cutEncoding is what an export says, the encoding left out.
func cutEncoding(e *Export) string {
	_, rest, _ := strings.Cut(describe(e), " ")
	return rest
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
		if all := e.Rows - e.BadTime; n > e.most*all || n < e.least*all && e.Tables == 1 {
			t.Errorf("column %d accounts for %d of %d rows", column, n, e.Rows-e.BadTime)
		}
	}
	for _, r := range e.Remarks {
		if r.Line > r.LastLine || r.LastLine > lines || r.Count < 1 || r.Column > maxColumns {
			t.Errorf("%+v in %d lines", r, lines)
		}
	}
}

// What is taken for groups of columns is written so that it reads back the same.
func FuzzGroups(f *testing.F) {
	for _, text := range []string{"2+5:north, 3+6, -7", "2:a:b", "-2+3", "in_order", "1, 1", "2+", "9999999999999999999"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		groups, ok := ParseGroups(text)
		if !ok {
			return
		}
		written := WriteGroups(groups)
		again, ok := ParseGroups(written)
		if !ok || WriteGroups(again) != written {
			t.Errorf("%q was written as %q", text, written)
		}
	})
}
