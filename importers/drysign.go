package importers

import (
	"slices"
	"strings"
)

// Some names may be the air's temperature or something else. Ts is the sign of a surface's, and that of the dry
// thermometer where the word for dry begins with an s: seco, sec, suche. Air may be what flows. What stands beside them
// tells, or the keeper.

// tsQuantities are the answers to what ts is, and airQuantities to what is called air and nothing else.
var (
	tsQuantities  = []string{string(AirTemperature), string(SurfaceTemperature)}
	airQuantities = []string{string(AirTemperature), string(Other)}
	fQuantities   = []string{string(RelativeHumidity), string(Other)} // what F is beside a temperature
)

// isSurfaceSign says whether a column is called ts.
func (c *values) isSurfaceSign() bool {
	return c.kind == number && c.quantity == SurfaceTemperature && strings.EqualFold(strings.TrimSpace(c.name), "ts")
}

// nowWords are over the reading of a thermometer beside its lowest and highest.
var nowWords = wordSet("now", "nyt", "nu", "jetzt", "aktuell", "maintenant", "ahora", "agora", "adesso", "teraz", "nyni", "praegu", "сейчас", "зараз")

// isCalledAir says whether a column is called air, at some height perhaps, by a word for within or without or by one for
// now, and may be its temperature by its values.
func (c *values) isCalledAir() bool {
	w := words(c.name)
	if len(w) > 1 && isHeight(w[1:]) {
		w = w[:1]
	}
	return len(w) == 1 && (anyPhrase(airWords, w) || fusedPlaces[w[0].low] || nowWords[w[0].low]) && c.quantity == Other && !c.told && c.mayBeTemperature()
}

// doubtfulAir is what a column with such a name may measure.
func (c *values) doubtfulAir() (options []string) {
	switch {
	case c.isSurfaceSign():
		return tsQuantities
	case c.isCalledAir():
		return airQuantities
	}
	return nil
}

// isLoneF says whether a column called F changes as air does: in °F, or the damp of it. The mains' frequency hardly moves.
func (c *values) isLoneF() bool {
	p := c.spread()
	return strings.TrimSpace(c.header) == "F" && p.high-p.low >= leastDamper
}

// settleF lets a column called F beside a temperature be its humidity where the keeper says so, and asks where it changes
// as one does, is no temperature in °F and no other column is one.
func (s *scan) settleF(answers Answers) (open []Question) {
	for _, rows := range s.byRows() {
		var t, f *values
		humid := false
		for _, c := range rows {
			p := c.spread()
			switch {
			case c.quantity == AirTemperature:
				t = c
			case c.quantity == RelativeHumidity || c.quantity == DewPoint:
				humid = true
			case strings.TrimSpace(c.header) == "F" && c.quantity == Other && p.isHumid() && p.high-p.low >= leastDamper:
				f = c
			}
		}
		if t == nil || f == nil || humid || f.isFahrenheitOf(t) {
			continue
		}
		if answer := answers[loneQuantity]; answer == "" {
			f.quantity, open = RelativeHumidity, []Question{{ID: loneQuantity, Options: fQuantities, Columns: called([]*values{f})}}
		} else if slices.Contains(fQuantities, answer) {
			f.quantity = Quantity(answer)
		}
	}
	return open
}

// settleDoubtfulAir lets columns with such names be the air's temperature where the keeper says so, and asks where there
// is none beside a humidity and no dew point tells. What several are called by where they are, of which one is below zero, is
// nothing else.
func (s *scan) settleDoubtfulAir(answers Answers) (open []Question) {
	for _, rows := range s.byRows() {
		of := map[Quantity]bool{}
		var doubtful []*values
		for _, c := range rows {
			if of[c.quantity] = true; c.doubtfulAir() != nil {
				doubtful = append(doubtful, c)
			}
		}
		if len(doubtful) == 0 || of[AirTemperature] || of[DewPoint] || !of[RelativeHumidity] {
			continue
		}
		options := doubtful[0].doubtfulAir()
		if slices.ContainsFunc(doubtful, func(c *values) bool { return !slices.Equal(c.doubtfulAir(), options) }) {
			continue
		}
		belowZero := slices.ContainsFunc(doubtful, func(c *values) bool { return c.spread().low < 0 })
		asked := doubtful[0].isSurfaceSign() || len(doubtful) == 1 || !belowZero
		for _, c := range doubtful {
			if answer := answers[loneQuantity]; answer == "" || !asked {
				c.quantity = AirTemperature
			} else if slices.Contains(options, answer) {
				c.quantity = Quantity(answer)
			}
		}
		if asked && answers[loneQuantity] == "" {
			open = []Question{{ID: loneQuantity, Options: options, Columns: called(doubtful)}}
		}
	}
	return open
}
