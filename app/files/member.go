package files

import (
	"errors"
	"io"
	"io/fs"
	"path/filepath"
	"strings"
	"sync"
)

// mayBeMember says whether a path that is no file may still name a member.
func mayBeMember(path string, err error) bool {
	var e *Error
	return errors.As(err, &e) && e.Code == Missing && strings.Contains(path, "!")
}

// archiveBefore opens the archive that a member's full name begins with, and gives the rest of the name. The
// longest path before an exclamation mark that is an archive counts; where there is none, the error is
// what the path gave as a file.
func archiveBefore(path string, asFile error) (*shared, string, error) {
	if !mayBeMember(path, asFile) {
		return nil, "", asFile
	}
	for at := strings.LastIndexByte(path, '!'); at >= 0; at = strings.LastIndexByte(path[:at], '!') {
		s, err := shareArchive(path[:at])
		if s != nil || err != nil {
			return s, filepath.ToSlash(path[at+1:]), err
		}
	}
	return nil, "", asFile
}

// openMember opens a member by its full name.
func openMember(path string, asFile error) (*Source, error) {
	s, name, err := archiveBefore(path, asFile)
	if err != nil {
		return nil, err
	}
	source, err := s.archive.Open(name)
	if err != nil {
		s.Close()
		return nil, err
	}
	source.file = &both{member: source.file, archive: s}
	return source, nil
}

// listedMember is a member named outright, as its archive lists it.
func listedMember(path string, asFile error) ([]string, error) {
	s, name, err := archiveBefore(path, asFile)
	if err != nil {
		return nil, err
	}
	defer s.Close()
	m, err := s.archive.find(name)
	if err != nil {
		return nil, err
	}
	return []string{s.archive.full(m.name)}, nil
}

// both closes a member and ends the use of the archive it lies in, once.
type both struct {
	member, archive io.Closer
	once            sync.Once
}

// Close closes both, as io.Closer.
func (b *both) Close() error {
	err := fs.ErrClosed
	b.once.Do(func() { err = errors.Join(b.member.Close(), b.archive.Close()) })
	return err
}

// membersAt lists what a file stands for: itself or, when it is an archive, its members. The error tells of
// members that are not listed, or of the archive when it has none or is refused.
func membersAt(path string) ([]string, error) {
	s, err := shareArchive(path)
	if err != nil {
		return nil, err
	}
	if s == nil {
		return []string{filepath.ToSlash(path)}, nil
	}
	defer s.Close()
	archive := s.archive
	if len(archive.members) == 0 && len(archive.refused) == 0 {
		return nil, &Error{Path: path, Code: NoMembers}
	}
	return archive.Members(), archive.Refused()
}

// membersOf lists what each of some files stands for.
func membersOf(paths []string) (found []string, faults []error) {
	for _, p := range paths {
		below, err := membersAt(p)
		found = append(found, below...)
		if several, ok := err.(refusals); ok {
			faults = append(faults, several...)
		} else if err != nil {
			faults = append(faults, err)
		}
	}
	return found, faults
}
