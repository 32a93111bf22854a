package analysis

import (
	"testing"
	"time"

	"thawbook/analysis/series"
)

// Outdoors rises a degree an hour from −12 to 12 in a day; the fan runs from noon to 18:00 and at 00:30 to 01:00.
func TestTimeOnByHourAndByDegree(t *testing.T) {
	in := one(through(0, 24, 0.5, constant(4)), series.Curve{}, span(0, 24))
	in.Zone = time.FixedZone("", -3600)
	in.Stages = []Stage{{Name: "two", Settings: []Setting{{Span: span(-1, 25), OnC: 5, OffC: 4.5}}}}
	in.Loggers = append(in.Loggers, recordOver("two", 24, span(0.5, 1), span(12, 18)),
		Logger{Name: "out", Place: "outdoor", TempC: through(0, 24, 4, func(h float64) float64 { return h - 12 })})
	row := Judge(in).Stages[0]
	if len(row.ByHour) != 24 || len(row.ByOutdoor) != 24 {
		t.Fatalf("%d hours, %d degrees", len(row.ByHour), len(row.ByOutdoor))
	}
	for _, s := range row.ByHour {
		utc := (s.At + 1) % 24
		want := 0.0
		switch {
		case utc == 0:
			want = 0.5
		case utc >= 12 && utc < 18:
			want = 1
		}
		near(t, "on in the hour", float64(s.OnMS)/hourMS, want, 1e-6)
	}
	for _, s := range row.ByOutdoor {
		want := 0.0
		switch {
		case s.At == -12:
			want = 0.5
		case s.At >= 0 && s.At < 6:
			want = 1
		}
		near(t, "on at the degree", float64(s.OnMS)/hourMS, want, 1e-6)
		near(t, "known at the degree", float64(s.KnownMS)/hourMS, 1, 1e-6)
	}
}

// Falling, the same degrees; a line that stands on a whole degree belongs to the degree it begins.
func TestDegreesOfAFallingLine(t *testing.T) {
	cells := map[int][]series.Span{}
	degrees(cells, 0, 3*hourMS, 1.5, -1.5)
	degrees(cells, 3*hourMS, 4*hourMS, 2, 2)
	for at, want := range map[int]float64{1: 0.5, 0: 1, -1: 1, -2: 0.5, 2: 1} {
		near(t, "hours", float64(series.LengthMS(cells[at]))/hourMS, want, 1e-6)
	}
}
