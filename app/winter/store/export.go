package store

import (
	"bufio"
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"path"
	"strings"
	"sync"
	"time"

	"github.com/klauspost/compress/zstd"
	"github.com/ncruces/go-sqlite3"
)

// pieceBytes is the most that one piece of an export holds, packed.
const pieceBytes = 1 << 20

// maxWindow bounds what a packed stream may ask to be remembered while it is unpacked.
const maxWindow = 1 << 27

// Export is a file as the keeper gave it: the name loggers know it by (no other export's), where it came
// from, its size, its SHA-256 in lower hex, and when it came in (ms UTC).
type Export struct {
	ID         int64
	Name, Came string
	Size       int64
	SHA256     string
	At         int64
}

// Arrival is a file to be taken in: where it came from, the name it shall bear ("" for that of where it came
// from), and its bytes from the start, which must have the SHA-256.
type Arrival struct {
	Came, Name, SHA256 string
	Open               func() (io.ReadCloser, error)
}

// Exports lists the files kept, in the order they came in.
func (s *Store) Exports() []Export {
	s.guard.Lock()
	defer s.guard.Unlock()
	return append([]Export(nil), s.exports...)
}

// ByName is the export of a name.
func (s *Store) ByName(name string) (e Export, ok bool) {
	return s.first(func(e Export) bool { return e.Name == name })
}

// BySHA256 is the export with the checksum.
func (s *Store) BySHA256(sum string) (e Export, ok bool) {
	return s.first(func(e Export) bool { return e.SHA256 == sum })
}

func (s *Store) first(is func(Export) bool) (Export, bool) {
	s.guard.Lock()
	defer s.guard.Unlock()
	for _, e := range s.exports {
		if is(e) {
			return e, true
		}
	}
	return Export{}, false
}

// Take keeps files, all of them or, after an error or the end of the context, none. A file whose bytes are
// kept already is not kept twice. It returns the export of every arrival, in order.
func (s *Store) Take(ctx context.Context, arrivals []Arrival) (taken []Export, err error) {
	s.guard.Lock()
	defer s.guard.Unlock()
	all := append([]Export(nil), s.exports...)
	err = s.change(func() error {
		for _, a := range arrivals {
			e, known := bySum(all, a.SHA256)
			if !known {
				if e, err = s.take(ctx, a, all); err != nil {
					return err
				}
				all = append(all, e)
			}
			taken = append(taken, e)
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	s.exports = all
	return taken, nil
}

func bySum(all []Export, sum string) (Export, bool) {
	for _, e := range all {
		if e.SHA256 == sum {
			return e, true
		}
	}
	return Export{}, false
}

// take packs one file into pieces and writes its row.
func (s *Store) take(ctx context.Context, a Arrival, all []Export) (Export, error) {
	sum, err := hex.DecodeString(a.SHA256)
	if err != nil || len(sum) != sha256.Size {
		return Export{}, fmt.Errorf("%q is no SHA-256", a.SHA256)
	}
	e := Export{ID: int64(len(all)) + 1, Name: freeName(cmp.Or(a.Name, a.Came), all), Came: strings.ToValidUTF8(a.Came, "\ufffd"), SHA256: a.SHA256, At: time.Now().UnixMilli()}
	in, err := a.Open()
	if err != nil {
		return Export{}, err
	}
	defer in.Close()
	hash := sha256.New()
	if e.Size, err = s.pack(e.ID, io.TeeReader(stopping{ctx, in}, hash)); err != nil {
		return Export{}, err
	}
	if string(hash.Sum(nil)) != string(sum) {
		return Export{}, &Error{Path: a.Came, Code: Changed}
	}
	return e, exec(s.conn, "INSERT INTO export VALUES(?,?,?,?,?,?)", e.ID, sum, e.Name, e.Came, e.Size, e.At)
}

// pack writes a stream as pieces of one zstd frame and returns how many bytes came.
func (s *Store) pack(export int64, in io.Reader) (size int64, err error) {
	out := bufio.NewWriterSize(&pieceWriter{s: s, export: export}, pieceBytes)
	packer, err := zstd.NewWriter(out, zstd.WithEncoderConcurrency(1))
	if err != nil {
		return 0, err
	}
	size, err = io.Copy(packer, in)
	if closing := packer.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = out.Flush()
	}
	return size, err
}

// pieceWriter writes each call's bytes as the next pieces of an export.
type pieceWriter struct {
	s         *Store
	export, n int64
}

// Write is io.Writer's.
func (w *pieceWriter) Write(p []byte) (written int, err error) {
	for len(p) > 0 {
		part := p[:min(len(p), pieceBytes)]
		if err := exec(w.s.conn, "INSERT INTO piece(export, n, data) VALUES(?,?,?)", w.export, w.n, part); err != nil {
			return written, err
		}
		w.n++
		written, p = written+len(part), p[len(part):]
	}
	return written, nil
}

// stopping is a reader that ends with its context.
type stopping struct {
	ctx context.Context
	in  io.Reader
}

// Read is io.Reader's.
func (r stopping) Read(p []byte) (int, error) {
	if err := r.ctx.Err(); err != nil {
		return 0, err
	}
	return r.in.Read(p)
}

// freeName is a name no export bears: that of the file, with a number where others came before it.
func freeName(came string, all []Export) string {
	base := shortened(plainName(came))
	ending := path.Ext(base)
	stem := strings.TrimSuffix(base, ending)
	name := base
	for n := 2; named(all, name); n++ {
		name = fmt.Sprintf("%s (%d)%s", stem, n, ending)
	}
	return name
}

// plainName is the last part of a path as a name that any system's folder can hold.
func plainName(came string) string {
	base := path.Base(strings.ReplaceAll(strings.ToValidUTF8(came, "_"), `\`, "/"))
	base = strings.Map(func(r rune) rune {
		if r < ' ' || strings.ContainsRune(`<>:"|?*[]!`, r) {
			return '_'
		}
		return r
	}, base)
	if strings.Trim(base, ". /") == "" {
		return "file"
	}
	return base
}

// maxNameBytes leaves room for a number in the 255 bytes that systems allow a name.
const maxNameBytes = 200

// shortened is a name that no system finds too long, its ending kept.
func shortened(base string) string {
	if len(base) <= maxNameBytes {
		return base
	}
	ending := path.Ext(base)
	if len(ending) > maxNameBytes/2 {
		ending = ""
	}
	return strings.ToValidUTF8(base[:maxNameBytes-len(ending)], "") + ending
}

// named says whether an export bears a name, in whatever case: some systems tell none.
func named(all []Export, name string) bool {
	for _, e := range all {
		if strings.EqualFold(e.Name, name) {
			return true
		}
	}
	return false
}

// exportsOf lists the exports of a file.
func exportsOf(conn *sqlite3.Conn) (out []Export, err error) {
	err = rows(conn, "SELECT id, name, came, size, sha256, at FROM export ORDER BY id", func(row *sqlite3.Stmt) error {
		if name := row.ColumnText(1); plainName(name) != name {
			return sqlite3.CORRUPT // we never give such a name: it could lead anywhere
		}
		out = append(out, Export{
			ID: row.ColumnInt64(0), Name: row.ColumnText(1), Came: row.ColumnText(2), Size: row.ColumnInt64(3),
			SHA256: hex.EncodeToString(row.ColumnRawBlob(4)), At: row.ColumnInt64(5),
		})
		return nil
	})
	return out, err
}

// OpenExport gives an export's bytes back as they came. The last read fails with an *Error of code Damaged
// where they are not those that came.
func (s *Store) OpenExport(name string) (io.ReadCloser, error) {
	e, ok := s.ByName(name)
	if !ok {
		return nil, &Error{Path: name, Code: Missing}
	}
	unpacker, err := newUnpacker(&pieceReader{s: s, export: e.ID})
	if err != nil {
		return nil, fault(s.path, err)
	}
	return &original{e: e, unpacker: unpacker, in: io.LimitReader(unpacker, e.Size+1), hash: sha256.New()}, nil
}

// unpackers keeps idle ones: each holds some megabytes.
var unpackers sync.Pool

// newUnpacker unpacks a zstd stream; it is given back to unpackers when it is done with.
func newUnpacker(packed io.Reader) (*zstd.Decoder, error) {
	if idle, ok := unpackers.Get().(*zstd.Decoder); ok {
		return idle, idle.Reset(packed)
	}
	return zstd.NewReader(packed, zstd.WithDecoderConcurrency(1), zstd.WithDecoderMaxWindow(maxWindow))
}

// pieceReader reads the pieces of an export one after another.
type pieceReader struct {
	s         *Store
	export, n int64
	rest      []byte
}

// Read is io.Reader's.
func (r *pieceReader) Read(p []byte) (int, error) {
	for len(r.rest) == 0 {
		if err := r.next(); err != nil {
			return 0, err
		}
	}
	n := copy(p, r.rest)
	r.rest = r.rest[n:]
	return n, nil
}

// next reads the next piece; io.EOF says that there is none.
func (r *pieceReader) next() error {
	r.s.guard.Lock()
	defer r.s.guard.Unlock()
	if r.s.conn == nil {
		return errClosed
	}
	found := false
	err := rows(r.s.conn, "SELECT data FROM piece WHERE export=? AND n=?", func(row *sqlite3.Stmt) error {
		found = true
		r.rest = row.ColumnBlob(0, nil)
		return nil
	}, r.export, r.n)
	r.n++
	if err == nil && !found {
		err = io.EOF
	}
	return err
}

// original is an export's bytes, checked against its checksum at the end.
type original struct {
	e        Export
	unpacker *zstd.Decoder
	in       io.Reader
	hash     interface {
		io.Writer
		Sum([]byte) []byte
	}
}

// Read is io.Reader's.
func (o *original) Read(p []byte) (int, error) {
	n, err := o.in.Read(p)
	o.hash.Write(p[:n])
	switch {
	case err == nil:
		return n, nil
	case errors.Is(err, errClosed):
		return n, &Error{Path: o.e.Name, Code: Failed, Err: err}
	case err != io.EOF, hex.EncodeToString(o.hash.Sum(nil)) != o.e.SHA256:
		return n, &Error{Path: o.e.Name, Code: Damaged, Err: err}
	}
	return n, io.EOF
}

// Close is io.Closer's.
func (o *original) Close() error {
	if o.unpacker != nil && o.unpacker.Reset(nil) == nil {
		unpackers.Put(o.unpacker)
	}
	o.unpacker, o.in = nil, closedReader{}
	return nil
}

// closedReader is read after it was closed.
type closedReader struct{}

// Read is io.Reader's.
func (closedReader) Read([]byte) (int, error) { return 0, errClosed }
