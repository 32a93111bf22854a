package desk

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"io"
	"strings"
	"unicode/utf8"

	"thawbook/app/engine"
)

// maxTextBytes bounds what is held of a file's text at once, maxLineRunes what is shown of a line of it.
const (
	maxTextBytes = 64 << 10
	maxLineRunes = 400
)

// TextLine is a line of a kept file as it stands there, its end left out, and its number counted from 1.
type TextLine struct {
	Number int
	Text   string
}

// Lines are the lines from one number to another of a kept file, fewer where it ends before them; a line is
// cut after 400 letters, and no more is read ahead than 64 KiB. The encoding is as the file's layout has it;
// "" is read as UTF-8. The error is one sentence, or the context's.
func (k *Keeper) Lines(ctx context.Context, name, encoding string, from, to int) ([]TextLine, error) {
	if k.files == nil {
		return nil, errors.New("no winter is open")
	}
	in, err := k.files.Open(name)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	return linesOf(ctx, decoded(in, encoding), from, to)
}

// decoded is a file's text as UTF-8 without a byte order mark.
func decoded(in io.Reader, encoding string) *bufio.Reader {
	out := bufio.NewReaderSize(engine.Decoded(in, encoding), maxTextBytes)
	if mark, _ := out.Peek(3); bytes.Equal(mark, []byte("\xef\xbb\xbf")) {
		out.Discard(3)
	}
	return out
}

// linesOf reads on to a line and takes those up to another.
func linesOf(ctx context.Context, in *bufio.Reader, from, to int) (out []TextLine, err error) {
	end := byte('\n')
	if head, _ := in.Peek(maxTextBytes); bytes.IndexByte(head, '\n') < 0 && bytes.IndexByte(head, '\r') >= 0 {
		end = '\r'
	}
	held := 0
	for number := 1; number <= to && held < maxTextBytes; number++ {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		text, any, err := oneLine(in, end)
		if err != nil && err != io.EOF {
			return nil, err
		}
		if number >= from && any {
			out = append(out, TextLine{number, text})
			held += len(text)
		}
		if err == io.EOF {
			break
		}
	}
	return out, nil
}

// oneLine is the next line, cut to what is shown; any says whether there was one.
func oneLine(in *bufio.Reader, end byte) (text string, any bool, err error) {
	var kept []byte
	for {
		part, err := in.ReadSlice(end)
		any = any || len(part) > 0
		if room := utf8.UTFMax*maxLineRunes - len(kept); room > 0 {
			kept = append(kept, part[:min(room, len(part))]...)
		}
		if err != bufio.ErrBufferFull {
			return shownLine(kept), any, err
		}
	}
}

// shownLine is a line fit to be shown: no line end, no letters that are none, not longer than a page is wide.
func shownLine(raw []byte) string {
	letters := []rune(strings.ToValidUTF8(strings.TrimRight(string(raw), "\r\n"), "\uFFFD"))
	if len(letters) > maxLineRunes {
		return string(letters[:maxLineRunes]) + "…"
	}
	return string(letters)
}
