package store

import (
	"bytes"
	"context"
	"encoding/hex"
	"fmt"
	"math/rand/v2"
	"os"
	"testing"

	"github.com/ncruces/go-sqlite3"
)

// What is carved out of a sound file page by page is what SQLite itself reads by its tables.
func TestCarvingASoundFile(t *testing.T) {
	s := begun(t)
	rng := rand.New(rand.NewPCG(5, 5))
	noise := make([]byte, 1500000)
	for i := range noise {
		noise[i] = byte(rng.Uint32())
	}
	if _, err := s.Take(context.Background(), []Arrival{arrival("a.csv", "x"), arrival("b.csv", logOf(1, 9000)), arrival("c.bin", string(noise))}); err != nil {
		t.Fatal(err)
	}
	for i := range 60 {
		if err := s.Commit(Step{At: int64(i) << (i % 40), What: "rename", Winter: titled(fmt.Sprint(i))}); err != nil {
			t.Fatal(err)
		}
	}
	want := map[string]bool{}
	for _, table := range []string{"step", "export", "piece"} {
		err := rows(s.conn, "SELECT * FROM "+table, func(row *sqlite3.Stmt) error {
			text := fmt.Sprint(row.ColumnInt64(0))
			for i := 1; i < row.ColumnCount(); i++ {
				text += "|" + shownColumn(row, i)
			}
			want[text] = true
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	s.Close()
	file, err := os.Open(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	info, err := file.Stat()
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]bool{}
	carver{file, info.Size() / pageSize}.each(func(id int64, row []value) {
		if len(row) == 0 || row[0].kind != 'n' { // sqlite_schema's rows have no id of their own
			return
		}
		text := fmt.Sprint(id)
		for _, v := range row[1:] {
			text += "|" + shownValue(v)
		}
		found[text] = true
	})
	for row := range want {
		if !found[row] {
			t.Errorf("not carved out: %.80s", row)
		}
	}
	if len(want) < 60+3+4 {
		t.Errorf("only %d rows to find", len(want))
	}
}

func shownColumn(row *sqlite3.Stmt, i int) string {
	if row.ColumnType(i) == sqlite3.INTEGER {
		return fmt.Sprint(row.ColumnInt64(i))
	}
	return hex.EncodeToString(row.ColumnRawBlob(i))
}

func shownValue(v value) string {
	if v.kind == 'i' {
		return fmt.Sprint(v.n)
	}
	return hex.EncodeToString(v.bytes)
}

// The varints of the file format's own description (sqlite.org/fileformat2.html, 1.6): big-endian, seven bits a
// byte, eight in the ninth.
func TestVarints(t *testing.T) {
	for _, c := range []struct {
		text string
		want int64
		left int
	}{
		{"00", 0, 0}, {"7f", 127, 0}, {"8100", 128, 0}, {"82ff7f01", 49151, 1}, {"ffffffffffffffffff", -1, 0}, {"80808080808080808005", 128, 1},
	} {
		p, _ := hex.DecodeString(c.text)
		n, rest, ok := varint(p)
		if !ok || n != c.want || len(rest) != c.left {
			t.Errorf("%s: %d, %d bytes left, %v", c.text, n, len(rest), ok)
		}
	}
	for _, cut := range []string{"", "80", "ffff"} {
		p, _ := hex.DecodeString(cut)
		if _, _, ok := varint(p); ok {
			t.Errorf("%q is cut off", cut)
		}
	}
}

// Whatever lies in a page, carving it neither fails nor goes on for ever: real pages with bytes changed at random, most
// of them where a page says what is where.
func TestCarvingAnything(t *testing.T) {
	text, err := os.ReadFile("testdata/v1.thawbook")
	if err != nil {
		t.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(6, 6))
	rows := 0
	for range 20000 {
		at := pageSize * rng.IntN(len(text)/pageSize)
		page := bytes.Clone(text[at : at+pageSize])
		for range 1 + rng.IntN(20) {
			reach := []int{16, 128, pageSize}[rng.IntN(3)]
			page[rng.IntN(reach)] = byte(rng.Uint32())
		}
		in := bytes.NewReader(append(bytes.Repeat([]byte{0}, pageSize), page[:pageSize-rng.IntN(2)*rng.IntN(pageSize)]...))
		found := finds{exports: map[int64]Export{}, pieces: map[int64]map[int64][]byte{}, steps: map[int64]Step{}}
		carver{in, 2}.each(func(id int64, row []value) { rows++; found.row(id, row) })
	}
	if rows == 0 {
		t.Error("no row was found in any page")
	}
}
