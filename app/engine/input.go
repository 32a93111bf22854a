package engine

import (
	"cmp"
	"math"
	"slices"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/moistair"
	"thawbook/analysis/series"
	"thawbook/app/winter"
)

// standardPressurePa is the pressure taken where the keeper names no altitude (101 325 Pa, the standard
// atmosphere at sea level, ISO 2533).
const standardPressurePa = 101325

// inputOf is what a barn is judged by: the keeper's values in the words of the analysis, and its loggers
// with the outdoor ones.
func inputOf(barn winter.Barn, bands winter.Bands, tariff *winter.Tariff, zone *time.Location, loggers []analysis.Logger) analysis.Input {
	in := analysis.Input{
		Name: barn.Name, Zone: zone, PressurePa: standardPressurePa, VolumeM3: barn.VolumeM3,
		BeesIn: barn.BeesIn, BeesOut: barn.BeesOut, WaterLines: barn.WaterLines, AlarmC: barn.AlarmC, AlarmMin: barn.AlarmMin,
		Bands:   bandsOf(bands),
		Stages:  stagesOf(barn.Stages),
		Mixing:  mixingOf(barn.Mixing),
		Loggers: loggers,
	}
	if barn.AltitudeM != nil {
		in.PressurePa = moistair.PressurePa(*barn.AltitudeM)
	}
	if tariff != nil {
		in.PricePerKWh, in.Currency = &tariff.PerKWh, tariff.Currency
	}
	for _, h := range barn.Heads {
		in.Heads = append(in.Heads, analysis.HeadChange{At: h.At, Change: h.Change})
	}
	for _, x := range barn.Exclusions {
		in.Excluded = append(in.Excluded, series.Span{From: x.From, To: x.To})
	}
	for _, p := range barn.Phases {
		in.Phases = append(in.Phases, analysis.PhaseSetting{Name: p.Name, From: p.From, Bands: bandsOf(p.Bands)})
	}
	for _, h := range barn.Heats {
		in.Heats = append(in.Heats, analysis.HeatSource(h))
	}
	for _, s := range barn.Surfaces {
		in.Surfaces = append(in.Surfaces, surfaceOf(s))
	}
	for _, n := range barn.Notes {
		in.Notes = append(in.Notes, analysis.Note{At: n.At, Until: n.Until, Kind: n.Kind, Value: n.Value, Of: n.Of, Text: n.Text})
	}
	return in
}

// bandsOf are the keeper's bands, humidity in percent.
func bandsOf(b winter.Bands) analysis.Bands {
	return analysis.Bands{TempC: band(b.TempC, 1), RelHumPct: band(b.RelHum, 100)}
}

// band is the keeper's limits times a scale; nil stays nil.
func band(b winter.Band, scale float64) analysis.Band {
	times := func(limit *float64) *float64 {
		if limit == nil {
			return nil
		}
		v := *limit * scale
		if scale != 1 {
			v = math.Round(v*1e9) / 1e9 // 0.55 is 55 %, not 55.00000000000001
		}
		return &v
	}
	return analysis.Band{
		GoodLow: times(b.GoodLow), GoodHigh: times(b.GoodHigh), WatchLow: times(b.WatchLow),
		WatchHigh: times(b.WatchHigh), ActLow: times(b.ActLow), ActHigh: times(b.ActHigh),
	}
}

// stagesOf gathers the settings of each stage, earliest first, each holding until the next.
func stagesOf(all []winter.Stage) (out []analysis.Stage) {
	for _, s := range all {
		i := slices.IndexFunc(out, func(o analysis.Stage) bool { return o.Name == s.Name })
		if i < 0 {
			i = len(out)
			out = append(out, analysis.Stage{Name: s.Name})
		}
		out[i].Settings = append(out[i].Settings, settingOf(s))
	}
	for _, stage := range out {
		slices.SortStableFunc(stage.Settings, func(a, b analysis.Setting) int { return cmp.Compare(a.Span.From, b.Span.From) })
		for i := 1; i < len(stage.Settings); i++ {
			stage.Settings[i-1].Span.To = stage.Settings[i].Span.From
		}
	}
	return out
}

// settingOf is one setting, from its date on.
func settingOf(s winter.Stage) analysis.Setting {
	out := analysis.Setting{
		Span: allTime, AlwaysOn: s.AlwaysOn, FlowLow: s.FlowLow, FlowHigh: s.FlowHigh, FlowMeasured: s.FlowMeasured, Watts: s.Watts,
	}
	if s.From != nil {
		out.Span.From = *s.From
	}
	if s.OnC != nil && s.OffC != nil {
		out.OnC, out.OffC = *s.OnC, *s.OffC
	}
	if s.TimerOnS != nil && s.TimerEvery != nil {
		out.Timer, out.TimerDuty = true, *s.TimerOnS / *s.TimerEvery
		out.TimerEveryMS = int64(math.Round(1000 * *s.TimerEvery))
	}
	return out
}

// mixingOf are the settings of the mixing fans, each holding until the same fan's next.
func mixingOf(all []winter.Circulation) (out []analysis.MixingFan) {
	for _, c := range all {
		fan := analysis.MixingFan{Name: c.Name, Span: allTime, Watts: c.Watts}
		if c.From != nil {
			fan.Span.From = *c.From
		}
		for i := range out {
			if out[i].Name == fan.Name && out[i].Span.From < fan.Span.From {
				out[i].Span.To = min(out[i].Span.To, fan.Span.From)
			}
		}
		out = append(out, fan)
	}
	return out
}

// factors are the temperature factors taken for a surface the keeper says nothing more of: insulated wall
// (about 2.6 m²K/W) 0.90–0.95 and ceiling 0.94–0.97; corner and slab edge lower; thin metal −0.25–0.35,
// computed as 1 − U·Rsi (common practice, no source).
var factors = map[string]struct{ low, high float64 }{
	"wall":    {0.90, 0.95},
	"ceiling": {0.94, 0.97},
	"corner":  {0.75, 0.90},
	"metal":   {-0.25, 0.35},
}

// surfaceOf is a surface with its factor and range: the keeper's, else the one of its kind.
func surfaceOf(s winter.Surface) analysis.Surface {
	out := analysis.Surface{Name: s.Name, Kind: s.Kind, Evidence: analysis.YourSetting, Logger: s.Logger}
	low, high := s.Low, s.High
	switch {
	case low == nil && s.Factor == nil:
		kind := factors[s.Kind]
		low, high, out.Evidence = &kind.low, &kind.high, analysis.Assumed
	case low == nil:
		low, high = s.Factor, s.Factor
	}
	out.Low, out.High = *low, *high
	out.Mid = (out.Low + out.High) / 2
	if s.Factor != nil {
		out.Mid = *s.Factor
	}
	return out
}

// untilOf is when a logger was hung elsewhere: the next from of a later logger of the same name.
func untilOf(all []winter.Logger, i int) *int64 {
	for _, next := range all[i+1:] {
		if next.Name == all[i].Name && next.From != nil {
			return next.From
		}
	}
	return nil
}
