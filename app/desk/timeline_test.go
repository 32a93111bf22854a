package desk

import (
	"math"
	"slices"
	"strings"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

func lanesOf(in analysis.Input) Timeline { return TimelineOf(in, analysis.Judge(in), Units{}) }

func TestLanes(t *testing.T) {
	for winter, want := range map[string]string{
		"rich":        "Temperature, Relative humidity, Margin to wet, Fan stages",
		"thin":        "Temperature, Relative humidity",
		"no humidity": "Temperature",
		"bare":        "",
	} {
		var titles []string
		for _, l := range lanesOf(winters[winter](t)).Lanes {
			titles = append(titles, l.Title)
		}
		if got := strings.Join(titles, ", "); got != want {
			t.Errorf("%s: %q, want %q", winter, got, want)
		}
	}
}

func TestAnEmptyTimelineSaysWhatToDo(t *testing.T) {
	if tl := lanesOf(bare(t)); tl.Lacks == "" || tl.Sentence == "" {
		t.Errorf("%+v", tl)
	}
}

func TestTemperatureLane(t *testing.T) {
	l := lanesOf(twin(t)).Lanes[0]
	roles := map[Role]int{}
	for _, tr := range l.Traces {
		roles[tr.Role]++
	}
	if roles[Firm] != 1 || roles[Thin] != 2 || roles[Outside] != 1 || !l.Veil {
		t.Errorf("traces %v, veil %v", roles, l.Veil)
	}
	if len(l.Bands) != 1 || l.Bands[0] != (LaneBand{Low: 2, High: 6}) { // the default band, rules of the numbers
		t.Errorf("band %v", l.Bands)
	}
	if l = lanesOf(rich(t)).Lanes[0]; l.Veil || len(l.Traces) != 2 {
		t.Errorf("one logger and the weather: %d traces, veil %v", len(l.Traces), l.Veil)
	}
}

// Where a logger hangs on a wall, at the control or in a hive its line is to be seen, and no other's.
func TestLoggersThatHangElsewhereAreSeen(t *testing.T) {
	in := twin(t)
	for i, place := range []string{"wall", "hive", "outdoor"} {
		in.Loggers = append(in.Loggers, analysis.Logger{Name: "logger " + place, Place: place, TempC: in.Loggers[i%2].TempC})
	}
	in.Stages = nil
	lanes := lanesOf(in).Lanes
	at := slices.IndexFunc(lanes, func(l Lane) bool { return l.Title == "Elsewhere in the barn" })
	if at < 0 || lanes[at].Aside {
		t.Fatalf("lanes %+v", lanes)
	}
	var names []string
	for _, tr := range lanes[at].Traces {
		names = append(names, tr.Name)
	}
	if got := strings.Join(names, ", "); got != "logger wall, logger hive" {
		t.Errorf("elsewhere: %s", got)
	}
	in.Stages = rich(t).Stages
	if got := lanesOf(in).Aside(); !slices.Equal(got, []string{"Elsewhere in the barn"}) {
		t.Errorf("beside stages %v is left out until it is asked for", got)
	}
}

// The room's humidity is the mean of its loggers, and each of them is seen beside it.
func TestEachLoggersHumidityIsSeen(t *testing.T) {
	l := lanesOf(twin(t)).Lanes[1]
	if len(l.Traces) != 3 || !l.Veil || l.Traces[2].Role != Firm || l.Traces[0].Role != Thin {
		t.Errorf("%d traces, veil %v", len(l.Traces), l.Veil)
	}
	if l = lanesOf(rich(t)).Lanes[1]; len(l.Traces) != 1 || l.Veil || l.Traces[0].Role != Firm {
		t.Errorf("one logger: %d traces, veil %v", len(l.Traces), l.Veil)
	}
}

// Humidity is kept as 0–1 inside and shown in percent; margins are differences, shown in °F by × 9/5 alone.
func TestLaneUnits(t *testing.T) {
	in := rich(t)
	tl := TimelineOf(in, analysis.Judge(in), Units{Temperature: Fahrenheit})
	for i, c := range []struct{ inside, shown float64 }{{0, 32}, {0.4, 40}, {1, 1.8}} {
		if got := tl.Lanes[i].Shown(c.inside); math.Abs(got-c.shown) > 1e-9 {
			t.Errorf("%s: %v shows %v, want %v", tl.Lanes[i].Title, c.inside, got, c.shown)
		}
	}
	for i, want := range []float64{36, 43} { // the default band as the rules of the numbers give it in °F
		if got := tl.Lanes[0].Shown([]float64{tl.Lanes[0].Bands[0].Low, tl.Lanes[0].Bands[0].High}[i]); math.Abs(got-want) > 1e-9 {
			t.Errorf("band limit %v °F, want %v", got, want)
		}
	}
	if b := tl.Lanes[1].Bands; len(b) != 1 || b[0] != (LaneBand{Low: 0.4, High: 0.75}) {
		t.Errorf("humidity band %v", b)
	}
}

func TestStageBars(t *testing.T) {
	tl := lanesOf(recorded(t))
	rows := tl.Lanes[slices.IndexFunc(tl.Lanes, func(l Lane) bool { return l.Title == "Fan stages" })].Rows
	if len(rows) != 4 || rows[0].Name != "Stage 4" || rows[3].Name != "Stage 1" {
		t.Fatalf("the always-on stage belongs at the bottom: %v", rows)
	}
	if rows[1].Ran == nil || rows[1].Called == nil || rows[0].Ran != nil {
		t.Errorf("only Stage 3 has a record: %v", rows)
	}
	for _, r := range rows {
		if r.Called == nil {
			t.Errorf("%s was never asked", r.Name)
			continue
		}
		for i := 1; i < len(r.Called.On); i++ {
			if r.Called.On[i].From < r.Called.On[i-1].To {
				t.Errorf("%s: stretches overlap", r.Name)
			}
		}
	}
}

func TestTimeBeyondTheBeesIsShadedApart(t *testing.T) {
	in := rich(t)
	from, to := day0+10*24*hourMS, day0+90*24*hourMS
	in.BeesIn, in.BeesOut, in.Heads = &from, &to, nil
	tl := lanesOf(in)
	if want := (series.Span{From: day0, To: day0 + testDays*24*hourMS}); tl.Whole != want {
		t.Errorf("whole %v, want %v", tl.Whole, want)
	}
	if edge := (to - from) / 30; tl.View != (series.Span{From: from - edge, To: to + edge/10}) {
		t.Errorf("first view %v", tl.View)
	}
	var outside []series.Span
	for _, s := range tl.Shades {
		if s.Outside {
			outside = append(outside, s.Span)
		}
	}
	if len(outside) != 2 || outside[0].To != from || outside[1].From != to {
		t.Errorf("outside %v", outside)
	}
	if len(tl.Points) != 2 || tl.Points[0].At != from || tl.Points[1].At != to {
		t.Errorf("points %v", tl.Points)
	}
	if p := lanesOf(thin(t)).Points; p != nil {
		t.Errorf("an assumed time has no dates to mark: %v", p)
	}
}

func TestTimelineSentence(t *testing.T) {
	got := plain(lanesOf(rich(t)).Sentence)
	want := "The room read 4.0–9.0 °C; the longest spell outside 2–6 °C was warm, 61 h on 20–23 December."
	if got != want {
		t.Errorf("%q", got)
	}
	if got := lanesOf(even(t)).Sentence; !strings.Contains(got, "never outside 2–6") {
		t.Errorf("%q", got)
	}
}

// A heat source has its bar: what a record shows, and nothing for one without evidence.
func TestAddedHeatHasALane(t *testing.T) {
	on := &analysis.Work{On: []series.Span{{From: 0, To: series.HourMS}}}
	r := analysis.Review{Heats: []analysis.HeatRow{{Source: analysis.HeatSource{Name: "floor"}, Ran: on}, {Source: analysis.HeatSource{Name: "solar"}}}}
	l, ok := newBarn(analysis.Input{}, r, Units{}).heatLane()
	if !ok || len(l.Rows) != 1 || l.Rows[0].Name != "floor" || l.Rows[0].Ran == nil || l.Rows[0].Called != nil {
		t.Errorf("%+v", l.Rows)
	}
}

// What bars mean is said where there are bars.
func TestTheHintSpeaksOfBarsWhereThereAreAny(t *testing.T) {
	for winter, want := range map[string]bool{"rich": true, "thin": false} {
		if got := strings.Contains(lanesOf(winters[winter](t)).Hint(), "Bars:"); got != want {
			t.Errorf("%s: %v", winter, got)
		}
	}
}

// Where the phases have limits of their own each has its band in its time; a limit that is not set is none.
func TestABandForEachPhase(t *testing.T) {
	two, six, eight := 2.0, 6.0, 8.0
	r := analysis.Review{Quantities: []analysis.QuantityRow{{Quantity: "air_temperature", Place: "room", Bands: []analysis.BandRow{{Name: "good", Low: &two}}}},
		Phases: []analysis.Phase{
			{Name: "filling", Span: Span{From: 0, To: 10}, Bands: analysis.Bands{TempC: analysis.Band{GoodLow: &two, GoodHigh: &eight}}},
			{Name: "deep winter", Span: Span{From: 10, To: 90}, Bands: analysis.Bands{TempC: analysis.Band{GoodLow: &two, GoodHigh: &six}}},
			{Name: "emptying", Span: Span{From: 90, To: 99}, Bands: analysis.Bands{TempC: analysis.Band{GoodLow: &two}}}}}
	in := analysis.Input{Loggers: []analysis.Logger{{Place: "room", TempC: series.Curve{Readings: series.Readings{At: []int64{0}, Val: []float64{4}}}}}}
	got := newBarn(in, r, Units{}).tempBands()
	want := []LaneBand{{2, 8, Span{From: 0, To: 10}}, {2, 6, Span{From: 10, To: 90}}, {2, math.Inf(1), Span{From: 90, To: 99}}}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
