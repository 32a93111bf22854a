package importers

import "thawbook/analysis/series"

// wholeParts are what whole numbers may stand for where a program stores no fractions, and the least that humidities
// of air that is not dry are then; they end where the next begins.
var wholeParts = []struct {
	divisor, least float64
	said           string
}{{10, 150, "tenths of a percent"}, {100, 1500, "hundredths of a percent"}, {1000, 15000, ""}}

// findDivisors takes humidities in whole numbers of more than any percent for tenths or hundredths, and the whole
// numbers of temperatures of the same rows for the same.
func (s *scan) findDivisors() {
	for i := range s.columns {
		h := &s.columns[i]
		if h.graded {
			s.notes.add(series.Remark{Code: RemarkTenths, Line: s.layout.line, Column: h.index + 1, Args: []string{h.header}})
		}
		if h.quantity != RelativeHumidity || h.divisor != 0 || h.hasFractions() {
			continue
		}
		p := h.spread()
		for k, w := range wholeParts[:len(wholeParts)-1] {
			if p.n == 0 || p.low < w.least || p.high >= min(wholeParts[k+1].least, 105*w.divisor) {
				continue
			}
			h.divisor = w.divisor
			s.notes.add(series.Remark{Code: RemarkUnitValues, Line: s.layout.line, Column: h.index + 1, Args: []string{h.header, w.said}})
			s.divideBeside(h)
		}
	}
}

// divideBeside divides the temperatures beside a humidity as it is, where they are whole numbers and none of air
// otherwise would be.
func (s *scan) divideBeside(h *values) {
	for i := range s.columns {
		c := &s.columns[i]
		p := c.spread()
		if isTemperature(c.quantity) && c.logger == h.logger && c.divisor == 0 && !c.hasFractions() && p.n > 0 && p.high <= 150*h.divisor {
			c.divisor = h.divisor
		}
	}
}
