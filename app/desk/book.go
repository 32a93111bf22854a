package desk

import (
	"context"
	"path/filepath"
	"slices"
	"strings"

	"thawbook/analysis/series"
	"thawbook/app/engine"
	"thawbook/app/winter"
)

// Book is an open winter: the keeper's document, the loggers that hang nowhere yet, and what the last
// review made of it. It is a value: every edit returns the next one.
type Book struct {
	Path   string // the plan it was opened from; empty when it began with dropped files
	Result engine.Result
	Tray   []winter.Logger
	Faults []Fault // what could not be read or done, in order

	dir     string
	doc     winter.Winter
	loaded  bool
	guessed []string // names of loggers whose place was taken, not said
}

// Progress is told how many bytes of how many were read, and of which file.
type Progress = engine.Progress

// Keeper opens and edits books, and keeps decoded files between reviews. Its zero value is ready.
type Keeper struct{ cache engine.Cache }

// Open reads a plan and reviews it. The error is one sentence about the plan, or the context's.
func (k *Keeper) Open(ctx context.Context, path string, tell Progress) (Book, error) {
	doc, err := engine.ReadPlan(path)
	if err != nil {
		return Book{}, err
	}
	b := Book{Path: path, dir: filepath.Dir(path), doc: doc, loaded: true}
	return k.review(ctx, b, tell)
}

// Add reads files and folders. With a winter open their loggers go to the tray; without one they make a new
// winter of one barn, hung where their names say, else in the room: that is assumed and said so.
func (k *Keeper) Add(ctx context.Context, b Book, paths []string, tell Progress) (Book, error) {
	read, err := engine.Inspect(ctx, paths, b.doc.Answers, tell)
	if err != nil {
		return Book{}, err
	}
	b.Faults = nil
	loggers := b.newLoggers(read)
	if b.loaded {
		b.Tray = append(slices.Clone(b.Tray), loggers...)
		return b, nil
	}
	if len(loggers) == 0 {
		return b, nil
	}
	b.doc, b.loaded = newWinter(loggers, zoneOf(read)), true
	for _, l := range loggers {
		b.guessed = append(b.guessed, l.Name)
	}
	return k.review(ctx, b, tell)
}

// Slot names a logger's place in a book: a barn's list, the outdoor list or the tray.
type Slot struct{ List, Index int }

// The lists that are no barn's.
const (
	OutdoorList = -1
	TrayList    = -2
)

// Hang moves a logger to a place in a barn (or OutdoorList, or TrayList) and reviews the winter anew. A
// logger that already hangs there under the same name takes in the files as another read-out.
func (k *Keeper) Hang(ctx context.Context, b Book, from Slot, barn int, place string, tell Progress) (Book, error) {
	l, ok := b.logger(from)
	if !ok || barn >= len(b.doc.Barns) {
		return b, nil
	}
	b.Faults = nil
	b = b.copied()
	*b.list(from.List) = slices.Delete(*b.list(from.List), from.Index, from.Index+1)
	l.Place = place
	b.guessed = slices.DeleteFunc(slices.Clone(b.guessed), func(name string) bool { return name == l.Name })
	b.put(barn, l)
	if from.List == TrayList && barn == TrayList {
		return b, nil
	}
	return k.review(ctx, b, tell)
}

// review judges the book's winter and keeps the result.
func (k *Keeper) review(ctx context.Context, b Book, tell Progress) (Book, error) {
	result, err := engine.Review(ctx, b.doc, engine.Folder(b.dir), &k.cache, tell)
	if err != nil {
		return Book{}, err
	}
	b.Result = result
	for _, f := range result.Files {
		if f.Err != nil {
			b.Faults = append(b.Faults, FaultOf(f.Name, f.Err))
		}
	}
	return b, nil
}

// Loaded says whether a winter is open.
func (b Book) Loaded() bool { return b.loaded }

// Name is the winter's name.
func (b Book) Name() string { return b.doc.Name }

// Barns is how many barns have a review.
func (b Book) Barns() int { return min(len(b.Result.Barns), len(b.Result.Inputs)) }

// list is the list a slot or a barn's number points at.
func (b *Book) list(at int) *[]winter.Logger {
	switch at {
	case OutdoorList:
		return &b.doc.Outdoor
	case TrayList:
		return &b.Tray
	}
	return &b.doc.Barns[at].Loggers
}

// logger is the one in a slot; ok is false when the slot is empty.
func (b Book) logger(s Slot) (winter.Logger, bool) {
	if s.List < TrayList || s.List >= len(b.doc.Barns) || s.Index < 0 || s.Index >= len(*b.list(s.List)) {
		return winter.Logger{}, false
	}
	return (*b.list(s.List))[s.Index], true
}

// put hangs a logger in a list.
func (b *Book) put(at int, l winter.Logger) {
	all := b.list(at)
	for i, o := range *all {
		if at != TrayList && o.Name == l.Name && o.Place == l.Place && o.Channel == l.Channel {
			(*all)[i].Files = append(slices.Clone(o.Files), l.Files...)
			return
		}
	}
	*all = append(*all, l)
}

// copied shares no list of loggers with the book it was made from.
func (b Book) copied() Book {
	b.Tray, b.doc.Outdoor, b.doc.Barns = slices.Clone(b.Tray), slices.Clone(b.doc.Outdoor), slices.Clone(b.doc.Barns)
	for i := range b.doc.Barns {
		b.doc.Barns[i].Loggers = slices.Clone(b.doc.Barns[i].Loggers)
	}
	return b
}

// newLoggers lists the loggers of files that are not in the book yet, and notes the faults of the others.
func (b *Book) newLoggers(read []engine.File) []winter.Logger {
	var out []winter.Logger
	known := map[string]bool{}
	for _, f := range b.Result.Files {
		known[f.SHA256] = f.SHA256 != ""
	}
	for _, l := range b.Tray {
		for _, p := range l.Files {
			known[p] = true
		}
	}
	for _, f := range read {
		switch {
		case f.Err != nil:
			b.Faults = append(b.Faults, FaultOf(f.Name, f.Err))
		case known[f.SHA256] || known[f.Name]:
			b.Faults = append(b.Faults, Fault{Text: filepath.Base(f.Name) + " is already here, so it was not added again."})
		default:
			found := loggersIn(f)
			if len(found) == 0 {
				b.Faults = append(b.Faults, Fault{Text: filepath.Base(f.Name) + " holds no temperature, humidity or fan state that could be used."})
			}
			out = append(out, found...)
			known[f.SHA256], known[f.Name] = f.SHA256 != "", true
		}
	}
	return out
}

// loggersIn are the loggers of one file that measured something of use.
func loggersIn(f engine.File) []winter.Logger {
	var names []string
	for _, s := range f.Export.Series {
		if usable(string(s.Quantity)) && len(s.FaceMS) > 0 && !slices.Contains(names, s.Logger) {
			names = append(names, s.Logger)
		}
	}
	path, err := filepath.Abs(f.Name)
	if err != nil {
		path = f.Name
	}
	var out []winter.Logger
	for _, n := range names {
		l := winter.Logger{Name: n, Files: []string{filepath.ToSlash(path)}}
		if len(names) > 1 {
			l.Channel = n
		}
		out = append(out, l)
	}
	return out
}

func usable(quantity string) bool {
	switch quantity {
	case "air_temperature", "relative_humidity", "surface_temperature", "state":
		return true
	}
	return false
}

// zoneOf is the first zone a file names; UTC when none does, so that clock faces show as written.
func zoneOf(read []engine.File) string {
	for _, f := range read {
		if f.Export != nil && f.Export.Layout.Clock.Zone != "" {
			return f.Export.Layout.Clock.Zone
		}
	}
	return "UTC"
}

// newWinter hangs loggers in one barn: a lone logger in the room, others where their names say.
func newWinter(loggers []winter.Logger, zone string) winter.Winter {
	barn := winter.Barn{Name: "Barn"}
	w := winter.Winter{Name: "New winter", Zone: zone}
	for _, l := range loggers {
		l.Place = "room"
		if len(loggers) > 1 {
			l.Place = placeByName(l)
		}
		if l.Place == "outdoor" {
			w.Outdoor = append(w.Outdoor, l)
			continue
		}
		barn.Loggers = append(barn.Loggers, l)
	}
	w.Barns = []winter.Barn{barn}
	return w
}

// placeWords are trade words for where a logger hangs, as they turn up in names of loggers and files.
var placeWords = []struct{ word, place string }{
	{"outdoor", "outdoor"}, {"outside", "outdoor"}, {"weather", "outdoor"}, {"intake", "intake"}, {"exhaust", "exhaust"},
	{"ceiling", "ceiling"}, {"wall", "wall"}, {"floor", "floor"}, {"control", "control"}, {"thermostat", "control"}, {"hive", "hive"},
}

func placeByName(l winter.Logger) string {
	name := strings.ToLower(l.Name + " " + filepath.Base(strings.Join(l.Files, " ")))
	for _, w := range placeWords {
		if strings.Contains(name, w.word) {
			return w.place
		}
	}
	return "room"
}

// Fault is something that went wrong, in words: what happened to which file, and what to do next.
type Fault struct{ Text, Next string }

// FaultOf puts a file's error into words.
func FaultOf(name string, err error) Fault {
	text := err.Error()
	if !strings.Contains(text, filepath.Base(name)) {
		text = filepath.Base(name) + ": " + text
	}
	return Fault{Text: capital(strings.TrimSuffix(text, ".")) + ".", Next: "Everything else was read; put the file right and add it again."}
}

// PlanFault puts a refused plan into words.
func PlanFault(path string, err error) Fault {
	f := FaultOf(path, err)
	f.Next = "Nothing was opened. Put the plan right in a text editor and open it again."
	return f
}

// Notes are the sentences that qualify the winter's figures, each once, with how often it was met.
func (b Book) Notes(barn int) []string {
	var remarks []series.Remark
	if barn < b.Barns() {
		remarks = append(remarks, b.Result.Barns[barn].Remarks...)
	}
	remarks = append(remarks, b.Result.Remarks...)
	var out []string
	for _, r := range remarks {
		if text := ReviewNote(r); !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	return out
}

// BarnView is everything the window shows of one barn.
type BarnView struct {
	Header    Header
	FirstLook FirstLook
	Timeline  Timeline
	Stages    StagesView
}

// Barn is what the window shows of a barn; ok is false when there is no such barn.
func (b Book) Barn(i int, u Units) (v BarnView, ok bool) {
	if i < 0 || i >= b.Barns() {
		return BarnView{}, false
	}
	in, r := b.Result.Inputs[i], b.Result.Barns[i]
	v = BarnView{HeaderOf(in, r, u), FirstLookOf(in, r, u), TimelineOf(in, r, u), StagesOf(in, r, u)}
	v.Header.Noted = noted(b.doc.Barns[i].Notes, r.Verdict, newBarn(in, r, u).u)
	return v, true
}

// BarnNames are the barns' names in the winter's order.
func (b Book) BarnNames() []string {
	var out []string
	for _, barn := range b.doc.Barns {
		out = append(out, barn.Name)
	}
	return out
}
