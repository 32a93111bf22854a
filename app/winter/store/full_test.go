package store

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	process "os/exec"
	"path/filepath"
	"reflect"
	"runtime"
	"strings"
	"testing"

	"github.com/ncruces/go-sqlite3"
	"github.com/ncruces/go-sqlite3/vfs"
)

// faulty is the machine's own file system with a fault: calls of one kind fail from the k-th on, until it is
// lifted, or that one alone.
type faulty struct {
	vfs.VFSFilename
	kind    string // "write", "truncate", "hint", "sync", "delete" or "folder sync"
	at      int    // counted from 1; 0 is never
	lasting bool
	seen    int
}

// faultyFile is a file of it.
type faultyFile struct {
	vfs.File
	on *faulty
}

// hit counts a call and says whether it fails.
func (f *faulty) hit(kind string) error {
	if kind != f.kind {
		return nil
	}
	f.seen++
	if f.at == 0 || f.seen < f.at || f.seen > f.at && !f.lasting {
		return nil
	}
	return map[string]error{
		"write": sqlite3.FULL, "truncate": sqlite3.IOERR_TRUNCATE, "hint": sqlite3.FULL,
		"sync": sqlite3.IOERR_FSYNC, "delete": sqlite3.IOERR_DELETE, "folder sync": sqlite3.IOERR_DIR_FSYNC,
	}[kind]
}

func (f *faulty) OpenFilename(name *vfs.Filename, flags vfs.OpenFlag) (vfs.File, vfs.OpenFlag, error) {
	file, flags, err := f.VFSFilename.OpenFilename(name, flags)
	if err != nil {
		return nil, flags, err
	}
	return faultyFile{file, f}, flags, nil
}

func (f *faulty) Delete(name string, syncDir bool) error {
	if err := f.hit("delete"); err != nil {
		return err
	}
	if err := f.VFSFilename.Delete(name, syncDir); err != nil {
		return err
	}
	return f.hit("folder sync")
}

func (f faultyFile) WriteAt(p []byte, at int64) (int, error) {
	if err := f.on.hit("write"); err != nil {
		return 0, err
	}
	return f.File.WriteAt(p, at)
}

func (f faultyFile) Truncate(size int64) error {
	if err := f.on.hit("truncate"); err != nil {
		return err
	}
	return f.File.Truncate(size)
}

func (f faultyFile) Sync(flags vfs.SyncFlag) error {
	if err := f.on.hit("sync"); err != nil {
		return err
	}
	return f.File.Sync(flags)
}

// DeviceCharacteristics is without writes in batches, which this file does not pass on.
func (f faultyFile) DeviceCharacteristics() vfs.DeviceCharacteristic {
	return f.File.DeviceCharacteristics() &^ vfs.IOCAP_BATCH_ATOMIC
}

func (f faultyFile) SizeHint(size int64) error {
	if err := f.on.hit("hint"); err != nil {
		return err
	}
	return f.File.(vfs.FileSizeHint).SizeHint(size)
}

// rig is a winter on a faulty file system and the script run on it.
type rig struct {
	path  string
	first []byte // the file before the script
	fault *faulty
	acts  []act
	want  string // what the file holds after the script
}

// newRig prepares the file and runs the script once without a fault.
func newRig(t *testing.T) *rig {
	t.Helper()
	r := &rig{path: filepath.Join(quickDir(t), "w.thawbook"), fault: &faulty{VFSFilename: vfs.Find(system).(vfs.VFSFilename)}, acts: script()}
	fullHistory(t, r.path)
	var err error
	if r.first, err = os.ReadFile(r.path); err != nil {
		t.Fatal(err)
	}
	vfs.Register("faulty", r.fault)
	system = "faulty"
	t.Cleanup(func() { system = onDisk; vfs.Unregister("faulty") })
	if _, err := r.run(nil); err != nil {
		t.Fatal(err)
	}
	if r.want, err = r.held(); err != nil {
		t.Fatal(err)
	}
	return r
}

// run runs the script on the file as it was first; each failing call is judged, the fault lifted, and the
// call made again.
func (r *rig) run(judge func(err error) error) (failed int, err error) {
	if err := os.WriteFile(r.path, r.first, 0o666); err != nil {
		return 0, err
	}
	at := r.fault.at
	r.fault.at, r.fault.seen = 0, 0
	s, err := Open(r.path)
	if err != nil {
		return 0, err
	}
	defer s.Close()
	if err := s.conn.Exec("PRAGMA cache_size=10"); err != nil {
		return 0, err
	}
	r.fault.at, r.fault.seen = at, 0
	for _, a := range r.acts {
		winter, exports := s.Winter(), s.Exports()
		err := a.do(s)
		if err == nil {
			continue
		}
		failed++
		if judge == nil {
			return failed, err
		}
		if err := judge(err); err != nil {
			return failed, fmt.Errorf("%s: %w", a.name, err)
		}
		if !reflect.DeepEqual(winter, s.Winter()) || !reflect.DeepEqual(exports, s.Exports()) {
			return failed, fmt.Errorf("%s failed and changed what the store says", a.name)
		}
		r.fault.at = 0
		if err := a.do(s); err != nil {
			return failed, fmt.Errorf("%s again, the fault lifted: %w", a.name, err)
		}
	}
	return failed, nil
}

// held opens the file on a sound file system and reads all of it.
func (r *rig) held() (string, error) {
	system = onDisk
	defer func() { system = "faulty" }()
	s, err := Open(r.path)
	if err != nil {
		return "", err
	}
	defer s.Close()
	for _, e := range s.Exports() {
		if err := readsBack(s, e); err != nil {
			return "", err
		}
	}
	return state(s.conn)
}

// says makes sure that an error is one of the store's, of a code, with a sentence.
func says(path string, want Code) func(error) error {
	return func(err error) error {
		var e *Error
		switch {
		case !errors.As(err, &e), e.Code != want:
			return fmt.Errorf("the error is %w (%T), where %s was wanted", err, err, want)
		case !strings.HasPrefix(e.Error(), path) && !strings.Contains(e.Error(), " "+path):
			return fmt.Errorf("the sentence names no file: %w", e)
		}
		return nil
	}
}

// TestFaultsOfTheDisk lets every write, truncation, size hint and sync of a script fail, alone and from then on.
func TestFaultsOfTheDisk(t *testing.T) {
	r := newRig(t)
	every := 7
	if os.Getenv("SOAK_FAULTS") == "full" {
		every = 1
	}
	if testing.Short() { // under the race detector
		every = 71
	}
	for _, c := range []struct {
		kind string
		code Code
	}{{"write", Full}, {"hint", Full}, {"sync", Failed}, {"truncate", Failed}, {"delete", Failed}} {
		r.fault.kind, r.fault.at = c.kind, 0
		if _, err := r.run(nil); err != nil {
			t.Fatal(err)
		}
		points, tried, failed := r.fault.seen, 0, 0
		for at := 1; at <= points; at += every {
			for _, lasting := range []bool{false, true} {
				r.fault.at, r.fault.lasting = at, lasting
				n, err := r.run(says(r.path, c.code))
				if err == nil {
					err = r.asWanted()
				}
				if err != nil {
					t.Errorf("%s %d of %d, lasting %v: %v", c.kind, at, points, lasting, err)
				}
				tried, failed = tried+1, failed+n
			}
		}
		if failed == 0 && points > 0 && c.kind != "hint" && c.kind != "truncate" { // the database may do without these
			t.Errorf("no call failed of a %s that did", c.kind)
		}
		t.Logf("SUMMARY faults: %d of kind %q over %d such calls of the script, alone and lasting; %d calls failed", tried, c.kind, points, failed)
	}
}

// TestAFolderThatCantBeSynced: the journal is gone, so the change stands, but it may not be on the disk. The
// call fails, and the store says what the file holds.
func TestAFolderThatCantBeSynced(t *testing.T) {
	r := newRig(t)
	for i, a := range r.acts {
		if err := os.WriteFile(r.path, r.first, 0o666); err != nil {
			t.Fatal(err)
		}
		r.fault.at = 0
		s, err := Open(r.path)
		if err != nil {
			t.Fatal(err)
		}
		for _, before := range r.acts[:i] {
			if err := before.do(s); err != nil {
				t.Fatal(err)
			}
		}
		r.fault.kind, r.fault.at, r.fault.seen = "folder sync", 1, 0
		if err := says(r.path, Failed)(a.do(s)); err != nil {
			t.Errorf("%s: %v", a.name, err)
		}
		for _, after := range r.acts[i+1:] {
			if err := after.do(s); err != nil {
				t.Errorf("%s after %s failed: %v", after.name, a.name, err)
			}
		}
		s.Close()
		if err := r.asWanted(); err != nil {
			t.Errorf("%s: %v", a.name, err)
		}
	}
}

// asWanted: after the fault the file holds what it would have without.
func (r *rig) asWanted() error {
	got, err := r.held()
	if err == nil && got != r.want {
		err = errors.New("the file does not hold what was acknowledged")
	}
	return err
}

// mounted is a folder that is a disk in memory of its own, of a size such as 2m. Where the system does not
// let us, the test is skipped.
func mounted(t *testing.T, size string) string {
	t.Helper()
	dir := t.TempDir()
	if runtime.GOOS != "linux" {
		t.Skip("mounting is coded for Linux alone")
	}
	if said, err := process.Command("mount", "-t", "tmpfs", "-o", "size="+size, "tmpfs", dir).CombinedOutput(); err != nil {
		t.Skipf("no disk can be mounted here: %v, %s", err, said)
	}
	t.Cleanup(func() {
		if said, err := process.Command("umount", dir).CombinedOutput(); err != nil {
			t.Errorf("umount: %v, %s", err, said)
		}
	})
	return dir
}

// TestAFullDisk fills a disk of 2 MiB by every way of writing.
func TestAFullDisk(t *testing.T) {
	dir := mounted(t, "2m")
	path, room := filepath.Join(dir, "w.thawbook"), filepath.Join(dir, "room")
	if err := os.WriteFile(room, make([]byte, 512<<10), 0o666); err != nil {
		t.Fatal(err)
	}
	s, err := Create(path, edit(0, "", ""))
	if err != nil {
		t.Fatal(err)
	}
	taken, takes := untilFull(t, s, func(i int) error {
		_, err := s.Take(context.Background(), []Arrival{arrival(fmt.Sprint(i, ".csv"), noise(rand.New(rand.NewPCG(5, uint64(i))), 200_000>>(i/8)))})
		return err
	})
	edits, commits := untilFull(t, s, func(i int) error {
		return s.Commit(edit(i, "", noise(rand.New(rand.NewPCG(6, uint64(i))), 100+20_000>>(i/10))))
	})
	for name, err := range map[string]error{
		"SaveCopy": s.SaveCopy(filepath.Join(dir, "copy.thawbook")),
		"Create":   createOnly(filepath.Join(dir, "new.thawbook"), edit(0, "", noise(rand.New(rand.NewPCG(8, 8)), 200_000))),
	} {
		if err := says(dir, Full)(err); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	onlyThere(t, dir, "room", "w.thawbook", "w.thawbook-lock")
	if err := os.Remove(room); err != nil {
		t.Fatal(err)
	}
	if err := s.Commit(edit(9999, "", "")); err != nil {
		t.Errorf("with room made: %v", err)
	}
	s.Close()
	if s, err = Open(path); err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if number(s) != "9999" || len(s.Exports()) != taken {
		t.Errorf("document %s and %d exports hold, %d were taken", number(s), len(s.Exports()), taken)
	}
	for _, e := range s.Exports() {
		if err := readsBack(s, e); err != nil {
			t.Error(err)
		}
	}
	t.Logf("SUMMARY full disk: %d exports, %d edits fitted; %d takes and %d edits refused", taken, edits, takes, commits)
}

// untilFull calls do until it was refused five times; each time the store must say what it said before.
func untilFull(t *testing.T, s *Store, do func(i int) error) (done, refused int) {
	t.Helper()
	for i := 1; refused < 5; i++ {
		winter, exports := s.Winter(), s.Exports()
		err := do(i)
		if err == nil {
			if done++; done > 1000 {
				t.Fatal("the disk takes everything")
			}
			continue
		}
		refused++
		if err := says(s.Path(), Full)(err); err != nil {
			t.Error(err)
		}
		if !reflect.DeepEqual(winter, s.Winter()) || !reflect.DeepEqual(exports, s.Exports()) {
			t.Error("a failed call changed what the store says")
		}
	}
	return done, refused
}

// createOnly makes a winter and closes it.
func createOnly(path string, first Step) error {
	s, err := Create(path, first)
	if err == nil {
		err = s.Close()
	}
	return err
}

// onlyThere makes sure that a folder holds these names and no others.
func onlyThere(t *testing.T, dir string, names ...string) {
	t.Helper()
	found, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, entry := range found {
		got = append(got, entry.Name())
	}
	if !reflect.DeepEqual(got, names) {
		t.Errorf("the folder holds %v, not %v", got, names)
	}
}
