// Package plan reads and writes a winter as text: a TOML 1.0 document, strict. A key it does not know is
// refused with its line, and so is a value that cannot hold.
//
// Tables: one [winter] (name, zone, gap_minutes); for each barn a [[barn]] with its [[barn.heads]],
// [[barn.phase]], [[barn.stage]], [[barn.mixing]], [[barn.heat]], [[barn.surface]], [[barn.logger]],
// [[barn.note]] and [[barn.exclude]]; [[outdoor]] and [[tray]], written like a logger; each logger's
// [[barn.logger.check]] and [[barn.logger.exclude]], or those of outdoor and tray;
// [bands.air_temperature] and [bands.relative_humidity], a phase's own as [barn.phase.bands.air_temperature]
// and so on; [tariff]; [[answer]], which with a layout holds for all files written that
// way; [[refused]]. Temperatures are in °C, humidities in percent, flows in m³/h.
//
// A time is a TOML date, local date-time or offset date-time, or a text that looks like one of them. Without an
// offset it is a clock face in the winter's zone; a bare date is the first instant of that day; a face the
// clock showed twice is the earlier of the two; one it skipped is refused.
package plan

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"thawbook/app/winter"
)

// The reasons a plan is refused.
const (
	Syntax     = "syntax"
	UnknownKey = "unknown_key"
	WrongType  = "wrong_type"
	Absent     = "missing_key"
	BadValue   = "bad_value"
	BadTime    = "bad_time"
	BadZone    = "bad_zone"
	OffNotLow  = "off_not_below_on"
	OneOf      = "one_of"
	NoSuchName = "no_such_name"
	TwiceNamed = "named_twice"
)

// Error is why a plan was refused: one sentence and its place in the file, 1-based (columns count bytes).
type Error struct {
	Name         string
	Line, Column int
	Code         string
	Msg          string
}

// Error is the sentence with its place in front.
func (e *Error) Error() string {
	return fmt.Sprintf("%s:%d:%d: %s", e.Name, e.Line, e.Column, e.Msg)
}

// Read makes a winter of a plan's text; name is used in messages only. The error is of type *Error and
// points at the first fault found.
func Read(text []byte, name string) (winter.Winter, error) {
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	var doc document
	decoder := toml.NewDecoder(bytes.NewReader(text)).DisallowUnknownFields()
	if err := decoder.Decode(&doc); err != nil {
		return winter.Winter{}, undecoded(err, name)
	}
	b := builder{name: name, places: placesOf(text)}
	b.refuseSingles()
	w := b.winter(doc)
	if b.err != nil {
		return winter.Winter{}, b.err
	}
	return w, nil
}

// undecoded puts the decoder's error into a sentence of ours.
func undecoded(err error, name string) error {
	var fault *toml.DecodeError
	var unknown *toml.StrictMissingError
	out := &Error{Name: name, Line: 1, Column: 1, Code: Syntax, Msg: strings.TrimPrefix(err.Error(), "toml: ")}
	switch {
	case errors.As(err, &unknown):
		fault = &unknown.Errors[0]
		out.Code = UnknownKey
		out.Msg = fmt.Sprintf("unknown key %q", strings.Join(fault.Key(), "."))
	case errors.As(err, &fault):
		out.Msg = strings.TrimPrefix(fault.Error(), "toml: ")
		if wanted := wantedKind(out.Msg); wanted != "" {
			out.Code = WrongType
			out.Msg = fmt.Sprintf("%q takes %s", strings.Join(fault.Key(), "."), wanted)
		}
	default:
		return out
	}
	out.Line, out.Column = fault.Position()
	return out
}

// wantedKind is what a key takes, from the Go type the decoder's message ends with; "" when it names none.
func wantedKind(message string) string {
	_, kind, found := strings.Cut(message, " of type ")
	if !found {
		return ""
	}
	switch kind {
	case "float64":
		return "a number"
	case "int":
		return "a whole number"
	case "bool":
		return "true or false"
	case "string":
		return "a text in quotes"
	case "[]string":
		return "a list of texts"
	case "[][]interface {}":
		return "a list of pairs"
	}
	return "a table"
}
