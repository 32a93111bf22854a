package store

import (
	"errors"
	"fmt"
	"io/fs"

	"github.com/ncruces/go-sqlite3"

	"thawbook/app/files"
)

// Code says why a winter file could not be used.
type Code string

// The reasons a winter file is refused, or what was asked of it fails.
const (
	Missing    Code = "missing"
	NotAWinter Code = "not_a_winter"
	Damaged    Code = "damaged"
	TooNew     Code = "too_new"   // and so much so that it can't even be read
	InUse      Code = "in_use"    // another window has it open and its file is needed whole
	ReadOnly   Code = "read_only" // an edit of a file that may not be written
	Full       Code = "full"      // no room on the disk
	Changed    Code = "changed"   // a file is no longer what it was when it was read, or another window wrote
	Exists     Code = "exists"
	Failed     Code = "failed"
)

// Error is one sentence about a winter file, a code to tell the reasons apart, and what lies beneath.
type Error struct {
	Path string
	Code Code
	Err  error
}

// sentences holds one sentence per code; %s is the path.
var sentences = map[Code]string{
	Missing:    "%s does not exist",
	NotAWinter: "%s is no winter file of Thawbook",
	Damaged:    "%s is damaged and was left as it is; what it still holds can be rescued into a new winter",
	TooNew:     "%s was written by a newer Thawbook and can't be read by this one; update the program",
	InUse:      "%s is open in another window; close it there first",
	ReadOnly:   "%s is open for reading only, so the change was not kept; save a copy and work in that",
	Full:       "there is no room left on the disk of %s, so the change was not kept; make room and try again",
	Changed:    "%s was changed by somebody else meanwhile, so nothing was kept; open it again",
	Exists:     "%s exists already; choose another name",
	Failed:     "%s could not be read or written",
}

// Error is the sentence.
func (e *Error) Error() string {
	text := fmt.Sprintf(sentences[e.Code], e.Path)
	var written *files.Error
	if e.Code == Failed && errors.As(e.Err, &written) {
		return written.Error()
	}
	if e.Code == Failed && e.Err != nil {
		text += ": " + e.Err.Error()
	}
	return text
}

// Unwrap is what lies beneath.
func (e *Error) Unwrap() error { return e.Err }

// fault gives the database's or the system's error on a path its code; nil stays nil.
func fault(path string, err error) error {
	var own *Error
	if err == nil || errors.As(err, &own) {
		return err
	}
	code := Failed
	var unwritten *files.Error
	switch {
	case errors.Is(err, sqlite3.FULL), noRoom(err):
		code = Full
	case errors.As(err, &unwritten):
		// it has its own sentence
	case errors.Is(err, sqlite3.CORRUPT), errors.Is(err, sqlite3.NOTADB), errors.Is(err, sqlite3.TOOBIG):
		code = Damaged
	case errors.Is(err, sqlite3.READONLY), errors.Is(err, fs.ErrPermission):
		code = ReadOnly
	case errors.Is(err, sqlite3.BUSY):
		code = InUse
	case errors.Is(err, fs.ErrNotExist):
		code = Missing
	}
	return &Error{Path: path, Code: code, Err: err}
}
