package figure

import (
	"fmt"
	"image"
	"slices"
	"testing"
)

// Two lines apart limits leave room for one name, and two want theirs: then they stand together in the middle, with a name on
// either side. Half a line lower there is room for the second only when they stand at the foot. Four lines apart there is room
// for all; where there is none for any, limits stand as they stand best (arithmetic).
func TestLimitsComeBeforeNames(t *testing.T) {
	names := []label{{text: "Alder", width: 1, y: 15}, {text: "Rowan", width: 1, y: 15}}
	for _, r := range []struct {
		lines, above float64 // how high the lane is, and the room above it
		names        []label
		want         []string
	}{
		{1, 0, nil, []string{"6 °C", "2 °C"}},
		{2, 0, names, []string{"2–6 °C", "Alder", "Rowan"}},
		{1.5, 0.5, names, []string{"2–6 °C, low", "Alder", "Rowan"}},
		{4, 0, names, []string{"6 °C", "2 °C", "Alder", "Rowan"}},
		{0.5, 0, names, []string{"6 °C", "2 °C"}},
	} {
		bottom := r.lines * labelLine
		limits := [][]label{{{text: "6 °C"}, {text: "2 °C", y: bottom}}, {{text: "2–6 °C", y: bottom / 2}}, {{text: "2–6 °C, low", y: bottom}}}
		var told []string
		for _, n := range place(limits, r.names, 0, -r.above*labelLine, bottom, labelLine) {
			told = append(told, n.text)
		}
		if !slices.Equal(told, r.want) {
			t.Errorf("%v lines high with %d names: %q, want %q", r.lines, len(r.names), told, r.want)
		}
	}
}

// Limits a line apart or more can each stand at its own height; nearer ones stand together.
func TestLimitsThatMeetStandTogether(t *testing.T) {
	f := &Figure{Theme: Light(), View: Span{From: 0, To: dayMS}, Lanes: []Lane{{Title: "Temperature", Unit: "°C", Range: &Range{0, 10}, Bands: []Band{{Low: 2, High: 6}}}}}
	for h := 80; h < 240; h += 5 {
		l := f.Layout(600, h, 1)
		apart := 0.4 * float64(l.Lanes[0].Dy())
		if got := f.limitPlaces(&l, 0)[0]; (len(got) == 2) != (apart >= labelLine) {
			t.Errorf("%.1f px apart: %v", apart, got)
		}
	}
}

// Where there is room for one name, it is the first one's, not a word on how many have none.
func TestTheOnlyRoomIsTheFirstNames(t *testing.T) {
	told := place([][]label{nil}, []label{{text: "room"}, {text: "east"}, {text: "west"}}, 0, 0, 0, labelLine)
	if len(told) != 1 || told[0].text != "room" {
		t.Errorf("told %v", told)
	}
}

// However low the page, every lane's limits are told, apart or together, and nothing meets anything.
func TestLimitsAreToldOnLowPages(t *testing.T) {
	f := sampleFigure(Light(), tenMinutes)
	_, least := f.MinSize()
	for h := int(least); h < 700; h += 10 {
		l := f.Layout(900, h, 1)
		n := &notepad{faces: &f.fonts}
		f.draw(n, &l, image.Rect(0, 0, 900, h))
		checkPage(t, fmt.Sprintf("%d px high", h), n, 900, h)
		for _, limits := range [][]string{{"2–6\u2009°C", "2\u2009°C", "6\u2009°C"}, {"40–75\u2009%", "40\u2009%", "75\u2009%"}, {"0\u2009K"}} {
			told := 0
			for _, s := range n.texts {
				if slices.Contains(limits, s.text) {
					told++
				}
			}
			if together := len(limits) == 3 && slices.ContainsFunc(n.texts, func(s noted) bool { return s.text == limits[0] }); told == 0 || len(limits) == 3 && told != 2 && !together {
				t.Errorf("%d px high: of %q %d are told", h, limits, told)
			}
		}
	}
}

// Both limits in one label read as a range in the printed unit: 2 and 6 °C are 35.6 and 42.8 °F. A minus keeps the dash away.
func TestBothLimitsInOneLabel(t *testing.T) {
	c := Lane{Unit: "°C"}
	f := Lane{Unit: "°F", Shown: func(v float64) float64 { return v*1.8 + 32 }}
	for got, want := range map[string]string{
		bandText(&c, 6, 2):  "2–6\u2009°C",
		bandText(&f, 6, 2):  "35.6–42.8\u2009°F",
		bandText(&c, 4, -1): Minus + "1 to 4\u2009°C",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// The name of the second scale has 4 px free beneath it, whatever names and figures want the room.
func TestTheSecondScalesNameStandsFree(t *testing.T) {
	f := sampleFigure(Light(), tenMinutes)
	for range 9 {
		f.Lanes[0].Traces = append(f.Lanes[0].Traces, f.Lanes[0].Traces[1])
	}
	for h := 420; h < 700; h += 20 {
		l := f.Layout(900, h, 1)
		n := &notepad{faces: &f.fonts}
		f.draw(n, &l, image.Rect(0, 0, 900, h))
		name := n.texts[slices.IndexFunc(n.texts, func(s noted) bool { return s.text == "outdoor °C" })]
		for _, s := range n.texts {
			if s.left < name.right && s.right > name.left && s.top > name.top && s.top < name.bottom+4 {
				t.Errorf("%d px high: %q is %.1f px beneath", h, s.text, s.top-name.bottom)
			}
		}
	}
}
