package desk

import "slices"

// triflingH is by how many hours of a winter call and record may part without a word (common practice, no source).
const triflingH = 2

// calledAndRan sets what stages were called for beside what a record shows.
func (b barn) calledAndRan() []Sentence {
	var apart, alike []string
	for _, row := range b.r.Stages {
		called, ran, ok := row.CalledAndRan()
		if !ok || !called.OK || row.Setting.AlwaysOn {
			continue
		}
		text := row.Name + " was called for " + Hours(called.Mid) + " and ran " + Hours(ran.Mid)
		if h, less := row.BothHours(); less {
			text += inBoth(h)
		}
		switch outside := max(called.Low-ran.Mid, ran.Mid-called.High); {
		case outside > triflingH:
			apart = append(apart, text+" (called for at least "+Hours(called.Low)+", at most "+Hours(called.High)+")")
		case outside <= 0 && !slices.Contains(alike, row.Name):
			alike = append(alike, row.Name)
		}
	}
	switch {
	case len(apart) > 0:
		return []Sentence{{Text: capital(listed(apart)) + ".", Sure: "Called for is worked out from temperature, ran is recorded; the two are never mixed.", Mark: MarkWatch, weight: 65}}
	case len(alike) > 0:
		return []Sentence{{Text: capital(listed(alike)) + " ran as long as called for, within what the loggers can tell.", Mark: MarkGood, weight: 28}}
	}
	return nil
}
