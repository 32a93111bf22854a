package desk

import (
	"cmp"
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"thawbook/app/engine"
	"thawbook/app/winter"
	"thawbook/app/winter/store"
)

// Add reads files and folders and takes those of use into the winter file. With a winter open their loggers go
// to the tray; without one they make a new winter of one barn, hung where their names say, else in the room:
// that is assumed and said so. It is not reviewed yet.
func (k *Keeper) Add(ctx context.Context, b Book, paths []string, tell Progress) (Book, error) {
	if err := k.meant(b); err != nil {
		return b, err
	}
	var answers []winter.Answer
	if k.store != nil {
		answers = k.store.Winter().Answers
	}
	read, err := engine.Inspect(ctx, paths, answers, tell)
	if err != nil {
		return b, err
	}
	b.Faults = nil
	sound, refused, err := k.sound(ctx, &b, read)
	if err != nil || len(sound) == 0 && (k.store == nil || len(refused) == 0) {
		return b, err
	}
	faults := b.Faults
	if k.store != nil {
		b, err = k.addToOpen(ctx, b, sound, refused, tell)
	} else {
		b, err = k.beginWith(ctx, b, sound, refused, tell)
	}
	b.Faults = faults
	return b, err
}

// addToOpen takes files into the open winter; the keeper hangs their loggers.
func (k *Keeper) addToOpen(ctx context.Context, b Book, sound []engine.File, refused []winter.Refused, tell Progress) (Book, error) {
	names, err := engine.Keep(ctx, k.store, sound, tell)
	if err != nil {
		return b, err
	}
	loggers := loggersOf(sound, names)
	for i := range loggers {
		loggers[i].Place = ""
	}
	return k.Edit(b, winter.AddLoggers{Loggers: loggers, Refused: refused})
}

// beginWith makes a new winter of files.
func (k *Keeper) beginWith(ctx context.Context, b Book, sound []engine.File, refused []winter.Refused, tell Progress) (Book, error) {
	zone := zoneOf(sound)
	made, err := k.begin(winter.Winter{Name: newWinterName, Zone: zone}, func(s *store.Store) (winter.Winter, error) {
		names, err := engine.Keep(ctx, s, sound, tell)
		w := newWinter(loggersOf(sound, names), zone)
		w.Refused = refused
		return w, err
	})
	if err != nil {
		return b, err
	}
	return k.take(made, false), nil
}

// sound are the files of use that no logger of the winter has yet, and what is to be set down of those that are of
// no use; the faults of all others are noted.
func (k *Keeper) sound(ctx context.Context, b *Book, read []engine.File) (out []engine.File, refused []winter.Refused, err error) {
	used, sums := k.used(), map[string]bool{}
	for _, f := range read {
		name, here := filepath.Base(f.Name), sums[f.SHA256]
		if k.store != nil && f.Err == nil && !here {
			kept, err := k.files.NameOf(ctx, f)
			if err != nil {
				return nil, nil, err
			}
			here = used[kept]
		}
		switch {
		case f.Err != nil:
			b.Faults = append(b.Faults, FaultOf(f.Name, f.Err))
			refused = append(refused, refusedAs(f))
		case here:
			b.Faults = append(b.Faults, Fault{Text: name + " is already here, so it was not added again."})
		case len(measuring(f)) == 0:
			b.Faults = append(b.Faults, Fault{Text: name + " holds no temperature, humidity or record of a fan that could be used."})
			refused = append(refused, refusedAs(f))
		default:
			out = append(out, f)
			sums[f.SHA256] = true
		}
	}
	return out, refused, nil
}

// used are the names of the kept files that loggers of the open winter have. A file that is kept but that no
// logger has, as after an undo, can be added again.
func (k *Keeper) used() map[string]bool {
	out := map[string]bool{}
	if k.store == nil {
		return out
	}
	w := k.store.Winter()
	lists := [][]winter.Logger{w.Outdoor, w.Tray}
	for _, b := range w.Barns {
		lists = append(lists, b.Loggers)
	}
	for _, l := range slices.Concat(lists...) {
		for _, name := range l.Files {
			out[name] = true
		}
	}
	return out
}

// loggersOf are the loggers of files, each naming its file as it is kept.
func loggersOf(read []engine.File, names map[string]string) (out []winter.Logger) {
	for _, f := range read {
		for _, l := range measuring(f) {
			l.Files = []string{names[f.Name]}
			out = append(out, l)
		}
	}
	return out
}

// measuring are the loggers of one file: those it names, one for each further temperature of theirs, and one for each
// record of what ran. A further one hangs where its column says, else nobody knows where; a weather station's hangs
// outdoors.
func measuring(f engine.File) (out []winter.Logger) {
	loggers, further, ofStation := loggerNames(f), furtherTemps(f), isStation(f)
	for _, n := range loggers {
		l := winter.Logger{Name: n}
		if len(loggers)+len(further) > 1 {
			l.Channel = n
		}
		if ofStation {
			l.Place = "outdoor"
		}
		out = append(out, l)
	}
	for _, column := range further {
		place, _ := placeIn(wordsOf(column))
		out = append(out, winter.Logger{Name: columnName(column), Channel: column, Place: cmp.Or(place, dontKnow)})
	}
	return append(out, recordsIn(f)...)
}

// recordsIn are the records of what ran that a file holds, one for each column, or where the rows name what ran one for
// each of those. A lone one takes the file whole. One that is called a door's hangs there.
func recordsIn(f engine.File) (out []winter.Logger) {
	if f.Export == nil {
		return nil
	}
	had, rows := map[string]bool{}, byRows(f)
	for _, s := range f.Export.Series {
		name := recordChannel(s, rows)
		if !s.IsRecord() || s.Readings() == 0 || had[name] {
			continue
		}
		had[name] = true
		l := winter.Logger{Name: titleOf(f.Name) + ", " + columnName(name), Channel: name, Place: winter.RecordPlace}
		if isDoor(l.Name) {
			l.Place = winter.DoorPlace
		}
		out = append(out, l)
	}
	if len(out) == 1 && len(loggerNames(f)) == 0 {
		out[0].Name, out[0].Channel = titleOf(f.Name), ""
	}
	return out
}

// recordChannel names a record within its file: by its variable or column, or where rows name what ran by that.
func recordChannel(s engine.Series, rows bool) string {
	if rows && s.Variable == "" {
		return s.Logger
	}
	return cmp.Or(s.Variable, s.Column)
}

// recordName is what a record in a file is called on the screen.
func recordName(f engine.File, s engine.Series) string {
	return cmp.Or(columnName(recordChannel(s, byRows(f))), quantityWords[string(s.Quantity)])
}

// dontKnow is the place of a logger that is kept out of the verdict.
const dontKnow = winter.NoPlace

// furtherTemps are the columns of air temperature beyond the first of their logger, in a file whose columns are one
// logger's each and that asks nothing about them.
func furtherTemps(f engine.File) (columns []string) {
	if f.Export == nil || byRows(f) || slices.Contains(questionIDs(f), engine.Pairing) {
		return nil
	}
	seen, met := map[string]bool{}, map[string]bool{}
	for _, s := range f.Export.Series {
		if s.Quantity != "air_temperature" || s.Readings() == 0 {
			continue
		}
		if seen[s.Logger] && s.Column != "" && !met[s.Column] {
			columns = append(columns, s.Column)
		}
		seen[s.Logger], met[s.Column] = true, true
	}
	return columns
}

// columnName is a column's name without its unit in brackets.
func columnName(column string) string {
	name, _, _ := strings.Cut(column, "(")
	name, _, _ = strings.Cut(name, "[")
	return cmp.Or(strings.TrimSpace(name), column)
}

// loggerNames are the loggers of one file that measured the air or a surface, or saw light.
func loggerNames(f engine.File) (names []string) {
	had := map[string]bool{}
	for _, s := range f.Export.Series {
		if usable(string(s.Quantity)) && !s.IsRecord() && s.Readings() > 0 && !had[s.Logger] {
			had[s.Logger] = true
			names = append(names, s.Logger)
		}
	}
	return names
}

func usable(quantity string) bool {
	switch quantity {
	case "air_temperature", "relative_humidity", "surface_temperature", "state", "current", "power", "speed":
		return true
	}
	return false
}

// zoneOf is the first zone a file names that is not UTC; UTC when none does, so that clock faces show as written.
func zoneOf(read []engine.File) string {
	for _, f := range read {
		if f.Export != nil && f.Export.Layout.Clock.Zone != "" && f.Export.Layout.Clock.Zone != "+00:00" {
			return f.Export.Layout.Clock.Zone
		}
	}
	return utc
}

// newWinterName is that of a winter nobody named yet.
const newWinterName = "New winter"

// newWinter hangs loggers in one barn: a lone logger in the room, others where their names say.
func newWinter(loggers []winter.Logger, zone string) winter.Winter {
	barn := winter.Barn{Name: "Barn"}
	w := winter.Winter{Name: newWinterName, Zone: zone}
	seen := map[string]int{}
	for _, l := range loggers {
		if l.Channel != "" && seen[l.Name] > 0 { // "1" of the file pair.csv is told from another "1" by its file
			l.Name = titleOf(l.Files[0]) + " " + l.Name
		}
		if seen[l.Name]++; seen[l.Name] > 1 {
			l.Name = fmt.Sprintf("%s (%d)", l.Name, seen[l.Name])
		}
		l.Assumed = true
		switch {
		case l.Place == dontKnow:
			l.Place, l.Assumed = "", false
			w.Tray = append(w.Tray, l)
			continue
		case l.Place != "":
		case len(loggers) > 1:
			l.Place, _ = placeByName(l)
		default:
			l.Place = "room"
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
