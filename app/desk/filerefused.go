package desk

import (
	"errors"
	"fmt"
	"path/filepath"

	"thawbook/app/engine"
	"thawbook/app/winter"
)

// nothingUsable is why a file is refused that was read and holds nothing a barn can be judged by.
const nothingUsable = "nothing_usable"

// refusedAs is what is set down of a file that could not be taken: its reason taken apart, else the sentence.
func refusedAs(f engine.File) winter.Refused {
	out := winter.Refused{Name: filepath.Base(f.Name)}
	var why reasoned
	switch {
	case f.Err == nil:
		out.Code = nothingUsable
	case errors.As(f.Err, &why):
		out.Code, out.Args, out.Line, out.Column = why.Reason()
	default:
		_, text := Refusal(out.Name, f.Err)
		out.Args = []string{text}
	}
	return out
}

// refusal is a refusal as it was set down, as an error.
type refusal winter.Refused

// Error is the sentence, or the code that stands for one.
func (r refusal) Error() string {
	if r.Code == "" && len(r.Args) > 0 {
		return r.Args[0]
	}
	return r.Code
}

// Reason is the refusal taken apart.
func (r refusal) Reason() (code string, args []string, line, column int) {
	return r.Code, r.Args, r.Line, r.Column
}

// refused are the files that could not be taken, as files; one whose name another bears is told from it.
func (b Book) refused(taken []engine.File) (out []engine.File) {
	for _, r := range b.doc.Refused {
		f := engine.File{Name: r.Name, Err: refusal(r)}
		for fileNamed(taken, f.Name) >= 0 || fileNamed(out, f.Name) >= 0 {
			f.Name += " (not taken)"
		}
		out = append(out, f)
	}
	return out
}

// Dismissal is a way to take files that could not be taken off the list, as on a button.
type Dismissal struct {
	Label string
	Edit  winter.Edit
}

// dismissals are the ways to take a file off the list, alone or with all of its kind; none for one that was taken.
func (b Book) dismissals(f engine.File) []Dismissal {
	var own refusal
	if !errors.As(f.Err, &own) {
		return nil
	}
	out := []Dismissal{{"Take it off the list", winter.Dismiss{Names: []string{own.Name}}}}
	if n := len(b.doc.Refused); n > 1 {
		var all []string
		for _, r := range b.doc.Refused {
			all = append(all, r.Name)
		}
		out = append(out, Dismissal{fmt.Sprintf("Take all %d off the list", n), winter.Dismiss{Names: all}})
	}
	return out
}
