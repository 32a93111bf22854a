package sampledata_test

import (
	"slices"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/sampledata"
)

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

// Without power everything stands and the air climbs. In one barn a record of the fans shows it, to its two minutes; in
// the other a note and the climb of the air, to the loggers' ten minutes and lag. The first hour's climb is held to a
// tenth. What the air does later is held to a grid of 0.1 K at both ends of those five and a half hours: no logger here
// tells more. The warm spell goes with the cut, or with the always-on stage that stood for it.
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
		warm := spellDuring(t, r.Barns[i], "warm", want)
		if !slices.ContainsFunc(warm.WentWith, func(c analysis.Cause) bool { return c.Code == analysis.PowerCut || c.Code == analysis.AlwaysOnOff }) {
			t.Errorf("the warm spell went with %+v", warm.WentWith)
		}
		if !slices.ContainsFunc(r.Barns[i].Findings, func(f analysis.Finding) bool { return f.Code == "power_cut" }) {
			t.Errorf("it is not among what is worth a look: %+v", r.Barns[i].Findings)
		}
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
	if !slices.ContainsFunc(r.Barns[1].Findings, func(f analysis.Finding) bool { return f.Code == "alarm_late" }) {
		t.Error("that a call was written down forty minutes late is not among what is worth a look")
	}
	if held < len(logged)/2 || off != offs {
		t.Errorf("%d of %d logged calls are held against one that was due; %d of %d while it was off", held, len(logged), off, offs)
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
