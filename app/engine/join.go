package engine

import (
	"math"
	"slices"
	"strconv"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/winter"
	"thawbook/importers"
)

// The remarks joining leaves.
const (
	FileRefused      = "file_refused"       // Args: file, the reason's code and its arguments; or file, "", sentence
	NothingChosen    = "nothing_chosen"     // the file holds no series for the logger. Args: logger, file
	SeveralLoggers   = "several_loggers"    // the file holds several loggers, the first was taken. Args: logger, file
	AnswerUnused     = "answer_unused"      // an answer's pattern matches no file. Args: pattern, question
	SameFile         = "same_file"          // two files hold the same bytes. Args: the later, the earlier
	WaitsForAnswer   = "waits_for_answer"   // the file can't be read right without it. Args: logger, file, question
	OfNoStage        = "of_no_stage"        // of which stage or heat source the logger's record is nobody said. Args: logger, file
	NoState          = "no_state"           // the logger is to record a stage and has no state column. Args: logger, stage
	StateByLimit     = "state_by_limit"     // current or power above a limit is taken for on. Args: logger, file, limit
	SpeedRead        = "speed_read"         // a record of the fan's speed. Args: logger, file, what is taken as full speed
	LoggerFault      = "logger_fault"       // a fault of the program; the logger is left out. Args: logger
	BarnFault        = "barn_fault"         // a fault of the program; the barn is not judged. Args: barn
	ClockZoneAssumed = "clock_zone_assumed" // neither plan nor file names the zone; one for the winter. Args: how many files, the zone
)

// The 95 % half-widths of a logger as it comes, after a check against ice, salt or a neighbour (an offset
// was given), and of a weather station at a distance (common practice, no source).
const (
	tempErrK, tempErrCheckedK, tempErrStationK    = 0.5, 0.3, 1.5
	relHumErr, relHumErrChecked, relHumErrStation = 0.05, 0.03, 0.10
	kelvinPerFahrenheit                           = 5.0 / 9
)

// joiner makes the curves of loggers.
type joiner struct {
	zone       *time.Location
	gapMinutes *float64
}

// channelOf is one quantity of a logger, gathered file by file.
type channelOf struct {
	readouts []readout
	decimals int
	unit     string
}

// channels are all quantities of a logger.
type channels struct {
	temp, relHum, state, light, speed channelOf
	lightGap                          gapRule
}

// gather adds a file's readings of a logger to its channels.
func (j joiner) gather(to *channels, l winter.Logger, f File) (remarks []series.Remark) {
	if f.Export == nil {
		return nil
	}
	if q := holding(f.Export); q != "" {
		return []series.Remark{{Code: WaitsForAnswer, Args: []string{l.Name, f.Name, q}, Count: 1}}
	}
	p := pick(l, f.Export)
	if p.light != nil && p.light.Quantity == importers.State {
		to.lightGap = gapOfStates
	}
	c, said := j.clock(l, f.Export, p)
	remarks = append(chosen(l, f, p), named(said, l.Name, f.Name)...)
	for _, s := range []struct {
		from *importers.Series
		to   *channelOf
	}{{p.temp, &to.temp}, {p.relHum, &to.relHum}, {p.state, &to.state}, {p.light, &to.light}, {p.speed, &to.speed}} {
		remarks = append(remarks, named(s.to.add(c, f.Name, s.from), l.Name)...)
	}
	return remarks
}

// logger makes one logger's curves of its files; until is when it was hung elsewhere, or nil.
func (j joiner) logger(l winter.Logger, files []File, until *int64) (analysis.Logger, []series.Remark) {
	measured := gapOfMeasured(j.gapMinutes)
	all := channels{lightGap: measured}
	var remarks []series.Remark
	for _, f := range files {
		remarks = append(remarks, j.gather(&all, l, f)...)
	}
	offsetC, offsetRelHum, checkedC, checkedRelHum := l.Offset()
	out := analysis.Logger{
		Name: l.Name, Place: l.Place, StationKM: l.StationKM, RecordsStage: l.RecordsStage,
		TempErrK:  errorOf(l, checkedC, tempErrK, tempErrCheckedK, tempErrStationK),
		RelHumErr: errorOf(l, checkedRelHum, relHumErr, relHumErrChecked, relHumErrStation),
		AddedK:    offsetC, AddedRelHum: offsetRelHum,
	}
	out.TempApart, out.RelHumApart = l.CheckedApart()
	draw := func(ch channelOf, rule gapRule, quantity string) series.Curve {
		m, said := merge(ch.readouts)
		remarks = append(remarks, named(said, l.Name)...)
		c, left := without(slice(curveOf(m, rule), l.From, until), l.Exclusions, quantity)
		remarks = append(remarks, named(left, l.Name, quantity)...)
		return c
	}
	out.TempC = shifted(draw(all.temp, measured, winter.OfTemperature), offsetC)
	out.TempStepK = resolution(all.temp.step(), out.TempC)
	out.RelHum = shifted(draw(all.relHum, measured, winter.OfHumidity), offsetRelHum)
	out.State = draw(all.state, gapOfStates, "state")
	out.Speed = draw(all.speed, gapOfStates, "state")
	out.Light = draw(all.light, all.lightGap, "light")
	remarks = append(remarks, setDown(l)...)
	if l.RecordsStage != "" && out.State.Len() == 0 {
		remarks = append(remarks, series.Remark{Code: NoState, Args: []string{l.Name, l.RecordsStage}, Count: 1})
	}
	return out, grouped(remarks)
}

// holding is the first open question that holds a file back, or "": read by a guess, its readings would
// stand at the wrong time or in the wrong unit. The zone holds nothing back; the winter's stands for it.
func holding(export *importers.Export) string {
	for _, q := range export.Questions {
		if q.ID != "zone" && q.ID != "dst" {
			return q.ID
		}
	}
	return ""
}

// chosen remarks on a choice that may surprise.
func chosen(l winter.Logger, f File, p picked) []series.Remark {
	switch {
	case p.state != nil && l.OfNothing():
		return []series.Remark{{Code: OfNoStage, Args: []string{l.Name, f.Name}, Count: 1}}
	case p.state != nil && l.RecordsStage == "":
		return nil
	case p.speed != nil:
		return []series.Remark{{Code: SpeedRead, Args: []string{l.Name, f.Name, p.full}, Count: 1}}
	case p.limit != "":
		return []series.Remark{{Code: StateByLimit, Args: []string{l.Name, f.Name, p.limit}, Count: 1}}
	case p.empty():
		return []series.Remark{{Code: NothingChosen, Args: []string{l.Name, f.Name}, Count: 1}}
	case p.loggers > 1 && l.Channel == "":
		return []series.Remark{{Code: SeveralLoggers, Args: []string{l.Name, f.Name}, Count: p.loggers}}
	}
	return nil
}

// clock reads the logger's clock off the longest of its series in a file.
func (j joiner) clock(l winter.Logger, export *importers.Export, p picked) (clock, []series.Remark) {
	var longest importers.Series
	for _, s := range []*importers.Series{p.temp, p.relHum, p.state, p.light} {
		if s != nil && len(s.FaceMS) > len(longest.FaceMS) {
			longest = *s
		}
	}
	return clockOf(l, export.Layout.Clock.Zone, j.zone, longest.FaceMS, longest.Instant)
}

// add puts one file's series on the true clock.
func (ch *channelOf) add(c clock, file string, s *importers.Series) []series.Remark {
	if s == nil {
		return nil
	}
	face, val, lost := withoutLost(s.FaceMS, s.Val)
	at, impossible := c.instants(face)
	at, repeats := spaced(at, val)
	r, remarks := tidy(file, at, val)
	ch.readouts = append(ch.readouts, r)
	ch.decimals, ch.unit = s.Decimals, s.Unit
	if lost > 0 {
		remarks = append(remarks, series.Remark{Code: ClockLost, Args: []string{file}, Count: lost})
	}
	if repeats > 0 {
		remarks = append(remarks, series.Remark{Code: SecondsMissing, Args: []string{file, strconv.Itoa(repeats)}, Count: 1})
	}
	if impossible > 0 {
		remarks = append(remarks, series.Remark{Code: ClockImpossibleHour, Args: []string{file}, Count: impossible})
	}
	return remarks
}

// leastChanges is how often readings must change to show their resolution (common practice, no source).
const leastChanges = 100

// resolution is what a logger's readings go by: the step they are printed to, or a wider one where of a hundred changes
// and more none was smaller. Many a logger prints a decimal and goes by half degrees.
func resolution(printed float64, c series.Curve) float64 {
	changes := 0
	for i := 1; i < c.Len() && changes < leastChanges; i++ {
		if c.Val[i] != c.Val[i-1] && c.Joined(i) {
			changes++
		}
	}
	if changes < leastChanges {
		return printed
	}
	return max(printed, c.SmallestStep())
}

// step is the printed resolution in K; 0 when nothing was read.
func (ch *channelOf) step() float64 {
	if len(ch.readouts) == 0 {
		return 0
	}
	step := math.Pow10(-ch.decimals)
	if ch.unit == "degF" {
		step *= kelvinPerFahrenheit
	}
	return step
}

// errorOf is the half-width of a logger by how it was checked, or how far away it stands.
func errorOf(l winter.Logger, wasChecked bool, asItComes, checked, station float64) float64 {
	switch {
	case l.StationKM != nil:
		return station
	case wasChecked:
		return checked
	}
	return asItComes
}

// shifted is a curve with an offset added to every reading.
func shifted(c series.Curve, offset float64) series.Curve {
	if offset == 0 {
		return c
	}
	return c.Map(func(v float64) float64 { return v + offset })
}

// named puts arguments in front of those the remarks have.
func named(remarks []series.Remark, args ...string) []series.Remark {
	for i := range remarks {
		remarks[i].Args = append(slices.Clone(args), remarks[i].Args...)
	}
	return remarks
}

// grouped keeps one of each remark on the same code and arguments, the one with the highest count: the
// temperature and the humidity of one file say the same of its rows.
func grouped(remarks []series.Remark) (out []series.Remark) {
	for _, r := range remarks {
		i := slices.IndexFunc(out, func(o series.Remark) bool { return o.Code == r.Code && slices.Equal(o.Args, r.Args) })
		switch {
		case i < 0:
			out = append(out, r)
		case out[i].Count < r.Count:
			out[i] = r
		}
	}
	return out
}
