package store

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	process "os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// TestWindowChild holds a winter open and edits it until it is killed. It tells each edit it was granted.
func TestWindowChild(t *testing.T) {
	arg := asChild(t)
	s, err := Open(arg[0])
	if err != nil || s.Mode() != Writable {
		t.Fatal(s, err)
	}
	rnd := rand.New(rand.NewPCG(3, 3))
	for n := 1; ; n++ {
		if err := s.Commit(edit(n, "", noise(rnd, 3000))); err != nil {
			fmt.Fprintln(os.Stdout, "bad", err)
			return
		}
		if n%10 == 0 && n <= 100 {
			text := noise(rnd, 50_000)
			if _, err := s.Take(context.Background(), []Arrival{arrival(fmt.Sprint(n, ".csv"), text)}); err != nil {
				fmt.Fprintln(os.Stdout, "bad", err)
				return
			}
		}
		fmt.Fprintln(os.Stdout, "did", n)
	}
}

// withLogs is a winter with two exports at a path, closed.
func withLogs(t *testing.T, path string) {
	t.Helper()
	s, err := Create(path, edit(0, "", ""))
	if err != nil {
		t.Fatal(err)
	}
	rnd := rand.New(rand.NewPCG(2, 2))
	if _, err := s.Take(context.Background(), []Arrival{arrival("a.csv", noise(rnd, 400_000)), arrival("b.csv", noise(rnd, 900))}); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
}

// reads makes sure that a store gives back every export it lists, at least so many, and that edits are refused.
func reads(t *testing.T, s *Store, mode Mode, exports int) {
	t.Helper()
	if s.Mode() != mode {
		t.Errorf("it opens %s, not %s", s.Mode(), mode)
	}
	if n := len(s.Exports()); n < exports {
		t.Errorf("%d exports, not %d", n, exports)
	}
	for _, e := range s.Exports() {
		if err := readsBack(s, e); err != nil {
			t.Error(err)
		}
	}
	if err := s.Commit(edit(7000, "", "")); code(err) != ReadOnly {
		t.Errorf("an edit gives %v", err)
	}
}

// copies saves a copy, which must open and hold a document, whole exports and a history.
func copies(t *testing.T, s *Store, to string, exports int) (document string) {
	t.Helper()
	if err := s.SaveCopy(to); err != nil {
		t.Errorf("a copy: %v", err)
		return ""
	}
	c, err := Open(to)
	if err != nil {
		t.Errorf("the copy: %v", err)
		return ""
	}
	defer c.Close()
	if c.Mode() != Writable || len(c.Exports()) < exports {
		t.Errorf("the copy opens %s with %d exports", c.Mode(), len(c.Exports()))
	}
	for _, e := range c.Exports() {
		if err := readsBack(c, e); err != nil {
			t.Error(err)
		}
	}
	return number(c)
}

// TestTwoWindows reads a winter for two seconds while another process edits it, then takes over from it.
func TestTwoWindows(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "w.thawbook")
	withLogs(t, path)
	cmd, lines := child(t, "TestWindowChild", path)
	defer cmd.Wait()
	defer cmd.Process.Kill()
	if first := <-lines; first != "did 1" {
		t.Fatal(first)
	}
	looks, last := 0, ""
	own := filepath.Join(t.TempDir(), "own.thawbook")
	for until := time.Now().Add(2 * time.Second); time.Now().Before(until); looks++ {
		s, err := Open(path)
		if err != nil {
			t.Fatal(err)
		}
		reads(t, s, Elsewhere, 2)
		seen := number(s)
		if got := copies(t, s, own, 2); len(got) < len(seen) || len(got) == len(seen) && got < seen {
			t.Errorf("the copy holds document %s, older than %s", got, seen)
		}
		s.Close()
	}
	other, err := Open(own)
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	if err := other.SaveCopy(path); code(err) != InUse {
		t.Errorf("a copy over a winter that is open elsewhere gives %v", err)
	}
	cmd.Process.Kill()
	for line := range lines {
		last = line
		if strings.HasPrefix(line, "bad") {
			t.Error("the child: ", line)
		}
	}
	s, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if s.Mode() != Writable {
		t.Errorf("after the other window was killed it opens %s", s.Mode())
	}
	n := strings.TrimPrefix(last, "did ")
	if got := number(s); got != n && got != fmt.Sprint(atoi(t, n)+1) {
		t.Errorf("document %s holds, acknowledged was %s", got, n)
	}
	t.Logf("SUMMARY two windows: %d times opened, read and copied beside %s edits of another process", looks, n)
}

func atoi(t *testing.T, text string) (n int) {
	t.Helper()
	if _, err := fmt.Sscan(text, &n); err != nil {
		t.Fatal(err)
	}
	return n
}

// readOnly makes a mounted folder one that may not be written, and gives what lies in it.
func readOnly(t *testing.T, dir string) map[string][]byte {
	t.Helper()
	if said, err := process.Command("mount", "-o", "remount,ro", dir).CombinedOutput(); err != nil {
		t.Skipf("a disk can't be made read-only here: %v, %s", err, said)
	}
	return filesIn(t, dir)
}

func filesIn(t *testing.T, dir string) map[string][]byte {
	t.Helper()
	found, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string][]byte{}
	for _, entry := range found {
		if out[entry.Name()], err = os.ReadFile(filepath.Join(dir, entry.Name())); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// unchanged makes sure that a folder holds what it held.
func unchanged(t *testing.T, dir string, was map[string][]byte) {
	t.Helper()
	now := filesIn(t, dir)
	if len(now) != len(was) {
		t.Errorf("%d files, there were %d", len(now), len(was))
	}
	for name, data := range was {
		if !bytes.Equal(now[name], data) {
			t.Errorf("%s has changed", name)
		}
	}
}

// TestAReadOnlyDisk opens a winter on a disk that may not be written.
func TestAReadOnlyDisk(t *testing.T) {
	dir := mounted(t, "8m")
	path := filepath.Join(dir, "w.thawbook")
	withLogs(t, path)
	was := readOnly(t, dir)
	s, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	reads(t, s, Protected, 2)
	if got := copies(t, s, filepath.Join(t.TempDir(), "c.thawbook"), 2); got != "0" {
		t.Errorf("the copy holds document %s", got)
	}
	if err := s.SaveCopy(filepath.Join(dir, "c.thawbook")); code(err) == "" {
		t.Errorf("a copy onto that disk gives %v", err)
	}
	s.Close()
	unchanged(t, dir, was)
}

// TestAJournalOnAReadOnlyDisk opens a winter whose program was killed in the middle of an edit, on a disk
// that may not be written: the document before that edit is shown.
func TestAJournalOnAReadOnlyDisk(t *testing.T) {
	r := played(t, "EXTRA")
	last := len(r.done) - 1
	k := r.done[last] - 1 // the journal's deletion is not made
	dir := mounted(t, "8m")
	for name, data := range r.tape.disk(k, dice{rand.New(rand.NewPCG(1, 1)), 1}) {
		if err := os.WriteFile(filepath.Join(dir, filepath.Base(name)), data, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	path := filepath.Join(dir, "w.thawbook")
	if !hotJournal(path) {
		t.Fatal("no journal was left")
	}
	was := readOnly(t, dir)
	s, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	reads(t, s, Protected, 3)
	if held, err := state(s.conn); err != nil || held != r.states[last-1] {
		t.Errorf("not what was there before the edit, %v", err)
	}
	copies(t, s, filepath.Join(t.TempDir(), "c.thawbook"), 3)
	temp := s.temp
	s.Close()
	if _, err := os.Stat(temp); err == nil || temp == "" {
		t.Errorf("the copy it was read from stands in %q", temp)
	}
	unchanged(t, dir, was)
}
