package files

import (
	"crypto/sha256"
	"encoding/hex"
	"hash"
	"io"
	"strings"
)

// NewSource is a source of bytes that are kept elsewhere than in a file of their own; size is how many there
// are, and reading in fails where their checksum, in lower hex, is not sum. Closing it closes in.
func NewSource(in io.ReadCloser, size int64, sum string) *Source {
	return &Source{Size: size, file: in, in: io.LimitReader(in, MaxBytes), hash: knownSum{sum}}
}

// knownSum stands for a hash where the checksum is known and somebody else makes sure of it.
type knownSum struct{ hex string }

// Write is io.Writer's: nothing is to be done.
func (knownSum) Write(p []byte) (int, error) { return len(p), nil }

func (k knownSum) sum() string { return k.hex }

// shaSum is a checksum as it is worked out.
type shaSum struct{ hash.Hash }

func (s shaSum) sum() string { return hex.EncodeToString(s.Sum(nil)) }

func newSum() checksum { return shaSum{sha256.New()} }

// checksum takes in bytes and says the SHA-256 of them in lower hex.
type checksum interface {
	io.Writer
	sum() string
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
