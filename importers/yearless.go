package importers

import (
	"math"
	"strings"
)

// Some instruments print no year. Their dates are read as of the year 2000, which has every date there is, and
// moved to the year the keeper names; from December to January the year goes on.

// yearQuestion asks for the year of the earliest row.
const yearQuestion = "year"

// yearlessForms are the ways to print a date without its year.
var yearlessForms = []dateForm{
	{"#.#.", []order{dmy, mdy}}, {"#. #.", []order{dmy, mdy}}, {"#/#", []order{dmy, mdy}}, {"#-#", []order{mdy, dmy}},
	{"# b", []order{dmy}}, {"#-b", []order{dmy}}, {"#. b", []order{dmy}}, {"b #", []order{mdy}}, {"b-#", []order{mdy}}, {"W# b", []order{dmy}}, {"Wb #", []order{mdy}},
}

// yearlessFit looks for dates without a year that have a time of day, in one cell or beside it, and for months
// and days, or days of the year, in columns of their own.
func yearlessFit(rows []record) clockFit {
	for _, s := range stampFits(rows, yearlessForms) {
		if 2*s.timed > s.hits {
			fit := s.fit(readStamp)
			fit.clock.stamps, fit.clock.yearless = true, true
			return fit
		}
		if fit, ok := pairFit(rows, s); ok {
			fit.clock.yearless = true
			return fit
		}
		if strings.Contains(s.form.pattern, "b") && namedAs(rows[:s.first], s.column, clockNames) {
			fit := s.fit(readDate)
			fit.clock.untimed, fit.clock.yearless = true, true
			return fit
		}
	}
	fit, _ := namedFit(rows, (*clock).takeYearlessDate)
	return fit
}

// takeYearlessDate is takeDate for tables without a column of years.
func (c *clock) takeYearlessDate(names []string) bool {
	month, day, yearDay := indexOfPart(names, 1), indexOfPart(names, 2), indexOfPhrase(names, yearDayNames)
	c.yearless = true
	switch {
	case month >= 0 && day >= 0:
		c.name = ymd
		c.take(partMonth, month)
		c.take(partDay, day)
	case yearDay >= 0:
		c.name = doy
		c.take(partYearDay, yearDay)
	}
	return len(c.parts) > 0
}

// settleYear moves dates without a year to the years they are from, and asks for the first where the keeper
// did not say.
func (s *scan) settleYear(o order, answers Answers) (open []Question) {
	if !s.clock.yearless {
		return nil
	}
	first := 2000
	if year, ok := digits([]byte(answers[yearQuestion]), 4); ok {
		first = year
	} else if year := yearAbove(s.preamble); year > 0 {
		first = year
	} else {
		open = append(open, Question{ID: yearQuestion, Options: []string{}})
	}
	turns, earliest := s.yearTurns()
	for row, at := range s.at {
		if at == noTime {
			continue
		}
		moved, ok := inYear(at, first+turns[row]-earliest, o)
		if !ok {
			moved = noTime
			s.loseRow(row)
		}
		s.at[row] = moved
	}
	return open
}

// yearAbove is the year that a line above the table names for all of it, or that of the start named there; 0 when
// none does.
func yearAbove(above []record) int {
	for _, r := range above {
		key, value := keyValue(text(r.text))
		if isPart(key, int(partYear)) && isYear([]byte(value)) {
			year, _ := digits([]byte(value), 4)
			return year
		}
	}
	if from, found := startAbove(above); found {
		return from.year()
	}
	return 0
}

// yearTurns counts, row by row, how many more years have begun than ended: a fall by more than half a year is
// the turn of one, a rise by as much leads back over it. earliest is the lowest count.
func (s *scan) yearTurns() (turns []int, earliest int) {
	const halfYear = 183 * dayMS
	turns = make([]int, len(s.at))
	before, n := int64(noTime), 0
	for row, at := range s.at {
		if at != noTime {
			switch {
			case before == noTime:
			case at < before-halfYear:
				n++
			case at > before+halfYear:
				n--
			}
			before = at
		}
		turns[row], earliest = n, min(earliest, n)
	}
	return turns, earliest
}

// inYear moves a time of the year 2000 to another year: the same month and day, or the same day of the year.
// It says false when that year has no such day.
func inYear(at int64, year int, o order) (moved int64, ok bool) {
	days := int64(math.Floor(float64(at) / dayMS))
	ms, day := at-days*dayMS, int(days-civilDay(2000, 1, 1))
	switch leapDays := 366; { // 24:00 on the last day is of the next year, and an offset may lead out as well
	case day < 0:
		day, year = day+leapDays, year-1
	case day >= leapDays:
		day, year = day-leapDays, year+1
	}
	var midnight int64
	if o == doy {
		midnight, ok = dateMS([3]int{year, day + 1}, doy)
		return midnight + ms, ok
	}
	month := 1
	for month < 12 && day >= monthLength(2000, month) {
		day -= monthLength(2000, month)
		month++
	}
	midnight, ok = dateMS([3]int{year, month, day + 1}, ymd)
	return midnight + ms, ok
}
