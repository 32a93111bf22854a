package store

import (
	"encoding/binary"
	"errors"
	"io"
)

// A damaged file is read page by page, whatever its index pages say (sqlite.org/fileformat2.html, sections
// 1.5 to 2.1): every leaf of a table that can be taken apart gives its rows, and a row is told by the kinds
// of its columns. Stale copies of pages may give a row twice.

// A value of a row: an integer, or bytes of a text or blob; kind tells which.
type value struct {
	kind  byte // 'n' null, 'i' integer, 't' text, 'b' blob
	n     int64
	bytes []byte
}

// carver reads pages of one file.
type carver struct {
	in    io.ReaderAt
	pages int64
}

var errTorn = errors.New("a row is torn")

// each calls visit for every row of every leaf that can be read. Rows that are torn are left out.
func (c carver) each(visit func(id int64, row []value)) {
	page := make([]byte, pageSize)
	for n := int64(1); n <= c.pages; n++ {
		size, err := c.in.ReadAt(page, (n-1)*pageSize)
		if err != nil && err != io.EOF {
			continue // a bad sector costs its page
		}
		c.leaf(page[:size], n, visit)
	}
}

// leaf gives the rows of one page, if it is a leaf of a table.
func (c carver) leaf(page []byte, number int64, visit func(id int64, row []value)) {
	head := page
	if number == 1 {
		head = page[min(100, len(page)):]
	}
	if len(head) < 8 || head[0] != tableLeaf && head[0] != indexLeaf {
		return
	}
	cells := int(binary.BigEndian.Uint16(head[3:]))
	for i := 0; i < cells && 8+2*i+2 <= len(head); i++ {
		at := int(binary.BigEndian.Uint16(head[8+2*i:]))
		if at >= len(page) {
			continue
		}
		if id, payload, err := c.cell(page[at:], head[0] == tableLeaf); err == nil {
			if row, err := record(payload); err == nil {
				visit(id, row)
			}
		}
	}
}

// The kinds of pages that hold rows: of a table, each with an id, and of an index or a table without ids.
const tableLeaf, indexLeaf = 0x0d, 0x0a

// cell is a row's id, where it has one, and payload, its overflow pages followed. Payloads of rows without an id
// that do not lie on their page whole are left out: a winter file has none of use.
func (c carver) cell(cell []byte, withID bool) (id int64, payload []byte, err error) {
	size, rest, ok := varint(cell)
	if !ok || size < 0 || size > maxValueBytes {
		return 0, nil, errTorn
	}
	if withID {
		id, rest, ok = varint(rest)
	}
	if !ok || !withID && size > int64(len(rest)) {
		return 0, nil, errTorn
	}
	local := localBytes(int(size))
	if local > len(rest) {
		return 0, nil, errTorn
	}
	payload = append(make([]byte, 0, size), rest[:local]...)
	if int64(local) == size {
		return id, payload, nil
	}
	if len(rest) < local+4 {
		return 0, nil, errTorn
	}
	payload, err = c.overflow(payload, int(size), int64(binary.BigEndian.Uint32(rest[local:])))
	return id, payload, err
}

// localBytes is how much of a payload lies on its leaf (section 1.6: X, M and K).
func localBytes(size int) int {
	const x, m = pageSize - 35, (pageSize-12)*32/255 - 23
	if size <= x {
		return size
	}
	if k := m + (size-m)%(pageSize-4); k <= x {
		return k
	}
	return m
}

// overflow reads the rest of a payload from its chain of pages, which is as long as the size says and no longer.
func (c carver) overflow(payload []byte, size int, next int64) ([]byte, error) {
	page := make([]byte, pageSize)
	for len(payload) < size {
		if next < 2 || next > c.pages {
			return nil, errTorn
		}
		if _, err := c.in.ReadAt(page, (next-1)*pageSize); err != nil {
			return nil, errTorn
		}
		payload = append(payload, page[4:min(pageSize, 4+size-len(payload))]...)
		next = int64(binary.BigEndian.Uint32(page))
	}
	return payload, nil
}

// record takes a row's payload apart (section 2.1).
func record(payload []byte) (row []value, err error) {
	size, rest, ok := varint(payload)
	if !ok || size < 1 || size > int64(len(payload)) {
		return nil, errTorn
	}
	kinds, data := rest[:int(size)-(len(payload)-len(rest))], payload[size:]
	for len(kinds) > 0 {
		var kind int64
		if kind, kinds, ok = varint(kinds); !ok {
			return nil, errTorn
		}
		var v value
		if v, data, ok = valueOf(kind, data); !ok {
			return nil, errTorn
		}
		row = append(row, v)
	}
	return row, nil
}

// integerBytes are the sizes of the serial types of integers.
var integerBytes = map[int64]int{1: 1, 2: 2, 3: 3, 4: 4, 5: 6, 6: 8, 8: 0, 9: 0}

// valueOf is the next value of a row. Reals do not occur in a winter file.
func valueOf(kind int64, data []byte) (v value, rest []byte, ok bool) {
	if kind == 0 {
		return value{kind: 'n'}, data, true
	}
	if size, is := integerBytes[kind]; is {
		if size > len(data) {
			return v, nil, false
		}
		return value{kind: 'i', n: integer(kind, data[:size])}, data[size:], true
	}
	size := (kind - 12) / 2
	if kind < 12 || size > int64(len(data)) {
		return v, nil, false
	}
	name := byte('b')
	if kind%2 == 1 {
		name = 't'
	}
	return value{kind: name, bytes: data[:size]}, data[size:], true
}

// integer is a big-endian two's complement number; kinds 8 and 9 are 0 and 1 without bytes.
func integer(kind int64, data []byte) int64 {
	if kind >= 8 {
		return kind - 8
	}
	n := int64(int8(data[0]))
	for _, b := range data[1:] {
		n = n<<8 | int64(b)
	}
	return n
}

// varint is SQLite's number of one to nine bytes (section 1.6).
func varint(p []byte) (n int64, rest []byte, ok bool) {
	for i := 0; i < len(p) && i < 9; i++ {
		if i == 8 {
			return n<<8 | int64(p[i]), p[9:], true
		}
		n = n<<7 | int64(p[i]&0x7f)
		if p[i] < 0x80 {
			return n, p[i+1:], true
		}
	}
	return 0, nil, false
}
