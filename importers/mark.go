package importers

// learnMark counts the numbers that need a point or a comma for their fraction.
func learnMark(rows []record, c *clock) (mark byte, seen bool) {
	points, commas := 0, 0
	for _, r := range rows {
		for i, cell := range r.cells {
			if c.uses(i) {
				continue
			}
			if _, d, _, ok := numberInText(cell, '.'); ok && d > 0 {
				points++
			}
			if _, d, _, ok := numberInText(cell, ','); ok && d > 0 {
				commas++
			}
		}
	}
	if commas > points {
		return ',', true
	}
	return '.', points > 0
}
