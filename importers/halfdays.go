package importers

import "thawbook/analysis/series"

// A clock of twelve hours that is printed without AM and PM shows every time twice a day. It gives itself away: its
// hours run from 1 to 12, and go back from 12 to 1 within a day. The order of the rows then tells the halves apart.

// settleHalves moves the afternoons of such a clock to where they belong.
func (s *scan) settleHalves() {
	line := s.twelveHours()
	if line == 0 {
		return
	}
	days := s.dayRuns()
	for i, d := range days {
		half := int64(0)
		if !s.hasNoon(d) && i+1 < len(days) && s.leadsOn(d, days[i+1]) {
			half = noonMS
		}
		before := int64(0)
		for row := d.from; row < d.to; row++ {
			midnight, ms := splitDay(s.at[row])
			if ms %= noonMS; ms < before {
				half = noonMS
			}
			before = ms
			s.at[row] = midnight + ms + half
		}
	}
	s.notes.add(series.Remark{Code: RemarkHalfDays, Line: line, Column: s.clock.columns[0] + 1})
}

// twelveHours is the line at which the hours of a clock that never shows another than 1 to 12 first go back from
// 12 to 1 within a day; 0 when there is none.
func (s *scan) twelveHours() (line int) {
	var day, before int64
	for row, at := range s.at {
		if at == noTime {
			return 0
		}
		midnight, ms := splitDay(at)
		hour := ms / hourMS
		if hour < 1 || hour > 12 {
			return 0
		}
		if line == 0 && row > 0 && midnight == day && before == 12 && hour == 1 {
			line = s.lineOf(row)
		}
		day, before = midnight, hour
	}
	return line
}

// dayRun are rows of one date, one after the other.
type dayRun struct{ from, to int }

func (s *scan) dayRuns() (out []dayRun) {
	for row, at := range s.at {
		day, _ := splitDay(at)
		if n := len(out); n > 0 {
			if last, _ := splitDay(s.at[row-1]); last == day {
				out[n-1].to = row + 1
				continue
			}
		}
		out = append(out, dayRun{row, row + 1})
	}
	return out
}

// hasNoon says whether the times of a day begin anew within it.
func (s *scan) hasNoon(d dayRun) bool {
	for row := d.from + 1; row < d.to; row++ {
		if s.at[row]%noonMS < s.at[row-1]%noonMS {
			return true
		}
	}
	return false
}

// leadsOn says whether a day's last row, taken for one of the afternoon, lies nearer to the next day's first than
// half a day.
func (s *scan) leadsOn(d, next dayRun) bool {
	midnight, ms := splitDay(s.at[d.to-1])
	nextDay, first := splitDay(s.at[next.from])
	return nextDay+first%noonMS-(midnight+ms%noonMS+noonMS) < noonMS
}

// splitDay cuts a face into midnight and what has passed since.
func splitDay(at int64) (midnight, ms int64) {
	ms = at % dayMS
	if ms < 0 {
		ms += dayMS
	}
	return at - ms, ms
}
