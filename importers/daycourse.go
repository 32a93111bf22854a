package importers

import (
	"maps"
	"slices"
)

// A column beside dates may hold the time of day under a name that says nothing. Its numbers tell: they go through the
// whole day in even steps, begin anew with each date, and none comes twice on a date.

// dayCourses are the parts of a time that numbers without marks may be by themselves.
var dayCourses = []part{partHour, partHHMM, partDayMinute}

// leastSteps is in how many steps at least such numbers go through a day, and allSteps is how many may begin with
// another than 0: depths are in even steps too.
const leastSteps, allSteps = 8, 24

// courseNames are the names of columns that may number the hours from 1, as the boxes of 24 loggers are numbered.
var courseNames = slices.Concat(timeNames, clockNames, partNames[partHour], []string{"sat", "sata"})

// courseOfDay says which part of a time a column beside a clock of dates holds by its numbers alone, where its name says
// that they are no others.
func courseOfDay(rows []record, dates *clock, col int, name string) (part, bool) {
	w := words(name)
	if q, _ := quantityOf(w, ""); q != Other || anyPhrase(deviceNames, w) || anyPhrase(indexNames, w) {
		return 0, false
	}
	for _, p := range dayCourses {
		times, ok := timesThroughDays(rows, dates, col, p)
		if ok && fillsDay(times) && (p != partHour || times[0] == 0 || anyPhrase(courseNames, w) || zoneInName(name) != "") {
			return p, true
		}
	}
	return 0, false
}

// timesThroughDays are the times of day that a column's cells are as a part of a time, in their order, where they rise or
// fall within each of several dates and half of them at least come on a date.
func timesThroughDays(rows []record, dates *clock, col int, p part) (times []int64, ok bool) {
	found := map[int64]bool{}
	days, readings, rises, falls := 0, 0, 0, 0
	date, before := int64(noTime), int64(0)
	for _, r := range rows {
		day, _, ok := dates.read(dates, r.cells)
		if !ok {
			continue
		}
		var d dayParts
		cell := trim(r.cells[col])
		if _, whole := wholeNumber(cell); !whole || !d.set(p, cell) {
			return nil, false
		}
		if day == date {
			rises, falls = rises+one(d.ms > before), falls+one(d.ms < before)
			if d.ms == before || rises > 0 && falls > 0 {
				return nil, false
			}
		}
		days += one(day != date)
		date, before, found[d.ms], readings = day, d.ms, true, readings+1
	}
	return slices.Sorted(maps.Keys(found)), days > 1 && 2*readings >= days*len(found)
}

// fillsDay says whether times of day, in their order, are all those in even steps.
func fillsDay(times []int64) bool {
	n := len(times)
	if n < leastSteps || n < allSteps && times[0] != 0 {
		return false
	}
	step := int64(dayMS / n)
	for i, ms := range times {
		if ms != times[0]+int64(i)*step {
			return false
		}
	}
	return step*int64(n) == dayMS
}
