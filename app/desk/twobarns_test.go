package desk

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/compare"
	"thawbook/analysis/series"
	"thawbook/app/engine"
)

// beside is a review of two barns with one comparison of the temperature's mean and what else is given.
func besideOf(rows ...compare.Row) *engine.Result {
	room := series.Curve{Readings: series.Readings{At: []int64{0, series.HourMS}, Val: []float64{4, 5}}}
	out := &engine.Result{Pairs: []compare.Pair{{A: "North", B: "South", OverlapHours: 2400, Rows: rows}}}
	for _, name := range []string{"North", "South"} {
		r := analysis.Review{Barn: name, BeesIn: 0, BeesOut: series.HourMS}
		r.Traces.Room = room
		out.Barns = append(out.Barns, r)
		out.Inputs = append(out.Inputs, analysis.Input{Loggers: []analysis.Logger{{Name: name, Place: "room", TempC: room}}})
	}
	return out
}

// mean is the difference of the mean temperature, ± half.
func mean(a, b, half float64, verdict compare.Verdict) compare.Row {
	return compare.Row{Quantity: compare.AirTemperature, Measure: compare.Mean, Unit: "degC", A: a, B: b, Difference: a - b, Low: a - b - half, High: a - b + half,
		Verdict: verdict, OverlapHours: 2400, ResampledHalf: 0.1, MovingHalf: 0.2, SensorHalf: 0.7, BlockHours: 30, EffectiveN: 80}
}

func TestTheFirstLineSaysWhatTheLoggersCanTell(t *testing.T) {
	told := mean(5.6, 4.6, 0.7, compare.More)
	untold := mean(4.6, 4.9, 0.7, compare.CantTell)
	untold.Settle = &compare.Settle{Code: compare.CheckLoggers, SensorHalf: 0.28}
	longer := untold
	longer.Settle = &compare.Settle{Code: compare.MoreHours, OverlapHours: 9000}
	few := mean(5, 4, 0, compare.Unknown)
	few.Unknown = "few_effective_hours"
	for _, c := range []struct {
		row          compare.Row
		barn         int
		unit         TemperatureUnit
		text, settle string
	}{
		{told, 0, Celsius, "North was 1.0 °C warmer than South.", ""},
		{told, 1, Celsius, "South was 1.0 °C colder than North.", ""},
		{told, 0, Fahrenheit, "North was 1.8 °F warmer than South.", ""},
		{untold, 0, Celsius, "North read 0.3 °C colder than South: which was the warmer is more than these loggers can tell.",
			"What would settle it: both barns' loggers checked against each other, so that together they are off by no more than 0.3 °C."},
		{longer, 1, Celsius, "South read 0.3 °C warmer than North: which was the warmer is more than these loggers can tell.",
			"What would settle it: as much time as 4 winters like this one."},
		{mean(4.62, 4.6, 0.7, compare.CantTell), 0, Celsius, "North read the same as South: which was the warmer is more than these loggers can tell.", ""},
		{few, 0, Celsius, "North read 1.0 °C warmer than South; too little is known in both to say how sure that is.", ""},
	} {
		v := TwoBarnsOf(besideOf(c.row), OtherWinter{}, c.barn, 0, Units{Temperature: c.unit})
		if plain(v.Sentence) != c.text || plain(v.Settle) != c.settle {
			t.Errorf("%q, %q; want %q, %q", plain(v.Sentence), plain(v.Settle), c.text, c.settle)
		}
	}
}

// Where the temperature can't tell two barns apart, what can is said behind it, from either side; hours and what can't be told are not.
func TestWhatSurelyPartsTwoBarnsIsSaid(t *testing.T) {
	wet := compare.Row{Quantity: compare.Margin, Measure: compare.Mean, Unit: "kelvin", A: 6.9, B: 4.1, Difference: 2.8, Low: 0.5, High: 5.1, Verdict: compare.More, OverlapHours: 2400}
	dew, hours := wet, wet
	dew.Quantity, dew.Verdict = compare.DewPoint, compare.CantTell
	hours.Quantity, hours.Measure = compare.RelativeHumidity, compare.HoursAbove
	for barn, want := range []string{"But North was farther from wet.", "But South was nearer to wet."} {
		v := TwoBarnsOf(besideOf(mean(4.6, 4.9, 0.7, compare.CantTell), wet, dew, hours), OtherWinter{}, barn, 0, Units{})
		if !strings.HasSuffix(plain(v.Sentence), "more than these loggers can tell. "+want) {
			t.Errorf("%q, want %q", plain(v.Sentence), want)
		}
	}
}

// From the second barn every difference, range and verdict is turned round; the figures themselves are the same.
func TestATableIsTurnedRound(t *testing.T) {
	warm := compare.Row{Quantity: compare.AirTemperature, Measure: compare.HoursAbove, Of: "good", Limit: new(float64), Unit: "h", A: 30, B: 50, Difference: -20,
		Low: -35, High: -5, Verdict: compare.Less, OverlapHours: 2400}
	*warm.Limit = 6
	counted := compare.Row{Quantity: compare.Spells, Measure: compare.Count, Of: "damp", A: 3, B: 3, Unknown: "counted_only", Verdict: compare.Unknown, OverlapHours: 2400}
	for barn, want := range []string{"Warmer than 6 °C, h|30|50|−20|−35 to −5|▼ less", "Warmer than 6 °C, h|50|30|+20|5–35|▲ more"} {
		v := TwoBarnsOf(besideOf(mean(4, 4, 1, compare.CantTell), warm, counted), OtherWinter{}, barn, 0, Units{})
		if got := plain(strings.Join(v.Table.Rows[1], "|")); got != want {
			t.Errorf("%q, want %q", got, want)
		}
		if got := strings.Join(v.Table.Rows[2], "|"); got != "Spells, damp|3|3|0|–|only counted" {
			t.Errorf("%q", got)
		}
	}
}

// bothBarns is a winter of two barns with a wall, a stage and humidity each, and the weather.
func bothBarns(t *testing.T) *engine.Result {
	plan, files := "[winter]\nname = \"Tasks\"\nzone = \"UTC\"\n", map[string]string{
		"out.csv": logOf("Time,Temperature (°C)", "2025-12-01 00:00", 40, 60, isoFace, func(time.Time) string { return "-8.0" }),
	}
	for i, name := range []string{"North", "South"} {
		plan += "[[barn]]\nname = \"" + name + "\"\nbees_in = 2025-12-01\nbees_out = 2026-01-10\n[[barn.stage]]\nname = \"first\"\non_c = 5.0\noff_c = 4.5\n" +
			"[[barn.surface]]\nname = \"wall\"\nkind = \"wall\"\n[[barn.logger]]\nname = \"in\"\nfiles = [\"" + name + ".csv\"]\nplace = \"room\"\n"
		files[name+".csv"] = logOf("Time,Temperature (°C),Humidity (%)", "2025-12-01 00:00", 40, 30, isoFace, func(at time.Time) string {
			return fmt.Sprintf("%.1f,%.0f", 4.5+float64(i)+2*math.Sin(float64(at.Hour())/4), 70+15*math.Cos(float64(at.YearDay())))
		})
	}
	plan += "[[outdoor]]\nname = \"out\"\nfiles = [\"out.csv\"]\n"
	r := judgedFiles(t, plan, files)
	return &r
}

// Every row a comparison can hold has words: the table would be silent about one without.
func TestEveryComparedFigureHasWords(t *testing.T) {
	b := bothBarns(t)
	for _, p := range b.Pairs {
		for _, r := range p.Rows {
			if rowWords[[2]string{r.Quantity, r.Measure}] == "" {
				t.Errorf("no words for %s, %s", r.Quantity, r.Measure)
			}
		}
	}
	v := TwoBarnsOf(b, OtherWinter{}, 0, 0, Units{})
	if len(v.Table.Rows) < 10 || len(v.Phases) == 0 || len(v.Both.Lanes) < 3 || len(v.Behind.Rows) != len(v.Table.Rows) {
		t.Errorf("%d rows, %d phases, %d lanes, %d behind", len(v.Table.Rows), len(v.Phases), len(v.Both.Lanes), len(v.Behind.Rows))
	}
}

// One barn alone has nothing to stand beside, and barns of different winters no hour in common.
func TestSideBySideSaysWhatItLacks(t *testing.T) {
	alone := besideOf()
	alone.Pairs, alone.Barns = nil, alone.Barns[:1]
	if v := TwoBarnsOf(alone, OtherWinter{}, 0, 0, Units{}); !strings.Contains(v.Lacks, "a second barn") {
		t.Errorf("%q", v.Lacks)
	}
	if v := TwoBarnsOf(besideOf(), OtherWinter{}, 0, 0, Units{}); !strings.Contains(v.Sentence, "no time in common") || v.Lacks == "" {
		t.Errorf("%q %q", v.Sentence, v.Lacks)
	}
}
