package importers

import (
	"slices"
	"strconv"
	"strings"
)

// What a column's name means may hang on the other names of the file.

// shortSigns are the signs of humidity that may mean something else where the file has another sign or word for it.
var shortSigns = wordSet("rv", "rf", "hr", "ur", "lf", "nem")

// settleNames settles what names mean by the other names of the file.
func (l *layout) settleNames() {
	l.leaveShortSigns()
	l.leaveOtherThings()
	l.takeDuctAir()
	l.leaveDepths()
	l.leaveOtherT()
	l.takeSensorTemperatures()
	l.takeLetters()
	l.takeMachineUnits()
	l.takeLetteredPairs()
	l.leaveSuffixes()
}

// leaveShortSigns takes a column for no humidity by such a sign where another one is called otherwise.
func (l *layout) leaveShortSigns() {
	short := func(c column) bool {
		return slices.ContainsFunc(words(c.name), func(w nameWord) bool { return shortSigns[w.low] })
	}
	if !slices.ContainsFunc(l.columns, func(c column) bool { return c.quantity == RelativeHumidity && c.told && !short(c) }) {
		return
	}
	for i := range l.columns {
		if c := &l.columns[i]; c.quantity == RelativeHumidity && c.unit == "" && short(*c) {
			c.quantity, c.told = Other, false
		}
	}
}

// leaveOtherThings takes temperatures of something else for none of the air's where another column is plainly the air's.
func (l *layout) leaveOtherThings() {
	ofOther := func(c column) bool { return c.quantity == AirTemperature && anyPhrase(otherThings, words(c.name)) }
	plain := func(c column) bool {
		return c.quantity == AirTemperature && c.told && !ofOther(c) && (c.same == "" || anyPhrase(airWords, words(c.name)))
	}
	if !slices.ContainsFunc(l.columns, plain) {
		return
	}
	for i := range l.columns {
		if c := &l.columns[i]; ofOther(*c) && !anyPhrase(airWords, words(c.name)) {
			c.quantity, c.told = Other, false
		}
	}
}

// takeDuctAir takes what is called by one of pipeNames for the temperature of air where a humidity bears the rest of its
// name: Supply temp beside Supply RH.
func (l *layout) takeDuctAir() {
	humid := map[string]bool{}
	for _, c := range l.columns {
		humid[c.same] = humid[c.same] || c.quantity == RelativeHumidity
	}
	for i := range l.columns {
		c := &l.columns[i]
		w := words(c.name)
		if c.quantity != Other || c.kind != number || !anyPhrase(pipeNames, w) {
			continue
		}
		place := joinedWords(slices.DeleteFunc(w, func(k nameWord) bool {
			q, _ := quantityOf([]nameWord{k}, "")
			return q == AirTemperature
		}))
		if place != "" && humid[sameName(place)] && unitFits(AirTemperature, c.unit) {
			c.quantity, c.told = AirTemperature, true
			c.liken(place)
		}
	}
}

// leaveDepths takes a temperature with a negative height for its place for none of the air's where another one has none.
func (l *layout) leaveDepths() {
	isDepth := func(c column) bool {
		return c.quantity == AirTemperature && isHeight(words(c.same)) && isNegative(c.header)
	}
	if !slices.ContainsFunc(l.columns, func(c column) bool { return c.quantity == AirTemperature && !isDepth(c) }) {
		return
	}
	for i := range l.columns {
		if c := &l.columns[i]; isDepth(*c) {
			c.quantity, c.told = Other, false
		}
	}
}

// isNegative says whether a minus stands before the first digit of a name and parts it from no letter: T -10cm, not T-10cm.
func isNegative(name string) bool {
	at := strings.IndexAny(name, "0123456789")
	before := strings.TrimRight(name[:max(at, 0)], " ")
	bare := strings.TrimRight(before, "-−–")
	return len(bare) < len(before) && (bare == "" || strings.ContainsAny(bare[len(bare)-1:], " _([,:"))
}

// mostSensors is more than are numbered without the number before them. Common practice, no source.
const mostSensors = 5

// leaveOtherT takes a T that is told from a bare T beside it by a small letter for a time (tR), and by the number of a depth or
// a height (T10), not the next of several, for no temperature of the air.
func (l *layout) leaveOtherT() {
	named := map[string]bool{}
	for _, c := range l.columns {
		named[c.header] = true
	}
	for i := range l.columns {
		c := &l.columns[i]
		w := words(c.header)
		if !named["T"] || c.quantity != AirTemperature || len(w) != 2 || w[0].low != "t" || !w[1].joined {
			continue
		}
		n, err := strconv.Atoi(w[1].low)
		if err != nil && w[0].typed == "t" && len(w[1].typed) == 1 || n >= mostSensors && !named["T"+strconv.Itoa(n-1)] {
			c.quantity = Other
		}
	}
}

// takeSensorTemperatures takes columns for the temperature of a sensor of humidity whose names are those of humidities with
// a word for temperature before them: tempRH beside RH. Beside a temperature of the air they are none of it.
func (l *layout) takeSensorTemperatures() {
	humid, measured := map[string]bool{}, AirTemperature
	for _, c := range l.columns {
		if c.quantity == AirTemperature {
			measured = Other
		}
		if c.quantity == RelativeHumidity && !beginsWarm(words(c.name)) {
			humid[c.same] = true
		}
	}
	for i := range l.columns {
		c := &l.columns[i]
		w := words(c.name)
		if c.quantity != RelativeHumidity || c.unit != "" || !beginsWarm(w) {
			continue
		}
		rest := column{header: joinedWords(w[1:])}
		if rest.describe(nil); humid[rest.same] {
			c.quantity, c.whole = measured, rest.whole
			c.liken(rest.likeness)
		}
	}
}

// beginsWarm says whether a word for temperature stands before others.
func beginsWarm(name []nameWord) bool {
	return len(name) > 1 && (name[0].low == "t" || strings.HasPrefix(name[0].low, "temp"))
}

// joinedWords are words with blanks between.
func joinedWords(w []nameWord) string {
	var typed []string
	for _, k := range w {
		typed = append(typed, k.typed)
	}
	return strings.Join(typed, " ")
}

// leaveSuffixes takes a letter behind a temperature's name for no place where it stands behind other quantities' names
// too, and the humidity bears none: TA_F and VPD_F beside RH.
func (l *layout) leaveSuffixes() {
	humid, others := map[string]bool{}, map[string]bool{}
	for _, c := range l.columns {
		switch c.quantity {
		case AirTemperature:
		case RelativeHumidity:
			humid[c.same] = true
		default:
			others[c.same] = others[c.same] || c.told
		}
	}
	for i := range l.columns {
		c := &l.columns[i]
		if c.quantity == AirTemperature && len(c.same) == 1 && isLetter(c.same[0]) && others[c.same] && humid[""] && !humid[c.same] {
			c.liken("")
		}
	}
}

// sideWords are places of which none is one of several.
var sideWords = wordSet("in", "out", "inside", "outside", "indoor", "outdoor", "indoors", "outdoors", "ambient")

// takeLetters takes the letter of a unit at the end of a place's name for one where temperatures of the file are named
// so: Barn Temp F, Outside F.
func (l *layout) takeLetters() {
	letters := map[string]string{}
	l.takeLettersOfPlaces()
	for _, c := range l.columns {
		if w := words(c.header); isTemperature(c.quantity) && c.unitFrom == "header" && len(w) > 1 && wordUnits[w[len(w)-1].low] == c.unit {
			letters[w[len(w)-1].low] = c.unit
		}
	}
	for i := range l.columns {
		c := &l.columns[i]
		w := words(c.header)
		if n := len(w); c.quantity == Other && !c.told && c.unit == "" && n > 1 && sideWords[w[n-2].low] && letters[w[n-1].low] != "" {
			c.unit, c.unitFrom = letters[w[n-1].low], "header"
			c.understand()
		}
	}
}

// takeLettersOfPlaces takes a letter of °C or °F behind a name for the unit of a temperature where the rest of the name is
// a humidity's, no temperature bears it and no other letter stands behind it: Barn F beside Barn RH, and no Barn G.
func (l *layout) takeLettersOfPlaces() {
	humid := map[string]bool{}
	for _, c := range l.columns {
		humid[c.same] = humid[c.same] || c.quantity == RelativeHumidity
	}
	for _, c := range l.columns {
		humid[c.same] = humid[c.same] && c.quantity != AirTemperature
		if w := words(c.header); len(w) > 1 && len(w[len(w)-1].low) == 1 && wordUnits[w[len(w)-1].low] == "" {
			humid[sameName(joinedWords(w[:len(w)-1]))] = false
		}
	}
	for i := range l.columns {
		c := &l.columns[i]
		w := words(c.header)
		n := len(w)
		if c.kind != number || c.quantity != Other || c.told || c.unit != "" || n < 2 || w[n-1].typed != "C" && w[n-1].typed != "F" || !humid[sameName(joinedWords(w[:n-1]))] {
			continue
		}
		c.unit, c.unitFrom = unitOf(w[n-1].low), "header"
		c.quantity, c.told = AirTemperature, true
		c.liken(joinedWords(w[:n-1]))
	}
}

// takeMachineUnits takes a capital A or W behind the number of a machine for the unit of what it draws: fan 2 A.
func (l *layout) takeMachineUnits() {
	for i := range l.columns {
		c := &l.columns[i]
		w := words(c.header)
		n := len(w)
		if c.kind == number && c.unit == "" && n > 2 && isDigit(w[n-2].low[0]) && (w[n-1].typed == "A" || w[n-1].typed == "W") && anyPhrase(stateNames, w[:1]) {
			c.name, c.unit, c.unitFrom = strings.TrimSpace(strings.TrimSuffix(c.header, w[n-1].typed)), w[n-1].typed, "header"
			c.understand()
		}
	}
}
