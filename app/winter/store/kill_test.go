package store

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	process "os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// A child process works on a winter and tells on a pipe what it is about to do and what was acknowledged. The
// parent kills it at a moment of its own choosing and looks whether the file holds what was acknowledged.

// childEnv says what a child of this test binary shall do.
const childEnv = "STORE_TEST_CHILD"

// soak is a number of rounds from the environment, else the usual one.
func soak(t *testing.T, name string, usual int) int {
	t.Helper()
	text := os.Getenv(name)
	if text == "" {
		return usual
	}
	n, err := strconv.Atoi(text)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// quickDir is a folder of the test in memory where the system has such a place; temporary files go there too.
func quickDir(t *testing.T) string {
	t.Helper()
	dir, err := os.MkdirTemp("/dev/shm", "thawbook-test-")
	if err != nil {
		return t.TempDir()
	}
	t.Cleanup(func() { os.RemoveAll(dir) })
	t.Setenv("TMPDIR", dir)
	return dir
}

// noise is text of a size that packs to half of it.
func noise(rnd *rand.Rand, size int) string {
	out := make([]byte, size)
	for i := range out {
		if i%16 == 0 {
			for j, v := i, rnd.Uint64(); j < min(i+16, size); j, v = j+1, v>>4 {
				out[j] = "0123456789,.-+ \n"[v&15]
			}
		}
	}
	return string(out)
}

// child starts this test binary again for one test and gives its lines.
func child(t *testing.T, test, what string, env ...string) (*process.Cmd, <-chan string) {
	t.Helper()
	cmd := process.Command(os.Args[0], "-test.run=^"+test+"$", "-test.timeout=60m")
	cmd.Env = append(append(os.Environ(), childEnv+"="+what), env...)
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	lines := make(chan string, 1000)
	go func() {
		defer close(lines)
		for in := bufio.NewScanner(out); in.Scan(); {
			lines <- in.Text()
		}
	}()
	return cmd, lines
}

// asChild is what this process was started for; without it the test is the parent's and has nothing to do.
func asChild(t *testing.T) []string {
	what := os.Getenv(childEnv)
	if what == "" {
		t.Skip("this is a child of other tests")
	}
	return strings.Split(what, "|")
}

// worker is the child's work: each call is announced, done, and reported.
type worker struct {
	t    *testing.T
	s    *Store
	rnd  *rand.Rand
	n    int // of the last edit
	copy string
}

// TestKillChild works until it is killed.
func TestKillChild(t *testing.T) {
	arg := asChild(t)
	n, err := strconv.Atoi(arg[1])
	if err != nil {
		t.Fatal(err)
	}
	w := worker{t: t, rnd: rand.New(rand.NewPCG(uint64(n), 7)), n: n, copy: arg[0] + " copy.thawbook"}
	if _, err := os.Stat(arg[0]); err != nil {
		w.call("create "+fmt.Sprint(n), func() error { w.s, err = Create(arg[0], edit(n, "", "")); return err })
	} else if w.s, err = Open(arg[0]); err != nil {
		t.Fatal(err)
	}
	for {
		w.step()
	}
}

func (w *worker) call(what string, do func() error) {
	fmt.Fprintln(os.Stdout, "try "+what)
	if err := do(); err != nil {
		fmt.Fprintln(os.Stdout, "bad "+err.Error())
		w.t.FailNow()
	}
	fmt.Fprintln(os.Stdout, "did "+what)
}

// step is one call at random.
func (w *worker) step() {
	switch dice := w.rnd.IntN(20); {
	case dice < 5:
		w.take()
	case dice < 12:
		w.n++
		step := edit(w.n, []string{"", "name"}[w.rnd.IntN(2)], noise(w.rnd, w.rnd.IntN(2000)))
		w.call(fmt.Sprint("commit ", w.n), func() error { return w.s.Commit(step) })
	case dice < 15:
		w.move(-1, w.s.Undo)
	case dice < 17:
		w.move(+1, w.s.Redo)
	default:
		w.call("copy "+number(w.s), func() error { return w.s.SaveCopy(w.copy) })
	}
}

func (w *worker) take() {
	var in []Arrival
	what := "take"
	for range 1 + w.rnd.IntN(2) {
		a := arrival(fmt.Sprintf("log %d.csv", w.rnd.IntN(1000)), noise(w.rnd, 1+w.rnd.IntN(1<<(8+w.rnd.IntN(14)))))
		in, what = append(in, a), what+" "+a.SHA256
	}
	w.call(what, func() error { _, err := w.s.Take(context.Background(), in); return err })
}

// move undoes or redoes, and says before which document will hold then.
func (w *worker) move(by int64, do func() (bool, error)) {
	next, err := docOf(w.s.conn, w.s.head+by, true)
	if err != nil {
		return // there is none
	}
	w.call("commit "+strings.TrimPrefix(next.Name, "winter "), func() error { _, err := do(); return err })
}

// number is that of the document that holds.
func number(s *Store) string { return strings.TrimPrefix(s.Winter().Name, "winter ") }

// ledger is what the parent knows: what was acknowledged, and the call in flight.
type ledger struct {
	path   string
	doc    string   // number of the document; "" before the file was made
	sums   []string // exports
	copied string   // number of the document in the copy; "" without one
	sumsIn int      // exports in the copy
	flight []string
}

// heard takes a line of the child to heart.
func (l *ledger) heard(line string) error {
	verb, what, _ := strings.Cut(line, " ")
	switch verb {
	case "try":
		l.flight = strings.Fields(what)
	case "did":
		l.settle(l.flight)
		l.flight = nil
	default:
		return fmt.Errorf("the child said %q", line)
	}
	return nil
}

// settle notes a call as done.
func (l *ledger) settle(call []string) {
	switch call[0] {
	case "create", "commit":
		l.doc = call[1]
	case "take":
		l.sums = append(l.sums, call[1:]...)
	case "copy":
		l.copied, l.sumsIn = call[1], len(l.sums)
	}
}

// check opens the file and settles the call in flight by what is found; hot tells of a journal.
func (l *ledger) check() (hot bool, err error) {
	l.flight = append(l.flight, "", "") // none is ""
	if _, err := os.Stat(l.path); err != nil && l.doc == "" {
		return false, nil
	}
	hot = hotJournal(l.path)
	s, err := Open(l.path)
	if err != nil {
		return hot, err
	}
	defer s.Close()
	if s.Mode() != Writable {
		return hot, fmt.Errorf("it opens %s", s.Mode())
	}
	if err := l.document(number(s)); err != nil {
		return hot, err
	}
	if err := l.exports(s); err != nil {
		return hot, err
	}
	return hot, l.copyIsWhole()
}

// document is the last acknowledged or the one in flight.
func (l *ledger) document(got string) error {
	inFlight := l.flight[1] == got && (l.flight[0] == "commit" || l.flight[0] == "create")
	if got != l.doc && !inFlight {
		return fmt.Errorf("document %s holds; acknowledged was %s, in flight %v", got, l.doc, l.flight)
	}
	l.doc = got
	return nil
}

// exports are those acknowledged and, all or none, those in flight, with the bytes they came with.
func (l *ledger) exports(s *Store) error {
	var got []string
	for _, e := range s.Exports() {
		if err := readsBack(s, e); err != nil {
			return err
		}
		got = append(got, e.SHA256)
	}
	want := l.sums
	if l.flight[0] == "take" && len(got) > len(want) {
		want = append(slices.Clone(want), slices.DeleteFunc(slices.Clone(l.flight[1:]), func(sum string) bool { return sum == "" })...)
	}
	if !slices.Equal(got, want) {
		return fmt.Errorf("%d exports are there, %d were acknowledged, in flight was %s", len(got), len(l.sums), l.flight[0])
	}
	l.sums = want
	return nil
}

// copyIsWhole: the copy is the last one acknowledged or the one in flight.
func (l *ledger) copyIsWhole() error {
	path := l.path + " copy.thawbook"
	if _, err := os.Stat(path); err != nil && l.copied == "" {
		return nil
	}
	s, err := Open(path)
	if err != nil {
		return fmt.Errorf("the copy: %w", err)
	}
	defer s.Close()
	if got := number(s); got != l.copied {
		if l.flight[0] != "copy" || got != l.flight[1] {
			return fmt.Errorf("the copy holds document %s; acknowledged was %s, in flight %v", got, l.copied, l.flight)
		}
		l.copied, l.sumsIn = got, len(l.sums)
	}
	if n := len(s.Exports()); n != l.sumsIn && (l.flight[0] != "copy" || n != len(l.sums)) {
		return fmt.Errorf("the copy holds %d exports, not %d", n, l.sumsIn)
	}
	l.sumsIn = len(s.Exports())
	for _, e := range s.Exports() {
		if err := readsBack(s, e); err != nil {
			return fmt.Errorf("the copy: %w", err)
		}
	}
	return nil
}

// hotJournal says whether a journal was left that SQLite will play back: its magic number stands
// (sqlite.org/fileformat2.html, section 3).
func hotJournal(path string) bool {
	in, err := os.Open(path + journalSuffix)
	if err != nil {
		return false
	}
	defer in.Close()
	first := make([]byte, 8)
	_, err = io.ReadFull(in, first)
	return err == nil && string(first) == "\xd9\xd5\x05\xf9\x20\xa1\x63\xd7"
}

// round lets a child work and kills it 0–60 ms after a line taken at random.
func (l *ledger) round(t *testing.T, n int, temp string) {
	rnd := rand.New(rand.NewPCG(uint64(n), 3))
	cmd, lines := child(t, "TestKillChild", fmt.Sprintf("%s|%d", l.path, n*100_000), "TMPDIR="+temp)
	for range 1 + rnd.IntN(14) {
		line, more := <-lines
		if !more {
			break
		}
		if err := l.heard(line); err != nil {
			t.Error(err)
		}
	}
	time.Sleep(time.Duration(rnd.IntN([]int{4_000, 60_000}[rnd.IntN(2)])) * time.Microsecond)
	cmd.Process.Kill()
	for line := range lines {
		if err := l.heard(line); err != nil {
			t.Error(err)
		}
	}
	cmd.Wait()
}

// TestKilled kills a program at work again and again. A winter is gone on with over the rounds until it is
// large; then a new one is begun.
func TestKilled(t *testing.T) {
	rounds := soak(t, "SOAK_KILLS", 20)
	dir, temp := t.TempDir(), t.TempDir()
	l := ledger{path: filepath.Join(dir, "w0.thawbook")}
	hot, winters, inCopy := 0, 1, 0
	for n := 1; n <= rounds; n++ {
		l.round(t, n, temp)
		if l.flight != nil && l.flight[0] == "copy" {
			inCopy++
		}
		was, err := l.check()
		if err != nil {
			t.Fatalf("round %d: %v", n, err)
		}
		l.flight = nil
		if was {
			hot++
		}
		if info, err := os.Stat(l.path); err == nil && info.Size() > 12<<20 {
			l = ledger{path: filepath.Join(dir, fmt.Sprintf("w%d.thawbook", winters))}
			winters++
		}
	}
	litter, _ := filepath.Glob(filepath.Join(dir, ".thawbook-*"))
	temps, _ := os.ReadDir(temp)
	t.Logf("SUMMARY kills: %d over %d winters; %d left a hot journal, %d struck while a copy was saved; left over: %d unfinished files beside the winters, %d temporary folders",
		rounds, winters, hot, inCopy, len(litter), len(temps))
}
