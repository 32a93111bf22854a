package compare

import "thawbook/analysis"

// Total is a figure of the whole bees' time of each barn, as each was judged, beside one another. Nothing is said of how
// it would have come out in another winter.
type Total struct {
	Quantity, Unit string
	A, B           analysis.Figure
	Difference     analysis.Figure // A − B, from one's low less the other's high to the reverse
}

// totals are the figures that belong to a winter as a whole.
func totals(a, b analysis.Review) []Total {
	rows := []struct {
		quantity, unit string
		of             func(analysis.Review) analysis.Figure
	}{
		{"small_stages_alone", "percent", func(r analysis.Review) analysis.Figure { return r.Verdict.Fans.Figure }},
		{"good_hours", "percent", func(r analysis.Review) analysis.Figure { return r.Verdict.Held.Figure }},
		{"air_changes", "1/h", func(r analysis.Review) analysis.Figure { return r.Air.ChangesPerHour }},
		{"hive_days", "d", func(r analysis.Review) analysis.Figure { return r.HiveDays }},
		{"energy", "kWh", func(r analysis.Review) analysis.Figure { return r.Power.KWh }},
		{"energy_per_hive", "kWh", EnergyPerHive},
		{"bees_days", "d", func(r analysis.Review) analysis.Figure {
			days := float64(r.BeesOut-r.BeesIn) / dayMS
			return analysis.Figure{Mid: days, Low: days, High: days, OK: true, Evidence: r.BeesBy.Weaker()}
		}},
	}
	out := []Total{}
	for _, row := range rows {
		t := Total{Quantity: row.quantity, Unit: row.unit, A: row.of(a), B: row.of(b)}
		if t.A.OK || t.B.OK {
			t.Difference = less(t.A, t.B)
			out = append(out, t)
		}
	}
	return out
}

const dayMS = 24 * 3600 * 1000

// less is one figure less another.
func less(a, b analysis.Figure) analysis.Figure {
	switch {
	case !a.OK:
		return analysis.Figure{Unknown: a.Unknown}
	case !b.OK:
		return analysis.Figure{Unknown: b.Unknown}
	}
	return analysis.Figure{Mid: a.Mid - b.Mid, Low: a.Low - b.High, High: a.High - b.Low, OK: true, Evidence: analysis.WorkedOut}
}

// EnergyPerHive is what the fans took over the mean number of hives that were in, kWh; unknown without either.
func EnergyPerHive(r analysis.Review) analysis.Figure {
	kWh, hiveDays := r.Power.KWh, r.HiveDays
	switch {
	case !kWh.OK:
		return analysis.Figure{Unknown: kWh.Unknown}
	case !hiveDays.OK:
		return analysis.Figure{Unknown: hiveDays.Unknown}
	case hiveDays.Mid <= 0:
		return analysis.Figure{Unknown: "no_head_count"}
	}
	k := float64(r.BeesOut-r.BeesIn) / dayMS / hiveDays.Mid
	return analysis.Figure{Mid: kWh.Mid * k, Low: kWh.Low * k, High: kWh.High * k, OK: true, Evidence: kWh.Evidence}
}
