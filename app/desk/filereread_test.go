package desk

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"
)

// roomLog is twenty days of hours of a room about 4 °C, its columns printed by line.
func roomLog(t *testing.T, dir, name, header string, line func(tempC, relHum float64) string) string {
	t.Helper()
	text := header
	at := time.Date(2024, time.November, 13, 0, 0, 0, 0, time.UTC)
	for h := range 480 {
		text += at.Add(time.Duration(h)*time.Hour).Format("2006-01-02 15:04") + "," + line(4+float64(h*7%11)/10, 70+float64(h*5%13)/10) + "\n"
	}
	return written(t, dir, name, text)
}

const roomHeader = "time,temp (°C),RH (%)\n"

// Beside one that reads right, a log in °F under °C and one with its columns exchanged are proposed to be read as they
// fit: one press each, kept as an answer for the file, and one press takes it back. The first row is 4.0 °C and 70 %.
func TestAWrongHeaderIsSetRightByAPress(t *testing.T) {
	for name, c := range map[string]struct {
		line        func(tempC, relHum float64) string
		press, said string
	}{
		"heat.csv":  {func(c, h float64) string { return fmt.Sprintf("%.1f,%.1f", c*1.8+32, h) }, "Read it as °F", "You said: °F."},
		"cross.csv": {func(c, h float64) string { return fmt.Sprintf("%.1f,%.1f", h, c) }, "Read the two the other way round", "You said: columns 2 and 3 the other way round."},
	} {
		k, dir := keeper(t), t.TempDir()
		look := func(b Book) Book {
			b, err := k.LookClosely(context.Background(), b)
			if err != nil {
				t.Fatal(err)
			}
			return b
		}
		right := func(c, h float64) string { return fmt.Sprintf("%.1f,%.1f", c+0.1, h) }
		b := look(added(t, k, Book{}, roomLog(t, dir, "a.csv", roomHeader, right), roomLog(t, dir, "b.csv", roomHeader, func(c, h float64) string { return right(c+0.1, h) }), roomLog(t, dir, name, roomHeader, c.line)))
		doubts := pageOf(t, b, name).Loggers[0].Doubts
		if len(doubts) != 1 || doubts[0].TakeIt != c.press || doubts[0].AlsoIt != "Leave it out" || doubts[0].Also == nil {
			t.Fatalf("%s: %+v", name, doubts)
		}
		set := look(edited(t, k, b, doubts[0].Take))
		p := pageOf(t, set, name)
		if len(p.Loggers[0].Doubts) > 0 || len(p.Answers) != 1 || !strings.HasSuffix(p.Answers[0].Text, c.said) {
			t.Errorf("%s: %+v, %+v", name, p.Loggers[0].Doubts, p.Answers)
		}
		for _, l := range set.Result.Inputs[0].Loggers {
			if temp, damp := l.TempC.Readings.Val[0], l.RelHum.Readings.Val[0]; temp < 3.9 || temp > 4.3 || damp != 0.7 {
				t.Errorf("%s, %s: %g °C, %g", name, l.Name, temp, damp)
			}
		}
		if back := look(edited(t, k, set, p.Answers[0].Undo)); len(pageOf(t, back, name).Loggers[0].Doubts) != 1 {
			t.Errorf("%s: taken back, it is not asked again", name)
		}
	}
}
