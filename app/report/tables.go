// Package report prints a review: for now its result tables as comma-separated values, one file a table,
// numbers unrounded, unknown left empty.
package report

import (
	"io"
	"strings"

	"github.com/gocarina/gocsv"

	"thawbook/app/desk"
)

// Table is one result table; Name is its file name.
type Table struct {
	Name string
	rows any
}

// WriteCSV writes the header and every row.
func (t Table) WriteCSV(w io.Writer) error { return gocsv.Marshal(t.rows, w) }

type bandRow struct {
	Barn         string   `csv:"barn"`
	Place        string   `csv:"place"`
	Logger       string   `csv:"logger"`
	Phase        string   `csv:"phase"`
	Quantity     string   `csv:"quantity"`
	Unit         string   `csv:"unit"`
	HoursKnown   float64  `csv:"hours_known"`
	HoursUnknown float64  `csv:"hours_unknown"`
	Min          *float64 `csv:"min"`
	Mean         *float64 `csv:"time_weighted_mean"`
	Max          *float64 `csv:"max"`
	Band         string   `csv:"band"`
	Low          *float64 `csv:"band_low"`
	High         *float64 `csv:"band_high"`
	Below        *float64 `csv:"hours_below"`
	In           *float64 `csv:"hours_in"`
	Above        *float64 `csv:"hours_above"`
	DegreeBelow  *float64 `csv:"degree_hours_below"`
	DegreeAbove  *float64 `csv:"degree_hours_above"`
}

type spellRow struct {
	Barn        string  `csv:"barn"`
	Kind        string  `csv:"kind"`
	Place       string  `csv:"place"`
	Quantity    string  `csv:"quantity"`
	Limit       float64 `csv:"limit"`
	Start       string  `csv:"start"`
	End         string  `csv:"end"`
	Cut         bool    `csv:"cut"`
	Hours       float64 `csv:"hours_outside"`
	DegreeHours float64 `csv:"degree_hours"`
	Peak        float64 `csv:"peak"`
}

type stageRow struct {
	Barn        string   `csv:"barn"`
	Stage       string   `csv:"stage"`
	From        string   `csv:"setting_start"`
	To          string   `csv:"setting_end"`
	OnC         *float64 `csv:"on_c"`
	OffC        *float64 `csv:"off_c"`
	Called      *float64 `csv:"called_hours"`
	CalledLow   *float64 `csv:"called_low"`
	CalledHigh  *float64 `csv:"called_high"`
	CalledKnown *float64 `csv:"called_hours_known"`
	Ran         *float64 `csv:"ran_hours"`
	RanKnown    *float64 `csv:"ran_hours_known"`
	KWh         *float64 `csv:"kwh"`
}

type surfaceRow struct {
	Barn      string   `csv:"barn"`
	Surface   string   `csv:"surface"`
	Kind      string   `csv:"kind"`
	Factor    *float64 `csv:"temperature_factor"`
	Dew       *float64 `csv:"dew_hours"`
	DewLow    *float64 `csv:"dew_low"`
	DewHigh   *float64 `csv:"dew_high"`
	Frost     *float64 `csv:"frost_hours"`
	FrostLow  *float64 `csv:"frost_low"`
	FrostHigh *float64 `csv:"frost_high"`
}

// Tables are the result tables of a review, in a fixed order.
func Tables(d desk.ReviewDoc) []Table {
	bands, spells, stages, surfaces := []bandRow{}, []spellRow{}, []stageRow{}, []surfaceRow{}
	for _, b := range d.Barns {
		barn := cell(b.Name)
		for _, q := range b.Quantities {
			bands = append(bands, bandRows(barn, q)...)
		}
		for _, s := range b.Spells {
			spells = append(spells, spellRow{barn, s.Kind, cell(s.Place), s.Quantity, s.Limit, s.Start, s.End, s.Cut, s.Hours, s.DegreeHours, s.Peak})
		}
		for _, s := range b.Stages {
			stages = append(stages, newStageRow(barn, s))
		}
		for _, s := range b.Surfaces {
			surfaces = append(surfaces, surfaceRow{
				barn, cell(s.Name), s.Kind, s.Factor.Mid,
				s.DewHours.Mid, s.DewHours.Low, s.DewHours.High, s.FrostHours.Mid, s.FrostHours.Low, s.FrostHours.High,
			})
		}
	}
	tables := []Table{{"hours.csv", bands}, {"spells.csv", spells}, {"stages.csv", stages}, {"surfaces.csv", surfaces}}
	return append(tables, eventTables(d)...)
}

// bandRows has a row per band, or one without a band where the quantity is not judged.
func bandRows(barn string, q desk.QuantityDoc) []bandRow {
	like := bandRow{
		Barn: barn, Place: cell(q.Place), Logger: cell(text(q.Logger)), Phase: text(q.Phase), Quantity: q.Quantity, Unit: q.Unit,
		HoursKnown: q.HoursKnown, HoursUnknown: q.HoursUnknown, Min: q.Min, Mean: q.Mean, Max: q.Max,
	}
	if len(q.Bands) == 0 {
		return []bandRow{like}
	}
	rows := make([]bandRow, 0, len(q.Bands))
	for _, b := range q.Bands {
		row := like
		row.Band, row.Low, row.High = b.Name, b.Low, b.High
		row.Below, row.In, row.Above = &b.HoursBelow, &b.HoursIn, &b.HoursAbove
		row.DegreeBelow, row.DegreeAbove = &b.DegHoursBelow, &b.DegHoursAbove
		rows = append(rows, row)
	}
	return rows
}

func newStageRow(barn string, s desk.StageDoc) stageRow {
	row := stageRow{Barn: barn, Stage: cell(s.Name), From: s.SettingStart, To: s.SettingEnd, OnC: s.OnC, OffC: s.OffC, KWh: s.KWh}
	if c := s.Called; c != nil {
		row.Called, row.CalledLow, row.CalledHigh, row.CalledKnown = c.Hours, c.Low, c.High, &c.HoursKnown
	}
	if r := s.Ran; r != nil {
		row.Ran, row.RanKnown = r.Hours, &r.HoursKnown
	}
	return row
}

func text(s *string) string {
	if s == nil {
		return ""
	}
	return *s
}

// cell keeps a name from being taken for a formula by a spreadsheet.
func cell(s string) string {
	if strings.HasPrefix(s, "=") || strings.HasPrefix(s, "+") || strings.HasPrefix(s, "-") || strings.HasPrefix(s, "@") || strings.HasPrefix(s, "\t") {
		return "'" + s
	}
	return s
}
