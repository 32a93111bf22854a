package desk

import (
	"math"
	"slices"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/winter"
)

// StagesView is the fan stages of a barn: one sentence, a table and the hours per day.
type StagesView struct {
	Sentence string
	Sure     string
	Notes    []string // heat, partings, air and money, each a sentence
	Table    Table
	Days     []StageDays
	Patterns []Pattern // by hour of the day and by the air outside
	Lacks    string    // why the screen is empty; then there is nothing else
	Cautions []string
}

// Table is rows of text under column heads; numbers stand right-aligned.
type Table struct {
	Columns []Column
	Rows    [][]string
	Helps   []string           // what each row's figures are; none or empty where the columns say it
	Looks   map[TableCell]Span // where figures can be seen in the Timeline
}

// Column is a column head with its unit.
type Column struct {
	Title, Unit string
	Number      bool
	About       string // what it is about, where the title is a name: see Help
}

// Head is the title with its unit.
func (c Column) Head() string {
	if c.Unit == "" {
		return c.Title
	}
	return c.Title + ", " + c.Unit
}

// StageDays is one stage's hours per local day of the bees' time.
type StageDays struct {
	Name  string
	Ran   bool // from a record; else called for
	Days  []series.Span
	Hours []float64 // NaN where too little of the day is known

	units Units
}

// Kind says what the hours rest on.
func (d StageDays) Kind() string {
	if d.Ran {
		return "ran"
	}
	return "called for"
}

// TopLabel is the height of a full bar.
func (StageDays) TopLabel() string { return Hours(24) }

// Months are the months that begin among the days, and the one they begin in when there is room to name it.
func (d StageDays) Months() []Tick {
	var out []Tick
	for i, day := range d.Days {
		at := d.units.local(day.From)
		if i == 0 || at.Day() == 1 {
			out = append(out, Tick{at.Format("January"), i})
		}
	}
	if len(out) > 1 && out[1].Cell < 12 {
		out = out[1:]
	}
	return out
}

// DayStrips are the days as strips.
func DayStrips(stages []StageDays) (out []Strip) {
	for _, d := range stages {
		s := Strip{Name: d.Name, Kind: d.Kind(), Top: d.TopLabel(), Ran: d.Ran, Ticks: d.Months(), Shares: make([]float64, len(d.Hours))}
		for i, h := range d.Hours {
			s.Shares[i] = min(1, h/24) // a day of 25 h, when clocks go back, is full too
		}
		out = append(out, s)
	}
	return out
}

// ReadDay says what each stage did on a day; empty when there is no such day.
func ReadDay(stages []StageDays, day int) string {
	if len(stages) == 0 || day < 0 || day >= len(stages[0].Days) {
		return ""
	}
	text := stages[0].units.DateYear(stages[0].Days[day].From) + ":"
	for i, s := range stages {
		if i > 0 {
			text += ","
		}
		text += " " + s.Name + " " + s.Kind() + " "
		if math.IsNaN(s.Hours[day]) {
			text += noNumber
			continue
		}
		text += Hours(s.Hours[day])
	}
	return text
}

// StagesOf makes the Stages screen of one barn.
func StagesOf(in analysis.Input, r analysis.Review, u Units) StagesView {
	b := newBarn(in, r, u)
	if len(in.Stages) == 0 {
		return StagesView{
			Sentence: "What the fans did can't be told: no fan stages are set down for this barn.",
			Lacks: "Set down each stage with the temperatures at which it comes on and goes off, and the Timeline and this page will show when it was called for" +
				recordsBeside(in.Loggers) + ".",
		}
	}
	v := StagesView{Table: b.stageTable(), Days: b.stageDays(), Cautions: []string{cautionFans, cautionElectrics}}
	v.Sentence, v.Sure = b.stageSentence()
	v.Notes, v.Patterns = b.stageNotes(), b.patterns()
	return v
}

// recordsBeside says that what ran is shown too, where loggers recorded it and nobody said of what.
func recordsBeside(loggers []analysis.Logger) string {
	if !slices.ContainsFunc(loggers, func(l analysis.Logger) bool {
		return l.State.Len() > 0 && l.RecordsStage == "" && l.Place == winter.RecordPlace
	}) {
		return ""
	}
	return ", and what ran by the records your files hold"
}

// stageSentence says how much the small fans carried alone and when the big ones were called.
func (b barn) stageSentence() (text, sure string) {
	a := b.r.Verdict.Fans
	if !a.Figure.OK {
		return "How much the small fans carried can't be told: " + lacks(a.Figure.Unknown) + ".", ""
	}
	text = b.carried(a.Figure)
	if when := b.bigOnes(); when != "" {
		text += "; " + when
	}
	sure = knownFor(a.Coverage) + ", " + evidenceWord(a.Figure.Evidence)
	if low, high := OfHundred(a.Figure.Low/100), OfHundred(a.Figure.High/100); low != high {
		sure += "; it may have been " + shareRange(a.Figure)
	}
	if a.Figure.Evidence == analysis.WorkedOut {
		sure += b.offsetWords()
	}
	return text + ".", sure + "."
}

// offsetWords says how the control logger sits against the thermostat.
func (b barn) offsetWords() string {
	if !b.r.Offset.OK || len(b.thermostatStages()) == 0 {
		return ""
	}
	if b.r.Offset.Evidence == analysis.Assumed {
		return "; how far the logger reads from the thermostat can't be seen in the record, so " + b.u.Diff((b.r.Offset.High-b.r.Offset.Low)/2) + " either way is allowed for"
	}
	if math.Abs(b.r.Offset.Mid) < 0.05 {
		return "; the logger seems to read as the thermostat does"
	}
	side := "above"
	if b.r.Offset.Mid < 0 {
		side = "below"
	}
	return "; the logger read about " + b.u.Diff(math.Abs(b.r.Offset.Mid)) + " " + side + " the thermostat, which is allowed for"
}

// bigOnes says how long the larger stages ran or were called for, and in which month mostly.
func (b barn) bigOnes() string {
	names := b.thermostatStages()
	if len(names) < 2 {
		return ""
	}
	verb, spans := b.bigSpans(names[1:])
	total := series.LengthMS(spans)
	if total < series.HourMS {
		return "the larger stages were never " + verb + " for as much as an hour"
	}
	if low, high, sure := b.calledRange(names[1]); verb == "called" && !sure {
		return "the larger ones were called for somewhere between " + hoursNumber(low) + " and " + Hours(high)
	}
	month, share := b.fullestMonth(spans)
	text := "the larger ones were " + verb + " for " + Hours(float64(total)/series.HourMS)
	if share > 0.5 {
		text += ", mostly in " + month
	}
	return text
}

// calledRange is the range of the hours a stage was called for, and whether they can be named more closely.
func (b barn) calledRange(name string) (low, high float64, sure bool) {
	sure = true
	for _, row := range b.r.Stages {
		if row.Name == name && row.Called != nil {
			low, high = low+row.Called.Hours.Low, high+row.Called.Hours.High
			sure = sure && row.Called.Hours.OK
		}
	}
	return low, high, sure
}

// bigSpans is when any larger stage was on: by the records where each has one, else by what it was called for.
func (b barn) bigSpans(names []string) (verb string, spans []series.Span) {
	verb = "running"
	for _, n := range names {
		if _, _, seen := b.worked(n); !seen.ran {
			verb = "called"
		}
	}
	for _, n := range names {
		on := b.calledOn(n)
		if verb == "running" {
			on, _, _ = b.worked(n)
		}
		spans = series.Union(append(spans, on...))
	}
	return verb, spans
}

// fullestMonth is the month that holds most of some stretches, and its share.
func (b barn) fullestMonth(spans []series.Span) (string, float64) {
	per := [13]int64{}
	for _, s := range spans {
		for _, d := range series.LocalDays(s, b.in.Zone) {
			per[time.UnixMilli(d.From).In(b.in.Zone).Month()] += d.To - d.From
		}
	}
	best := 1
	for m := 2; m <= 12; m++ {
		if per[m] > per[best] {
			best = m
		}
	}
	return time.Month(best).String(), float64(per[best]) / float64(max(1, series.LengthMS(spans)))
}

// stageTable has a row per stage and setting period.
func (b barn) stageTable() Table {
	t := Table{Columns: []Column{
		{Title: "Stage"}, {Title: "Set from"}, {Title: "On / off", Unit: b.u.TempSymbol(), Number: true},
		{Title: "Called for", Unit: "h", Number: true}, {Title: "Could be", Unit: "h", Number: true},
		{Title: "Ran", Unit: "h", Number: true}, {Title: "Time on", Unit: "%", Number: true}, {Title: "Starts", Number: true},
	}}
	for _, row := range b.r.Stages {
		t.Rows = append(t.Rows, b.stageRow(row))
		t.lookAt(1, row.Setting.Span)
		for column, w := range map[int]*analysis.Work{3: row.Called, 5: row.Ran} {
			if w != nil {
				t.lookAt(column, longest(w.On))
			}
		}
	}
	return t
}

func (b barn) stageRow(row analysis.StageRow) []string {
	set := "always on"
	switch {
	case row.Setting.Timer:
		set = "timer, " + Percent(row.Setting.TimerDuty)
	case !row.Setting.AlwaysOn:
		set = b.setPoint(row.Setting.OnC) + " / " + b.setPoint(row.Setting.OffC)
	}
	called, could := calledCells(row.Called)
	if hardlyKnown(row, row.Called) {
		called, could = noValue, ""
	}
	ran, w := ranCell(row.Ran), row.Ran
	if hardlyKnown(row, row.Ran) {
		ran = noValue
	}
	if w == nil {
		w = row.Called
	}
	duty, starts := dutyCell(w), startsCell(w)
	if hardlyKnown(row, w) {
		duty, starts = noValue, noValue
	}
	return []string{row.Name, b.u.Date(row.Setting.Span.From), set, called, could, ran, duty, starts}
}

// enoughOfPeriod is the known share of a setting's time from which its hours are named (house rule).
const enoughOfPeriod = 0.5

// hardlyKnown says whether something is known of a work, but for less than half of its setting's time.
func hardlyKnown(row analysis.StageRow, w *analysis.Work) bool {
	length := row.Setting.Span.To - row.Setting.Span.From
	return w != nil && w.KnownMS > 0 && float64(w.KnownMS) < enoughOfPeriod*float64(length)
}

// setPoint is a thermostat's setting as it was given in °C; in °F, where it may be no round value, to a tenth.
func (b barn) setPoint(tempC float64) string {
	if b.u.Temperature == Fahrenheit {
		return number(b.u.TempValue(tempC), 1)
	}
	return shortest(tempC)
}

const noValue = enDash // an empty cell of a table: not known

func calledCells(w *analysis.Work) (mid, could string) {
	if w == nil || !w.Hours.OK && w.Hours.Unknown != "range_too_wide" {
		return noValue, noValue
	}
	mid = "too uncertain"
	if w.Hours.OK {
		mid = hoursNumber(w.Hours.Mid)
	}
	if hoursNumber(w.Hours.Low) == hoursNumber(w.Hours.High) {
		return mid, ""
	}
	return mid, rangeOf(hoursNumber(w.Hours.Low), hoursNumber(w.Hours.High))
}

func ranCell(w *analysis.Work) string {
	if w == nil {
		return "no record"
	}
	if !w.Hours.OK {
		return noValue
	}
	return hoursNumber(w.Hours.Mid)
}

func dutyCell(w *analysis.Work) string {
	if w == nil || !w.Duty.OK {
		return noValue
	}
	return number(100*w.Duty.Mid, 0)
}

func startsCell(w *analysis.Work) string {
	if w == nil || !w.Starts.OK {
		return noValue
	}
	return number(w.Starts.Mid, 0)
}

// stageDays are the hours per local day of each stage: recorded where there is a record, else called for.
func (b barn) stageDays() []StageDays {
	days := series.LocalDays(b.span(), b.in.Zone)
	var out []StageDays
	for _, st := range b.in.Stages {
		d := StageDays{Name: st.Name, Days: days, Hours: make([]float64, len(days)), units: b.u}
		on, unsure, seen := b.worked(st.Name)
		d.Ran = seen.ran
		for i, day := range days {
			d.Hours[i] = dayHours(on, unsure, day, seen.any)
		}
		out = append(out, d)
	}
	return out
}

// seen says which evidence a stage has.
type seen struct{ any, ran bool }

// worked is when a stage was on and when that is unsure, from its records where it has any.
func (b barn) worked(stage string) (on, unsure []series.Span, s seen) {
	for _, row := range b.r.Stages {
		if row.Name == stage && row.Ran != nil {
			s.ran = true
		}
	}
	for _, row := range b.r.Stages {
		w := row.Called
		if s.ran {
			w = row.Ran
		}
		if row.Name != stage || w == nil {
			continue
		}
		s.any = true
		on, unsure = append(on, w.On...), append(unsure, w.Unsure...)
	}
	return on, unsure, s
}

// enoughOfDay is the least known share of a day for a number.
const enoughOfDay = 0.75

func dayHours(on, unsure []series.Span, day series.Span, any bool) float64 {
	whole := []series.Span{day}
	length := float64(day.To - day.From)
	if !any || float64(series.LengthMS(series.Intersect(unsure, whole))) > (1-enoughOfDay)*length {
		return math.NaN()
	}
	return float64(series.LengthMS(series.Intersect(on, whole))) / series.HourMS
}

// fansAlone is First look's sentence on the fans.
func (b barn) fansAlone() []Sentence {
	if !b.r.Verdict.Fans.Figure.OK {
		return nil
	}
	text, sure := b.stageSentence()
	return []Sentence{{Text: text, Sure: sure, weight: 48}}
}
