package plan

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"time"

	"thawbook/app/winter"
)

// builder makes the winter's values of the file's tables and keeps the first fault. Every method takes
// the path of the table and the key, so that the fault can point at its place.
type builder struct {
	name   string
	places places
	loc    *time.Location
	err    error
}

// refuse keeps a fault unless there is one already.
func (b *builder) refuse(path, code, format string, args ...any) {
	if b.err != nil {
		return
	}
	at := b.places.find(path)
	b.err = &Error{Name: b.name, Line: at.line, Column: at.column, Code: code, Msg: fmt.Sprintf(format, args...)}
}

// refuseSingles refuses a list's table that is written as a single one.
func (b *builder) refuseSingles() {
	for _, path := range b.places.singles {
		first, _, _ := strings.Cut(path, ".")
		switch {
		case slices.Contains([]string{"winter", "bands", "tariff"}, first) || phaseBands.MatchString(path):
		case strings.Contains(path, ".phase.bands"):
			b.refuse(path, Absent, "%s needs its [[barn.phase]] above it", header(path))
		default:
			b.refuse(path, WrongType, "%s is one of a list; write it in double brackets: [[%s]]", header(path), plain(path))
		}
	}
}

// phaseBands is the path of a phase's own limits, which is no list.
var phaseBands = regexp.MustCompile(`^barn\[\d+\]\.phase\[\d+\]\.bands(\.|$)`)

// text is a text that must be there.
func (b *builder) text(path, key, value string) string {
	if strings.TrimSpace(value) == "" {
		b.refuse(join(path, key), Absent, "%s needs a %s", header(path), key)
	}
	return value
}

// oneOf is a text from a list; empty where it may be left out.
func (b *builder) oneOf(path, key, value string, words []string) string {
	if !slices.Contains(words, value) {
		b.refuse(join(path, key), BadValue, "%s %q is not one of: %s", key, value, strings.Join(words, ", "))
	}
	return value
}

// number is a number within limits, both included; nil stays nil.
func (b *builder) number(path, key string, value *float64, low, high float64) *float64 {
	if value != nil && !(low <= *value && *value <= high) {
		b.refuse(join(path, key), BadValue, "%s takes a number from %g to %g, not %g", key, low, high, *value)
	}
	return value
}

// rising refuses two numbers where the first is above the second.
func (b *builder) rising(path, lowKey, highKey string, low, high *float64) {
	if low != nil && high != nil && *low > *high {
		b.refuse(join(path, highKey), BadValue, "%s (%g) lies above %s (%g)", lowKey, *low, highKey, *high)
	}
}

// later refuses a second instant that is not later than the first; either may be absent.
func (b *builder) later(path, firstKey, secondKey string, first, second *int64) {
	if first != nil && second != nil && *second <= *first {
		b.refuse(join(path, secondKey), BadTime, "%s is not later than %s", secondKey, firstKey)
	}
}

// momentAt is an instant that must be there.
func (b *builder) momentAt(path, key string, value any) int64 {
	if value == nil {
		b.refuse(join(path, key), Absent, "%s needs a time: %s", header(path), key)
		return 0
	}
	m, ok := momentOf(value)
	if !ok {
		b.refuse(join(path, key), BadTime, "%s is no date or time between %d and %d; write for example 2026-11-12 or 2026-11-12T14:30:00", key, firstYear, lastYear)
		return 0
	}
	at, ok := m.instant(b.loc)
	if !ok {
		b.refuse(join(path, key), BadTime, "%s lies in the hour the clocks skipped when summer time began", key)
	}
	return at
}

// momentIf is an instant that may be left out.
func (b *builder) momentIf(path, key string, value any) *int64 {
	if value == nil {
		return nil
	}
	at := b.momentAt(path, key, value)
	return &at
}

// zone is a zone's name; empty where it may be left out.
func (b *builder) zone(path, value string) *time.Location {
	loc, err := winter.Location(value)
	if err != nil {
		b.refuse(join(path, "zone"), BadZone, "%s", err)
		return time.UTC
	}
	return loc
}

// header is a table's path as the keeper wrote it: [[barn.stage]] for barn[0].stage[2].
func header(path string) string {
	if strings.HasSuffix(path, "]") {
		return "[[" + plain(path) + "]]"
	}
	return "[" + plain(path) + "]"
}

// plain is a path without the numbers of its tables.
func plain(path string) string { return number.ReplaceAllString(path, "") }

// number is the number of a table in its list.
var number = regexp.MustCompile(`\[\d+\]`)

// scaled divides each of several numbers, as in percent to 0–1; nil stays nil.
func scaled(value *float64, by float64) *float64 {
	if value == nil {
		return nil
	}
	v := *value / by
	return &v
}

// namedOnce refuses the second of two tables of a list that bear the same name.
func namedOnce[T any](b *builder, list string, items []T, name func(T) string) {
	seen := map[string]bool{}
	for i, item := range items {
		if seen[name(item)] {
			b.refuse(fmt.Sprintf("%s[%d].name", list, i), TwiceNamed, "%q is named twice", name(item))
		}
		seen[name(item)] = true
	}
}

// laterAgain refuses an item of a list whose name was given before and whose from is not later than then.
func laterAgain[T any](b *builder, list string, items []T, of func(T) (name string, from *int64)) {
	last := map[string]*int64{}
	for i, item := range items {
		name, from := of(item)
		before, named := last[name]
		if named && (from == nil || before != nil && *from <= *before) {
			b.refuse(fmt.Sprintf("%s[%d].from", list, i), TwiceNamed, "%q is named again; give it a from later than before", strings.Split(name, "\x00")[0])
		}
		last[name] = from
	}
}
