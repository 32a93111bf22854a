package files

import (
	"bufio"
	"cmp"
	"io"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"unicode"
)

// Archive is the list of an archive's members, each of which can be opened on its own, at the same time as
// others. What it lies in must stay readable meanwhile.
type Archive struct {
	name    string
	members []member // in byte order of name
	refused []*Error // of members that are not listed
}

// member is one packed file.
type member struct {
	name  string // within the archive
	size  int64  // unpacked, as the archive declares it
	fault error  // why it cannot be opened although it is listed
	open  func() (io.ReadCloser, error)
}

// OpenArchive lists the members of a zip or gzip archive of size bytes, which its first bytes tell, never
// its name. Content that is no archive, and a document that merely lies in a zip (a spreadsheet), gives
// nil and no error. An archive that is damaged, or beyond MaxBytes, MaxMembers or MaxUnpacked, gives an
// *Error. Members are named after name.
func OpenArchive(name string, in io.ReaderAt, size int64) (*Archive, error) {
	name = filepath.ToSlash(name)
	head := make([]byte, 4)
	n, _ := io.NewSectionReader(in, 0, size).ReadAt(head, 0)
	open := openerOf(string(head[:n]))
	switch {
	case open == nil:
		return nil, nil
	case size > MaxBytes:
		return nil, &Error{Path: name, Code: TooLarge}
	}
	return open(name, in, size)
}

// openerOf knows an archive by its first bytes: a zip's local file header or, when it is empty, its end of
// central directory (APPNOTE.TXT 6.3.10, 4.3.7 and 4.3.16); gzip's mark and its one method (RFC 1952, 2.3.1).
func openerOf(head string) func(string, io.ReaderAt, int64) (*Archive, error) {
	switch {
	case head == "PK\x03\x04", head == "PK\x05\x06":
		return openZip
	case strings.HasPrefix(head, "\x1f\x8b\x08"):
		return openGzip
	}
	return nil
}

// Members lists the full names, outer.zip!inner.csv, in byte order. Left out are folders, links, what begins
// with a dot, the folders __MACOSX, and what Refused tells of. An archive within it is a member like others.
func (a *Archive) Members() []string {
	names := make([]string, len(a.members))
	for i, m := range a.members {
		names[i] = a.full(m.name)
	}
	return names
}

// Refused is nil, or why members are not listed: an *Error of code UnsafeName or SameName, or several in one.
func (a *Archive) Refused() error {
	var all []error
	for _, e := range a.refused {
		all = append(all, e)
	}
	return joined(all)
}

// Size is how many bytes the archive says a member unpacks to; 0 where it has none of the name.
func (a *Archive) Size(name string) int64 {
	m, err := a.find(strings.TrimPrefix(name, a.name+"!"))
	if err != nil {
		return 0
	}
	return m.size
}

// Open opens a member, named as in Members or by its part after the first name. Errors are of type *Error:
// Missing, Empty, TooLarge, Encrypted, Method, those of Refused, or what reading it would give.
func (a *Archive) Open(name string) (*Source, error) {
	m, err := a.find(strings.TrimPrefix(name, a.name+"!"))
	if err == nil {
		err = m.fault
	}
	if err != nil {
		return nil, err
	}
	full := a.full(m.name)
	packed, err := m.open()
	if err != nil {
		return nil, unreadable(full, err)
	}
	in := bufio.NewReader(&unpacked{name: full, in: packed})
	if _, err := in.Peek(1); err != nil {
		packed.Close()
		if err == io.EOF {
			err = &Error{Path: full, Code: Empty}
		}
		return nil, err
	}
	return &Source{Size: m.size, file: packed, in: in, hash: newSum()}, nil
}

// find is a listed member, or why it is not listed.
func (a *Archive) find(name string) (member, error) {
	i, found := slices.BinarySearchFunc(a.members, name, func(m member, name string) int { return cmp.Compare(m.name, name) })
	if found {
		return a.members[i], nil
	}
	missing := &Error{Path: printable(a.full(name)), Code: Missing}
	for _, e := range a.refused {
		if e.Path == missing.Path {
			return member{}, e
		}
	}
	return member{}, missing
}

// full is a member's name after the archive's.
func (a *Archive) full(name string) string { return a.name + "!" + name }

// plainName is a member's name as a path below the archive; false when it could be taken for one outside,
// or holds what no name of a file should.
func plainName(name string) (string, bool) {
	drive := len(name) > 1 && name[1] == ':' && unicode.IsLetter(rune(name[0]))
	if name == "" || name[0] == '/' || drive || strings.Contains(name, `\`) || strings.ContainsFunc(name, unicode.IsControl) {
		return "", false
	}
	return path.Clean(name), !slices.Contains(strings.Split(name, "/"), "..")
}

// hidden says whether a name, or a folder in it, begins with a dot or is where a packer keeps its own.
func hidden(name string) bool {
	return slices.ContainsFunc(strings.Split(name, "/"), func(part string) bool {
		return strings.HasPrefix(part, ".") || part == "__MACOSX"
	})
}

// printable puts the sign of an unknown character in place of what cannot be printed.
func printable(name string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return unicode.ReplacementChar
		}
		return r
	}, name)
}
