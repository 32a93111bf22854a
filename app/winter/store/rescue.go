package store

import (
	"bytes"
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"time"

	"thawbook/app/files"
	"thawbook/app/winter"
)

// Rescued says what was found in a damaged file. Exports are whole when their checksum is the one they came
// with; of others the beginning may have been found; the rest are lost.
type Rescued struct {
	Whole, InPart, Lost []string // names of exports
	Steps               int      // documents found; 0 when the keeper's settings are lost
}

// Rescue reads what a damaged file still holds and writes it into a new winter file. The damaged one is not
// written to. There must be nothing of the new name yet. The error is the context's, or of type *Error.
func Rescue(ctx context.Context, from, to string) (Rescued, error) {
	if taken(to) {
		return Rescued{}, &Error{Path: to, Code: Exists}
	}
	in, err := os.Open(from)
	if err != nil {
		return Rescued{}, fault(from, err)
	}
	defer in.Close()
	info, err := in.Stat()
	if err != nil {
		return Rescued{}, fault(from, err)
	}
	found := finds{exports: map[int64]Export{}, pieces: map[int64]map[int64][]byte{}, steps: map[int64]Step{}}
	carver{in, (info.Size() + pageSize - 1) / pageSize}.each(found.row)
	return found.save(ctx, to)
}

// finds are the rows carved out of a file.
type finds struct {
	exports map[int64]Export
	pieces  map[int64]map[int64][]byte // by export and number
	steps   map[int64]Step
	head    int64 // the step that held; 0 when that is lost
}

// row keeps a row if it is one of ours.
func (f *finds) row(id int64, row []value) {
	kinds := make([]byte, len(row))
	for i, v := range row {
		kinds[i] = v.kind
	}
	switch string(kinds) {
	case "nittb":
		f.step(id, row)
	case "nbttii":
		f.exports[id] = Export{ID: id, SHA256: hex.EncodeToString(row[1].bytes), Name: string(row[2].bytes), Came: string(row[3].bytes), Size: row[4].n, At: row[5].n}
	case "ti":
		if string(row[0].bytes) == "head" {
			f.head = row[1].n
		}
	case "niib":
		export := row[1].n
		if f.pieces[export] == nil {
			f.pieces[export] = map[int64][]byte{}
		}
		f.pieces[export][row[2].n] = bytes.Clone(row[3].bytes)
	}
}

// step keeps a document that can be read; of two of one step the later.
func (f *finds) step(id int64, row []value) {
	if old, twice := f.steps[id]; twice && old.At >= row[1].n {
		return
	}
	w, err := readBack(row[4].bytes, true)
	if err == nil {
		f.steps[id] = Step{At: row[1].n, What: string(row[2].bytes), Field: string(row[3].bytes), Winter: w}
	}
}

// save writes what was found into a new file.
func (f *finds) save(ctx context.Context, to string) (out Rescued, err error) {
	folder, err := os.MkdirTemp("", "thawbook-")
	if err != nil {
		return out, fault(to, err)
	}
	defer os.RemoveAll(folder)
	made := filepath.Join(folder, "winter.thawbook")
	s, err := f.history(made, &out)
	if err != nil {
		return out, fault(to, err)
	}
	err = f.takeAll(ctx, s, &out)
	if closing := s.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = files.MakeNew(to, func(temp string) error { return poured(made, temp) })
	}
	return out, fault(to, err)
}

// history makes the new file with every document found, in their order, and goes back to the one that held.
func (f *finds) history(path string, out *Rescued) (*Store, error) {
	ids := f.liveSteps()
	out.Steps = len(ids)
	if len(ids) == 0 {
		return Create(path, Step{At: time.Now().UnixMilli(), What: "rescued", Winter: winter.Winter{Name: "Rescued winter", Zone: "UTC"}})
	}
	s, err := Create(path, f.steps[ids[0]])
	if err == nil {
		err = s.conn.Exec("PRAGMA synchronous=OFF") // a scratch file: the new winter is written from it whole, and synced
	}
	for _, id := range ids[1:] {
		if err == nil {
			step := f.steps[id]
			step.Field = "" // each a step of its own again
			err = s.Commit(step)
		}
	}
	for i := len(ids) - 1; i > 0 && err == nil && f.head > 0 && ids[i] > f.head; i-- {
		_, err = s.Undo()
	}
	return s, err
}

// liveSteps are the steps found, in order, without those that an edit dropped and whose page was only not yet
// used again: they are older than a step with a lower number.
func (f *finds) liveSteps() (ids []int64) {
	latest := int64(0)
	for _, id := range slices.Sorted(maps.Keys(f.steps)) {
		if at := f.steps[id].At; at >= latest {
			ids, latest = append(ids, id), at
		}
	}
	return ids
}

// takeAll keeps the exports: whole ones, then what has no row or only a beginning.
func (f *finds) takeAll(ctx context.Context, s *Store, out *Rescued) error {
	for _, id := range slices.SortedFunc(maps.Keys(f.all()), cmp.Compare[int64]) {
		if err := ctx.Err(); err != nil {
			return err
		}
		e, known := f.exports[id]
		if !known {
			e.Name = fmt.Sprintf("found %d.csv", id)
		}
		data, sum, cut := f.bytesOf(id)
		list := &out.Whole
		switch {
		case len(data) == 0:
			out.Lost = append(out.Lost, e.Name)
			continue
		case cut || known && sum != e.SHA256:
			e.Name = "part of " + e.Name
			list = &out.InPart
		}
		kept, err := s.Take(ctx, []Arrival{{Name: e.Name, Came: e.Came, SHA256: sum, Open: func() (io.ReadCloser, error) { return io.NopCloser(bytes.NewReader(data)), nil }}})
		if err != nil {
			return err
		}
		*list = append(*list, kept[0].Name)
	}
	return nil
}

// all are the numbers of exports of which anything was found.
func (f *finds) all() map[int64]bool {
	out := map[int64]bool{}
	for id := range f.exports {
		out[id] = true
	}
	for id := range f.pieces {
		out[id] = true
	}
	return out
}

// maxRescuedBytes bounds what one export may unpack to: beyond it its beginning is kept.
const maxRescuedBytes = 1 << 30

// bytesOf unpacks an export as far as its pieces go, and gives the checksum of what came; cut says that more
// should have come.
func (f *finds) bytesOf(id int64) (data []byte, sum string, cut bool) {
	var packed []byte
	for n := int64(0); f.pieces[id][n] != nil; n++ {
		packed = append(packed, f.pieces[id][n]...)
	}
	unpacker, err := newUnpacker(bytes.NewReader(packed))
	if err != nil {
		return nil, "", true
	}
	defer unpacker.Close() // after damage it is not used again
	data, err = io.ReadAll(io.LimitReader(unpacker, maxRescuedBytes))
	hash := sha256.Sum256(data)
	return data, hex.EncodeToString(hash[:]), err != nil
}
