package importers

import (
	"bytes"
	"context"
	"io"
	"strconv"
	"unicode/utf8"
)

// Bounds on what is opened: a logger's file stays far below them, and beyond them nothing is kept in
// memory.
const (
	maxLine    = 1 << 20 // bytes of one line, its end not counted
	maxColumns = 1000
	headBytes  = 512 << 10 // what the layout is learned from
)

// source hands out a decoded text in chunks of whole lines from one reused buffer.
type source struct {
	ctx      context.Context
	r        io.Reader
	name     string
	lineOf   func(int) int // the file's line that one of the text is from, where the text is a table made of it; else nil
	encoding string
	buf      []byte // what was read and not consumed
	line     int    // physical number of buf's first line
	size     int64  // of all the text, in bytes, as the reader gives it; 0: unknown
	eof      bool
	cr       bool // lines end with a carriage return alone
}

// open finds out the encoding and fills the buffer with the head of the text.
func open(ctx context.Context, r io.Reader, name string) (*source, error) {
	encoding, decoded, err := sniffEncoding(r)
	if err != nil {
		return nil, err
	}
	decoded, lineOf, err := asTable(decoded)
	if err != nil {
		return nil, err
	}
	s := &source{ctx: ctx, r: decoded, lineOf: lineOf, name: name, encoding: encoding, line: 1, buf: make([]byte, 0, headBytes)}
	if sized, ok := r.(interface{ Size() int64 }); ok {
		s.size = sized.Size()
	}
	err = s.fill()
	if code := foreignCode(s.buf); code != "" {
		return nil, &Refusal{Name: name, Code: code}
	}
	if err != nil {
		return nil, err
	}
	if s.cr = bytes.IndexByte(s.buf, '\n') < 0 && bytes.IndexByte(s.buf, '\r') >= 0; s.cr {
		returnsToNewlines(s.buf)
	}
	for !s.eof && bytes.IndexByte(s.buf, '\n') < 0 {
		if err := s.consume(0); err != nil {
			return nil, err
		}
	}
	if looksBinary(s.buf) {
		return nil, &Refusal{Name: name, Code: RefusedBinary, Line: 1}
	}
	return s, nil
}

// fill reads until the buffer is full or the text ends.
func (s *source) fill() error {
	for idle := 0; !s.eof && len(s.buf) < cap(s.buf); idle++ {
		if err := s.ctx.Err(); err != nil {
			return err
		}
		n, err := s.r.Read(s.buf[len(s.buf):cap(s.buf)])
		fresh := s.buf[len(s.buf) : len(s.buf)+n]
		s.buf = s.buf[:len(s.buf)+n]
		if s.cr {
			returnsToNewlines(fresh)
		}
		if at := bytes.IndexByte(fresh, 0); at >= 0 {
			return s.endAtZeros(len(s.buf) - n + at)
		}
		switch {
		case err == io.EOF:
			s.eof = true
		case err != nil:
			return err
		case n > 0:
			idle = 0
		case idle > 100:
			return io.ErrNoProgress
		}
	}
	return nil
}

// rowsExpected is how many lines there may be in all, and some more, if they go on as they do in the buffer from a place
// in it on; 0 where the size of the text is not known.
func (s *source) rowsExpected(from int) int {
	lines, bytesOf := bytes.Count(s.buf[from:], newline), len(s.buf)-from
	if s.size == 0 || lines == 0 {
		return 0
	}
	return int(float64(s.size)/float64(bytesOf)*float64(lines)*1.02) + 1
}

// endAtZeros ends the text where the zeros begin that a file set up in advance was not yet written over with; the
// cell they cut is not trusted. It is no text when anything else follows them.
func (s *source) endAtZeros(at int) error {
	no := &Refusal{Name: s.name, Code: RefusedBinary, Line: s.line + bytes.Count(s.buf[:at], newline)}
	rest := make([]byte, 32<<10)
	for tail, idle := s.buf[at:], 0; ; idle++ {
		if len(bytes.Trim(tail, "\x00")) > 0 || at == 0 {
			return no
		}
		if err := s.ctx.Err(); err != nil {
			return err
		}
		n, err := s.r.Read(rest)
		if n > 0 {
			idle = 0
		}
		if tail = rest[:n]; err == io.EOF && len(bytes.Trim(tail, "\x00")) == 0 {
			if s.buf, s.eof = s.buf[:at], true; s.buf[at-1] != '\n' {
				s.buf = append(s.buf, brokenOff...)
			}
			return nil
		}
		if err != nil && err != io.EOF {
			return err
		}
		if idle > 100 {
			return io.ErrNoProgress
		}
	}
}

// consume forgets the first n bytes, which hold whole lines, and reads on. When nothing could be consumed
// the buffer grows, up to the longest line there may be.
func (s *source) consume(n int) error {
	s.line += bytes.Count(s.buf[:n], newline)
	if s.encoding == "utf-8" && !utf8.Valid(s.buf[:n]) {
		s.encoding = "windows-1252"
	}
	if n == 0 && len(s.buf) > maxLine {
		return &Refusal{Name: s.name, Code: RefusedLongLine, Line: s.line, Args: []string{strconv.Itoa(maxLine)}}
	}
	if n == 0 && len(s.buf) == cap(s.buf) {
		s.buf = append(make([]byte, 0, min(2*cap(s.buf), maxLine+1)), s.buf...)
	}
	s.buf = s.buf[:copy(s.buf, s.buf[n:])]
	return s.fill()
}

var newline = []byte{'\n'}

func returnsToNewlines(b []byte) {
	for i, c := range b {
		if c == '\r' {
			b[i] = '\n'
		}
	}
}

// nextRecord cuts the record that starts at pos: a line, or several when a quoted cell goes on over line
// ends; quoted says whether the chunk holds quotes at all. end is where the next one starts; it is pos when
// the chunk holds no whole record and more may follow. The record comes without its line end.
func nextRecord(chunk []byte, pos int, last, quoted bool) (record []byte, end, lines int) {
	end, whole := lineEnd(chunk, pos)
	if !whole && !last {
		return nil, pos, 0
	}
	lines = 1
	if quoted && bytes.Count(chunk[pos:end], quote)%2 == 1 {
		joined, whole := joinedEnd(chunk, pos, end)
		if !whole && !last && joined-pos < maxLine {
			return nil, pos, 0
		}
		if whole {
			lines, end = bytes.Count(chunk[pos:joined], newline), joined
		}
	}
	return trimLineEnd(chunk[pos:end]), end, max(lines, 1)
}

// joinedLines is how many line ends one record may hold in its quotes.
const joinedLines = 8

var quote = []byte{'"'}

// joinedEnd looks for the line that closes the quotes opened in chunk[pos:end].
func joinedEnd(chunk []byte, pos, end int) (joined int, found bool) {
	quotes := bytes.Count(chunk[pos:end], quote)
	for range joinedLines {
		next, whole := lineEnd(chunk, end)
		quotes += bytes.Count(chunk[end:next], quote)
		if end = next; quotes%2 == 0 {
			return end, true
		}
		if !whole {
			return end, false
		}
	}
	return pos + maxLine, false
}

// lineEnd is where the line after the one at pos starts, and whether that line has its end in the chunk.
func lineEnd(chunk []byte, pos int) (end int, whole bool) {
	if i := bytes.IndexByte(chunk[pos:], '\n'); i >= 0 {
		return pos + i + 1, true
	}
	return len(chunk), false
}

func trimLineEnd(s []byte) []byte {
	if n := len(s); n > 0 && s[n-1] == '\n' {
		s = s[:n-1]
	}
	if n := len(s); n > 0 && s[n-1] == '\r' {
		s = s[:n-1]
	}
	return s
}
