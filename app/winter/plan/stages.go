package plan

import (
	"fmt"

	"thawbook/app/winter"
)

// stages builds the fan ladder: every table sets one stage one way, from a date on.
func (b *builder) stages(path string, tables []stageTable) (out []winter.Stage) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.stage[%d]", path, i)
		s := winter.Stage{
			Name:       b.text(at, "name", t.Name),
			From:       b.momentIf(at, "from", t.From),
			AlwaysOn:   t.AlwaysOn != nil && *t.AlwaysOn,
			OnC:        b.number(at, "on_c", t.OnC, -60, 80),
			OffC:       b.number(at, "off_c", t.OffC, -60, 80),
			TimerOnS:   b.number(at, "timer_on_s", t.TimerOnS, 1, 86400),
			TimerEvery: b.number(at, "timer_every_s", t.TimerEveryS, 1, 86400),
			Watts:      b.number(at, "watts", t.Watts, 0, 1e6),
		}
		b.oneWay(at, s)
		b.pair(at, "on_c", "off_c", t.OnC, t.OffC)
		b.pair(at, "timer_on_s", "timer_every_s", t.TimerOnS, t.TimerEveryS)
		if t.OnC != nil && t.OffC != nil && *t.OffC >= *t.OnC {
			b.refuse(at+".off_c", OffNotLow, "stage %q switches off at %g °C and on at %g °C; off must be the lower", t.Name, *t.OffC, *t.OnC)
		}
		b.rising(at, "timer_on_s", "timer_every_s", t.TimerOnS, t.TimerEveryS)
		s.FlowLow, s.FlowHigh = b.flow(at, t)
		s.FlowMeasured = t.FlowMeasured
		out = append(out, s)
	}
	laterAgain(b, path+".stage", out, func(s winter.Stage) (string, *int64) { return s.Name, s.From })
	return out
}

// mixing builds the mixing fans, each set from a date on like a stage.
func (b *builder) mixing(path string, tables []mixingTable) (out []winter.Circulation) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.mixing[%d]", path, i)
		out = append(out, winter.Circulation{
			Name: b.text(at, "name", t.Name), From: b.momentIf(at, "from", t.From), Watts: b.number(at, "watts", t.Watts, 0, 1e6),
		})
	}
	laterAgain(b, path+".mixing", out, func(c winter.Circulation) (string, *int64) { return c.Name, c.From })
	return out
}

// oneWay holds a stage to one way of being switched.
func (b *builder) oneWay(at string, s winter.Stage) {
	ways := 0
	for _, given := range []bool{s.AlwaysOn, s.OnC != nil || s.OffC != nil, s.TimerOnS != nil || s.TimerEvery != nil} {
		if given {
			ways++
		}
	}
	if ways != 1 {
		b.refuse(at, OneOf, "stage %q needs one of: always_on = true; on_c and off_c; timer_on_s and timer_every_s", s.Name)
	}
}

// flow is the range of a stage's air flow in m³/s.
func (b *builder) flow(at string, t stageTable) (low, high *float64) {
	b.number(at, "flow_m3h", t.FlowM3H, 0, 1e7)
	b.number(at, "flow_low", t.FlowLow, 0, 1e7)
	b.number(at, "flow_high", t.FlowHigh, 0, 1e7)
	b.pair(at, "flow_low", "flow_high", t.FlowLow, t.FlowHigh)
	b.rising(at, "flow_low", "flow_high", t.FlowLow, t.FlowHigh)
	if t.FlowM3H == nil {
		return scaled(t.FlowLow, secondsPerHour), scaled(t.FlowHigh, secondsPerHour)
	}
	if t.FlowLow != nil {
		b.refuse(at+".flow_low", OneOf, "stage %q takes flow_m3h or flow_low and flow_high, not both", t.Name)
	}
	return scaled(t.FlowM3H, secondsPerHour), scaled(t.FlowM3H, secondsPerHour)
}

// pair refuses one of two keys without the other.
func (b *builder) pair(at, firstKey, secondKey string, first, second *float64) {
	if (first == nil) == (second == nil) {
		return
	}
	given, absent := firstKey, secondKey
	if first == nil {
		given, absent = secondKey, firstKey
	}
	b.refuse(join(at, given), Absent, "%s needs %s beside it", given, absent)
}
