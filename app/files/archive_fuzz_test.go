package files

import (
	"bytes"
	"io"
	"path"
	"slices"
	"strings"
	"testing"
)

// Any bytes are no archive, a refused one, or one with safe names in byte order whose members give text or
// an *Error, however little of it is sound.
func FuzzArchive(f *testing.F) {
	f.Add([]byte("time,temp\n"))
	f.Add(gzipOf(f, "time,temp\n"))
	f.Add(append(gzipOf(f, "a"), gzipOf(f, "b")...))
	f.Add(zipOf(f))
	f.Add(zipOf(f, named("a.csv", "time,temp\n"), named("../b.csv", "x"), named("d/", ""), named("d/a.csv", "")))
	stored := named("a.csv", "time,temp\n")
	stored.Method = 0
	f.Add(zipOf(f, stored, stored))
	f.Fuzz(func(t *testing.T, content []byte) {
		a, err := OpenArchive("o", bytes.NewReader(content), int64(len(content)))
		if a == nil {
			if err != nil && codeOf(err) == "" {
				t.Fatalf("no *Error: %v", err)
			}
			return
		}
		if err := a.Refused(); err != nil && codeOf(err) == "" {
			t.Fatalf("no *Error: %v", err)
		}
		members := a.Members()
		if !slices.IsSorted(members) || len(slices.Compact(slices.Clone(members))) != len(members) {
			t.Fatalf("out of order or twice: %q", members)
		}
		for _, m := range members {
			safe(t, m)
			readSome(t, a, m)
		}
	})
}

// safe checks a member's name by what it must never be.
func safe(t *testing.T, full string) {
	inner, within := strings.CutPrefix(full, "o!")
	if !within || inner == "" || path.IsAbs(inner) || slices.Contains(strings.Split(inner, "/"), "..") || strings.ContainsAny(inner, "\\\x00") {
		t.Fatalf("%q is no safe name", full)
	}
}

// readSome reads a member, but no more than 1 MiB of it.
func readSome(t *testing.T, a *Archive, name string) {
	source, err := a.Open(name)
	if err == nil {
		defer source.Close()
		var n int64
		n, err = io.Copy(io.Discard, io.LimitReader(source, 1<<20))
		if n == 0 || n != source.Bytes() {
			t.Fatalf("%s: %d bytes, counted %d, %v", name, n, source.Bytes(), err)
		}
	}
	if err != nil && codeOf(err) == "" {
		t.Fatalf("%s: no *Error: %v", name, err)
	}
}
