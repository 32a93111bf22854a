package desk

import (
	"cmp"
	"fmt"
	"path"
	"slices"
	"strconv"
	"strings"

	"thawbook/analysis/series"
	"thawbook/app/engine"
	"thawbook/app/winter"
)

// FilesView is the list of the winter's files, those first that wait for the keeper.
type FilesView struct {
	Sentence string
	Files    []FileEntry

	waiting []string // names of those that wait for an answer
}

// FileEntry is a file in the list: how it stands, in a few words.
type FileEntry struct {
	Name, State, Note string
	Mark              Mark
	state             fileState
}

// fileState is how a file stands, the worst first.
type fileState int

const (
	fileWaits fileState = iota
	fileRefused
	fileAsks
	fileNoted
	fileFine
)

// stateWords are the states in words.
var stateWords = [...]string{"waits for an answer", "could not be read", "read; its time zone is asked", "read, with notes worth a look", "read"}

// files are the files of the winter's loggers as they were last read, and those that could not be taken.
func (b Book) files() []engine.File {
	taken := slices.Concat(b.Result.Files, b.looked.tray)
	return append(taken, b.refused(taken)...)
}

// lists are what a window asks of a book again and again: they are made once, for there may be a thousand loggers.
type lists struct {
	stations []engine.File // those that look like a weather station's
	files    FilesView
	shell    Shell
}

// listed is the book with its lists made; each is made of those before it.
func (b Book) listed() Book {
	b.lists = &lists{}
	b.lists.stations = slices.DeleteFunc(b.files(), func(f engine.File) bool { return !isStation(f) })
	b.lists.files = b.listFiles()
	b.lists.shell = b.listShell()
	return b
}

// made are the book's lists, those of the book as it is where none were made yet.
func (b Book) made() *lists {
	if b.lists == nil {
		b = b.listed()
	}
	return b.lists
}

// Files is the list of the winter's files.
func (b Book) Files() FilesView { return b.made().files }

func (b Book) listFiles() FilesView {
	v := FilesView{}
	for _, f := range b.files() {
		e := b.fileEntry(f)
		v.Files = append(v.Files, e)
		if e.state == fileWaits {
			v.waiting = append(v.waiting, f.Name)
		}
	}
	slices.SortStableFunc(v.Files, func(a, b FileEntry) int { return cmp.Compare(a.state, b.state) })
	v.Sentence = filesSentence(v.Files, v.waiting)
	return v
}

// filesRow is the way to the files in the rail.
func (b Book) filesRow() FilesRow {
	all := b.Files().Files
	n, waiting, refused, asking := len(all), 0, 0, 0
	for _, e := range all {
		switch e.state {
		case fileWaits:
			waiting++
		case fileRefused:
			refused++
		case fileAsks:
			asking++
		}
	}
	switch {
	case waiting > 0:
		return FilesRow{fmt.Sprintf("%d of %d %s for an answer", waiting, n, oneOrMany(waiting, "waits", "wait")), MarkAct}
	case refused > 0:
		return FilesRow{fmt.Sprintf("%d of %d could not be read", refused, n), MarkAct}
	case asking > 0:
		return FilesRow{fmt.Sprintf("%d, a time zone is asked", n), MarkWatch}
	case n == 0:
		return FilesRow{"none yet", MarkNone}
	case b.InDoubt():
		return FilesRow{fmt.Sprintf("%d, readings are in doubt", n), MarkWatch}
	}
	return FilesRow{fmt.Sprintf("%d, no question is open", n), MarkNone}
}

// waitsFor is the first of a logger's files that waits for an answer, or "".
func (b Book) waitsFor(l winter.Logger) string {
	waiting := b.Files().waiting
	if i := slices.IndexFunc(waiting, l.HasFile); i >= 0 {
		return waiting[i]
	}
	return ""
}

// mostNamed is how many files that wait are named one by one.
const mostNamed = 3

func filesSentence(all []FileEntry, waiting []string) string {
	refused, noted, asking := 0, 0, 0
	for _, e := range all {
		switch e.state {
		case fileRefused:
			refused++
		case fileAsks:
			asking++
		case fileNoted:
			noted++
		}
	}
	var parts []string
	if len(waiting) > 0 {
		parts = append(parts, someNamed(waiting)+" "+oneOrMany(len(waiting), "waits for an answer", "wait for an answer"))
	}
	if refused > 0 {
		parts = append(parts, fmt.Sprintf("%d could not be read", refused))
	}
	if asking > 0 {
		which := strconv.Itoa(asking)
		if asking > 1 && asking == len(all) {
			which = "all"
		}
		parts = append(parts, "the time zone of "+which+" is asked")
	}
	if noted > 0 {
		which := strconv.Itoa(noted)
		if noted == len(all) {
			which = oneOrMany(noted, "it", "all")
		}
		parts = append(parts, fmt.Sprintf("%s %s notes worth a look", which, oneOrMany(noted, "has", "have")))
	}
	switch {
	case len(all) == 0:
		return "No file is here yet. Drop the loggers' files on this window."
	case len(parts) == 0:
		return plural(fmt.Sprint(len(all)), "file was read; no question is open.", "files were read; no question is open.")
	}
	return plural(fmt.Sprint(len(all)), "file", "files") + ": " + strings.Join(parts, "; ") + "."
}

// someNamed names a few of some files, and says how many more there are.
func someNamed(names []string) string {
	if more := len(names) - mostNamed; more > 0 {
		return fmt.Sprintf("%s and %d more", strings.Join(names[:mostNamed], ", "), more)
	}
	return listed(names)
}

// oneOrMany is the form of a word for a number of things.
func oneOrMany(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

func (b Book) fileEntry(f engine.File) FileEntry {
	e := FileEntry{Name: f.Name, state: b.fileState(f)}
	e.State, e.Note = stateWords[e.state], stateWords[e.state]
	switch e.state {
	case fileFine:
		e.Note = listed(measuredBy(f))
	case fileWaits:
		e.Note = cmp.Or(shortQuestions[holdingQuestion(f)], e.Note)
	case fileAsks:
		e.Note = "in which time zone?"
	}
	e.Mark = [...]Mark{MarkAct, MarkAct, MarkWatch, MarkWatch, MarkGood}[e.state]
	return e
}

func (b Book) fileState(f engine.File) fileState {
	if f.Err != nil || f.Export == nil {
		return fileRefused
	}
	if waits(f) {
		return fileWaits
	}
	if b.asksZone(f.Name) {
		return fileAsks
	}
	if b.doubted(f.Name) || b.asksDistance(f) {
		return fileNoted
	}
	for _, n := range b.fileNotes(f) {
		if n.weight >= worthALook {
			return fileNoted
		}
	}
	return fileFine
}

// FilePage is everything the window shows of one file.
type FilePage struct {
	Name, Sentence string
	Mark           Mark
	State, Clock   string
	Encoding       string // for the lines round a note
	Questions      []FileQuestion
	Dismissals     []Dismissal // of a file that could not be taken
	Columns        FileColumns // where they can be grouped anew
	Answers        []FileAnswer
	Head           FileHead
	Plots          []FilePlot
	Loggers        []FileLogger
	Notes          []FileNoteLine
}

// File is what the window shows of a file; ok is false when the winter has no such file.
func (b Book) File(name string, u Units) (p FilePage, ok bool) {
	all := b.files()
	i := fileNamed(all, name)
	if i < 0 {
		return FilePage{}, false
	}
	f, e := all[i], b.fileEntry(all[i])
	p = FilePage{Name: name, Mark: e.Mark, State: e.State, Loggers: b.loggersOfFile(f, u), Answers: b.answered(f), Head: headOf(f, b.looked.heads[name])}
	if e.state == fileRefused {
		_, p.Sentence = Refusal(path.Base(name), f.Err)
		p.Dismissals = b.dismissals(f)
		return p, true
	}
	p.Sentence, p.Clock, p.Encoding = understood(f), b.clockWords(f), f.Export.Layout.Encoding
	p.Questions, p.Notes, p.Plots, p.Columns = b.questions(f, u), b.fileNotes(f), b.marked(plotsOf(f, u), f, p.Loggers), b.columns(f, u)
	return p, true
}

// understood is "Temperature and humidity every 15 min from 1 December 2024 00:00 to 31 December 2024 23:45, 2976 rows."
func understood(f engine.File) string {
	var loggers []string
	var first, last, interval int64
	for _, s := range f.Export.Series {
		if _, known := quantityWords[string(s.Quantity)]; !known || len(s.Val) == 0 {
			continue
		}
		sum := s.Summary()
		from, to := sum.FirstMS+sum.FirstOffsetMS, sum.LastMS+sum.LastOffsetMS
		if len(loggers) == 0 {
			first, last, interval = from, to, sum.IntervalMS
		}
		first, last = min(first, from), max(last, to)
		if !slices.Contains(loggers, s.Logger) {
			loggers = append(loggers, s.Logger)
		}
	}
	measured := measuredBy(f)
	rows := plural(number(float64(f.Export.Rows), 0), "row", "rows")
	if len(measured) == 0 {
		return rows + ", and nothing in them that could be used."
	}
	text := capital(listed(measured))
	if interval > 0 {
		text += " " + everyPhrase(interval)
	}
	if len(loggers) > 1 {
		text += fmt.Sprintf(", %d loggers", len(loggers))
	}
	if asksDates(f) {
		return text + ", " + rows + "; from when to when hangs on the answer below."
	}
	return text + " from " + faceWords(first) + " to " + faceWords(last) + ", " + rows + "."
}

// asksDates says whether from when to when a file goes hangs on an answer.
func asksDates(f engine.File) bool {
	return slices.ContainsFunc(questionIDs(f), func(id string) bool { return id == "day_month" || id == "day_zero" || id == "year" || id == firstDay })
}

// measuredBy is what a file measured, in words.
func measuredBy(f engine.File) (out []string) {
	for _, s := range f.Export.Series {
		if word, known := quantityWords[string(s.Quantity)]; known && len(s.Val) > 0 && !slices.Contains(out, word) {
			out = append(out, word)
		}
	}
	return out
}

// everyPhrase is "every 15 min", or "about every 30 min" for the 1807 s of a clock that drifts.
func everyPhrase(ms int64) string {
	if whole := (ms + 30_000) / 60_000 * 60_000; ms != whole && 50*max(ms-whole, whole-ms) <= ms {
		return "about every " + everyWords(whole)
	}
	return "every " + everyWords(ms)
}

// everyWords is an interval, "15 min", "hour".
func everyWords(ms int64) string {
	for _, unit := range []struct {
		ms        int64
		one, sign string
	}{{24 * series.HourMS, "day", "d"}, {series.HourMS, "hour", "h"}, {60_000, "minute", "min"}, {1000, "second", "s"}} {
		switch {
		case ms == unit.ms:
			return unit.one
		case ms%unit.ms == 0:
			return withUnit(number(float64(ms/unit.ms), 0), unit.sign)
		}
	}
	return withUnit(number(float64(ms)/1000, 1), "s")
}

// quantityWords name what is measured; what is not named here is not shown as understood.
var quantityWords = map[string]string{
	"air_temperature": "temperature", "surface_temperature": "surface temperature", "relative_humidity": "humidity", "dew_point": "dew point", "state": "state",
	"absolute_humidity": "water in the air", "humidity_deficit": "humidity deficit", "vapour_pressure_deficit": "vapour pressure deficit", "co2": "CO₂",
	"light": "light", "current": "current", "power": "power", "speed": "speed",
}

// orderWords say how dates are written.
var orderWords = map[string]string{
	"ymd": "year first", "dmy": "day first", "mdy": "month first", "doy": "as days of the year", "week": "as weeks of the year", "epoch_s": "as seconds since 1970", "epoch_ms": "as milliseconds since 1970", "serial": "as a spreadsheet's day numbers",
}

// clockWords say how the file's times were read and which zone stands behind them.
func (b Book) clockWords(f engine.File) string {
	c := f.Export.Layout.Clock
	var parts []string
	if word, known := orderWords[c.Order]; known && !slices.Contains(questionIDs(f), "day_month") {
		sure := ""
		if !c.OrderCertain {
			sure = " (most likely)"
		}
		parts = append(parts, "Dates are written "+word+sure+".")
	}
	switch {
	case c.Order == "epoch_s" || c.Order == "epoch_ms":
	case c.Zone != "" && c.ZoneSource == "answer":
		parts = append(parts, "Time zone "+c.Zone+", as you said.")
	case c.Zone != "":
		parts = append(parts, "Time zone "+c.Zone+", as the file says.")
	case c.ZoneSource == "file":
		parts = append(parts, "Each row names its distance from UTC.")
	default:
		parts = append(parts, "The file names no time zone. It is the winter's, "+b.doc.Zone+", unless the logger has one of its own.")
	}
	return strings.Join(parts, " ")
}
