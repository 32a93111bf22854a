package analysis

import "thawbook/analysis/series"

// Evidence says what a figure rests on.
type Evidence string

// The four kinds of evidence.
const (
	Recorded    Evidence = "recorded"
	WorkedOut   Evidence = "worked_out"
	YourSetting Evidence = "your_setting"
	Assumed     Evidence = "assumed"
)

// Figure is a number with how sure it is. OK is false when the data do not support one; Unknown then
// holds the code of the reason. Low and High enclose Mid; they equal Mid where no range can be given.
type Figure struct {
	Mid, Low, High float64
	OK             bool
	Unknown        string
	Evidence       Evidence
	Remarks        []series.Remark
}

// Review is what one barn's winter amounts to: a value, the same for the same input to the last bit.
type Review struct {
	Barn            string
	BeesIn, BeesOut int64    // ms UTC of the judged stretch
	BeesBy          BeesBy   // what its ends rest on
	Seen            BeesSeen // what the traces propose, whatever the keeper said
	HiveDays        Figure
	Coverage        float64 // known share of room air temperature over the bees' time
	Phases          []Phase
	Verdict         Verdict
	Quantities      []QuantityRow
	Spells          []Spell
	Surfaces        []SurfaceRow
	Stages          []StageRow
	Heats           []HeatRow
	Mixing          []MixingRow
	Power           Power
	Air             Air
	Events          []Event
	Alarms          []AlarmRow
	Offset          Figure // K, what the logger read above the thermostat
	Remarks         []series.Remark
	Dryness         []DryStretch
	Uniformity      []Uniformity
	Findings        []Finding // the heaviest first
	Traces          Traces
}

// Phase is a stretch of the winter judged by itself, against limits of its own.
type Phase struct {
	Name  string // filling, deep winter, late winter, emptying
	Span  series.Span
	Parts []series.Span // what of it is scored: the span less what the keeper excludes
	Bands Bands
}

// State answers one question of the verdict.
type State string

// The four answers.
const (
	Yes     State = "yes"
	Mostly  State = "mostly"
	No      State = "no"
	Unknown State = "unknown"
)

// Answer is one line of the verdict: its state, the figure it rests on with its unit, and coverage 0–1.
type Answer struct {
	State    State
	Figure   Figure
	Unit     string // percent, h
	Coverage float64
}

// Verdict holds the four questions. Damp and Dry are Yes when the barn was damp, or dry.
type Verdict struct{ Held, Damp, Dry, Fans Answer }

// QuantityRow is one quantity at one logger, or the mean of a place (Logger empty), over a phase, or the
// whole bees' time (Phase empty). Humidities are in percent here; Unit says so. A margin, K, is a surface's, named in
// Place. One that can't be told has the reason in its figures and no bands.
type QuantityRow struct {
	Quantity, Place, Logger, Phase, Unit string
	KnownMS, UnknownMS                   int64
	Min, Mean, Max                       Figure // Mean is time-weighted
	Bands                                []BandRow
}

// BandRow counts time and degree-hours outside one band; a nil limit does not count. Over the whole bees' time
// each phase is counted against its own limits, and a limit that is not the same in all of them is nil.
type BandRow struct {
	Name                         string // good, watch, act
	Low, High                    *float64
	HoursBelow, HoursIn          float64
	HoursAbove                   float64
	DegHoursBelow, DegHoursAbove float64

	// The same counts with every reading one sensor error lower and higher, in rising order.
	BelowRange, AboveRange, DegBelowRange, DegAboveRange Range
}

// Range is the lowest and highest a figure may be.
type Range struct{ Low, High float64 }

// Spell is an unbroken run outside a limit. Hours and DegreeHours count the time outside only; Peak is
// the value farthest out; Cut says that the run met a gap, a break or the end of the bees' time.
type Spell struct {
	Kind               string // warm, cold, damp, dry, moist, dew, frost
	Place, Quantity    string
	Limit              float64
	Span               series.Span
	Cut                bool
	Hours, DegreeHours float64
	Peak               float64
	WentWith           []Cause // the clearest first, two at most
	beside             []Cause // what held for some of it and is no cause
}

// SurfaceRow says how long a surface was wet.
type SurfaceRow struct {
	Name, Kind           string
	Factor               Figure
	DewHours, FrostHours Figure
	MouldIndex           Figure       // 0–6, the highest it reached on bare pine
	SurfaceC             series.Curve // the surface's temperature, worked out
	Margin               series.Curve // K between it and the point where it sweats or frosts; below 0 it is wet
	MarginErrK           float64      // the margin's 95 % half-width, the factor's range included

	wet, dry series.Curve // the margin at both ends of what it may have been
}

// StageRow is one stage over one setting period. Called or Ran is nil without its evidence.
type StageRow struct {
	Name        string
	Setting     Setting
	Called, Ran *Work
	ShareOfAir  Figure
	KWh, Cost   Figure
	Speed       Figure // mean share of full speed while it ran; unknown without a record of speed

	AirM3         Figure // over its known hours
	AirChanges    Figure // of the barn's volume, over its known hours
	ChangeMinutes Figure // for one change of the barn's air with this stage and all smaller ones on

	Cycling           *Cycling // nil where starts can't be seen
	ByHour, ByOutdoor []Share  // time on by hour of the day and by degree outdoors; none for always-on and timers

	Agreement       *Agreement // nil without both
	StartsC, StopsC Figure     // what the control logger showed as the record starts and stops, °C

	Remarks []series.Remark
}

// Work is how long something was on over the known hours of a period.
type Work struct {
	Hours        Figure
	KnownMS      int64
	Duty         Figure // 0–1 of the known time
	Starts       Figure
	MedianRunMin Figure
	On           []series.Span // when it was on
	Unsure       []series.Span // when that can't be said
	Doubtful     []series.Span // when it would be on at one end of what the logger may be off by, and off at the other
}

// Traces are the curves behind the figures, for the plots.
type Traces struct {
	RoomPlace                  string // where the room's air was measured
	Room, RoomRelHum, RoomDewC series.Curve
	RoomErrK, RoomRelHumErr    float64 // 95 % half-widths, constant over the winter
	RoomDewErrK                float64
	Outdoor, OutdoorRelHum     series.Curve
	Loggers                    []Logger
	Control                    series.Curve
	ControlName                string
}
