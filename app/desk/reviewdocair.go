package desk

import (
	"time"

	"thawbook/analysis"
)

// DrynessDoc is a day or more of dry air, split into what went with it.
type DrynessDoc struct {
	Start         string   `json:"start"`
	End           string   `json:"end"`
	PercentHours  float64  `json:"percent_hours"`
	VPDPa         RangeDoc `json:"vapour_pressure_deficit_pa"`
	IntakePercent RangeDoc `json:"intake_percent"` // the air outside at the room's temperature
	HeatHours     RangeDoc `json:"heat_hours"`
	WeatherHours  RangeDoc `json:"weather_hours"`
	BothHours     RangeDoc `json:"both_hours"`
	NeitherHours  RangeDoc `json:"neither_hours"`
}

// UniformityDoc says how even a place with several loggers was.
type UniformityDoc struct {
	Place      string    `json:"place"`
	ApartHours RangeDoc  `json:"apart_hours"`
	HoursKnown float64   `json:"hours_known"`
	Weeks      []WeekDoc `json:"weeks"`
}

// WeekDoc names the extreme loggers of a week; the dampest is null where fewer than two read humidity.
type WeekDoc struct {
	Start    string  `json:"start"`
	End      string  `json:"end"`
	Warmest  string  `json:"warmest"`
	Coldest  string  `json:"coldest"`
	Dampest  *string `json:"dampest"`
	WarmestC float64 `json:"warmest_mean"`
	ColdestC float64 `json:"coldest_mean"`
}

func drynessDocs(all []analysis.DryStretch, zone *time.Location) []DrynessDoc {
	out := []DrynessDoc{}
	for _, d := range all {
		out = append(out, DrynessDoc{
			clock(d.Span.From, zone), clock(d.Span.To, zone), d.PercentHours, rangeDoc(d.VPDPa), rangeDoc(d.IntakePct),
			rangeDoc(d.HeatHours), rangeDoc(d.WeatherHours), rangeDoc(d.BothHours), rangeDoc(d.NeitherHours),
		})
	}
	return out
}

func uniformityDocs(all []analysis.Uniformity, zone *time.Location) []UniformityDoc {
	out := []UniformityDoc{}
	for _, u := range all {
		d := UniformityDoc{u.Place, rangeDoc(u.ApartHours), u.KnownHours, []WeekDoc{}}
		for _, w := range u.Weeks {
			d.Weeks = append(d.Weeks, WeekDoc{clock(w.Span.From, zone), clock(w.Span.To, zone), w.Warmest, w.Coldest, textOrNull(w.Dampest), w.WarmestC, w.ColdestC})
		}
		out = append(out, d)
	}
	return out
}
