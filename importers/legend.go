package importers

import (
	"bytes"
	"cmp"
	"strings"
)

// What a short name in the header means may stand above it, in a line of its own: "T : temperature (in 0.1 °C)".

// legend are what lines above the table say of names, by the name in lower case.
func (l *layout) legend() map[string]string {
	out := map[string]string{}
	for _, r := range l.preamble {
		key, value := keyBefore(r.text)
		key = channelKey(key)
		if w := strings.Fields(key); value != "" && len(w) > 0 {
			out[w[len(w)-1]] = cmp.Or(out[w[len(w)-1]], value) // a number or a place may stand before the name
			out[key] = cmp.Or(out[key], value)
		}
	}
	return out
}

// keyBefore cuts a line of a legend: at a tab or the first of several blanks, else as keyValue does.
func keyBefore(line []byte) (key, value string) {
	line = trim(line)
	for _, mark := range []string{"\t", "  "} {
		if before, behind, found := bytes.Cut(line, []byte(mark)); found && !bytes.ContainsAny(before, ":=;,") {
			return text(before), strings.TrimLeft(text(behind), "=: ")
		}
	}
	return keyValue(text(line))
}

// channelWords begin the names of channels that but number them.
var channelWords = wordSet("channel", "ch", "chan", "kanal", "canal", "voie", "sensor", "input")

// channelKey is a name in lower case; one that but numbers a channel is the same however it is written.
func channelKey(name string) string {
	if w := words(name); len(w) == 2 && channelWords[w[0].low] && isDigit(w[1].low[0]) {
		return "ch " + strings.TrimLeft(w[1].low, "0")
	}
	return strings.ToLower(name)
}

// explain takes from a legend what the column's own name does not say; what a sign means the legend knows better.
func (c *column) explain(legend string) {
	said := column{header: legend}
	said.describe(nil)
	sign := len(c.name) < shortestWord && said.told
	if !c.told && said.quantity != Other || sign {
		c.quantity, c.told = said.quantity, true
	}
	if c.unit == "" && (said.unit != "") && unitFits(c.quantity, said.unit) {
		c.unit, c.unitFrom, c.divisor = said.unit, "header", said.divisor
	}
}

// divisors are the ways to say that whole numbers stand for tenths or hundredths of the unit behind.
var divisors = []struct {
	by        float64
	spellings []string
}{
	{100, []string{"0.01", "0,01", "1/100", "hundredths of", "hundredth"}},
	{10, []string{"0.1", "0,1", "1/10", "tenths of", "tenth", "zehntel"}},
}

// factors end the names of columns whose values were made whole numbers by one.
var factors = []struct {
	by       float64
	spelling string
}{{100, "x100"}, {10, "x10"}, {100, "*100"}, {10, "*10"}}

// unitStarts begin the units that a divisor may stand before, lower case.
var unitStarts = []string{"°", "º", "deg", "grad", "c", "f", "k", "%", "per", "pro"}

// cutDivisor takes the divisor out of a name.
func cutDivisor(header string) (rest string, by float64) {
	low := strings.ToLower(header)
	if len(low) != len(header) {
		return header, 0
	}
	for _, f := range factors {
		if name := strings.TrimRight(header, ")] "); strings.HasSuffix(strings.ToLower(name), f.spelling) && len(name) > len(f.spelling) {
			return strings.TrimRight(name[:len(name)-len(f.spelling)], "([_ "), f.by
		}
	}
	for _, d := range divisors {
		for _, s := range d.spellings {
			at := strings.Index(low, s)
			if at > 0 && !isDigit(low[at-1]) && hasAnyPrefix(strings.TrimLeft(low[at+len(s):], " "), unitStarts) {
				return header[:at] + strings.TrimLeft(header[at+len(s):], " "), d.by
			}
		}
	}
	return header, 0
}

// divide takes the values of a column to its unit, their printed digits with them.
func (c *values) divide() {
	if c.divisor == 0 {
		return
	}
	for i := range c.val {
		c.val[i] /= c.divisor
	}
	c.changed()
	for by := c.divisor; by > 1; by /= 10 {
		copy(c.decimals[1:], c.decimals[:len(c.decimals)-1])
		c.decimals[0] = 0
	}
}

// sharedLetters are the letters of temperature's units that end names of other quantities, as in rain_F beside
// temp_F: there they name something else than a unit.
func sharedLetters(names []string) map[string]bool {
	out := map[string]bool{}
	for _, name := range names {
		w := words(name)
		if len(w) < 2 || unitOf(name) != "" || !strings.Contains(" c f k ", " "+w[len(w)-1].low+" ") {
			continue
		}
		if q, _ := quantityOf(w[:len(w)-1], ""); q != Other && !isTemperature(q) {
			out[w[len(w)-1].low] = true
		}
	}
	return out
}
