package importers

import (
	"cmp"
	"slices"

	"thawbook/analysis/series"
)

// The questions about units.
const (
	temperatureUnit = "temperature_unit"
	humidityUnit    = "humidity_unit"
)

// settleUnits finds the unit of every column that has a house unit, converts it, and returns the questions
// that are left. What one temperature column says holds for those of the file that say nothing.
func (s *scan) settleUnits(o order, answers Answers) (open []Question) {
	s.findDivisors()
	for i := range s.columns {
		s.columns[i].divide()
	}
	if answers[temperatureUnit] == "" {
		s.settleSwitches()
	}
	known, from := s.temperatureUnit(o, answers)
	asked := false
	for i := range s.columns {
		c := &s.columns[i]
		switch {
		case isTemperature(c.quantity):
			if c.takeUnitSaid(answers[temperatureUnit]); c.unit == "" {
				c.unit, c.unitFrom = known, from
			}
			s.dropMarks(c)
			s.dropImpossible(c)
			asked = asked || c.unit == "" && c.spread().n > 0
			c.toCelsius(c.unit)
		case c.quantity == RelativeHumidity:
			s.settleHumidity(c, answers)
		case c.quantity == CO2 && c.isOtherGas():
			c.quantity = Other
		}
	}
	if asked {
		open = append(open, Question{ID: temperatureUnit, Options: []string{"degC", "degF"}})
	}
	return open
}

// settleStates takes the columns of a table that holds nothing but 0 and 1 for states, whatever they are called.
func (s *scan) settleStates() {
	if s.long {
		return
	}
	changes := false
	for i := range s.columns {
		c := &s.columns[i]
		if c.kind != number {
			continue
		}
		if c.quantity != Other || c.unit != "" || !c.isBinary() {
			return
		}
		changes = changes || slices.Contains(c.val, 0) && slices.Contains(c.val, 1)
	}
	for i := range s.columns {
		if c := &s.columns[i]; changes && c.kind == number {
			c.quantity = State
		}
	}
}

// isOtherGas says whether a column was taken for carbon dioxide by its unit alone, and holds too little for that.
func (c *values) isOtherGas() bool {
	p := c.spread()
	return !c.namesCO2() && p.n > 0 && p.mid < leastCO2
}

// namesCO2 says whether a column is of carbon dioxide by its name.
func (c *values) namesCO2() bool {
	q, _ := quantityOf(words(joined(c.variable, c.header)), "")
	return q == CO2
}

// temperatureUnit is the unit of the columns that don't name one, and where it is from.
func (s *scan) temperatureUnit(o order, answers Answers) (unit, from string) {
	if unit, columns, said := unitSaid(answers[temperatureUnit]); said && len(columns) == 0 {
		return unit, "answer"
	}
	for i := range s.columns {
		if c := &s.columns[i]; isTemperature(c.quantity) && c.unit != "" {
			return c.unit, c.unitFrom
		}
	}
	if s.pageUnit != "" {
		return s.pageUnit, "header"
	}
	if s.seemSwapped(s.spreadOf(isOfTemperature)) {
		return "degC", "values"
	}
	if unit = cmp.Or(s.provenUnit(), s.temperatureByBody(o == mdy && s.clock.form.isAmerican() || s.isImperial())); unit != "" {
		from = "values"
	}
	return unit, from
}

func isOfTemperature(c *values) bool { return isTemperature(c.quantity) }

// temperatureByBody is the unit that the body of all temperatures tells. Where the few far off it would tell another, in
// which they were possible, it stays open.
func (s *scan) temperatureByBody(likelyF bool) string {
	all := s.spreadOf(isOfTemperature)
	unit := temperatureByValues(all, likelyF)
	if all.low >= restingLow && all.high <= hottestC {
		return unit
	}
	body := temperatureByValues(s.together(isOfTemperature, (*values).body), likelyF)
	if body == unit || unit == "" || unit == "degF" && all.high > 1.8*hottestC+32 {
		return body
	}
	return ""
}

// driestMean is less than any building's air around bees has on average, in percent. Common practice, no source.
const driestMean = 12

// seemSwapped says whether temperatures may be humidities, and the only humidities of the file are drier than any air:
// what is called by the other's name is no temperature in °F.
func (s *scan) seemSwapped(temps spread) bool {
	p := s.spreadOf(func(c *values) bool { return c.quantity == RelativeHumidity && c.unit != "fraction" })
	return p.n > 0 && p.mid <= driestMean && p.high > 1 && temps.low >= driestMean && temps.high <= 105 && temps.mid >= 30
}

// imperial are words of units, in names, that are used where °F is.
var imperial = wordSet("mph", "inhg", "inches", "psi", "btu", "cfm", "fpm", "feet", "miles", "gal", "lbs")

// isImperial says whether names in the file hold such words.
func (s *scan) isImperial() bool {
	return slices.ContainsFunc(words(text(s.header)), func(w nameWord) bool { return imperial[w.low] })
}

// mostK is more than any air around bees has, in kelvin, and hottestC in °C.
const mostK, hottestC = 350, 65

// temperatureByValues tells units apart by what air in and around a wintering barn can be: nothing below
// 200 is kelvin, nothing above 65 is °C. A mean of 30 to 50 is a cool barn in °F or a brood nest in °C, and
// where °F is used, by the order of dates or other units, any mean up to 50 may be either: then the unit
// stays open. Common practice, no source.
func temperatureByValues(p spread, likelyF bool) string {
	switch {
	case p.n == 0:
		return ""
	case p.low > 200 && p.high < mostK:
		return "K"
	case p.low > 200:
		return "" // no air is so hot
	case p.high > hottestC:
		return "degF"
	case p.mid >= 30 && p.mid <= 50:
		return ""
	case likelyF && p.low > -40:
		return ""
	case p.mid > 50:
		return "degF"
	}
	return "degC"
}

// settleHumidity tells percent from fractions by the header and the values, and converts to 0–1. Values that
// never leave 0–1 are fractions whatever the header says: air of 1 % does not occur.
func (s *scan) settleHumidity(c *values, answers Answers) {
	p := c.spread()
	if p.mid < driestMean || p.low < 0 || p.high > 100*mostHumid {
		p = c.body()
	}
	fractions := p.n > 0 && p.high > 0 && p.high <= 1
	switch a := answers[humidityUnit]; {
	case a == "percent" || a == "fraction":
		c.unit, c.unitFrom = a, "answer"
	case c.unit == "percent" && fractions, c.unit == "fraction" && p.high > 2:
		c.unit, c.unitFrom = "fraction", "values"
		if !fractions {
			c.unit = "percent"
		}
		s.notes.add(series.Remark{Code: RemarkUnitValues, Line: s.layout.line, Column: c.index + 1, Args: []string{c.header, c.unit}})
	case c.unit != "":
	case fractions:
		c.unit, c.unitFrom = "fraction", "values"
	case p.n > 0:
		c.unit, c.unitFrom = "percent", "values"
	}
	if s.dropImpossible(c); c.quantity != RelativeHumidity {
		return
	}
	if c.unit == "percent" {
		for i := range c.val {
			c.val[i] /= 100
		}
		c.changed()
	}
}
