package desk

import (
	"time"

	"thawbook/analysis"
)

// AlarmDoc is what an alarm at one line would have done, set against the keeper's log.
type AlarmDoc struct {
	Place        string         `json:"place"`
	Logger       *string        `json:"logger"` // null for the mean of the place
	Limit        float64        `json:"limit"`
	Side         string         `json:"side"` // above, below
	DelayMin     float64        `json:"delay_min"`
	Own          bool           `json:"own"` // what the barn's alarm is set to
	Calls        *float64       `json:"calls"`
	CallsLow     *float64       `json:"calls_low"`
	CallsHigh    *float64       `json:"calls_high"`
	Due          []AlarmCallDoc `json:"due"`
	Missed       *float64       `json:"missed"`
	MissedLow    *float64       `json:"missed_low"`
	WithoutCause []string       `json:"without_cause"`
	CantTell     []string       `json:"cant_tell"`
	HoursUnknown float64        `json:"hours_unknown"`
}

// AlarmCallDoc is one call that was due; logged and how late it was, with what the reading may be off by, are null where
// the log has none.
type AlarmCallDoc struct {
	Crossed     string   `json:"crossed"`
	CrossedSeen bool     `json:"crossed_seen"`
	Due         string   `json:"due"`
	Back        string   `json:"back"`
	BackSeen    bool     `json:"back_seen"`
	Peak        float64  `json:"peak"`
	AlarmOff    bool     `json:"alarm_off"`
	Logged      *string  `json:"logged"`
	LateMin     *float64 `json:"late_min"`
	LateLow     *float64 `json:"late_low_min"`
	LateHigh    *float64 `json:"late_high_min"`
}

func alarmDocs(rows []analysis.AlarmRow, zone *time.Location) []AlarmDoc {
	out := []AlarmDoc{}
	for _, r := range rows {
		d := AlarmDoc{
			Place: r.Place, Logger: textOrNull(r.Logger), Limit: r.Line.LimitC, Side: "above", DelayMin: r.Line.DelayMin, Own: r.Line.Own, Calls: mid(r.Calls), Missed: mid(r.Missed),
			Due: []AlarmCallDoc{}, WithoutCause: clocks(r.NoCause, zone), CantTell: clocks(r.CantTell, zone), HoursUnknown: hours(r.UnknownMS),
		}
		if r.Line.Low {
			d.Side = "below"
		}
		if r.Calls.OK {
			d.CallsLow, d.CallsHigh = &r.Calls.Low, &r.Calls.High
		}
		if r.Missed.OK {
			d.MissedLow = &r.Missed.Low
		}
		for _, c := range r.Due {
			d.Due = append(d.Due, alarmCallDoc(c, zone))
		}
		out = append(out, d)
	}
	return out
}

func alarmCallDoc(c analysis.AlarmCall, zone *time.Location) AlarmCallDoc {
	d := AlarmCallDoc{
		Crossed: clock(c.Crossed, zone), CrossedSeen: !c.CutFrom, Due: clock(c.Due, zone), Back: clock(c.Back, zone), BackSeen: !c.CutTo,
		Peak: c.PeakC, AlarmOff: c.Off,
	}
	if late := c.Late(); late.OK {
		logged := clock(*c.Logged, zone)
		d.Logged, d.LateMin, d.LateLow, d.LateHigh = &logged, &late.Mid, &late.Low, &late.High
	}
	return d
}

// clock is an instant as RFC 3339 in a zone.
func clock(ms int64, zone *time.Location) string {
	return time.UnixMilli(ms).In(zone).Format("2006-01-02T15:04:05.999Z07:00")
}

func clocks(instants []int64, zone *time.Location) []string {
	out := []string{}
	for _, at := range instants {
		out = append(out, clock(at, zone))
	}
	return out
}
