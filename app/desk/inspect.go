package desk

import (
	"math"
	"time"

	"thawbook/app/engine"
)

// InspectDoc says how one file was understood, as JSON. Unknown is null, lists are never null; humidities
// are in percent, temperatures in °C.
type InspectDoc struct {
	File          string               `json:"file"`
	SHA256        string               `json:"sha256"`
	Bytes         int64                `json:"bytes"`
	Encoding      *string              `json:"encoding"`
	Delimiter     *string              `json:"delimiter"`
	DecimalMark   *string              `json:"decimal_mark"`
	FirstDataLine *int                 `json:"first_data_line"`
	Rows          int                  `json:"rows"`
	RowsBadTime   int                  `json:"rows_bad_time"`
	Refused       string               `json:"refused"`
	RefusedCode   string               `json:"refused_code"`
	Clock         InspectClockDoc      `json:"clock"`
	Series        []InspectSeriesDoc   `json:"series"`
	Remarks       []InspectRemarkDoc   `json:"remarks"`
	Questions     []InspectQuestionDoc `json:"questions"`
}

// InspectClockDoc says where the time of a row stands and how it is written. Columns are 1-based.
type InspectClockDoc struct {
	Columns      []int   `json:"columns"`
	Order        *string `json:"order"`
	OrderCertain bool    `json:"order_certain"`
	Zone         *string `json:"zone"`
	ZoneSource   string  `json:"zone_source"`
}

// InspectSeriesDoc is one variable of one logger.
type InspectSeriesDoc struct {
	Logger      string   `json:"logger"`
	Column      string   `json:"column"`
	Variable    *string  `json:"variable"` // in a file of one value a row, the cell that names it
	ColumnIndex int      `json:"column_index"`
	Quantity    string   `json:"quantity"`
	Unit        *string  `json:"unit"`
	UnitSource  *string  `json:"unit_source"`
	Readings    int      `json:"readings"`
	Missing     int      `json:"missing"`
	Unreadable  int      `json:"unreadable"`
	First       *string  `json:"first"`
	Last        *string  `json:"last"`
	IntervalS   *float64 `json:"interval_s"`
	Gaps        int      `json:"gaps"`
	Duplicates  int      `json:"duplicates"`
	OutOfOrder  int      `json:"out_of_order"`
	Min         *float64 `json:"min"`
	Mean        *float64 `json:"mean"`
	Max         *float64 `json:"max"`
}

// InspectRemarkDoc is a note on a file with its place there; line and column are null where it has none.
type InspectRemarkDoc struct {
	Code     string `json:"code"`
	Text     string `json:"text"`
	Line     *int   `json:"line"`
	Column   *int   `json:"column"`
	Count    int    `json:"count"`
	LastLine *int   `json:"last_line"`
}

// InspectQuestionDoc is something only the keeper can know, with the answers there are.
type InspectQuestionDoc struct {
	ID      string   `json:"id"`
	Text    string   `json:"text"`
	Options []string `json:"options"`
}

// Inspect says how each file was understood, in the order given; never nil.
func Inspect(read []engine.File) []InspectDoc {
	docs := []InspectDoc{}
	for _, f := range read {
		docs = append(docs, inspectDoc(f))
	}
	return docs
}

func inspectDoc(f engine.File) InspectDoc {
	d := InspectDoc{File: f.Name, SHA256: f.SHA256, Bytes: f.Bytes, Clock: InspectClockDoc{Columns: []int{}, ZoneSource: "none"},
		Series: []InspectSeriesDoc{}, Remarks: []InspectRemarkDoc{}, Questions: []InspectQuestionDoc{}}
	if f.Err != nil || f.Export == nil {
		d.RefusedCode, d.Refused = Refusal(f.Name, f.Err)
		return d
	}
	e := f.Export
	l := e.Layout
	d.Encoding, d.Delimiter, d.DecimalMark = said(l.Encoding), said(l.Delimiter), said(l.DecimalMark)
	d.FirstDataLine, d.Rows, d.RowsBadTime = counted(l.FirstDataLine), e.Rows, e.BadTime
	d.Clock = InspectClockDoc{Columns: append([]int{}, l.Clock.Columns...), Order: said(l.Clock.Order), OrderCertain: l.Clock.OrderCertain,
		Zone: said(l.Clock.Zone), ZoneSource: l.Clock.ZoneSource}
	open := map[string]bool{}
	for _, q := range e.Questions {
		open[q.ID] = true
		d.Questions = append(d.Questions, InspectQuestionDoc{q.ID, QuestionOf(q.ID, q.Columns), append([]string{}, q.Options...)})
	}
	for i := range e.Series {
		d.Series = append(d.Series, inspectSeries(f, i, open["day_month"] || open["day_zero"] || open["year"] || open[firstDay]))
	}
	for _, r := range e.Remarks {
		d.Remarks = append(d.Remarks, InspectRemarkDoc{r.Code, FileNote(r), counted(r.Line), counted(r.Column), r.Count, counted(r.LastLine)})
	}
	return d
}

// inspectSeries sums up the i-th series of a file. While its dates are open its first and last times
// are unknown; while its temperature unit is open, its levels are.
func inspectSeries(f engine.File, i int, openDate bool) InspectSeriesDoc {
	s, clock := f.Export.Series[i], f.Export.Layout.Clock
	sum := s.Summary()
	d := InspectSeriesDoc{Logger: s.Logger, Column: s.Column, Variable: said(s.Variable), ColumnIndex: s.ColumnIndex, Quantity: string(s.Quantity), Unit: said(s.Unit), UnitSource: said(s.UnitSource),
		Readings: sum.Readings, Missing: s.Missing, Unreadable: s.Unreadable, Gaps: sum.Gaps, Duplicates: sum.Duplicates, OutOfOrder: s.OutOfOrder}
	if sum.Readings == 0 {
		return d
	}
	if !openDate {
		d.First = faceText(sum.FirstMS, sum.FirstOffsetMS, s.Instant, clock.Zone)
		d.Last = faceText(sum.LastMS, sum.LastOffsetMS, s.Instant, clock.Zone)
	}
	if sum.IntervalMS > 0 {
		d.IntervalS = finite(float64(sum.IntervalMS) / 1000)
	}
	switch {
	case s.Unit == "" && isHeat(d.Quantity):
	case d.Quantity == "relative_humidity":
		d.Min, d.Mean, d.Max = finite(sum.Min*100), finite(sum.Mean*100), finite(sum.Max*100)
	default:
		d.Min, d.Mean, d.Max = finite(sum.Min), finite(sum.Mean), finite(sum.Max)
	}
	return d
}

func isHeat(quantity string) bool {
	return quantity == "air_temperature" || quantity == "dew_point" || quantity == "surface_temperature"
}

// faceText prints a clock face. An instant is shown as its row printed it; a face gets the offset its file's
// header names. Epochs and an offset of nought are marked Z.
func faceText(ms, offsetMS int64, instant bool, zone string) *string {
	const layout = "2006-01-02T15:04:05.999"
	if instant {
		face := time.UnixMilli(ms).In(time.FixedZone("", int(offsetMS/1000)))
		return said(face.Format(layout + "Z07:00"))
	}
	text := time.UnixMilli(ms).UTC().Format(layout)
	switch {
	case zone == "+00:00":
		text += "Z"
	case len(zone) == len("+00:00") && (zone[0] == '+' || zone[0] == '-'):
		text += zone
	}
	return said(text)
}

// said is a text, or null where there is none.
func said(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}

// counted is a number counted from 1, or null.
func counted(n int) *int {
	if n < 1 {
		return nil
	}
	return &n
}

// finite is a number, or null when it is none.
func finite(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}
