package store

import (
	"errors"
	"os"
	"path/filepath"
	"sync"

	"github.com/gofrs/flock"
	"github.com/ncruces/go-sqlite3"

	"thawbook/app/winter"
)

// Mode says whether a winter file may be written, and if not, why.
type Mode string

// The modes.
const (
	Writable  Mode = "writable"
	Elsewhere Mode = "elsewhere" // another window holds it
	Protected Mode = "protected" // the file, its folder or its disk may not be written
	Newer     Mode = "newer"     // a newer program wrote it
)

// Store is an open winter file. Its methods may be called from several goroutines.
type Store struct {
	path    string
	mode    Mode
	reading bool // only that was asked for
	lock    *flock.Flock
	temp    string // the folder of a copy that stands for a file that could not be opened in place

	guard   sync.Mutex
	conn    *sqlite3.Conn
	now     winter.Winter
	head    int64
	exports []Export
}

// Open opens a winter file: for writing where nothing speaks against it, else for reading; Mode says which.
// A damaged file is not opened and not written to. Errors are of type *Error.
func Open(path string) (*Store, error) { return open(path, false) }

// Read opens a winter file for reading only: its mode is never Writable, and it keeps nobody else from writing.
// Errors are as of Open.
func Read(path string) (*Store, error) { return open(path, true) }

func open(path string, reading bool) (*Store, error) {
	whole, err := filepath.EvalSymlinks(path)
	if err == nil {
		whole, err = filepath.Abs(whole)
	}
	if err != nil {
		return nil, fault(path, err)
	}
	s := &Store{path: whole, reading: reading}
	if err := s.open(); err != nil {
		s.Close()
		return nil, fault(path, err)
	}
	return s, nil
}

// open looks before it touches: the header, the lock, what a killed program left, then the file.
func (s *Store) open() error {
	head, err := headerOf(s.path)
	if err != nil {
		return err
	}
	if err := s.chooseMode(head); err != nil {
		return err
	}
	place, err := s.placeToOpen()
	if err != nil {
		return err
	}
	if s.conn, err = connect(place, s.mode == Writable); err != nil {
		return err
	}
	if err := whole(s.conn, s.path, head.version); err != nil {
		return err
	}
	if s.mode == Writable && head.version < version() {
		if err := migrate(s.conn, head.version); err != nil {
			return err
		}
	}
	if s.reading {
		release(s.lock)
		s.lock = nil
	}
	return s.load()
}

// chooseMode takes the lock where the file may be written.
func (s *Store) chooseMode(head header) error {
	s.mode = Protected
	if head.version > version() {
		s.mode = Newer
		return nil
	}
	if !mayWrite(s.path) {
		return nil
	}
	lock, err := lockOf(s.path)
	switch {
	case err != nil:
		return nil // a folder that takes no lock takes no journal either
	case lock == nil:
		s.mode = Elsewhere
	case s.reading:
		s.lock = lock // until it is open: nobody is to write while a journal is looked at
	default:
		s.mode, s.lock = Writable, lock
	}
	return nil
}

// load reads the document that holds now and the list of exports.
func (s *Store) load() error {
	head, err := markedStep(s.conn)
	if err != nil {
		return err
	}
	now, err := docOf(s.conn, head, s.mode != Newer)
	if err != nil {
		return unread(s.path, err)
	}
	exports, err := exportsOf(s.conn)
	if err == nil {
		s.now, s.head, s.exports = now, head, exports
	}
	return err
}

// Close ends work on the file. What was kept is on the disk already.
func (s *Store) Close() error { return s.close(func() {}) }

// Remove closes the winter and removes its file, unless it is not ours to write.
func (s *Store) Remove() error {
	return s.close(func() {
		if s.mode == Writable && s.lock != nil {
			os.Remove(s.path)
		}
	})
}

// close ends work on the file, with a last word while nobody else can write.
func (s *Store) close(last func()) error {
	s.guard.Lock()
	defer s.guard.Unlock()
	var err error
	if s.conn != nil {
		err = s.conn.Close()
		s.conn = nil
	}
	last()
	release(s.lock)
	s.lock = nil
	removeCopy(s.temp)
	return fault(s.path, err)
}

// Path is the file's path.
func (s *Store) Path() string { return s.path }

// Mode says whether the file may be written.
func (s *Store) Mode() Mode { return s.mode }

// Winter is the document that holds now.
func (s *Store) Winter() winter.Winter {
	s.guard.Lock()
	defer s.guard.Unlock()
	return s.now
}

// change does work in one transaction, if the file may be written and nobody else did meanwhile. Memory
// follows only what was kept.
func (s *Store) change(work func() error) error {
	if s.mode != Writable {
		return &Error{Path: s.path, Code: ReadOnly}
	}
	if s.conn == nil {
		return &Error{Path: s.path, Code: Failed, Err: errClosed}
	}
	err := within(s.conn, func() error {
		head, err := markedStep(s.conn)
		if err != nil {
			return err
		}
		if head != s.head {
			return &Error{Path: s.path, Code: Changed}
		}
		return work()
	})
	if errors.Is(err, sqlite3.IOERR) { // the change may stand all the same, when its journal went but not for good
		_ = s.load()
	}
	return fault(s.path, err)
}
