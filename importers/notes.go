package importers

import "thawbook/analysis/series"

// What is remarked about a file that was read.
const (
	RemarkBadTime     = "bad_time"        // a row whose time can't be read; Args: the cell
	RemarkUnreadable  = "unreadable_cell" // Args: the cell, the column's header
	RemarkShortLine   = "short_line"      // fewer cells than the layout has
	RemarkLongLine    = "long_line"       // more cells than the layout has
	RemarkMovedLine   = "moved_line"      // a line with more or fewer cells than the layout has, and values in other columns than those of the rest
	RemarkCutLine     = "cut_line"        // the last line breaks off; its last cell is not trusted
	RemarkFoot        = "foot"            // a line below the table; Args: its first words
	RemarkOutOfOrder  = "out_of_order"    // a row earlier than the one above
	RemarkClockAnew   = "clock_anew"      // the clock begins anew with 1 January of an earlier year; Args: the year
	RemarkClockUnset  = "clock_unset"     // rows of a 1 January more than a year before those that follow; Args: the year
	RemarkNoTimes     = "no_times"        // dates alone, most of which come several times; Args: the column's header
	RemarkSameTimes   = "same_times"      // most readings of a logger stand at the time of another one that differs; Args: the column's header
	RemarkTypical     = "typical_year"    // months from different years put one after the other
	RemarkDayAbove    = "day_above"       // times of day alone; the day of the first row stands above the table; Args: the day
	RemarkHalfDays    = "half_days"       // hours of 1 to 12 without AM and PM; the order of the rows told the halves of the days
	RemarkUnitValues  = "unit_by_values"  // header and values disagree on a unit; Args: the column, the unit taken
	RemarkTenths      = "graded_tenths"   // a sign, four digits and a grade in each cell, read as tenths of a degree; Args: the column
	RemarkBlankOff    = "blank_off"       // a column that prints on and nothing for off; Args: the column
	RemarkUnitSwitch  = "unit_switch"     // temperatures that leap between °C and °F; Args: the column
	RemarkMixedOrders = "mixed_orders"    // dates of which some name the day first and others the month
	RemarkOrderTurns  = "order_turns"     // dates that name the day first up to a row and the month first from it on, or the other way round
	RemarkMixedMarks  = "mixed_marks"     // a fraction behind the other decimal mark than most; Args: the cell, the column
	RemarkLimit       = "limit"           // a value that is only known to be below or above what is printed; Args: the cell, the column
	RemarkRemarked    = "remarked"        // a number with words in its cell, taken without them; Args: the cell, the column
	RemarkGraded      = "graded"          // a reading that the file itself calls none, taken as missing; Args: the column
	RemarkSentinel    = "sentinel"        // a number that stands for no value, taken as missing; Args: the number, the column
	RemarkWords       = "words"           // a text that says no state, kept as a moment; Args: the text, the column
	RemarkNameless    = "nameless"        // columns of a table without a header that nothing tells the meaning of; Args: their numbers
	RemarkStatistic   = "statistic"       // columns of extremes or spreads, kept beside the readings, at the first of them; Args: their names
	RemarkNoAnswer    = "unknown_answer"  // an answer that is none of the options; Args: the question, the answer
)

// notes gathers remarks: one for each code and column, with its first and last line and how often. There
// are no more of a code than a file has columns.
type notes struct {
	list  []series.Remark
	index map[noteKey]int
}

type noteKey struct {
	code   string
	column int
}

func (n *notes) add(r series.Remark) {
	if n.index == nil {
		n.index = map[noteKey]int{}
	}
	key := noteKey{r.Code, r.Column}
	if i, found := n.index[key]; found {
		first := &n.list[i]
		first.Count++
		first.LastLine = max(first.LastLine, r.Line)
		if r.Line < first.Line { // found only once the dates' order was settled
			first.Line, first.Args = r.Line, r.Args
		}
		return
	}
	r.Count, r.LastLine = 1, r.Line
	n.index[key] = len(n.list)
	n.list = append(n.list, r)
}

// clip shortens a cell for a message.
func clip(s string) string {
	const longest = 40
	runes := []rune(s)
	if len(runes) <= longest {
		return s
	}
	return string(runes[:longest-1]) + "…"
}
