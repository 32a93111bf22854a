package files

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// fullDisk is a temporary file on a disk that is full after some bytes, or fails at one of its calls.
type fullDisk struct {
	*os.File
	room     int
	failSync bool
}

func (f *fullDisk) Write(p []byte) (int, error) {
	if len(p) <= f.room {
		f.room -= len(p)
		return f.File.Write(p)
	}
	n, _ := f.File.Write(p[:f.room])
	return n, &fs.PathError{Op: "write", Path: f.Name(), Err: syscall.ENOSPC}
}

func (f *fullDisk) Sync() error {
	if f.failSync {
		return &fs.PathError{Op: "sync", Path: f.Name(), Err: syscall.EIO}
	}
	return f.File.Sync()
}

// holding checks that a folder holds one file with that text and nothing else.
func holding(t *testing.T, path, text string) {
	t.Helper()
	got, err := os.ReadFile(path)
	if err != nil || string(got) != text {
		t.Errorf("the file holds %q, %v; want %q", got, err, text)
	}
	entries, err := os.ReadDir(filepath.Dir(path))
	if err != nil || len(entries) != 1 {
		t.Errorf("the folder holds %v, %v; want the one file", entries, err)
	}
}

func TestWriteAtomicReplacesTheWholeFile(t *testing.T) {
	path := put(t, filepath.Join(t.TempDir(), "out.csv"), "the old text, which is longer")
	if err := os.Chmod(path, 0o600); err != nil {
		t.Fatal(err)
	}
	err := WriteAtomic(path, func(w io.Writer) error { _, err := io.WriteString(w, "new"); return err })
	if err != nil {
		t.Fatal(err)
	}
	holding(t, path, "new")
	if info, _ := os.Stat(path); info.Mode().Perm() != 0o600 {
		t.Errorf("the mode became %v", info.Mode())
	}
}

func TestAFailedWriteLeavesTheOldFile(t *testing.T) {
	wrote := func(w io.Writer) error { _, err := w.Write([]byte("0123456789")); return err }
	own := errors.New("the table could not be made")
	for _, c := range []struct {
		name  string
		disk  fullDisk
		write func(io.Writer) error
		cause error
	}{
		{"disk full", fullDisk{room: 4}, wrote, syscall.ENOSPC},
		{"sync fails", fullDisk{room: 100, failSync: true}, wrote, syscall.EIO},
		{"the writer fails", fullDisk{room: 100}, func(io.Writer) error { return own }, own},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := put(t, filepath.Join(t.TempDir(), "out.csv"), "old")
			was := createTemp
			defer func() { createTemp = was }()
			createTemp = func(dir string) (tempFile, error) {
				file, err := os.CreateTemp(dir, "temp")
				c.disk.File = file
				return &c.disk, err
			}
			err := WriteAtomic(path, c.write)
			if !errors.Is(err, c.cause) || codeOf(err) != NotWritten {
				t.Errorf("got %v", err)
			}
			if n := strings.Count(err.Error(), "\n"); n > 0 {
				t.Errorf("%q is no single sentence", err)
			}
			holding(t, path, "old")
		})
	}
}

func TestAPanicLeavesTheOldFile(t *testing.T) {
	path := put(t, filepath.Join(t.TempDir(), "out.csv"), "old")
	func() {
		defer func() { _ = recover() }()
		WriteAtomic(path, func(io.Writer) error { panic("in the middle") })
	}()
	holding(t, path, "old")
}

func TestWritingIntoNoFolder(t *testing.T) {
	err := WriteAtomic(filepath.Join(t.TempDir(), "none", "out.csv"), func(io.Writer) error { return nil })
	if codeOf(err) != NotWritten || !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("got %v", err)
	}
}

func TestWritingThroughALink(t *testing.T) {
	dir := t.TempDir()
	path := put(t, filepath.Join(dir, "real", "out.csv"), "old")
	link := filepath.Join(dir, "link.csv")
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	if err := WriteAtomic(link, func(w io.Writer) error { _, err := io.WriteString(w, "new"); return err }); err != nil {
		t.Fatal(err)
	}
	holding(t, path, "new")
}

// What a killed program left goes with the next writing once it is old; what may still be written to stays, and so
// does what is not ours.
func TestWhatWasLeftIsClearedAway(t *testing.T) {
	dir := t.TempDir()
	old := time.Now().Add(-2 * leftAfter)
	for name, age := range map[string]time.Time{tempPrefix + "1": old, tempPrefix + "2": time.Now(), "thawbook-3": old, ".other": old} {
		if err := os.Chtimes(put(t, filepath.Join(dir, name), "x"), age, age); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(filepath.Join(dir, tempPrefix+"folder"), 0o700); err != nil {
		t.Fatal(err)
	}
	os.Chtimes(filepath.Join(dir, tempPrefix+"folder"), old, old)
	if err := WriteAtomic(filepath.Join(dir, "new"), func(io.Writer) error { return nil }); err != nil {
		t.Fatal(err)
	}
	var left []string
	entries, _ := os.ReadDir(dir)
	for _, e := range entries {
		left = append(left, e.Name())
	}
	if got, want := strings.Join(left, " "), ".other .thawbook-2 .thawbook-folder new thawbook-3"; got != want {
		t.Errorf("left are %s, want %s", got, want)
	}
}

func TestMakeAtomic(t *testing.T) {
	path := put(t, filepath.Join(t.TempDir(), "out"), "old")
	err := MakeAtomic(path, func(temp string) error { return os.WriteFile(temp, []byte("made"), 0o600) })
	if err != nil {
		t.Fatal(err)
	}
	holding(t, path, "made")
	fails := errors.New("could not be made")
	err = MakeAtomic(path, func(temp string) error { return errors.Join(os.WriteFile(temp, []byte("half"), 0o600), fails) })
	if !errors.Is(err, fails) {
		t.Errorf("%v", err)
	}
	holding(t, path, "made")
}

func TestMakeNew(t *testing.T) {
	path := filepath.Join(t.TempDir(), "out")
	make := func(text string) func(string) error {
		return func(temp string) error { return os.WriteFile(temp, []byte(text), 0o600) }
	}
	if err := MakeNew(path, make("first")); err != nil {
		t.Fatal(err)
	}
	if err := MakeNew(path, make("second")); !errors.Is(err, fs.ErrExist) {
		t.Errorf("%v", err)
	}
	holding(t, path, "first")
}
