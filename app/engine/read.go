package engine

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"path"

	"thawbook/app/files"
	"thawbook/app/winter"
	"thawbook/importers"
)

// readExport decodes a file; tests put a fault in its place.
var readExport = importers.Read

// reader reads a source's files into exports.
type reader struct {
	source   Source
	cache    *Cache
	answers  []winter.Answer
	progress Progress
	sums     bool // what the series amount to is all that is asked
}

// readAll reads every path, in order, whatever becomes of its neighbours. The error is the context's.
func (r reader) readAll(ctx context.Context, paths []string) ([]File, error) {
	m := &meter{tell: r.progress, verb: "Reading", files: len(paths)}
	for _, p := range paths {
		m.total += r.source.Size(p)
	}
	out := make([]File, len(paths))
	if err := each(ctx, len(paths), func(i int) { out[i] = r.read(ctx, paths[i], m); m.end(paths[i]) }); err != nil {
		return out, err
	}
	return out, r.askNeighbours(ctx, out)
}

// read reads one file; a panic of the decoder is that file's error.
func (r reader) read(ctx context.Context, p string, m *meter) (file File) {
	file.Name = p
	defer func() {
		if file.Err != nil {
			file.Export = nil
		}
	}()
	defer caught(&file.Err, p)
	answers := answersFor(p, r.answers)
	file = r.readWith(ctx, p, answers, m)
	more := remembered(file.Export, answers, r.answers)
	switch {
	case len(more) == 1 && more[0].ID == Zone:
		file.Export = inZone(file.Export, more[0].Option)
	case len(more) > 0:
		file = r.readWith(ctx, p, with(answers, more), &meter{})
	}
	file.Remembered = more
	return file
}

// readWith reads one file with the answers to its questions.
func (r reader) readWith(ctx context.Context, p string, answers importers.Answers, m *meter) (file File) {
	file.Name = p
	if size := r.source.Size(p); r.cache.mayHold(size) {
		if file.SHA256, file.Bytes = r.source.SHA256(p), size; file.SHA256 == "" {
			file.SHA256, file.Bytes, file.Err = r.checksum(ctx, p)
		}
		if file.Export = r.cache.export(keyOf(file.SHA256, p, answers)); file.Export != nil {
			m.add(file.Bytes, p)
			return file
		}
	}
	r.decode(ctx, &file, answers, m)
	if kept, ok := r.source.(*Kept); ok && file.SHA256 != "" {
		kept.learnSum(p, file.SHA256)
	}
	if file.Err == nil {
		r.cache.keep(keyOf(file.SHA256, p, answers), file.Bytes, file.Export)
	}
	return file
}

// decode reads a file to its end in one pass: export, checksum and size. The end is read even when the
// decoder stopped before it, so that the checksum is that of the file.
func (r reader) decode(ctx context.Context, file *File, answers importers.Answers, m *meter) {
	source, err := r.source.Open(file.Name)
	if err != nil {
		file.refuse(err)
		return
	}
	defer source.Close()
	in := &watched{ctx: ctx, in: source, size: source.Size, name: file.Name, meter: m}
	file.Export, file.Err = readExport(ctx, in, file.Name, answers)
	if _, err := io.Copy(io.Discard, in); err != nil {
		file.Err = err
		return
	}
	file.SHA256, file.Bytes = source.SHA256(), source.Bytes()
	if r.sums && file.Export != nil {
		file.Export.KeepSummaries()
	}
}

// refuse keeps why a file could not be opened; one that is empty was read to its end.
func (file *File) refuse(err error) {
	file.Err = err
	var why *files.Error
	if errors.As(err, &why) && why.Code == files.Empty {
		file.Err = &importers.Refusal{Name: file.Name, Code: importers.RefusedEmpty}
		file.SHA256 = fmt.Sprintf("%x", sha256.Sum256(nil))
	}
}

// checksum reads a file for its SHA-256 and size alone.
func (r reader) checksum(ctx context.Context, p string) (sum string, bytes int64, err error) {
	source, err := r.source.Open(p)
	if err != nil {
		return "", 0, err
	}
	defer source.Close()
	if _, err := io.Copy(io.Discard, &watched{ctx: ctx, in: source, name: p, meter: &meter{}}); err != nil {
		return "", 0, err
	}
	return source.SHA256(), source.Bytes(), nil
}

// watched is a reader that stops when the context ends, and tells how far it has come.
type watched struct {
	ctx   context.Context
	in    io.Reader
	size  int64 // about how much there is to read; 0: unknown
	name  string
	meter *meter
}

// Size is about how many bytes there are to read, 0 where that is not known.
func (w *watched) Size() int64 { return w.size }

// Read reads on, as io.Reader.
func (w *watched) Read(p []byte) (int, error) {
	if err := w.ctx.Err(); err != nil {
		return 0, err
	}
	n, err := w.in.Read(p)
	w.meter.add(int64(n), w.name)
	return n, err
}

// answersFor gathers the answers whose pattern matches a file's path, its name, or both being the same;
// an empty pattern matches every file, and the last answer to a question counts. Those that hold for a layout
// are found once the file was read.
func answersFor(p string, all []winter.Answer) importers.Answers {
	out := importers.Answers{}
	for _, a := range all {
		if a.Layout == "" && matches(a.File, p) {
			out[a.ID] = a.Option
		}
	}
	return out
}

// matches says whether an answer's pattern means a file.
func matches(pattern, p string) bool {
	if pattern == "" || pattern == p {
		return true
	}
	whole, _ := path.Match(pattern, p)
	name, _ := path.Match(pattern, path.Base(p))
	return whole || name
}
