package engine

import (
	"fmt"
	"runtime"
	"strings"
)

// Fault is a panic of a worker, caught: the program's own mistake. It costs the file or barn in hand. It says
// where in the program it was and of what kind, and holds nothing of the keeper's beside what was in hand.
type Fault struct {
	Doing string   // the file or barn in hand
	Kind  string   // the type of what the program threw; of the runtime's own errors their text
	Where []string // the calls that led there, innermost first: function, source file and line
}

// Error is one sentence.
func (f *Fault) Error() string {
	return f.Doing + " could not be worked out: an internal fault of the program"
}

// Note is what the program's makers need to know of a fault, without the keeper's data: not even a file's name.
func (f *Fault) Note() string {
	return fmt.Sprintf("kind: %s\n%s\n", f.Kind, strings.Join(f.Where, "\n"))
}

// Guarded is what doing returns; a panic in it is a *Fault.
func Guarded(what string, doing func() error) (err error) {
	defer caught(&err, what)
	return doing()
}

// caught turns a panic into an error in *err; to be deferred.
func caught(err *error, doing string) {
	switch thrown := recover().(type) {
	case nil:
	case *Fault: // caught in a worker already, and thrown on
		thrown.Doing = doing
		*err = thrown
	default:
		*err = &Fault{Doing: doing, Kind: kindOf(thrown), Where: callers()}
	}
}

// kindOf is a runtime error's text, which holds numbers at most; of anything else the type alone.
func kindOf(thrown any) string {
	if own, ok := thrown.(runtime.Error); ok {
		return own.Error()
	}
	return fmt.Sprintf("%T", thrown)
}

// callers are the calls that led to a panic.
func callers() (out []string) {
	places := make([]uintptr, 64)
	frames := runtime.CallersFrames(places[:runtime.Callers(4, places)])
	for {
		frame, more := frames.Next()
		out = append(out, fmt.Sprintf("%s %s:%d", frame.Function, frame.File, frame.Line))
		if !more {
			return out
		}
	}
}
