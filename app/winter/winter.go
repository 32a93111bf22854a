// Package winter holds the keeper's document: one winter of one operation as plain values, and the edits
// that make the next document of one. Nothing here is derived from a logger, and nothing here reads a file.
// Instants are milliseconds UTC; the zero value of an optional number is nil. Lists keep the keeper's order.
// The names in the tags are those of the winter file; they never change their meaning.
package winter

// Winter is one winter of one operation.
type Winter struct {
	Name       string    `json:"name"`
	Zone       string    `json:"zone"`                  // IANA name or ±hh:mm: the zone of days and of everything the keeper wrote down
	GapMinutes *float64  `json:"gap_minutes,omitempty"` // longest step still joined by a line; nil for the house rule
	Barns      []Barn    `json:"barns,omitempty"`
	Outdoor    []Logger  `json:"outdoor,omitempty"` // weather that holds for every barn
	Tray       []Logger  `json:"tray,omitempty"`    // loggers that hang nowhere yet
	Bands      Bands     `json:"bands,omitzero"`
	Tariff     *Tariff   `json:"tariff,omitempty"`
	Answers    []Answer  `json:"answers,omitempty"`
	Refused    []Refused `json:"refused,omitempty"` // files that were given and could not be taken
}

// Barn is one wintering building or room.
type Barn struct {
	Name       string        `json:"name"`
	AltitudeM  *float64      `json:"altitude_m,omitempty"`
	VolumeM3   *float64      `json:"volume_m3,omitempty"`
	BeesIn     *int64        `json:"bees_in,omitempty"`
	BeesOut    *int64        `json:"bees_out,omitempty"`
	WaterLines bool          `json:"water_lines,omitempty"`
	AlarmC     *float64      `json:"alarm_c,omitempty"` // what the barn's alarm is set to; nil for the house's line
	AlarmMin   *float64      `json:"alarm_delay_min,omitempty"`
	Heads      []HeadCount   `json:"heads,omitempty"`
	Phases     []Phase       `json:"phases,omitempty"`
	Stages     []Stage       `json:"stages,omitempty"`
	Mixing     []Circulation `json:"mixing,omitempty"`
	Heats      []HeatSource  `json:"heats,omitempty"`
	Surfaces   []Surface     `json:"surfaces,omitempty"`
	Loggers    []Logger      `json:"loggers,omitempty"`
	Notes      []Note        `json:"notes,omitempty"`
	Exclusions []Exclusion   `json:"exclusions,omitempty"` // stretches of the bees' time that are not scored
}

// HeadCount is one entry of the head-count ledger: hives moved in (+) or out (−) at an instant.
type HeadCount struct {
	At     int64  `json:"at"`
	Change int    `json:"change"`
	Note   string `json:"note,omitempty"`
}

// Phase is a stretch of the bees' time judged by itself, from an instant to the start of the next. Without
// From it starts where the house rule says. Limits set here hold instead of the winter's.
type Phase struct {
	Name  string `json:"name"` // one of PhaseNames
	From  *int64 `json:"from,omitempty"`
	Bands Bands  `json:"bands,omitzero"`
}

// PhaseNames are the phases of a winter, in order.
var PhaseNames = []string{"filling", "deep winter", "late winter", "emptying"}

// Stage is one step of the fan ladder under one setting. A stage named again with a later From changes
// its settings from then on. Exactly one of AlwaysOn, thermostat (OnC and OffC) and timer holds.
type Stage struct {
	Name         string   `json:"name"`
	From         *int64   `json:"from,omitempty"`
	AlwaysOn     bool     `json:"always_on,omitempty"`
	OnC          *float64 `json:"on_c,omitempty"`       // on when T ≥ OnC
	OffC         *float64 `json:"off_c,omitempty"`      // off when T ≤ OffC
	TimerOnS     *float64 `json:"timer_on_s,omitempty"` // seconds
	TimerEvery   *float64 `json:"timer_every_s,omitempty"`
	FlowLow      *float64 `json:"flow_low_m3s,omitempty"` // m³/s at working pressure
	FlowHigh     *float64 `json:"flow_high_m3s,omitempty"`
	FlowMeasured bool     `json:"flow_measured,omitempty"` // a single flow was measured; else it is the nameplate
	Watts        *float64 `json:"watts,omitempty"`
}

// Circulation is a mixing fan: it moves no air out.
type Circulation struct {
	Name  string   `json:"name"`
	From  *int64   `json:"from,omitempty"`
	Watts *float64 `json:"watts,omitempty"`
}

// HeatSource is added heat: floor, solar, heater or recovery.
type HeatSource struct {
	Name      string `json:"name"`
	Kind      string `json:"kind"`                 // floor, solar, heater, recovery
	WithStage string `json:"with_stage,omitempty"` // the stage it is wired with
	Into      string `json:"into,omitempty"`       // air, floor, water
}

// Surface is an inner surface between the room and outdoors. Factor is the temperature factor
// (Ts − To)/(Ti − To), 0–1; Low and High are its range.
type Surface struct {
	Name   string   `json:"name"`
	Kind   string   `json:"kind"` // wall, ceiling, corner, metal
	Factor *float64 `json:"factor,omitempty"`
	Low    *float64 `json:"low,omitempty"`
	High   *float64 `json:"high,omitempty"`
	Logger string   `json:"logger,omitempty"` // a logger that hangs on it
}

// Logger is an instrument and where it hung from a date on.
type Logger struct {
	Name         string        `json:"name"`
	Files        []string      `json:"files,omitempty"` // patterns: of files beside the plan, or of names in the winter file
	Place        string        `json:"place,omitempty"` // one of Places
	From         *int64        `json:"from,omitempty"`
	Channel      string        `json:"channel,omitempty"`
	RecordsStage string        `json:"records_stage,omitempty"`
	OffsetC      float64       `json:"offset_c,omitempty"`       // added to what it said, K
	OffsetRelHum float64       `json:"offset_rel_hum,omitempty"` // added to what it said, 0–1
	Zone         string        `json:"zone,omitempty"`
	FollowsDST   *bool         `json:"follows_dst,omitempty"`
	Anchors      []Anchor      `json:"anchors,omitempty"`
	StationKM    *float64      `json:"station_km,omitempty"`
	Checks       []Calibration `json:"checks,omitempty"`
	AheadMS      int64         `json:"ahead,omitempty"`      // by how much its clock was found to be ahead, ms, besides zone and anchors
	Exclusions   []Exclusion   `json:"exclusions,omitempty"` // stretches whose readings are not used
	Kept         []Exclusion   `json:"kept,omitempty"`       // what looked odd, for the reason, and the keeper said to keep
	Assumed      bool          `json:"assumed,omitempty"`    // the place was taken by the program, not said by the keeper
}

// Anchor ties a clock face of a logger to the true time: the logger said FaceMS (the face read as if it
// were UTC) when the watch said At.
type Anchor struct {
	FaceMS int64 `json:"face"`
	At     int64 `json:"at"`
}

// Calibration is one check of a logger against something known: what it said and what was true. RH is 0–1.
type Calibration struct {
	At         *int64   `json:"at,omitempty"`
	Method     string   `json:"method"` // one of CheckMethods
	SaidC      *float64 `json:"said_c,omitempty"`
	TrueC      *float64 `json:"true_c,omitempty"`
	SaidRelHum *float64 `json:"said_rel_hum,omitempty"`
	TrueRelHum *float64 `json:"true_rel_hum,omitempty"`
}

// CheckMethods are the ways a logger is checked: in melting ice, over salt slush, beside another instrument.
var CheckMethods = []string{"ice", "salt", "side by side"}

// Offset is what is added to a logger's readings, in K and 0–1, and whether each was checked: the offset
// the keeper set, else the mean of what its checks found it to be off by.
func (l Logger) Offset() (c, relHum float64, checkedC, checkedRelHum bool) {
	var sumC, sumRelHum float64
	var nC, nRelHum int
	for _, k := range l.Checks {
		if k.SaidC != nil && k.TrueC != nil {
			sumC, nC = sumC+*k.TrueC-*k.SaidC, nC+1
		}
		if k.SaidRelHum != nil && k.TrueRelHum != nil {
			sumRelHum, nRelHum = sumRelHum+*k.TrueRelHum-*k.SaidRelHum, nRelHum+1
		}
	}
	c, relHum = l.OffsetC, l.OffsetRelHum
	if c == 0 && nC > 0 {
		c = sumC / float64(nC)
	}
	if relHum == 0 && nRelHum > 0 {
		relHum = sumRelHum / float64(nRelHum)
	}
	return c, relHum, l.OffsetC != 0 || nC > 0, l.OffsetRelHum != 0 || nRelHum > 0
}

// CheckedApart says whether a logger's temperature and humidity were checked by themselves, in ice or over salt: what is off
// then has nothing to do with what another logger is off by.
func (l Logger) CheckedApart() (c, relHum bool) {
	c, relHum = l.OffsetC == 0, l.OffsetRelHum == 0
	var checkedC, checkedRelHum bool
	for _, k := range l.Checks {
		apart := k.Method != CheckMethods[2]
		if k.TrueC != nil {
			c, checkedC = c && apart, true
		}
		if k.TrueRelHum != nil {
			relHum, checkedRelHum = relHum && apart, true
		}
	}
	return c && checkedC, relHum && checkedRelHum
}

// Exclusion is a stretch [From, To) that is left out, and why. Of a logger it may be one quantity only.
type Exclusion struct {
	From     int64  `json:"from"`
	To       int64  `json:"to"`
	Reason   string `json:"reason,omitempty"`
	Quantity string `json:"quantity,omitempty"` // OfTemperature, OfHumidity, or "" for all the logger recorded
}

// The quantities of which alone a stretch may be left out.
const (
	OfTemperature = "temperature"
	OfHumidity    = "humidity"
)

// Takes says whether a stretch leaves a quantity out.
func (x Exclusion) Takes(quantity string) bool { return x.Quantity == "" || x.Quantity == quantity }

// Note is something the keeper saw or did: at an instant, or until another.
type Note struct {
	At    int64    `json:"at"`
	Until *int64   `json:"until,omitempty"`
	Kind  string   `json:"kind"` // one of NoteKinds, or the keeper's own word
	Value *float64 `json:"value,omitempty"`
	Of    *float64 `json:"of,omitempty"`   // of how many that were looked at Value was counted; nil for all there were
	Unit  string   `json:"unit,omitempty"` // of Value, where the kind leaves a choice
	Text  string   `json:"text,omitempty"`
}

// NoteKind is a kind of note with the units its number may be in; none where it has no number or no choice.
type NoteKind struct {
	Name  string
	Units []string
}

// NoteKinds are the kinds of notes a keeper of a wintering barn makes (common practice, no source).
var NoteKinds = []NoteKind{
	{"sweepings", []string{"pails", "barrels", "kg"}}, {"dead count", []string{"hives"}}, {"wet boxes", []string{"boxes"}}, {"doors open", nil},
	{"power cut", nil}, {"filter cleaned", nil}, {"alarm call", nil}, {"alarm off", nil}, {"other", nil},
}

// Tariff is the price of electricity.
type Tariff struct {
	PerKWh   float64 `json:"per_kwh"`
	Currency string  `json:"currency"` // ISO 4217, such as EUR
}

// Answer is a reply to a question about files: to those whose name fits the pattern File, or, with a Layout, to
// all that are written that way; then File is the one it was said of.
type Answer struct {
	File   string `json:"file"`
	ID     string `json:"id"`
	Option string `json:"option"`
	Layout string `json:"layout,omitempty"`
}

// Refused is a file that was given and could not be taken, and why: a code with its arguments, and the line and
// column of the file where there are such. Without a code the one argument is the sentence.
type Refused struct {
	Name   string   `json:"name"`
	Code   string   `json:"code,omitempty"`
	Args   []string `json:"args,omitempty"`
	Line   int      `json:"line,omitempty"`
	Column int      `json:"column,omitempty"`
}

// Bands are safe bands. RH is 0–1.
type Bands struct {
	TempC  Band `json:"temp_c,omitzero"`
	RelHum Band `json:"rel_hum,omitzero"`
}

// Band holds the limits the keeper set himself; nil leaves the house default.
type Band struct {
	GoodLow   *float64 `json:"good_low,omitempty"`
	GoodHigh  *float64 `json:"good_high,omitempty"`
	WatchLow  *float64 `json:"watch_low,omitempty"`
	WatchHigh *float64 `json:"watch_high,omitempty"`
	ActLow    *float64 `json:"act_low,omitempty"`
	ActHigh   *float64 `json:"act_high,omitempty"`
}

// Places are the words for where a logger hangs.
var Places = []string{"room", "control", "alarm", "intake", "exhaust", "outdoor", "wall", "ceiling", "cold metal", "floor", "hive", DoorPlace, RecordPlace, NoPlace}
