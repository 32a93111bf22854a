package desk

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// FirstLook is what a barn's winter amounts to in five to eight plain sentences.
type FirstLook struct {
	Headline  string // whether it held
	Sure      string // how sure that is
	Sentences []Sentence
	Findings  []FindingView // worth a look before next winter
	More      string        // that there are others; empty where there are none
	Cautions  []string
}

// Sentence is one thing to know, most important first.
type Sentence struct {
	Text string
	Sure string // how sure it is and what it rests on; may be empty
	Mark Mark
	Look series.Span // where to look in the Timeline; empty when there is no one place

	weight float64
}

const (
	mostSentences = 7 // below the headline
	mostFindings  = 3 // on the first screen
)

// FirstLookOf makes the first screen of one barn from its review alone.
func FirstLookOf(in analysis.Input, r analysis.Review, u Units) FirstLook {
	b := newBarn(in, r, u)
	f := FirstLook{}
	f.Headline, f.Sure = b.headline()
	tell := []func() []Sentence{
		b.warm, b.cold, b.humidity, b.surfaces, b.sweating, b.fansAlone, b.calledAndRan, b.spread,
	}
	var all []Sentence
	for _, t := range tell {
		all = append(all, t()...)
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].weight > all[j].weight })
	last := b.cannotAndSettle()
	if room := mostSentences - len(last); len(all) > room {
		all = all[:room]
	}
	f.Sentences = append(all, last...)
	f.Findings = Findings(in, r, u)
	if n := len(f.Findings) - mostFindings; n > 0 {
		f.Findings, f.More = f.Findings[:mostFindings], fmt.Sprintf("%d more %s under Before next winter.", n, oneOrMany(n, "stands", "stand"))
	}
	f.Cautions = b.cautions()
	return f
}

// headline says whether the air held, and its second value how sure that is.
func (b barn) headline() (text, sure string) {
	a := b.r.Verdict.Held
	row, ok := b.band("air_temperature", "good")
	if !a.Figure.OK || !ok {
		return "Whether it held can't be told: " + lacks(b.whyNotHeld(a)) + ".", ""
	}
	text = map[analysis.State]string{analysis.Yes: "It held: ", analysis.Mostly: "It mostly held: ", analysis.No: "It did not hold: "}[a.State] +
		OfHundred(a.Figure.Mid/100) + " hours " + b.inside(row) + "."
	sure = knownFor(a.Coverage)
	if b.errK() > 0 {
		sure += "; " + b.shareOff(a.Figure)
	}
	return text, sure + "."
}

// inside is "between 2 and 6 °C", or of limits that are not the same in all phases "inside the limits of the phase".
func (b barn) inside(row analysis.BandRow) string {
	if row.Low == nil || row.High == nil {
		return "inside the limits of the phase"
	}
	return "between " + b.u.Limit(*row.Low) + " and " + b.u.LimitWithUnit(*row.High)
}

// than is "than 6 °C", or "than the limit of the phase" where each has its own.
func (b barn) than(limitC *float64) string {
	if limitC == nil {
		return "than the limit of the phase"
	}
	return "than " + b.u.LimitWithUnit(*limitC)
}

// knownFor says how much of the time there are readings for.
func knownFor(coverage float64) string {
	if coverage > 0.99999 { // breaks where a logger joins or leaves a mean take a millisecond each
		return "Known throughout"
	}
	return "Known for " + OfHundred(coverage) + " hours"
}

func (b barn) whyNotHeld(a analysis.Answer) string {
	switch {
	case b.roomReadings() == 0:
		return "no_room"
	case b.r.Traces.Room.Len() == 0:
		return "no_room_temperature"
	}
	if b.recordElsewhere() {
		return "record_outside_dates"
	}
	return a.Figure.Unknown
}

// recordElsewhere says whether all of the room's record lies before the bees went in or after they came out.
func (b barn) recordElsewhere() bool {
	at := b.r.Traces.Room.Readings.At
	return len(at) > 0 && b.r.BeesOut > b.r.BeesIn && (at[len(at)-1] <= b.r.BeesIn || at[0] >= b.r.BeesOut)
}

// shareOff says how far a share may be off for what the loggers may be off by.
func (b barn) shareOff(f analysis.Figure) string {
	who := "loggers of this kind"
	if b.errK() < b.worstErrK() {
		who = "these loggers together"
	}
	loggers := who + " may read " + b.u.Diff(b.errK()) + " too high or too low"
	if OfHundred(f.Low/100) == OfHundred(f.High/100) {
		return loggers + ", which makes no difference here"
	}
	return "as " + loggers + ", it may have been " + shareRange(f)
}

// shareRange is "93 to 99 of 100".
func shareRange(f analysis.Figure) string {
	return strings.TrimSuffix(OfHundred(f.Low/100), " of 100") + " to " + OfHundred(f.High/100)
}

// warm is about the time above the good band: how long, when, and what it went with.
func (b barn) warm() []Sentence {
	good, ok := b.band("air_temperature", "good")
	if !ok {
		return nil
	}
	limit, spells := b.than(good.High), b.spells(b.place(), "warm")
	switch {
	case good.HoursAbove == 0:
		return []Sentence{{Text: "It was never warmer " + limit + ".", Mark: MarkGood, weight: 20}}
	case good.HoursAbove < 1 || len(spells) == 0:
		return []Sentence{{Text: "It was hardly ever warmer " + limit + ": " + Hours(good.HoursAbove) + " in all.", Mark: MarkGood, weight: 20}}
	}
	s := Sentence{Mark: MarkWatch, weight: 60 + analysis.Harm("warm", good.HoursAbove, good.DegHoursAbove)}
	s.Text = "It was warmer " + limit + " for " + Hours(good.HoursAbove) + b.inPhases("air_temperature", func(row analysis.BandRow) float64 { return row.HoursAbove }) + b.ofWhichHot()
	s.Text += b.mostOfIt(spells, &s.Look) + "; the warmest was " + b.u.Temp(peak(spells).Peak) + " on " + b.u.Date(mid64(peak(spells).Span)) + "."
	s.Text += b.warmWentWith(spells, peak(spells).Limit)
	s.Sure = b.hoursSure(good.HoursAbove, good.AboveRange)
	if act, ok := b.band("air_temperature", "act"); ok && act.HoursAbove > 0 {
		s.Mark = MarkAct
	}
	return []Sentence{s}
}

// inPhases is " (12 h in deep winter, 193 h in late winter)" for hours outside the good band, where they fell into
// more than one phase: warm in November is another thing than warm in March.
func (b barn) inPhases(quantity string, hours func(analysis.BandRow) float64) string {
	var parts []string
	for _, q := range b.r.Quantities {
		if q.Quantity != quantity || q.Place != b.place() || q.Logger != "" || q.Phase == "" || len(q.Bands) == 0 {
			continue
		}
		if h := hours(q.Bands[0]); h >= 1 {
			parts = append(parts, Hours(h)+" "+phaseWords[q.Phase])
		}
	}
	if len(parts) < 2 {
		return ""
	}
	return " (" + strings.Join(parts, ", ") + ")"
}

// phaseWords say when a phase is.
var phaseWords = map[string]string{"filling": "while filling", "deep winter": "in deep winter", "late winter": "in late winter", "emptying": "while emptying"}

// ofWhichHot is ", 22 h of it above 8 °C", by the limit to act above; where good ends there too there is nothing to add.
func (b barn) ofWhichHot() string {
	good, _ := b.band("air_temperature", "good")
	act, ok := b.band("air_temperature", "act")
	limit := b.actLimits()
	switch {
	case !ok || good.High != nil && act.High != nil && *act.High <= *good.High:
		return ""
	case act.High != nil:
		limit = b.u.LimitWithUnit(*act.High)
	}
	if act.HoursAbove == 0 {
		return ", never above " + limit
	}
	return ", " + Hours(act.HoursAbove) + " of it above " + limit
}

// actLimits are the limits above which something has to be done where each phase has its own: "the upper limit of its phase (8–10 °C)".
func (b barn) actLimits() string {
	var all []float64
	for _, q := range b.r.Quantities {
		if q.Quantity != "air_temperature" || q.Place != b.place() || q.Logger != "" || q.Phase == "" {
			continue
		}
		for _, row := range q.Bands {
			if row.Name == "act" && row.High != nil {
				all = append(all, *row.High)
			}
		}
	}
	if len(all) == 0 {
		return "the limit of the phase"
	}
	return "the upper limit of its phase (" + withUnit(rangeOf(b.u.Limit(slices.Min(all)), b.u.Limit(slices.Max(all))), b.u.TempSymbol()) + ")"
}

// mostOfIt is "; most of it fell on 26–29 March", and points look at that stretch.
func (b barn) mostOfIt(spells []analysis.Spell, look *series.Span) string {
	s, _, ok := b.bulk(spells)
	if !ok {
		*look = peak(spells).Span
		return ", spread over the winter"
	}
	*look = s
	return ", most of it on " + b.u.Dates(s)
}

// warmWentWith says what the warm hours went with: the air outside and the stages called for.
func (b barn) warmWentWith(spells []analysis.Spell, limitC float64) string {
	spans := b.bulkSpans(spells)
	outC, knowsOut := b.outdoorMean(spans)
	if !knowsOut {
		return ""
	}
	text := " That went with " + b.u.Temp(outC) + " outside on average"
	share, staged := b.calledShare(spans)
	if staged && share >= 0.5 {
		text += " and every stage called for " + allThatTime(share)
	}
	text += "."
	if warmer := b.warmerOutside(spans, limitC); warmer >= 0.5 {
		text += " The air outside was itself above " + b.u.LimitWithUnit(limitC) + " " + allThatTime(warmer) + ": there was no colder air to bring in."
	}
	return text
}

// allThatTime says for how much of some hours something held.
func allThatTime(share float64) string {
	if share >= 0.995 {
		return "all that time"
	}
	return "in " + OfHundred(share) + " of those hours"
}

// bulkSpans are the spells' stretches in the days that hold most of them, or all when they are scattered.
func (b barn) bulkSpans(spells []analysis.Spell) []series.Span {
	s, _, ok := b.bulk(spells)
	if !ok {
		s = b.span()
	}
	return spansOf(spells, s)
}

// warmerOutside is the share of some stretches with outdoor air above a limit.
func (b barn) warmerOutside(spans []series.Span, limitC float64) float64 {
	above, length := 0.0, series.LengthMS(spans)
	for _, s := range spans {
		above += b.r.Traces.Outdoor.Outside(s, math.Inf(-1), limitC).AboveMS
	}
	if length == 0 {
		return 0
	}
	return above / float64(length)
}

// cold is about the time below the good band.
func (b barn) cold() []Sentence {
	good, ok := b.band("air_temperature", "good")
	spells := b.spells(b.place(), "cold")
	if !ok || good.HoursBelow < 1 || len(spells) == 0 {
		return nil
	}
	low := peak(spells)
	s := Sentence{Mark: MarkWatch, weight: 45 + analysis.Harm("cold", good.HoursBelow, good.DegHoursBelow)}
	s.Text = "It was colder " + b.than(good.Low) + " for " + Hours(good.HoursBelow) + b.inPhases("air_temperature", func(row analysis.BandRow) float64 { return row.HoursBelow }) + b.mostOfIt(spells, &s.Look) +
		"; the coldest was " + b.u.Temp(low.Peak) + " on " + b.u.Date(mid64(low.Span)) + "."
	if outC, known := b.outdoorMean(b.bulkSpans(spells)); known {
		s.Text += " That went with " + b.u.Temp(outC) + " outside on average."
	}
	s.Sure = b.hoursSure(good.HoursBelow, good.BelowRange)
	return []Sentence{s}
}

// hoursSure says how far hours may be off for the loggers' error.
func (b barn) hoursSure(h float64, r analysis.Range) string {
	if r.High <= r.Low || hoursNumber(r.Low) == hoursNumber(r.High) {
		return ""
	}
	return "With loggers " + b.u.Diff(b.errK()) + " off either way: " + HoursRange(r.Low, r.High) + "."
}

// spread compares the room's loggers with each other, and names those that were outside the band for longer than their mean.
func (b barn) spread() []Sentence {
	rows := b.ownRows()
	if len(rows) < 2 {
		return nil
	}
	meanOf := func(x, y analysis.QuantityRow) int { return cmp.Compare(x.Mean.Mid, y.Mean.Mid) }
	low, high := slices.MinFunc(rows, meanOf), slices.MaxFunc(rows, meanOf)
	apart := high.Mean.Mid - low.Mean.Mid
	own, hours := b.byItself()
	s := Sentence{Mark: MarkWatch, weight: math.Max(15+math.Min(10*apart, 30), math.Min(hours/10, 60))}
	s.Text = "The loggers in the room read from " + b.u.Temp(low.Mean.Mid) + " (" + low.Logger + ") to " + b.u.Temp(high.Mean.Mid) + " (" + high.Logger + ") on average"
	if b.u.Temp(low.Mean.Mid) == b.u.Temp(high.Mean.Mid) {
		s.Text = "The loggers in the room all read " + b.u.Temp(low.Mean.Mid) + " on average"
	}
	switch {
	case apart > 2*b.worstErrK():
		s.Text += ": more apart than the loggers alone explain, so the room was not one temperature."
	case b.apartShare() >= seldomApart:
		s.Text += ", but further apart in many single hours."
	default:
		s.Text += ": no more apart than two such loggers may be side by side."
		s.Mark = MarkNone
	}
	if own != "" {
		s.Text, s.Mark = s.Text+" "+own, MarkWatch
	}
	return []Sentence{s}
}

// seldomApart is the share of the hours up to which loggers that were apart leave a room one temperature.
const seldomApart = 0.05

// apartShare is the share of the known hours in which the room's loggers were more than 2 K apart.
func (b barn) apartShare() float64 {
	for _, u := range b.r.Uniformity {
		if u.Place == b.place() && u.KnownHours > 0 && u.ApartHours.OK {
			return u.ApartHours.Mid / u.KnownHours
		}
	}
	return 0
}

// mid64 is the middle of a span.
func mid64(s series.Span) int64 { return s.From + (s.To-s.From)/2 }
