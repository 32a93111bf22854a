package store

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// model is a history as a list and a place in it: what the store's must be the same as.
type model struct {
	docs []string
	at   int
}

func (m *model) commit(name string) {
	m.docs = append(m.docs[:m.at+1], name)
	if len(m.docs) > keptSteps+1 {
		m.docs = m.docs[len(m.docs)-keptSteps-1:]
	}
	m.at = len(m.docs) - 1
}

func (m *model) move(by int) bool {
	if m.at+by < 0 || m.at+by >= len(m.docs) {
		return false
	}
	m.at += by
	return true
}

// Random edits, undos, redos and restarts: the document is always the one a plain list of documents gives.
func TestUndoAndRedo(t *testing.T) {
	for seed := range uint64(4) {
		rng := rand.New(rand.NewPCG(seed, 3))
		s, m := begun(t), model{docs: []string{"first"}}
		edits := 600
		if testing.Short() { // under the race detector
			edits = 60
		}
		for i := range edits {
			switch k := rng.IntN(20); {
			case k < 9:
				name := fmt.Sprintf("edit %d", i)
				if err := s.Commit(Step{At: int64(i) * 1e6, What: "rename", Field: "name", Winter: titled(name)}); err != nil {
					t.Fatal(err)
				}
				m.commit(name)
			case k < 15:
				if moved, err := s.Undo(); err != nil || moved != m.move(-1) {
					t.Fatalf("seed %d, %d: undo %v, %v", seed, i, moved, err)
				}
			case k < 19:
				if moved, err := s.Redo(); err != nil || moved != m.move(+1) {
					t.Fatalf("seed %d, %d: redo %v, %v", seed, i, moved, err)
				}
			default:
				s = again(t, s)
			}
			if got := s.Winter().Name; got != m.docs[m.at] {
				t.Fatalf("seed %d, %d: %q, want %q", seed, i, got, m.docs[m.at])
			}
			_, back := s.Undoable()
			_, forth := s.Redoable()
			if back != (m.at > 0) || forth != (m.at < len(m.docs)-1) {
				t.Fatalf("seed %d, %d: undo offered %v, redo %v at %d of %d", seed, i, back, forth, m.at, len(m.docs))
			}
		}
	}
}

func TestTwoHundredStepsCanBeUndone(t *testing.T) {
	s := begun(t)
	for i := range 230 {
		if err := s.Commit(Step{At: int64(i), What: "rename", Winter: titled(fmt.Sprint(i))}); err != nil {
			t.Fatal(err)
		}
	}
	s = again(t, s)
	steps := 0
	for moved := true; moved; {
		var err error
		if moved, err = s.Undo(); err != nil {
			t.Fatal(err)
		}
		if moved {
			steps++
		}
	}
	if steps != 200 || s.Winter().Name != "29" {
		t.Errorf("%d steps back to %q", steps, s.Winter().Name)
	}
}

// Letters typed into one field, each within two seconds of the one before, are one step; a pause, another
// field, another kind of edit or an undo between them begins a new one.
func TestTypingIsOneStep(t *testing.T) {
	s := begun(t)
	for _, e := range []struct {
		at          int64
		what, field string
		name        string
	}{
		{10000, "rename", "name", "A"}, {11000, "rename", "name", "Al"}, {13000, "rename", "name", "Ald"}, // one
		{15001, "rename", "name", "Alde"},                          // a pause
		{15100, "rename", "zone", "Alde2"},                         // another field
		{15200, "note", "zone", "Alde3"},                           // another kind
		{15300, "hang", "", "Alde4"}, {15301, "hang", "", "Alde5"}, // no typing
		{15302, "rename", "name", "B"}, {15000, "rename", "name", "C"}, // the clock was set back
	} {
		if err := s.Commit(Step{At: e.at, What: e.what, Field: e.field, Winter: titled(e.name)}); err != nil {
			t.Fatal(err)
		}
	}
	for _, want := range []string{"B", "Alde5", "Alde4", "Alde3", "Alde2", "Alde", "Ald", "first"} {
		if moved, err := s.Undo(); !moved || err != nil || s.Winter().Name != want {
			t.Fatalf("undo gives %q, want %q (%v)", s.Winter().Name, want, err)
		}
	}
}

func TestWhatWouldBeUndone(t *testing.T) {
	s := begun(t)
	if _, ok := s.Undoable(); ok {
		t.Error("the first document can be undone")
	}
	if err := s.Commit(Step{At: 5, What: "hang", Winter: titled("second")}); err != nil {
		t.Fatal(err)
	}
	if what, ok := s.Undoable(); !ok || what != "hang" {
		t.Errorf("undo %q", what)
	}
	if _, err := s.Undo(); err != nil {
		t.Fatal(err)
	}
	if what, ok := s.Redoable(); !ok || what != "hang" {
		t.Errorf("redo %q", what)
	}
}
