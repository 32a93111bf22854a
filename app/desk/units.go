package desk

import (
	"math"
	"strconv"
	"time"

	"thawbook/analysis/series"
)

// Marks of well-set text: a true minus, a thin space before units, an en dash for ranges.
const (
	minus     = "−"
	thinSpace = "\u2009"
	enDash    = "–"
	noNumber  = "unknown" // stands wherever a value is not finite
)

// TemperatureUnit is how temperatures are shown.
type TemperatureUnit string

// The two temperature scales.
const (
	Celsius    TemperatureUnit = "C"
	Fahrenheit TemperatureUnit = "F"
)

// Units is how quantities are shown. The zero value shows °C in UTC.
type Units struct {
	Temperature TemperatureUnit
	Zone        *time.Location // the winter's zone; nil is UTC
}

// TempSymbol is the sign of the temperature scale.
func (u Units) TempSymbol() string {
	if u.Temperature == Fahrenheit {
		return "°F"
	}
	return "°C"
}

// TempValue converts °C to the shown scale.
func (u Units) TempValue(tempC float64) float64 {
	if u.Temperature == Fahrenheit {
		return tempC*9/5 + 32
	}
	return tempC
}

// fromShown converts a temperature of the shown scale to °C.
func (u Units) fromShown(v float64) float64 {
	if u.Temperature == Fahrenheit {
		return (v - 32) * 5 / 9
	}
	return v
}

// DiffValue converts a temperature difference in K to the shown scale.
func (u Units) DiffValue(diffK float64) float64 {
	if u.Temperature == Fahrenheit {
		return diffK * 9 / 5
	}
	return diffK
}

// Temp shows a temperature to a tenth, with its unit.
func (u Units) Temp(tempC float64) string {
	return withUnit(number(u.TempValue(tempC), 1), u.TempSymbol())
}

// Diff shows a temperature difference to a tenth, with its unit.
func (u Units) Diff(diffK float64) string {
	return withUnit(number(u.DiffValue(diffK), 1), u.TempSymbol())
}

// Limit shows a limit without its unit: with as few digits as it was set down with, and one set down in °C as a whole °F.
func (u Units) Limit(tempC float64) string {
	if u.Temperature == Fahrenheit {
		return shortest(u.TempValue(u.shownLimit(tempC)))
	}
	return shortest(tempC)
}

// shownLimit is the limit as it is shown, in °C: a whole °F value where that is the scale and tenths of °C were set down.
func (u Units) shownLimit(tempC float64) float64 {
	if u.Temperature != Fahrenheit || math.IsInf(tempC, 0) || math.Abs(10*tempC-math.Round(10*tempC)) > 1e-6 {
		return tempC
	}
	return u.fromShown(math.Round(u.TempValue(tempC)))
}

// LimitWithUnit shows a limit with its unit.
func (u Units) LimitWithUnit(tempC float64) string { return withUnit(u.Limit(tempC), u.TempSymbol()) }

// Hours shows a length of time in hours: a tenth below 10 h, whole hours from there.
func Hours(h float64) string { return withUnit(hoursNumber(h), "h") }

// HoursRange shows two lengths of time as a range.
func HoursRange(low, high float64) string {
	if hoursNumber(low) == hoursNumber(high) {
		return Hours(low)
	}
	return withUnit(rangeOf(hoursNumber(low), hoursNumber(high)), "h")
}

func hoursNumber(h float64) string {
	if math.Abs(h) < 9.95 && math.Abs(h-math.Round(h)) >= 0.05 {
		return number(h, 1)
	}
	return number(h, 0)
}

// Percent shows a share of 0–1 in whole percent, or a tenth below one percent.
func Percent(share float64) string {
	if p := math.Abs(100 * share); p > 0 && p < 0.95 {
		return withUnit(number(100*share, 1), "%")
	}
	return withUnit(number(100*share, 0), "%")
}

// OfHundred shows a share of 0–1 as hours out of a hundred, and never rounds a part to none or to all.
func OfHundred(share float64) string {
	n := math.Round(100 * share)
	switch {
	case math.IsNaN(share):
		return noNumber
	case n >= 100 && share < 1:
		return "more than 99 of 100"
	case n <= 0 && share > 0:
		return "fewer than 1 of 100"
	}
	return number(n, 0) + " of 100"
}

// Days shows a length of time in days: a tenth below 3, whole days from there.
func Days(ms float64) string {
	d := ms / (24 * series.HourMS)
	text := number(d, 0)
	if d < 2.95 && math.Abs(d-math.Round(d)) >= 0.05 {
		text = number(d, 1)
	}
	return plural(text, "day", "days")
}

func plural(number, one, many string) string {
	if number == "1" {
		return number + " " + one
	}
	return number + " " + many
}

func (u Units) local(ms int64) time.Time {
	if u.Zone == nil {
		return time.UnixMilli(ms).UTC()
	}
	return time.UnixMilli(ms).In(u.Zone)
}

// Date shows the local day, "12 November".
func (u Units) Date(ms int64) string { return u.local(ms).Format("2 January") }

// DateYear shows the local day with its year.
func (u Units) DateYear(ms int64) string { return u.local(ms).Format("2 January 2006") }

// Clock shows local day and time, "26 March 14:00".
func (u Units) Clock(ms int64) string { return u.local(ms).Format("2 January 15:04") }

// Dates shows the local days a stretch touches, such as "26–29 March". The end is exclusive.
func (u Units) Dates(s series.Span) string {
	from, to := u.local(s.From), u.local(max(s.From, s.To-1))
	switch {
	case from.YearDay() == to.YearDay() && from.Year() == to.Year():
		return from.Format("2 January")
	case from.Month() == to.Month() && from.Year() == to.Year():
		return from.Format("2") + enDash + to.Format("2 January")
	}
	return from.Format("2 January") + " " + enDash + " " + to.Format("2 January")
}

func withUnit(number, unit string) string {
	if number == noNumber {
		return noNumber
	}
	return number + thinSpace + unit
}

func rangeOf(low, high string) string {
	if low == noNumber || high == noNumber {
		return noNumber
	}
	if len(low) >= len(minus) && low[:len(minus)] == minus || len(high) >= len(minus) && high[:len(minus)] == minus {
		return low + " to " + high
	}
	return low + enDash + high
}

// number shows a value to so many decimals with a true minus and thin spaces between thousands from
// 10 000 on; what rounds to nothing carries no sign.
func number(v float64, decimals int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return noNumber
	}
	text := strconv.FormatFloat(math.Abs(v), 'f', decimals, 64)
	zero, _ := strconv.ParseFloat(text, 64)
	whole := len(text)
	if decimals > 0 {
		whole -= decimals + 1
	}
	if whole > 4 {
		text = text[:whole-3] + thinSpace + text[whole-3:]
	}
	if v < 0 && zero != 0 {
		return minus + text
	}
	return text
}

// shortest shows a value with as few digits as it has, two decimals at most.
func shortest(v float64) string {
	for d := 0; d < 2; d++ {
		if math.Abs(v*math.Pow10(d)-math.Round(v*math.Pow10(d))) < 1e-9 {
			return number(v, d)
		}
	}
	return number(v, 2)
}
