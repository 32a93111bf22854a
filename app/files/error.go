// Package files opens, finds and writes files for the rest of the program: bounded reading with a
// checksum in the same pass, folders and patterns in byte order of path, and writing that leaves either
// the old file or the whole new one.
package files

import (
	"errors"
	"fmt"
	"io/fs"
)

// Code says why a path could not be used.
type Code string

// The reasons a path is refused.
const (
	Missing    Code = "missing"
	Permission Code = "no_permission"
	Directory  Code = "directory"
	NotAFile   Code = "not_a_file"
	Empty      Code = "empty"
	TooLarge   Code = "too_large"
	NoMatch    Code = "no_match"
	BadPattern Code = "bad_pattern"
	Failed     Code = "failed"
	NotWritten Code = "not_written"
)

// Error is a refused path: one sentence, a code to tell the reasons apart, and the system's error beneath
// it where there is one.
type Error struct {
	Path string
	Code Code
	Err  error
}

// sentences holds one sentence per code; %s is the path.
var sentences = map[Code]string{
	Missing:    "%s does not exist",
	Permission: "%s may not be read: permission denied",
	Directory:  "%s is a folder, where a file is needed",
	NotAFile:   "%s is no ordinary file",
	Empty:      "%s is empty",
	TooLarge:   "%s is larger than 4 GiB, more than is read from one file",
	NoMatch:    "no file matches %s",
	BadPattern: "%s is no pattern: a bracket is not closed",
	Failed:     "%s could not be read",
	NotWritten: "%s could not be written and stays as it was",
}

// Error is one sentence with the path in it.
func (e *Error) Error() string {
	text := fmt.Sprintf(sentences[e.Code], e.Path)
	if (e.Code == Failed || e.Code == NotWritten) && e.Err != nil {
		return text + ": " + cause(e.Err).Error()
	}
	if e.Code == Directory && e.Err != nil {
		return text + "; " + e.Err.Error()
	}
	return text
}

// Unwrap is the system's error.
func (e *Error) Unwrap() error { return e.Err }

// cause drops the operation and the path the system's error repeats.
func cause(err error) error {
	var pathErr *fs.PathError
	if errors.As(err, &pathErr) {
		return pathErr.Err
	}
	return err
}

// refused gives the system's error on a path its code.
func refused(path string, err error) error {
	code := Failed
	switch {
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, errNotDir):
		code = Missing
	case errors.Is(err, fs.ErrPermission):
		code = Permission
	}
	return &Error{Path: path, Code: code, Err: err}
}
