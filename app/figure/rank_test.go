package figure

import (
	"fmt"
	"image"
	"image/color"
	"slices"
	"testing"

	"thawbook/analysis/series"
)

// bays is a lane of so many loggers between 4 and 5 °C under a veil, with their mean and the weather, read every ten minutes
// for a week; the odd ones read 8 °C throughout, or 20 °C on the third day. It is the invented week of these tests.
func bays(n int, lasting, passing int) *Figure {
	curve := func(level func(at int64) float64) series.Curve {
		var r series.Readings
		for at := int64(0); at <= 7*dayMS; at += tenMinutes {
			r.At, r.Val = append(r.At, at), append(r.Val, level(at))
		}
		return series.Curve{Readings: r, MaxStepMS: 2 * tenMinutes}
	}
	lane := Lane{Title: "Temperature", Unit: "°C", Bands: []Band{{Low: 2, High: 6}}, Veil: true}
	for i := range n {
		c := curve(func(at int64) float64 {
			switch {
			case i == lasting:
				return 8
			case i == passing && at/dayMS == 2:
				return 20
			}
			return 4 + float64(i)/float64(n)
		})
		lane.Traces = append(lane.Traces, NewTrace(fmt.Sprintf("bay %d", i+1), c, color.NRGBA{}))
		lane.Traces[i].Muted = true
	}
	lane.Traces = append(lane.Traces, NewTrace("room, mean", curve(func(int64) float64 { return 4.5 }), color.NRGBA{}),
		NewTrace("outdoors", curve(func(int64) float64 { return 0 }), color.NRGBA{}))
	lane.Traces[n+1].Muted, lane.Traces[n+1].Outside = true, true
	return &Figure{Theme: Light(), View: series.Span{From: 0, To: 7 * dayMS}, Lanes: []Lane{lane}}
}

// named are the names set beside the lanes of a figure on a page of w × h, top to bottom.
func named(f *Figure, w, h int) (names []string) {
	l := f.Layout(w, h, 1)
	n := &notepad{faces: &f.fonts}
	f.draw(n, &l, image.Rect(0, 0, w, h))
	for _, s := range n.texts {
		if slices.ContainsFunc(f.Lanes[0].Traces, func(t Trace) bool { return t.Name == s.text }) {
			names = append(names, s.text)
		}
	}
	return names
}

// Where few names have room they are the room's mean, the weather and the loggers that leave the others: the one that is off
// by 16 K for a day (mean square 16²/7 = 37 K²) before the one that is off by 3.5 K all the time (12 K²).
func TestNamesThatHaveRoomAreThoseThatMatter(t *testing.T) {
	f := bays(20, 16, 11)
	order := []string{"room, mean", "outdoors", "bay 12", "bay 17"}
	most := 0
	for h := 100; h < 170; h++ {
		got := named(f, 900, h)
		k := min(len(got), len(order))
		if most = max(most, k); !holdsAll(got, order[:k]) {
			t.Errorf("%d px high %q are named, want %q", h, got, order[:k])
		}
	}
	if most < len(order) {
		t.Errorf("at most %d are named", most)
	}
}

// holdsAll tells whether names hold what is wanted.
func holdsAll(names, want []string) bool {
	return len(names) >= len(want) && !slices.ContainsFunc(want, func(w string) bool { return !slices.Contains(names, w) })
}

// Of twenty loggers as many are named as there are inks, each in one of its own; the other fourteen share one ink. Six keep the
// colours they were given, and all are named.
func TestInksTellApartWhoIsNamed(t *testing.T) {
	for n, want := range map[int]struct{ named, inks, more int }{20: {6, 7, 14}, 6: {6, 6, 0}} {
		f := bays(n, 4, 3)
		lane := &f.Lanes[0]
		for j := range n {
			lane.Traces[j].Color = f.Theme.Traces[j%len(f.Theme.Traces)]
		}
		l := f.Layout(900, 500, 1)
		f.drawTraces(&notepad{faces: &f.fonts}, &l, 0)
		names := f.labels(&l, 0, lane.byImportance(f.oddness(lane)))
		of := map[color.NRGBA][]int{}
		for j, ink := range f.inks[:n] {
			of[ink] = append(of[ink], j)
		}
		told, more := 0, 0
		for _, m := range names {
			if m.width > 0 && lane.Traces[m.trace].thin() {
				told++
				if alone := of[f.inks[m.trace]]; len(alone) != 1 {
					t.Errorf("%d loggers: %s shares its ink with %v", n, m.text, alone)
				}
			}
			if k := 0; m.width == 0 {
				if c, _ := fmt.Sscanf(m.text, "+\u2009%d more", &k); c == 1 {
					more = k
				}
			}
		}
		if told != want.named || len(of) != want.inks || more != want.more {
			t.Errorf("%d loggers: %d named in %d inks and %d more, want %+v", n, told, len(of), more, want)
		}
		inks := slices.Clone(f.inks)
		slices.Reverse(names)
		if f.chooseInks(lane, names); !slices.Equal(f.inks, inks) {
			t.Errorf("%d loggers: named in another order they have other inks", n)
		}
		if n == 6 && f.inks[5] != f.Theme.Traces[5] {
			t.Errorf("the sixth of six has another ink than it was given")
		}
	}
}

// A crowd without lines is counted and not named: a name beside no line would say nothing.
func TestACrowdIsCountedNotNamed(t *testing.T) {
	f := bays(50, 4, 3)
	for j := range 50 {
		f.Lanes[0].Traces[j].Veiled = true
	}
	if got := named(f, 900, 500); !slices.Equal(got, []string{"room, mean", "outdoors"}) {
		t.Errorf("named are %q", got)
	}
	l := f.Layout(900, 500, 1)
	if got := f.labels(&l, 0, f.Lanes[0].byImportance(nil)); !slices.ContainsFunc(got, func(n label) bool { return n.text == "+\u200950 more" }) {
		t.Errorf("labels %+v", got)
	}
}
