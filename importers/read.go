package importers

import (
	"context"
	"errors"
	"io"
)

// ReaderVersion grows whenever the same bytes and answers may be understood differently than before;
// kept exports of an older version are read again.
const ReaderVersion = 22

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
	err = t.read()
	var no *Refusal
	if src.lineOf != nil && errors.As(err, &no) {
		no.Line = src.lineOf(no.Line)
	}
	if err != nil {
		return nil, err
	}
	e := t.export(answers)
	if src.lineOf != nil {
		e.Layout.Objects = true
		e.inLines(src.lineOf)
	}
	return e, nil
}

// inLines puts the lines that an export names into those of the file, which were others.
func (e *Export) inLines(of func(int) int) {
	e.Layout.FirstDataLine = of(e.Layout.FirstDataLine)
	for i := range e.Remarks {
		r := &e.Remarks[i]
		r.Line, r.LastLine = of(r.Line), of(r.LastLine)
	}
}
