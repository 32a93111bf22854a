// Package userdata keeps what the program remembers for a user from one start to the next, in the platform's
// own folders: which winters were open lately, where the keeper was in each, drafts that have no name yet, and
// notes on faults of the program. A winter is whole without any of it, so nothing here fails loudly.
package userdata

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"sync"
	"time"

	"thawbook/app/desk"
	"thawbook/app/files"
)

// maxRecent is how many winters are remembered; maxNotes how many notes on faults are kept.
const (
	maxRecent = 20
	maxNotes  = 20
)

// UserData is one user's. Its methods may be called from several goroutines.
type UserData struct {
	config, data string // folders

	lock  sync.Mutex
	state state
}

// state is the file of what is remembered.
type state struct {
	Recent  []desk.Recent          `json:"recent"`
	Screens map[string]desk.Screen `json:"screens"` // by the winter file's path
}

// Load reads what is remembered; what can't be read is as if it had never been.
func Load() *UserData {
	config, err := os.UserConfigDir()
	if err != nil {
		config = os.TempDir()
	}
	return load(filepath.Join(config, "thawbook"), filepath.Join(dataFolder(config), "thawbook"))
}

// dataFolder is where the platform wants a program's data that is no setting (XDG Base Directory Specification
// 0.8 on Linux and its like; elsewhere beside the settings).
func dataFolder(config string) string {
	switch runtime.GOOS {
	case "windows", "darwin", "ios", "plan9":
		return config
	}
	if dir := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return dir
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return config
	}
	return filepath.Join(home, ".local", "share")
}

func load(config, data string) *UserData {
	u := &UserData{config: config, data: data, state: state{Screens: map[string]desk.Screen{}}}
	u.reload()
	return u
}

// reload takes up what another window has written meanwhile.
func (u *UserData) reload() {
	text, err := os.ReadFile(u.path())
	var s state
	if err != nil || json.Unmarshal(text, &s) != nil {
		return
	}
	if s.Screens == nil {
		s.Screens = map[string]desk.Screen{}
	}
	u.state = s
}

func (u *UserData) path() string { return filepath.Join(u.config, "remembered.json") }

// Drafts is the folder of winters that have no name yet.
func (u *UserData) Drafts() string { return filepath.Join(u.data, "drafts") }

// Recent lists the winters that were open lately and whose files are still there, the latest first. Drafts that
// were never listed, as after a crash, come too: nothing in them is forgotten.
func (u *UserData) Recent() (out []desk.Recent) {
	u.lock.Lock()
	defer u.lock.Unlock()
	listed := map[string]bool{}
	for _, r := range u.state.Recent {
		listed[r.Path] = true
		if _, err := os.Stat(r.Path); err == nil {
			out = append(out, r)
		}
	}
	found, _ := filepath.Glob(filepath.Join(u.Drafts(), "*.thawbook"))
	for _, path := range found {
		if info, err := os.Stat(path); err == nil && !listed[path] {
			out = append(out, desk.Recent{Path: path, Name: "Winter without a name", At: info.ModTime().UnixMilli(), Draft: true})
		}
	}
	slices.SortStableFunc(out, func(a, b desk.Recent) int { return int(min(1, max(-1, b.At-a.At))) })
	return out
}

// Opened puts a winter first.
func (u *UserData) Opened(r desk.Recent) {
	u.change(func(s *state) {
		s.Recent = slices.DeleteFunc(s.Recent, func(o desk.Recent) bool { return o.Path == r.Path })
		s.Recent = slices.Insert(s.Recent, 0, r)
		for len(s.Recent) > maxRecent {
			last := len(s.Recent) - 1
			delete(s.Screens, s.Recent[last].Path)
			s.Recent = s.Recent[:last]
		}
	})
}

// Screen is where the keeper was in a winter; its zero value where that is not known.
func (u *UserData) Screen(path string) desk.Screen {
	u.lock.Lock()
	defer u.lock.Unlock()
	return u.state.Screens[path]
}

// SetScreen remembers where the keeper is in a winter that was opened.
func (u *UserData) SetScreen(path string, screen desk.Screen) {
	u.change(func(s *state) {
		if slices.ContainsFunc(s.Recent, func(r desk.Recent) bool { return r.Path == path }) {
			s.Screens[path] = screen
		}
	})
}

// change changes what is remembered and writes it down.
func (u *UserData) change(change func(*state)) {
	u.lock.Lock()
	defer u.lock.Unlock()
	u.reload()
	change(&u.state)
	if os.MkdirAll(u.config, 0o700) != nil {
		return
	}
	files.WriteAtomic(u.path(), func(out io.Writer) error { return json.NewEncoder(out).Encode(u.state) })
}

// Crashed sets down a note on a fault of the program, with the program's version and the time; it holds
// nothing of the keeper's. Of many the latest are kept.
func (u *UserData) Crashed(version, note string) {
	dir := filepath.Join(u.data, "faults")
	if os.MkdirAll(dir, 0o700) != nil {
		return
	}
	name := filepath.Join(dir, time.Now().UTC().Format("20060102T150405.000000000")+".txt")
	files.WriteAtomic(name, func(out io.Writer) error {
		_, err := fmt.Fprintf(out, "thawbook %s, %s/%s, %s\n%s", version, runtime.GOOS, runtime.GOARCH, runtime.Version(), note)
		return err
	})
	all, _ := filepath.Glob(filepath.Join(dir, "*.txt"))
	for len(all) > maxNotes {
		os.Remove(all[0])
		all = all[1:]
	}
}
