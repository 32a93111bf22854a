package sampledata

import (
	"encoding/json"
	"time"
)

// Truth is what truth.json holds: what really happened in the demo winter. Instants are RFC 3339 in UTC. Hours
// are counted in simulation steps of ten seconds over the bees' time, from the first colony in to the last
// one out.
type Truth struct {
	Seed  uint64      `json:"seed"`   // of the random streams
	StepS float64     `json:"step_s"` // of the simulation, s
	Barns []BarnTruth `json:"barns"`
	// Outdoor are the loggers that hang outdoors.
	Outdoor []LoggerTruth `json:"outdoor"`
}

// BarnTruth is the truth of one barn. Air is the room's mean air, without any sensor between.
type BarnTruth struct {
	Name    string `json:"name"`
	BeesIn  string `json:"bees_in"`
	BeesOut string `json:"bees_out"`

	Hours       float64 `json:"hours"`         // of the bees' time
	HoursBelow2 float64 `json:"hours_below_2"` // air strictly below 2 °C
	HoursIn     float64 `json:"hours_in"`      // 2 to 6 °C
	HoursAbove6 float64 `json:"hours_above_6"` // strictly above 6 °C; those above 8 are among them
	HoursAbove8 float64 `json:"hours_above_8"`

	MeanC float64 `json:"mean_c"` // time-weighted
	MinC  float64 `json:"min_c"`
	MaxC  float64 `json:"max_c"`

	MeanRelHumPct  float64 `json:"mean_relhum_pct"` // time-weighted mean of the relative humidity over water, %
	HoursRHBelow40 float64 `json:"hours_rh_below_40"`
	HoursRHAbove75 float64 `json:"hours_rh_above_75"` // those above 85 are among them
	HoursRHAbove85 float64 `json:"hours_rh_above_85"`
	MeanOutdoorC   float64 `json:"mean_outdoor_c"`
	HiveDays       float64 `json:"hive_days"`
	PressurePa     float64 `json:"pressure_pa"`
	ThermostatLagS float64 `json:"thermostat_lag_s"` // first-order lag of the thermostat's sensor; it has no offset
	RestingColonyW float64 `json:"resting_colony_w"` // total heat of a colony at 5–10 °C in midwinter

	Wall    WallTruth     `json:"wall"`
	Stages  []StageTruth  `json:"stages"`
	Months  []MonthTruth  `json:"months"`
	Loggers []LoggerTruth `json:"loggers"`
}

// WallTruth is the listed wall. It sweats while the vapour pressure of the room's air exceeds saturation at
// its surface: dew above 0 °C, frost at or below.
type WallTruth struct {
	Factor     float64 `json:"factor"` // (surface − outdoor)/(room − outdoor) at rest
	LagS       float64 `json:"lag_s"`  // first-order lag towards it
	DewHours   float64 `json:"dew_hours"`
	FrostHours float64 `json:"frost_hours"`
}

// StageTruth is one fan stage. Called is what the thermostat asked, by its own sensor; ran is what moved air.
type StageTruth struct {
	Name         string  `json:"name"`
	CalledHours  float64 `json:"called_hours"`
	RanHours     float64 `json:"ran_hours"`
	CalledStarts int     `json:"called_starts"` // off to on; one that is on as the bees come in does not count
	RanStarts    int     `json:"ran_starts"`
	FirstParted  *string `json:"first_parted"` // first instant it was called for and did not run; null for never
	FlowM3H      float64 `json:"flow_m3h"`     // of this stage alone, true
	KWh          float64 `json:"kwh"`
}

// MonthTruth is one local month of the bees' time.
type MonthTruth struct {
	Month         string  `json:"month"` // yyyy-mm
	Hours         float64 `json:"hours"`
	MeanC         float64 `json:"mean_c"`
	MeanRelHumPct float64 `json:"mean_relhum_pct"`
	MeanOutdoorC  float64 `json:"mean_outdoor_c"`
	HoursBelow2   float64 `json:"hours_below_2"`
	HoursAbove6   float64 `json:"hours_above_6"`
	HoursAbove8   float64 `json:"hours_above_8"`
	DewHours      float64 `json:"dew_hours"` // of the listed wall
	FrostHours    float64 `json:"frost_hours"`
}

// LoggerTruth is one file.
type LoggerTruth struct {
	Name      string         `json:"name"`
	File      string         `json:"file"`
	Place     string         `json:"place"`
	IntervalS int64          `json:"interval_s"`
	Rows      int            `json:"rows"`  // data lines
	First     string         `json:"first"` // instants of the first and last data line
	Last      string         `json:"last"`
	Channels  []ChannelTruth `json:"channels"`
}

// ChannelTruth is one column. Offset, noise and true mean are in K, °C or percent.
type ChannelTruth struct {
	Column   string   `json:"column"`
	Quantity string   `json:"quantity"`
	Offset   float64  `json:"offset"` // what it says above what is there
	NoiseSD  float64  `json:"noise_sd"`
	LagS     float64  `json:"lag_s"`     // first order
	Step     float64  `json:"step"`      // resolution in the unit of the file
	Missing  int      `json:"missing"`   // readings replaced by a missing word
	TrueMean *float64 `json:"true_mean"` // of what was there at its place over the bees' time; null outdoors
}

func utc(atMS int64) string { return time.UnixMilli(atMS).UTC().Format(time.RFC3339) }

func hours(steps int) float64 { return float64(steps) * stepS / 3600 }

// truth is the finished simulation's.
func (sim *simulation) truth() BarnTruth {
	t, c := sim.tally, sim.tally.whole
	b := BarnTruth{
		Name: sim.name, BeesIn: utc(t.bees.from), BeesOut: utc(t.bees.to),
		Hours: hours(c.airC.n), HoursBelow2: hours(c.below2), HoursIn: hours(c.airC.n - c.below2 - c.above6),
		HoursAbove6: hours(c.above6), HoursAbove8: hours(c.above8),
		MeanC: c.airC.value(), MinC: t.minC, MaxC: t.maxC,
		MeanRelHumPct: c.relHumPct.value(), HoursRHBelow40: hours(c.dry),
		HoursRHAbove75: hours(c.damp), HoursRHAbove85: hours(c.wet),
		MeanOutdoorC: c.outC.value(), HiveDays: hours(t.colonySteps) / 24, PressurePa: sim.pressurePa,
		ThermostatLagS: thermostatLagS, RestingColonyW: sim.colonyWatts,
		Wall: WallTruth{sim.wallFactor, sim.wallLagS, hours(c.dew), hours(c.frost)},
	}
	for i, st := range t.stages {
		b.Stages = append(b.Stages, st.truth(sim.ladderStages[i]))
	}
	for _, m := range t.months {
		b.Months = append(b.Months, m.truth())
	}
	for _, l := range sim.loggers {
		b.Loggers = append(b.Loggers, l.truth())
	}
	return b
}

func (c *counts) truth() MonthTruth {
	return MonthTruth{
		Month: c.month, Hours: hours(c.airC.n),
		MeanC: c.airC.value(), MeanRelHumPct: c.relHumPct.value(), MeanOutdoorC: c.outC.value(),
		HoursBelow2: hours(c.below2), HoursAbove6: hours(c.above6), HoursAbove8: hours(c.above8),
		DewHours: hours(c.dew), FrostHours: hours(c.frost),
	}
}

func (st stageTally) truth(s stage) StageTruth {
	t := StageTruth{
		Name: s.name, CalledHours: hours(st.called), RanHours: hours(st.ran),
		CalledStarts: st.calledStarts, RanStarts: st.ranStarts,
		FlowM3H: s.flowM3S * 3600, KWh: s.watts * hours(st.ran) / 1000,
	}
	if st.partedMS != 0 {
		at := utc(st.partedMS)
		t.FirstParted = &at
	}
	return t
}

func (l *logger) truth() LoggerTruth {
	t := LoggerTruth{
		Name: l.name, File: l.file, Place: l.place, IntervalS: l.everyMS / secondMS,
		Rows: l.rows, First: utc(l.from), Last: utc(l.to),
	}
	for _, c := range l.channels {
		ch := ChannelTruth{Column: c.title, Quantity: string(c.quantity), Offset: c.offset, NoiseSD: c.noise,
			LagS: c.lagS, Step: c.step, Missing: c.missing}
		if c.seen.n > 0 {
			v := c.seen.value()
			ch.TrueMean = &v
		}
		t.Channels = append(t.Channels, ch)
	}
	return t
}

// text is the truth as a JSON file.
func (t Truth) text() ([]byte, error) {
	text, err := json.MarshalIndent(t, "", "  ")
	return append(text, '\n'), err
}
