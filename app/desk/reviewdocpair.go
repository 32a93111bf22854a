package desk

import "thawbook/analysis/compare"

// SideBySideDoc is one figure of two barns and its difference, A − B; low and high are null where there is no interval,
// and unknown says why.
type SideBySideDoc struct {
	A             string     `json:"a"`
	B             string     `json:"b"`
	Quantity      string     `json:"quantity"`
	Measure       string     `json:"measure"`
	Of            *string    `json:"of"`
	OfB           *string    `json:"of_b"`
	Limit         *float64   `json:"limit"`
	Phase         *string    `json:"phase"`
	Unit          *string    `json:"unit"`
	ValueA        float64    `json:"a_value"`
	ValueB        float64    `json:"b_value"`
	Difference    float64    `json:"difference"`
	Low           *float64   `json:"low"`
	High          *float64   `json:"high"`
	Unknown       *string    `json:"unknown"`
	Verdict       string     `json:"verdict"`
	OverlapHours  float64    `json:"overlap_hours"`
	BlockHours    float64    `json:"block_hours"`
	EffectiveN    *float64   `json:"effective_n"`
	Few           bool       `json:"few_effective_hours"`
	ResampledHalf float64    `json:"resampled_half_width"`
	MovingHalf    float64    `json:"moving_half_width"`
	SensorHalf    float64    `json:"sensor_half_width"`
	AddedA        float64    `json:"a_added_by_checks"` // of the loggers; a_value holds it
	AddedB        float64    `json:"b_added_by_checks"`
	Settle        *SettleDoc `json:"settle"`
}

// SettleDoc is what would settle a difference that can't be told.
type SettleDoc struct {
	Code         string   `json:"code"`
	SensorHalf   *float64 `json:"sensor_half_width"`
	OverlapHours *float64 `json:"overlap_hours"`
}

// sideBySideDocs are the rows of all pairs.
func sideBySideDocs(pairs []compare.Pair) []SideBySideDoc {
	out := []SideBySideDoc{}
	for _, p := range pairs {
		for _, r := range p.Rows {
			out = append(out, sideBySideDoc(p, r))
		}
	}
	return out
}

func sideBySideDoc(p compare.Pair, r compare.Row) SideBySideDoc {
	d := SideBySideDoc{
		A: p.A, B: p.B, Quantity: r.Quantity, Measure: r.Measure, Of: textOrNull(r.Of), OfB: textOrNull(r.OfB), Limit: r.Limit,
		Phase: textOrNull(r.Phase), Unit: textOrNull(r.Unit), ValueA: r.A, ValueB: r.B, Difference: r.Difference,
		Unknown: textOrNull(r.Unknown), Verdict: string(r.Verdict), OverlapHours: r.OverlapHours, BlockHours: r.BlockHours,
		EffectiveN: aboveZero(r.EffectiveN), Few: r.Few, ResampledHalf: r.ResampledHalf, MovingHalf: r.MovingHalf, SensorHalf: r.SensorHalf, AddedA: r.AddedA, AddedB: r.AddedB,
	}
	if r.Unknown == "" {
		d.Low, d.High = &r.Low, &r.High
	}
	if s := r.Settle; s != nil {
		d.Settle = &SettleDoc{s.Code, aboveZero(s.SensorHalf), aboveZero(s.OverlapHours)}
	}
	return d
}

// aboveZero is a number, or nil where it is none above 0.
func aboveZero(v float64) *float64 {
	if !(v > 0) {
		return nil
	}
	return &v
}
