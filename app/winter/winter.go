// Package winter holds the keeper's document: one winter of one operation as plain values. Nothing here
// is derived from a logger, and nothing here reads a file. Instants are milliseconds UTC; the zero value
// of an optional number is nil. Lists keep the keeper's order.
package winter

// Winter is one winter of one operation.
type Winter struct {
	Name       string
	Zone       string   // IANA name or ±hh:mm: the zone of days and of everything the keeper wrote down
	GapMinutes *float64 // longest step still joined by a line; nil for the house rule
	Barns      []Barn
	Outdoor    []Logger // weather that holds for every barn
	Bands      Bands
	Answers    []Answer
}

// Barn is one wintering building or room.
type Barn struct {
	Name       string
	AltitudeM  *float64
	VolumeM3   *float64
	BeesIn     *int64
	BeesOut    *int64
	WaterLines bool
	Heads      []HeadCount
	Stages     []Stage
	Heats      []HeatSource
	Surfaces   []Surface
	Loggers    []Logger
	Notes      []Note
}

// HeadCount is one entry of the head-count ledger: hives moved in (+) or out (−) at an instant.
type HeadCount struct {
	At     int64
	Change int
	Note   string
}

// Stage is one step of the fan ladder under one setting. A stage named again with a later From changes
// its settings from then on. Exactly one of AlwaysOn, thermostat (OnC and OffC) and timer holds.
type Stage struct {
	Name                 string
	From                 *int64
	AlwaysOn             bool
	OnC, OffC            *float64 // on when T ≥ OnC, off when T ≤ OffC
	TimerOnS, TimerEvery *float64 // seconds
	FlowLow, FlowHigh    *float64 // m³/s at working pressure
	Watts                *float64
}

// HeatSource is added heat: floor, solar, heater or recovery.
type HeatSource struct {
	Name      string
	Kind      string // floor, solar, heater, recovery
	WithStage string // the stage it is wired with
	Into      string // air, floor, water
}

// Surface is an inner surface between the room and outdoors. Factor is the temperature factor
// (Ts − To)/(Ti − To), 0–1; Low and High are its range.
type Surface struct {
	Name              string
	Kind              string // wall, ceiling, corner, metal
	Factor, Low, High *float64
	Logger            string // a logger that hangs on it
}

// Logger is an instrument and where it hung from a date on.
type Logger struct {
	Name         string
	Files        []string // patterns, relative to the plan
	Place        string   // one of Places
	From         *int64
	Channel      string
	RecordsStage string
	OffsetC      float64 // added to what it said, K
	OffsetRelHum float64 // added to what it said, 0–1
	Zone         string
	FollowsDST   *bool
	Anchors      []Anchor
	StationKM    *float64
}

// Anchor ties a clock face of a logger to the true time: the logger said FaceMS (the face read as if it
// were UTC) when the watch said At.
type Anchor struct{ FaceMS, At int64 }

// Note is something the keeper saw.
type Note struct {
	At    int64
	Kind  string
	Value *float64
	Text  string
}

// Answer is a reply to a question about a file.
type Answer struct{ File, ID, Option string }

// Bands are the safe bands of the winter. RH is 0–1.
type Bands struct{ TempC, RelHum Band }

// Band holds the limits the keeper set himself; nil leaves the house default.
type Band struct{ GoodLow, GoodHigh, WatchLow, WatchHigh, ActLow, ActHigh *float64 }

// Places are the words for where a logger hangs.
var Places = []string{"room", "control", "intake", "exhaust", "outdoor", "wall", "ceiling", "cold metal", "floor", "hive", "other", "don't know"}
