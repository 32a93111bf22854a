package importers

import (
	"fmt"
	"strings"
)

// Why a file could not be read at all. Each refusal carries one of these codes.
const (
	RefusedEmpty       = "empty"            // no bytes, or nothing but blanks
	RefusedOneLine     = "one_line"         // a single line that is not blank
	RefusedManyLines   = "many_lines"       // each reading over several lines, or all in one, as programs hand data to one another
	RefusedBinary      = "binary"           // NUL bytes or control characters: not a text file
	RefusedWorkbook    = "workbook"         // a spreadsheet's own form
	RefusedArchive     = "archive_within"   // an archive where a log should be
	RefusedDocument    = "document"         // written to be printed or read
	RefusedPage        = "page"             // of the web
	RefusedLongLine    = "line_too_long"    // Args: the limit in bytes
	RefusedManyColumns = "too_many_columns" // Args: the limit
	RefusedNoClock     = "no_clock"         // no column or columns that can be read as date and time
	RefusedNoDate      = "no_date"          // times of day, and no date; nor can they be told apart by days, or a date beside them can't be read
	RefusedNoDays      = "no_days"          // months of a year, and no days
	RefusedNoStart     = "no_start"         // time counted from a start that the file does not name
	RefusedShifted     = "shifted_fields"   // fields stand in other columns from row to row
	RefusedTwoCommas   = "two_commas"       // commas between the cells and in the numbers
	RefusedNoValues    = "no_values"        // times, but no column of numbers or states
)

// Error names the file, the place in it where there is one, the code and its arguments; the sentence for
// the keeper is made elsewhere.
func (r *Refusal) Error() string {
	var b strings.Builder
	b.WriteString(r.Name)
	if r.Line > 0 {
		fmt.Fprintf(&b, ":%d", r.Line)
	}
	if r.Column > 0 {
		fmt.Fprintf(&b, ":%d", r.Column)
	}
	b.WriteString(": " + strings.ReplaceAll(r.Code, "_", " "))
	if len(r.Args) > 0 {
		b.WriteString(" (" + strings.Join(r.Args, ", ") + ")")
	}
	return b.String()
}

// Reason takes the refusal apart, for those who make sentences of it: code, arguments and place.
func (r *Refusal) Reason() (code string, args []string, line, column int) {
	return r.Code, r.Args, r.Line, r.Column
}
