package plan

// document is the plan as it stands in the file: the keys and their spelling, for reading and for writing.
type document struct {
	Winter  winterTable    `toml:"winter"`
	Bands   *bandsTable    `toml:"bands,omitempty"`
	Barns   []barnTable    `toml:"barn,omitempty"`
	Outdoor []outdoorTable `toml:"outdoor,omitempty"`
	Tray    []loggerTable  `toml:"tray,omitempty"`
	Tariff  *tariffTable   `toml:"tariff,omitempty"`
	Answers []answerTable  `toml:"answer,omitempty"`
	Refused []refusedTable `toml:"refused,omitempty"`
}

type winterTable struct {
	Name       *string  `toml:"name,omitempty"`
	Zone       string   `toml:"zone"`
	GapMinutes *float64 `toml:"gap_minutes,omitempty"`
}

type bandsTable struct {
	AirTemperature   *bandTable `toml:"air_temperature,omitempty"`
	RelativeHumidity *bandTable `toml:"relative_humidity,omitempty"`
}

type bandTable struct {
	GoodLow   *float64 `toml:"good_low,omitempty"`
	GoodHigh  *float64 `toml:"good_high,omitempty"`
	WatchLow  *float64 `toml:"watch_low,omitempty"`
	WatchHigh *float64 `toml:"watch_high,omitempty"`
	ActLow    *float64 `toml:"act_low,omitempty"`
	ActHigh   *float64 `toml:"act_high,omitempty"`
}

type barnTable struct {
	Name       string         `toml:"name"`
	AltitudeM  *float64       `toml:"altitude_m,omitempty"`
	VolumeM3   *float64       `toml:"volume_m3,omitempty"`
	BeesIn     any            `toml:"bees_in,omitempty"`
	BeesOut    any            `toml:"bees_out,omitempty"`
	WaterLines bool           `toml:"water_lines,omitempty"`
	AlarmC     *float64       `toml:"alarm_c,omitempty"`
	AlarmMin   *float64       `toml:"alarm_delay_min,omitempty"`
	Heads      []headsTable   `toml:"heads,omitempty"`
	Phases     []phaseTable   `toml:"phase,omitempty"`
	Stages     []stageTable   `toml:"stage,omitempty"`
	Mixing     []mixingTable  `toml:"mixing,omitempty"`
	Heats      []heatTable    `toml:"heat,omitempty"`
	Surfaces   []surfaceTable `toml:"surface,omitempty"`
	Loggers    []loggerTable  `toml:"logger,omitempty"`
	Notes      []noteTable    `toml:"note,omitempty"`
	Exclusions []excludeTable `toml:"exclude,omitempty"`
}

type headsTable struct {
	At     any    `toml:"at"`
	Change *int   `toml:"change,omitempty"`
	Note   string `toml:"note,omitempty"`
}

type phaseTable struct {
	Name  string      `toml:"name"`
	From  any         `toml:"from,omitempty"`
	Bands *bandsTable `toml:"bands,omitempty"`
}

type stageTable struct {
	Name         string   `toml:"name"`
	From         any      `toml:"from,omitempty"`
	AlwaysOn     *bool    `toml:"always_on,omitempty"`
	OnC          *float64 `toml:"on_c,omitempty"`
	OffC         *float64 `toml:"off_c,omitempty"`
	TimerOnS     *float64 `toml:"timer_on_s,omitempty"`
	TimerEveryS  *float64 `toml:"timer_every_s,omitempty"`
	FlowM3H      *float64 `toml:"flow_m3h,omitempty"`
	FlowLow      *float64 `toml:"flow_low,omitempty"`
	FlowHigh     *float64 `toml:"flow_high,omitempty"`
	FlowMeasured bool     `toml:"flow_measured,omitempty"`
	Watts        *float64 `toml:"watts,omitempty"`
}

type mixingTable struct {
	Name  string   `toml:"name"`
	From  any      `toml:"from,omitempty"`
	Watts *float64 `toml:"watts,omitempty"`
}

type heatTable struct {
	Name      string `toml:"name"`
	Kind      string `toml:"kind"`
	WithStage string `toml:"with_stage,omitempty"`
	Into      string `toml:"into,omitempty"`
}

type surfaceTable struct {
	Name   string   `toml:"name"`
	Kind   string   `toml:"kind"`
	Factor *float64 `toml:"factor,omitempty"`
	Low    *float64 `toml:"low,omitempty"`
	High   *float64 `toml:"high,omitempty"`
	Logger string   `toml:"logger,omitempty"`
}

type loggerTable struct {
	Name         string   `toml:"name"`
	Files        []string `toml:"files"` // [] for a logger that waits for its read-out
	Place        string   `toml:"place,omitempty"`
	From         any      `toml:"from,omitempty"`
	Channel      string   `toml:"channel,omitempty"`
	RecordsStage string   `toml:"records_stage,omitempty"`
	OffsetC      float64  `toml:"offset_c,omitempty"`
	OffsetRH     float64  `toml:"offset_rh,omitempty"`
	Zone         string   `toml:"zone,omitempty"`
	FollowsDST   *bool    `toml:"follows_dst,omitempty"`
	Anchors      [][]any  `toml:"anchors,omitempty"`
	Assumed      bool     `toml:"assumed,omitempty"`

	ClockAheadMin float64        `toml:"clock_ahead_min,omitempty"` // minutes, besides zone and anchors
	Checks        []checkTable   `toml:"check,omitempty"`
	Exclusions    []excludeTable `toml:"exclude,omitempty"`
	Kept          []excludeTable `toml:"keep,omitempty"` // what looked odd and was kept in
}

type checkTable struct {
	At     any      `toml:"at,omitempty"`
	Method string   `toml:"method"`
	SaidC  *float64 `toml:"said_c,omitempty"`
	TrueC  *float64 `toml:"true_c,omitempty"`
	SaidRH *float64 `toml:"said_rh,omitempty"`
	TrueRH *float64 `toml:"true_rh,omitempty"`
}

type excludeTable struct {
	From     any    `toml:"from"`
	To       any    `toml:"to"`
	Reason   string `toml:"reason,omitempty"`
	Quantity string `toml:"quantity,omitempty"` // of a logger: temperature, humidity; absent or both is all it recorded
}

type outdoorTable struct {
	loggerTable
	StationKM *float64 `toml:"station_km,omitempty"`
}

type noteTable struct {
	At    any      `toml:"at"`
	Until any      `toml:"until,omitempty"`
	Kind  string   `toml:"kind"`
	Value *float64 `toml:"value,omitempty"`
	Of    *float64 `toml:"of,omitempty"`
	Unit  string   `toml:"unit,omitempty"`
	Text  string   `toml:"text,omitempty"`
}

type tariffTable struct {
	PerKWh   *float64 `toml:"per_kwh,omitempty"`
	Currency string   `toml:"currency"`
}

type answerTable struct {
	File   string `toml:"file"`
	ID     string `toml:"id"`
	Option string `toml:"option"`
	Layout string `toml:"layout,omitempty"`
}

type refusedTable struct {
	Name   string   `toml:"file"`
	Code   string   `toml:"code,omitempty"`
	Args   []string `toml:"args,omitempty"`
	Line   int      `toml:"line,omitempty"`
	Column int      `toml:"column,omitempty"`
}
