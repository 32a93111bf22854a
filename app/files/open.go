package files

import (
	"io"
	"io/fs"
	"os"
	"syscall"
)

// MaxBytes is the most that is read from one file: 4 GiB, some hundred winters of one logger at a reading
// a second (common practice, no source).
const MaxBytes = 4 << 30

// errNotDir is what the system says of a path that goes on beneath a file.
var errNotDir error = syscall.ENOTDIR

// openFile and statFile ask the system; tests put failures in their place.
var (
	openFile = func(path string) (fs.File, error) { return os.Open(path) }
	statFile = os.Stat
)

// Source is an open file, or member of an archive, hashed and counted as it is read. Reading a member ends
// with an *Error when it is damaged, cut off, or larger than MaxBytes.
type Source struct {
	// Size in bytes is what the system gave on opening. Of a zip's member it is what the archive declares,
	// and reading ends with an error when that is not so. Of a gzip's member it is what the file's last four
	// bytes say: the size of the last stream in it, modulo 4 GiB, which nobody vouches for.
	Size int64
	file io.Closer
	in   io.Reader
	hash checksum
	read int64
}

// Open opens an ordinary, non-empty file of at most MaxBytes, or such a member of an archive; a file that
// bears the very name of a member goes before it. Errors are of type *Error.
func Open(path string) (*Source, error) {
	if _, err := fileSize(path); err != nil {
		return openMember(path, err)
	}
	file, err := openFile(path)
	if err != nil {
		return nil, refused(path, err)
	}
	info, err := file.Stat()
	if err != nil {
		file.Close()
		return nil, refused(path, err)
	}
	if err := acceptable(path, info); err != nil {
		file.Close()
		return nil, err
	}
	return &Source{Size: info.Size(), file: file, in: io.LimitReader(file, MaxBytes), hash: newSum()}, nil
}

// Size is the size in bytes of a file or member that Open would accept, as Source has it. Errors are of
// type *Error.
func Size(path string) (int64, error) {
	size, err := fileSize(path)
	if err == nil || !mayBeMember(path, err) {
		return size, err
	}
	source, err := openMember(path, err)
	if err != nil {
		return 0, err
	}
	return source.Size, source.Close()
}

// fileSize is the size of a file that Open would accept, without opening it: a pipe without a writer would
// not come back from that.
func fileSize(path string) (int64, error) {
	info, err := statFile(path)
	if err != nil {
		return 0, refused(path, err)
	}
	return info.Size(), acceptable(path, info)
}

// acceptable refuses what is no ordinary file, holds nothing, or too much.
func acceptable(path string, info fs.FileInfo) error {
	switch {
	case info.IsDir():
		return &Error{Path: path, Code: Directory}
	case !info.Mode().IsRegular():
		return &Error{Path: path, Code: NotAFile}
	case info.Size() == 0:
		return &Error{Path: path, Code: Empty}
	case info.Size() > MaxBytes:
		return &Error{Path: path, Code: TooLarge}
	}
	return nil
}

// Read reads on, as io.Reader.
func (s *Source) Read(p []byte) (int, error) {
	n, err := s.in.Read(p)
	s.hash.Write(p[:n])
	s.read += int64(n)
	return n, err
}

// Bytes is how many bytes were read so far.
func (s *Source) Bytes() int64 { return s.read }

// SHA256 is the checksum, in lower hex, of what was read so far; where it was known, of the whole.
func (s *Source) SHA256() string { return s.hash.sum() }

// Close closes the file.
func (s *Source) Close() error { return s.file.Close() }
