package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
)

// The exit statuses.
const (
	done       = 0 // open questions included
	refused    = 1 // something could not be read, written or finished
	wrongUsage = 2
)

const usage = `usage: thawbook [WINTER.thawbook | PLAN.toml | FILE...]
       thawbook inspect [-json] [-answer [PATTERN:]ID=OPTION]... FILE...
       thawbook review [-json] [-out DIR] [-beside OTHER] WINTER.thawbook|PLAN.toml
       thawbook version

Without a command the window opens, with what is named in it: a winter, a plan, logger
files or folders of them. inspect says how files and folders were understood, review
judges the winter of a winter file or a plan; both only read. -json prints one JSON
value instead of text, -out writes the review and its tables into a folder, -beside sets
another winter, a winter file or a plan, beside it, barn by barn and day by day, -answer
settles an open question of the files a pattern matches.

Exit status: 0 done, 1 something was refused, 2 wrong usage.
`

// door is where a command prints to, and what stops it.
type door struct {
	ctx            context.Context
	stdout, stderr io.Writer
}

// run is the whole program without its process: what the arguments ask for, printed to stdout, troubles
// to stderr; it returns the exit status.
func run(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	d := door{ctx, stdout, stderr}
	switch {
	case len(args) == 0:
		return window()
	case args[0] == "inspect":
		return d.inspect(args[1:])
	case args[0] == "review":
		return d.review(args[1:])
	case args[0] == "version" && len(args) == 1:
		return d.version()
	case args[0] == "-h", args[0] == "--help", args[0] == "help":
		fmt.Fprint(stderr, usage)
		return done
	case allThere(args):
		return window(args...)
	}
	return d.misused(fmt.Sprintf("there is no command %q, and no file of that name", args[0]))
}

// allThere says whether every argument is a file or folder.
func allThere(args []string) bool {
	for _, path := range args {
		if _, err := os.Stat(path); err != nil {
			return false
		}
	}
	return true
}

// misused says what is wrong with the arguments, and what would be right.
func (d door) misused(what string) int {
	fmt.Fprintf(d.stderr, "thawbook: %s\n\n%s", what, usage)
	return wrongUsage
}

// parse reads flags and what they stand between. ok is false when the arguments end here, with a status.
func (d door) parse(flags *flag.FlagSet, args []string) (rest []string, status int, ok bool) {
	flags.SetOutput(io.Discard)
	for {
		err := flags.Parse(args)
		switch {
		case errors.Is(err, flag.ErrHelp):
			fmt.Fprint(d.stderr, usage)
			return nil, done, false
		case err != nil:
			return nil, d.misused(err.Error()), false
		}
		if flags.NArg() == 0 {
			return rest, done, true
		}
		rest, args = append(rest, flags.Arg(0)), flags.Args()[1:]
	}
}

// writeJSON prints one value. Text stays as it is: no HTML escapes.
func writeJSON(w io.Writer, value any) error {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", " ")
	return out.Encode(value)
}

// trouble prints an error and gives the status for it.
func (d door) trouble(err error) int {
	if errors.Is(err, context.Canceled) {
		err = errors.New("stopped before it was done")
	}
	fmt.Fprintf(d.stderr, "thawbook: %v\n", err)
	return refused
}
