package figure

import (
	"math"
	"math/rand/v2"
	"time"

	"thawbook/analysis/series"
)

const tenMinutes = 10 * minuteMS

// sampleStart is the first reading of the invented winter below.
var sampleStart = time.Date(2025, 11, 8, 14, 0, 0, 0, time.UTC).UnixMilli()

// sampleWinter invents five months of a barn, reading every step ms: two room loggers, one of which
// stops for nine days, and one outdoors.
func sampleWinter(step int64) (room1, room2, outdoor, relHum series.Curve) {
	g := rand.New(rand.NewPCG(7, 11))
	var at, at2 []int64
	var v1, v2, out, rh []float64
	weather, slow := 0.0, 0.0
	for i := int64(0); i*step < 150*dayMS; i++ {
		t := sampleStart + i*step
		day := float64(i*step) / dayMS
		k := float64(step) / series.HourMS
		weather += -weather*0.012*k + 1.1*math.Sqrt(k)*g.NormFloat64()
		o := -2 - 9*math.Sin(math.Pi*min(1, day/110)) + max(0, day-110)*0.33 + weather +
			3.2*math.Sin(2*math.Pi*(day-0.2))
		want := 4 + 0.5*max(0, o-1)
		slow += (want - slow) * 0.03 * k
		in := slow + 0.35*math.Sin(float64(i)*float64(step)/(41*minuteMS)) + 0.12*g.NormFloat64()
		if day < 4 {
			in += 7 * math.Exp(-day)
		}
		at, v1, out = append(at, t), append(v1, in), append(out, o)
		rh = append(rh, min(98, max(30, 62+1.4*o-1.5*(in-4)+1.5*g.NormFloat64())))
		if day < 61 || day > 70 {
			at2, v2 = append(at2, t), append(v2, in+0.6+0.15*g.NormFloat64())
		}
	}
	curve := func(at []int64, v []float64) series.Curve {
		return series.Curve{Readings: series.Readings{At: at, Val: v}, MaxStepMS: 2 * step}
	}
	return curve(at, v1), curve(at2, v2), curve(at, out), curve(at, rh)
}

// sampleRows invents the ladder's four stages from the room's temperature.
func sampleRows(room series.Curve) []BarRow {
	all := series.Span{From: room.Readings.At[0], To: room.Readings.At[room.Len()-1]}
	day := func(d float64) int64 { return all.From + int64(d*dayMS) }
	lost := []series.Span{{From: day(61), To: day(70)}}
	above := func(limit float64) (out []series.Span) {
		for _, r := range room.Above(all, limit) {
			out = append(out, series.Span{From: int64(r.From), To: int64(r.To)})
		}
		return series.Subtract(out, lost)
	}
	rows := []BarRow{}
	for i, limit := range []float64{7, 5.5, 4.4} {
		name := []string{"Stage 4", "Stage 3", "Stage 2"}[i]
		row := BarRow{Name: name, Tracks: []Track{{Style: Called, On: above(limit), Unknown: lost}}}
		if i > 0 {
			ran := series.Subtract(above(limit+0.1), []series.Span{{From: day(30), To: day(34)}})
			row.Tracks = append(row.Tracks, Track{Style: Ran, On: ran, Unknown: []series.Span{{From: day(61), To: day(66)}}})
		}
		rows = append(rows, row)
	}
	return append(rows, BarRow{Name: "Stage 1, always on", Tracks: []Track{{Style: Ran, On: []series.Span{all}}}})
}

func tallinn() *time.Location {
	z, err := time.LoadLocation("Europe/Tallinn")
	if err != nil {
		panic(err)
	}
	return z
}

// sampleFigure is the whole time plot of the invented winter.
func sampleFigure(th Theme, step int64) *Figure {
	room1, room2, outdoor, rh := sampleWinter(step)
	mean := series.Mean([]series.Curve{room1, room2}, max(step, minuteMS))
	margin := series.Zip(room1, outdoor, func(in, out float64) float64 { return 0.4*(in-out) + 0.6 - 0.02*in })
	day := func(d float64) int64 { return sampleStart + int64(d*dayMS) }
	temp := Lane{Title: "Air temperature", Unit: "°C", Height: 2, Bands: []Band{{Low: 2, High: 6}}, Veil: true, Traces: []Trace{
		NewTrace("room mean", mean, th.Ink),
		{Name: "east aisle", Curve: room1, Color: th.Traces[0], Width: 1},
		{Name: "west aisle", Curve: room2, Color: th.Traces[1], Width: 1},
		{Name: "outdoor", Curve: outdoor, Muted: true, OwnScale: true},
	}}
	return &Figure{
		Lanes: []Lane{temp,
			{Title: "Relative humidity", Unit: "%", Bands: []Band{{Low: 40, High: 75}}, Traces: []Trace{NewTrace("east aisle", rh, th.Traces[0])}},
			{Title: "Margin to dew on the north wall", Unit: "K", Bands: []Band{{Low: 0, High: math.Inf(1)}}, Traces: []Trace{NewTrace("north wall", margin, th.Traces[2])}},
			{Title: "Fan stages", Kind: Bars, Rows: sampleRows(room1)},
		},
		View:  series.Span{From: sampleStart, To: day(150)},
		Focus: series.Span{From: day(3), To: day(146)},
		Zone:  tallinn(), Theme: th,
		Shades: []Shade{
			{Span: series.Span{From: sampleStart - 40*dayMS, To: day(3)}, Outside: true},
			{Span: series.Span{From: day(3), To: day(12)}, Name: "filling"},
			{Span: series.Span{From: day(12), To: day(112)}, Name: "deep winter"},
			{Span: series.Span{From: day(112), To: day(146)}, Name: "late winter"},
			{Span: series.Span{From: day(146), To: day(190)}, Outside: true},
		},
		Marks: []Mark{{At: day(3), Name: "bees in"}, {At: day(12), Name: "fill done"}, {At: day(146), Name: "bees out"}},
	}
}
