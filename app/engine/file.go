// Package engine turns a winter and its loggers' files into reviews: it reads the files in a bounded pool
// of workers, puts every logger on one clock, merges its read-outs, draws its curves and has each barn
// judged. The order of its results follows the winter and the arguments, never the workers.
package engine

import (
	"thawbook/analysis"
	"thawbook/analysis/compare"
	"thawbook/analysis/series"
	"thawbook/app/winter"
	"thawbook/importers"
)

// File is one file as it was read, or the reason why it was not. Export is nil exactly when Err is not.
// SHA256 is in lower hex and, like Bytes, covers the whole file; it is empty when the file could not be
// read to its end.
type File struct {
	Name   string // the path as it was asked for, with forward slashes
	SHA256 string
	Bytes  int64
	Export *importers.Export
	Err    error

	Remembered []winter.Answer // given for other files written the same way, with which it was read
}

// Result is a reviewed winter: its files in the order the winter names them (each once; then the patterns
// that stand for no file), one review and
// the input behind it per barn in the winter's order, and the remarks that belong to files and loggers.
type Result struct {
	Winter   winter.Winter
	Files    []File
	Barns    []analysis.Review
	Inputs   []analysis.Input
	Pairs    []compare.Pair // what was set side by side: see SetSideBySide
	Remarks  []series.Remark
	ZoneOpen []string // the files read in the winter's zone for want of another, where an hour would matter
	Faults   []error  // faults of the program that cost a logger its curves or a barn its review, of type *Fault
}

// Refused says whether any file of the winter was missing or could not be read.
func (r Result) Refused() bool {
	for _, f := range r.Files {
		if f.Err != nil {
			return true
		}
	}
	return false
}

// Progress is told how much of how much is done, and what is in hand, in a keeper's words: of reading the bytes, and
// the file or, of several, how many are done; of judging the parts of all barns, and which barn. Workers call it one at a time; nil means nobody asks.
type Progress func(done, total int64, what string)
