package plan

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"thawbook/app/winter"
)

// again writes a winter and reads it back.
func again(t *testing.T, w winter.Winter) winter.Winter {
	t.Helper()
	var text bytes.Buffer
	if err := Write(&text, w); err != nil {
		t.Fatal(err)
	}
	back, err := Read(text.Bytes(), "written.toml")
	if err != nil {
		t.Fatalf("%v in\n%s", err, text.String())
	}
	if !reflect.DeepEqual(w, back) {
		t.Fatalf("read back as\n%+v\nnot\n%+v\nfrom\n%s", back, w, text.String())
	}
	return back
}

func TestWhatIsWrittenReadsBack(t *testing.T) {
	again(t, read(t, full))
	again(t, read(t, head+"[[barn]]\nname = \"Alder\"\n"))
}

// An instant in the hour shown twice, each of the two, and one in a zone with an odd distance from UTC.
func TestInstantsReadBack(t *testing.T) {
	for _, c := range []struct{ zone, at string }{
		{"Europe/Tallinn", "2026-10-25T03:30:00+03:00"},
		{"Europe/Tallinn", "2026-10-25T03:30:00+02:00"},
		{"Australia/Lord_Howe", "2026-04-05T01:45:00+10:30"},
		{"-03:30", "2026-04-05T01:45:00.125-03:30"},
		{"Africa/Monrovia", "1971-06-01T00:00:00+00:00"},
	} {
		again(t, read(t, fmt.Sprintf("[winter]\nname = \"\"\nzone = %q\n[[barn]]\nname = \"A\"\nbees_in = %q\n", c.zone, c.at)))
	}
}

// Any winter with valid values comes back the same, number for number: two thousand drawn by chance.
func TestAnyWinterReadsBack(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		again(t, anyWinter(rng))
	}
}

func anyWinter(rng *rand.Rand) winter.Winter {
	zones := []string{"Europe/Tallinn", "America/St_Johns", "Australia/Lord_Howe", "UTC", "+05:45"}
	w := winter.Winter{Name: anyText(rng), Zone: zones[rng.IntN(len(zones))], GapMinutes: maybe(rng, 1, 10080)}
	for i := range 1 + rng.IntN(3) {
		w.Barns = append(w.Barns, anyBarn(rng, fmt.Sprintf("barn %d %s", i, anyText(rng))))
	}
	w.Bands.RelHum.GoodHigh = percentOf(maybe(rng, 0, 100))
	w.Bands.TempC.GoodLow = maybe(rng, -60, 80)
	if rng.IntN(2) == 0 {
		w.Answers = []winter.Answer{{File: "*.csv", ID: "zone", Option: "+02:00"}}
		w.Outdoor = []winter.Logger{anyLogger(rng, "out", "outdoor")}
		w.Outdoor[0].StationKM = maybe(rng, 0, 1000)
	}
	return w
}

func anyBarn(rng *rand.Rand, name string) winter.Barn {
	b := winter.Barn{Name: name, AltitudeM: maybe(rng, -500, 9000), WaterLines: rng.IntN(2) == 0}
	in := anyInstant(rng)
	b.BeesIn = &in
	for i := range rng.IntN(4) {
		on := rng.Float64()*20 - 5
		off := on - 0.1 - rng.Float64()
		s := winter.Stage{Name: fmt.Sprint("stage ", i), OnC: &on, OffC: &off, Watts: maybe(rng, 0, 1e6)}
		if flow := maybe(rng, 0, 1e5); flow != nil {
			low, high := *flow/secondsPerHour, (*flow+100)/secondsPerHour
			s.FlowLow, s.FlowHigh = &low, &high
		}
		b.Stages = append(b.Stages, s)
		b.Heads = append(b.Heads, winter.HeadCount{At: anyInstant(rng), Change: rng.IntN(800) - 400, Note: anyText(rng)})
		b.Notes = append(b.Notes, winter.Note{At: anyInstant(rng), Kind: "sweepings", Value: maybe(rng, 0, 50), Text: anyText(rng)})
		b.Loggers = append(b.Loggers, anyLogger(rng, fmt.Sprint("logger ", i), winter.Places[rng.IntN(len(winter.Places))]))
	}
	return b
}

func anyLogger(rng *rand.Rand, name, place string) winter.Logger {
	follows := rng.IntN(2) == 0
	face := anyInstant(rng)
	return winter.Logger{
		Name: name, Files: []string{anyText(rng) + "*.csv"}, Place: place, Channel: anyText(rng),
		OffsetC: rng.Float64() - 0.5, OffsetRelHum: *percentOf(ptr(math.Round(rng.Float64()*1000)/100 - 5)),
		FollowsDST: &follows, Anchors: []winter.Anchor{{FaceMS: face, At: anyInstant(rng)}},
	}
}

// anyInstant lies between 1990 and 2060, on a whole second as often as not.
func anyInstant(rng *rand.Rand) int64 {
	at := 631152000000 + rng.Int64N(2208988800000)
	if rng.IntN(2) == 0 {
		at -= at % 1000
	}
	return at
}

func anyText(rng *rand.Rand) string {
	words := []string{"", "a", "O'Hara", `say "no"`, "näide", "two\nlines", `back\slash`, "#1", "'''", "\ttab", "\u2028", "\u007f", "🐝"}
	return words[rng.IntN(len(words))] + words[rng.IntN(len(words))]
}

func maybe(rng *rand.Rand, low, high float64) *float64 {
	if rng.IntN(3) == 0 {
		return nil
	}
	v := low + rng.Float64()*(high-low)
	if rng.IntN(2) == 0 {
		v = math.Round(v)
	}
	return &v
}

func percentOf(v *float64) *float64 { return scaled(v, percent) }

func ptr(v float64) *float64 { return &v }

// Whatever the text, Read gives a winter or one sentence with a place in the text, and a winter it gives
// can be written and read back.
func FuzzPlan(f *testing.F) {
	for _, table := range strings.Split(full, "\n\n") { // one table at a time: small texts change fastest
		f.Add([]byte(head + "[[barn]]\nname = \"Alder\"\n" + table))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		w, err := Read(text, "plan.toml")
		if err != nil {
			fault := err.(*Error)
			if fault.Line < 1 || fault.Column < 1 || fault.Line > bytes.Count(text, []byte("\n"))+1 || fault.Msg == "" {
				t.Fatalf("points outside the text: %v", err)
			}
			return
		}
		again(t, w)
	})
}
