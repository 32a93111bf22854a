package desk

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"thawbook/app/winter"
)

// checkedFile is a logger that reads 0.4 K too warm, every five minutes for a week from 10 November 2024 at 4 °C: on the
// 11th it lies in ice from 10:00 to 12:00, on the 12th and 13th over table salt, where it says 79.0 %.
func checkedFile(t *testing.T) string {
	t.Helper()
	var text strings.Builder
	text.WriteString("time,temperature (°C),humidity (%)\n")
	start := time.Date(2024, time.November, 10, 0, 0, 0, 0, time.UTC)
	ice, salt := start.Add(34*time.Hour), start.Add(48*time.Hour)
	for k := range 7 * 288 {
		at := start.Add(time.Duration(k) * 5 * time.Minute)
		c, h := 4.0, 60.0+float64(k%7)
		if in := at.Sub(ice); in >= 0 && in < 2*time.Hour {
			c = 4 * math.Exp(-in.Minutes()/10)
		}
		if in := at.Sub(salt); in >= 0 && in < 48*time.Hour {
			h = 79 - 19*math.Exp(-in.Hours()/2)
		}
		fmt.Fprintf(&text, "%s,%.1f,%.1f\n", at.Format("2006-01-02 15:04"), c+0.4, h)
	}
	return written(t, t.TempDir(), "ice.csv", text.String())
}

// In ice at 0 °C it said 0.4 °C; sodium chloride holds 75.64 % at 4.4 °C (Greenspan 1977: 75.5164 + 0.0398321·4.4 −
// 0.00265459·4.4² + 0.00002848·4.4³ = 75.643), so 79.0 % are 3.4 points too high. Taken over, the readings are set right
// by that and the errors of the house rules for a checked logger hold, ±0.3 K and ±3 points; taken back, those of one as
// it comes, ±0.5 K and ±5 points.
func TestIceAndSalt(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, checkedFile(t))
	check := func(way, from, to string) FileCheck {
		t.Helper()
		span, problem := b.CheckSpan(from, to)
		if problem != "" {
			t.Fatal(problem)
		}
		c, err := k.Check(context.Background(), b, Slot{}, way, span, Units{})
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	ice := check(CheckWords[0], "2024-11-11 09:00", "2024-11-11 13:00")
	if !strings.Contains(plain(ice.Text), "it said 0.4 °C in melting ice, which is 0.0 °C: it reads 0.4 °C too high. Give or take 0.1 °C") || ice.Caution != "" {
		t.Errorf("%q", ice.Text)
	}
	salt := check(CheckWords[1], "2024-11-12", "2024-11-14")
	if !strings.Contains(plain(salt.Text), "79.0 % over table salt, which holds 75.6 % at 4.4 °C (Greenspan 1977): it reads 3.4 points too high") || !strings.Contains(salt.Caution, "wash your hands") {
		t.Errorf("%q", salt.Text)
	}
	for _, e := range []winter.Edit{ice.Take, salt.Take} {
		b = closely(t, k, edited(t, k, b, e))
	}
	l := b.Result.Inputs[0].Loggers[0]
	if math.Abs(l.TempC.Val[0]-4) > 0.05 || math.Abs(l.RelHum.Val[0]-(0.60-0.0336)) > 0.001 || l.TempErrK != 0.3 || l.RelHumErr != 0.03 {
		t.Errorf("%v ± %v, %v ± %v", l.TempC.Val[0], l.TempErrK, l.RelHum.Val[0], l.RelHumErr)
	}
	left := pageOf(t, b, "ice.csv").Loggers[0].Left
	if len(left) != 2 || plain(left[0].Text) != "Checked in melting ice on 11 November 2024: it reads 0.4 °C too high." || !strings.HasPrefix(left[1].Text, "Checked over a salt on 12 November 2024") {
		t.Fatalf("%+v", left)
	}
	for _, x := range left {
		b = closely(t, k, edited(t, k, b, x.Undo))
	}
	if l := b.Result.Inputs[0].Loggers[0]; l.TempC.Val[0] != 4.4 || l.TempErrK != 0.5 || l.RelHumErr != 0.05 {
		t.Errorf("taken back: %v ± %v", l.TempC.Val[0], l.TempErrK)
	}
}

// Where a check says nothing, it is said why, and nothing can be taken.
func TestAnUnsuitableCheck(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, checkedFile(t))
	for _, c := range []struct{ way, from, to, said string }{
		{CheckWords[0], "2024-11-10 09:00", "2024-11-10 13:00", "never stayed close to 0 °C"},
		{CheckWords[0], "2024-11-11 10:00", "2024-11-11 10:30", "steady for 40 min"}, // eight readings every five minutes
		{CheckWords[0], "2025-11-11 10:00", "2025-11-11 10:30", "recorded no temperature"},
		{CheckWords[1], "2024-11-10", "2024-11-11", "never stayed steady near 76 %"},
		{CheckWords[2], "2024-11-12", "2024-11-14", "never stayed steady near 34 %"},
	} {
		span, _ := b.CheckSpan(c.from, c.to)
		got, err := k.Check(context.Background(), b, Slot{}, c.way, span, Units{})
		if err != nil || got.Take != nil || !strings.Contains(plain(got.Text), c.said) {
			t.Errorf("%s from %s: %q, %v", c.way, c.from, got.Text, err)
		}
	}
	for _, times := range [][2]string{{"", ""}, {"2024-11-11", "2024-11-10"}, {"soon", "2024-11-10"}} {
		if _, problem := b.CheckSpan(times[0], times[1]); !strings.HasSuffix(problem, ".") {
			t.Errorf("%v was taken", times)
		}
	}
}
