package importers

import "strings"

// Loggers may be told apart by a letter written in one word with the sign of what is measured: TA, RHA, TB, RHB.

// letteredSigns are such signs, those that others begin with behind them.
var letteredSigns = []struct {
	sign     string
	quantity Quantity
}{{"temp", AirTemperature}, {"hum", RelativeHumidity}, {"rh", RelativeHumidity}, {"t", AirTemperature}, {"h", RelativeHumidity}}

// lettered is a name as the sign of a quantity and one letter behind it.
func lettered(name string) (q Quantity, letter string) {
	w := words(name)
	if len(w) != 1 {
		return Other, ""
	}
	for _, s := range letteredSigns {
		if rest, found := strings.CutPrefix(w[0].low, s.sign); found && len(rest) == 1 && !isDigit(rest[0]) {
			return s.quantity, rest
		}
	}
	return Other, ""
}

// takeLetteredPairs takes the letters for loggers' names where at least two of them stand behind both a sign of temperature and
// one of humidity.
func (l *layout) takeLetteredPairs() {
	temps, hums := map[string]int{}, map[string]int{}
	for _, c := range l.columns {
		switch q, letter := lettered(c.name); q {
		case AirTemperature:
			temps[letter]++
		case RelativeHumidity:
			hums[letter]++
		}
	}
	pairs := 0
	for letter := range temps {
		pairs += one(temps[letter] == 1 && hums[letter] == 1)
	}
	for i := range l.columns {
		c := &l.columns[i]
		q, letter := lettered(c.name)
		if pairs > 1 && temps[letter] == 1 && hums[letter] == 1 && unitFits(q, c.unit) {
			c.quantity, c.told = q, true
			c.liken(strings.ToUpper(letter))
		}
	}
}
