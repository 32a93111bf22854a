package files

import (
	"archive/zip"
	"compress/flate"
	"compress/gzip"
	"errors"
	"io"
)

// Bounds of unpacking one member. Deflate reaches 1,032 to 1 at the most, with one byte over and over;
// tables of readings reach some 20 to 1 (common practice, no source).
const (
	mostRatio = 1_000
	freeBytes = 64 << 20 // unpacked without looking at the ratio, and packed without anything coming out
)

// Why the unpacking of a member ends early.
var (
	errBomb     = errors.New("it unpacks to more than 1,000 times its packed size")
	errIdle     = errors.New("its packed data goes on and on and holds nothing")
	errChecksum = errors.New("its checksum is wrong, so it was damaged after it was packed; copy it again")
	errPacked   = errors.New("its packed data is damaged; copy it again")
)

// unpacking is a decompressor that counts what goes in and what comes out, and stops when either runs far
// ahead of the other. The decompressor, plain, reads from the unpacking's intake.
type unpacking struct {
	packed       io.Reader
	taken, given int64
	plain        io.ReadCloser
	fault        error
}

// Read reads unpacked bytes, as io.Reader.
func (u *unpacking) Read(p []byte) (int, error) {
	if u.fault != nil {
		return 0, u.fault
	}
	n, err := u.plain.Read(p)
	u.given += int64(n)
	if u.given > freeBytes && u.given/mostRatio > u.taken {
		n, err = 0, errBomb
	}
	u.fault = err
	return n, err
}

// Close ends the decompressor.
func (u *unpacking) Close() error { return u.plain.Close() }

// intake is the packed side of an unpacking.
type intake struct{ u *unpacking }

// Read reads packed bytes, as io.Reader.
func (i intake) Read(p []byte) (int, error) {
	if i.u.taken > freeBytes+2*i.u.given {
		return 0, errIdle
	}
	n, err := i.u.packed.Read(p)
	i.u.taken += int64(n)
	return n, err
}

// unpacked is a member as it is read: at most MaxBytes, and with errors that name it.
type unpacked struct {
	name  string
	in    io.Reader
	given int64
}

// Read reads on, as io.Reader.
func (u *unpacked) Read(p []byte) (int, error) {
	n, err := u.in.Read(p)
	u.given += int64(n)
	switch {
	case u.given > MaxBytes:
		return 0, &Error{Path: u.name, Code: TooLarge}
	case err != nil && err != io.EOF:
		return n, unreadable(u.name, err)
	}
	return n, err
}

// unreadable gives the error of a decompressor its code and sentence.
func unreadable(name string, err error) error {
	var corrupt flate.CorruptInputError
	e := &Error{Path: name, Code: Failed, Err: err}
	switch {
	case errors.Is(err, errBomb):
		e.Code = Bomb
	case errors.Is(err, io.ErrUnexpectedEOF), errors.Is(err, io.EOF):
		e.Code = CutOff
	case errors.Is(err, zip.ErrChecksum), errors.Is(err, gzip.ErrChecksum):
		e.Err = errChecksum
	case errors.As(err, &corrupt), errors.Is(err, zip.ErrFormat), errors.Is(err, gzip.ErrHeader):
		e.Err = errPacked
	}
	return e
}
