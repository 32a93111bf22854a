package analysis

import (
	"time"

	"thawbook/analysis/series"
)

// Input is everything one barn is judged by: values only, on one clock, in house units.
type Input struct {
	Name       string
	Zone       *time.Location // days are this zone's local days
	PressurePa float64
	VolumeM3   *float64
	BeesIn     *int64 // ms UTC; nil when the keeper did not say
	BeesOut    *int64
	Heads      []HeadChange
	Excluded   []series.Span  // of the bees' time, in any order: not scored
	Phases     []PhaseSetting // what the keeper set for some of them
	WaterLines bool
	AlarmC     *float64 // what the barn's alarm is set to; nil for the house's line
	AlarmMin   *float64 // after so many minutes
	Bands      Bands    // a limit left nil is the house default
	Stages     []Stage
	Heats      []HeatSource
	Mixing     []MixingFan // each setting by itself, earliest first
	Surfaces   []Surface
	Loggers    []Logger // those of the barn and the outdoor ones
	Notes      []Note

	PricePerKWh *float64 // of electricity, in Currency
	Currency    string   // ISO 4217
}

// Note is what the keeper set down at an instant, or until another (ms UTC). Kind is one of the house's kinds, such
// as "doors open", "power cut", "alarm call" and "alarm off", or a word of his own.
type Note struct {
	At    int64
	Until *int64
	Kind  string
	Value *float64
	Of    *float64 // of how many that were looked at Value was counted; nil for all
	Text  string
}

// notesOf are the notes of a kind.
func notesOf(notes []Note, kind string) (out []Note) {
	for _, n := range notes {
		if n.Kind == kind {
			out = append(out, n)
		}
	}
	return out
}

// PhaseSetting is what the keeper set for a phase: when it starts, nil for the house rule, and its limits.
type PhaseSetting struct {
	Name  string
	From  *int64
	Bands Bands
}

// HeadChange is an entry of the head-count ledger.
type HeadChange struct {
	At     int64
	Change int
}

// Logger is an instrument with its curves, at one place.
type Logger struct {
	Name   string
	Place  string       // room, control, …, outdoor
	TempC  series.Curve // empty when it has none
	RelHum series.Curve // 0–1
	Light  series.Curve // lux, or 0 for dark and 1 for light

	TempErrK, RelHumErr float64 // 95 % half-widths
	TempApart           bool    // checked by itself, so that its error has nothing to do with another's
	RelHumApart         bool
	AddedK, AddedRelHum float64 // what its checks added to what it read; the curves hold it
	TempStepK           float64 // printed resolution
	StationKM           *float64

	RecordsStage string       // the stage or heat source whose state this logger shows
	State        series.Curve // 0 or 1, held until the next reading
	Speed        series.Curve // of what it records, 0–1 of full speed, held until the next reading; empty: full speed

	dewC series.Curve // worked out once
}

// Stage is one step of the fan ladder with its dated settings, earliest first.
type Stage struct {
	Name     string
	Settings []Setting
}

// Setting is how a stage was set over a span of time.
type Setting struct {
	Span         series.Span
	AlwaysOn     bool
	Timer        bool
	TimerDuty    float64
	TimerEveryMS int64
	OnC, OffC    float64
	FlowLow      *float64 // m³/s
	FlowHigh     *float64
	FlowMeasured bool // a single flow is no nameplate
	Watts        *float64
}

// MixingFan is a fan that moves no air out, as it was set over a span of time.
type MixingFan struct {
	Name  string
	Span  series.Span
	Watts *float64
}

// HeatSource is added heat: Kind is floor, solar, heater or recovery; WithStage the stage it is wired with, if any;
// Into, of a recovery, is air, floor or water.
type HeatSource struct{ Name, Kind, WithStage, Into string }

// Surface is an inner surface between room and outdoors with its temperature factor and range.
type Surface struct {
	Name, Kind     string
	Mid, Low, High float64
	Evidence       Evidence
	Logger         string // the name of a logger that hangs on it, if there is one
}
