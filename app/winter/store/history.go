package store

import (
	"errors"

	"github.com/ncruces/go-sqlite3"

	"thawbook/app/winter"
)

// keptSteps is how many edits can be undone.
const keptSteps = 200

// typingMS is the longest pause between two edits of one field that count as one step (common practice, no
// source).
const typingMS = 2000

// Step is an edit to be kept: the document after it, when it was made (ms UTC), what it was, in a word the
// program knows, and the field that was typed into; edits of the same field, each soon after the one before,
// are one step. An empty field never joins.
type Step struct {
	At          int64
	What, Field string
	Winter      winter.Winter
}

// Commit keeps an edit. Steps that were undone before it are gone. When it returns nil the edit is on the
// disk; after an error nothing has changed, there or here. Only where a disk fails at the very last, in keeping
// that the journal is gone, may the edit stand all the same; then Winter and Exports say so.
func (s *Store) Commit(step Step) error {
	doc, err := written(step.Winter)
	if err != nil {
		return &Error{Path: s.path, Code: Failed, Err: err}
	}
	s.guard.Lock()
	defer s.guard.Unlock()
	head := s.head
	err = s.change(func() error {
		if err := exec(s.conn, "DELETE FROM step WHERE id>?", s.head); err != nil {
			return err
		}
		joined, err := s.joins(step)
		if err != nil {
			return err
		}
		if joined {
			return exec(s.conn, "UPDATE step SET at=?, doc=? WHERE id=?", step.At, doc, head)
		}
		head++
		if err := exec(s.conn, "INSERT INTO step VALUES(?,?,?,?,?)", head, step.At, step.What, step.Field, doc); err != nil {
			return err
		}
		if err := exec(s.conn, "DELETE FROM step WHERE id<?", head-keptSteps); err != nil {
			return err
		}
		return markStep(s.conn, head)
	})
	if err == nil {
		s.now, s.head = step.Winter, head
	}
	return err
}

// joins says whether an edit goes on with the one before it.
func (s *Store) joins(step Step) (joins bool, err error) {
	if step.Field == "" {
		return false, nil
	}
	err = rows(s.conn, "SELECT at, what, field FROM step WHERE id=?", func(row *sqlite3.Stmt) error {
		since := step.At - row.ColumnInt64(0)
		joins = row.ColumnText(1) == step.What && row.ColumnText(2) == step.Field && since >= 0 && since <= typingMS
		return nil
	}, s.head)
	return joins, err
}

// Undo goes back to the document before the last edit; moved is false when there is none.
func (s *Store) Undo() (moved bool, err error) { return s.move(-1) }

// Redo takes the last undone edit up again; moved is false when there is none.
func (s *Store) Redo() (moved bool, err error) { return s.move(+1) }

// move sets the head a step back or forth.
func (s *Store) move(by int64) (moved bool, err error) {
	s.guard.Lock()
	defer s.guard.Unlock()
	if s.conn == nil {
		return false, &Error{Path: s.path, Code: Failed, Err: errClosed}
	}
	next, err := docOf(s.conn, s.head+by, true)
	if errors.Is(err, errNoStep) {
		return false, nil
	}
	if err != nil {
		return false, unread(s.path, err)
	}
	if err := s.change(func() error { return markStep(s.conn, s.head+by) }); err != nil {
		return false, err
	}
	s.now, s.head = next, s.head+by
	return true, nil
}

// Undoable says what the edit was that Undo would move over; ok is false without one.
func (s *Store) Undoable() (what string, ok bool) { return s.what(0) }

// Redoable says what Redo would take up again.
func (s *Store) Redoable() (what string, ok bool) { return s.what(1) }

// what is the word of a step, counted from the head, with another before it.
func (s *Store) what(from int64) (what string, ok bool) {
	s.guard.Lock()
	defer s.guard.Unlock()
	if s.conn == nil || s.mode != Writable {
		return "", false
	}
	err := rows(s.conn, "SELECT what FROM step WHERE id=? AND EXISTS(SELECT 1 FROM step WHERE id=?)", func(row *sqlite3.Stmt) error {
		what, ok = row.ColumnText(0), true
		return nil
	}, s.head+from, s.head+from-1)
	return what, ok && err == nil
}

// errNoStep is a step that is not there.
var errNoStep = errors.New("the history has no such step")

// docOf is the document of a step.
func docOf(conn *sqlite3.Conn, id int64, strict bool) (w winter.Winter, err error) {
	found := false
	err = rows(conn, "SELECT doc FROM step WHERE id=?", func(row *sqlite3.Stmt) (err error) {
		found = true
		w, err = readBack(row.ColumnRawBlob(0), strict)
		return err
	}, id)
	if err == nil && !found {
		err = errNoStep
	}
	return w, err
}

// unread is the error of a document that could not be read: the disk or another window stood in the way, or
// else the file is damaged.
func unread(path string, err error) error {
	if errors.Is(err, sqlite3.IOERR) || errors.Is(err, sqlite3.BUSY) {
		return fault(path, err)
	}
	return &Error{Path: path, Code: Damaged, Err: err}
}

// markedStep is the step that holds now.
func markedStep(conn *sqlite3.Conn) (id int64, err error) {
	err = rows(conn, "SELECT value FROM mark WHERE name='head'", func(row *sqlite3.Stmt) error {
		id = row.ColumnInt64(0)
		return nil
	})
	return id, err
}

func markStep(conn *sqlite3.Conn, id int64) error {
	return exec(conn, "INSERT OR REPLACE INTO mark VALUES('head',?)", id)
}

// Seen is what was remembered of the last review, nil when nothing was.
func (s *Store) Seen() (value []byte, err error) {
	s.guard.Lock()
	defer s.guard.Unlock()
	if s.conn == nil {
		return nil, &Error{Path: s.path, Code: Failed, Err: errClosed}
	}
	err = rows(s.conn, "SELECT value FROM mark WHERE name='seen'", func(row *sqlite3.Stmt) error {
		value = row.ColumnBlob(0, nil)
		return nil
	})
	return value, fault(s.path, err)
}

// See remembers what a review said. It is no edit: nothing the keeper gave us depends on it.
func (s *Store) See(value []byte) error {
	s.guard.Lock()
	defer s.guard.Unlock()
	return s.change(func() error { return exec(s.conn, "INSERT OR REPLACE INTO mark VALUES('seen',?)", value) })
}
