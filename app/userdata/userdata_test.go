package userdata

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"thawbook/app/desk"
)

// winterFile is something that bears a winter's name.
func winterFile(t *testing.T, dir, name string) string {
	t.Helper()
	path := filepath.Join(dir, name)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestRecentWintersAreRemembered(t *testing.T) {
	config, data := t.TempDir(), t.TempDir()
	u := load(config, data)
	a, b := winterFile(t, data, "a.thawbook"), winterFile(t, data, "b.thawbook")
	u.Opened(desk.Recent{Path: a, Name: "A", At: 1})
	u.Opened(desk.Recent{Path: b, Name: "B", At: 2})
	u.Opened(desk.Recent{Path: a, Name: "A renamed", At: 3})
	u.Opened(desk.Recent{Path: filepath.Join(data, "gone.thawbook"), Name: "gone", At: 4})
	u.SetScreen(a, desk.Screen{Page: 2, Barn: 1, From: 10, To: 20})
	u.SetScreen("never opened", desk.Screen{Page: 1})
	u = load(config, data)
	if got := u.Recent(); len(got) != 2 || got[0].Name != "A renamed" || got[1].Name != "B" {
		t.Errorf("%+v", got)
	}
	if got := u.Screen(a); got != (desk.Screen{Page: 2, Barn: 1, From: 10, To: 20}) {
		t.Errorf("%+v", got)
	}
	if got := u.Screen("never opened"); got != (desk.Screen{}) {
		t.Errorf("%+v", got)
	}
}

// Two windows remember together.
func TestTwoWindowsRemember(t *testing.T) {
	dir := t.TempDir()
	one, two := load(dir, dir), load(dir, dir)
	one.Opened(desk.Recent{Path: winterFile(t, dir, "a.thawbook"), Name: "A", At: 1})
	two.Opened(desk.Recent{Path: winterFile(t, dir, "b.thawbook"), Name: "B", At: 2})
	if got := load(dir, dir).Recent(); len(got) != 2 {
		t.Errorf("%+v", got)
	}
}

// A draft that a crash left unlisted is found again.
func TestNoDraftIsForgotten(t *testing.T) {
	u := load(t.TempDir(), t.TempDir())
	path := winterFile(t, u.Drafts(), "winter of today.thawbook")
	if got := u.Recent(); len(got) != 1 || got[0].Path != path || !got[0].Draft {
		t.Errorf("%+v", got)
	}
	u.Opened(desk.Recent{Path: path, Name: "New winter", At: 1, Draft: true})
	if got := u.Recent(); len(got) != 1 || got[0].Name != "New winter" {
		t.Errorf("%+v", got)
	}
}

func TestTheListIsBounded(t *testing.T) {
	dir := t.TempDir()
	u := load(dir, dir)
	for i := range 50 {
		path := winterFile(t, dir, fmt.Sprintf("%d.thawbook", i))
		u.Opened(desk.Recent{Path: path, At: int64(i)})
		u.SetScreen(path, desk.Screen{Page: 1})
	}
	if got := u.Recent(); len(got) != maxRecent || got[0].At != 49 || len(u.state.Screens) != maxRecent {
		t.Errorf("%d winters, %d screens", len(got), len(u.state.Screens))
	}
}

func TestWhatCanNotBeReadIsForgotten(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "remembered.json"), []byte("{\"recent\": 7"), 0o600); err != nil {
		t.Fatal(err)
	}
	u := load(dir, dir)
	if len(u.Recent()) != 0 {
		t.Error("something is remembered")
	}
	u.Opened(desk.Recent{Path: winterFile(t, dir, "a.thawbook")})
	if len(load(dir, dir).Recent()) != 1 {
		t.Error("it can't be written anew")
	}
}

// Where nothing may be written nothing is remembered, and nothing fails.
func TestWithoutAFolder(t *testing.T) {
	file := winterFile(t, t.TempDir(), "file")
	u := load(filepath.Join(file, "config"), filepath.Join(file, "data"))
	u.Opened(desk.Recent{Path: file})
	u.Crashed("1", "note")
	if got := u.Recent(); len(got) != 1 {
		t.Errorf("%+v", got)
	}
}

func TestNotesOnFaults(t *testing.T) {
	u := load(t.TempDir(), t.TempDir())
	for range maxNotes + 5 {
		u.Crashed("1.2", "kind: string\nengine.read read.go:1\n")
	}
	all, err := filepath.Glob(filepath.Join(u.data, "faults", "*.txt"))
	if err != nil || len(all) != maxNotes {
		t.Fatalf("%d notes, %v", len(all), err)
	}
	text, err := os.ReadFile(all[0])
	if err != nil || !strings.HasPrefix(string(text), "thawbook 1.2, ") || !strings.Contains(string(text), "read.go:1") {
		t.Errorf("%q, %v", text, err)
	}
}

func TestThePlatformsFolder(t *testing.T) {
	t.Setenv("XDG_DATA_HOME", t.TempDir())
	if got := dataFolder("config"); got != os.Getenv("XDG_DATA_HOME") && got != "config" {
		t.Errorf("%s", got)
	}
	t.Setenv("XDG_DATA_HOME", "relative")
	if got := dataFolder("config"); got == "relative" {
		t.Error("a relative folder is to be ignored (XDG Base Directory Specification)")
	}
}
