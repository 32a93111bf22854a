package desk

import (
	"math"
	"strings"
	"testing"
	"time"

	"thawbook/analysis/series"
)

const ts = thinSpace

func zone(t *testing.T, name string) *time.Location {
	t.Helper()
	loc, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return loc
}

// The scale: °F = °C × 9/5 + 32; a difference takes the factor alone (BIPM, SI Brochure, 9th edition, table 8
// defines °C; NIST SP 811, B.8, gives the conversions).
func TestTemperatures(t *testing.T) {
	for _, c := range []struct {
		unit    TemperatureUnit
		show    func(Units, float64) string
		celsius float64
		want    string
	}{
		{Celsius, Units.Temp, 4.34, "4.3" + ts + "°C"},
		{Celsius, Units.Temp, -0.5, "−0.5" + ts + "°C"},
		{Celsius, Units.Temp, -0.04, "0.0" + ts + "°C"},
		{Fahrenheit, Units.Temp, 0, "32.0" + ts + "°F"},
		{Fahrenheit, Units.Temp, -40, "−40.0" + ts + "°F"},
		{Fahrenheit, Units.Temp, 100, "212.0" + ts + "°F"},
		{Celsius, Units.Diff, 1.5, "1.5" + ts + "°C"},
		{Fahrenheit, Units.Diff, 1.5, "2.7" + ts + "°F"},
		{Celsius, Units.LimitWithUnit, 8, "8" + ts + "°C"},
		{Celsius, Units.LimitWithUnit, 6.5, "6.5" + ts + "°C"},
		{Celsius, Units.Temp, math.NaN(), "unknown"},
		{Fahrenheit, Units.Diff, math.Inf(1), "unknown"},
	} {
		if got := c.show(Units{Temperature: c.unit}, c.celsius); got != c.want {
			t.Errorf("%v in °%s: %q, want %q", c.celsius, c.unit, got, c.want)
		}
	}
}

// The house's default bands with their °F values: rules of the numbers, "Default bands". One that was typed in °F, 40.5,
// stands as it was typed: it is 4.7222… °C.
func TestLimitsInFahrenheitAreRound(t *testing.T) {
	for _, c := range []struct {
		celsius float64
		want    string
	}{{2, "36"}, {6, "43"}, {8, "46"}, {10, "50"}, {8.5 * 5 / 9, "40.5"}} {
		if got := (Units{Temperature: Fahrenheit}).Limit(c.celsius); got != c.want {
			t.Errorf("%v °C: %s °F, want %s", c.celsius, got, c.want)
		}
	}
	if got := rangeOf("36", "43"); got != "36–43" {
		t.Errorf("band: %q", got)
	}
	if got := rangeOf("−2", "6"); got != "−2 to 6" {
		t.Errorf("a range beside a minus sign: %q", got)
	}
}

func TestHours(t *testing.T) {
	for _, c := range []struct {
		hours float64
		want  string
	}{
		{0, "0"}, {0.5, "0.5"}, {2.04, "2"}, {9.94, "9.9"}, {9.96, "10"}, {84.4, "84"}, {3615, "3615"}, {12345, "12" + ts + "345"},
	} {
		if got := Hours(c.hours); got != c.want+ts+"h" {
			t.Errorf("%v: %q, want %q", c.hours, got, c.want)
		}
	}
	if got := HoursRange(20, 44.2); got != "20–44"+ts+"h" {
		t.Errorf("range: %q", got)
	}
	if got := HoursRange(20.1, 20.2); got != "20"+ts+"h" {
		t.Errorf("range of one value: %q", got)
	}
	if got := HoursRange(math.NaN(), 2); strings.Contains(got, "NaN") {
		t.Errorf("range with an unknown end: %q", got)
	}
}

func TestShares(t *testing.T) {
	for _, c := range []struct {
		share            float64
		hundred, percent string
	}{
		{0, "0 of 100", "0"}, {1, "100 of 100", "100"}, {0.97, "97 of 100", "97"},
		{0.9999, "more than 99 of 100", "100"}, {0.001, "fewer than 1 of 100", "0.1"},
	} {
		if got := OfHundred(c.share); got != c.hundred {
			t.Errorf("%v: %q, want %q", c.share, got, c.hundred)
		}
		if got := Percent(c.share); got != c.percent+ts+"%" {
			t.Errorf("%v: %q, want %q %%", c.share, got, c.percent)
		}
	}
	if OfHundred(math.NaN()) != "unknown" || Percent(math.NaN()) != "unknown" {
		t.Error("an unknown share must be called unknown")
	}
}

func TestDays(t *testing.T) {
	const day = 24 * series.HourMS
	for _, c := range []struct {
		days float64
		want string
	}{{1, "1 day"}, {1.5, "1.5 days"}, {2.96, "3 days"}, {143.2, "143 days"}} {
		if got := Days(c.days * day); got != c.want {
			t.Errorf("%v: %q, want %q", c.days, got, c.want)
		}
	}
}

// Tallinn keeps UTC+2 in winter and UTC+3 from 03:00 on 30 March 2025 (IANA time zone database, EET/EEST).
func TestDatesAreTheWintersOwn(t *testing.T) {
	u := Units{Zone: zone(t, "Europe/Tallinn")}
	at := func(y int, m time.Month, d, h int) int64 { return time.Date(y, m, d, h, 0, 0, 0, time.UTC).UnixMilli() }
	if got := u.Clock(at(2025, time.March, 29, 22)); got != "30 March 00:00" {
		t.Errorf("winter time: %q", got)
	}
	if got := u.Clock(at(2025, time.March, 30, 21)); got != "31 March 00:00" {
		t.Errorf("summer time: %q", got)
	}
	for _, c := range []struct {
		from, to int64
		want     string
	}{
		{at(2025, time.March, 25, 22), at(2025, time.March, 29, 22), "26–29 March"},
		{at(2025, time.March, 25, 22), at(2025, time.March, 26, 22), "26 March"},
		{at(2025, time.February, 27, 22), at(2025, time.March, 2, 22), "28 February – 2 March"},
		{at(2024, time.December, 30, 22), at(2025, time.January, 1, 22), "31 December – 1 January"},
	} {
		if got := u.Dates(series.Span{From: c.from, To: c.to}); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestNumbersBeyondAnyMeasureAreUnknown(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		for _, text := range []string{number(v, 1), Hours(v), Percent(v), (Units{}).Temp(v)} {
			if text != "unknown" {
				t.Errorf("%v: %q", v, text)
			}
		}
	}
}
