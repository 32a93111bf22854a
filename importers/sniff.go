package importers

import (
	"bufio"
	"bytes"
	"cmp"
	"io"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// byteOrderMarks are the marks a text may start with. Source: the Unicode Standard, section 23.8.
var byteOrderMarks = []struct {
	mark     []byte
	encoding string
}{
	{[]byte{0xEF, 0xBB, 0xBF}, "utf-8-bom"},
	{[]byte{0xFF, 0xFE}, "utf-16le"},
	{[]byte{0xFE, 0xFF}, "utf-16be"},
}

// sniffEncoding finds out how the text is encoded and hands it out as UTF-8 without its mark. A text that
// turns out not to be UTF-8, and has no words that tell another encoding, is Windows-1252 and is handed out as it is: nothing but letters in it differs.
func sniffEncoding(r io.Reader) (encoding string, decoded io.Reader, err error) {
	buffered := bufio.NewReaderSize(r, 64<<10)
	head, err := buffered.Peek(4096)
	if err != nil && err != io.EOF {
		return "", nil, err
	}
	encoding = "utf-8"
	for _, m := range byteOrderMarks {
		if bytes.HasPrefix(head, m.mark) {
			encoding = m.encoding
			if _, err := buffered.Discard(len(m.mark)); err != nil {
				return "", nil, err
			}
			break
		}
	}
	if encoding == "utf-8" {
		encoding = wideWithoutMark(head)
	}
	if encoding == "utf-8" {
		encoding = cmp.Or(encodingByWords(head), encoding)
	}
	return encoding, Decoded(buffered, encoding), nil
}

// wideWithoutMark recognises UTF-16 by the zero half of its ASCII characters: nearly all of one half, and
// none of the other.
func wideWithoutMark(head []byte) string {
	var zeros [2]int
	for i, c := range head {
		if c == 0 {
			zeros[i%2]++
		}
	}
	half := len(head) / 2
	switch {
	case half == 0:
		return "utf-8"
	case zeros[0] == 0 && 2*zeros[1] > half:
		return "utf-16le"
	case zeros[1] == 0 && 2*zeros[0] > half:
		return "utf-16be"
	}
	return "utf-8"
}

// looksBinary says whether more than one byte in a hundred is a control character no text holds.
func looksBinary(head []byte) bool {
	odd := 0
	for _, c := range head {
		if c < ' ' && c != '\n' && c != '\r' && c != '\t' && c != '\f' && c != '\v' && c != 0x1A {
			odd++
		}
	}
	return 100*odd > len(head)
}

// entities are the degree sign and the marks of a page from which a table was taken.
var entities = strings.NewReplacer("&#176;", "°", "&deg;", "°", "&nbsp;", " ", "&amp;", "&", "&quot;", `"`)

// text is a cell as a string, whatever the encoding, without doubled quotes and line ends.
func text(cell []byte) string {
	s := string(cell)
	if !utf8.ValidString(s) {
		// Windows-1252 maps every byte, so decoding can't fail.
		s, _ = charmap.Windows1252.NewDecoder().String(s)
	}
	if strings.Contains(s, "&") {
		s = entities.Replace(s)
	}
	s = strings.ReplaceAll(s, `""`, `"`)
	return strings.Join(strings.Fields(s), " ")
}

// delimiters are the ways cells are kept apart, by the name the layout gives them, in the order in which
// equally good ones are preferred.
var delimiters = []struct {
	name  string
	split splitters
}{
	{"\t", splitAt('\t')},
	{";", splitAt(';')},
	{",", splitAt(',')},
	{"|", splitAt('|')},
	{"blanks", splitters{plain: splitBlanks, quoted: splitBlanks}},
}

// splitter cuts a record into cells, appends them to dst and stops after limit cells; more says whether
// something was left.
type splitter func(dst [][]byte, record []byte, limit int) (cells [][]byte, more bool)

// splitters are the splitter for records without quotes and the one for any.
type splitters struct {
	plain, quoted splitter
	dressed       bool     // cells are more than what lies between two delimiters
	placed        bool     // cells stand under each other by their places in the line
	names         []string // of the cells, which stand where their names do
	regrouped     bool     // cells are more or fewer than the delimiter makes
}

// splitAt splits at one character. A cell in quotes may hold it; the cell is what is between the quotes.
func splitAt(delimiter byte) splitters {
	plain := func(dst [][]byte, record []byte, limit int) ([][]byte, bool) {
		for {
			end := bytes.IndexByte(record, delimiter)
			if end < 0 {
				return append(dst, record), false
			}
			if dst = append(dst, record[:end]); len(dst) == limit {
				return dst, true
			}
			record = record[end+1:]
		}
	}
	quoted := func(dst [][]byte, record []byte, limit int) ([][]byte, bool) {
		if bytes.IndexByte(record, '"') < 0 {
			return plain(dst, record, limit)
		}
		return splitQuoted(dst, record, delimiter, limit)
	}
	return splitters{plain: plain, quoted: quoted}
}

// splitQuoted is splitAt for records with quotes in them.
func splitQuoted(dst [][]byte, record []byte, delimiter byte, limit int) ([][]byte, bool) {
	for {
		cell, rest := cutQuoted(record)
		end := bytes.IndexByte(rest, delimiter)
		if cell == nil {
			cell = rest
			if end >= 0 {
				cell = rest[:end]
			}
		}
		dst = append(dst, cell)
		if end < 0 || len(dst) == limit {
			return dst, end >= 0
		}
		record = rest[end+1:]
	}
}

// cutQuoted cuts a cell in quotes off the start of s, blanks before it allowed. The cell is nil when none
// is there or its quotes are not closed; then rest is s.
func cutQuoted(s []byte) (cell, rest []byte) {
	inner := bytes.TrimLeft(s, " ")
	if len(inner) == 0 || inner[0] != '"' {
		return nil, s
	}
	inner = inner[1:]
	for i := 0; i < len(inner); i++ {
		if inner[i] != '"' {
			continue
		}
		if i+1 == len(inner) || inner[i+1] != '"' {
			return inner[:i:i], inner[i+1:]
		}
		i++
	}
	return nil, s
}

// splitBlanks splits at runs of blanks and tabs; blanks at either end do not count.
func splitBlanks(dst [][]byte, record []byte, limit int) ([][]byte, bool) {
	for {
		at := 0
		for at < len(record) && isBlank(record[at]) {
			at++
		}
		if record = record[at:]; len(record) == 0 {
			return dst, false
		}
		if len(dst) == limit {
			return dst, true
		}
		var cell, rest []byte
		if record[0] == '"' {
			cell, rest = cutQuoted(record)
		}
		if cell == nil {
			end := 0
			for end < len(record) && !isBlank(record[end]) {
				end++
			}
			cell, rest = record[:end], record[end:]
		}
		dst = append(dst, cell)
		record = rest
	}
}
