package importers

import (
	"context"
	"strings"
	"testing"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

// written are encodings that write the same text in every way it can come; x/text does the writing.
var written = []struct {
	name   string
	to     encoding.Encoding
	prefix string
}{
	{"utf-16le", unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM), "\xff\xfe"},
	{"utf-16le", unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM), ""},
	{"utf-16be", unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM), "\xfe\xff"},
	{"utf-16be", unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM), ""},
	{"utf-8-bom", unicode.UTF8, "\xef\xbb\xbf"},
	{"windows-1252", charmap.Windows1252, ""},
}

// A file says the same in every encoding that has its letters.
func TestEncodings(t *testing.T) {
	for _, c := range layouts {
		if !strings.HasPrefix(c.want, "utf-8 ") {
			continue
		}
		for _, e := range written {
			encoded, err := e.to.NewEncoder().String(c.in)
			if err != nil {
				continue // a letter this encoding lacks
			}
			export, err := Read(context.Background(), strings.NewReader(e.prefix+encoded), "f.csv", nil)
			if err != nil {
				t.Errorf("%s, %s: %v", c.name, e.name, err)
				continue
			}
			name := e.name
			if encoded == c.in && e.prefix == "" {
				name = "utf-8"
			}
			want := strings.Replace(c.want, "utf-8 ", name+" ", 1)
			if got := describe(export); got != want {
				t.Errorf("%s, %s %q: got\n%s\nwant\n%s", c.name, e.name, e.prefix, got, want)
			}
		}
	}
}

// A letter of Windows-1252 far below the head still tells the encoding.
func TestLateLetter(t *testing.T) {
	body := string(manyRows(40_000)) + "2026-01-13 10:00,4.5,80.0\xb0\n"
	e, err := Read(context.Background(), strings.NewReader(body), "f.csv", nil)
	if err != nil || e.Layout.Encoding != "windows-1252" || e.Rows != 40_001 || len(e.Remarks) > 0 {
		t.Errorf("%v %+v", err, e)
	}
}
