package desk

import (
	"cmp"
	"math"
	"strings"

	"thawbook/analysis/compare"
)

// rowWords name what a row compares: %band is the limit, %of the stage, the surface or the kind of spell.
var rowWords = map[[2]string]string{
	{compare.AirTemperature, compare.Mean}:               "Temperature, mean",
	{compare.AirTemperature, compare.EqualWeather}:       "Temperature, same weather",
	{compare.AirTemperature, compare.ByRegression}:       "Temperature, same weather by a straight line",
	{compare.AirTemperature, compare.HoursAbove}:         "Warmer than %band",
	{compare.AirTemperature, compare.HoursBelow}:         "Colder than %band",
	{compare.AirTemperature, compare.DegreeHoursAbove}:   "Warmer than %band, summed",
	{compare.AirTemperature, compare.DegreeHoursBelow}:   "Colder than %band, summed",
	{compare.RelativeHumidity, compare.Mean}:             "Relative humidity, mean",
	{compare.RelativeHumidity, compare.HoursAbove}:       "Damper than %band",
	{compare.RelativeHumidity, compare.HoursBelow}:       "Drier than %band",
	{compare.RelativeHumidity, compare.DegreeHoursAbove}: "Damper than %band, summed",
	{compare.RelativeHumidity, compare.DegreeHoursBelow}: "Drier than %band, summed",
	{compare.DewPoint, compare.Mean}:                     "Dew point, mean",
	{compare.Margin, compare.Mean}:                       "Margin to wet, mean",
	{compare.Margin, compare.HoursBelow}:                 "Wet at the coldest wall",
	{compare.Margin, compare.DegreeHoursBelow}:           "Wet at the coldest wall, summed",
	{compare.StageCalled, compare.Hours}:                 "%of called for",
	{compare.StageRan, compare.Hours}:                    "%of ran",
	{compare.Spells, compare.Count}:                      "Spells, %of",
	{compare.Spells, compare.Hours}:                      "Spells, %of, time",
}

// shortRow says whether a row stands in the table of the whole winter: means, hours outside the safe band, stages and how
// many spells.
func shortRow(r compare.Row) bool {
	switch r.Measure {
	case compare.DegreeHoursAbove, compare.DegreeHoursBelow, compare.ByRegression:
		return false
	case compare.HoursAbove, compare.HoursBelow:
		return r.Of != "watch" && r.Of != "act"
	case compare.Hours:
		return r.Quantity != compare.Spells
	}
	return true
}

// sureRow has the second opinion on the same weather too: it stands behind, with what the ranges are made of.
func sureRow(r compare.Row) bool { return shortRow(r) || r.Measure == compare.ByRegression }

// fullRow has the degree-hours too; the outer bands and the spells stand in Air and water and in Spells.
func fullRow(r compare.Row) bool {
	return r.Of != "watch" && r.Of != "act" && r.Quantity != compare.Spells
}

// rows are those of a scope that are wanted and have words.
func (s twoBarns) rows(phase string, wanted func(compare.Row) bool) (out []compare.Row) {
	for _, r := range s.p.Rows {
		if _, ok := rowWords[[2]string{r.Quantity, r.Measure}]; ok && r.Phase == phase && wanted(r) {
			out = append(out, r)
		}
	}
	return out
}

func (s twoBarns) table(phase string, wanted func(compare.Row) bool) Table {
	t := Table{Columns: []Column{{Title: "Over the hours known in both"}, barnColumn(s.p.A, ""), barnColumn(s.p.B, ""),
		{Title: "Difference", Number: true}, {Title: "May be", Number: true}, {Title: "So, " + s.p.A + " was", About: "what it was"}}}
	for _, r := range s.rows(phase, wanted) {
		may := enDash
		if r.Unknown == "" {
			may = s.mayBe(r)
		}
		t.Helps = append(t.Helps, cmp.Or(rowHelp[r.Measure], rowHelp[r.Quantity]))
		t.Rows = append(t.Rows, []string{s.title(r), s.value(r, r.A), s.value(r, r.B), withSign(s.amount(r, r.Difference)), may, verdictWord(r)})
	}
	return t
}

// barnColumn has one barn's figures.
func barnColumn(barn, unit string) Column {
	return Column{Title: barn, Unit: unit, Number: true, About: "a barn"}
}

// title names a row with its unit.
func (s twoBarns) title(r compare.Row) string {
	limit := "the safe band"
	if r.Limit != nil {
		limit = s.a.u.LimitWithUnit(*r.Limit)
		if r.Quantity == compare.RelativeHumidity {
			limit = Percent(*r.Limit / 100)
		}
	}
	of := r.Of
	if r.Quantity == compare.Spells {
		of = spellWord(r.Of)
	}
	text := strings.NewReplacer("%band", limit, "%of", of).Replace(rowWords[[2]string{r.Quantity, r.Measure}])
	if unit := s.unit(r); unit != "" {
		text += ", " + unit
	}
	return text
}

// unit is what a row's figures are shown in.
func (s twoBarns) unit(r compare.Row) string {
	switch r.Unit {
	case "degC", "K":
		return s.a.u.TempSymbol()
	case "percent":
		return "%"
	case "K·h":
		return s.a.u.TempSymbol() + "·h"
	case "percent·h":
		return "%·h"
	}
	return r.Unit
}

// value is a barn's figure, and amount a difference, as they are shown.
func (s twoBarns) value(r compare.Row, v float64) string {
	if r.Unit == "degC" {
		return number(s.a.u.TempValue(v), 1)
	}
	return s.amount(r, v)
}

func (s twoBarns) amount(r compare.Row, v float64) string {
	switch r.Unit {
	case "degC", "K":
		return number(s.a.u.DiffValue(v), 1)
	case "K·h":
		return number(s.a.u.DiffValue(v), 0)
	case "h":
		return hoursNumber(v)
	}
	return number(v, 0)
}

// mayBe is the range of a difference.
func (s twoBarns) mayBe(r compare.Row) string {
	low, high := s.amount(r, r.Low), s.amount(r, r.High)
	if low == high {
		return low
	}
	return rangeOf(low, high)
}

// withSign puts a plus before what is above nothing.
func withSign(text string) string {
	if strings.HasPrefix(text, minus) || strings.Trim(text, "0.") == "" {
		return text
	}
	return "+" + text
}

// verdictWord ends "So, North was".
func verdictWord(r compare.Row) string {
	words := moreLess[r.Quantity]
	switch r.Measure {
	case compare.Mean, compare.EqualWeather, compare.ByRegression:
	default:
		words = [2]string{"more", "less"}
	}
	switch r.Verdict {
	case compare.More:
		return "▲ " + words[0]
	case compare.Less:
		return "▼ " + words[1]
	case compare.Alike:
		return "= the same"
	case compare.CantTell:
		return "can't tell"
	}
	if r.Unknown == "counted_only" {
		return "only counted"
	}
	return "too little known"
}

// moreLess are the words for more and for less of a mean.
var moreLess = map[string][2]string{
	compare.AirTemperature:   {"warmer", "colder"},
	compare.RelativeHumidity: {"damper", "drier"},
	compare.DewPoint:         {"moister", "less moist"},
	compare.Margin:           {"farther from wet", "nearer to wet"},
}

// sentence is whether the first barn was warmer, how sure that is, and what would settle it.
func (s twoBarns) sentence() (text, sure, settle string) {
	i := 0
	for i < len(s.p.Rows)-1 && (s.p.Rows[i].Measure != compare.Mean || s.p.Rows[i].Quantity != compare.AirTemperature) {
		i++
	}
	r := s.p.Rows[i]
	if r.Quantity != compare.AirTemperature {
		return s.p.A + " and " + s.p.B + " can be set side by side, but not by their temperature.", "", ""
	}
	words := moreLess[r.Quantity]
	word, diff := words[0], s.a.u.Diff(math.Abs(r.Difference))
	if r.Difference < 0 {
		word = words[1]
	}
	read := s.p.A + " read " + diff + " " + word + " than " + s.p.B
	if diff == s.a.u.Diff(0) {
		read = s.p.A + " read the same as " + s.p.B
	}
	switch r.Verdict {
	case compare.More, compare.Less:
		text = s.p.A + " was " + diff + " " + word + " than " + s.p.B + "."
	case compare.Unknown:
		text = read + "; too little is known in both to say how sure that is."
	default:
		text = read + ": which was the warmer is more than these loggers can tell."
		if apart := s.surelyApart(); len(apart) > 0 {
			text += " But " + s.p.A + " was " + listed(apart) + "."
		}
	}
	return text, s.setRight(r) + s.sure(r), s.settle(r)
}

// surelyApart are what the first barn's air surely was beside the other's on average: damper, farther from wet.
func (s twoBarns) surelyApart() (out []string) {
	for _, r := range s.rows("", shortRow) {
		words, known := moreLess[r.Quantity]
		switch {
		case !known || r.Measure != compare.Mean:
		case r.Verdict == compare.More:
			out = append(out, words[0])
		case r.Verdict == compare.Less:
			out = append(out, words[1])
		}
	}
	return out
}

// setRight is what was read where checks of the loggers set it right; empty where they did not.
func (s twoBarns) setRight(r compare.Row) string {
	if r.AddedA == 0 && r.AddedB == 0 {
		return ""
	}
	temp := s.a.u.Temp
	return "As read, " + s.p.A + " had " + temp(r.A-r.AddedA) + " and " + s.p.B + " " + temp(r.B-r.AddedB) +
		"; set right by checks of the loggers, " + temp(r.A) + " and " + temp(r.B) + ". "
}

// sure is the interval of a difference and what it rests on.
func (s twoBarns) sure(r compare.Row) string {
	text := "Over " + Hours(r.OverlapHours) + " known in both"
	if r.Unknown != "" {
		return text + "."
	}
	text += ", with what the loggers may be off by: " + withUnit(s.mayBe(r), s.unit(r))
	if r.Few {
		text += "; hours beside each other are much alike, so the range may be too narrow"
	}
	return text + "."
}

// settle is what would tell a difference of this size.
func (s twoBarns) settle(r compare.Row) string {
	if r.Settle == nil {
		return ""
	}
	check := "both barns' loggers checked against each other, so that together they are off by no more than " + withUnit(s.amount(r, r.Settle.SensorHalf), s.unit(r))
	if s.amount(r, r.Settle.SensorHalf) == s.amount(r, 0) {
		check = "both barns' loggers checked against each other more closely than they are read"
	}
	days := s.longer(r)
	switch r.Settle.Code {
	case compare.CheckLoggers:
		return "What would settle it: " + check + "."
	case compare.MoreHours:
		return "What would settle it: " + days + "."
	case compare.Both:
		return "What would settle it: " + check + "; and " + days + "."
	}
	return "A difference as small as this is out of reach of such loggers."
}

// longer is how much time a difference would take: days while a winter may still bring them, else winters like this one.
func (s twoBarns) longer(r compare.Row) string {
	days := math.Ceil(r.Settle.OverlapHours / 24)
	if days > 150 {
		return "as much time as " + plural(number(math.Ceil(r.Settle.OverlapHours/r.OverlapHours), 0), "winter", "winters") + " like this one"
	}
	return plural(number(days, 0), "day", "days") + " known in both"
}

// behind says what the range of each difference is made of.
func (s twoBarns) behind() Table {
	t := Table{Columns: []Column{{Title: "What"}, {Title: "Known in both", Unit: "h", Number: true}, {Title: "Worth", Unit: "h", Number: true},
		{Title: "Block", Unit: "h", Number: true}, {Title: "± by chance", Number: true}, {Title: "± blocks of one length", Number: true}, {Title: "± loggers", Number: true}}}
	for _, r := range s.rows("", sureRow) {
		row := []string{s.title(r), hoursNumber(r.OverlapHours), enDash, enDash, enDash, enDash, enDash}
		if r.EffectiveN > 0 && r.Unknown != "counted_only" {
			row[2] = number(r.EffectiveN, 0)
		}
		if r.Unknown == "" {
			row[3], row[4], row[6] = hoursNumber(r.BlockHours), s.amount(r, r.ResampledHalf), s.amount(r, r.SensorHalf)
			if r.MovingHalf > 0 {
				row[5] = s.amount(r, r.MovingHalf)
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
