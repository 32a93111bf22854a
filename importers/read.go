package importers

import (
	"context"
	"io"
)

// ReaderVersion grows whenever the same bytes and answers may be understood differently than before;
// kept exports of an older version are read again.
const ReaderVersion = 2

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
	l, err := learn(src.buf, src.eof, name)
	if err != nil {
		return nil, err
	}
	s := newScan(l, &notes{})
	if !quick {
		s.steps = nil
	}
	used := l.start + s.run(src.buf[l.start:], src.eof)
	for {
		if err := src.consume(used); err != nil {
			return nil, err
		}
		if len(src.buf) == 0 && src.eof {
			break
		}
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		used = s.run(src.buf, src.eof)
	}
	s.gather()
	return s.export(name, src.encoding, settleAnswers(answers, s.notes)), nil
}
