package files

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// put writes a file into a folder of the test.
func put(t *testing.T, path, text string) string {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// codeOf is the code of a refusal, or "" for another error.
func codeOf(err error) Code {
	var e *Error
	if errors.As(err, &e) {
		return e.Code
	}
	return ""
}

func TestOneReadingGivesTextSumAndSize(t *testing.T) {
	source, err := Open(put(t, filepath.Join(t.TempDir(), "a"), "abc"))
	if err != nil {
		t.Fatal(err)
	}
	defer source.Close()
	text, err := io.ReadAll(source)
	if err != nil || string(text) != "abc" {
		t.Errorf("read %q, %v", text, err)
	}
	// The SHA-256 of "abc": FIPS 180-4 examples, published by NIST.
	const want = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
	if source.SHA256() != want || source.Bytes() != 3 || source.Size != 3 {
		t.Errorf("sum %s, %d bytes of %d", source.SHA256(), source.Bytes(), source.Size)
	}
}

func TestRefusedPaths(t *testing.T) {
	dir := t.TempDir()
	file := put(t, filepath.Join(dir, "file.csv"), "x")
	for _, c := range []struct {
		name, path string
		want       Code
		says       string
	}{
		{"missing", filepath.Join(dir, "none.csv"), Missing, "does not exist"},
		{"beneath a file", filepath.Join(file, "none.csv"), Missing, "does not exist"},
		{"a directory", dir, Directory, "is a folder"},
		{"empty", put(t, filepath.Join(dir, "empty.csv"), ""), Empty, "is empty"},
		{"no ordinary file", os.DevNull, NotAFile, "no ordinary file"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Open(c.path)
			if codeOf(err) != c.want || !strings.Contains(err.Error(), c.says) || !strings.Contains(err.Error(), c.path) {
				t.Errorf("got %v", err)
			}
		})
	}
}

func TestNoPermission(t *testing.T) {
	path := put(t, filepath.Join(t.TempDir(), "locked.csv"), "x")
	was := openFile
	defer func() { openFile = was }()
	openFile = func(path string) (fs.File, error) {
		return nil, &fs.PathError{Op: "open", Path: path, Err: fs.ErrPermission}
	}
	_, err := Open(path)
	if codeOf(err) != Permission || !errors.Is(err, fs.ErrPermission) {
		t.Errorf("got %v", err)
	}
}

func TestTooLarge(t *testing.T) {
	path := put(t, filepath.Join(t.TempDir(), "large.csv"), "x")
	if err := os.Truncate(path, MaxBytes+1); err != nil { // a hole: it takes no room on the disk
		t.Fatal(err)
	}
	if _, err := Open(path); codeOf(err) != TooLarge {
		t.Errorf("got %v", err)
	}
}

func TestWalkGoesInByteOrderOfPath(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"a/b.csv", "a.csv", "B.csv", "a/.hidden.csv", ".git/x.csv", "a-b.csv"} {
		put(t, filepath.Join(dir, name), "x")
	}
	found, err := Walk(dir)
	if err != nil {
		t.Fatal(err)
	}
	// '-' is 0x2d, '.' 0x2e, '/' 0x2f, and 'B' comes before 'a' (ASCII).
	want := []string{"B.csv", "a-b.csv", "a.csv", "a/b.csv"}
	for i := range found {
		found[i] = strings.TrimPrefix(found[i], filepath.ToSlash(dir)+"/")
	}
	if strings.Join(found, " ") != strings.Join(want, " ") {
		t.Errorf("got %v, want %v", found, want)
	}
	if _, err := Walk(filepath.Join(dir, ".git", "none")); codeOf(err) != Missing {
		t.Errorf("a missing folder gives %v", err)
	}
	if _, err := Walk(t.TempDir()); codeOf(err) != Empty {
		t.Errorf("an empty folder gives %v", err)
	}
}

func TestExpand(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "odd [name]")
	for _, name := range []string{"n2.csv", "n10.csv", "x/n1.csv", "log[1].csv", ".n3.csv"} {
		put(t, filepath.Join(dir, name), "x")
	}
	for _, c := range []struct {
		pattern string
		want    string
		code    Code
		says    string
	}{
		{"n*.csv", "n10.csv n2.csv", "", ""},
		{"n?.csv", "n2.csv", "", ""},
		{"*/n1.csv", "x/n1.csv", "", ""},
		{"x/../n2.csv", "n2.csv", "", ""},
		{"log[1].csv", "log[1].csv", "", ""},
		{"*", "log[1].csv n10.csv n2.csv", "", ""},
		{"m*.csv", "", NoMatch, "no file matches"},
		{"m.csv", "", Missing, "m.csv does not exist"},
		{"x", "", Directory, `write "x/*.csv"`},
		{"n[.csv", "", BadPattern, "bracket"},
	} {
		t.Run(c.pattern, func(t *testing.T) {
			found, err := Expand(dir, c.pattern)
			for i := range found {
				found[i] = strings.TrimPrefix(found[i], filepath.ToSlash(dir)+"/")
			}
			if codeOf(err) != c.code || strings.Join(found, " ") != c.want {
				t.Fatalf("got %v, %v", found, err)
			}
			if err != nil && !strings.Contains(err.Error(), c.says) {
				t.Errorf("it says %q", err)
			}
		})
	}
}

func TestExpandAnAbsolutePattern(t *testing.T) {
	dir := t.TempDir()
	path := put(t, filepath.Join(dir, "n2.csv"), "x")
	found, err := Expand("elsewhere", filepath.ToSlash(dir)+"/n*.csv")
	if err != nil || len(found) != 1 || found[0] != filepath.ToSlash(path) {
		t.Errorf("got %v, %v", found, err)
	}
}
