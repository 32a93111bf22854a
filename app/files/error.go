// Package files opens, finds and writes files for the rest of the program: bounded reading with a
// checksum in the same pass, folders, archives and patterns in byte order of path, and writing that leaves
// either the old file or the whole new one.
//
// A member of an archive is named like a file: outer.zip!inner/name.csv, and outer.csv.gz!outer.csv for
// what a gzip file holds.
package files

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
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
	CutOff     Code = "cut_off"
	Damaged    Code = "damaged_archive"
	NoMembers  Code = "no_members"
	TooMany    Code = "too_many_members"
	TooMuch    Code = "unpacks_to_too_much"
	Overlap    Code = "members_overlap"
	Bomb       Code = "unpacks_without_end"
	UnsafeName Code = "unsafe_name"
	SameName   Code = "same_name"
	Encrypted  Code = "encrypted"
	Method     Code = "packing_method"
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
	CutOff:     "%s is cut off: its end is missing, so copy it again",
	Damaged:    "%s is a damaged archive: the list of its members, which stands at its end, could not be read, so copy it again",
	NoMembers:  "%s is an archive without a file in it",
	TooMany:    "%s lists more members than are read from one archive, 10,000 in a list of 16 MiB; unpack it and give its folder",
	TooMuch:    "%s unpacks to more than 16 GiB, more than is read from one archive; unpack it and give its folder",
	Overlap:    "%s is no sound archive: its members lie over one another, so none is read",
	Bomb:       "%s unpacks to more than 1,000 times its packed size, which no record does, so it is not read on",
	UnsafeName: "%s has a name that no file in an archive may have, so it is not read; give it a plain name and pack it again",
	SameName:   "%s stands in its archive more than once; only the first is read",
	Encrypted:  "%s is locked with a password; unpack it and give the file itself",
	Method:     "%s is packed by a method that is not read here; unpack it and give the file itself",
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

// refusals are several errors told as one: the first few sentences, and how many more there are.
type refusals []error

// toldRefusals is how many of several refusals are told in full.
const toldRefusals = 3

// joined is no error, the one, or all of them together.
func joined(all []error) error {
	switch len(all) {
	case 0:
		return nil
	case 1:
		return all[0]
	}
	return refusals(all)
}

// Error is the first sentences in one line.
func (r refusals) Error() string {
	var told []string
	for _, err := range r[:min(len(r), toldRefusals)] {
		told = append(told, err.Error())
	}
	text := strings.Join(told, "; ")
	if more := len(r) - toldRefusals; more > 0 {
		text += fmt.Sprintf("; and %d more like these", more)
	}
	return text
}

// Unwrap is every error.
func (r refusals) Unwrap() []error { return r }
