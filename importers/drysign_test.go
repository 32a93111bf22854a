package importers

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
)

// F beside a T is a humidity in the north, and nothing else tells; the keeper says. Of a temperature in °F, 1.8 T + 32, and
// of the frequency of the mains, which hardly changes, nothing is asked.
func TestFBesideT(t *testing.T) {
	in := "Zeit;T;F\n2026-01-13 10:00;4,5;80\n2026-01-13 11:00;5,0;84\n2026-01-13 12:00;4,0;78\n"
	e := readText(t, in)
	if e.Series[1].Quantity != RelativeHumidity || len(e.Questions) != 1 || !slices.Equal(e.Questions[0].Options, fQuantities) {
		t.Errorf("%s, asks %+v", e.Series[1].Quantity, e.Questions)
	}
	if e, err := Read(context.Background(), strings.NewReader(in), "f.csv", Answers{loneQuantity: "other"}); err != nil || e.Series[1].Quantity != Other || len(e.Questions) > 0 {
		t.Errorf("answered: %s %v", e.Series[1].Quantity, err)
	}
	for _, f := range []string{"40,1 41,0 39,2", "49,98 50,02 50,01"} {
		v := strings.Fields(f)
		if e := readText(t, "Zeit;T;F\n2026-01-13 10:00;4,5;"+v[0]+"\n2026-01-13 11:00;5,0;"+v[1]+"\n2026-01-13 12:00;4,0;"+v[2]+"\n"); e.Series[1].Quantity != Other || len(e.Questions) > 0 {
			t.Errorf("%s: %s, asks %+v", f, e.Series[1].Quantity, e.Questions)
		}
	}
}

// What ts is the column beside it tells: with a dew point that follows from it and the humidity it is the air's. The dew
// points are by the Magnus formula of WMO-No. 8 (2018), annex 4.B, from 4.0 °C and 80 %, 5.0 °C and 75 %, 3.0 °C and 85 %,
// worked out by hand to 0.1 K; others than those say that it is none. Beside another temperature it is a surface's, and
// alone beside a humidity a person can't tell.
func TestTheSignOfTheDryThermometer(t *testing.T) {
	for _, c := range []struct {
		in      string
		want    Quantity
		options []string
	}{
		{"time;ts;td;rh\n2026-01-13 10:00;4.0;0.8;80\n2026-01-13 11:00;5.0;0.9;75\n2026-01-13 12:00;3.0;0.7;85\n", AirTemperature, nil},
		{"time;ts;td;rh\n2026-01-13 10:00;8.0;0.8;80\n2026-01-13 11:00;9.0;0.9;75\n2026-01-13 12:00;7.0;0.7;85\n", SurfaceTemperature, nil},
		{"time;ts;ta;rh\n2026-01-13 10:00;4.0;4.5;80\n2026-01-13 11:00;5.0;5.5;75\n2026-01-13 12:00;3.0;3.5;85\n", SurfaceTemperature, nil},
		{"time;ts;rh\n2026-01-13 10:00;4.0;80\n2026-01-13 11:00;5.0;75\n2026-01-13 12:00;3.0;85\n", AirTemperature, tsQuantities},
		{"time;luft;rør;fugt\n2026-01-13 10:00;4.0;24.5;80\n2026-01-13 11:00;5.0;25.5;75\n2026-01-13 12:00;3.0;23.5;85\n", AirTemperature, airQuantities},
	} {
		e := readText(t, c.in)
		if got := e.Series[0].Quantity; got != c.want {
			t.Errorf("%s: %s", c.in, got)
		}
		switch {
		case c.options == nil && len(e.Questions) > 0:
			t.Errorf("%s: asks %+v", c.in, e.Questions)
		case c.options != nil && (len(e.Questions) != 1 || e.Questions[0].ID != loneQuantity || !slices.Equal(e.Questions[0].Options, c.options)):
			t.Errorf("%s: asks %+v", c.in, e.Questions)
		case c.options != nil:
			said, err := Read(context.Background(), strings.NewReader(c.in), "f.csv", Answers{loneQuantity: c.options[1]})
			if err != nil || string(said.Series[0].Quantity) != c.options[1] || len(said.Questions) > 0 {
				t.Errorf("%s: answered %s: %s %v", c.in, c.options[1], said.Series[0].Quantity, err)
			}
		}
	}
}

// A lone column called F that moves as air does may be a temperature in °F or a humidity, and is asked about; as a temperature it is
// in °F without a second question. The mains' frequency, which hardly moves, is neither.
func TestALoneFIsAskedAbout(t *testing.T) {
	form := func(value func(h int) float64) string {
		text := "time,F\n"
		for h := range 48 {
			text += fmt.Sprintf("2025-01-%02d %02d:00,%.1f\n", 13+h/24, h%24, value(h))
		}
		return text
	}
	air := form(func(h int) float64 { return 40 + 4*math.Sin(float64(h)/4) })
	e := readText(t, air)
	if len(e.Questions) != 1 || e.Questions[0].ID != loneQuantity || !slices.Equal(e.Questions[0].Columns, []string{"F"}) {
		t.Errorf("asked %+v", e.Questions)
	}
	e, err := Read(context.Background(), strings.NewReader(air), "2.csv", Answers{loneQuantity: string(AirTemperature)})
	if err != nil {
		t.Fatal(err)
	}
	if s := e.Series[0]; len(e.Questions) != 0 || s.Quantity != AirTemperature || math.Abs(s.Val[0]-(40-32)/1.8) > 0.01 {
		t.Errorf("%+v, %v, first %v", e.Questions, s.Quantity, s.Val[0])
	}
	e = readText(t, form(func(h int) float64 { return 50 + 0.1*math.Sin(float64(h)) }))
	if len(e.Questions) != 0 || e.Series[0].Quantity != Other {
		t.Errorf("the mains' frequency is %v, asked %+v", e.Series[0].Quantity, e.Questions)
	}
}
