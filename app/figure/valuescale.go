package figure

import (
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/plot"
)

// Minus is the true minus sign; ThinSpace stands between a number and its unit.
const (
	Minus     = "\u2212"
	ThinSpace = "\u2009"
)

// Number prints v with the decimals asked for and a true minus sign; no minus before a zero.
func Number(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return strings.Replace(s, "-", Minus, 1)
}

// Quantity prints v and its unit with a thin space between; decimals beyond need are dropped.
func Quantity(v float64, unit string) string {
	d := 0
	for d < 3 && math.Abs(v*math.Pow10(d)-math.Round(v*math.Pow10(d))) > 1e-6*math.Pow10(d) {
		d++
	}
	if unit == "" {
		return Number(v, d)
	}
	return Number(v, d) + ThinSpace + unit
}

// ValueTicks places ticks at 1, 2 or 5 times a power of ten. Wanted is how many fit at most; below 2 it
// counts as 2. It is a plot.Ticker.
type ValueTicks struct{ Wanted int }

// Ticks returns the ticks inside [low, high], all labelled.
func (v ValueTicks) Ticks(low, high float64) []plot.Tick {
	if !(high > low) || math.IsInf(high-low, 0) {
		return nil
	}
	step, decimals := niceStep((high - low) / float64(max(v.Wanted, 2)))
	var ticks []plot.Tick
	for i := math.Ceil(low/step - 1e-9); i*step <= high+1e-9*step; i++ {
		ticks = append(ticks, plot.Tick{Value: i * step, Label: Number(i*step, decimals)})
	}
	return ticks
}

// niceStep returns the least of 1, 2, 5 × 10ⁿ not below s, and the decimals it needs.
func niceStep(s float64) (step float64, decimals int) {
	n := math.Floor(math.Log10(s))
	for _, m := range []float64{1, 2, 5, 10} {
		step = m * math.Pow(10, n)
		if step >= s*(1-1e-9) {
			break
		}
	}
	return step, int(max(0, -math.Floor(math.Log10(step)+1e-9)))
}

// widen returns low and high moved out to whole steps of about an eighth of the range.
func widen(low, high float64) (float64, float64) {
	if high-low < 1e-9 {
		low, high = low-1, high+1
	}
	step, _ := niceStep((high - low) / 10)
	return math.Floor(low/step+1e-9) * step, math.Ceil(high/step-1e-9) * step
}
