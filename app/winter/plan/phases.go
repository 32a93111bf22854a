package plan

import (
	"fmt"
	"slices"
	"strings"

	"thawbook/app/winter"
)

// phases builds the stretches judged by themselves. Those with a from begin one after the other, in the
// order of the list and of winter.PhaseNames.
func (b *builder) phases(path string, tables []phaseTable) (out []winter.Phase) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.phase[%d]", path, i)
		out = append(out, winter.Phase{
			Name:  b.oneOf(at, "name", t.Name, winter.PhaseNames),
			From:  b.momentIf(at, "from", t.From),
			Bands: b.bands(at+".bands", t.Bands),
		})
	}
	namedOnce(b, path+".phase", out, func(p winter.Phase) string { return p.Name })
	b.inTurn(path, out)
	return out
}

// inTurn refuses a phase whose from is not later than that of the phases before it, by the list or by name.
func (b *builder) inTurn(path string, phases []winter.Phase) {
	var last *winter.Phase
	for i, p := range phases {
		if p.From == nil {
			continue
		}
		if last != nil && (*p.From <= *last.From || phaseRank(p) < phaseRank(*last)) {
			b.refuse(fmt.Sprintf("%s.phase[%d].from", path, i), BadTime, "%q does not follow %q; phases begin and are listed one after the other: %s",
				p.Name, last.Name, strings.Join(winter.PhaseNames, ", "))
		}
		last = &p
	}
}

// phaseRank is a phase's place in the order of a winter.
func phaseRank(p winter.Phase) int { return slices.Index(winter.PhaseNames, p.Name) }

// bands builds the keeper's own limits, the winter's or a phase's.
func (b *builder) bands(path string, t *bandsTable) (out winter.Bands) {
	if t == nil {
		return out
	}
	out.TempC = b.band(path+".air_temperature", t.AirTemperature, -60, 80, 1)
	out.RelHum = b.band(path+".relative_humidity", t.RelativeHumidity, 0, 100, percent)
	return out
}

// band builds the limits of one quantity, each divided by by.
func (b *builder) band(path string, t *bandTable, low, high, by float64) (out winter.Band) {
	if t == nil {
		return out
	}
	limit := func(key string, value *float64) *float64 {
		return scaled(b.number(path, key, value, low, high), by)
	}
	b.nested(path, t)
	return winter.Band{
		GoodLow: limit("good_low", t.GoodLow), GoodHigh: limit("good_high", t.GoodHigh),
		WatchLow: limit("watch_low", t.WatchLow), WatchHigh: limit("watch_high", t.WatchHigh),
		ActLow: limit("act_low", t.ActLow), ActHigh: limit("act_high", t.ActHigh),
	}
}

// nested refuses limits of which a wider band does not hold a narrower one.
func (b *builder) nested(path string, t *bandTable) {
	keys := []string{"act_low", "watch_low", "good_low", "good_high", "watch_high", "act_high"}
	last := -1
	limits := []*float64{t.ActLow, t.WatchLow, t.GoodLow, t.GoodHigh, t.WatchHigh, t.ActHigh}
	for i, limit := range limits {
		if limit == nil {
			continue
		}
		if last >= 0 {
			b.rising(path, keys[last], keys[i], limits[last], limit)
		}
		last = i
	}
}
