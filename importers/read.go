package importers

import (
	"context"
	"errors"
	"io"
)

// ReaderVersion grows whenever the same bytes and answers may be understood differently than before;
// kept exports of an older version are read again.
const ReaderVersion = 15

// Read learns the layout of r's text from the text alone and reads it. The name serves messages and, when
// nothing in the file names a logger, the logger. The error is a *Refusal for content that can't be read,
// else the context's or the reader's own. Memory beside the export stays below a few MiB whatever is in r.
func Read(ctx context.Context, r io.Reader, name string, answers Answers) (*Export, error) {
	return read(ctx, r, name, answers, true)
}

// read is Read with the quick path or without.
func read(ctx context.Context, r io.Reader, name string, answers Answers, quick bool) (*Export, error) {
	src, err := open(ctx, r, name)
	if err != nil {
		return nil, err
	}
	t := &tables{ctx: ctx, src: src, name: name, quick: quick, notes: &notes{}}
	if err := t.read(); err != nil {
		var no *Refusal
		if errors.As(err, &no) {
			no.Line = src.lineOf(no.Line)
		}
		return nil, err
	}
	e := t.export(answers)
	e.Layout.Objects = src.objects
	e.Layout.FirstDataLine = src.lineOf(e.Layout.FirstDataLine)
	for i := range e.Remarks {
		e.Remarks[i].Line, e.Remarks[i].LastLine = src.lineOf(e.Remarks[i].Line), src.lineOf(e.Remarks[i].LastLine)
	}
	return e, nil
}
