package importers

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"thawbook/analysis/series"
)

// What a column without a telling name measures, its values may say: the humidity and the dew point of the air
// follow from each other at its temperature. In a table without a header, a number that may well be a temperature
// beside one that may well be a humidity are taken for that only when the keeper agrees.

// dewPointOf is the dew point in °C of air at a temperature in °C and a relative humidity, 0–1, by Magnus with
// the coefficients of WMO-No. 8 (2018), annex 4.B: good to 0.1 K in air that bees are in.
func dewPointOf(tempC, relHum float64) float64 {
	const a, b = 17.62, 243.12
	g := math.Log(relHum) + a*tempC/(b+tempC)
	return b * g / (a - g)
}

// The checks look at so many rows; in that share of them the dew point must come out within the printed digits of
// either, and a constant row proves nothing. Where it hardly ever does in the first of them the rest is not looked at.
const provingRows, fewProving, provingShare, provingK = 500, 20, 0.95, 0.6

// provesDewPoint says whether three columns are temperature, humidity and dew point of the same air, the humidity in
// percent or as a fraction and the others in a unit.
func provesDewPoint(t, h, d *values, unit string) bool {
	seen, right := 0, 0
	changes := false
	whole := 100.0
	if h.spread().high <= 1 {
		whole = 1
	}
	for i := range min(len(t.val), provingRows) {
		air := []float64{t.val[i], d.val[i]}
		hum := h.val[i] / whole
		if toCelsius(air, unit); air[0] != air[0] || hum != hum || air[1] != air[1] {
			continue
		}
		seen++
		changes = changes || t.val[i] != t.val[0] && h.val[i] != h.val[0]
		if hum > 0.01 && hum <= 1.005 && math.Abs(air[0]) < 60 && math.Abs(dewPointOf(air[0], hum)-air[1]) <= provingK {
			right++
		}
		if seen == fewProving && 2*right < seen {
			return false
		}
	}
	return seen >= 3 && changes && float64(right) >= provingShare*float64(seen)
}

// temperatureUnits are those that dew points are proven in.
var temperatureUnits = []string{"degC", "degF", "K"}

// provenUnit is the unit in which a temperature, a humidity and a dew point of the file are of the same air; "" where
// none is, or there are no such columns.
func (s *scan) provenUnit() string {
	var t, h, d *values
	for i := range s.columns {
		if c := &s.columns[i]; t == nil && c.quantity == AirTemperature {
			t = c
		}
	}
	for i := range s.columns {
		switch c := &s.columns[i]; {
		case t == nil || c.logger != t.logger || len(c.val) != len(t.val):
		case h == nil && c.quantity == RelativeHumidity:
			h = c
		case d == nil && c.quantity == DewPoint:
			d = c
		}
	}
	if h == nil || d == nil {
		return ""
	}
	for _, unit := range temperatureUnits {
		if provesDewPoint(t, h, d, unit) {
			return unit
		}
	}
	return ""
}

// emptyWords are the words of names that say nothing of a column but that it is one.
var emptyWords = wordSet("field", "value", "val", "channel", "ch", "chan", "kanal", "column", "col", "data", "sensor", "input", "in", "analog", "ai", "var", "feld", "wert", "unnamed")

// namesSayNothing says whether the columns of numbers have names that but number them.
func (l *layout) namesSayNothing() bool {
	seen := 0
	for _, c := range l.columns {
		if c.kind != number {
			continue
		}
		seen++
		w := words(c.header)
		if len(w) == 0 || c.told || c.unit != "" || slices.ContainsFunc(w, func(k nameWord) bool { return !emptyWords[k.low] && !isDigit(k.low[0]) }) {
			return false
		}
	}
	return seen > 0 && !l.long
}

// findNameless says what columns measure whose names do not, and returns the question that is left.
func (s *scan) findNameless(answers Answers) (open []Question) {
	asked := false
	for _, rows := range s.byRows() {
		proven := proveDewPoint(rows)
		unclear := unclearColumns(rows)
		if !s.nameless && !s.unnamed && !s.untold(unclear) || proven {
			continue
		}
		t, h := likelyPair(unclear)
		if t == nil || answers[pairing] == pairsApart {
			continue
		}
		t.quantity, h.quantity = AirTemperature, RelativeHumidity
		takeMorePairs(unclear, t, h)
		sure := (s.nameless || s.unnamed) && surePair(rows, t, h) // names may be of two places
		asked = asked || answers[pairing] == "" && !sure
	}
	if asked {
		return []Question{{ID: pairing, Options: []string{pairsInOrder, pairsApart}}}
	}
	return nil
}

// takeMorePairs takes for pairs what stands as far apart as a pair, is printed as it is and changes as it does.
func takeMorePairs(columns []*values, t, h *values) {
	for left := columns; ; {
		left = slices.DeleteFunc(slices.Clone(left), func(c *values) bool { return c.quantity != Other })
		a, b := likelyPair(left)
		if a == nil || b.index-a.index != h.index-t.index || !a.isPrintedAs(t) || !b.isPrintedAs(h) {
			return
		}
		a.quantity, b.quantity = AirTemperature, RelativeHumidity
	}
}

// isPrintedAs says whether a column has as many digits as another and changes at least half as much.
func (c *values) isPrintedAs(other *values) bool {
	p, q := c.spread(), other.spread()
	return c.usualDecimals() == other.usualDecimals() && 2*(p.high-p.low) >= q.high-q.low
}

// unclearColumns are columns without those that measure something else than air by their names or units, as its pressure.
func unclearColumns(columns []*values) []*values {
	return slices.DeleteFunc(slices.Clone(columns), func(c *values) bool {
		return c.quantity == Other && (c.told || c.namesOther() || c.unit != "" && c.unit != "percent")
	})
}

// otherNames are the stems of names of which no values make a temperature or a humidity: what meters of electricity print,
// by their letters too.
var otherNames = []string{"meter*", "v", "i", "f", "p", "q", "s", "pf", "dpf", "apf", "va", "wh", "kwh", "volts", "*amps", "hertz", "hz", "cost*", "price*", "usage*", "consum*", "verbrauch*"}

// namesOther says whether a column's name is one of otherNames.
func (c *values) namesOther() bool { return anyPhrase(otherNames, words(c.header)) }

// leastSure is how many readings make it sure that the only two columns of a table that may be of air, both printed with
// fractions and changing as air does, are a temperature in °C and a humidity. Common practice, no source.
const leastSure = 12

// surePair says whether two columns are hardly anything else, and no other column can be one of them.
func surePair(columns []*values, t, h *values) bool {
	p, q := t.spread(), h.spread()
	return !rivalled(columns, t, h) && h.hasFractions() && q.low < q.high && p.low >= restingLow && p.high <= restingHigh && p.high-p.low >= leastChange && min(p.n, q.n) >= leastSure
}

// rivalled says whether a column beside two changes as air does and may be a temperature or a humidity as they are.
func rivalled(columns []*values, t, h *values) bool {
	return slices.ContainsFunc(columns, func(c *values) bool {
		p := c.spread()
		return c != t && c != h && p.high-p.low >= leastChange && !c.isBinary() && (c.mayBeTemperature() || c.mayBeHumidity() && p.isHumid())
	})
}

// restingLow and restingHigh are what air outdoors and around resting bees is between, in °C, and leastChange is how much
// it changes at least where a battery's voltage does not. Common practice, no source.
const restingLow, restingHigh, leastChange = -40, 28, 0.5

// untold says whether of some columns none has a unit, or a name that says what it measures.
func (s *scan) untold(columns []*values) bool {
	return !s.long && s.ends == nil && !slices.ContainsFunc(columns, func(c *values) bool {
		return c.told || c.namesOther() && !(len(columns) == 1 && c.isLoneF()) || c.unit != "" || c.quantity != Other
	})
}

// loneQuantity asks what the only column of numbers measures where its values may be those of air and nothing names it.
const loneQuantity = "quantity"

// loneQuantities are the answers.
var loneQuantities = []string{string(AirTemperature), string(RelativeHumidity), string(Other)}

// findLone says what the only columns of their rows measure where nothing names it, and returns the question that is
// left; none while it is open how the numbers are written.
func (s *scan) findLone(answers Answers, before []Question) (open []Question) {
	markOpen := slices.ContainsFunc(before, func(q Question) bool { return q.ID == decimalMark || q.ID == pairing })
	if t, h := s.loneByName(); len(h) > 0 && !markOpen && answers[loneQuantity] == "" {
		return takeKinds(t, h, answers)
	}
	for _, rows := range s.byRows() {
		if len(rows) > 0 && !markOpen && s.untold(rows) && (s.nameless || s.unnamed || rows[0].hasFractions()) {
			open = append(open, takeLone(rows, Quantity(answers[loneQuantity]), s.saidOfAll())...)
		}
	}
	if s.nameless {
		s.noteNameless()
	}
	if open = oneOfAll(open); len(open) > 0 && (s.hours != nil || s.clock.dates != nil) {
		open[0].Columns = nil // of the one series that all columns are
	}
	return open
}

// oneOfAll is the first of some questions, asked of the columns of all.
func oneOfAll(open []Question) []Question {
	if len(open) == 0 {
		return nil
	}
	for _, q := range open[1:] {
		for _, name := range q.Columns {
			if !slices.Contains(open[0].Columns, name) {
				open[0].Columns = append(open[0].Columns, name)
			}
		}
	}
	return open[:1]
}

// called is what columns are called, or their numbers where they have no names.
func called(columns []*values) (out []string) {
	for _, c := range columns {
		out = append(out, cmp.Or(c.header, strconv.Itoa(c.index+1)))
	}
	return out
}

// saidOfAll is the temperature or humidity that the file's name names, or the lines above the header with its unit;
// none where these name both, or two units.
func (s *scan) saidOfAll() (title column) {
	if q := quantityNamed(s.base); q != "" {
		return column{quantity: q}
	}
	for _, line := range s.preambleLines() {
		said := column{header: line}
		said.describe(nil)
		q := quantityNamed(line)
		if q == "" || q != said.quantity || said.unit == "" || said.statistic > average || countDigits([]byte(line)) > 0 || anyPhrase(unitNames, words(line)) {
			continue
		}
		if title.unit != "" && (title.quantity != q || title.unit != said.unit) {
			return column{}
		}
		title = said
	}
	return title
}

// loneByName are the only columns of the rows of each name that may well be temperatures, and those that may be humidities,
// where no name says what it is of, and each is one or the other; none of the latter otherwise.
func (s *scan) loneByName() (temps, hums []*values) {
	if s.keyed == nil {
		return nil, nil
	}
	for _, rows := range s.byRows() {
		if len(rows) != 1 || !s.untold(rows) {
			return nil, nil
		}
		c := rows[0]
		q, _ := quantityOf(words(c.logger), "")
		switch p := c.spread(); {
		case p.isHumid() && q == Other:
			hums = append(hums, c)
		case c.mayBeTemperature() && (q == Other || q == AirTemperature):
			temps = append(temps, c)
		default:
			return nil, nil
		}
	}
	if len(temps) == 0 {
		return nil, nil
	}
	return temps, hums
}

// takeKinds lets some columns be temperatures and others humidities unless the keeper says otherwise, and asks.
func takeKinds(temps, hums []*values, answers Answers) (open []Question) {
	if answers[pairing] == pairsApart {
		return nil
	}
	for _, c := range temps {
		c.quantity = AirTemperature
	}
	for _, c := range hums {
		c.quantity = RelativeHumidity
	}
	if answers[pairing] == "" {
		open = []Question{{ID: pairing, Options: []string{pairsInOrder, pairsApart}}}
	}
	return open
}

// takeLone lets columns of which none says what it measures, one alone or each under the name of a place, measure what
// the keeper answers or, where all may be that, is said of them all; else for the time being the first of what all may
// be, and asks.
func takeLone(columns []*values, answer Quantity, said column) []Question {
	options := quantitiesOfAir(columns[0].spread())
	for _, c := range columns[1:] {
		mine := quantitiesOfAir(c.spread())
		options = slices.DeleteFunc(options, func(o string) bool { return c.header == "" || !slices.Contains(mine, o) })
	}
	if answer == "" && slices.Contains(options, string(said.quantity)) {
		answer = said.quantity
	}
	if len(options) == 0 && answer == "" {
		return nil
	}
	for _, c := range columns {
		if c.quantity = cmp.Or(answer, Quantity(append(options, "")[0])); c.quantity == said.quantity && said.unit != "" {
			c.unit, c.unitFrom = said.unit, said.unitFrom
		}
		if c.quantity == AirTemperature && c.isLoneF() {
			c.unit, c.unitFrom = "degF", "header"
		}
	}
	if answer != "" {
		return nil
	}
	return []Question{{ID: loneQuantity, Options: options, Columns: called(columns)}}
}

// quantityNamed is the temperature or humidity that a file's name says it holds; "" where it says neither, or both.
func quantityNamed(title string) Quantity {
	said := map[Quantity]bool{}
	for _, w := range words(title) {
		if q, _ := quantityOf([]nameWord{w}, ""); len(w.low) >= shortestWord || w.low == "rh" {
			said[q] = true
		}
	}
	switch t, h := said[AirTemperature], said[RelativeHumidity]; {
	case t && !h:
		return AirTemperature
	case h && !t:
		return RelativeHumidity
	}
	return ""
}

// quantitiesOfAir are the answers to what values may be, by their spread: a temperature, in °C or °F; a humidity, in
// percent or as a fraction; or neither. nil where they can be none of the two, or never change.
func quantitiesOfAir(p spread) (out []string) {
	if p.n == 0 || p.low == p.high {
		return nil
	}
	if p.low >= -45 && p.high <= 113 || p.low > 200 && p.high < mostK {
		out = append(out, loneQuantities[0])
	}
	if p.isHumid() || p.low >= 0 && p.high <= 1 {
		out = append(out, loneQuantities[1])
	}
	if out == nil {
		return nil
	}
	return append(out, loneQuantities[2])
}

// byRows are the columns of numbers, those of the same rows together.
func (s *scan) byRows() (out [][]*values) {
	for i := range s.columns {
		c := &s.columns[i]
		if c.lead || len(out) == 0 {
			out = append(out, nil)
		}
		if c.kind == number && !c.extreme {
			out[len(out)-1] = append(out[len(out)-1], c)
		}
	}
	return out
}

// proveDewPoint looks for columns that are proven to be temperature, humidity and dew point where at least one of
// them has no telling name, and says whether it found them.
func proveDewPoint(columns []*values) bool {
	const most, leastF = 24, -80 // more columns are not worth the trials; no air is colder, in °F
	columns = slices.DeleteFunc(slices.Clone(columns), func(c *values) bool {
		p := c.spread()
		return c.quantity == Other && (c.isBinary() || p.low == p.high || p.low < leastF || p.high > mostK)
	})
	if len(columns) > most {
		return false
	}
	may := func(c *values, q Quantity) bool {
		return c.quantity == q || c.quantity == Other && !c.told && c.unit == "" || q == AirTemperature && c.isSurfaceSign()
	}
	for _, t := range columns {
		for _, h := range columns {
			for _, d := range columns {
				if t == h || t == d || h == d || !may(t, AirTemperature) || !may(h, RelativeHumidity) || !may(d, DewPoint) {
					continue
				}
				known := t.quantity == AirTemperature && h.quantity != Other && d.quantity != Other
				if !known && provenAs(t, h, d) {
					return true
				}
			}
		}
	}
	return false
}

// provenAs makes three columns temperature, humidity and dew point where some unit proves that they are.
func provenAs(t, h, d *values) bool {
	for _, unit := range temperatureUnits {
		if t.unit != "" && t.unit != unit || d.unit != "" && d.unit != unit || !provesDewPoint(t, h, d, unit) {
			continue
		}
		t.quantity, h.quantity, d.quantity = AirTemperature, RelativeHumidity, DewPoint
		t.takeProven(unit)
		d.takeProven(unit)
		if h.spread().high > 1 {
			h.takeProven("percent")
		}
		return true
	}
	return false
}

// takeProven gives a column the unit in which its values were proven.
func (c *values) takeProven(unit string) {
	if c.unit == "" {
		c.unit, c.unitFrom = unit, "values"
	}
}

// likelyPair are the two of the columns that may well be a temperature, in °C or °F, and a humidity in percent: the one
// with a fraction and changing, the other above it throughout. Of several such pairs it is the one side by side.
func likelyPair(columns []*values) (t, h *values) {
	found, side := 0, false
	for i, a := range columns {
		if !a.mayBeTemperature() {
			continue
		}
		low := a.spread()
		for k, b := range columns {
			high := b.spread()
			if b == a || !b.mayBeHumidity() || !high.isHumid() || high.low <= low.high {
				continue
			}
			beside := k == i+1
			if found++; t == nil || beside && !side {
				t, h, side = a, b, beside
			}
		}
	}
	if found > 1 && !side {
		return nil, nil
	}
	return t, h
}

// isHumid says whether values may well be humidities in percent; what never changes proves nothing.
func (p spread) isHumid() bool {
	return p.n > 0 && p.low < p.high && p.low >= 5 && p.high <= 100.5 && p.mid >= 30
}

// mayBeTemperature says whether nothing speaks against a column being one of the air.
func (c *values) mayBeTemperature() bool {
	p := c.spread()
	return (c.quantity == Other && c.unit == "" || c.quantity == AirTemperature) && c.hasFractions() && p.low >= -45 && p.high <= 113 && p.low < p.high
}

// mayBeHumidity says whether no name and no other unit than percent speak against a column being one.
func (c *values) mayBeHumidity() bool {
	return c.quantity == Other && (c.unit == "" || c.unit == "percent")
}

// noteNameless remarks the columns without a name that nothing tells the meaning of, all in one.
func (s *scan) noteNameless() {
	var numbers []string
	for i := range s.columns {
		c := &s.columns[i]
		if at := strconv.Itoa(c.index + 1); c.kind == number && c.quantity == Other && c.unit == "" && !slices.Contains(numbers, at) {
			numbers = append(numbers, at)
		}
	}
	if len(numbers) > 0 {
		s.notes.add(series.Remark{Code: RemarkNameless, Line: s.layout.line, Args: []string{strings.Join(numbers, ", ")}})
	}
}
