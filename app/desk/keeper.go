package desk

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"thawbook/app/engine"
	"thawbook/app/winter"
	"thawbook/app/winter/store"
)

// Keeper keeps one open winter safe in its file and makes the books of it. Its methods belong to one
// goroutine at a time. What is asked of the keeper's document is kept before it returns, whatever becomes of
// the review after it.
type Keeper struct {
	Drafts  string            // the folder of winters that have no name of their own yet; "" for the system's temporary one
	Crash   func(note string) // told of a fault of the program; may be nil
	Program Program           // whose figures they are

	cache *engine.Cache         // of the open winter
	aside engine.Cache          // of what is read for the Files screen alone
	heads map[string][]TextLine // of kept files, by name and checksum
	store *store.Store
	files *engine.Kept
	other OtherWinter // beside the open one
	plan  bool        // the winter was made from a plan and not changed since: the plan is enough
	id    int         // which winter is open, counted from the first; it is the same winter under another name
}

// errOther says that a change was meant for a winter that is no longer open.
var errOther = errors.New("another winter was opened meanwhile, so nothing was changed")

// meant makes sure that a book is of the open winter; one of no winter goes with any.
func (k *Keeper) meant(b Book) error {
	if b.loaded && b.id != k.id {
		return errOther
	}
	return nil
}

// now is the instant edits are kept with, ms UTC; tests set it.
var now = func() int64 { return time.Now().UnixMilli() }

// Open opens a winter file, or makes a winter of a plan and takes its files in. It is not reviewed yet. The
// error is one sentence about the file, or the context's; what was open stays open then.
func (k *Keeper) Open(ctx context.Context, path string, tell Progress) (Book, error) {
	if !engine.IsWinterFile(path) {
		return k.openPlan(ctx, path, tell)
	}
	if k.store != nil && k.store.Mode() == store.Writable && samePath(k.store.Path(), path) {
		return k.book(Book{}), nil
	}
	opened, err := store.Open(path)
	if err != nil {
		return Book{}, err
	}
	return k.take(opened, false), nil
}

// samePath says whether two names are those of one file.
func samePath(a, b string) bool {
	one, err := os.Stat(a)
	two, other := os.Stat(b)
	return err == nil && other == nil && os.SameFile(one, two)
}

// openPlan makes a draft of a plan.
func (k *Keeper) openPlan(ctx context.Context, path string, tell Progress) (Book, error) {
	doc, err := engine.ReadPlan(path)
	if err != nil {
		return Book{}, err
	}
	var refused []engine.File
	made, err := k.begin(doc, func(s *store.Store) (next winter.Winter, err error) {
		next, refused, err = engine.KeepPlan(ctx, s, doc, filepath.Dir(path), tell)
		return next, err
	})
	if err != nil {
		return Book{}, err
	}
	b := k.take(made, true)
	for _, f := range refused {
		b.Faults = append(b.Faults, FaultOf(f.Name, f.Err))
	}
	return b, nil
}

// begin makes a draft whose first document is what fill makes of one: nobody can undo his way to before it.
// Of a draft that could not be filled nothing is left.
func (k *Keeper) begin(doc winter.Winter, fill func(*store.Store) (winter.Winter, error)) (*store.Store, error) {
	first := store.Step{At: now(), What: "begun", Field: "begun", Winter: doc}
	var s *store.Store
	err := k.newDraft(func(path string) (err error) { s, err = store.Create(path, first); return err })
	if err != nil {
		return nil, err
	}
	first.Winter, err = fill(s)
	if err == nil {
		err = s.Commit(first) // joins the step before
	}
	if err != nil {
		s.Remove()
		return nil, err
	}
	return s, nil
}

// newDraft has a file made among the drafts, under a name that nobody has.
func (k *Keeper) newDraft(make func(path string) error) error {
	if err := os.MkdirAll(k.drafts(), 0o700); err != nil {
		return err
	}
	day := time.UnixMilli(now()).Format("2006-01-02 15.04.05")
	for n := 1; ; n++ {
		err := make(filepath.Join(k.drafts(), fmt.Sprintf("winter of %s (%d).thawbook", day, n)))
		var own *store.Error
		if n < 1000 && errors.As(err, &own) && own.Code == store.Exists {
			continue
		}
		return err
	}
}

// drafts is the folder of the drafts.
func (k *Keeper) drafts() string {
	return cmp.Or(k.Drafts, filepath.Join(os.TempDir(), "thawbook-drafts"))
}

// take makes a winter the open one and closes the one before.
func (k *Keeper) take(s *store.Store, plan bool) Book {
	k.Close()
	k.store, k.files, k.plan, k.cache, k.other = s, engine.NewKept(s), plan, &engine.Cache{}, OtherWinter{}
	k.id++
	return k.book(Book{})
}

// Close closes the open winter. A draft that is no more than the plan it was made from is cleared away.
func (k *Keeper) Close() error {
	if k.store == nil {
		return nil
	}
	closing := k.store.Close
	if k.plan && k.isDraft() {
		closing = k.store.Remove
	}
	k.store, k.files = nil, nil
	return closing()
}

// isDraft says whether the open winter lies among the drafts.
func (k *Keeper) isDraft() bool {
	return k.store != nil && samePath(filepath.Dir(k.store.Path()), k.drafts())
}

// book is the open winter as it stands, with the review and faults of an earlier book.
func (k *Keeper) book(before Book) Book {
	b := before
	b.loaded = k.store != nil
	if !b.loaded {
		return b
	}
	b.id, b.Path, b.Draft, b.mode, b.doc = k.id, k.store.Path(), k.isDraft(), k.store.Mode(), k.store.Winter()
	b.other, b.stale = k.other, len(b.Result.Barns) > 0
	b.Undo, b.Redo = editWords(k.store.Undoable()), editWords(k.store.Redoable())
	return b.listed()
}

// Edit keeps a change of the open winter and gives its book, with the review from before it.
func (k *Keeper) Edit(b Book, e winter.Edit) (Book, error) {
	if err := k.meant(b); err != nil || k.store == nil {
		return b, err
	}
	next, err := e.Apply(k.store.Winter())
	if err != nil {
		return b, err
	}
	if err := k.store.Commit(store.Step{At: now(), What: e.What(), Field: e.Field(), Winter: next}); err != nil {
		return b, err
	}
	b.Faults, k.plan = nil, false
	return k.book(b), nil
}

// UndoEdit goes back to before the last change, RedoEdit forth again.
func (k *Keeper) UndoEdit(b Book) (Book, error) { return k.moved(b, (*store.Store).Undo) }

// RedoEdit takes the last change that was undone up again.
func (k *Keeper) RedoEdit(b Book) (Book, error) { return k.moved(b, (*store.Store).Redo) }

func (k *Keeper) moved(b Book, move func(*store.Store) (bool, error)) (Book, error) {
	if err := k.meant(b); err != nil || k.store == nil {
		return b, err
	}
	if _, err := move(k.store); err != nil {
		return b, err
	}
	b.Faults, k.plan = nil, false
	return k.book(b), nil
}

// Review judges the open winter. What could not be read is among the book's faults, and so is a change of
// its figures that a change of the program made. The error is the context's, or one sentence.
func (k *Keeper) Review(ctx context.Context, b Book, tell Progress) (Book, error) {
	if err := k.meant(b); err != nil || k.store == nil {
		return b, err
	}
	result, err := engine.Review(ctx, k.store.Winter(), k.files, k.cache, tell)
	if err == nil {
		err = k.besideAgain(ctx, &result)
	}
	if err == nil {
		err = ctx.Err() // overtaken: nobody sees these figures
	}
	if err != nil {
		return b, err
	}
	b.Faults = slices.Clone(b.Faults)
	b.Result = result
	b = k.book(b)
	b.stale = false
	if err := k.look(ctx, &b); err != nil {
		return b, err
	}
	b = b.listed()
	for _, f := range result.Files {
		if f.Err != nil && !b.named(filepath.Base(f.Name)) {
			b.Faults = append(b.Faults, FaultOf(f.Name, f.Err))
		}
	}
	k.tellOfFaults(result)
	if changed := k.remember(b); changed.Text != "" {
		b.Faults = append(b.Faults, changed)
	}
	return b, nil
}

// named says whether a fault speaks of a file already.
func (b Book) named(file string) bool {
	return slices.ContainsFunc(b.Faults, func(f Fault) bool { return strings.Contains(f.Text, file) })
}

// Guarded does something; a panic in it is an error, and the program's makers are told where it was.
func (k *Keeper) Guarded(doing func() error) error {
	err := engine.Guarded("What was asked for", doing)
	var fault *engine.Fault
	if k.Crash != nil && errors.As(err, &fault) {
		k.Crash(fault.Note())
	}
	return err
}

// tellOfFaults passes the program's own faults on.
func (k *Keeper) tellOfFaults(result engine.Result) {
	if k.Crash == nil {
		return
	}
	all := slices.Clone(result.Faults)
	for _, f := range result.Files {
		all = append(all, f.Err)
	}
	for _, err := range all {
		var fault *engine.Fault
		if errors.As(err, &fault) {
			k.Crash(fault.Note())
		}
	}
}

// edits are the kinds of edits in words, as in "Undo hanging a logger".
var edits = map[string]string{
	"add": "adding files", "hang": "hanging a logger", "bees_time": "bees in and out", "rename": "renaming", "note": "a note", "take_over": "taking barns over",
	"answer": "an answer", "logger": "a logger's place or clock", "exclude": "leaving a stretch out", "include": "taking a stretch back",
	"regroup": "which columns belong together", "swap": "swapping two loggers", "dismiss": "taking a file off the list", "record": "what a record is of",
	"stages": "the fan stages", "surfaces": "walls and ceilings", "heats": "the heat sources", "heads": "hives in and out", "bands": "the safe limits",
	"phases": "the phases", "exclusions": "times that are not judged", "room": "the room", "notes": "the notes",
	"keep": "keeping odd readings", "ask_again": "asking again", "clock": "a logger's clock", "move_clock": "moving a logger's clock", "check": "a logger's check", "uncheck": "taking a check back",
}

// editWords is the kind of an edit in words; empty where there is none.
func editWords(what string, ok bool) string {
	if !ok {
		return ""
	}
	if words, known := edits[what]; known {
		return words
	}
	return "the last change"
}
