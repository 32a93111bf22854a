package sampledata_test

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/app/engine"
	"thawbook/sampledata"
)

// reviewed is a demo's review, made from its files, beside the truth.
type reviewed struct {
	engine.Result
	truth sampledata.Truth
}

var (
	rich = sync.OnceValues(func() (reviewed, error) { return reviewOf(sampledata.Demo) })
	thin = sync.OnceValues(func() (reviewed, error) { return reviewOf(sampledata.Thin) })
)

// judged is a demo made and reviewed once.
func judged(t *testing.T, once func() (reviewed, error)) reviewed {
	t.Helper()
	r, err := once()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range r.Files {
		if f.Err != nil {
			t.Errorf("%s: %v", f.Name, f.Err)
		}
	}
	if len(r.Barns) != len(r.truth.Barns) {
		t.Fatalf("%d barns reviewed, %d made", len(r.Barns), len(r.truth.Barns))
	}
	return r
}

// reviewOf writes a demo's files to a folder of their own and has them reviewed.
func reviewOf(demo func(context.Context, func(int, int)) ([]sampledata.File, error)) (r reviewed, err error) {
	ctx := context.Background()
	made, err := demo(ctx, nil)
	if err != nil {
		return r, err
	}
	dir, err := os.MkdirTemp("", "demo")
	if err != nil {
		return r, err
	}
	defer os.RemoveAll(dir)
	for _, f := range made {
		if f.Name == "truth.json" {
			err = json.Unmarshal(f.Data, &r.truth)
		} else {
			err = os.WriteFile(filepath.Join(dir, f.Name), f.Data, 0o600)
		}
		if err != nil {
			return r, err
		}
	}
	r.Result, err = engine.ReviewFile(ctx, filepath.Join(dir, "winter.toml"), nil)
	return r, err
}

// The program sees the barns only through loggers with offsets, noise, lag and rounding; the simulation
// knows what happened. Every range the review gives must hold the truth.
func TestTheReviewHoldsTheTruth(t *testing.T) {
	r := judged(t, rich)
	for i, want := range r.truth.Barns {
		got := r.Barns[i]
		t.Run(want.Name, func(t *testing.T) {
			within(t, "bees in", 0, hoursAfter(got.BeesIn, want.BeesIn), hoursAfter(got.BeesIn, want.BeesIn))
			within(t, "bees out", 0, hoursAfter(got.BeesOut, want.BeesOut), hoursAfter(got.BeesOut, want.BeesOut))
			air(t, got, want, 0)
			within(t, "hive-days", want.HiveDays, got.HiveDays.Mid-1e-6, got.HiveDays.Mid+1e-6)
			wall := got.Surfaces[0]
			within(t, "dew hours", want.Wall.DewHours, wall.DewHours.Low, wall.DewHours.High)
			within(t, "frost hours", want.Wall.FrostHours, wall.FrostHours.Low, wall.FrostHours.High)
			stages(t, got, want)
			heats(t, got, want)
		})
	}
}

// air holds what the review says of the room's air; hours outside may be more by those that were judged too many.
func air(t *testing.T, got analysis.Review, want sampledata.BarnTruth, moreH float64) {
	t.Helper()
	temp := row(t, got, "air_temperature")
	within(t, "mean temperature", want.MeanC, temp.Mean.Low, temp.Mean.High)
	within(t, "hours above 6", want.HoursAbove6, temp.Bands[0].AboveRange.Low-moreH, temp.Bands[0].AboveRange.High)
	within(t, "hours below 2", want.HoursBelow2, temp.Bands[0].BelowRange.Low-moreH, temp.Bands[0].BelowRange.High)
	hum := row(t, got, "relative_humidity")
	within(t, "mean humidity", want.MeanRelHumPct, hum.Mean.Low, hum.Mean.High)
	within(t, "hours above 75 %", want.HoursRHAbove75, hum.Bands[0].AboveRange.Low-moreH, hum.Bands[0].AboveRange.High)
	within(t, "hours below 40 %", want.HoursRHBelow40, hum.Bands[0].BelowRange.Low-moreH, hum.Bands[0].BelowRange.High)
}

// hoursAfter is how many hours after an instant of the truth another is.
func hoursAfter(atMS int64, truth string) float64 {
	at, err := time.Parse(time.RFC3339, truth)
	if err != nil {
		return math.NaN()
	}
	return time.UnixMilli(atMS).Sub(at).Hours()
}

// stages holds every stage's hours under every setting against what was called for and what ran. The range of the
// hours called for is to hold nine times in ten: one of a barn may miss, by a hundredth.
func stages(t *testing.T, got analysis.Review, want sampledata.BarnTruth) {
	t.Helper()
	if len(got.Stages) != len(want.Stages) {
		t.Fatalf("%d stages under their settings, want %d", len(got.Stages), len(want.Stages))
	}
	missed := 0
	for i, w := range want.Stages {
		s := got.Stages[i]
		if s.Name != w.Name || !s.Setting.AlwaysOn && (s.Setting.OnC != w.OnC || s.Setting.OffC != w.OffC) {
			t.Errorf("row %d is %s at %g and %g, want %s at %g and %g", i, s.Name, s.Setting.OnC, s.Setting.OffC, w.Name, w.OnC, w.OffC)
		}
		low, high := s.Called.Hours.Low-0.01, s.Called.Hours.High+0.01
		if w.CalledHours < low || w.CalledHours > high {
			missed++
			low, high = 0.99*low, 1.01*high
		}
		within(t, s.Name+" called for", w.CalledHours, low, high)
		if s.Ran != nil {
			within(t, s.Name+" ran", w.RanHours, s.Ran.Hours.Mid-sampled(w.RanStarts), s.Ran.Hours.Mid+sampled(w.RanStarts))
		}
	}
	if missed > 1 {
		t.Errorf("%d ranges of hours called for miss the truth", missed)
	}
}

// heats holds every heat source against the truth, and for how long it fought the fans.
func heats(t *testing.T, got analysis.Review, want sampledata.BarnTruth) {
	t.Helper()
	if len(got.Heats) != len(want.Heats) {
		t.Fatalf("%d heat sources, want %d", len(got.Heats), len(want.Heats))
	}
	for i, w := range want.Heats {
		h := got.Heats[i]
		slack := sampled(want.Stages[1].RanStarts + want.Stages[2].RanStarts)
		within(t, h.Source.Name+" ran", w.RanHours, h.Ran.Hours.Mid-slack, h.Ran.Hours.Mid+slack)
		within(t, h.Source.Name+" fought fans", w.OverlapHours, h.Overlap.Mid-slack, h.Overlap.Mid+slack)
	}
}

// sampled is by how many hours a record taken every two minutes may miss what ran: it sees each switching up to one
// interval late: uniform, so 0.41 interval of standard deviation a run; four of these for all runs together, and an
// interval at the ends.
func sampled(starts int) float64 {
	const intervalH = 2.0 / 60
	return intervalH * (1 + 4*math.Sqrt(float64(starts)/6))
}

// A third stage that was called for and did not run must show: that is what two records side by side are for. The warm
// spell it stood through goes with it, and it is among what is worth a look.
func TestCalledAndRanAreToldApart(t *testing.T) {
	r := judged(t, rich)
	truth, got := r.truth.Barns[1], r.Barns[1]
	w, s := truth.Stages[2], got.Stages[2]
	if s.Ran == nil || s.Called.Hours.High < w.CalledHours-0.01 || s.Ran.Hours.Mid > w.RanHours+5 {
		t.Errorf("called %v, ran %v; truly %v and %v", s.Called.Hours, s.Ran, w.CalledHours, w.RanHours)
	}
	breaker := eventOf(t, truth, "breaker out")
	warm := spellDuring(t, got, "warm", breaker)
	if len(warm.WentWith) == 0 || warm.WentWith[0].Code != analysis.NotRun {
		t.Errorf("the warm spell while the breaker was out went with %+v", warm.WentWith)
	}
	i := slices.IndexFunc(got.Findings, func(f analysis.Finding) bool { return f.Code == "warm_with_"+analysis.NotRun })
	if i < 0 || got.Findings[i].About != w.Name {
		t.Errorf("it is not among what is worth a look: %+v", got.Findings)
	}
}

// Without power everything stands and the air climbs. In one barn a record of the fans shows it, to its two minutes; in
// the other a note and the climb of the air, to the loggers' ten minutes and lag. The first hour's climb is held to a
// tenth. What the air does later is held to a grid of 0.1 K at both ends of those five and a half hours: no logger here
// tells more.
func TestThePowerCutIsTold(t *testing.T) {
	r := judged(t, rich)
	for i, slackH := range []float64{0.3, 2.0 / 60} {
		want := eventOf(t, r.truth.Barns[i], "power cut")
		got := told(t, r.Barns[i], "power cut")
		within(t, "start", 0, hoursAfter(got.Span.From, want.Start)-slackH, hoursAfter(got.Span.From, want.Start)+slackH)
		within(t, "end", 0, hoursAfter(got.Span.To, want.End)-slackH, hoursAfter(got.Span.To, want.End)+slackH)
		first, later := figure(t, got, "first_hour_k_per_h"), figure(t, got, "later_k_per_h")
		within(t, "first hour's climb", *want.FirstHourK, 0.9*first.Mid, 1.1*first.Mid)
		const grid = 0.1 / 5.5
		within(t, "later climb", *want.LaterKH, later.Low-grid, later.High+grid)
		spellDuring(t, r.Barns[i], "warm", want)
	}
	standing := spellDuring(t, r.Barns[1], "warm", eventOf(t, r.truth.Barns[1], "power cut"))
	if !slices.ContainsFunc(standing.WentWith, func(c analysis.Cause) bool { return c.Code == analysis.AlwaysOnOff }) {
		t.Errorf("the warm spell went with %+v, not with the first stage's standing", standing.WentWith)
	}
}

// A batch that was out is told with its hives: 60 out, 58 back.
func TestTheBatchOutIsTold(t *testing.T) {
	r := judged(t, rich)
	want, got := eventOf(t, r.truth.Barns[1], "batch out"), told(t, r.Barns[1], "batch out")
	within(t, "start", 0, hoursAfter(got.Span.From, want.Start), hoursAfter(got.Span.From, want.Start))
	within(t, "end", 0, hoursAfter(got.Span.To, want.End), hoursAfter(got.Span.To, want.End))
	if out, back := figure(t, got, "hives_out").Mid, figure(t, got, "hives_back").Mid; out != 60 || back != 58 {
		t.Errorf("%g hives out, %g back", out, back)
	}
}

// The alarm's limit and delay are the first line tried. The calls that were due lie in its range, every logged one
// stands in the log of the truth, and the one due while the alarm was off is said to be so.
func TestTheAlarmIsHeldAgainstItsLog(t *testing.T) {
	r := judged(t, rich)
	truth, got := r.truth.Barns[1].Alarm, r.Barns[1].Alarms[0]
	if got.Line.LimitC != truth.LimitC || got.Line.DelayMin != truth.DelayMin {
		t.Fatalf("the first line is %+v", got.Line)
	}
	within(t, "calls", float64(len(truth.Due)), got.Calls.Low, got.Calls.High)
	logged := map[string]bool{}
	offs := 0
	for _, c := range truth.Due {
		if c.Logged == nil {
			offs++
			continue
		}
		at, _ := time.Parse(time.RFC3339, *c.Logged)
		logged[at.Truncate(time.Minute).Format(time.RFC3339)] = true
	}
	held, off := 0, 0
	for _, c := range got.Due {
		if c.Logged != nil {
			held++
			if at := time.UnixMilli(*c.Logged).UTC().Format(time.RFC3339); !logged[at] {
				t.Errorf("a call logged at %s is not in the truth", at)
			}
		}
		if c.Off {
			off++
		}
	}
	if held < len(logged)/2 || off != offs {
		t.Errorf("%d of %d logged calls are held against one that was due; %d of %d while it was off", held, len(logged), off, offs)
	}
}

// A humidity that sticks is pointed out for the very days it stuck, a logger that was carried out late from when that
// was; nothing else in these winters looks odd, and nothing in the thin one.
func TestWhatLooksOddIsWhatWasPlanted(t *testing.T) {
	r := judged(t, rich)
	proposals, _, err := engine.Proposals(context.Background(), r.Result)
	if err != nil || len(proposals) != 2 {
		t.Fatalf("%v, %+v", err, proposals)
	}
	stuck := r.truth.Barns[1].Loggers[1].Channels[1].Stuck
	carried := r.truth.Barns[0].Loggers[1].InHouse[0]
	for _, p := range proposals {
		span := p.Spans[0]
		switch p.Remark.Code {
		case engine.DoubtStuck:
			if p.Remark.Args[0] != "Rowan south" {
				t.Errorf("stuck is said to be %v", p.Remark.Args)
			}
			within(t, "stuck from", 0, hoursAfter(span.From, stuck.Start)-1, hoursAfter(span.From, stuck.Start)+1)
			within(t, "stuck to", 0, hoursAfter(span.To, stuck.End)-1, hoursAfter(span.To, stuck.End)+1)
		case engine.DoubtCarried:
			within(t, "carried out", 0, hoursAfter(span.From, carried.Start)-2, hoursAfter(span.From, carried.Start)+2)
		default:
			t.Errorf("%+v", p)
		}
	}
	within(t, "seen to be carried out", 0, hoursAfter(r.Barns[0].Seen.Out.At, carried.Start)-1, hoursAfter(r.Barns[0].Seen.Out.At, carried.Start)+1)
	if odd, _, err := engine.Proposals(context.Background(), judged(t, thin).Result); err != nil || len(odd) > 0 {
		t.Errorf("in the thin winter: %v, %+v", err, odd)
	}
}

// The clock that gains half an hour is set right by the keeper's three looks at his watch: every reading stands within
// a minute of when it was taken. What both read-outs hold is counted once.
func TestTheClockThatGainsIsSetRight(t *testing.T) {
	r := judged(t, rich)
	truth := r.truth.Barns[0].Loggers[0]
	at := r.Inputs[0].Loggers[0].TempC.Readings.At
	if r.Inputs[0].Loggers[0].Name != truth.Name || truth.ClockGainMin < 30 {
		t.Fatalf("%s gains %g min", r.Inputs[0].Loggers[0].Name, truth.ClockGainMin)
	}
	const minuteH = 1.0 / 60
	first, last := hoursAfter(at[0], truth.Files[0].First), hoursAfter(at[len(at)-1], truth.Files[1].Last)
	within(t, "first reading", 0, first-minuteH, first+minuteH)
	within(t, "last reading", 0, last-minuteH, last+minuteH)
	steps := float64(at[len(at)-1]-at[0]) / float64(truth.IntervalS*1000)
	if want := int(math.Round(steps*(1+31.0/(158*24*60)))) + 1; len(at) != want {
		t.Errorf("%d readings, want %d", len(at), want)
	}
}

// One logger and no records: when the bees were in is read off the trace as when it was hung and taken down, which the
// truth knows; the bees' time lies inside, and the air is told within the logger's error. What it can't tell is unknown
// and never 0.
func TestTheThinWinterIsToldInFull(t *testing.T) {
	r := judged(t, thin)
	want, got := r.truth.Barns[0], r.Barns[0]
	house := want.Loggers[0].InHouse
	hung, down := hoursAfter(got.BeesIn, house[0].End), hoursAfter(got.BeesOut, house[1].Start)
	within(t, "hung", 0, hung-1, hung+1)
	within(t, "taken down", 0, down-1, down+1)
	early, late := -hoursAfter(got.BeesIn, want.BeesIn), hoursAfter(got.BeesOut, want.BeesOut)
	if early < 0 || late < 0 || early+late > 24 {
		t.Errorf("the bees' time begins %.1f h early and ends %.1f h late", early, late)
	}
	air(t, got, want, early+late)
	if len(got.Stages) > 0 || len(got.Surfaces) > 0 || got.HiveDays.OK || got.Verdict.Fans.State != analysis.Unknown {
		t.Errorf("stages %v, surfaces %v, hive-days %v, fans %v", got.Stages, got.Surfaces, got.HiveDays, got.Verdict.Fans)
	}
}

// eventOf is the first event of a kind that the truth knows.
func eventOf(t *testing.T, truth sampledata.BarnTruth, kind string) sampledata.EventTruth {
	t.Helper()
	i := slices.IndexFunc(truth.Events, func(e sampledata.EventTruth) bool { return e.Kind == kind })
	if i < 0 {
		t.Fatalf("%s: no %s", truth.Name, kind)
	}
	return truth.Events[i]
}

// told is the one event of a kind that the review tells.
func told(t *testing.T, r analysis.Review, kind string) (out analysis.Event) {
	t.Helper()
	n := 0
	for _, e := range r.Events {
		if e.Kind == kind {
			out, n = e, n+1
		}
	}
	if n != 1 {
		t.Fatalf("%s: %d of %s", r.Barn, n, kind)
	}
	return out
}

// figure is one of an event's.
func figure(t *testing.T, e analysis.Event, name string) analysis.Figure {
	t.Helper()
	i := slices.IndexFunc(e.Figures, func(f analysis.NamedFigure) bool { return f.Name == name })
	if i < 0 || !e.Figures[i].OK {
		t.Fatalf("%s has no %s", e.Kind, name)
	}
	return e.Figures[i].Figure
}

// spellDuring is the longest spell of a kind in the room's air that lies in an event for the most part.
func spellDuring(t *testing.T, r analysis.Review, kind string, e sampledata.EventTruth) (out analysis.Spell) {
	t.Helper()
	for _, s := range r.Spells {
		from, to := hoursAfter(s.Span.From, e.Start), hoursAfter(s.Span.To, e.Start)
		length := to - hoursAfter(s.Span.To, e.End)
		inside := min(to, length) - max(from, 0)
		if s.Kind == kind && s.Place == "room" && inside > s.Hours/2 && s.Hours > out.Hours {
			out = s
		}
	}
	if out.Hours == 0 {
		t.Fatalf("%s: no %s spell while %s", r.Barn, kind, e.Kind)
	}
	return out
}

// The first date they part is within a day of the first time the fan did not answer for half an hour and more; shorter
// silences before it are in the truth's first instant, so the review may only be later, and not by much.
func TestTheFirstDateTheyPart(t *testing.T) {
	r := judged(t, rich)
	seen := 0
	for i, want := range r.truth.Barns {
		for k, w := range want.Stages {
			a := r.Barns[i].Stages[k].Agreement
			if a == nil {
				continue
			}
			if w.FirstParted == nil {
				if a.Parted != nil {
					t.Errorf("%s, %s: parted at %s, truly never", want.Name, w.Name, time.UnixMilli(*a.Parted).UTC())
				}
				continue
			}
			seen++
			at, err := time.Parse(time.RFC3339, *w.FirstParted)
			if err != nil {
				t.Fatal(err)
			}
			if a.Parted == nil || a.PartedRan || time.UnixMilli(*a.Parted).Sub(at).Abs() > 24*time.Hour {
				t.Errorf("%s, %s: parted at %+v, truly at %s", want.Name, w.Name, a, at)
			}
		}
	}
	if seen == 0 {
		t.Error("the demo has no stage whose call and record part")
	}
}

// The clocks of the demo's loggers differ (UTC, local with and without summer time, °F and °C); on one clock

// The clocks of the demo's loggers differ (UTC, local with and without summer time, one gains); on one clock
// the two room loggers of a barn agree within their errors at every hour.
func TestLoggersOfABarnAgreeOnOneClock(t *testing.T) {
	r := judged(t, rich)
	for _, in := range r.Inputs {
		var room []analysis.Logger
		for _, l := range in.Loggers {
			if l.Place == "room" {
				room = append(room, l)
			}
		}
		if len(room) != 2 {
			t.Fatalf("%s: %d room loggers, want 2", in.Name, len(room))
		}
		worst, n := 0.0, 0
		for at := *in.BeesIn; at < *in.BeesOut; at += time.Hour.Milliseconds() {
			a, okA := room[0].TempC.At(at)
			b, okB := room[1].TempC.At(at)
			if okA && okB {
				worst, n = math.Max(worst, math.Abs(a-b)), n+1
			}
		}
		if n < 3000 || worst > 2 {
			t.Errorf("%s: over %d hours the loggers differ by up to %.2f K", in.Name, n, worst)
		}
	}
}

func row(t *testing.T, r analysis.Review, quantity string) analysis.QuantityRow {
	t.Helper()
	for _, q := range r.Quantities {
		if q.Quantity == quantity && q.Place == "room" && q.Logger == "" && q.Phase == "" {
			return q
		}
	}
	t.Fatalf("%s: no %s of the room", r.Barn, quantity)
	return analysis.QuantityRow{}
}

func within(t *testing.T, what string, truth, low, high float64) {
	t.Helper()
	if !(low <= truth && truth <= high) {
		t.Errorf("%s: truth %.3f outside %.3f to %.3f", what, truth, low, high)
	} else {
		t.Logf("%s: truth %.3f inside %.3f to %.3f", what, truth, low, high)
	}
}
