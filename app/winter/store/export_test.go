package store

import (
	"context"
	"errors"
	"io"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"thawbook/app/winter"
)

func TestFilesComeBackByteForByte(t *testing.T) {
	s := begun(t)
	rng := rand.New(rand.NewPCG(1, 1))
	noise := make([]byte, 3<<20) // packs into no less: several pieces
	for i := range noise {
		noise[i] = byte(rng.Uint32())
	}
	texts := []string{"x", logOf(1, 20000), string(noise), "\ufefftime;T\r\n", strings.Repeat("\x00", 1<<20)}
	var all []Arrival
	for _, text := range texts {
		all = append(all, arrival("some folder/data.csv", text))
	}
	taken, err := s.Take(context.Background(), all)
	if err != nil {
		t.Fatal(err)
	}
	s = again(t, s)
	for i, e := range taken {
		if bytesOf(t, s, e.Name) != texts[i] || e.Size != int64(len(texts[i])) || e.Came != "some folder/data.csv" {
			t.Errorf("%+v comes back as something else", e)
		}
	}
}

func TestAFileIsKeptOnce(t *testing.T) {
	s := begun(t)
	one, err := s.Take(context.Background(), []Arrival{arrival("a.csv", "same"), arrival("b.csv", "same")})
	if err != nil {
		t.Fatal(err)
	}
	two, err := again(t, s).Take(context.Background(), []Arrival{arrival("c.csv", "same")})
	if err != nil || one[0] != one[1] || one[0] != two[0] || one[0].Name != "a.csv" {
		t.Errorf("%+v, then %+v (%v)", one, two, err)
	}
}

func TestNamesOfFiles(t *testing.T) {
	var all []Export
	for _, c := range []struct{ came, want string }{
		{"room.csv", "room.csv"}, {"/logs/north/room.csv", "room (2).csv"}, {`C:\logs\ROOM.csv`, "ROOM (3).csv"},
		{"../../etc/passwd", "passwd"}, {"..", "file"}, {"", "file (2)"}, {"a\x00b\n<c>.csv", "a_b__c_.csv"}, {"wall [1]!x*.csv", "wall _1__x_.csv"},
		{"Kühlraum Süd.csv", "Kühlraum Süd.csv"}, {"\xff\xfe.csv", "_.csv"}, {".csv", ".csv"}, {"noending", "noending"},
	} {
		all = append(all, Export{Name: freeName(c.came, all)})
		if got := all[len(all)-1].Name; got != c.want {
			t.Errorf("%q is kept as %q, want %q", c.came, got, c.want)
		}
	}
}

// Whatever ends it, either every file of a drop is kept or none is, and the winter goes on.
func TestAllOrNone(t *testing.T) {
	s := begun(t)
	stopped, stop := context.WithCancel(context.Background())
	broken := arrival("c.csv", "text")
	broken.Open = func() (io.ReadCloser, error) { return nil, os.ErrPermission }
	changed := arrival("d.csv", "text")
	changed.Open = func() (io.ReadCloser, error) { return io.NopCloser(strings.NewReader("other text")), nil }
	halts := arrival("e.csv", "text")
	halts.Open = func() (io.ReadCloser, error) { stop(); return io.NopCloser(strings.NewReader("text")), nil }
	for _, c := range []struct {
		second Arrival
		is     error
		code   Code
	}{{broken, os.ErrPermission, ReadOnly}, {changed, nil, Changed}, {halts, context.Canceled, Failed}, {Arrival{SHA256: "zz"}, nil, Failed}} {
		_, err := s.Take(stopped, []Arrival{arrival("a.csv", "first"), c.second})
		if code(err) != c.code || c.is != nil && !errors.Is(err, c.is) {
			t.Errorf("%v, want %s", err, c.code)
		}
		if len(s.Exports()) != 0 {
			t.Errorf("%d files are kept", len(s.Exports()))
		}
	}
	if _, err := s.Take(context.Background(), []Arrival{arrival("a.csv", "first")}); err != nil {
		t.Error(err)
	}
	if s = again(t, s); len(s.Exports()) != 1 || bytesOf(t, s, "a.csv") != "first" {
		t.Errorf("%+v", s.Exports())
	}
}

func TestUndoLeavesFilesAlone(t *testing.T) {
	s := begun(t)
	if _, err := s.Take(context.Background(), []Arrival{arrival("a.csv", "text")}); err != nil {
		t.Fatal(err)
	}
	if err := s.Commit(Step{What: "add", Winter: titled("with a.csv")}); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Undo(); err != nil {
		t.Fatal(err)
	}
	if s = again(t, s); bytesOf(t, s, "a.csv") != "text" {
		t.Error("the file is gone")
	}
}

// Twenty loggers over five months at a minute: the file is at most 35 % of what came, the house's own aim.
func TestTheFileIsSmall(t *testing.T) {
	s := begun(t)
	came := 0
	var all []Arrival
	for i := range 4 { // a fifth of it; the share does not depend on how many
		text := logOf(i, 216000)
		came += len(text)
		all = append(all, arrival("log.csv", text))
	}
	if _, err := s.Take(context.Background(), all); err != nil {
		t.Fatal(err)
	}
	s.Close()
	info, err := os.Stat(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	share := float64(info.Size()) / float64(came)
	t.Logf("%d bytes came, the file has %d: %.1f %%", came, info.Size(), 100*share)
	if share > 0.35 {
		t.Errorf("the file is %.0f %% of what came", 100*share)
	}
}

func TestAFileThatIsNotThere(t *testing.T) {
	if _, err := begun(t).OpenExport("none.csv"); code(err) != Missing {
		t.Errorf("%v", err)
	}
}

// An export whose packed bytes were changed behind our back is not passed off as the file that came.
func TestAChangedExportIsNotGivenBack(t *testing.T) {
	for _, sql := range []string{"UPDATE piece SET data=x'28b52ffd0000' WHERE n=0", "DELETE FROM piece", "UPDATE export SET size=5", "UPDATE export SET sha256=zeroblob(32)"} {
		c := begun(t)
		if _, err := c.Take(context.Background(), []Arrival{arrival("a.csv", logOf(7, 3000))}); err != nil {
			t.Fatal(err)
		}
		if err := c.conn.Exec(sql); err != nil {
			t.Fatal(err)
		}
		c = again(t, c)
		in, err := c.OpenExport("a.csv")
		if err != nil {
			t.Fatal(err)
		}
		if _, err := io.ReadAll(in); code(err) != Damaged {
			t.Errorf("%s: %v", sql, err)
		}
		in.Close()
	}
}

func TestADocumentTooLarge(t *testing.T) {
	s := begun(t)
	w := winter.Winter{Name: strings.Repeat("n", maxDocBytes)}
	if err := s.Commit(Step{Winter: w}); code(err) != Failed || s.Winter().Name != "first" {
		t.Errorf("%v", err)
	}
}
