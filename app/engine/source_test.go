package engine

import (
	"archive/zip"
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"thawbook/app/files"
	"thawbook/app/winter"
	"thawbook/app/winter/store"
)

// kept is a winter file with some exports.
func kept(t *testing.T, content ...string) *store.Store {
	t.Helper()
	s, err := store.Create(filepath.Join(t.TempDir(), "w.thawbook"), store.Step{What: "begun", Winter: winter.Winter{Zone: "UTC"}})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	for i := 0; i < len(content); i += 2 {
		taken(t, s, content[i], content[i+1])
	}
	return s
}

// taken takes a text into a winter file.
func taken(t testing.TB, s *store.Store, came, text string) {
	t.Helper()
	sum := sha256.Sum256([]byte(text))
	arrival := store.Arrival{Came: came, SHA256: hex.EncodeToString(sum[:]), Open: func() (io.ReadCloser, error) {
		return io.NopCloser(strings.NewReader(text)), nil
	}}
	if _, err := s.Take(context.Background(), []store.Arrival{arrival}); err != nil {
		t.Fatal(err)
	}
}

// zipped packs texts by the standard library's writer.
func zipped(t *testing.T, content ...string) string {
	t.Helper()
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for i := 0; i < len(content); i += 2 {
		f, err := w.Create(content[i])
		if err == nil {
			_, err = io.WriteString(f, content[i+1])
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// The same files give the same review, whether they lie in a folder or in the winter file, packed or not.
func TestKeptFilesGiveTheSameReview(t *testing.T) {
	room, wall := hourly(t, "2026-11-12 00:00", 240, saw, flat(60)), hourly(t, "2026-11-12 00:00", 240, flat(2), flat(70))
	packed := zipped(t, "in/wall.csv", wall)
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Loggers: []winter.Logger{
		{Name: "room", Files: []string{"room 1.csv"}, Place: "room"}, {Name: "wall", Files: []string{"logs.zip!in/wall.csv"}, Place: "wall"},
	}}}}
	dir := folder(t, map[string]string{"room 1.csv": room, "logs.zip": packed})
	outside, err := Review(context.Background(), w, Folder(dir), nil, nil)
	if err != nil || outside.Refused() {
		t.Fatal(err, outside.Files)
	}
	var cache Cache
	source := NewKept(kept(t, "x/room 1.csv", room, "y/logs.zip", packed))
	for range 2 {
		inside, err := Review(context.Background(), w, source, &cache, nil)
		if err != nil || inside.Refused() {
			t.Fatal(err, inside.Files)
		}
		if !reflect.DeepEqual(inside.Barns, outside.Barns) {
			t.Error("the reviews differ")
		}
		for i, f := range inside.Files {
			if f.SHA256 != outside.Files[i].SHA256 || f.Bytes != outside.Files[i].Bytes {
				t.Errorf("%+v, outside %+v", f, outside.Files[i])
			}
		}
	}
}

// A member's checksum is known once it was read, and is that of its own bytes.
func TestAMembersChecksumIsRemembered(t *testing.T) {
	wall := hourly(t, "2026-11-12 00:00", 24, flat(2), flat(70))
	s := kept(t, "logs.zip", zipped(t, "in/wall.csv", wall))
	k, name := NewKept(s), "logs.zip!in/wall.csv"
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Loggers: []winter.Logger{{Name: "wall", Files: []string{name}, Place: "wall"}}}}}
	if before := k.SHA256(name); before != "" {
		t.Errorf("known before it was read: %s", before)
	}
	if _, err := Review(t.Context(), w, k, nil, nil); err != nil {
		t.Fatal(err)
	}
	sum := sha256.Sum256([]byte(wall))
	if got := k.SHA256(name); got != hex.EncodeToString(sum[:]) {
		t.Errorf("checksum %q", got)
	}
}

func TestFindingKeptFiles(t *testing.T) {
	source := NewKept(kept(t, "a.csv", "a", "b.csv", "b", "a.csv", "c", "z.zip", zipped(t, "2.csv", "x", "1.csv", "y")))
	for pattern, want := range map[string][]string{
		"a.csv": {"a.csv"}, "a (2).csv": {"a (2).csv"}, "z.zip": {"z.zip!1.csv", "z.zip!2.csv"}, "z.zip!1.csv": {"z.zip!1.csv"},
	} {
		if got, err := source.Find(pattern); err != nil || !slices.Equal(got, want) {
			t.Errorf("%s: %q, %v; want %q", pattern, got, err, want)
		}
	}
	var own *files.Error
	if _, err := source.Find("*.csv"); !errors.As(err, &own) || own.Code != files.NoMatch {
		t.Errorf("%v", err)
	}
	for _, name := range []string{"none.csv", "z.zip!9.csv", "a.csv!b"} {
		if in, err := source.Open(name); err == nil {
			in.Close()
			t.Errorf("%s was opened", name)
		}
	}
}

// Of several files the keeper is told how many are done, of one its name; the bytes never run backwards.
func TestProgressSaysHowManyFilesAreDone(t *testing.T) {
	dir := t.TempDir()
	var paths []string
	for _, name := range []string{"a", "b", "c"} {
		text := "Time,Temperature (°C)\n2024-12-01 00:00:00,4.0\n2024-12-01 00:01:00,4.1\n2024-12-01 00:02:00,4.2\n"
		paths = append(paths, filepath.Join(dir, name+".csv"))
		if err := os.WriteFile(paths[len(paths)-1], []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		paths []string
		last  string
	}{{paths, "Reading 3 of 3 files"}, {paths[:1], paths[0]}} {
		last, before := "", int64(0)
		_, err := Inspect(t.Context(), c.paths, nil, func(done, total int64, what string) {
			if done < before || done > total {
				t.Errorf("%d of %d after %d", done, total, before)
			}
			last, before = what, done
		})
		if err != nil || last != c.last {
			t.Errorf("%q, %v; wanted %q", last, err, c.last)
		}
	}
}
