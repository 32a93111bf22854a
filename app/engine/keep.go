package engine

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"slices"

	"thawbook/app/files"
	"thawbook/app/winter"
	"thawbook/app/winter/plan"
	"thawbook/app/winter/store"
)

// Keep takes the files behind what was read into the winter file, an archive as the whole it came as, and
// returns how each is named there, by the name it was read under. All are kept or, after an error, none.
func Keep(ctx context.Context, s *store.Store, read []File, tell Progress) (names map[string]string, err error) {
	m := &meter{tell: tell}
	var arrivals []store.Arrival
	index := map[string]int{} // of arrivals, by the file as given
	for _, f := range read {
		given, member := files.Given(f.Name)
		if _, known := index[given]; known {
			continue
		}
		sum, err := givenSum(ctx, f, given, member)
		if err != nil {
			return nil, err
		}
		size, _ := files.Size(given)
		m.total += size
		index[given] = len(arrivals)
		arrivals = append(arrivals, store.Arrival{Came: given, SHA256: sum, Open: func() (io.ReadCloser, error) { return openWatched(ctx, given, m) }})
	}
	m.verb, m.files = "Keeping", len(arrivals)
	taken, err := s.Take(ctx, arrivals)
	if err != nil {
		return nil, err
	}
	kept := NewKept(s)
	names = map[string]string{}
	for _, f := range read {
		given, member := files.Given(f.Name)
		if names[f.Name], err = kept.name(taken[index[given]], member); err != nil {
			return nil, err
		}
	}
	return names, nil
}

// name is what a file, or a member of the archive it is, is called in the winter file. The only member of an
// archive may be called after the archive, as with gzip, and so otherwise than where it came from.
func (k *Kept) name(e store.Export, member string) (string, error) {
	if member == "" {
		return e.Name, nil
	}
	members, err := k.members(e)
	if err != nil {
		return "", err
	}
	if len(members) == 1 {
		return members[0], nil
	}
	return e.Name + "!" + member, nil
}

// givenSum is the checksum of a file as it was given: its own, or that of the archive a member lies in.
func givenSum(ctx context.Context, f File, given, member string) (sum string, err error) {
	if member == "" {
		return f.SHA256, nil
	}
	sum, _, err = (reader{source: Folder("")}).checksum(ctx, given)
	return sum, err
}

// NameOf is what a file that was read elsewhere is called in the winter file; "" when it is not kept there.
func (k *Kept) NameOf(ctx context.Context, f File) (string, error) {
	given, member := files.Given(f.Name)
	sum, err := givenSum(ctx, f, given, member)
	if err != nil {
		return "", err
	}
	e, ok := k.store.BySHA256(sum)
	if !ok {
		return "", nil
	}
	return k.name(e, member)
}

// openWatched opens a file whose reading is told of.
func openWatched(ctx context.Context, path string, m *meter) (io.ReadCloser, error) {
	source, err := files.Open(path)
	if err != nil {
		return nil, err
	}
	return counted{&watched{ctx: ctx, in: source, name: path, meter: m}, source, path, m}, nil
}

// counted is a file that counts as done once it is closed.
type counted struct {
	io.Reader
	io.Closer
	name  string
	meter *meter
}

// Close is io.Closer's.
func (c counted) Close() error {
	c.meter.end(c.name)
	return c.Closer.Close()
}

// KeepPlan takes a plan's files into a winter file and returns its winter with their names there, and the
// files that could not be kept. Patterns that stand for none stay as they are.
func KeepPlan(ctx context.Context, s *store.Store, w winter.Winter, dir string, tell Progress) (winter.Winter, []File, error) {
	hanging := w
	hanging.Outdoor = slices.Concat(w.Outdoor, w.Tray)
	g := gather(hanging, Folder(dir))
	read := make([]File, len(g.paths))
	for i, p := range g.paths {
		sum, bytes, err := (reader{source: Folder("")}).checksum(ctx, p)
		if ctx.Err() != nil {
			return w, nil, ctx.Err()
		}
		read[i] = File{Name: p, SHA256: sum, Bytes: bytes, Err: err}
	}
	refused, sound := g.refused, []File{}
	for _, f := range read {
		if f.Err != nil {
			refused = append(refused, f)
			continue
		}
		sound = append(sound, f)
	}
	names, err := Keep(ctx, s, sound, tell)
	if err != nil {
		return w, nil, err
	}
	return withNames(w, g, names), refused, nil
}

// withNames is a winter whose loggers and answers name its files as they are kept.
func withNames(w winter.Winter, g gathered, names map[string]string) winter.Winter {
	renamed := func(all []winter.Logger) (out []winter.Logger) {
		for _, l := range all {
			l.Files = namesOf(l.Files, g, names)
			out = append(out, l)
		}
		return out
	}
	w.Outdoor, w.Tray = renamed(w.Outdoor), renamed(w.Tray)
	barns := w.Barns
	w.Barns = nil
	for _, b := range barns {
		b.Loggers = renamed(b.Loggers)
		w.Barns = append(w.Barns, b)
	}
	w.Answers = answersByName(w.Answers, g, names)
	return w
}

// namesOf are the kept names of the files some patterns stand for; a pattern without a kept file stays.
func namesOf(patterns []string, g gathered, names map[string]string) (out []string) {
	for _, pattern := range patterns {
		any := false
		for _, i := range g.byWords[pattern] {
			if name, ok := names[g.paths[i]]; ok {
				out, any = append(out, name), true
			}
		}
		if !any {
			out = append(out, pattern)
		}
	}
	return out
}

// answersByName gives every answer to the files it was for, by their kept names; one that was for none stays, and
// so does one that holds for a layout.
func answersByName(all []winter.Answer, g gathered, names map[string]string) (out []winter.Answer) {
	for _, a := range all {
		any := false
		for _, p := range g.paths {
			if name, ok := names[p]; ok && a.Layout == "" && matches(a.File, p) {
				out, any = append(out, winter.Answer{File: name, ID: a.ID, Option: a.Option}), true
			}
		}
		if !any {
			out = append(out, a)
		}
	}
	return out
}

// WritePlan writes a winter's plan into a file.
func WritePlan(path string, w winter.Winter) error {
	return files.WriteAtomic(path, func(out io.Writer) error { return plan.Write(out, w) })
}

// WriteFile writes a file, whole or not at all.
func WriteFile(path string, data []byte) error {
	return files.WriteAtomic(path, func(out io.Writer) error { _, err := out.Write(data); return err })
}

// GiveBack writes the files of a winter into a folder, each byte for byte as it came, and returns how many lie
// there then. One that lay there already with the same bytes is left; another file of the name is not written
// over: the names of those come apart. The error is the context's, or that of the disk.
func GiveBack(ctx context.Context, s *store.Store, dir string, tell Progress) (given int, others []string, err error) {
	m := &meter{tell: tell}
	for _, e := range s.Exports() {
		m.total += e.Size
	}
	for _, e := range s.Exports() {
		if err := ctx.Err(); err != nil {
			return given, others, err
		}
		other, err := giveBack(ctx, s, e, filepath.Join(dir, e.Name), m)
		if err != nil {
			return given, others, err
		}
		if other {
			others = append(others, e.Name)
			continue
		}
		given++
	}
	return given, others, nil
}

// giveBack writes one file, unless another of its name lies there.
func giveBack(ctx context.Context, s *store.Store, e store.Export, path string, m *meter) (other bool, err error) {
	if _, err := os.Lstat(path); err == nil {
		sum, _, err := (reader{source: Folder("")}).checksum(ctx, path)
		m.add(e.Size, e.Name)
		return err != nil || sum != e.SHA256, nil
	}
	in, err := s.OpenExport(e.Name)
	if err != nil {
		return false, err
	}
	defer in.Close()
	return false, files.WriteAtomic(path, func(out io.Writer) error {
		_, err := io.Copy(out, &watched{ctx: ctx, in: in, name: e.Name, meter: m})
		return err
	})
}
