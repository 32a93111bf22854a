package desk

import (
	"context"
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"thawbook/analysis/series"
	"thawbook/app/winter"
)

// together are loggers of one air for three weeks from 13 November 2024 on, a reading every ten minutes, by the file's
// name what each makes of it: k counts the readings, air is the room's in °C.
func together(t *testing.T, dir string, said map[string]func(k int, air float64) (at time.Duration, tempC float64)) (paths []string) {
	t.Helper()
	random := rand.New(rand.NewPCG(4, 4))
	air, push := make([]float64, 21*144), 0.0
	for i := 1; i < len(air); i++ {
		push = 0.9*push + 0.03*random.NormFloat64()
		air[i] = 0.995*air[i-1] + push
	}
	for _, name := range slices.Sorted(maps.Keys(said)) {
		f := said[name]
		var text strings.Builder
		text.WriteString("time,temperature (°C)\n")
		for k, v := range air {
			off, c := f(k, 4+v)
			at := time.Date(2024, time.November, 13, 0, 10*k, 0, 0, time.UTC).Add(off)
			fmt.Fprintf(&text, "%s,%.2f\n", at.Format("2006-01-02 15:04"), c+0.02*random.NormFloat64())
		}
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text.String()), 0o600); err != nil {
			t.Fatal(err)
		}
		paths = append(paths, path)
	}
	slices.Sort(paths)
	return paths
}

// asItIs is a logger that says what the air is, an hour ahead of the others where it is told to.
func asItIs(ahead time.Duration) func(int, float64) (time.Duration, float64) {
	return func(_ int, air float64) (time.Duration, float64) { return ahead, air }
}

// closely is a book whose odd readings were looked for.
func closely(t *testing.T, k *Keeper, b Book) Book {
	t.Helper()
	b, err := k.Review(context.Background(), b, nil)
	if err == nil {
		b, err = k.LookClosely(context.Background(), b)
	}
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// One logger of three runs 95 minutes ahead. It is said with how sure that is, taken with a press, and then nothing is
// left to say; taken back it is said again; left as it is, it is not asked again until the keeper wants it.
func TestAClockIsSetRightByAPress(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, together(t, t.TempDir(), map[string]func(int, float64) (time.Duration, float64){
		"a.csv": asItIs(0), "b.csv": asItIs(95 * time.Minute), "c.csv": asItIs(0),
	})...)
	b = closely(t, k, b)
	page := func() FileLogger { return pageOf(t, b, "b.csv").Loggers[0] }
	for _, other := range []string{"a.csv", "c.csv"} {
		if d := pageOf(t, b, other).Loggers[0].Doubts; len(d) > 0 {
			t.Errorf("%s: %+v", other, d)
		}
	}
	d := page().Doubts
	if len(d) != 1 || !strings.Contains(plain(d[0].Text), "1 h 35 min ahead of the 2 others', give or take 5 min") || !strings.Contains(d[0].Text, "hardly in doubt") {
		t.Fatalf("%+v", d)
	}
	move := d[0].Take.(winter.MoveClock).AheadMS
	if math.Abs(float64(move)/minuteMS-95) > 5 {
		t.Errorf("moved by %d ms", move)
	}
	b = closely(t, k, edited(t, k, b, d[0].Take))
	p := page()
	if len(p.Doubts) != 0 || len(p.Left) != 1 || !strings.Contains(plain(p.Left[0].Text), "1 h 35 min ahead") {
		t.Fatalf("%+v", p)
	}
	noted := slices.ContainsFunc(b.Result.Remarks, func(r series.Remark) bool {
		return strings.Contains(plain(ReviewNote(r)), "Logger b: its clock is taken to be 1 h 35 min ahead, as you took over")
	})
	if !noted {
		t.Error("the review does not say so")
	}
	b = closely(t, k, edited(t, k, b, p.Left[0].Undo))
	if p = page(); len(p.Doubts) != 1 || len(p.Left) != 0 {
		t.Fatalf("taken back: %+v", p)
	}
	b = closely(t, k, edited(t, k, b, p.Doubts[0].Keep))
	if p = page(); len(p.Doubts) != 0 || len(p.Left) != 1 || p.Left[0].Text != "Its clock is left as it is, as you said." || b.Files().Files[0].Mark != MarkGood {
		t.Fatalf("left as it is: %+v", p)
	}
	b = closely(t, k, edited(t, k, b, p.Left[0].Undo))
	if p = page(); len(p.Doubts) != 1 {
		t.Errorf("asked again: %+v", p)
	}
}

// A logger that stood at one value for four days is kept in: it is not offered again, but for days that come later.
func TestWhatIsKeptIsNotOfferedAgain(t *testing.T) {
	k := keeper(t)
	stuck := func(k int, air float64) (time.Duration, float64) {
		if k >= 720 && k < 4*144+720 {
			return 0, math.NaN()
		}
		return 0, air
	}
	dir := t.TempDir()
	paths := together(t, dir, map[string]func(int, float64) (time.Duration, float64){"a.csv": asItIs(0), "b.csv": stuck, "c.csv": asItIs(0)})
	text, err := os.ReadFile(paths[1])
	if err == nil {
		err = os.WriteFile(paths[1], []byte(strings.ReplaceAll(string(text), "NaN", "4.40")), 0o600)
	}
	if err != nil {
		t.Fatal(err)
	}
	b := closely(t, k, added(t, k, Book{}, paths...))
	d := pageOf(t, b, "b.csv").Loggers[0].Doubts
	// Reading 720 is five days on, 18 November 00:00; four days are until the 22nd.
	if len(d) != 1 || !strings.HasPrefix(d[0].Text, "18–21 November: its temperature stood at 4.4") || d[0].TakeIt != "Leave it out" {
		t.Fatalf("%+v", d)
	}
	if x := d[0].Take.(winter.Exclude).Stretches; len(x) != 1 || x[0].Quantity != winter.OfTemperature {
		t.Errorf("%+v", x)
	}
	b = closely(t, k, edited(t, k, b, d[0].Keep))
	p := pageOf(t, b, "b.csv").Loggers[0]
	if len(p.Doubts) != 0 || len(p.Left) != 1 || p.Left[0].Text != "Kept 18–21 November, of its temperature, though it stood still, as you said." {
		t.Fatalf("%+v", p)
	}
	b = closely(t, k, edited(t, k, b, p.Left[0].Undo))
	if p = pageOf(t, b, "b.csv").Loggers[0]; len(p.Doubts) != 1 {
		t.Errorf("%+v", p)
	}
}

// The watch said 12:00 on 13 November when the logger said 11:48, and 12:00 on 3 December when it said 11:28: it lost
// 20 minutes in 20 days, a minute a day.
func TestAClockHeldAgainstAWatch(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, together(t, t.TempDir(), map[string]func(int, float64) (time.Duration, float64){"a.csv": asItIs(0)})...)
	text := ClockText{Zone: "UTC", DST: DSTWords[0], Pairs: []ClockPair{{"2024-12-03 12:00", "2024-12-03 11:28"}, {}, {"2024-11-13 12:00", "2024-11-13 11:48"}}}
	e, problem := b.SetClock(Slot{}, text)
	if problem != "" {
		t.Fatal(problem)
	}
	first := b.Result.Inputs[0].Loggers[0].TempC.Readings.At[0]
	b = closely(t, k, edited(t, k, b, e))
	left := pageOf(t, b, "a.csv").Loggers[0].Left
	if len(left) != 1 || !strings.Contains(plain(left[0].Text), "it said 13 November 2024 11:48") || !strings.Contains(plain(left[0].Text), "had lost 20 min in 20 days") {
		t.Fatalf("%+v", left)
	}
	// The first reading was at 00:00 by the logger, 11 h 48 min before the first comparison: 12 min behind then, and
	// less by a minute in 24 h: 11.5 min.
	if moved := float64(b.Result.Inputs[0].Loggers[0].TempC.Readings.At[0]-first) / minuteMS; math.Abs(moved-11.5) > 0.05 {
		t.Errorf("the first reading is moved by %v min", moved)
	}
	if got := b.ClockText(Slot{}); got.Zone != "UTC" || len(got.Pairs) != 2 || got.Pairs[0] != text.Pairs[2] {
		t.Errorf("%+v", got)
	}
	for _, wrong := range []ClockText{{Zone: "Nowhere"}, {Pairs: []ClockPair{{"soon", "2024-11-13 11:48"}}}, {Pairs: []ClockPair{{"2024-11-13 11:48", ""}}}, {Pairs: []ClockPair{{"2024-11-13 12:00", "2024-11-13 11:48"}, {"2024-11-13 11:00", "2024-11-13 11:58"}}}} {
		if _, problem := b.SetClock(Slot{}, wrong); !strings.HasSuffix(problem, ".") {
			t.Errorf("%+v was taken: %q", wrong, problem)
		}
	}
	if b = edited(t, k, b, left[0].Undo); len(b.ClockText(Slot{}).Pairs) != 0 {
		t.Error("it was not taken back")
	}
}
