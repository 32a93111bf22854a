package desk

import (
	"time"

	"thawbook/analysis/compare"
	"thawbook/app/engine"
)

// PairDoc is what there is of two barns besides the rows of side_by_side. Sentence, sure and settle are the screen's.
type PairDoc struct {
	A            string        `json:"a"`
	B            string        `json:"b"`
	ByWinterDay  bool          `json:"by_winter_day"`
	OverlapHours float64       `json:"overlap_hours"`
	Sentence     string        `json:"sentence"`
	Sure         string        `json:"sure"`
	Settle       string        `json:"would_settle"`
	Totals       []TotalDoc    `json:"totals"`
	Weather      WeatherDoc    `json:"weather"`
	Exposures    []ExposureDoc `json:"exposures"`
	Apart        []ApartDoc    `json:"hours_apart"` // the ten in which the air differed most
	Losses       LossesDoc     `json:"losses"`
	Remarks      []NoteDoc     `json:"remarks"`
}

// TotalDoc is a figure of each barn's whole bees' time.
type TotalDoc struct {
	Quantity   string   `json:"quantity"`
	Unit       string   `json:"unit"`
	A          RangeDoc `json:"a"`
	B          RangeDoc `json:"b"`
	Difference RangeDoc `json:"difference"`
}

// WeatherDoc is the air of both against the outdoor air.
type WeatherDoc struct {
	Unknown *string           `json:"unknown"`
	Bins    []WeatherBinDoc   `json:"bins"`
	Stages  []StageWeatherDoc `json:"stages"`
}

// WeatherBinDoc are the hours within two degrees outdoors; a mean is null without hours.
type WeatherBinDoc struct {
	FromC  float64  `json:"from_c"`
	ToC    float64  `json:"to_c"`
	HoursA float64  `json:"a_hours"`
	HoursB float64  `json:"b_hours"`
	A      *float64 `json:"a_mean_c"`
	B      *float64 `json:"b_mean_c"`
}

// StageWeatherDoc is a stage's share of time on by degree outdoors in both barns.
type StageWeatherDoc struct {
	Name string     `json:"name"`
	A    []ShareDoc `json:"a"`
	B    []ShareDoc `json:"b"`
}

// ExposureDoc is for how many hours a quantity lay at or above each level.
type ExposureDoc struct {
	Quantity   string    `json:"quantity"`
	Unit       string    `json:"unit"`
	Phase      *string   `json:"phase"`
	HoursKnown float64   `json:"hours_known"`
	Levels     []float64 `json:"levels"`
	A          []float64 `json:"a_hours"`
	B          []float64 `json:"b_hours"`
}

// ApartDoc is an hour in which the air differed much, and what was going on.
type ApartDoc struct {
	Start      string     `json:"start"`
	A          float64    `json:"a_c"`
	B          float64    `json:"b_c"`
	Difference float64    `json:"difference"`
	OnA        GoingOnDoc `json:"a"`
	OnB        GoingOnDoc `json:"b"`
}

// GoingOnDoc is what was known of a barn in an hour.
type GoingOnDoc struct {
	OutdoorC *float64     `json:"outdoor_c"`
	Events   []string     `json:"events"`
	Spells   []string     `json:"spells"`
	Notes    []string     `json:"notes"`
	Stages   []StageOnDoc `json:"stages"`
}

// StageOnDoc is a stage's share of an hour on.
type StageOnDoc struct {
	Name  string  `json:"name"`
	Share float64 `json:"share"`
	Ran   bool    `json:"ran"` // as recorded; else as called for
}

// LossesDoc are the hives found dead in both, and what is to be borne in mind.
type LossesDoc struct {
	A          LossDoc  `json:"a"`
	B          LossDoc  `json:"b"`
	Difference *float64 `json:"difference"`
	Low        *float64 `json:"low"`
	High       *float64 `json:"high"`
	Unknown    *string  `json:"unknown"`
	Verdict    string   `json:"verdict"`
	Text       string   `json:"text"`
	Caution    string   `json:"caution"`
}

// LossDoc is how many hives of a barn were found dead.
type LossDoc struct {
	HivesIn *float64 `json:"hives_in"`
	Dead    *float64 `json:"dead"`
	Of      *float64 `json:"of"`
	Sample  bool     `json:"sample"`
	Share   *float64 `json:"share"`
	Low     *float64 `json:"low"`
	High    *float64 `json:"high"`
	Unknown *string  `json:"unknown"`
}

// pairDocs are the pairs of a review.
func pairDocs(r engine.Result) []PairDoc {
	out := []PairDoc{}
	for _, p := range r.Pairs {
		out = append(out, pairDoc(p, TwoBarnsSaid(p, Units{}), r.Inputs[0].Zone))
	}
	return out
}

func pairDoc(p compare.Pair, said TwoBarns, zone *time.Location) PairDoc {
	d := PairDoc{A: p.A, B: p.B, ByWinterDay: p.ByWinterDay, OverlapHours: p.OverlapHours, Sentence: said.Sentence, Sure: said.Sure, Settle: said.Settle,
		Totals: []TotalDoc{}, Weather: weatherDoc(p.Weather), Exposures: []ExposureDoc{}, Apart: []ApartDoc{}, Losses: lossesDoc(p.Losses, said.Losses), Remarks: noteDocs(p.Remarks)}
	for _, t := range p.Totals {
		d.Totals = append(d.Totals, TotalDoc{t.Quantity, t.Unit, rangeDoc(t.A), rangeDoc(t.B), rangeDoc(t.Difference)})
	}
	for _, e := range p.Exposures {
		d.Exposures = append(d.Exposures, ExposureDoc{e.Quantity, e.Unit, textOrNull(e.Phase), e.KnownHours, e.Levels, e.A, e.B})
	}
	for _, h := range p.Apart {
		d.Apart = append(d.Apart, ApartDoc{clock(h.Span.From, zone), h.A, h.B, h.Difference, goingOnDoc(h.OnA), goingOnDoc(h.OnB)})
	}
	return d
}

func weatherDoc(w compare.Weather) WeatherDoc {
	d := WeatherDoc{Unknown: textOrNull(w.Unknown), Bins: []WeatherBinDoc{}, Stages: []StageWeatherDoc{}}
	for _, b := range w.Bins {
		bin := WeatherBinDoc{FromC: b.FromC, ToC: b.ToC, HoursA: b.HoursA, HoursB: b.HoursB}
		if b.HoursA > 0 {
			bin.A = &b.A
		}
		if b.HoursB > 0 {
			bin.B = &b.B
		}
		d.Bins = append(d.Bins, bin)
	}
	for _, s := range w.Stages {
		d.Stages = append(d.Stages, StageWeatherDoc{s.Name, shareDocs(s.A), shareDocs(s.B)})
	}
	return d
}

func goingOnDoc(g compare.GoingOn) GoingOnDoc {
	d := GoingOnDoc{Events: g.Events, Spells: g.Spells, Notes: g.Notes, Stages: []StageOnDoc{}}
	if g.OutdoorKnown {
		d.OutdoorC = &g.OutdoorC
	}
	for _, s := range g.Stages {
		d.Stages = append(d.Stages, StageOnDoc(s))
	}
	return d
}

func lossesDoc(l compare.Losses, said string) LossesDoc {
	d := LossesDoc{A: lossDoc(l.A), B: lossDoc(l.B), Unknown: textOrNull(l.Unknown), Verdict: string(l.Verdict), Text: said, Caution: cautionComparison}
	if l.Unknown == "" {
		d.Difference, d.Low, d.High = &l.Difference, &l.Low, &l.High
	}
	return d
}

func lossDoc(l compare.Loss) LossDoc {
	d := LossDoc{HivesIn: aboveZero(l.HivesIn), Of: aboveZero(l.Of), Sample: l.Sample, Unknown: textOrNull(l.Unknown)}
	if l.Unknown != "no_dead_count" {
		d.Dead = &l.Dead
	}
	if l.Unknown == "" {
		d.Share, d.Low, d.High = &l.Share, &l.Low, &l.High
	}
	return d
}
