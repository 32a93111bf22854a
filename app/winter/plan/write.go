package plan

import (
	"io"
	"math"
	"strconv"
	"time"

	"github.com/pelletier/go-toml/v2"

	"thawbook/app/winter"
)

// Write prints a winter as a plan. A winter that Read made reads back the same, number for number.
func Write(out io.Writer, w winter.Winter) error {
	loc := location(w.Zone)
	doc := document{
		Winter: winterTable{Name: &w.Name, Zone: w.Zone, GapMinutes: w.GapMinutes},
		Bands:  writtenBands(w.Bands),
	}
	if w.Tariff != nil {
		doc.Tariff = &tariffTable{PerKWh: &w.Tariff.PerKWh, Currency: w.Tariff.Currency}
	}
	for _, barn := range w.Barns {
		doc.Barns = append(doc.Barns, writtenBarn(barn, loc))
	}
	for _, l := range w.Outdoor {
		doc.Outdoor = append(doc.Outdoor, outdoorTable{loggerTable: writtenLogger(l, loc), StationKM: l.StationKM})
	}
	for _, l := range w.Tray {
		doc.Tray = append(doc.Tray, writtenLogger(l, loc))
	}
	for _, a := range w.Answers {
		doc.Answers = append(doc.Answers, answerTable(a))
	}
	for _, r := range w.Refused {
		doc.Refused = append(doc.Refused, refusedTable(r))
	}
	return toml.NewEncoder(out).Encode(doc)
}

// writtenBarn is a barn as its tables.
func writtenBarn(barn winter.Barn, loc *time.Location) barnTable {
	t := barnTable{
		Name: barn.Name, AltitudeM: barn.AltitudeM, VolumeM3: barn.VolumeM3, WaterLines: barn.WaterLines,
		AlarmC: barn.AlarmC, AlarmMin: barn.AlarmMin,
		BeesIn: writtenIf(barn.BeesIn, loc), BeesOut: writtenIf(barn.BeesOut, loc), Exclusions: writtenExclusions(barn.Exclusions, loc),
	}
	for _, h := range barn.Heads {
		t.Heads = append(t.Heads, headsTable{At: written(h.At, loc), Change: &h.Change, Note: h.Note})
	}
	for _, p := range barn.Phases {
		t.Phases = append(t.Phases, phaseTable{Name: p.Name, From: writtenIf(p.From, loc), Bands: writtenBands(p.Bands)})
	}
	for _, s := range barn.Stages {
		t.Stages = append(t.Stages, writtenStage(s, loc))
	}
	for _, c := range barn.Mixing {
		t.Mixing = append(t.Mixing, mixingTable{Name: c.Name, From: writtenIf(c.From, loc), Watts: c.Watts})
	}
	for _, h := range barn.Heats {
		t.Heats = append(t.Heats, heatTable(h))
	}
	for _, s := range barn.Surfaces {
		t.Surfaces = append(t.Surfaces, surfaceTable(s))
	}
	for _, l := range barn.Loggers {
		t.Loggers = append(t.Loggers, writtenLogger(l, loc))
	}
	for _, n := range barn.Notes {
		t.Notes = append(t.Notes, noteTable{
			At: written(n.At, loc), Until: writtenIf(n.Until, loc), Kind: n.Kind, Value: n.Value, Of: n.Of, Unit: n.Unit, Text: n.Text,
		})
	}
	return t
}

// writtenStage is a stage as its table; a flow without a range is one number.
func writtenStage(s winter.Stage, loc *time.Location) stageTable {
	t := stageTable{
		Name: s.Name, From: writtenIf(s.From, loc), OnC: s.OnC, OffC: s.OffC,
		TimerOnS: s.TimerOnS, TimerEveryS: s.TimerEvery, FlowMeasured: s.FlowMeasured, Watts: s.Watts,
	}
	if s.AlwaysOn {
		t.AlwaysOn = &s.AlwaysOn
	}
	low, high := unscaled(s.FlowLow, secondsPerHour), unscaled(s.FlowHigh, secondsPerHour)
	if low != nil && high != nil && *low == *high {
		t.FlowM3H = low
	} else {
		t.FlowLow, t.FlowHigh = low, high
	}
	return t
}

// writtenLogger is a logger as its table.
func writtenLogger(l winter.Logger, loc *time.Location) loggerTable {
	t := loggerTable{
		Name: l.Name, Files: l.Files, Place: l.Place, From: writtenIf(l.From, loc), Channel: l.Channel,
		RecordsStage: l.RecordsStage, OffsetC: l.OffsetC, OffsetRH: *unscaled(&l.OffsetRelHum, percent),
		Zone: l.Zone, FollowsDST: l.FollowsDST, Assumed: l.Assumed, Exclusions: writtenExclusions(l.Exclusions, loc),
		ClockAheadMin: float64(l.AheadMS) / minuteMS, Kept: writtenExclusions(l.Kept, loc),
	}
	for _, a := range l.Anchors {
		t.Anchors = append(t.Anchors, []any{writtenFace(a.FaceMS), written(a.At, loc)})
	}
	for _, c := range l.Checks {
		t.Checks = append(t.Checks, checkTable{
			At: writtenIf(c.At, loc), Method: c.Method, SaidC: c.SaidC, TrueC: c.TrueC,
			SaidRH: unscaled(c.SaidRelHum, percent), TrueRH: unscaled(c.TrueRelHum, percent),
		})
	}
	return t
}

// writtenExclusions is stretches left out as their tables.
func writtenExclusions(exclusions []winter.Exclusion, loc *time.Location) (out []excludeTable) {
	for _, x := range exclusions {
		out = append(out, excludeTable{From: written(x.From, loc), To: written(x.To, loc), Reason: x.Reason, Quantity: x.Quantity})
	}
	return out
}

// writtenBands is the keeper's limits as tables; nil where he set none.
func writtenBands(b winter.Bands) *bandsTable {
	t := bandsTable{AirTemperature: writtenBand(b.TempC, 1), RelativeHumidity: writtenBand(b.RelHum, percent)}
	if t == (bandsTable{}) {
		return nil
	}
	return &t
}

// writtenBand is one quantity's limits, each multiplied by by; nil where there is none.
func writtenBand(b winter.Band, by float64) *bandTable {
	if b == (winter.Band{}) {
		return nil
	}
	return &bandTable{
		GoodLow: unscaled(b.GoodLow, by), GoodHigh: unscaled(b.GoodHigh, by),
		WatchLow: unscaled(b.WatchLow, by), WatchHigh: unscaled(b.WatchHigh, by),
		ActLow: unscaled(b.ActLow, by), ActHigh: unscaled(b.ActHigh, by),
	}
}

// writtenIf is an instant that may be absent.
func writtenIf(at *int64, loc *time.Location) any {
	if at == nil {
		return nil
	}
	return written(*at, loc)
}

// unscaled undoes scaled: the number with the fewest digits that divided by by gives the value back. The
// product alone is often a digit or two off (0.55 × 100 is 55.00000000000001).
func unscaled(value *float64, by float64) *float64 {
	if value == nil {
		return nil
	}
	product := *value * by
	for digits := 1; digits <= 17; digits++ {
		short, err := strconv.ParseFloat(strconv.FormatFloat(product, 'g', digits, 64), 64)
		if err == nil && short/by == *value {
			return &short
		}
	}
	for _, near := range []float64{math.Nextafter(product, math.Inf(1)), math.Nextafter(product, math.Inf(-1))} {
		if near/by == *value {
			return &near
		}
	}
	return &product
}
