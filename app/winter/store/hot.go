package store

import (
	"os"
	"path/filepath"
)

// A program that was killed while it wrote leaves its journal beside the file: what the pages were before.
// SQLite puts them back when the file is next opened. Here that is tried on a copy first, so that a file
// which is damaged besides stays as it is.

// journalSuffix names the journal.
const journalSuffix = "-journal"

// placeToOpen is the file itself; or, where a journal lies beside it and the file may not be written, a copy
// with its pages put back.
func (s *Store) placeToOpen() (string, error) {
	info, err := os.Stat(s.path + journalSuffix)
	if err != nil || info.Size() == 0 || s.mode == Elsewhere {
		return s.path, nil // no journal, or that of a window that is at work and minds it
	}
	if s.temp, err = copyWithJournal(s.path); err != nil {
		return "", err
	}
	copied := filepath.Join(s.temp, "winter")
	if s.mode != Writable {
		return copied, rolledBack(copied, s.path)
	}
	if err := rolledBack(copied, s.path); err != nil {
		return "", err
	}
	removeCopy(s.temp)
	s.temp = ""
	return s.path, nil
}

// rolledBack puts a copy's pages back and makes sure that it is whole then, and its document readable.
func rolledBack(copied, path string) error {
	conn, err := connect(copied, true)
	if err != nil {
		return err
	}
	defer conn.Close()
	if _, err := schemaOf(conn); err != nil { // the first read puts the pages back
		return err
	}
	head, err := headerOf(copied)
	if err != nil {
		return &Error{Path: path, Code: Damaged, Err: err}
	}
	if err := whole(conn, path, head.version); err != nil {
		return err
	}
	return (&Store{path: path, mode: Protected, conn: conn}).load()
}

// copyWithJournal copies a file and its journal into a folder of its own.
func copyWithJournal(path string) (folder string, err error) {
	if folder, err = os.MkdirTemp("", "thawbook-"); err != nil {
		return "", err
	}
	for _, suffix := range []string{"", journalSuffix} {
		if err := copyFile(path+suffix, filepath.Join(folder, "winter"+suffix)); err != nil {
			removeCopy(folder)
			return "", err
		}
	}
	return folder, nil
}

func copyFile(from, to string) error {
	empty, err := os.OpenFile(to, os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	empty.Close()
	return poured(from, to)
}

// removeCopy clears a copy's folder away; "" is none.
func removeCopy(folder string) {
	if folder != "" {
		os.RemoveAll(folder)
	}
}
