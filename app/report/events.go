package report

import (
	"maps"
	"slices"

	"thawbook/app/desk"
)

// eventRow is one figure of an event; an event without figures has one row without.
type eventRow struct {
	Barn     string   `csv:"barn"`
	Kind     string   `csv:"kind"`
	Start    string   `csv:"start"`
	End      string   `csv:"end"`
	Place    string   `csv:"place"`
	Evidence string   `csv:"evidence"`
	MayBe    bool     `csv:"may_be"`
	Noted    bool     `csv:"noted"`
	Figure   string   `csv:"figure"`
	Value    *float64 `csv:"value"`
}

// alarmRow is one call that was due at a line; a line without any has one row without.
type alarmRow struct {
	Barn     string   `csv:"barn"`
	Limit    float64  `csv:"limit_c"`
	Side     string   `csv:"side"`
	DelayMin float64  `csv:"delay_min"`
	Crossed  string   `csv:"crossed"`
	Due      string   `csv:"due"`
	Back     string   `csv:"back"`
	Peak     *float64 `csv:"peak_c"`
	AlarmOff bool     `csv:"alarm_off"`
	Logged   string   `csv:"logged"`
	LateMin  *float64 `csv:"late_min"`
}

// eventTables are what happened, and when an alarm would have called.
func eventTables(d desk.ReviewDoc) []Table {
	events, alarms := []eventRow{}, []alarmRow{}
	for _, b := range d.Barns {
		barn := cell(b.Name)
		for _, e := range b.Events {
			events = append(events, eventRows(barn, e)...)
		}
		for _, a := range b.Alarms {
			alarms = append(alarms, alarmRows(barn, a)...)
		}
	}
	return []Table{{"events.csv", events}, {"alarms.csv", alarms}}
}

func eventRows(barn string, e desk.EventDoc) (rows []eventRow) {
	like := eventRow{Barn: barn, Kind: e.Kind, Start: e.Start, End: e.End, Place: cell(e.Place), Evidence: e.Evidence, MayBe: e.MayBe, Noted: e.Noted}
	if len(e.Figures) == 0 {
		return []eventRow{like}
	}
	for _, name := range slices.Sorted(maps.Keys(e.Figures)) {
		row := like
		row.Figure, row.Value = name, e.Figures[name]
		rows = append(rows, row)
	}
	return rows
}

func alarmRows(barn string, a desk.AlarmDoc) (rows []alarmRow) {
	like := alarmRow{Barn: barn, Limit: a.Limit, Side: a.Side, DelayMin: a.DelayMin}
	if len(a.Due) == 0 {
		return []alarmRow{like}
	}
	for _, c := range a.Due {
		row := like
		row.Crossed, row.Due, row.Back, row.Peak, row.AlarmOff = c.Crossed, c.Due, c.Back, &c.Peak, c.AlarmOff
		row.Logged, row.LateMin = text(c.Logged), c.LateMin
		rows = append(rows, row)
	}
	return rows
}
