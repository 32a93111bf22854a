package desk

import (
	"fmt"
	"math"

	"thawbook/analysis/compare"
	"thawbook/analysis/series"
)

// SideBySideView is what the screen says of two barns: the sentence, a table, and what lies behind it.
type SideBySideView struct {
	A, B     string
	Sentence string // on the air's temperature; where it can't be told, what would tell
	Lines    []string
	Table    []SideBySideRow
	Losses   string // the hives found dead; empty where neither barn has a count
	Caution  string // beside the losses
	Overlap  string // which hours are compared
}

// Sentences are all of the view that is not in the table, the first the most important.
func (v SideBySideView) Sentences() []string {
	out := append([]string{v.Sentence}, v.Lines...)
	if v.Losses != "" {
		out = append(out, v.Losses+" "+v.Caution)
	}
	return append(out, v.Overlap)
}

// SideBySideRow is one line of the table. HowSure is the statistics behind the verdict, for those who ask.
type SideBySideRow struct {
	Name, Phase         string // Phase is empty for the whole common time
	A, B, Difference    string
	Verdict, Settle     string
	HowSure             string
	ValueA, ValueB, Gap float64 // to sort by
}

// cautionLosses stands beside every comparison of losses.
const cautionLosses = "Hives were not put into one barn or the other by lot, mites, queens and stores kill more hives than thermostats do, and one winter is one winter: a difference in losses is no verdict on a barn."

// SideBySideOf is the view of a pair.
func SideBySideOf(p compare.Pair, u Units) SideBySideView {
	w := pairWords{p, u}
	v := SideBySideView{A: p.A, B: p.B, Overlap: w.overlap(), Losses: w.losses(), Table: []SideBySideRow{}}
	if v.Losses != "" {
		v.Caution = cautionLosses
	}
	for _, r := range p.Rows {
		v.Table = append(v.Table, w.row(r))
		switch {
		case r.Phase != "" || r.Measure != compare.Mean && r.Measure != compare.EqualWeather:
		case v.Sentence == "":
			v.Sentence = joinedWords(w.told(r), w.settle(r))
		default:
			v.Lines = append(v.Lines, w.told(r))
		}
	}
	if v.Sentence == "" {
		v.Sentence = w.nothing()
	}
	return v
}

// pairWords are the words of one pair.
type pairWords struct {
	compare.Pair
	u Units
}

// overlap says which hours are compared.
func (w pairWords) overlap() string {
	if w.ByWinterDay {
		return fmt.Sprintf("Compared are the hours of the bees' time of both, day by day of the winter: %s.", Hours(w.OverlapHours))
	}
	return fmt.Sprintf("Compared are the hours of the bees' time in both barns: %s.", Hours(w.OverlapHours))
}

// nothing says why there is nothing to compare.
func (w pairWords) nothing() string {
	if w.OverlapHours == 0 {
		return fmt.Sprintf("%s and %s had no bees at the same time, so there is nothing to compare hour by hour.", w.A, w.B)
	}
	return fmt.Sprintf("In one of the barns no logger recorded the air, so %s and %s can't be compared.", w.A, w.B)
}

// comparedWords are what is said of A where it lies above B, and where below; which of the two it is; and the name of the
// figure in the table.
var comparedWords = map[string]struct{ above, below, whether, name string }{
	compare.AirTemperature:   {"warmer", "cooler", "which of them was warmer", "Air temperature"},
	compare.RelativeHumidity: {"damper", "drier", "which of them was damper", "Humidity"},
	compare.DewPoint:         {"moister", "drier", "which of them held moister air", "Dew point"},
	compare.Margin:           {"farther from sweating", "nearer to sweating", "which of their walls was nearer to sweating", "Margin to sweating"},
}

// told is what can be said of a mean of both.
func (w pairWords) told(r compare.Row) string {
	words := comparedWords[r.Quantity]
	means := fmt.Sprintf("%s had %s in the mean and %s %s%s", w.A, w.amount(r, r.A), w.B, w.amount(r, r.B), w.setRight(r))
	where := ""
	if r.Measure == compare.EqualWeather {
		where = "In the same weather outdoors "
		means = fmt.Sprintf("%s would have had %s and %s %s", w.A, w.amount(r, r.A), w.B, w.amount(r, r.B))
	}
	switch r.Verdict {
	case compare.More, compare.Less:
		word, low, high := words.above, r.Low, r.High
		if r.Verdict == compare.Less {
			word, low, high = words.below, -r.High, -r.Low
		}
		return fmt.Sprintf("%s%s was %s than %s by %s (%s). %s.", where, w.A, word, w.B, w.gap(r, math.Abs(r.Difference)), w.between(r, low, high), means)
	case compare.Alike:
		return fmt.Sprintf("%s%s; there is no difference.", where, means)
	case compare.CantTell:
		return fmt.Sprintf("%s%s: %s is more than these loggers can tell.", where, means, words.whether)
	}
	return fmt.Sprintf("%s%s. %s", where, means, w.unknown(r))
}

// setRight says that means were set right by checks of the loggers, and what was read.
func (w pairWords) setRight(r compare.Row) string {
	if r.AddedA == 0 && r.AddedB == 0 {
		return ""
	}
	return fmt.Sprintf(", set right by checks of the loggers (as read %s and %s)", w.amount(r, r.A-r.AddedA), w.amount(r, r.B-r.AddedB))
}

// unknown says why there is no interval.
func (w pairWords) unknown(r compare.Row) string {
	switch r.Unknown {
	case "counted_only":
		return "Counted, no more: how sure a difference is, the hours outside the band tell."
	case "few_effective_hours":
		return "One hour was so like the next that there is too little in it to say how sure that is."
	}
	return "Too little was recorded in both at once to say how sure that is."
}

// settle says what would settle a difference that can't be told; empty where nothing is to be settled.
func (w pairWords) settle(r compare.Row) string {
	s := r.Settle
	if s == nil {
		return ""
	}
	loggers := fmt.Sprintf("the loggers hung side by side for three days and set right by each other, to within %s", w.gap(r, s.SensorHalf))
	time := fmt.Sprintf("%s of both barns with bees", Days(s.OverlapHours*series.HourMS))
	switch s.Code {
	case compare.CheckLoggers:
		return capital(loggers) + ", would tell."
	case compare.MoreHours:
		return capital(time) + ", if all went on like this, would tell."
	case compare.Both:
		return capital(loggers) + ", and " + time + " would tell."
	}
	return "A difference so small can't be told within a few winters or by any check of the loggers."
}

// row is a line of the table.
func (w pairWords) row(r compare.Row) SideBySideRow {
	return SideBySideRow{
		Name: w.name(r), Phase: r.Phase, A: w.amount(r, r.A), B: w.amount(r, r.B), Difference: signedAs(r.Difference, func(v float64) string { return w.gap(r, v) }),
		Verdict: w.verdict(r), Settle: w.settle(r), HowSure: w.howSure(r), ValueA: r.A, ValueB: r.B, Gap: r.Difference,
	}
}

// name is what a line of the table is of.
func (w pairWords) name(r compare.Row) string {
	limit := w.limit(r)
	side, word := " below ", comparedWords[r.Quantity].name
	if r.Measure == compare.HoursAbove || r.Measure == compare.DegreeHoursAbove {
		side = " above "
	}
	switch r.Quantity {
	case compare.StageCalled:
		return r.Of + " called for"
	case compare.StageRan:
		return r.Of + " ran"
	case compare.Spells:
		if r.Measure == compare.Count {
			return capital(spellWord(r.Of)) + " spells"
		}
		return "In " + spellWord(r.Of) + " spells"
	}
	switch r.Measure {
	case compare.EqualWeather:
		return word + " in the same weather"
	case compare.ByRegression:
		return word + " in the same weather, by a straight line"
	case compare.HoursBelow, compare.HoursAbove:
		return word + side + limit
	case compare.DegreeHoursBelow, compare.DegreeHoursAbove:
		return word + side + limit + ", how far and long"
	}
	return word
}

// limit is the limit of a row, or the band's name where it changed.
func (w pairWords) limit(r compare.Row) string {
	switch {
	case r.Limit == nil:
		return map[string]string{"good": "the safe band", "watch": "the watch limit", "act": "the act limit"}[r.Of]
	case r.Quantity == compare.RelativeHumidity:
		return Percent(*r.Limit / 100)
	case r.Quantity == compare.Margin:
		return w.u.Diff(*r.Limit)
	}
	return w.u.LimitWithUnit(*r.Limit)
}

// verdict is the short word of a row.
func (w pairWords) verdict(r compare.Row) string {
	switch r.Verdict {
	case compare.More:
		return "more in " + w.A
	case compare.Less:
		return "less in " + w.A
	case compare.Alike:
		return "alike"
	case compare.CantTell:
		return "more than these loggers can tell"
	}
	if r.Unknown == "counted_only" {
		return "as counted"
	}
	return "can't tell"
}

// howSure is the statistics behind a row.
func (w pairWords) howSure(r compare.Row) string {
	if r.Unknown == "counted_only" {
		return w.unknown(r)
	}
	text := fmt.Sprintf("Known in both for %s", Hours(r.OverlapHours))
	if r.EffectiveN > 0 {
		text += fmt.Sprintf(", which tell as much as %s that have nothing to do with one another", number(r.EffectiveN, 0))
	}
	text += fmt.Sprintf(" (put together anew 2,000 times in stretches of %s on average). ", Hours(r.BlockHours))
	if r.Unknown != "" {
		return text + w.unknown(r)
	}
	text += fmt.Sprintf("With 95 of 100 certainty the difference lies in the range from %s: the run of the hours leaves ±%s%s, the loggers ±%s.",
		w.between(r, r.Low, r.High), w.gap(r, r.ResampledHalf), w.byMoving(r), w.gap(r, r.SensorHalf))
	if r.Few {
		text += " So few hours that count leave the range somewhat too narrow."
	}
	return text
}

// byMoving is the second opinion, where there is one.
func (w pairWords) byMoving(r compare.Row) string {
	if r.MovingHalf == 0 {
		return ""
	}
	return fmt.Sprintf(" (±%s by stretches of one length)", w.gap(r, r.MovingHalf))
}

// amount is a value of a row with its unit.
func (w pairWords) amount(r compare.Row, v float64) string {
	switch r.Unit {
	case "degC":
		return w.u.Temp(v)
	case "percent":
		return withUnit(number(v, 0), "%")
	}
	return w.gap(r, v)
}

// gap is a difference of values of a row with its unit.
func (w pairWords) gap(r compare.Row, v float64) string {
	switch r.Unit {
	case "degC", "K":
		return w.u.Diff(v)
	case "percent":
		return withUnit(number(v, 1), "points")
	case "h":
		return Hours(v)
	case "K·h":
		return withUnit(number(w.u.DiffValue(v), 0), w.u.TempSymbol()+"·h")
	case "percent·h":
		return withUnit(number(v, 0), "%·h")
	}
	return number(v, 0)
}

// between is an interval of a row's difference.
func (w pairWords) between(r compare.Row, low, high float64) string {
	return w.gap(r, low) + " to " + w.gap(r, high)
}

// joinedWords are sentences one after another, without the empty ones.
func joinedWords(sentences ...string) (out string) {
	for _, s := range sentences {
		if s != "" && out != "" {
			out += " "
		}
		out += s
	}
	return out
}
