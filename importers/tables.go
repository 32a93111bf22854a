package importers

import (
	"bytes"
	"context"
	"maps"
	"slices"
	"strings"
)

// A file may hold several tables one below the other, each under its header and often under a title that
// names its logger. Each is learned and scanned by itself.

// maxTables is how many tables of a file are told apart; it bounds what learning takes.
const maxTables = 64

// tables reads a file table by table.
type tables struct {
	ctx   context.Context
	src   *source
	name  string
	quick bool
	notes *notes
	scans []*scan
}

// read reads all tables; only the first one's refusal is the file's.
func (t *tables) read() error {
	l, err := learn(t.src.buf, t.src.eof, t.name)
	if err != nil {
		return err
	}
	for l != nil {
		s := t.scan(l)
		if l, err = t.table(s); err != nil {
			return err
		}
		s.gather()
	}
	return nil
}

// scan starts the scan of a table. What the tables above said of the zone holds on.
func (t *tables) scan(l *layout) *scan {
	l.line += t.src.line - 1
	s := newScan(l, t.notes)
	if !t.quick {
		s.steps = nil
	}
	s.base = fileTitle(t.name)
	s.title, _ = titleIn(l.preambleLines())
	if n := len(t.scans); n > 0 {
		above := t.scans[n-1]
		s.title = above.nextTitle
		if l.zone == "" {
			l.zone, l.offset = above.zone, above.offset
		}
	}
	if len(t.scans) == 0 && s.steps != nil {
		s.expect(t.src.rowsExpected(l.start))
	}
	t.scans = append(t.scans, s)
	s.alone = len(t.scans) == maxTables
	return s
}

// preambleLines are the lines above the header.
func (l *layout) preambleLines() []string {
	out := make([]string, len(l.preamble))
	for i, r := range l.preamble {
		out[i] = text(r.text)
	}
	return out
}

// table scans up to the next table, which it returns, or to the end of the text.
func (t *tables) table(s *scan) (next *layout, err error) {
	used := s.start + s.run(t.src.buf[s.start:], t.src.eof)
	for {
		if err := t.src.consume(used); err != nil {
			return nil, err
		}
		if len(t.src.buf) == 0 && t.src.eof {
			return nil, nil
		}
		if err := t.ctx.Err(); err != nil {
			return nil, err
		}
		if s.ended {
			if next, err = learn(t.src.buf, t.src.eof, t.name); err == nil && next.isTable() {
				s.pending = slices.DeleteFunc(s.pending, func(bad badLine) bool { return bad.above })
				return next, nil
			}
			s.deny()
		}
		used = s.run(t.src.buf, t.src.eof)
	}
}

// deny takes the line that ended the table for one of its own; after some such lines no more are looked at.
func (s *scan) deny() {
	s.ended, s.denied = false, s.line
	s.denials++
	s.alone = s.alone || s.denials == maxDenials
}

// maxDenials bounds what is learned in vain.
const maxDenials = 8

// isTable says whether the header of a layout names a quantity or a unit: a remark among the rows names none.
func (l *layout) isTable() bool {
	return l.long || slices.ContainsFunc(l.columns, func(c column) bool { return c.told || c.unit != "" || c.quantity == State })
}

// export puts the tables' exports together.
func (t *tables) export(answers Answers) *Export {
	answers = settleAnswers(answers, t.notes)
	shared := t.sharedOrder(answers)
	var out *Export
	for _, s := range t.scans {
		if len(t.scans) == 1 {
			s.title = ""
		}
		e := s.export(t.name, t.src.encoding, s.withOrder(shared, answers))
		if out == nil {
			out = e
		} else {
			out.join(e)
		}
	}
	out.Tables = len(t.scans)
	out.Remarks = t.notes.list
	return out
}

// sharedOrder is the order of dates that one of several tables' content decides, which holds for those whose content does
// not; "" where none does, or the keeper did.
func (t *tables) sharedOrder(answers Answers) order {
	if len(t.scans) == 1 || answers[dayMonth] != "" {
		return ""
	}
	for _, s := range t.scans {
		if o, certain := s.tellsOrder(); certain {
			return o
		}
	}
	return ""
}

// tellsOrder is the order of a table's unsure dates that its content decides.
func (s *scan) tellsOrder() (o order, certain bool) {
	if !s.clock.unsure() {
		return "", false
	}
	return chooseOrder(fitsOf(s.at, s.clock.form.orders))
}

// withOrder is the answers with an order of dates where the table does not tell its own.
func (s *scan) withOrder(shared order, answers Answers) Answers {
	if shared == "" {
		return answers
	}
	if _, certain := s.tellsOrder(); certain {
		return answers
	}
	with := maps.Clone(answers)
	with[dayMonth] = string(shared)
	return with
}

// join adds a further table: its series behind those of the same logger, its questions where they are new.
func (e *Export) join(more *Export) {
	e.least, e.most = min(e.least, more.least), max(e.most, more.most)
	e.Rows += more.Rows
	e.BadTime += more.BadTime
	for _, s := range more.Series {
		at := len(e.Series)
		for i, k := range e.Series {
			if k.Logger == s.Logger {
				at = i + 1
			}
		}
		e.Series = slices.Insert(e.Series, at, s)
	}
	for _, q := range more.Questions {
		if !slices.ContainsFunc(e.Questions, func(k Question) bool { return k.ID == q.ID }) {
			e.Questions = append(e.Questions, q)
		}
	}
	if e.Layout.DecimalMark == "" {
		e.Layout.DecimalMark = more.Layout.DecimalMark
	}
}

// isHeaderLine says whether a line within the rows is the header of a table: words alone, one of which names
// a time.
func isHeaderLine(cells [][]byte) bool {
	timed := false
	for _, c := range cells {
		c = trim(c)
		if len(c) > 0 && isDigit(c[0]) || isNumber(c, '.') {
			return false
		}
		name := words(text(c))
		timed = timed || anyPhrase(clockNames, name) && len(name) <= 6
	}
	return timed && filledCells(cells) > 1
}

// isHeaderAnyhow says whether a line is a header where it is cut in one of the ways to keep cells apart: a read-out of
// another program may be cut otherwise.
func isHeaderAnyhow(line []byte) bool {
	if len(line) == 0 || isDigit(line[0]) {
		return false
	}
	for _, d := range delimiters {
		if d.name == "blanks" || !bytes.Contains(line, []byte(d.name)) {
			continue
		}
		if cells, _ := d.split.quoted(nil, line, maxColumns+1); isHeaderLine(cells) {
			return true
		}
	}
	return false
}

// titleKeys are the stems of what stands before a colon where the rest of the line is a logger's name.
var titleKeys = append([]string{"title*", "table*", "block*", "series*", "log", "titel", "tabelle*"}, deviceNames...)

// pageWords begin the lines that number pages, not tables, lower case.
var pageWords = []string{"page", "seite", "sida", "side ", "pagina", "lehe", "continued"}

// beginWords are the stems of what a line says of a log that begins or goes on, and names no logger.
var beginWords = []string{"started", "restart*", "reboot*", "resumed", "stopped", "gestartet", "neustart*", "startad*", "startet", "omstart*", "genstart*", "kaynnist*", "uudelleenkaynnist*", "demarre*", "redemarr*", "iniciado*", "reiniciad*", "avviat*", "riavvi*", "gestart", "herstart*", "uruchomion*", "spusten*", "запущен*"}

// titleOf is the logger's name in a line above a header; keyed says that the line has a word that leads to
// a name. Lines of several cells without such a word, and those that end or page a table, are no titles.
func titleOf(line string) (title string, keyed bool) {
	line = strings.Trim(line, "\"#-=*[];,\t\f ")
	if line == "" || hasAnyPrefix(strings.ToLower(line), slices.Concat(footWords, pageWords)) || anyPhrase(beginWords, words(line)) {
		return "", false
	}
	line = withoutPage(line)
	key, value := keyValue(line)
	switch {
	case value == "" && isPeriod(line):
		return "", false
	case value == "":
		return strings.TrimRight(line, ": "), false
	case anyPhrase(titleKeys, words(key)):
		return value, true
	}
	return "", false
}

// periodWords stand before the number of a week, a month or a year, lower case.
var periodWords = []string{"week*", "kw", "woche", "vecka", "uge", "uke", "viikko", "nadal", "semaine", "semana", "settimana", "tydzien", "month*", "monat*", "manad", "maned", "mois", "mes", "mese", "year", "jahr", "ar", "an", "annee", "ano", "anno"}

// isPeriod says whether a line names a stretch of time and nothing else, as the sheets of a year are named.
func isPeriod(line string) bool {
	w := words(line)
	rest := slices.DeleteFunc(slices.Clone(w), func(k nameWord) bool { return isDigit(k.low[0]) || anyPhrase(periodWords, []nameWord{k}) })
	return isMonth([]byte(line)) || len(w) > 0 && len(rest) == 0 && !isDigit(w[0].low[0]) || len(w) == 1 && monthWords[w[0].low]
}

// monthWords are months that may stand alone, lower case without accents: a beginning may be a place's.
var monthWords = wordSet("january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december",
	"januar", "februar", "marz", "maerz", "mai", "juni", "juli", "oktober", "dezember", "januari", "februari", "mars", "maj", "augusti", "marts", "desember",
	"janvier", "fevrier", "avril", "juin", "juillet", "aout", "septembre", "octobre", "novembre", "decembre", "enero", "febrero", "marzo", "abril", "mayo", "junio", "julio", "agosto", "septiembre", "octubre", "noviembre", "diciembre",
	"gennaio", "febbraio", "aprile", "maggio", "giugno", "luglio", "settembre", "ottobre", "dicembre", "janeiro", "fevereiro", "marco", "maio", "junho", "julho", "setembro", "outubro", "novembro", "dezembro",
	"maart", "mei", "augustus", "tammikuu", "helmikuu", "maaliskuu", "huhtikuu", "syyskuu", "lokakuu", "marraskuu", "joulukuu", "jaanuar", "veebruar", "marts", "aprill", "oktoober", "detsember",
	"styczen", "luty", "marzec", "kwiecien", "wrzesien", "pazdziernik", "listopad", "grudzien", "январь", "февраль", "март", "апрель", "октябрь", "ноябрь", "декабрь")

// withoutPage is a line without the number of its page.
func withoutPage(line string) string {
	w := strings.Fields(line)
	for i := range len(w) - 1 {
		if slices.Contains(pageWords, strings.Trim(strings.ToLower(w[i]), "([,:-")) && isDigit(w[i+1][0]) {
			return strings.TrimRight(strings.Join(w[:i], " "), " -|,;")
		}
	}
	return line
}

// titleIn is the title among the lines above a header: the first that a word leads to, else the last.
func titleIn(lines []string) (title string, keyed bool) {
	for _, line := range lines {
		t, keyed := titleOf(line)
		if keyed {
			return t, true
		}
		if t != "" {
			title = t
		}
	}
	return title, false
}

// endsAt says whether a line without a time is the header of a next table: another header, or the same one
// below a title.
func (s *scan) endsAt(record []byte, same bool) bool {
	if s.alone || s.line == s.denied || s.rows == 0 || !isHeaderLine(s.cells) && !isHeaderAnyhow(record) {
		return false
	}
	var above []string
	for _, bad := range s.pending {
		above = append(above, bad.record)
	}
	s.nextTitle, _ = titleIn(above)
	if same && s.nextTitle == "" && s.line != s.below {
		return false
	}
	s.ended = true
	return true
}

// leaveTitles marks the lines above a header that came again: they are no rows.
func (s *scan) leaveTitles() {
	for i := range s.pending {
		s.pending[i].titled = s.pending[i].above
	}
}
