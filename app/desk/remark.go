package desk

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"thawbook/analysis/series"
)

// refusalTexts say why a file was not read and what to do instead; %s stands for the file with its line,
// and what follows for the refusal's arguments.
var refusalTexts = map[string]string{
	"empty":            "%s is empty; read the logger out again.",
	"many_lines":       "%s holds no table: each reading stands over several lines, or all of them in one, as programs hand data to one another; export it as a table with a line for each reading.",
	"one_line":         "%s holds a single line, too little to tell a header from readings; read the logger out again.",
	"binary":           "%s holds bytes that no text has; export the log as text (CSV), not in the logger's own format.",
	"workbook":         "%s is a spreadsheet's workbook; open it there and save the sheet with the readings as CSV.",
	"archive_within":   "%s is an archive within an archive; unpack it and add what is inside.",
	"document":         "%s is a document to be read or printed, not a table; export the log as text (CSV).",
	"page":             "%s is a page of the web, not a log; download the readings themselves as CSV, or open the page in a spreadsheet and save it as CSV.",
	"line_too_long":    "%s is longer than %s bytes; this is no table of readings, or its line ends are lost: export it again.",
	"too_many_columns": "%s has more than %s columns; export fewer loggers into one file.",
	"no_clock":         "%s has no column that can be read as date and time; export it with the time of each reading.",
	"no_date":          "%s has times of day, which no date and no AM or PM puts on their days; export it with the date of each reading.",
	"no_days":          "%s has months and no days; a winter can't be judged by means of months, export the readings themselves.",
	"no_start":         "%s counts time from a start it does not name; export it with the date and time of each reading, or write a line such as “Start: 2025-11-12 14:30” above the table.",
	"shifted_fields":   "%s is the first whose fields stand in other columns than those of most lines, so no column can be trusted; export the log anew, with every cell written out.",
	"two_commas":       "%s has commas between the cells and commas in the numbers, which can't be told apart; export it with semicolons or tabs between the cells, or with decimal points.",
	nothingUsable:      "%s holds no temperature, humidity or record of a fan that could be used; export the log with its readings and add it again.",
	"no_values":        "%s has times, but no column of numbers or of states beside them; export it with its readings.",
}

// reasoned is a refusal that can be taken apart.
type reasoned interface {
	Reason() (code string, args []string, line, column int)
}

// Refusal says in one sentence why a file was not read, with its place where there is one, and the code for
// programs.
func Refusal(file string, err error) (code, text string) {
	var why reasoned
	var said refusal
	switch {
	case err == nil:
		return "not_read", file + " was not read."
	case errors.As(err, &said) && said.Code == "":
		return "not_read", said.Error()
	case errors.As(err, &why):
		code, args, line, column := why.Reason()
		if template, known := refusalTexts[code]; known && strings.Count(template, "%s") == len(args)+1 {
			return code, fmt.Sprintf(template, anyOf(append([]string{place(file, line, column)}, args...))...)
		}
		return code, place(file, line, column) + " was not read: " + strings.ReplaceAll(code, "_", " ") + "."
	case errors.Is(err, fs.ErrNotExist):
		code = "missing"
	case errors.Is(err, fs.ErrPermission):
		code = "no_permission"
	default:
		code = "not_read"
	}
	return code, sentence(err.Error())
}

// place names a file and, where known, the line and column in it.
func place(file string, line, column int) string {
	if line > 0 {
		file += fmt.Sprintf(", line %d", line)
	}
	if column > 0 {
		file += fmt.Sprintf(", column %d", column)
	}
	return file
}

// sentence ends a text with a full stop.
func sentence(text string) string {
	if strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

// fileNotes are the sentences of notes on a file. {n} is how often, {where} the line or lines, {column} the
// column, {0} and {1} the arguments.
var fileNotes = map[string]string{
	"bad_time":        "{n} {row|rows} {where} left out: the time in column {column} can't be read.",
	"unreadable_cell": "{n} {cell|cells} in column {column}, {1}, left out {where}: “{0}” is no value.",
	"short_line":      "{n} {line|lines} {where} had fewer cells than the table; what is not there counts as missing.",
	"long_line":       "{n} {line|lines} {where} had more cells than the table; those beyond were not read.",
	"moved_line":      "{n} {line|lines} {where} left out: with a cell too many or too few, as by a comma within a number, values stand in other columns than elsewhere. Set right, they can be read.",
	"cut_line":        "The file breaks off in line {line}, and the last cell there is not trusted; read the logger out again if more is there.",
	"foot":            "{n} {line|lines} {where} below the table, “{0}” first, not taken for readings.",
	"out_of_order":    "{n} {row|rows} {where} came earlier than the row above: the clock was set back, or read-outs were joined.",
	"clock_anew":      "The clock began anew with 1 January {0} {where}, as after a change of battery; the rows below bear wrong dates.",
	"clock_unset":     "The rows above line {line} bear 1 January {0}: the clock had not been set yet.",
	"same_times":      "Most readings of a logger stand at the time of another one that differs: the file holds several loggers and does not say which a row is of. Export each by itself, or with a column that names it.",
	"no_times":        "Column {column} has dates and no times, and most dates come several times; all those readings stand at midnight. Export the log with the time of each reading.",
	"typical_year":    "Months of different years stand one after the other {where}: typical weather put together, not a winter that was.",
	"day_above":       "The rows have times of day alone; the first of them was put on {0}, the day named in line {line}.",
	"half_days":       "The hours go from 1 to 12 without AM or PM, first told by line {line}; which half of the day a row is from was told by the order of the rows.",
	"unit_by_values":  "Column {column}, {0}, was read as {1}: its values don't fit the unit it names.",
	"graded_tenths":   "Column {column}, {0}, prints a sign, four digits and a grade, as archives of weather stations do; it was read as tenths of a degree Celsius.",
	"blank_off":       "Column {column}, {0}, prints on or open alone; {n} empty {cell|cells} {where} read as off or closed.",
	"unit_switch":     "Column {column}, {0}, leaps between °C and °F {where}, as when a logger is set to another unit; all of it was read as °C.",
	"mixed_orders":    "Some dates in column {column} have the day first and others the month, as a spreadsheet leaves them; which is which was told by the order of the rows.",
	"order_turns":     "From line {line} on the dates in column {column} have day and month the other way round than above, as when two read-outs are put one below the other; the steps of the rows tell.",
	"mixed_marks":     "{n} {cell|cells} in column {column}, {1}, {where}: “{0}” has the other decimal mark than the rest, and was read as the fraction it is.",
	"limit":           "{n} {cell|cells} in column {column}, {1}, {where}: printed as a limit, “{0}”; the limit itself was taken.",
	"remarked":        "{n} {cell|cells} in column {column}, {1}, {where}: “{0}” has words beside its number; the number was taken.",
	"graded":          "{n} {cell|cells} in column {column}, {0}, {where}: the file itself marks the reading as not valid; it counts as missing.",
	"sentinel":        "{n} {cell|cells} in column {column}, {1}, {where}: {0} stands for no reading, or can be none, and counts as missing.",
	"words":           "{n} {line|lines} in column {column}, {1}, {where}: words such as “{0}” are no readings; each is kept as a moment.",
	"nameless":        "The table has no header, and what its columns {0} hold can't be told from their values; they are kept and not used. Names in a first line would tell.",
	"statistic":       "What was made of several readings, such as their lowest or highest, is kept and not read as a logger: {0}, first in column {column}.",
	"unknown_answer":  "The answer “{1}” to {0} is none of those there are, and was not used.",
}

// FileNote is the sentence for a note on a file.
func FileNote(r series.Remark) string {
	template, known := fileNotes[r.Code]
	if !known {
		return sentence(strings.ReplaceAll(r.Code, "_", " ") + " " + where(r))
	}
	for _, one := range []string{"row", "cell", "line"} {
		many := one + "s"
		word := many
		if r.Count == 1 {
			word = one
		}
		template = strings.ReplaceAll(template, "{"+one+"|"+many+"}", word)
	}
	pairs := []string{"{n}", fmt.Sprint(r.Count), "{where}", where(r), "{column}", fmt.Sprint(r.Column), "{line}", fmt.Sprint(r.Line)}
	for i := range 2 {
		arg := ""
		if i < len(r.Args) {
			arg = r.Args[i]
		}
		pairs = append(pairs, fmt.Sprintf("{%d}", i), arg)
	}
	return strings.NewReplacer(pairs...).Replace(template)
}

// where names the line or the span of lines of a note.
func where(r series.Remark) string {
	if r.LastLine > r.Line {
		return fmt.Sprintf("(lines %d to %d)", r.Line, r.LastLine)
	}
	return fmt.Sprintf("(line %d)", r.Line)
}

// questions are what only the keeper can know, in his words.
var questions = map[string]string{
	"day_month":        "Are the dates written day first (dmy) or month first (mdy)? Nothing in the file tells.",
	"day_zero":         "Are the days counted from 1900 or from 1904, as some spreadsheets do? A year in the file's name or above the table fits the later dates alone, which are four years and a day on.",
	"temperature_unit": "Are the temperatures in °C or in °F? The file does not say and the values fit both.",
	"humidity_unit":    "Is the humidity in percent or as a fraction of one?",
	"year":             "In which year was this logger started? The file gives no year.",
	"first_day":        "On which day was the first row recorded? The file has times of day and no date.",
	"quantity":         "What do the numbers hold? No name says it, and they may be those of air.",
	"swapped":          "Do temperature and humidity stand under each other's name?",
	"zone":             "Which time zone was its clock set to? The file names none, and beside other barns or outdoor readings an hour matters.",
	"dst":              "Did the logger's clock follow summer time?",
	"decimal_mark":     "Which is the decimal mark, the point or the comma? Numbers such as 1,100 may be a little over one or over a thousand.",
	station:            "Are these a weather station's readings?",
	"pairing":          "Which humidity belongs to which temperature: the first to the first and so on (in_order), or none to any (apart)? Neither their names nor their places tell.",
}

// QuestionOf is the sentence for a question about a file; it names the columns where it is about some.
func QuestionOf(id string, columns []string) string {
	switch len(columns) {
	case 0:
		return Question(id)
	case 1:
		return "What does column " + columns[0] + " hold? Its name does not say it, and its values may be those of air."
	}
	return "What do the columns " + namedOrCounted(columns) + " hold? Their names do not say it, and their values may be those of air."
}

// Question is the sentence for a question by its id.
func Question(id string) string {
	if text, known := questions[id]; known {
		return text
	}
	return sentence("What is its " + strings.ReplaceAll(id, "_", " "))
}
