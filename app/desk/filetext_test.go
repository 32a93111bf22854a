package desk

import (
	"bytes"
	"context"
	"fmt"
	"strings"
	"testing"
	"unicode/utf16"
)

func taken(t *testing.T, text []byte, encoding string, from, to int) []TextLine {
	t.Helper()
	got, err := linesOf(context.Background(), decoded(bytes.NewReader(text), encoding), from, to)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// wide is a text as UTF-16 with its mark, by the standard library.
func wide(text string) (out []byte) {
	for _, c := range utf16.Encode([]rune("\uFEFF" + text)) {
		out = append(out, byte(c), byte(c>>8))
	}
	return out
}

// Byte values by the code page's published table: 0xB0 is the degree sign in Windows-1252.
func TestLinesAsTheyStandInTheFile(t *testing.T) {
	for name, c := range map[string]struct {
		text     []byte
		encoding string
	}{
		"utf-8":           {[]byte("time,°C\n1,2\n3,4\n"), "utf-8"},
		"with a mark":     {[]byte("\xef\xbb\xbftime,°C\r\n1,2\r\n3,4"), "utf-8-bom"},
		"returns alone":   {[]byte("time,°C\r1,2\r3,4\r"), "utf-8"},
		"windows-1252":    {[]byte("time,\xb0C\n1,2\n3,4\n"), "windows-1252"},
		"sixteen bits":    {wide("time,°C\r\n1,2\r\n3,4\r\n"), "utf-16le"},
		"nobody can tell": {[]byte("time,°C\n1,2\n3,4\n"), ""},
	} {
		got := taken(t, c.text, c.encoding, 1, 9)
		if fmt.Sprint(got) != "[{1 time,°C} {2 1,2} {3 3,4}]" {
			t.Errorf("%s: %v", name, got)
		}
		if got = taken(t, c.text, c.encoding, 2, 2); fmt.Sprint(got) != "[{2 1,2}]" {
			t.Errorf("%s: %v", name, got)
		}
	}
}

func TestLongTextsAreBounded(t *testing.T) {
	long := strings.Repeat("7", 300_000)
	got := taken(t, []byte(long+"\nshort\n"), "utf-8", 1, 2)
	if len(got) != 2 || len([]rune(got[0].Text)) != maxLineRunes+1 || !strings.HasSuffix(got[0].Text, "…") || got[1].Text != "short" {
		t.Errorf("%d lines", len(got))
	}
	bytes := 0
	for _, l := range taken(t, []byte(strings.Repeat(strings.Repeat("7", 399)+"\n", 1000)), "utf-8", 1, 1000) {
		bytes += len(l.Text)
	}
	if bytes < maxTextBytes || bytes > maxTextBytes+4*maxLineRunes {
		t.Errorf("%d bytes are held", bytes)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := linesOf(ctx, decoded(strings.NewReader("a\nb\n"), ""), 1, 2); err == nil {
		t.Error("nobody waits for it, and it reads on")
	}
}

func TestALineOfAKeptFile(t *testing.T) {
	k := keeper(t)
	if _, err := k.Lines(context.Background(), "a.csv", "", 1, 2); err == nil {
		t.Error("no winter is open")
	}
	added(t, k, Book{}, loggerFile(t, t.TempDir(), "a.csv", 4))
	got, err := k.Lines(context.Background(), "a.csv", "utf-8", 3, 3)
	if err != nil || fmt.Sprint(got) != "[{3 2024-11-13 01:00:00,4.10,60.1}]" {
		t.Errorf("%v, %v", got, err)
	}
	if _, err := k.Lines(context.Background(), "b.csv", "", 1, 2); err == nil {
		t.Error("there is no such file")
	}
}
