package importers

import (
	"bytes"
	"slices"

	"thawbook/analysis/series"
)

// A list of events may say in words what happened: "Fan 1 started". What the words leave beside the state names
// what it is the state of. Words without a state, as an alarm's calls are, are kept as moments: the value 1.

// messageNames are the stems of columns that say in words what happened.
var messageNames = []string{"event*", "alarm*", "alert*", "message*", "msg", "call*", "text", "description*", "activity", "notification*", "log", "ereignis*", "meldung*", "anruf*", "nachricht*", "beschreibung*", "evenement*", "alerte*",
	"appel*", "evento*", "aviso*", "llamada*", "chiamata*", "larm*", "handelse*", "hendelse*", "halytys*", "tapahtum*", "zdarzen*", "melding*", "oproep*"}

// betweenWords are what stands between a name and its state and belongs to neither.
var betweenWords = wordSet("turned", "switched", "was", "were", "is", "has", "been", "set", "to", "went", "now", "wurde", "ist", "auf", "geht", "est", "a", "=", "->", "changed")

// eventState takes a text apart into the state its last or first word says and the words beside it.
func eventState(cell []byte) (v float64, subject []byte, ok bool) {
	if at := bytes.IndexByte(cell, '('); at > 0 && cell[len(cell)-1] == ')' {
		cell = cell[:at] // what else was so then
	}
	cell = bytes.Trim(cell, eventMarks)
	for _, last := range []bool{true, false} {
		word, rest := cutWord(cell, last)
		if len(rest) == 0 && !last || len(word) == 0 || isDigit(word[0]) {
			continue
		}
		if v, ok = parseState(word); ok {
			return v, withoutBetween(rest), true
		}
	}
	return 0, nil, false
}

// eventMarks are what may stand around the words of an event.
const eventMarks = " \t\"'.:;,!()[]-="

// cutWord takes the last word off a text, or the first.
func cutWord(s []byte, last bool) (word, rest []byte) {
	at := bytes.IndexAny(s, eventMarks)
	if last {
		at = bytes.LastIndexAny(s, eventMarks)
	}
	switch {
	case at < 0:
		return s, nil
	case last:
		return s[at+1:], bytes.TrimRight(s[:at], eventMarks)
	}
	return s[:at], bytes.TrimLeft(s[at:], eventMarks)
}

// withoutBetween takes the words that only lead to a state off both ends of a name.
func withoutBetween(s []byte) []byte {
	for _, last := range []bool{true, true, false} {
		if word, rest := cutWord(s, last); len(rest) > 0 && betweenWords[string(bytes.ToLower(word))] {
			s = rest
		}
	}
	return s
}

// learnEvents takes a column of words for events where no column holds values, however the cells are cut.
func (l *layout) learnEvents(rows []record, names []string) {
	if l.resort != wordEvents || l.hasValues() {
		return
	}
	for col := range l.width {
		c := column{index: col, told: true}
		if col < len(names) {
			c.header = names[col]
		}
		t := l.tally(rows, col)
		if l.isTaken(col) || t.filled == 0 || 2*t.numbers > t.filled {
			continue
		}
		said := count(rows, col, func(cell []byte) bool { _, _, ok := eventState(cell); return ok })
		switch {
		case 10*said >= 6*t.filled && said > 1:
			c.kind, c.quantity = event, State
		case anyPhrase(messageNames, words(c.header)):
			c.kind, c.quantity = message, Other
		default:
			continue
		}
		l.insert(c)
		return
	}
}

// hasValues says whether a column holds numbers, states or runs.
func (l *layout) hasValues() bool {
	return slices.ContainsFunc(l.columns, func(c column) bool { return c.holdsValues() })
}

// holdsValues says whether the cells of a column are readings of some kind.
func (c column) holdsValues() bool {
	return c.kind == number || c.kind == state || c.kind == runEnd || c.kind == event || c.kind == message
}

// eventCell reads a cell of words.
func (s *scan) eventCell(c *values, cell []byte) float64 {
	if c.kind == message {
		s.notes.add(series.Remark{Code: RemarkWords, Line: s.line, Column: c.index + 1, Args: []string{clip(text(cell)), c.header}})
		return 1
	}
	v, _, ok := eventState(cell)
	if !ok {
		return s.unreadableCell(c, cell)
	}
	return v
}
