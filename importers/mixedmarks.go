package importers

import "thawbook/analysis/series"

// otherMark reads a number whose fraction stands behind the other decimal mark than most of the file's: read-outs of two
// programs in one file. It must be a fraction by itself: three digits behind a mark may be thousands, but not of air.
func (s *scan) otherMark(c *values, cell []byte) (v float64, decimals int, ok bool) {
	mark := byte('.' + ',' - s.mark)
	v, decimals, _, ok = numberInText(cell, mark)
	if !ok || decimals == 0 || isGrouped(cell, mark) || decimals == 3 && !isTemperature(c.quantity) && c.quantity != RelativeHumidity {
		return 0, 0, false
	}
	s.notes.add(series.Remark{Code: RemarkMixedMarks, Line: s.line, Column: c.index + 1, Args: []string{clip(text(cell)), c.header}})
	return v, decimals, true
}
