package importers

import (
	"slices"
	"strings"
)

// learnColumns says how each column is read and what it measures.
func (l *layout) learnColumns(rows []record, names, units []string) {
	l.learnKeys(rows, names)
	l.learnSides(rows, names)
	split := indexOfPart(names, 0) >= 0 && indexOfPart(names, 1) >= 0 && indexOfPart(names, 2) >= 0
	letters, graded, legend := sharedLetters(names), bareNames(names), l.legend()
	hours, across := l.clock.hoursOf(names)
	for i := range l.width {
		if l.clock.uses(i) || l.isSideClock(i) || isGrade(graded, names, i) {
			continue
		}
		c := column{index: i}
		if i < len(names) {
			c.header = names[i]
		}
		c.describe(units)
		c.withoutLetter(letters)
		l.describeBeside(&c, legend)
		if _, hour := hours[i]; split && isClockPart(c.header) && !(across && hour) || isCount(c.header) || l.clock.zoneAt == i+1 || isSecondClock(rows, names, i) {
			continue
		}
		switch c.kind = l.kindOf(rows, &c); c.kind {
		case ordinal:
			l.ordinals++
			continue
		case skipped:
			continue
		}
		l.columns = append(l.columns, c)
	}
	l.settleNames()
	l.keepValues()
	l.learnRuns(rows, names)
	l.learnEvents(rows, names)
	l.learnHours(names)
	l.takeTitle()
	l.settleStatistics(rows)
	l.dropFlags(rows, names)
	l.dropFormerStates()
	l.findDevice(rows)
	l.pruneDevices(rows)
	l.dropDevicesOfVariables(rows)
}

// describeBeside adds what a legend, the cells beside a column's and those under its name say of it.
func (l *layout) describeBeside(c *column, legend map[string]string) {
	if said := legend[channelKey(c.header)]; said != "" {
		c.explain(said)
	}
	if unit := l.beside[c.index]; unit != "" && c.unit == "" {
		c.takeUnit(unit, "column")
	}
	l.describeUnder(c)
}

// describe reads a column's name: its unit, and the quantity.
func (c *column) describe(units []string) {
	header, divisor := cutDivisor(c.header)
	c.divisor = divisor
	c.name, c.unit = cutUnit(header)
	if c.unit != "" {
		c.unitFrom = "header"
	} else if c.index < len(units) {
		if c.unit = unitInCell(units[c.index]); c.unit != "" {
			c.unitFrom = "units_row"
		} else if inner := strings.Trim(units[c.index], "()[] "); looksLikeUnit(inner) {
			c.unit, c.unitFrom = inner, "units_row"
		}
	}
	if unit := unitBeforeStatistic(c.name); c.unit == "" && unit != "" {
		c.unit, c.unitFrom = unit, "header"
	}
	c.understand()
}

// understand reads what a column's name without its unit says.
func (c *column) understand() {
	w := words(c.name)
	var used []bool
	c.quantity, used = quantityOf(w, c.unit)
	switch {
	case len(w) != 1:
	case c.quantity == Other && c.unit == "percent" && humidityInitials[w[0].low]:
		c.quantity, used[0] = RelativeHumidity, true
	case w[0].low == "set": // what is called for
		c.quantity, used[0] = Other, true
	}
	c.told = slices.Contains(used, true)
	if n := len(withoutStatistics(w)); n > 1 && c.unit != "" && wordUnits[w[n-1].low] == c.unit {
		used[n-1] = true
	}
	c.whole = leftOver(w, used)
	c.statistic, c.perhaps = statisticOf(w, used)
	c.liken(leftOver(w, used))
	if c.unit != "" && unitOf(c.header) == c.unit { // its name is its unit
		c.liken("")
	}
	if c.unit == "%RH" {
		c.unit = "percent"
	}
}

// withoutLetter takes a letter at the end of the name for no unit where it ends the names of other quantities.
func (c *column) withoutLetter(letters map[string]bool) {
	w := words(c.header)
	if n := len(w); c.unitFrom == "header" && n > 1 && letters[w[n-1].low] && !strings.ContainsAny(c.header, "°º([{") {
		c.name, c.unit, c.unitFrom = c.header, "", ""
		c.understand()
	}
}

// describeUnder reads a column's name together with the name of its group above the header and the word for a
// statistic below the units.
func (l *layout) describeUnder(c *column) {
	if c.index < len(l.statistics) && c.statistic == reading {
		w := words(l.statistics[c.index])
		c.statistic, _ = statisticOf(w, make([]bool, len(w)))
	}
	if c.index >= len(l.groups) {
		return
	}
	said := column{header: joined(l.groups[c.index], c.header)}
	said.describe(nil)
	if !c.told && said.told || said.quantity == DewPoint {
		c.quantity, c.told, c.statistic, c.perhaps = said.quantity, said.told, said.statistic, said.perhaps
		c.whole = said.whole
		c.liken(said.likeness)
		return
	}
	if w := words(l.groups[c.index]); c.statistic == reading {
		used := make([]bool, len(w))
		c.statistic, c.perhaps = statisticOf(w, used)
		c.whole = joined(l.groups[c.index], c.whole)
		c.liken(joined(leftOver(w, used), c.likeness))
		return
	}
	c.whole = joined(l.groups[c.index], c.whole)
	c.liken(joined(l.groups[c.index], c.likeness))
}

// liken sets what a name has beside its quantity.
func (c *column) liken(name string) { c.likeness, c.same = name, sameName(name) }

// leftOver is what remains of a name without the words of its quantity and unit.
func leftOver(name []nameWord, used []bool) string {
	rest, kept := "", -1
	for i, w := range name {
		if plainWords[w.low] || w.low == "air" && slices.Contains(used, true) {
			continue
		}
		if _, isUnit := wordUnits[w.low]; !used[i] && !(isUnit && i == len(name)-1 && i > 0 && len(w.low) > 1) {
			if rest != "" && !(w.joined && kept == i-1) {
				rest += " "
			}
			rest += w.typed
			kept = i
		} else if part := compoundPart(w.typed); used[i] && part != "" {
			rest = joined(rest, part)
		}
	}
	return rest
}

// compounds are the words that end others in one word with a place (innentemperatur), lower case; plainParts are
// what stands before them and names no place, and plainWords what stands anywhere and names none.
var (
	compounds  = []string{"temperat", "l\u00e4mp\u00f6til", "feucht", "fukt", "fugt", "kosteus", "niiskus", "vochtig"}
	plainWords = wordSet("hourly", "daily", "value", "val", "reading", "wert", "messwert")
	plainParts = wordSet("luft", "lucht", "luchts", "raum", "\u00f5hu", "ilman", "ilma", "umgebungs", "relativ", "relative", "rel", "absolut", "mittel", "medel", "middel", "durchschnitts", "trocken", "minimum", "minimal", "min", "minimi", "maximum", "maximal", "max", "maks", "maksimum", "maksimi", "h\u00f6chst", "tiefst")
)

// compoundPart is the place that stands in one word with a quantity.
func compoundPart(typed string) string {
	low := strings.ToLower(typed)
	for _, c := range compounds {
		if at := strings.Index(low, c); at > 1 && at < len(typed) && !plainParts[low[:at]] {
			return typed[:at]
		}
	}
	return ""
}

// kindOf says how a column is read, by its cells and its name.
func (l *layout) kindOf(rows []record, c *column) columnKind {
	t := l.tally(rows, c.index)
	name := words(c.header)
	switch {
	case anyPhrase(flagNames, name) && l.givesVerdicts(rows, c):
		return grading
	case anyPhrase(flagNames, name):
		return skipped
	case l.keyKindOf(c.index) != skipped:
		return l.keyKindOf(c.index)
	case t.isIndex && t.glued == 0 && (c.index == 0 || anyPhrase(indexNames, name)) && c.quantity == Other:
		return ordinal
	case t.isDevice(rows) && 2*t.filled >= len(rows) && t.fractions == 0 && namesDevice(name, t.numbers == t.filled) && c.quantity == Other && c.unit == "" && l.comesAgain(rows, c.index):
		return device
	case len(t.distinct) == 1 && t.filled == len(rows) && t.numbers == t.filled && t.fractions == 0 && (anyPhrase(identifiers, name) || t.states == t.filled && c.unit == "" && c.quantity == Other && namesDevice(name, true)):
		return ordinal // one logger, numbered 1, is called as its file
	case t.filled == 0 && c.told && anyPhrase(codeNames, name):
		return skipped
	case t.filled == 0:
		return vacant
	case 2*t.tenths > t.filled && isTemperature(c.quantity) && l.mark == '.':
		c.graded = true
		if c.unit == "" {
			c.takeUnit("degC", "values")
		}
		return number
	case 2*t.graded > t.filled && c.told && l.mark == '.':
		c.garbled = true
		return number
	case 2*t.graded > t.filled && l.delimiter == ",":
		return skipped
	case l.long && c.quantity == Other && 2*t.values > t.filled:
		return number
	case t.states == t.filled && c.unit == "" && c.namesState(t.numbers < t.filled && !t.areLetters() && !t.isWell()):
		c.quantity = State
		return state
	case 3*t.numbers >= t.filled:
		if c.unit == "" && 2*t.glued >= t.numbers && t.gluedUnit != "" {
			c.takeUnit(t.gluedUnit, "values")
		}
		return number
	case c.told && quantityUnitSets[c.quantity] != "" && 2*t.digits >= t.filled && !anyPhrase(codeNames, name):
		c.garbled = true
		return number
	}
	return skipped
}

// namesState says whether a column of nothing but states is one: by words among its cells, or by its name
// where they are 0 and 1.
func (c *column) namesState(inWords bool) bool {
	name := words(c.header)
	return inWords || anyPhrase(contactNames, name) || c.quantity == Other && anyPhrase(stateNames, name)
}

// takeUnit takes a unit that the cells themselves carry, or those of another column.
func (c *column) takeUnit(unit, from string) {
	c.unit, c.unitFrom = unit, from
	c.quantity, _ = quantityOf(words(c.name), unit)
	if c.unit == "%RH" {
		c.unit = "percent"
	}
}

// bareNames are names without their units.
func bareNames(names []string) map[string]bool {
	out := map[string]bool{}
	for _, n := range names {
		name, _ := cutUnit(n)
		out[name] = true
	}
	return out
}

// isGrade says whether a column is named after another with a Q before its name, and so grades it.
func isGrade(bare map[string]bool, names []string, i int) bool {
	return i < len(names) && len(names[i]) > 1 && names[i][0] == 'Q' && bare[names[i][1:]]
}

// isClockPart says whether a column is named as a part of a time in columns of their own.
func isClockPart(header string) bool {
	for part := range partNames {
		if isPart(header, part) {
			return true
		}
	}
	return false
}

// isCount says whether a column is named as a count of time beside the clock.
func isCount(header string) bool {
	w := words(header)
	return len(w) == 1 && hasAnyPrefix(w[0].low, []string{"epoch", "timestamp", "unix"})
}

// learnZone looks for the zone in the clock's names and what stands for their unit, then in a column of its own, then
// above the table.
func (l *layout) learnZone(names, units []string) {
	for _, row := range [][]string{names, units} {
		for _, i := range l.clock.columns {
			if i < len(row) && l.zone == "" {
				l.zone = zoneInName(row[i])
			}
		}
	}
	if l.zone == "" {
		l.zone = l.clock.zone
	}
	if l.zone == "" {
		l.zone, l.offset = zoneAbove(l.preamble)
	}
}

// learnPageUnit looks for one temperature unit named in the lines above the header.
func (l *layout) learnPageUnit() {
	found := map[string]bool{}
	for _, r := range l.preamble {
		for _, part := range partsOfObject(text(r.text)) {
			key, value := keyValue(part)
			if unit := unitOf(value); anyPhrase(unitNames, words(key)) && unitFits(AirTemperature, unit) && unit != "" {
				found[unit] = true
			}
		}
		for _, w := range words(text(r.text)) {
			if w.low == "fahrenheit" {
				found["degF"] = true
			}
			if w.low == "celsius" || w.low == "centigrade" {
				found["degC"] = true
			}
		}
	}
	if len(found) == 1 {
		for unit := range found {
			l.pageUnit = unit
		}
	}
}

// partsOfObject are the parts of a line that opens an object, and other lines whole.
func partsOfObject(line string) []string {
	if !opensObject([]byte(line)) || len(line) > longestHead {
		return []string{line}
	}
	parts := strings.Split(line, ",")
	for i, p := range parts {
		parts[i] = strings.TrimLeft(p, "{[ ")
	}
	return parts
}

// longestHead is how long what stands before the readings of an object is at most, to be looked through.
const longestHead = 2000

// keyValue cuts a line like "Time zone: UTC+2" or "Time zone,UTC+2".
func keyValue(line string) (key, value string) {
	line = strings.TrimLeft(line, "#;!% ")
	at := strings.IndexAny(line, ":=;,\t")
	if at < 0 {
		return line, ""
	}
	return strings.Trim(line[:at], "\" "), strings.Trim(line[at+1:], "\",;: ")
}

func hasAnyPrefix(s string, prefixes []string) bool {
	for _, p := range prefixes {
		if strings.HasPrefix(s, p) {
			return true
		}
	}
	return false
}

func trimComment(name string) string { return strings.TrimLeft(name, "#% ") }
