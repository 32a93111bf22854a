package files

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// packs puts archives, sound and bad, among plain files of a folder.
func packs(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	for name, content := range map[string]string{
		"a.csv":       "plain",
		"n.zip":       string(zipOf(t, named("n2.csv", "two"), named("n10.csv", "ten"), named("x/n1.csv", "one"), named("e.csv", ""))),
		"n-2.zip":     string(zipOf(t, named("n3.csv", "three"))),
		"r.csv.gz":    string(gzipOf(t, "unzipped")),
		"book.xlsx":   string(zipOf(t, named("[Content_Types].xml", "<Types/>"))),
		"bad/bad.zip": "PK\x03\x04 and nothing of a zip after that",
		"bad/up.zip":  string(zipOf(t, named("../../up.csv", "x"), named("in.csv", "in"))),
		"bad/no.zip":  string(zipOf(t)),
	} {
		put(t, filepath.Join(dir, name), content)
	}
	return dir
}

// beneath is a list of paths from a folder on, in one line.
func beneath(dir string, found []string) string {
	var names []string
	for _, p := range found {
		names = append(names, strings.TrimPrefix(p, filepath.ToSlash(dir)+"/"))
	}
	return strings.Join(names, " ")
}

func TestWalkGoesIntoArchives(t *testing.T) {
	dir := packs(t)
	found, err := Walk(dir)
	// '!' is 0x21, '-' is 0x2d, '.' is 0x2e (ASCII).
	const want = "a.csv bad/up.zip!in.csv book.xlsx n-2.zip!n3.csv n.zip!e.csv n.zip!n10.csv n.zip!n2.csv n.zip!x/n1.csv r.csv.gz!r.csv"
	if got := beneath(dir, found); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	for _, says := range []string{"bad/bad.zip is a damaged archive", "bad/up.zip!../../up.csv has a name", "bad/no.zip is an archive without a file"} {
		if err == nil || !strings.Contains(filepath.ToSlash(err.Error()), says) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%v does not say in one line that %s", err, says)
		}
	}
	for path, want := range map[string]string{"n-2.zip": "n-2.zip!n3.csv", "n.zip!x/n1.csv": "n.zip!x/n1.csv", "r.csv.gz": "r.csv.gz!r.csv", "book.xlsx": "book.xlsx"} {
		if found, err := Walk(filepath.Join(dir, path)); err != nil || beneath(dir, found) != want {
			t.Errorf("%s gives %v, %v", path, found, err)
		}
	}
	for path, want := range map[string]Code{"n.zip!none.csv": Missing, "a.csv!a.csv": Missing, "none.zip!a.csv": Missing, "bad/bad.zip!a": Damaged, "bad/no.zip": NoMembers} {
		if found, err := Walk(filepath.Join(dir, path)); len(found) > 0 || codeOf(err) != want {
			t.Errorf("%s gives %v, %v", path, found, err)
		}
	}
}

func TestOpenAndSizeOfMembers(t *testing.T) {
	dir := packs(t)
	for _, c := range []struct {
		path, text string
		code       Code
	}{
		{"n.zip!x/n1.csv", "one", ""},
		{"r.csv.gz!r.csv", "unzipped", ""},
		{"bad/up.zip!in.csv", "in", ""},
		{"n.zip!e.csv", "", Empty},
		{"n.zip!none.csv", "", Missing},
		{"n.zip!", "", Missing},
		{"a.csv!a.csv", "", Missing},
		{"none.zip!a.csv", "", Missing},
		{"bad/up.zip!../../up.csv", "", UnsafeName},
		{"bad/bad.zip!in.csv", "", Damaged},
	} {
		t.Run(c.path, func(t *testing.T) {
			path := filepath.ToSlash(dir) + "/" + c.path
			size, err := Size(path)
			if codeOf(err) != c.code || size != int64(len(c.text)) {
				t.Errorf("size %d, %v", size, err)
			}
			source, err := Open(path)
			if codeOf(err) != c.code {
				t.Fatalf("opening gives %v", err)
			}
			if err != nil {
				return
			}
			text, err := io.ReadAll(source)
			if closing := source.Close(); err != nil || closing != nil || string(text) != c.text {
				t.Errorf("read %q, %v, closed with %v", text, err, closing)
			}
			if err := source.Close(); !errors.Is(err, fs.ErrClosed) {
				t.Errorf("closed twice: %v", err)
			}
		})
	}
}

func TestAFileOfThatVeryNameGoesFirst(t *testing.T) {
	dir := packs(t)
	path := put(t, filepath.Join(dir, "n.zip!n2.csv"), "a file of its own")
	put(t, filepath.Join(dir, "n.zip!n.zip"), string(zipOf(t, named("in.csv", "longest"))))
	for path, want := range map[string]string{path: "a file of its own", filepath.Join(dir, "n.zip!n.zip!in.csv"): "longest"} {
		source, err := Open(path)
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(source)
		source.Close()
		if err != nil || string(text) != want {
			t.Errorf("%s: read %q, %v", path, text, err)
		}
	}
}

func TestExpandGoesIntoArchives(t *testing.T) {
	dir := packs(t)
	put(t, filepath.Join(dir, "odd[1].zip"), string(zipOf(t, named("o.csv", "x"))))
	for _, c := range []struct {
		pattern, want string
		code          Code
	}{
		{"n-2.zip", "n-2.zip!n3.csv", ""},
		{"n.zip!n2.csv", "n.zip!n2.csv", ""},
		{"n.zip!e.csv", "n.zip!e.csv", ""}, // that it is empty is told when it is opened, as of a file
		{"n.zip!n*.csv", "n.zip!n10.csv n.zip!n2.csv", ""},
		{"n.zip!*/n*.csv", "n.zip!x/n1.csv", ""},
		{"n*.zip!n?.csv", "n-2.zip!n3.csv n.zip!n2.csv", ""},
		{"*.gz", "r.csv.gz!r.csv", ""},
		{"b*.xlsx", "book.xlsx", ""},
		{"odd[1].zip!*.csv", "odd[1].zip!o.csv", ""},
		{"bad/u*.zip!*.csv", "bad/up.zip!in.csv", UnsafeName},
		{"bad/bad.zip", "", Damaged},
		{"bad/b*.zip!*", "", Damaged},
		{"n.zip!m*.csv", "", NoMatch},
		{"a.csv!*", "", NoMatch},
		{"n.zip!none.csv", "", Missing},
		{"n.zip![.csv", "", BadPattern},
	} {
		t.Run(c.pattern, func(t *testing.T) {
			found, err := Expand(dir, c.pattern)
			if codeOf(err) != c.code || beneath(dir, found) != c.want || (err != nil) != (c.code != "") {
				t.Errorf("got %v, %v", found, err)
			}
		})
	}
}

// A file that is held open cannot be removed everywhere; here the open ones are counted.
func TestNothingIsLeftOpen(t *testing.T) {
	const own = "/proc/self/fd" // proc(5), on Linux
	before, err := os.ReadDir(own)
	if err != nil {
		t.Skip("open files cannot be counted here")
	}
	dir := packs(t)
	Walk(dir)
	for _, path := range []string{"n.zip!n2.csv", "n.zip!none.csv", "n.zip!e.csv", "r.csv.gz!r.csv", "bad/bad.zip!x", "bad/up.zip!../../up.csv"} {
		Size(filepath.Join(dir, path))
		if source, err := Open(filepath.Join(dir, path)); err == nil {
			source.Close()
		}
		Expand(dir, path)
	}
	if after, _ := os.ReadDir(own); len(after) > len(before) {
		t.Errorf("%d files open before, %d after", len(before), len(after))
	}
}

func TestMembersAreReadAtTheSameTime(t *testing.T) {
	var entries []entry
	for i := range 200 {
		entries = append(entries, named(fmt.Sprintf("%03d.csv", i), strings.Repeat(fmt.Sprint(i), 1000)))
	}
	path := put(t, filepath.Join(t.TempDir(), "n.zip"), string(zipOf(t, entries...)))
	var all sync.WaitGroup
	for i := range entries {
		all.Go(func() {
			source, err := Open(path + "!" + entries[i].Name)
			if err != nil {
				t.Error(err)
				return
			}
			defer source.Close()
			if text, err := io.ReadAll(source); err != nil || string(text) != entries[i].text {
				t.Errorf("member %d: %d bytes, %v", i, len(text), err)
			}
		})
	}
	all.Wait()
}

func TestAnArchiveThatIsReplacedIsListedAnew(t *testing.T) {
	path := put(t, filepath.Join(t.TempDir(), "n.zip"), string(zipOf(t, named("a.csv", "old"))))
	was := time.Date(2024, 1, 1, 0, 0, 0, 0, time.UTC)
	if err := os.Chtimes(path, was, was); err != nil {
		t.Fatal(err)
	}
	open, err := Open(path + "!a.csv")
	if err != nil {
		t.Fatal(err)
	}
	err = WriteAtomic(path, func(w io.Writer) error { _, err := w.Write(zipOf(t, named("a.csv", "new"))); return err })
	if err != nil {
		t.Fatal(err)
	}
	after, err := Open(path + "!a.csv")
	if err != nil {
		t.Fatal(err)
	}
	for want, source := range map[string]*Source{"old": open, "new": after} {
		if text, err := io.ReadAll(source); err != nil || string(text) != want {
			t.Errorf("read %q, %v, want %s", text, err, want)
		}
		source.Close()
	}
	rewritten := string(zipOf(t, named("b.csv", "new"))) // in place, and as large as before
	if found, err := Walk(put(t, path, rewritten)); err != nil || len(found) != 1 || !strings.HasSuffix(found[0], "!b.csv") {
		t.Errorf("rewritten in place it gives %v, %v", found, err)
	}
	if found, err := Walk(put(t, path, "no archive any more")); err != nil || len(found) != 1 || found[0] != filepath.ToSlash(path) {
		t.Errorf("walking gives %v, %v", found, err)
	}
}
