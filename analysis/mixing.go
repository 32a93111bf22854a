package analysis

import "thawbook/analysis/series"

// MixingRow is a mixing fan over one setting period. It moves no air out, so it is called for by nothing and has no
// share of the air; Ran is nil without a record.
type MixingRow struct {
	Fan       MixingFan // its span cut to what is scored
	Ran       *Work
	KWh, Cost Figure
}

// mixingRows say when mixing fans ran, by their records alone.
func mixingRows(j judgement) []MixingRow {
	rows := []MixingRow{}
	for _, fan := range j.Mixing {
		time := stretches(series.Intersect([]series.Span{fan.Span}, j.scored))
		if len(time) == 0 {
			continue
		}
		fan.Span = time.hull()
		row := MixingRow{Fan: fan}
		if record, ok := recordOf(j.Loggers, fan.Name); ok {
			row.Ran = worked(held(record), time, sampledEvery(record), Recorded)
		}
		row.KWh = energy(fan.Watts, hoursOf(row.Ran))
		row.Cost = cost(row.KWh, j.PricePerKWh)
		rows = append(rows, row)
	}
	return rows
}
