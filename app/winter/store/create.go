package store

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"github.com/ncruces/go-sqlite3"

	"thawbook/app/files"
)

// Create makes a winter file with a first document and opens it. There must be nothing of its name yet, and of
// two programs that want one name at once one gets it.
func Create(path string, first Step) (*Store, error) {
	if taken(path) {
		return nil, &Error{Path: path, Code: Exists}
	}
	err := files.MakeNew(path, func(temp string) error { return begin(temp, first) })
	if errors.Is(err, fs.ErrExist) {
		return nil, &Error{Path: path, Code: Exists}
	}
	if err != nil {
		return nil, fault(path, err)
	}
	return Open(path)
}

// taken says whether there is something of the name, or a journal that would be taken for that of a new file.
func taken(path string) bool {
	_, file := os.Lstat(path)
	return file == nil || hasJournal(path)
}

func hasJournal(path string) bool {
	_, err := os.Lstat(path + journalSuffix)
	return err == nil
}

// pour writes a file's bytes.
func pour(path string, out io.Writer) error {
	in, err := os.Open(path)
	if err != nil {
		return err
	}
	defer in.Close()
	_, err = io.Copy(out, in)
	return err
}

// poured writes a file's bytes into another.
func poured(from, to string) error {
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_TRUNC, 0)
	if err != nil {
		return err
	}
	err = pour(from, out)
	if closing := out.Close(); err == nil {
		err = closing
	}
	return err
}

// begin makes a winter file with one document in an empty place.
func begin(path string, first Step) (err error) {
	doc, err := written(first.Winter)
	if err != nil {
		return err
	}
	conn, err := connectAs(path, sqlite3.OPEN_READWRITE|sqlite3.OPEN_CREATE)
	if err != nil {
		return err
	}
	defer func() {
		if closing := conn.Close(); err == nil {
			err = closing
		}
	}()
	if err := conn.Exec(fmt.Sprintf("PRAGMA page_size=%d; PRAGMA application_id=%d; PRAGMA journal_mode=DELETE", pageSize, applicationID)); err != nil {
		return err
	}
	if err := migrate(conn, 0); err != nil {
		return err
	}
	return within(conn, func() error {
		if err := exec(conn, "INSERT INTO step VALUES(1,?,?,?,?)", first.At, first.What, first.Field, doc); err != nil {
			return err
		}
		return markStep(conn, 1)
	})
}

// SaveCopy writes the winter as it stands, history and exports included, into another file, whole or not at
// all. A file of that name is replaced unless a window has it open.
func (s *Store) SaveCopy(path string) error {
	if same(s.path, path) {
		return &Error{Path: path, Code: Exists}
	}
	lock, err := lockOf(path)
	if err != nil {
		return fault(path, &files.Error{Path: path, Code: files.NotWritten, Err: err})
	}
	if lock == nil {
		return &Error{Path: path, Code: InUse}
	}
	defer release(lock)
	if hasJournal(path) { // of a program that was killed: it would be taken for that of the copy
		return &Error{Path: path, Code: Exists}
	}
	return fault(path, files.MakeAtomic(path, s.snapshot))
}

// same says whether two paths name one file.
func same(a, b string) bool {
	one, err := os.Stat(a)
	if err != nil {
		return false
	}
	two, err := os.Stat(b)
	return err == nil && os.SameFile(one, two)
}

// snapshot copies the winter into a file by way of the connection, which knows what was opened even where another
// file bears the name now.
func (s *Store) snapshot(to string) error {
	s.guard.Lock()
	defer s.guard.Unlock()
	if s.conn == nil {
		return errClosed
	}
	return s.conn.Backup("main", uri(to))
}
