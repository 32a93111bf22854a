package files

import (
	"compress/gzip"
	"encoding/binary"
	"io"
	"path"
	"strings"
)

// openGzip lists the one member of a gzip file: all its streams, one after the other (RFC 1952, 2.2). It is
// named after the file without .gz, for the name within is anybody's.
func openGzip(name string, in io.ReaderAt, size int64) (*Archive, error) {
	m := member{name: gzipMember(name), size: trailer(in, size)}
	m.open = func() (io.ReadCloser, error) {
		u := &unpacking{packed: io.NewSectionReader(in, 0, size)}
		plain, err := gzip.NewReader(intake{u})
		u.plain = plain
		return u, err
	}
	return &Archive{name: name, members: []member{m}}, nil
}

// gzipMember is the last part of a gzip file's name without .gz.
func gzipMember(name string) string {
	inner := path.Base(name)
	if end := len(inner) - len(".gz"); end > 0 && strings.EqualFold(inner[end:], ".gz") {
		inner = inner[:end]
	}
	if inner, plain := plainName(inner); plain && inner != "." {
		return inner
	}
	return "unpacked"
}

// trailer is the size that ends a gzip file, in bytes modulo 4 GiB (RFC 1952, 2.3.1); 0 when it is too short.
func trailer(in io.ReaderAt, size int64) int64 {
	last := make([]byte, 4)
	if n, _ := in.ReadAt(last, size-4); n < 4 {
		return 0
	}
	return int64(binary.LittleEndian.Uint32(last))
}
