package importers

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"math/rand"
	"runtime"
	"strings"
	"testing"
	"time"
)

// refusals holds one file per way of being unreadable. ¶ marks the line the refusal must name and is taken
// out before reading; without it the refusal has no line.
var refusals = []struct{ name, in, code string }{
	{"no bytes", "", RefusedEmpty},
	{"blanks", " \n\r\n\t\n", RefusedEmpty},
	{"a byte order mark alone", "\ufeff", RefusedEmpty},
	{"a header alone", "¶time,temp\n", RefusedOneLine},
	{"a row alone, no line end", "¶2026-01-13 10:00,4.5", RefusedOneLine},
	{"NUL bytes among the rows", "time,temp\n2026-01-13 10:00,4.5\n¶2026-01-13 11:00,\x00\x00\n2026-01-13 12:00,4.5\n", RefusedBinary},
	{"bytes of a picture", "¶\x89PNG\r\n\x1a\n\x01\x02\x03\x04IHDR\x05\x06", RefusedBinary},
	{"a program", "¶\x7fELF\x02\x01\x01\x00\x00\x00\x00", RefusedBinary},
	{"a workbook in its zip", "PK\x03\x04\x14\x00\x06\x00\x08\x00\x00\x00\x21\x00[Content_Types].xml\x00\x01\x02", RefusedWorkbook},
	{"an archive", "PK\x03\x04\x14\x00\x00\x00\x00\x00north.csv\x00\x01\x02", RefusedArchive},
	{"a packed file", "\x1f\x8b\x08\x00\x00\x00\x00\x00\x00\x03", RefusedArchive},
	{"an old workbook", "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1\x00\x00\x00\x00", RefusedWorkbook},
	{"a printed report", "%PDF-1.4\n1 0 obj\n<< /Type /Catalog >>\nendobj\n", RefusedDocument},
	{"a letter", "{\\rtf1\\ansi\n2026-01-13 10:00, 4.5\\\n2026-01-13 11:00, 4.0\\\n}\n", RefusedDocument},
	{"a page that asks to sign in", "\n<!DOCTYPE html>\n<html><body>Please sign in.</body></html>\n", RefusedPage},
	{"prose", "Dear keeper,\nthe barn was warm this winter.\nYours, the neighbour\n", RefusedNoClock},
	{"no time column", "depth,temp\n1,4.5\n2,4.6\n3,4.7\n", RefusedNoClock},
	{"times of day without a date", "date,time,temp\nSat,10:00,4.5\nSat,11:00,4.6\nSat,12:00,4.7\n", RefusedNoDate},
	{"times without values", "time,note\n2026-01-13 10:00,dry\n2026-01-13 11:00,wet\n", RefusedNoValues},
	{"numbers with their grades in one cell, what they count said nowhere", "station,date,x1,x2\nA1,2026-01-13T00:51:00,\"+00452,1\",\"-00062,1\"\nA1,2026-01-13T01:51:00,\"+01232,1\",\"-00112,1\"\n", RefusedNoValues},
	{"times that wander between the columns", "no,time,temp °C,rh %\n1,2026-01-13 10:00,4.5,80\n¶2026-01-13 10:10,4.5,80,2\n3,2026-01-13 10:20,4.5,80\n2026-01-13 10:30,4.5,80,4\n5,2026-01-13 10:40,4.5,80\n2026-01-13 10:50,4.5,80,6\n7,2026-01-13 11:00,4.5,80\n8,2026-01-13 11:10,4.5,80\n9,2026-01-13 11:20,4.5,80\n10,2026-01-13 11:30,4.5,80\n", RefusedShifted},
	{"cells that are left out in the middle", "time,temp °C,rh %,CO2 ppm\n2026-01-13 10:00,4.5,80,900\n¶2026-01-13 10:10,4.4,910\n2026-01-13 10:20,4.6,81,905\n2026-01-13 10:30,82,920\n2026-01-13 10:40,4.4,80,910\n2026-01-13 10:50,4.5,920\n2026-01-13 11:00,4.5,80,920\n", RefusedShifted},
	{"commas between the cells and in the numbers", "time,temp °C,rh %\n¶2026-01-13 10:00,4,5,80,1\n2026-01-13 10:10,4,4,80,2\n", RefusedTwoCommas},
	{"commas in some of the numbers", "time,temp °C,rh %\n¶2026-01-13 10:00,4,5,80\n2026-01-13 10:10,4,80\n2026-01-13 10:20,3,9,81\n", RefusedTwoCommas},
	{"too many columns", "¶time" + strings.Repeat(",t", 1000) + "\n2026-01-13 10:00" + strings.Repeat(",4", 1000) + "\n", RefusedManyColumns},
}

func TestRefusals(t *testing.T) {
	for _, c := range refusals {
		t.Run(c.name, func(t *testing.T) {
			line := 0
			if at := strings.Index(c.in, "¶"); at >= 0 {
				line = 1 + strings.Count(c.in[:at], "\n")
			}
			_, err := Read(context.Background(), strings.NewReader(strings.ReplaceAll(c.in, "¶", "")), "f.csv", nil)
			var why *Refusal
			if !errors.As(err, &why) || why.Code != c.code || why.Line != line || why.Name != "f.csv" {
				t.Fatalf("got %v, want %s at line %d", err, c.code, line)
			}
			if !strings.HasPrefix(why.Error(), "f.csv:") {
				t.Errorf("%q doesn't name the file", why.Error())
			}
		})
	}
}

// endless is a reader of size bytes without a line end that counts what was taken.
type endless struct{ size, taken int64 }

func (e *endless) Read(p []byte) (int, error) {
	n := min(int64(len(p)), e.size-e.taken)
	if n == 0 {
		return 0, io.EOF
	}
	for i := range p[:n] {
		p[i] = '7'
	}
	e.taken += n
	return int(n), nil
}

// A line of two gigabytes is refused after little more than the longest line was read, wherever it stands.
func TestLongLine(t *testing.T) {
	for _, before := range []string{"", "time,temp °C\n2026-01-13 10:00,4.5\n2026-01-13 11:00,4.5\n"} {
		long := &endless{size: 2 << 30}
		var start, end runtime.MemStats
		runtime.ReadMemStats(&start)
		_, err := Read(context.Background(), io.MultiReader(strings.NewReader(before), long), "f.csv", nil)
		runtime.ReadMemStats(&end)
		var why *Refusal
		if !errors.As(err, &why) || why.Code != RefusedLongLine || why.Line != 1+strings.Count(before, "\n") {
			t.Errorf("got %v", err)
		}
		if long.taken > 2*maxLine {
			t.Errorf("%d bytes were read", long.taken)
		}
		if used := end.TotalAlloc - start.TotalAlloc; used > 16<<20 {
			t.Errorf("%d bytes were allocated", used)
		}
	}
}

// The longest line there may be is read; one byte more is refused.
func TestLineBound(t *testing.T) {
	head := "time,temp °C,note\n2026-01-13 10:00,4.5,"
	for _, over := range []int{0, 1} {
		note := strings.Repeat("x", maxLine-len("2026-01-13 11:00,5.5,")+over)
		_, err := Read(context.Background(), strings.NewReader(head+"a\n2026-01-13 11:00,5.5,"+note+"\n2026-01-13 12:00,6.5,b\n"), "f.csv", nil)
		if over == 0 && err != nil {
			t.Errorf("at the bound: %v", err)
		}
		if over == 1 && err == nil {
			t.Error("one byte over the bound was read")
		}
	}
}

// manyRows is a log of n rows, a minute apart.
func manyRows(n int) []byte {
	var b bytes.Buffer
	b.WriteString("time,temp °C,rh %\n")
	at := time.Date(2025, 11, 1, 0, 0, 0, 0, time.UTC)
	for i := range n {
		fmt.Fprintf(&b, "%s,%d.%02d,%d.%d\n", at.Format("2006-01-02T15:04:05"), i%7, i%100, 60+i%30, i%10)
		at = at.Add(time.Minute)
	}
	return b.Bytes()
}

// cancelling ends its context after some reads.
type cancelling struct {
	io.Reader
	cancel context.CancelFunc
	left   int
}

func (c *cancelling) Read(p []byte) (int, error) {
	if c.left--; c.left < 0 {
		c.cancel()
	}
	return c.Reader.Read(p[:min(len(p), 64<<10)])
}

func TestCancel(t *testing.T) {
	body := manyRows(200_000)
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	source := bytes.NewReader(body)
	_, err := Read(ctx, &cancelling{source, cancel, 20}, "f.csv", nil)
	if !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	if read := len(body) - source.Len(); read > 3<<20 {
		t.Errorf("%d bytes were read after the end", read)
	}
}

var errDisk = errors.New("the disk went away")

// broken fails after its text.
type broken struct{ io.Reader }

func (b broken) Read(p []byte) (int, error) {
	n, err := b.Reader.Read(p)
	if err == io.EOF {
		err = errDisk
	}
	return n, err
}

// A reader's own error is returned as it is, never taken for the end of the file.
func TestReaderError(t *testing.T) {
	for _, rows := range []int{0, 2, 100_000} {
		_, err := Read(context.Background(), broken{bytes.NewReader(manyRows(rows))}, "f.csv", nil)
		if !errors.Is(err, errDisk) {
			t.Errorf("%d rows: got %v", rows, err)
		}
	}
}

// However the reader hands out its bytes, the export is the same.
func TestAnyPieces(t *testing.T) {
	body := manyRows(30_000)
	want, err := Read(context.Background(), bytes.NewReader(body), "f.csv", nil)
	if err != nil {
		t.Fatal(err)
	}
	random := rand.New(rand.NewSource(1))
	got, err := Read(context.Background(), &pieces{body, random}, "f.csv", nil)
	if err != nil {
		t.Fatal(err)
	}
	if describe(got) != describe(want) || got.Rows != 30_000 {
		t.Errorf("got\n%s\nwant\n%s", describe(got), describe(want))
	}
}

// pieces hands out a text in pieces of random size.
type pieces struct {
	left   []byte
	random *rand.Rand
}

func (p *pieces) Read(to []byte) (int, error) {
	if len(p.left) == 0 {
		return 0, io.EOF
	}
	n := copy(to[:min(len(to), 1+p.random.Intn(7000))], p.left)
	p.left = p.left[n:]
	return n, nil
}

// Past a thousand lines with the same fault there is still one remark, and it counts them all.
func TestGroupedRemarks(t *testing.T) {
	var b strings.Builder
	b.WriteString("time,temp °C\n")
	for i := range 3000 {
		fmt.Fprintf(&b, "2026-01-%02d 10:00,4.5\n2026-01-40 10:00,5.5\n2026-01-%02d 11:00,warm\n", 1+i%28, 1+i%28)
	}
	e, err := Read(context.Background(), strings.NewReader(b.String()), "f.csv", nil)
	if err != nil {
		t.Fatal(err)
	}
	counts := map[string]int{}
	for _, r := range e.Remarks {
		counts[r.Code]++
		if (r.Code == RemarkBadTime || r.Code == RemarkUnreadable) && r.Count != 3000 {
			t.Errorf("%+v", r)
		}
		if r.Code == RemarkBadTime && (r.Line != 3 || r.LastLine != 2+3*2999+1) {
			t.Errorf("%+v", r)
		}
	}
	if counts[RemarkBadTime] != 1 || counts[RemarkUnreadable] != 1 || e.BadTime != 3000 || e.Rows != 9000 {
		t.Errorf("%v, %d of %d rows bad", counts, e.BadTime, e.Rows)
	}
}
