package sampledata

import (
	"strings"
	"testing"
	"time"
	_ "time/tzdata"
)

// The zones' rules in closed form against the tz database, hour by hour over four years.
func TestZonesAgainstTzdata(t *testing.T) {
	end := time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC)
	for _, z := range []zone{tallinn, regina, universal} {
		known, err := time.LoadLocation(z.name)
		if err != nil {
			t.Fatal(err)
		}
		for at := time.Date(2023, 1, 1, 0, 0, 0, 0, time.UTC); at.Before(end); at = at.Add(time.Hour) {
			_, offsetS := at.In(known).Zone()
			if got := z.offsetMS(at.UnixMilli()); got != int64(offsetS)*secondMS {
				t.Fatalf("at %v the offset is %d ms, want %d s", at, got, offsetS)
			}
		}
	}
}

// A clock that gains a hundredth asks for its tenth reading of ten minutes 99 min 1 s after its first (6000 s / 1.01
// is 5940.6 s; the simulation looks every ten seconds) and writes even minutes all the same.
func TestAClockThatGains(t *testing.T) {
	l := &logger{
		files: one("x"), layout: isoCommas, everyMS: 10 * minuteMS, lastMS: dayMS, clock: clock{zone: universal, fast: 0.01},
		channels: []*channel{{title: "S", quantity: state01, see: func(*scene) float64 { return 1 }}},
	}
	l.ready(1)
	at := int64(0)
	for ; l.rows < 11; at += stepS * secondMS {
		l.watch(&scene{atMS: at}, false)
	}
	if last := l.files[0].to; last != 5950*secondMS {
		t.Errorf("the tenth reading after the first is at %d ms", last)
	}
	if text := string(l.files[0].text); !strings.HasSuffix(text, "1970-01-01T01:40:00,on\n") {
		t.Errorf("it is written as %q", text[len(text)-25:])
	}
}

// A clock that follows daylight saving skips 03:00 to 04:00 on 30 March 2025; one on winter time does not.
func TestClockFaces(t *testing.T) {
	before, after := time.Date(2025, 3, 30, 0, 59, 0, 0, time.UTC).UnixMilli(), time.Date(2025, 3, 30, 1, 0, 0, 0, time.UTC).UnixMilli()
	for _, c := range []struct {
		clock         clock
		before, after string
	}{
		{wallClock, "02:59", "04:00"},
		{winterTime, "02:59", "03:00"},
		{worldTime, "00:59", "01:00"},
	} {
		b, a := c.clock.face(before).Format("15:04"), c.clock.face(after).Format("15:04")
		if b != c.before || a != c.after {
			t.Errorf("faces are %s and %s, want %s and %s", b, a, c.before, c.after)
		}
	}
}

// Two random streams have nothing to do with each other: the correlation of 10 000 pairs of independent normal
// values has standard deviation 0.01.
func TestNoiseStreamsAreIndependent(t *testing.T) {
	const n, fiveSigma = 10000, 0.05
	for stream := uint64(1); stream < 8; stream++ {
		a, b := noise(stream), noise(stream+1)
		sum := 0.0
		for range n {
			sum += a.NormFloat64() * b.NormFloat64()
		}
		if r := sum / n; r > fiveSigma || r < -fiveSigma {
			t.Errorf("streams %d and %d are correlated: %.3f", stream, stream+1, r)
		}
	}
}

// A wander keeps its standard deviation, and forgets over its time constant: its lag-one correlation is
// e^(−step/tau), the definition of the process.
func TestWander(t *testing.T) {
	w := newWander(noise(99), 2, 10, 1)
	const n = 200000
	sum, lagged, last := 0.0, 0.0, w.next()
	for range n {
		v := w.next()
		sum, lagged, last = sum+v*v, lagged+v*last, v
	}
	near(t, "variance", sum/n, 4, 0.05)
	near(t, "lag-one correlation", lagged/sum, 0.904837, 0.01)
}
