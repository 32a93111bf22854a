package store

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"testing"

	"thawbook/app/winter"
)

// titled is a small document that differs by its name.
func titled(name string) winter.Winter {
	at := int64(1762900000000)
	return winter.Winter{Name: name, Zone: "Europe/Tallinn", Barns: []winter.Barn{{Name: "Alder", BeesIn: &at}}}
}

// begun makes a winter in a folder of the test; it is closed when the test ends.
func begun(t testing.TB) *Store {
	t.Helper()
	s, err := Create(filepath.Join(t.TempDir(), "w.thawbook"), Step{At: 1, What: "begun", Winter: titled("first")})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

// again closes a winter and opens it anew.
func again(t testing.TB, s *Store) *Store {
	t.Helper()
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	next, err := Open(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { next.Close() })
	return next
}

// code is the code of an error, "" of none.
func code(err error) Code {
	var own *Error
	if errors.As(err, &own) {
		return own.Code
	}
	if err != nil {
		return Code("not ours: " + err.Error())
	}
	return ""
}

func TestAWinterComesBack(t *testing.T) {
	s := begun(t)
	w := titled("second")
	if err := s.Commit(Step{At: 2, What: "rename", Winter: w}); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(s.Path() + lockSuffix); err != nil {
		t.Errorf("no lock lies beside an open winter: %v", err)
	}
	next := again(t, s)
	if !reflect.DeepEqual(next.Winter(), w) || next.Mode() != Writable {
		t.Errorf("%+v, %s", next.Winter(), next.Mode())
	}
	next.Close()
	if left, _ := filepath.Glob(filepath.Join(filepath.Dir(s.Path()), "*")); len(left) != 1 {
		t.Errorf("beside the one file lie %q", left)
	}
}

// The header says what kind of file it is, by the places the file format gives (sqlite.org/fileformat2.html 1.3).
func TestTheHeader(t *testing.T) {
	s := begun(t)
	s.Close()
	text, err := os.ReadFile(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	if string(text[:16]) != "SQLite format 3\x00" || string(text[68:72]) != "Thaw" || !bytes.Equal(text[60:64], []byte{0, 0, 0, byte(version())}) {
		t.Errorf("header % x", text[:100])
	}
	if text[18] != 1 || text[19] != 1 {
		t.Errorf("journal versions %d and %d; 1 and 1 are those of a rollback journal", text[18], text[19])
	}
}

func TestNothingIsWrittenOver(t *testing.T) {
	s := begun(t)
	if _, err := Create(s.Path(), Step{Winter: titled("other")}); code(err) != Exists {
		t.Errorf("made over another winter: %v", err)
	}
	if err := s.SaveCopy(s.Path()); code(err) != Exists {
		t.Errorf("copied onto itself: %v", err)
	}
	stray := filepath.Join(t.TempDir(), "new.thawbook")
	if err := os.WriteFile(stray+journalSuffix, []byte("journal"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Create(stray, Step{Winter: titled("other")}); code(err) != Exists {
		t.Errorf("made beside a journal that would be taken for its own: %v", err)
	}
}

// A newer file is read and not written; one whose tables this program can't read safely is refused.
func TestANewerFile(t *testing.T) {
	path := craft(t, fmt.Sprintf("ALTER TABLE step ADD COLUMN mood TEXT; CREATE TABLE later(x); PRAGMA user_version=%d", version()+1))
	before, _ := os.ReadFile(path)
	s, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	if s.Mode() != Newer || s.Winter().Name != "first" {
		t.Errorf("%s, %q", s.Mode(), s.Winter().Name)
	}
	if err := s.Commit(Step{Winter: titled("x")}); code(err) != ReadOnly {
		t.Errorf("an edit: %v", err)
	}
	s.Close()
	if after, _ := os.ReadFile(path); !bytes.Equal(before, after) {
		t.Error("the file was written to")
	}
	for _, sql := range []string{"CREATE VIEW later AS SELECT 1", "CREATE TRIGGER t AFTER INSERT ON step BEGIN SELECT 1; END", "CREATE TABLE g(x, y GENERATED ALWAYS AS (zeroblob(x)))"} {
		path := craft(t, fmt.Sprintf("%s; PRAGMA user_version=%d", sql, version()+1))
		if _, err := Open(path); code(err) != TooNew {
			t.Errorf("%s: %v", sql, err)
		}
	}
}

// Every version of the schema so far, as files made when it was the newest, and a step beyond invented here.
func TestOlderFilesAreBroughtForward(t *testing.T) {
	defer func(real []string) { migrations = real }(migrations)
	migrations = append(migrations[:len(migrations):len(migrations)], "CREATE TABLE later(x INTEGER); INSERT INTO later SELECT count(*) FROM step")
	for v := 1; v < version(); v++ {
		kept, err := os.ReadFile(filepath.Join("testdata", fmt.Sprintf("v%d.thawbook", v)))
		if err != nil {
			t.Fatalf("there is no file of version %d to try: %v", v, err)
		}
		path := filepath.Join(t.TempDir(), "old.thawbook")
		if err := os.WriteFile(path, kept, 0o600); err != nil {
			t.Fatal(err)
		}
		s, err := Open(path)
		if err != nil {
			t.Fatal(err)
		}
		if s.Winter().Name != "Third name" || len(s.Exports()) != 1 {
			t.Errorf("version %d: %q with %d exports", v, s.Winter().Name, len(s.Exports()))
		}
		if moved, err := s.Undo(); !moved || err != nil || s.Winter().Name != "Second name" {
			t.Errorf("version %d: undo gives %q, %v", v, s.Winter().Name, err)
		}
		s = again(t, s)
		if got := bytesOf(t, s, "room.csv"); got != "time,T\n2025-11-12 00:00,4.0\n" || s.Winter().Name != "Second name" {
			t.Errorf("version %d, reopened: %q, export %q", v, s.Winter().Name, got)
		}
		s.Close()
		if head, err := headerOf(path); err != nil || head.version != version() {
			t.Errorf("version %d became %+v, %v", v, head, err)
		}
	}
}

// bytesOf is an export read back.
func bytesOf(t testing.TB, s *Store, name string) string {
	t.Helper()
	in, err := s.OpenExport(name)
	if err != nil {
		t.Fatal(err)
	}
	defer in.Close()
	text, err := io.ReadAll(in)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestACopyIsTheWholeWinter(t *testing.T) {
	s := begun(t)
	if _, err := s.Take(context.Background(), []Arrival{arrival("a.csv", logOf(1, 5000))}); err != nil {
		t.Fatal(err)
	}
	if err := s.Commit(Step{At: 2, What: "rename", Winter: titled("second")}); err != nil {
		t.Fatal(err)
	}
	to := filepath.Join(t.TempDir(), "copy of it, 100 % & #1?.thawbook")
	for range 2 { // the second replaces the first
		if err := s.SaveCopy(to); err != nil {
			t.Fatal(err)
		}
	}
	c, err := Open(to)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	if c.Winter().Name != "second" || bytesOf(t, c, "a.csv") != logOf(1, 5000) {
		t.Error("the copy is another winter")
	}
	if moved, err := c.Undo(); !moved || err != nil || c.Winter().Name != "first" {
		t.Errorf("the copy's history is gone: %v", err)
	}
	if err := s.SaveCopy(to); code(err) != InUse {
		t.Errorf("copied over an open winter: %v", err)
	}
}

func TestASecondOpeningReadsOnly(t *testing.T) {
	s := begun(t)
	link := filepath.Join(t.TempDir(), "link.thawbook")
	if err := os.Symlink(s.Path(), link); err != nil {
		t.Fatal(err)
	}
	second, err := Open(link) // by another name
	if err != nil {
		t.Fatal(err)
	}
	defer second.Close()
	if second.Mode() != Elsewhere || second.Winter().Name != "first" {
		t.Errorf("%s, %q", second.Mode(), second.Winter().Name)
	}
	if _, err := second.Take(context.Background(), []Arrival{arrival("a.csv", "x")}); code(err) != ReadOnly {
		t.Errorf("%v", err)
	}
	s.Close()
	third, err := Open(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	defer third.Close()
	if third.Mode() != Writable {
		t.Errorf("after the first was closed: %s", third.Mode())
	}
}

// Reading alone changes nothing, not even what an older file is.
func TestReadingOnly(t *testing.T) {
	s := begun(t)
	s.Close()
	before, _ := os.ReadFile(s.Path())
	r, err := Read(s.Path())
	if err != nil {
		t.Fatal(err)
	}
	if r.Mode() != Protected || r.Winter().Name != "first" {
		t.Errorf("%s, %q", r.Mode(), r.Winter().Name)
	}
	if err := r.Commit(Step{Winter: titled("x")}); code(err) != ReadOnly {
		t.Errorf("%v", err)
	}
	other, err := Open(s.Path())
	if err != nil || other.Mode() != Writable {
		t.Fatalf("%v: a reader keeps others from writing", err)
	}
	other.Close()
	r.Close()
	if after, _ := os.ReadFile(s.Path()); !bytes.Equal(before, after) {
		t.Error("the file was written to")
	}
}

func TestAfterItWasClosed(t *testing.T) {
	s := begun(t)
	s.Close()
	_, undo := s.Undo()
	_, take := s.Take(context.Background(), nil)
	for _, err := range []error{s.Commit(Step{Winter: titled("x")}), undo, take, s.SaveCopy(filepath.Join(t.TempDir(), "x")), s.Close()} {
		if err != nil && !strings.Contains(err.Error(), "closed") {
			t.Errorf("%v", err)
		}
	}
}

func TestWhatWasSeenIsRemembered(t *testing.T) {
	s := begun(t)
	if seen, err := s.Seen(); seen != nil || err != nil {
		t.Errorf("before anything was seen: %q, %v", seen, err)
	}
	if err := s.See([]byte("held 97")); err != nil {
		t.Fatal(err)
	}
	if seen, err := again(t, s).Seen(); string(seen) != "held 97" || err != nil {
		t.Errorf("%q, %v", seen, err)
	}
}

// Another winter put in the place of an open one is not written to, and a copy is of the one that was opened.
func TestAReplacedFile(t *testing.T) {
	s, other := begun(t), begun(t)
	other.Close()
	if err := os.Rename(other.Path(), s.Path()); err != nil {
		t.Fatal(err)
	}
	if err := s.Commit(Step{Winter: titled("second")}); err == nil {
		t.Error("an edit of a replaced file went through")
	}
	if _, err := s.Take(context.Background(), []Arrival{arrival("a.csv", "x")}); err == nil {
		t.Error("a file was taken into a replaced file")
	}
	to := filepath.Join(t.TempDir(), "copy.thawbook")
	if err := s.SaveCopy(to); err != nil {
		t.Fatal(err)
	}
	if c, err := Open(to); err != nil || c.Winter().Name != "first" {
		t.Errorf("%v", err)
	} else {
		c.Close()
	}
}

// Of many who want one name at once one gets it, and the others leave it alone.
func TestOneNameWantedByMany(t *testing.T) {
	path := filepath.Join(t.TempDir(), "w.thawbook")
	var got sync.WaitGroup
	made := make(chan string, 8)
	for i := range 8 {
		got.Go(func() {
			s, err := Create(path, Step{Winter: titled(fmt.Sprint(i))})
			if err == nil {
				made <- s.Winter().Name
				s.Close()
			} else if code(err) != Exists {
				t.Errorf("%v", err)
			}
		})
	}
	got.Wait()
	close(made)
	var names []string
	for name := range made {
		names = append(names, name)
	}
	s, err := Open(path)
	if err != nil || len(names) != 1 || s.Winter().Name != names[0] {
		t.Fatalf("made by %v, %v", names, err)
	}
	s.Close()
}

// What was undone, and what an edit dropped, does not hold again after a rescue.
func TestARescueKeepsWhatHeld(t *testing.T) {
	s := begun(t)
	for i := range 10 {
		if err := s.Commit(Step{At: int64(i+2) * 1e7, What: "rename", Winter: titled(fmt.Sprint("edit ", i))}); err != nil {
			t.Fatal(err)
		}
	}
	for range 3 {
		if _, err := s.Undo(); err != nil {
			t.Fatal(err)
		}
	}
	rescued := func() string {
		s.Close()
		to := filepath.Join(t.TempDir(), "new.thawbook")
		if _, err := Rescue(context.Background(), s.Path(), to); err != nil {
			t.Fatal(err)
		}
		r, err := Open(to)
		if err != nil {
			t.Fatal(err)
		}
		defer r.Close()
		return r.Winter().Name
	}
	if got := rescued(); got != "edit 6" {
		t.Errorf("undone edits hold again: %q", got)
	}
	s = again(t, s)
	if err := s.Commit(Step{At: 20e7, What: "rename", Winter: titled("another")}); err != nil {
		t.Fatal(err)
	}
	if got := rescued(); got != "another" {
		t.Errorf("a dropped edit holds again: %q", got)
	}
}
