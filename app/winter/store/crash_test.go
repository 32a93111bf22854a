package store

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/ncruces/go-sqlite3"
	"github.com/ncruces/go-sqlite3/vfs"

	"thawbook/app/winter"
)

// A power cut is played from a tape. A script runs once on a file system in memory that notes every write,
// truncation, sync, creation and deletion. For a cut after k of them the disk is worked out: what was synced
// stands; of what was not, each 512-byte sector by a throw of the dice; a name made or removed without a sync
// of its folder is there or not, by another. Then the machine's own file system holds those bytes, and the
// store opens them. The rules are those of POSIX and of sqlite.org/atomiccommit.html, sections 2 and 3, with
// powersafe overwrite.

// act is a call of the script.
type act struct {
	name string
	do   func(*Store) error
}

// edit is a step whose document bears a number.
func edit(n int, field string, text string) Step {
	w := winter.Winter{Name: fmt.Sprint("winter ", n), Zone: "UTC"}
	if text != "" {
		w.Barns = []winter.Barn{{Name: "barn", Notes: []winter.Note{{Kind: "other", Text: text}}}}
	}
	return Step{At: int64(n) * 100, What: "edit", Field: field, Winter: w}
}

// script takes in small and large exports, edits with pruning (the history is full when it begins) and
// joining, undoes and redoes.
func script() []act {
	rnd := rand.New(rand.NewPCG(1, 1))
	take := func(sizes ...int) act {
		var in []Arrival
		for i, size := range sizes {
			in = append(in, arrival(fmt.Sprintf("log %d.csv", i), noise(rnd, size)))
		}
		return act{fmt.Sprint("take ", sizes), func(s *Store) error { _, err := s.Take(context.Background(), in); return err }}
	}
	commit := func(n int, field, text string) act {
		return act{fmt.Sprint("edit ", n), func(s *Store) error { return s.Commit(edit(n, field, text)) }}
	}
	undo := act{"undo", func(s *Store) error { _, err := s.Undo(); return err }}
	redo := act{"redo", func(s *Store) error { _, err := s.Redo(); return err }}
	return []act{
		take(3000), commit(1001, "", ""), commit(1002, "name", ""), commit(1003, "name", ""), take(200_000, 500), undo, undo, redo,
		commit(1004, "", noise(rnd, 30_000)), commit(1005, "", ""), undo, commit(1006, "name", ""),
		{"see", func(s *Store) error { return s.See([]byte(`{"seen":1}`)) }}, commit(1007, "", ""), take(40_000, 9000),
	}
}

// fullHistory is a winter file, made outside the test's file system, with a full history.
func fullHistory(t *testing.T, path string) {
	t.Helper()
	s, err := Create(path, edit(1, "", ""))
	if err == nil {
		err = s.conn.Exec("PRAGMA synchronous=OFF")
	}
	for n := 2; err == nil && n <= keptSteps+1; n++ {
		err = s.Commit(edit(n, "", ""))
	}
	if err == nil {
		err = s.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
}

// state is everything a file holds, in a form to compare; only when a file came in is left out.
func state(conn *sqlite3.Conn) (string, error) {
	var out strings.Builder
	for _, sql := range []string{
		"SELECT 'step', id, at, what, field, hex(doc) FROM step ORDER BY id", "SELECT 'export', id, hex(sha256), name, came, size FROM export ORDER BY id",
		"SELECT 'piece', id, export, n, length(data), '' FROM piece ORDER BY id", "SELECT 'mark', name, value, '', '', '' FROM mark ORDER BY name",
	} {
		err := rows(conn, sql, func(row *sqlite3.Stmt) error {
			for i := range 6 {
				out.WriteString(row.ColumnText(i) + "|")
			}
			out.WriteByte('\n')
			return nil
		})
		if err != nil {
			return "", err
		}
	}
	return out.String(), nil
}

// recording is a script's tape: how many changes were on it when each call returned, and what held then.
type recording struct {
	tape   *tape
	path   string
	done   []int
	states []string
}

// played runs the script on a tape. Few pages are cached, so that large exports reach the file early.
func played(t *testing.T, synchronous string) recording {
	t.Helper()
	r := recording{tape: &tape{names: map[string]*reel{}, start: map[string][]byte{}}, path: filepath.Join(quickDir(t), "w.thawbook")}
	fullHistory(t, r.path)
	vfs.Register("tape", r.tape)
	system = "tape"
	defer func() { system = onDisk; vfs.Unregister("tape") }()
	s, err := Open(r.path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if err := s.conn.Exec("PRAGMA cache_size=10; PRAGMA synchronous=" + synchronous); err != nil {
		t.Fatal(err)
	}
	for _, a := range append([]act{{"open", func(*Store) error { return nil }}}, script()...) {
		if err := a.do(s); err != nil {
			t.Fatal(a.name, ": ", err)
		}
		held, err := state(s.conn)
		if err != nil {
			t.Fatal(err)
		}
		r.done, r.states = append(r.done, len(r.tape.ops)), append(r.states, held)
	}
	return r
}

// restored opens what a disk holds in a folder of its own and says what is wrong with it; hot tells of a journal.
func (r recording) restored(dir string, k int, d dice) (hot bool, err error) {
	if err := os.Mkdir(dir, 0o777); err != nil {
		return false, err
	}
	defer os.RemoveAll(dir)
	for name, data := range r.tape.disk(k, d) {
		if err := os.WriteFile(filepath.Join(dir, filepath.Base(name)), data, 0o666); err != nil {
			return false, err
		}
	}
	path := filepath.Join(dir, filepath.Base(r.path))
	hot = hasJournal(path)
	s, err := Open(path)
	if err != nil {
		return hot, err
	}
	defer s.Close()
	if s.Mode() != Writable {
		return hot, fmt.Errorf("it opens %s", s.Mode())
	}
	return hot, r.holds(s, k)
}

// holds makes sure that a store has the state of the last call acknowledged before the cut, or of the one in
// flight, every byte of its exports, and can go on.
func (r recording) holds(s *Store, k int) error {
	last := 0
	for last+1 < len(r.done) && r.done[last+1] <= k {
		last++
	}
	got, err := state(s.conn)
	if err != nil {
		return err
	}
	inFlight := last+1 < len(r.states) && k > r.done[last] && got == r.states[last+1]
	if got != r.states[last] && !inFlight {
		return fmt.Errorf("it holds neither the last call acknowledged nor the one in flight")
	}
	for _, e := range s.Exports() {
		if err := readsBack(s, e); err != nil {
			return err
		}
	}
	return s.Commit(edit(2000, "", ""))
}

// readsBack makes sure that an export's bytes have its checksum.
func readsBack(s *Store, e Export) error {
	in, err := s.OpenExport(e.Name)
	if err != nil {
		return err
	}
	defer in.Close()
	hash := sha256.New()
	if _, err := io.Copy(hash, in); err != nil {
		return err
	}
	if sum := hex.EncodeToString(hash.Sum(nil)); sum != e.SHA256 {
		return fmt.Errorf("%s has the checksum %s, not %s", e.Name, sum, e.SHA256)
	}
	return nil
}

// cuts are the points where the power goes: all, or as many as wanted, evenly spread.
func cuts(points, wanted int) (out []int) {
	step := max(1, float64(points)/float64(max(1, wanted)))
	for at := 0.0; at < float64(points); at += step {
		out = append(out, int(at))
	}
	return out
}

// TestPowerCut cuts the power at every change a script makes.
func TestPowerCut(t *testing.T) {
	r := played(t, "EXTRA")
	seeds, wanted := 1, 400
	if os.Getenv("SOAK_CRASHES") == "full" {
		seeds, wanted = 30, 2000
	}
	if testing.Short() { // under the race detector
		wanted /= 10
	}
	tried, hot := 0, 0
	dir := quickDir(t)
	for seed := range seeds {
		for _, k := range cuts(len(r.tape.ops), wanted) {
			k++ // the first is the opening of the file
			was, err := r.restored(filepath.Join(dir, fmt.Sprint(seed, "-", k)), k, throw(seed, k))
			if err != nil {
				t.Errorf("seed %d, cut after %d of %d changes: %v", seed, k, len(r.tape.ops), err)
			}
			tried++
			if was {
				hot++
			}
		}
	}
	t.Logf("SUMMARY power cut: %d cuts over %d changes of %d calls, %d seeds; a journal was left at %d", tried, len(r.tape.ops), len(r.states)-1, seeds, hot)
}

// TestTheTapeShowsAMissingSync proves that the model bites: without syncs, and without the sync of the folder
// that EXTRA adds to FULL (sqlite.org/pragma.html#pragma_synchronous), acknowledged work is lost.
func TestTheTapeShowsAMissingSync(t *testing.T) {
	for _, synchronous := range []string{"OFF", "FULL"} {
		r := played(t, synchronous)
		dir, lost := quickDir(t), 0
		for i, k := range r.done {
			for seed := range 4 {
				if _, err := r.restored(filepath.Join(dir, fmt.Sprint(i, "-", seed)), k, throw(seed, k)); err != nil {
					lost++
				}
			}
		}
		if lost == 0 {
			t.Errorf("with synchronous=%s nothing was lost", synchronous)
		}
		t.Logf("synchronous=%s: %d of %d cuts lost something", synchronous, lost, 4*len(r.done))
	}
}
