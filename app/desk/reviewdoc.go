package desk

import (
	"cmp"
	"slices"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/engine"
)

// Program says what made a document: its version and where its time zone rules come from.
type Program struct{ Version, TZData string }

// ReviewDoc is the review as one JSON value: numbers unrounded, unknown null, lists never null, times
// RFC 3339 in the winter's zone.
type ReviewDoc struct {
	Format     int             `json:"format"`
	Program    string          `json:"program"`
	Rules      int             `json:"rules"`
	Reader     int             `json:"reader"` // version of how files are read
	TZData     string          `json:"tzdata"`
	Winter     string          `json:"winter"`
	Barns      []BarnDoc       `json:"barns"`
	SideBySide []SideBySideDoc `json:"side_by_side"`
	Pairs      []PairDoc       `json:"pairs"`
	Findings   []FindingDoc    `json:"findings"`
	Remarks    []NoteDoc       `json:"remarks"`

	Questions []ReviewQuestionDoc `json:"questions"`
}

// BarnDoc is one barn of a review.
type BarnDoc struct {
	Name       string          `json:"name"`
	BeesIn     *string         `json:"bees_in"`
	BeesOut    *string         `json:"bees_out"`
	BeesTime   string          `json:"bees_time_evidence"`
	BeesSeen   BeesSeenDoc     `json:"bees_seen"` // what the traces propose
	HiveDays   *float64        `json:"hive_days"`
	Coverage   float64         `json:"coverage"`
	Phases     []PhaseDoc      `json:"phases"`
	Verdict    VerdictDoc      `json:"verdict"`
	Quantities []QuantityDoc   `json:"quantities"`
	Spells     []SpellDoc      `json:"spells"`
	Events     []EventDoc      `json:"events"`
	Alarms     []AlarmDoc      `json:"alarms"`
	Surfaces   []SurfaceDoc    `json:"surfaces"`
	Dryness    []DrynessDoc    `json:"dryness"`
	Uniformity []UniformityDoc `json:"uniformity"`
	Stages     []StageDoc      `json:"stages"`
	Heats      []HeatDoc       `json:"heat_sources"`
	Mixing     []MixingDoc     `json:"mixing_fans"`
	Energy     EnergyDoc       `json:"energy"`
	Air        AirDoc          `json:"air"`
	Offset     RangeDoc        `json:"thermostat_offset"`
	Remarks    []NoteDoc       `json:"remarks"`
}

// PhaseDoc is a stretch judged by itself.
type PhaseDoc struct {
	Name  string `json:"name"`
	Start string `json:"start"`
	End   string `json:"end"`
}

// VerdictDoc holds the four answers.
type VerdictDoc struct {
	Held AnswerDoc `json:"held"`
	Damp AnswerDoc `json:"damp"`
	Dry  AnswerDoc `json:"dry"`
	Fans AnswerDoc `json:"fans"`
}

// AnswerDoc is one answer with the figure it rests on.
type AnswerDoc struct {
	State    string   `json:"state"`
	Figure   *float64 `json:"figure"`
	Low      *float64 `json:"low"`
	High     *float64 `json:"high"`
	Unit     string   `json:"unit"`
	Coverage float64  `json:"coverage"`
	Evidence *string  `json:"evidence"`
}

// QuantityDoc is one quantity at one logger or, logger null, at a place.
type QuantityDoc struct {
	Quantity     string    `json:"quantity"`
	Place        string    `json:"place"`
	Logger       *string   `json:"logger"`
	Phase        *string   `json:"phase"`
	HoursKnown   float64   `json:"hours_known"`
	HoursUnknown float64   `json:"hours_unknown"`
	Min          *float64  `json:"min"`
	Mean         *float64  `json:"mean"`
	Max          *float64  `json:"max"`
	ErrorHalf    *float64  `json:"sensor_half_width"`
	Unknown      *string   `json:"unknown"` // why there are no values
	Unit         string    `json:"unit"`
	Bands        []BandDoc `json:"bands"`
}

// BandDoc counts hours and degree-hours outside one band.
type BandDoc struct {
	Name          string   `json:"name"`
	Low           *float64 `json:"low"`
	High          *float64 `json:"high"`
	HoursBelow    float64  `json:"hours_below"`
	HoursIn       float64  `json:"hours_in"`
	HoursAbove    float64  `json:"hours_above"`
	DegHoursBelow float64  `json:"degree_hours_below"`
	DegHoursAbove float64  `json:"degree_hours_above"`
	BelowLow      float64  `json:"hours_below_low"`
	BelowHigh     float64  `json:"hours_below_high"`
	AboveLow      float64  `json:"hours_above_low"`
	AboveHigh     float64  `json:"hours_above_high"`
}

// SpellDoc is an unbroken run outside a limit.
type SpellDoc struct {
	Kind        string   `json:"kind"`
	Place       string   `json:"place"`
	Quantity    string   `json:"quantity"`
	Limit       float64  `json:"limit"`
	Start       string   `json:"start"`
	End         string   `json:"end"`
	Cut         bool     `json:"cut"`
	Hours       float64  `json:"hours"`
	DegreeHours float64  `json:"degree_hours"`
	Peak        float64  `json:"peak"`
	WentWith    []string `json:"went_with"`
}

// codesOf are the codes of causes.
func codesOf(causes []analysis.Cause) []string {
	out := []string{}
	for _, c := range causes {
		out = append(out, c.Code)
	}
	return out
}

// RangeDoc is a figure with its range; all null when it is unknown.
type RangeDoc struct {
	Mid      *float64 `json:"mid"`
	Low      *float64 `json:"low"`
	High     *float64 `json:"high"`
	Evidence *string  `json:"evidence"`
	Unknown  *string  `json:"unknown"`
}

// SurfaceDoc says how long a surface was wet.
type SurfaceDoc struct {
	Name       string   `json:"name"`
	Kind       string   `json:"kind"`
	Factor     RangeDoc `json:"factor"`
	DewHours   RangeDoc `json:"dew_hours"`
	FrostHours RangeDoc `json:"frost_hours"`
	MouldIndex RangeDoc `json:"mould_index"`
}

// ReviewDocument is the JSON form of a result.
func ReviewDocument(r engine.Result, p Program) ReviewDoc {
	d := ReviewDoc{
		Format: 1, Program: p.Version, Rules: analysis.RulesVersion, Reader: engine.ReaderVersion, TZData: p.TZData, Winter: r.Winter.Name,
		Barns: []BarnDoc{}, SideBySide: sideBySideDocs(r.Pairs), Pairs: pairDocs(r), Findings: []FindingDoc{}, Remarks: noteDocs(r.Remarks), Questions: questionDocs(r),
	}
	for i, b := range r.Barns {
		d.Barns = append(d.Barns, barnDoc(b, r.Inputs[i].Zone))
		d.Findings = append(d.Findings, findingDocs(r.Inputs[i], b)...)
	}
	slices.SortStableFunc(d.Findings, func(a, b FindingDoc) int { return cmp.Compare(b.Weight, a.Weight) })
	return d
}

func barnDoc(b analysis.Review, zone *time.Location) BarnDoc {
	d := BarnDoc{
		Name: b.Barn, BeesTime: string(b.BeesBy.Weaker()), BeesSeen: beesSeenDoc(b.Seen, zone), HiveDays: mid(b.HiveDays), Coverage: b.Coverage,
		Verdict: VerdictDoc{answerDoc(b.Verdict.Held), answerDoc(b.Verdict.Damp), answerDoc(b.Verdict.Dry), answerDoc(b.Verdict.Fans)},
		Phases:  []PhaseDoc{}, Quantities: []QuantityDoc{}, Spells: []SpellDoc{}, Surfaces: []SurfaceDoc{}, Stages: []StageDoc{},
		Dryness: drynessDocs(b.Dryness, zone), Uniformity: uniformityDocs(b.Uniformity, zone),
		Heats: []HeatDoc{}, Mixing: []MixingDoc{}, Energy: energyDoc(b.Power), Air: airDoc(b.Air), Events: eventDocs(b.Events, zone), Alarms: alarmDocs(b.Alarms, zone), Offset: rangeDoc(b.Offset), Remarks: noteDocs(b.Remarks),
	}
	clock := func(ms int64) string { return clock(ms, zone) }
	if b.BeesOut > b.BeesIn {
		in, out := clock(b.BeesIn), clock(b.BeesOut)
		d.BeesIn, d.BeesOut = &in, &out
	}
	for _, p := range b.Phases {
		d.Phases = append(d.Phases, PhaseDoc{p.Name, clock(p.Span.From), clock(p.Span.To)})
	}
	for _, q := range b.Quantities {
		d.Quantities = append(d.Quantities, quantityDoc(q))
	}
	for _, s := range b.Spells {
		d.Spells = append(d.Spells, SpellDoc{s.Kind, s.Place, s.Quantity, s.Limit, clock(s.Span.From), clock(s.Span.To), s.Cut, s.Hours, s.DegreeHours, s.Peak, codesOf(s.WentWith)})
	}
	for _, s := range b.Surfaces {
		d.Surfaces = append(d.Surfaces, SurfaceDoc{s.Name, s.Kind, rangeDoc(s.Factor), rangeDoc(s.DewHours), rangeDoc(s.FrostHours), rangeDoc(s.MouldIndex)})
	}
	for _, s := range b.Stages {
		d.Stages = append(d.Stages, stageDoc(s, clock))
	}
	for _, h := range b.Heats {
		d.Heats = append(d.Heats, heatDoc(h))
	}
	for _, m := range b.Mixing {
		d.Mixing = append(d.Mixing, MixingDoc{m.Fan.Name, clock(m.Fan.Span.From), clock(m.Fan.Span.To), workDoc(m.Ran), mid(m.KWh), mid(m.Cost)})
	}
	return d
}

func quantityDoc(q analysis.QuantityRow) QuantityDoc {
	d := QuantityDoc{
		Quantity: q.Quantity, Place: q.Place, Logger: textOrNull(q.Logger), Phase: textOrNull(q.Phase), Unit: q.Unit,
		HoursKnown: hours(q.KnownMS), HoursUnknown: hours(q.UnknownMS),
		Min: mid(q.Min), Mean: mid(q.Mean), Max: mid(q.Max), Unknown: textOrNull(q.Mean.Unknown), Bands: []BandDoc{},
	}
	if q.Mean.OK {
		half := (q.Mean.High - q.Mean.Low) / 2
		d.ErrorHalf = &half
	}
	for _, b := range q.Bands {
		d.Bands = append(d.Bands, BandDoc{
			b.Name, b.Low, b.High, b.HoursBelow, b.HoursIn, b.HoursAbove, b.DegHoursBelow, b.DegHoursAbove,
			b.BelowRange.Low, b.BelowRange.High, b.AboveRange.Low, b.AboveRange.High,
		})
	}
	return d
}

func answerDoc(a analysis.Answer) AnswerDoc {
	d := AnswerDoc{State: string(a.State), Figure: mid(a.Figure), Unit: a.Unit, Coverage: a.Coverage}
	if a.Figure.OK {
		d.Low, d.High, d.Evidence = &a.Figure.Low, &a.Figure.High, textOrNull(string(a.Figure.Evidence))
	}
	return d
}

func rangeDoc(f analysis.Figure) RangeDoc {
	if !f.OK {
		return RangeDoc{Unknown: textOrNull(f.Unknown)}
	}
	return RangeDoc{Mid: &f.Mid, Low: &f.Low, High: &f.High, Evidence: textOrNull(string(f.Evidence))}
}

// mid is a figure's value, or nil when it is unknown.
func mid(f analysis.Figure) *float64 {
	if !f.OK {
		return nil
	}
	return &f.Mid
}

func textOrNull(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}

func hours(ms int64) float64 { return float64(ms) / series.HourMS }
