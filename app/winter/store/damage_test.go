package store

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"
)

// damage is a winter file that was whole, and what it held.
type damage struct {
	whole  []byte
	sums   map[string]bool // of its exports
	onPage map[int]int     // exports that have a piece or their row begin on a page
	mutex  sync.Mutex
	tally  map[string]*tally
}

// tally counts the damages of a kind: how many files still opened, and how many exports came through a rescue.
type tally struct{ files, opened, exports, whole, noDocument int }

// newDamage is a winter of some exports and thirty steps.
func newDamage(t *testing.T, sizes ...int) *damage {
	t.Helper()
	d := &damage{sums: map[string]bool{}, tally: map[string]*tally{}}
	path := filepath.Join(quickDir(t), "whole.thawbook")
	s, err := Create(path, edit(0, "", ""))
	if err != nil {
		t.Fatal(err)
	}
	rnd := rand.New(rand.NewPCG(4, 4))
	texts := []string{logOf(1, 5000), logOf(2, 500)}
	for _, size := range sizes {
		texts = append(texts, noise(rnd, size))
	}
	for i, text := range texts {
		a := arrival(fmt.Sprintf("logger %d.csv", i), text)
		if _, err := s.Take(context.Background(), []Arrival{a}); err != nil {
			t.Fatal(err)
		}
		d.sums[a.SHA256] = true
	}
	for n := 1; n < 30; n++ {
		if err := s.Commit(edit(n, "", strings.Repeat("the keeper's note ", n))); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if d.whole, err = os.ReadFile(path); err != nil {
		t.Fatal(err)
	}
	d.onPage = exportsByPage(d.whole)
	return d
}

// exportsByPage counts, of a whole file, the exports whose pieces begin on each page: that many a page can cost.
func exportsByPage(file []byte) map[int]int {
	out := map[int]int{}
	c := carver{bytes.NewReader(file), int64(len(file)) / pageSize}
	for n := int64(1); n <= c.pages; n++ {
		seen := map[int64]bool{}
		c.leaf(file[(n-1)*pageSize:n*pageSize], n, func(_ int64, row []value) {
			if len(row) == 4 && row[1].kind == 'i' && row[3].kind == 'b' {
				seen[row[1].n] = true
			}
		})
		out[int(n)] = len(seen)
	}
	return out
}

// harm damages a copy of the file, says how, and which pages it touched; none stands for the end of the file.
func (d *damage) harm(rnd *rand.Rand) (kind string, file []byte, pages []int) {
	file = bytes.Clone(d.whole)
	flip := func() {
		bit := rnd.IntN(8 * len(file))
		file[bit/8] ^= 1 << (bit % 8)
		pages = append(pages, bit/8/pageSize+1)
	}
	switch dice := rnd.IntN(20); {
	case dice < 1:
		return "cut to half", file[:len(file)/2], nil
	case dice < 4:
		return "cut anywhere", file[:rnd.IntN(len(file))], nil
	case dice < 11:
		flip()
		return "one bit", file, pages
	case dice < 16:
		for range 2 + rnd.IntN(7) {
			flip()
		}
		return "2 to 8 bits", file, pages
	}
	for range 1 + rnd.IntN(3) {
		page := rnd.IntN(len(file) / pageSize)
		clear(file[page*pageSize : (page+1)*pageSize])
		pages = append(pages, page+1)
	}
	return "zeroed pages", file, pages
}

// allowed is how many exports may be lost with some pages: those that begin on them, or the one whose middle
// lies there.
func (d *damage) allowed(pages []int) (lost int) {
	for _, page := range pages {
		lost += max(1, d.onPage[page])
	}
	return lost
}

// guarded runs work on a clock: a panic or more than ten seconds is an error.
func guarded(what string, work func() error) error {
	done := make(chan error, 1)
	go func() {
		defer func() {
			if p := recover(); p != nil {
				done <- fmt.Errorf("%s panics: %v\n%s", what, p, debug.Stack())
			}
		}()
		done <- work()
	}()
	select {
	case err := <-done:
		if err != nil {
			return fmt.Errorf("%s: %w", what, err)
		}
		return nil
	case <-time.After(10 * time.Second):
		return fmt.Errorf("%s hangs", what)
	}
}

// try damages the file once and looks at what the store makes of it.
func (d *damage) try(dir string, seed int) error {
	kind, file, pages := d.harm(rand.New(rand.NewPCG(uint64(seed), 9)))
	if err := os.Mkdir(dir, 0o777); err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, "w.thawbook")
	if err := os.WriteFile(path, file, 0o666); err != nil {
		return err
	}
	var score tally
	for _, step := range []struct {
		what string
		do   func() error
	}{
		{"open", func() error { return d.opened(path, &score) }},
		{"bytes after open", func() error { return untouched(path, file) }},
		{"undo", func() error { return d.undone(path, file) }},
		{"rescue", func() error { return d.rescued(path, filepath.Join(dir, "new.thawbook"), &score) }},
		{"bytes after rescue", func() error { return untouched(path, file) }},
	} {
		if err := guarded(fmt.Sprintf("%s (%s, pages %v)", step.what, kind, pages), step.do); err != nil {
			return err
		}
	}
	if lost := len(d.sums) - score.whole; pages != nil && lost > d.allowed(pages) {
		return fmt.Errorf("%s on pages %v cost %d exports, %d begin there", kind, pages, lost, d.allowed(pages))
	}
	d.count(kind, score)
	return nil
}

func (d *damage) count(kind string, score tally) {
	d.mutex.Lock()
	defer d.mutex.Unlock()
	sum := d.tally[kind]
	if sum == nil {
		sum = &tally{}
		d.tally[kind] = sum
	}
	sum.files, sum.opened, sum.noDocument = sum.files+1, sum.opened+score.opened, sum.noDocument+score.noDocument
	sum.exports, sum.whole = sum.exports+len(d.sums), sum.whole+score.whole
}

// opened opens a damaged file. Refused or not: only true bytes come out of it, and errors have their code.
func (d *damage) opened(path string, score *tally) error {
	s, err := Open(path)
	if err != nil {
		return refusal(err, Damaged, TooNew)
	}
	defer s.Close()
	score.opened = 1
	for _, e := range s.Exports() {
		text, err := allOf(s, e.Name)
		if err == nil && !d.sums[sumOf(text)] {
			return fmt.Errorf("%s came out with other bytes", e.Name)
		}
		if err := refusal(err, Damaged); err != nil {
			return err
		}
	}
	return nil
}

// undone goes back through the history of a copy as far as it goes.
func (d *damage) undone(path string, file []byte) error {
	if err := os.Mkdir(path+".copy", 0o777); err != nil {
		return err
	}
	defer os.RemoveAll(path + ".copy")
	copied := filepath.Join(path+".copy", "w.thawbook")
	if err := os.WriteFile(copied, file, 0o666); err != nil {
		return err
	}
	s, err := Open(copied)
	if err != nil || s.Mode() != Writable {
		return nil
	}
	defer s.Close()
	return refusal(undoAll(s), Damaged)
}

// undoAll goes back as far as it goes.
func undoAll(s *Store) error {
	for {
		if moved, err := s.Undo(); err != nil || !moved {
			return err
		}
	}
}

// refusal lets an *Error of one of the codes pass.
func refusal(err error, codes ...Code) error {
	var e *Error
	if err == nil || errors.As(err, &e) && slices.Contains(codes, e.Code) {
		return nil
	}
	return fmt.Errorf("refused with %w (%T), not %v", err, err, codes)
}

func sumOf(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])
}

func allOf(s *Store, name string) ([]byte, error) {
	in, err := s.OpenExport(name)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	return io.ReadAll(in)
}

// untouched makes sure that a file still has its bytes and nothing but a rescue's result lies beside it.
func untouched(path string, want []byte) error {
	if err := hasBytes(path, want); err != nil {
		return err
	}
	beside, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		return err
	}
	for _, entry := range beside {
		if name := entry.Name(); name != "w.thawbook" && name != "new.thawbook" {
			return fmt.Errorf("%s was left beside it", name)
		}
	}
	return nil
}

// rescued rescues a damaged file: what is said to be whole is, and the new winter can be worked on.
func (d *damage) rescued(from, to string, score *tally) error {
	said, err := Rescue(context.Background(), from, to)
	if err != nil {
		return err
	}
	if said.Steps == 0 {
		score.noDocument = 1
	}
	s, err := Open(to)
	if err != nil {
		return err
	}
	defer s.Close()
	if s.Mode() != Writable {
		return fmt.Errorf("the new winter opens %s", s.Mode())
	}
	found := map[string]bool{}
	for _, name := range said.Whole {
		text, err := allOf(s, name)
		if err != nil {
			return err
		}
		if !d.sums[sumOf(text)] {
			return fmt.Errorf("%s is said to be whole and is not", name)
		}
		found[sumOf(text)] = true
	}
	score.whole = len(found)
	return s.Commit(edit(5000, "", ""))
}

// TestDamage damages a winter file in many ways.
func TestDamage(t *testing.T) {
	tries := soak(t, "SOAK_DAMAGE", 500)
	small := newDamage(t, 700, 6000, 30_000, 9000, 2500, 14_000)
	large := newDamage(t, 700, 6000, 30_000, 2_600_000, 250_000, 9000) // one export of several pieces
	dir := quickDir(t)
	seeds := make(chan int)
	var work sync.WaitGroup
	for range 2 {
		work.Go(func() {
			for seed := range seeds {
				d := small
				if seed%5 == 0 {
					d = large
				}
				if err := d.try(filepath.Join(dir, fmt.Sprint(seed)), seed); err != nil {
					t.Errorf("seed %d: %v", seed, err)
				}
			}
		})
	}
	for seed := range tries {
		seeds <- seed
	}
	close(seeds)
	work.Wait()
	small.report(t, "small")
	large.report(t, "large")
}

// hasBytes makes sure that a file holds some bytes.
func hasBytes(path string, want []byte) error {
	got, err := os.ReadFile(path)
	if err == nil && !bytes.Equal(got, want) {
		err = fmt.Errorf("%s was written to", filepath.Base(path))
	}
	return err
}

// report says what came of the damages.
func (d *damage) report(t *testing.T, name string) {
	var sum tally
	for _, kind := range slices.Sorted(maps.Keys(d.tally)) {
		k := d.tally[kind]
		t.Logf("SUMMARY damage, %s winter, %s: %d files, %d opened; %.2f %% of exports whole after a rescue; %d files without a document",
			name, kind, k.files, k.opened, 100*float64(k.whole)/float64(k.exports), k.noDocument)
		sum.files, sum.exports, sum.whole = sum.files+k.files, sum.exports+k.exports, sum.whole+k.whole
	}
	t.Logf("SUMMARY damage, %s winter of %d KiB: %d files, %.2f %% of exports whole after a rescue",
		name, len(d.whole)>>10, sum.files, 100*float64(sum.whole)/float64(max(1, sum.exports)))
}
