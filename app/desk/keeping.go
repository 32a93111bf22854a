package desk

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"

	"thawbook/app/engine"
	"thawbook/app/winter"
	"thawbook/app/winter/store"
)

// The endings of a winter file's name and a plan's.
const (
	WinterEnding = store.Ending
	PlanEnding   = ".toml"
)

// SaveCopy writes the open winter, history and files included, into another file, whole or not at all.
func (k *Keeper) SaveCopy(path string) error {
	if k.store == nil {
		return nil
	}
	return k.store.SaveCopy(WithEnding(path, WinterEnding))
}

// KeepAs keeps the open winter under a name and goes on in that file. A draft is cleared away once it is
// kept; a winter that had a name stays where it was. A winter that nobody named yet is named like its file.
func (k *Keeper) KeepAs(b Book, path string) (Book, error) {
	path = WithEnding(path, WinterEnding)
	if err := k.meant(b); err != nil || k.store == nil {
		return b, err
	}
	if err := k.store.SaveCopy(path); err != nil {
		return b, err
	}
	next, err := store.Open(path)
	if err != nil {
		return b, err
	}
	before := k.store
	if k.isDraft() {
		before.Remove() // if it is ours
	}
	before.Close()
	k.store, k.files, k.plan = next, engine.NewKept(next), false
	b.Faults = nil
	stale := b.stale
	if stem := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path)); b.Name() == newWinterName && stem != "" {
		named := winter.Rename{Winter: stem, Barns: b.BarnNames()}
		if b, err = k.Edit(b, named); err != nil {
			return k.book(b), err
		}
	}
	b = k.book(b)
	b.stale = stale
	return b.listed(), nil
}

// WithEnding is a path with an ending, added where it has none of its own.
func WithEnding(path, ending string) string {
	if strings.EqualFold(filepath.Ext(path), ending) {
		return path
	}
	return path + ending
}

// SavePlan writes the open winter as a plan. It names the files as GiveBack writes them.
func (k *Keeper) SavePlan(path string) error {
	if k.store == nil {
		return nil
	}
	return engine.WritePlan(WithEnding(path, PlanEnding), k.store.Winter())
}

// SavePicture writes a picture, whole or not at all.
func (k *Keeper) SavePicture(path string, picture []byte) error {
	return engine.WriteFile(path, picture)
}

// GiveBack writes the files the winter was made from into a folder, byte for byte as they came, and says in a
// sentence what was done. Nothing is written over.
func (k *Keeper) GiveBack(ctx context.Context, dir string, tell Progress) (string, error) {
	if k.store == nil {
		return "", nil
	}
	n, others, err := engine.GiveBack(ctx, k.store, dir, tell)
	if err != nil {
		return "", fmt.Errorf("%d of the files were given back, then: %w", n, err)
	}
	said := fmt.Sprintf("%s in %s, byte for byte as they came.", plural(strconv.Itoa(n), "file lies", "files lie"), dir)
	if len(others) > 0 {
		said += " Other files of the same name were left as they are: " + strings.Join(others, ", ") + ". Choose an empty folder for those."
	}
	return said, nil
}

// NextWinter begins the winter after the open one: its barns with the settings that held last and where its
// loggers hung, no logs. It is a draft; the one before is closed as it is.
func (k *Keeper) NextWinter() (Book, error) {
	if k.store == nil {
		return Book{}, nil
	}
	before := k.store.Winter()
	made, err := k.begin(winter.Next(before, nextName(before.Name)), func(s *store.Store) (winter.Winter, error) { return s.Winter(), nil })
	if err != nil {
		return Book{}, err
	}
	return k.take(made, false), nil
}

// years are a year, or two of a winter such as 2024–25 or 2024/2025.
var years = regexp.MustCompile(`\b(19|20)(\d\d)(?:(\s?[–/-]\s?)((?:19|20)?)(\d\d))?\b`)

// nextName is a winter's name with its years one later, or a plain one where it names none.
func nextName(name string) string {
	if !years.MatchString(name) {
		return strings.TrimSpace(name + " (next)")
	}
	return years.ReplaceAllStringFunc(name, func(text string) string {
		m := years.FindStringSubmatch(text)
		first, _ := strconv.Atoi(m[1] + m[2])
		later := strconv.Itoa(first + 1)
		if end, _ := strconv.Atoi(m[5]); m[5] == "" || end != (first+1)%100 {
			return later + strings.TrimPrefix(text, m[1]+m[2]) // what follows is no second year
		}
		second := strconv.Itoa(first + 2)
		if m[4] == "" {
			second = second[2:]
		}
		return later + m[3] + second
	})
}

// TakeOver adds the barns of another winter, from its file or a plan, without its logs.
func (k *Keeper) TakeOver(b Book, path string) (Book, error) {
	from, err := engine.ReadWinter(path)
	if err != nil {
		return b, err
	}
	return k.Edit(b, winter.TakeOver{From: from})
}

// IsDamaged says whether an error of Open means that what the file still holds can be rescued.
func IsDamaged(err error) bool {
	var own *store.Error
	return errors.As(err, &own) && own.Code == store.Damaged
}

// Rescue makes a draft of what a damaged winter file still holds; the damaged one is not touched. The book's
// first fault says what was found.
func (k *Keeper) Rescue(ctx context.Context, path string) (Book, error) {
	var found store.Rescued
	var to string
	err := k.newDraft(func(draft string) (err error) {
		to = draft
		found, err = store.Rescue(ctx, path, to)
		return err
	})
	if err != nil {
		return Book{}, err
	}
	opened, err := store.Open(to)
	if err != nil {
		return Book{}, err
	}
	b := k.take(opened, false)
	b.Faults = []Fault{rescuedWords(found)}
	return b, nil
}

// rescuedWords says what was found in a damaged file.
func rescuedWords(r store.Rescued) Fault {
	var parts []string
	for _, p := range []struct {
		names []string
		words string
	}{{r.InPart, "only the beginning of "}, {r.Lost, "nothing of "}} {
		if len(p.names) > 0 {
			parts = append(parts, p.words+strings.Join(p.names, ", "))
		}
	}
	text := "Rescued: " + plural(strconv.Itoa(len(r.Whole)), "file whole", "files whole")
	if len(parts) > 0 {
		text += ", " + strings.Join(parts, ", ")
	}
	if r.Steps == 0 {
		return Fault{Text: text + ". What you had set down is lost.", Next: "Add the files anew: File, Give back the original files…, then drop them on a new winter."}
	}
	return Fault{Text: text + ", and what you had set down.", Next: "The damaged file was left as it is. Keep this one under a name of its own."}
}
