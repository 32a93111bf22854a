package importers

import (
	"bufio"
	"bytes"
	"io"
	"sort"
)

// Programs hand data to one another as objects and arrays of readings (JSON, RFC 8259), printed over as many lines as
// they like. Put on a line of its own each reading is a row.

// deepest is how deep objects and arrays may lie in one another.
const deepest = 64

// objectLines hands on a text with every element of its arrays that is an object or an array on one line, without the
// blanks and commas around it. The lines an element took are made up for behind it, so that what stands below keeps its
// number.
type objectLines struct {
	r       *bufio.Reader
	err     error
	out     []byte // not yet handed on
	line    int    // of the text it was, from 0
	lines   int    // of what is handed on
	seams   []seam
	open    []byte // the brackets around
	element int    // how many are open within an element; 0 outside of any
	owed    int    // line ends of the element
	begun   bool   // something stands on the line
	between bool   // the last thing was an element
	quoted  bool   // within a string
	escaped bool
}

// seam says how many lines more than before what is handed on has from one of its lines on.
type seam struct{ from, more int }

// lineOf is the line, from 1, of the text that a line of what was handed on is from.
func (o *objectLines) lineOf(line int) int {
	at := sort.Search(len(o.seams), func(i int) bool { return o.seams[i].from > line-1 })
	if at == 0 {
		return line
	}
	return line - o.seams[at-1].more
}

// asTable is a text as it is, or, where it is one object or array over several lines, or all on one, by its readings;
// then lineOf says which of its lines one of them is from, and is nil else.
func asTable(r io.Reader) (table io.Reader, lineOf func(int) int, err error) {
	b := bufio.NewReaderSize(r, 4096)
	head, err := b.Peek(4096)
	if err != nil && err != io.EOF || !isOneObject(head, err == io.EOF) {
		return b, nil, nil
	}
	if hasElements(head) {
		o := &objectLines{r: b}
		return o, o.lineOf, nil
	}
	var kept bytes.Buffer
	columns, err := columnTable(io.TeeReader(b, &kept))
	if columns == nil || err != nil {
		return io.MultiReader(&kept, b), nil, err
	}
	return bytes.NewReader(columns), func(int) int { return 1 }, nil
}

// opensObject says whether a text begins with a bracket and what may stand behind one.
func opensObject(text []byte) bool {
	if len(text) == 0 || text[0] != '[' && text[0] != '{' {
		return false
	}
	behind := bytes.TrimLeft(text[1:], " \t\r\n")
	return len(behind) == 0 || bytes.IndexByte([]byte(`"{[`), behind[0]) >= 0
}

// hasElements says whether an array of a text holds objects or arrays.
func hasElements(head []byte) bool {
	var o objectLines
	for _, c := range head {
		if o.step(c); o.element > 0 {
			return true
		}
	}
	return false
}

// isOneObject says whether a text opens an object or an array that is not closed where its first line ends, unless that
// is all there is.
func isOneObject(head []byte, whole bool) bool {
	head = bytes.TrimLeft(head, " \t\r\n")
	if !opensObject(head) {
		return false
	}
	line, rest, _ := bytes.Cut(head, newline)
	var o objectLines
	for _, c := range line {
		o.step(c)
	}
	return len(o.open) > 0 || whole && len(trim(rest)) == 0
}

// Read hands on the next bytes, as io.Reader.
func (o *objectLines) Read(p []byte) (n int, err error) {
	for len(o.out) < len(p) && o.err == nil {
		var c byte
		if c, o.err = o.r.ReadByte(); o.err == nil {
			o.step(c)
		}
	}
	n = copy(p, o.out)
	o.out = o.out[:copy(o.out, o.out[n:])]
	if n == 0 && len(p) > 0 {
		return 0, o.err
	}
	return n, nil
}

// step takes the next byte.
func (o *objectLines) step(c byte) {
	o.line += one(c == '\n')
	switch {
	case o.quoted:
		o.quoted, o.escaped = o.escaped || c != '"', !o.escaped && c == '\\'
		o.put(c)
	case c == '[' || c == '{':
		o.enter(c)
	case c == ']' || c == '}':
		o.leave(c)
	case c == '\n' && o.element > 0:
		o.owed++
	case isBlank(c) && c != '\n' && (o.element > 0 || o.between), c == ',' && o.between:
	case c == '\n':
		o.put(c)
		o.mark()
	default:
		o.quoted = c == '"'
		o.put(c)
	}
}

// enter opens an object or an array.
func (o *objectLines) enter(c byte) {
	if n := len(o.open); o.element == 0 && n > 0 && o.open[n-1] == '[' {
		o.element = n + 1
		if o.begun {
			o.put('\n')
			o.owed--
		}
		o.mark()
	}
	if len(o.open) < deepest {
		o.open = append(o.open, c)
	}
	o.put(c)
}

// leave closes one, and the element's line with it.
func (o *objectLines) leave(c byte) {
	o.put(c)
	o.open = o.open[:max(0, len(o.open)-1)]
	if o.element == 0 || len(o.open) >= o.element {
		return
	}
	for range o.owed {
		o.put('\n')
	}
	o.element, o.owed, o.between = 0, 0, true
}

// mark notes which line of the text the line that begins is from.
func (o *objectLines) mark() {
	before := 0
	if n := len(o.seams); n > 0 {
		before = o.seams[n-1].more
	}
	if more := o.lines - o.line; more != before {
		o.seams = append(o.seams, seam{o.lines, more})
	}
}

func (o *objectLines) put(c byte) {
	o.lines += one(c == '\n')
	o.out = append(o.out, c)
	o.between, o.begun = o.between && c == '\n', c != '\n' && (o.begun || !isBlank(c))
}
