package files

import (
	"crypto/sha256"
	"io"
	"strings"
)

// NewSource is a source of bytes that are kept elsewhere than in a file of their own; size is how many there
// are. Closing it closes in.
func NewSource(in io.ReadCloser, size int64) *Source {
	return &Source{Size: size, file: in, in: io.LimitReader(in, MaxBytes), hash: sha256.New()}
}

// Given is the file that a path lies in as the keeper gave it: the path itself, or the archive before a
// member's name, which comes apart.
func Given(path string) (file, member string) {
	for at := len(path); at >= 0; at = strings.LastIndexByte(path[:at], '!') {
		if info, err := statFile(path[:at]); err == nil && !info.IsDir() {
			return path[:at], strings.TrimPrefix(path[at:], "!")
		}
	}
	return path, ""
}

// IsArchive says whether a file that begins so is an archive.
func IsArchive(head []byte) bool { return openerOf(string(head)) != nil }
