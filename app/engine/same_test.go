package engine_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"thawbook/app/desk"
	"thawbook/app/engine"
)

// The same log in another form gives the same review. What is expected is the review of the log as it was, with
// what the change of form alone changes.

// reading is one row of a log: hundredths of a degree and tenths of a percent.
type reading struct {
	at           time.Time
	cC, permille int
}

// winterFrom makes the logs of a small winter: half hours from a day on, warmed in the afternoons, with a warm spell
// and a damp one, a gap of five hours and a frosty night outdoors.
func winterFrom(day time.Time) (room, wall, outdoor []reading) {
	for i := range 40 * 48 {
		at := day.Add(time.Duration(i) * 30 * time.Minute)
		wave := math.Sin(2 * math.Pi * float64(i%48) / 48)
		warm, damp := 0, 0
		if i/48 >= 12 && i/48 < 15 {
			warm = 450
		}
		if i/48 >= 25 && i/48 < 29 {
			damp = 240
		}
		if i < 900 || i >= 910 {
			room = append(room, reading{at, 420 + int(150*wave) + warm + i*i%7, 640 + int(60*wave) + damp + i*i%11})
		}
		wall = append(wall, reading{at, 380 + int(120*wave) + warm + i*i%13, 660 + int(50*wave) + damp + i*i%17})
		outdoor = append(outdoor, reading{at, -300 + int(600*wave) - i/4 + i%11, 800 + i%90})
	}
	return room, wall, outdoor
}

// manner is a way to write a log.
type manner struct {
	delimiter, mark string
	face            string // the layout of the time, as the standard library has it
	fahrenheit      bool
	order           []int // of the columns time, temperature, humidity
}

var plainManner = manner{",", ".", "2006-01-02 15:04:05", false, []int{0, 1, 2}}

// write writes a log.
func (m manner) write(rows []reading) string {
	head := []string{"time", "Temperature (°C)", "Humidity (%)"}
	if m.fahrenheit {
		head[1] = "Temperature (°F)"
	}
	lines := []string{m.line(head)}
	for _, r := range rows {
		temp := fmt.Sprintf("%.2f", float64(r.cC)/100)
		if m.fahrenheit { // exact: a hundredth of a kelvin is 0.018 °F
			temp = fmt.Sprintf("%.3f", float64(r.cC)/100*1.8+32)
		}
		cells := []string{r.at.Format(m.face), temp, fmt.Sprintf("%.1f", float64(r.permille)/10)}
		for i := range cells[1:] {
			cells[i+1] = strings.Replace(cells[i+1], ".", m.mark, 1)
		}
		lines = append(lines, m.line(cells))
	}
	return strings.Join(lines, "\n") + "\n"
}

func (m manner) line(cells []string) string {
	var out []string
	for _, i := range m.order {
		out = append(out, cells[i])
	}
	return strings.Join(out, m.delimiter)
}

// planFrom is the plan of that winter.
func planFrom(day time.Time) string {
	on := func(days int) string { return day.AddDate(0, 0, days).Format("2006-01-02T15:04:05") }
	return `[winter]
name = "W"
zone = "UTC"
[[barn]]
name = "Alder"
volume_m3 = 900
bees_in = ` + on(2) + `
bees_out = ` + on(38) + `
[[barn.heads]]
at = ` + on(2) + `
change = 400
[[barn.heads]]
at = ` + on(20) + `
change = -40
[[barn.stage]]
name = "1"
on_c = 5.0
off_c = 4.2
flow_m3h = 3000
[[barn.stage]]
name = "2"
on_c = 7.5
off_c = 6.5
flow_m3h = 6000
[[barn.surface]]
name = "north wall"
kind = "wall"
[[barn.logger]]
name = "mid"
files = ["mid*.csv"]
place = "room"
[[barn.logger]]
name = "north"
files = ["north*.csv"]
place = "wall"
[[outdoor]]
name = "yard"
files = ["yard*.csv"]
`
}

// reviewOf writes the files into a folder of their own and reviews them.
func reviewOf(t *testing.T, files map[string]string) desk.ReviewDoc {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	r, err := engine.ReviewFile(context.Background(), filepath.Join(dir, "plan.toml"), nil)
	if err != nil || r.Refused() {
		t.Fatal(err, r.Remarks)
	}
	for i := range r.Remarks {
		for k, arg := range r.Remarks[i].Args {
			r.Remarks[i].Args[k] = strings.ReplaceAll(arg, filepath.ToSlash(dir)+"/", "")
		}
	}
	return desk.ReviewDocument(r, desk.Program{})
}

// firstDay is a Monday in November; the winter ends before March, where another phase begins.
var firstDay = time.Date(2025, 11, 10, 0, 0, 0, 0, time.UTC)

// written are the files of that winter, each logger's in one manner.
func written(m manner) map[string]string {
	room, wall, outdoor := winterFrom(firstDay)
	return map[string]string{"plan.toml": planFrom(firstDay), "mid.csv": m.write(room), "north.csv": m.write(wall), "yard.csv": m.write(outdoor)}
}

func text(t *testing.T, v any) string {
	t.Helper()
	out, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// sameText shows where two texts part.
func sameText(t *testing.T, name, got, want string) {
	t.Helper()
	if got == want {
		return
	}
	at := 0
	for at < min(len(got), len(want)) && got[at] == want[at] {
		at++
	}
	t.Errorf("%s: the reviews part: …%s\nwant …%s", name, got[max(at-200, 0):min(at+200, len(got))], want[max(at-200, 0):min(at+200, len(want))])
}

// The winter says something at all: there are spells, stages, wet hours and a gap, or the tests below would hold of
// an empty review.
func TestTheWinterIsWorthComparing(t *testing.T) {
	b := reviewOf(t, written(plainManner)).Barns[0]
	if len(b.Spells) < 2 || len(b.Stages) != 2 || b.Stages[0].Called == nil || len(b.Surfaces) != 1 || b.Coverage == 1 || b.Coverage < 0.9 {
		t.Errorf("%d spells, %d stages, %d surfaces, coverage %v", len(b.Spells), len(b.Stages), len(b.Surfaces), b.Coverage)
	}
}

// Columns in another order, other delimiters and decimal marks, dates in other prints: the same bytes.
func TestAnotherMannerIsTheSameReview(t *testing.T) {
	want := text(t, reviewOf(t, written(plainManner)))
	for name, m := range map[string]manner{
		"columns":         {",", ".", "2006-01-02 15:04:05", false, []int{2, 0, 1}},
		"humidity first":  {",", ".", "2006-01-02 15:04:05", false, []int{0, 2, 1}},
		"semicolons":      {";", ",", "2006-01-02 15:04:05", false, []int{0, 1, 2}},
		"tabs":            {"\t", ",", "2006-01-02T15:04:05", false, []int{0, 1, 2}},
		"dotted dates":    {";", ",", "02.01.2006 15:04", false, []int{0, 1, 2}},
		"strokes":         {";", ".", "02/01/2006 15:04:05", false, []int{1, 2, 0}},
		"month first":     {",", ".", "1/2/2006 3:04 PM", false, []int{0, 1, 2}},
		"named months":    {",", ".", "2-Jan-06 15:04:05", false, []int{0, 1, 2}},
		"days of a year":  {",", ".", "2006-002 15:04", false, []int{0, 1, 2}},
		"time before day": {",", ".", "15:04 2.1.2006", false, []int{0, 1, 2}},
		"with its zone":   {",", ".", "2006-01-02T15:04:05Z", false, []int{0, 1, 2}},
	} {
		got := reviewOf(t, written(m))
		if name == "with its zone" { // no zone was assumed or is asked
			plain := reviewOf(t, written(plainManner))
			if len(got.Questions) > 0 {
				t.Errorf("asked is %+v", got.Questions)
			}
			got.Remarks, got.Questions = plain.Remarks, plain.Questions
		}
		sameText(t, name, text(t, got), want)
	}
}

// stamp is a time as the review prints it in UTC.
var stamp = regexp.MustCompile(`\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z`)

// Logs and plan moved by whole days: the same review, moved.
func TestDaysLaterIsTheSameReviewLater(t *testing.T) {
	want := text(t, reviewOf(t, written(plainManner)))
	for _, days := range []int{1, 7, 30} {
		day := firstDay.AddDate(0, 0, days)
		room, wall, outdoor := winterFrom(day)
		got := text(t, reviewOf(t, map[string]string{"plan.toml": planFrom(day), "mid.csv": plainManner.write(room), "north.csv": plainManner.write(wall), "yard.csv": plainManner.write(outdoor)}))
		got = stamp.ReplaceAllStringFunc(got, func(s string) string {
			at, err := time.Parse(time.RFC3339Nano, s)
			if err != nil {
				t.Fatal(err)
			}
			return at.AddDate(0, 0, -days).Format(time.RFC3339Nano)
		})
		sameText(t, fmt.Sprintf("%d days", days), got, want)
	}
}

// Rows in any order give the same barns; that they were put in order is remarked and nothing else.
func TestShuffledRowsAreTheSameReview(t *testing.T) {
	want := reviewOf(t, written(plainManner))
	files := written(plainManner)
	random := rand.New(rand.NewSource(1))
	for _, name := range []string{"mid.csv", "north.csv", "yard.csv"} {
		head, body, _ := strings.Cut(files[name], "\n")
		rows := strings.SplitAfter(strings.TrimSuffix(body, "\n"), "\n")
		rows[len(rows)-1] += "\n"
		random.Shuffle(len(rows), func(i, j int) { rows[i], rows[j] = rows[j], rows[i] })
		files[name] = head + "\n" + strings.Join(rows, "")
	}
	got := reviewOf(t, files)
	sameText(t, "barns", text(t, got.Barns), text(t, want.Barns))
	without := slices.DeleteFunc(got.Remarks, func(n desk.NoteDoc) bool { return n.Code == engine.SortedRows })
	sameText(t, "remarks", text(t, without), text(t, want.Remarks))
}

// A log read out twice, the second time from where the first ended or with some days again, gives the same barns.
func TestTwoReadoutsAreTheSameReview(t *testing.T) {
	want := reviewOf(t, written(plainManner))
	room, wall, outdoor := winterFrom(firstDay)
	for again, said := range map[int]string{0: "", 1: "", 200: engine.SameReadings} {
		files := map[string]string{"plan.toml": planFrom(firstDay)}
		for name, rows := range map[string][]reading{"mid": room, "north": wall, "yard": outdoor} {
			files[name+"1.csv"] = plainManner.write(rows[:1100])
			files[name+"2.csv"] = plainManner.write(rows[1100-again:])
		}
		got := reviewOf(t, files)
		sameText(t, fmt.Sprintf("%d rows again", again), text(t, got.Barns), text(t, want.Barns))
		for _, n := range got.Remarks {
			if n.Code != engine.ClockZoneAssumed && n.Code != said {
				t.Errorf("%d rows again: %+v", again, n)
			}
		}
	}
}

// A copy in °F with all the digits that the °C have says the same to a billionth. What hangs on when the stages were
// called for does to a five-hundredth: half of the printed resolution, a thousandth of a °F or a hundredth of a
// kelvin, is the margin of settings on the logger's grid.
func TestFahrenheitIsTheSameReview(t *testing.T) {
	inF := plainManner
	inF.fahrenheit = true
	near(t, "", decoded(t, reviewOf(t, written(inF))), decoded(t, reviewOf(t, written(plainManner))))
}

// decoded is a review as JSON's plain values.
func decoded(t *testing.T, v any) (out any) {
	t.Helper()
	if err := json.NewDecoder(bytes.NewReader([]byte(text(t, v)))).Decode(&out); err != nil {
		t.Fatal(err)
	}
	return out
}

// calledFor are the parts of a review that hang on when the stages were called for.
var calledFor = regexp.MustCompile(`\.stages\[|\.fans\.|\.small_alone_percent\.|\.air\.|\.energy\.`)

// ofFewHours are those of them that are of some tens of hours: one switching more or less is a fiftieth of them.
var ofFewHours = regexp.MustCompile(`\.by_(hour|outdoor_c)\[`)

// near holds two values of JSON to each other, numbers to a billionth, or more, and times to a second.
func near(t *testing.T, path string, got, want any) {
	t.Helper()
	switch w := want.(type) {
	case map[string]any:
		g, _ := got.(map[string]any)
		for key := range w {
			near(t, path+"."+key, g[key], w[key])
		}
	case []any:
		g, _ := got.([]any)
		if len(g) != len(w) {
			t.Errorf("%s: %d entries, want %d", path, len(g), len(w))
			return
		}
		for i := range w {
			near(t, fmt.Sprintf("%s[%d]", path, i), g[i], w[i])
		}
	case float64:
		g, ok := got.(float64)
		part := 1e-9
		if calledFor.MatchString(path) {
			part = 2e-3
		}
		if ofFewHours.MatchString(path) {
			part = 2e-2
		}
		if !ok || math.Abs(g-w) > part*max(1, math.Abs(w)) {
			t.Errorf("%s: %v, want %v", path, got, want)
		}
	case string:
		g, _ := got.(string)
		a, err1 := time.Parse(time.RFC3339Nano, g)
		b, err2 := time.Parse(time.RFC3339Nano, w)
		if g != w && (err1 != nil || err2 != nil || a.Sub(b).Abs() > time.Second) {
			t.Errorf("%s: %q, want %q", path, got, want)
		}
	default:
		if got != want {
			t.Errorf("%s: %v, want %v", path, got, want)
		}
	}
}
