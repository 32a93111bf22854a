package sampledata

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
	Stages  []StageTruth  `json:"stages"` // one for each setting of each
	Heats   []HeatTruth   `json:"heats"`
	Events  []EventTruth  `json:"events"` // in order
	Alarm   *AlarmTruth   `json:"alarm"`  // null where there is none
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

// StageTruth is one fan stage under one of its settings. Called is what the thermostat asked, by its own sensor, or
// would have asked without a power cut; ran is what moved air.
type StageTruth struct {
	Name         string  `json:"name"`
	From         *string `json:"from"` // when the setting was made; null for the first
	OnC          float64 `json:"on_c"` // both 0 for a stage that is always on
	OffC         float64 `json:"off_c"`
	CalledHours  float64 `json:"called_hours"`
	RanHours     float64 `json:"ran_hours"`
	CalledStarts int     `json:"called_starts"` // off to on; one that is on as the bees come in does not count
	RanStarts    int     `json:"ran_starts"`
	FirstParted  *string `json:"first_parted"` // first instant it was called for and did not run; null for never
	FlowM3H      float64 `json:"flow_m3h"`     // of this stage alone, true
	KWh          float64 `json:"kwh"`
}

// HeatTruth is one heat source.
type HeatTruth struct {
	Name         string  `json:"name"`
	Kind         string  `json:"kind"`
	WithStage    string  `json:"with_stage"` // "" for one that runs with the sun
	RanHours     float64 `json:"ran_hours"`
	OverlapHours float64 `json:"overlap_hours"` // with a stage above the second running
}

// EventTruth is something that happened: doors open, power cut, breaker out, batch out (from going out to coming
// back), setting changed (one instant).
type EventTruth struct {
	Kind  string `json:"kind"`
	Start string `json:"start"`
	End   string `json:"end"`

	// Of a power cut: the air as it began, by how much it rose in the first hour, its climb over the later hours,
	// K/h, and the most it came to, the hour after included.
	StartC     *float64 `json:"start_c,omitempty"`
	FirstHourK *float64 `json:"first_hour_k,omitempty"`
	LaterKH    *float64 `json:"later_k_h,omitempty"`
	PeakC      *float64 `json:"peak_c,omitempty"`
}

// AlarmTruth is the alarm that hangs beside the thermostat and feels the same.
type AlarmTruth struct {
	LimitC   float64     `json:"limit_c"`
	DelayMin float64     `json:"delay_min"`
	Off      []SpanTruth `json:"off"`
	Due      []CallTruth `json:"due"`
}

// CallTruth is a call that was due, and when it stands in the log; null for a call nobody got.
type CallTruth struct {
	Crossed string  `json:"crossed"`
	Due     string  `json:"due"`
	Logged  *string `json:"logged"`
}

// SpanTruth is a stretch.
type SpanTruth struct {
	Start string `json:"start"`
	End   string `json:"end"`
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

// LoggerTruth is one instrument.
type LoggerTruth struct {
	Name         string         `json:"name"`
	Place        string         `json:"place"`
	Files        []FileTruth    `json:"files"`
	IntervalS    int64          `json:"interval_s"`     // by its own clock
	ClockGainMin float64        `json:"clock_gain_min"` // by how much its clock was ahead at the end of its record
	EmptyBattery bool           `json:"empty_battery"`  // which ended its record
	Silent       []SpanTruth    `json:"silent"`         // when it wrote nothing
	InHouse      []SpanTruth    `json:"in_house"`       // when it lay on a kitchen table
	Channels     []ChannelTruth `json:"channels"`
}

// FileTruth is one read-out.
type FileTruth struct {
	File  string `json:"file"`
	Rows  int    `json:"rows"`  // data lines
	First string `json:"first"` // true instants of the first and last data line
	Last  string `json:"last"`
}

// ChannelTruth is one column. Offset, noise and true mean are in K, °C or percent.
type ChannelTruth struct {
	Column   string     `json:"column"`
	Quantity string     `json:"quantity"`
	Offset   float64    `json:"offset"` // what it says above what is there
	NoiseSD  float64    `json:"noise_sd"`
	LagS     float64    `json:"lag_s"`     // first order
	Step     float64    `json:"step"`      // resolution in the unit of the file
	Missing  int        `json:"missing"`   // readings replaced by a missing word
	Stuck    *SpanTruth `json:"stuck"`     // when it kept saying the same; null for never
	TrueMean *float64   `json:"true_mean"` // of what was there over the bees' time, while it recorded that; null outdoors
}
