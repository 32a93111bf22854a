package plan

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"thawbook/app/winter"
)

// Any winter with valid values comes back the same, number for number: two thousand drawn by chance, in
// which every field there is has been set at least once.
func TestAnyWinterReadsBack(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	set := map[string]bool{}
	for range 2000 {
		w := anyWinter(rng)
		again(t, w)
		noteSet(reflect.ValueOf(w), set)
	}
	for field, ok := range set {
		if !ok {
			t.Errorf("no winter had a %s", field)
		}
	}
}

// noteSet notes of every field within a value whether it has ever been other than zero.
func noteSet(v reflect.Value, set map[string]bool) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			noteSet(v.Elem(), set)
		}
	case reflect.Slice:
		for i := range v.Len() {
			noteSet(v.Index(i), set)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			field := v.Type().Name() + "." + v.Type().Field(i).Name
			set[field] = set[field] || !v.Field(i).IsZero()
			noteSet(v.Field(i), set)
		}
	}
}

func anyWinter(rng *rand.Rand) winter.Winter {
	zones := []string{"Europe/Tallinn", "America/St_Johns", "Australia/Lord_Howe", "UTC", "+05:45"}
	w := winter.Winter{Name: anyText(rng), Zone: anyOf(rng, zones), GapMinutes: maybe(rng, 1, 10080), Bands: anyBands(rng)}
	for i := range 1 + rng.IntN(3) {
		w.Barns = append(w.Barns, anyBarn(rng, fmt.Sprintf("barn %d %s", i, anyText(rng))))
	}
	if rng.IntN(2) == 0 {
		w.Answers = []winter.Answer{{File: "*.csv", ID: "zone", Option: "+02:00"}, {File: "north.csv", ID: "pairing", Option: "2+5:north, -7", Layout: anyText(rng)}}
		w.Refused = []winter.Refused{{Name: "photo.csv", Code: "binary", Args: []string{anyText(rng)}, Line: rng.IntN(3), Column: rng.IntN(3)}}
		w.Outdoor = []winter.Logger{anyLogger(rng, "out", "outdoor")}
		w.Outdoor[0].StationKM = maybe(rng, 0, 1000)
	}
	if rng.IntN(2) == 0 {
		w.Tariff = &winter.Tariff{PerKWh: rng.Float64(), Currency: anyOf(rng, []string{"EUR", "CAD", "SEK"})}
		w.Tray = []winter.Logger{anyLogger(rng, "spare", ""), anyLogger(rng, "lent", anyOf(rng, winter.Places))}
	}
	return w
}

func anyBarn(rng *rand.Rand, name string) winter.Barn {
	b := winter.Barn{
		Name: name, AltitudeM: maybe(rng, -500, 9000), VolumeM3: maybe(rng, 1, 1e7), WaterLines: rng.IntN(2) == 0, AlarmC: maybe(rng, -20, 40), AlarmMin: maybe(rng, 0, 1440),
		Phases: anyPhases(rng), Mixing: anyMixing(rng), Exclusions: anyExclusions(rng),
	}
	in := anyInstant(rng)
	b.BeesIn, b.BeesOut = &in, laterThan(rng, in)
	for i := range rng.IntN(4) {
		b.Stages = append(b.Stages, anyStage(rng, fmt.Sprint("stage ", i)))
		b.Heads = append(b.Heads, winter.HeadCount{At: anyInstant(rng), Change: rng.IntN(800) - 400, Note: anyText(rng)})
		b.Notes = append(b.Notes, anyNote(rng))
		l := anyLogger(rng, fmt.Sprint("logger ", i), anyOf(rng, winter.Places))
		l.RecordsStage = anyOf(rng, append(b.Recordable(), ""))
		b.Loggers = append(b.Loggers, l)
		b.Heats = append(b.Heats, winter.HeatSource{Name: fmt.Sprint("heat ", i), Kind: "recovery", WithStage: b.Stages[0].Name, Into: "air"})
		low, high := maybe(rng, -1, 0), ptr(rng.Float64())
		if low == nil {
			high = nil
		}
		b.Surfaces = append(b.Surfaces, winter.Surface{Name: fmt.Sprint("surface ", i), Kind: "corner", Factor: ptr(0.0), Low: low, High: high, Logger: l.Name})
	}
	return b
}

// anyPhases are some of the phases in order, some of them with a date.
func anyPhases(rng *rand.Rand) (out []winter.Phase) {
	from := anyInstant(rng)
	for _, name := range winter.PhaseNames {
		p := winter.Phase{Name: name, Bands: anyBands(rng)}
		if rng.IntN(2) == 0 {
			from = *laterThan(rng, from)
			p.From = ptr(from)
		}
		if rng.IntN(2) == 0 {
			out = append(out, p)
		}
	}
	return out
}

func anyStage(rng *rand.Rand, name string) winter.Stage {
	s := winter.Stage{Name: name, Watts: maybe(rng, 0, 1e6), From: maybeInstant(rng)}
	switch rng.IntN(3) {
	case 0:
		s.AlwaysOn = true
	case 1:
		on := rng.Float64()*20 - 5
		s.OnC, s.OffC = &on, ptr(on-0.1-rng.Float64())
	case 2:
		s.TimerOnS, s.TimerEvery = ptr(1+rng.Float64()), ptr(2+rng.Float64())
	}
	if flow := maybe(rng, 0, 1e5); flow != nil {
		s.FlowLow, s.FlowHigh, s.FlowMeasured = ptr(*flow/secondsPerHour), ptr((*flow+100)/secondsPerHour), rng.IntN(2) == 0
	}
	return s
}

// anyMixing is none, or a fan set once and once more.
func anyMixing(rng *rand.Rand) []winter.Circulation {
	if rng.IntN(2) == 0 {
		return nil
	}
	first := winter.Circulation{Name: "mixing", From: maybeInstant(rng), Watts: maybe(rng, 0, 1e6)}
	next := winter.Circulation{Name: "mixing", From: laterThan(rng, anyInstant(rng)), Watts: maybe(rng, 0, 1e6)}
	if first.From != nil {
		next.From = laterThan(rng, *first.From)
	}
	return []winter.Circulation{first, next}
}

func anyNote(rng *rand.Rand) winter.Note {
	kind := anyOf(rng, append(winter.NoteKinds, winter.NoteKind{Name: "swept"}))
	n := winter.Note{At: anyInstant(rng), Kind: kind.Name, Value: maybe(rng, 0, 50), Unit: anyText(rng), Text: anyText(rng)}
	if n.Value != nil {
		n.Of = maybe(rng, 50, 1000)
	}
	if len(kind.Units) > 0 {
		n.Unit = anyOf(rng, append(kind.Units, ""))
	}
	if rng.IntN(2) == 0 {
		n.Until = laterThan(rng, n.At)
	}
	return n
}

func anyLogger(rng *rand.Rand, name, place string) winter.Logger {
	follows := rng.IntN(2) == 0
	face := anyInstant(rng)
	return winter.Logger{
		Name: name, Files: anyFiles(rng), Place: place, From: maybeInstant(rng), Channel: anyText(rng),
		OffsetC: rng.Float64() - 0.5, OffsetRelHum: *percentOf(ptr(math.Round(rng.Float64()*1000)/100 - 5)),
		Zone: anyOf(rng, []string{"", "+02:00"}), FollowsDST: &follows, Anchors: []winter.Anchor{{FaceMS: face, At: anyInstant(rng)}},
		Checks: anyChecks(rng), Exclusions: ofOne(rng, anyExclusions(rng)), Kept: ofOne(rng, anyExclusions(rng)), AheadMS: rng.Int64N(200_000_000) - 100_000_000, Assumed: rng.IntN(2) == 0,
	}
}

// anyChecks are up to three, of temperature, of humidity or of both.
func anyChecks(rng *rand.Rand) (out []winter.Calibration) {
	for range rng.IntN(4) {
		c := winter.Calibration{At: maybeInstant(rng), Method: anyOf(rng, winter.CheckMethods)}
		which := rng.IntN(3)
		if which != 0 {
			c.SaidC, c.TrueC = ptr(rng.Float64()*140-60), ptr(math.Round(rng.Float64()*800)/10)
		}
		if which != 1 {
			c.SaidRelHum, c.TrueRelHum = percentOf(ptr(rng.Float64()*120)), percentOf(ptr(math.Round(rng.Float64()*1000)/10))
		}
		out = append(out, c)
	}
	return out
}

func anyExclusions(rng *rand.Rand) (out []winter.Exclusion) {
	for range rng.IntN(3) {
		from := anyInstant(rng)
		out = append(out, winter.Exclusion{From: from, To: *laterThan(rng, from), Reason: anyText(rng)})
	}
	return out
}

// ofOne makes some stretches those of one quantity, as a logger's can be.
func ofOne(rng *rand.Rand, all []winter.Exclusion) []winter.Exclusion {
	for i := range all {
		all[i].Quantity = anyOf(rng, []string{"", winter.OfTemperature, winter.OfHumidity})
	}
	return all
}

func anyBands(rng *rand.Rand) winter.Bands {
	band := func(low, middle, high, by float64) winter.Band {
		below := func() *float64 { return scaled(maybe(rng, low, middle), by) }
		above := func() *float64 { return scaled(maybe(rng, middle, high), by) }
		b, a := rising(below(), below(), below()), rising(above(), above(), above())
		return winter.Band{ActLow: b[0], WatchLow: b[1], GoodLow: b[2], GoodHigh: a[0], WatchHigh: a[1], ActHigh: a[2]}
	}
	var b winter.Bands
	if rng.IntN(3) > 0 {
		b.TempC = band(-60, 5, 80, 1)
	}
	if rng.IntN(3) > 0 {
		b.RelHum = band(0, 60, 100, percent)
	}
	return b
}

// rising puts the numbers there are in order.
func rising(all ...*float64) []*float64 {
	var values []float64
	for _, v := range all {
		if v != nil {
			values = append(values, *v)
		}
	}
	slices.Sort(values)
	for i, v := range all {
		if v != nil {
			all[i], values = &values[0], values[1:]
		}
	}
	return all
}

// anyInstant lies between 1990 and 2060, on a whole second as often as not.
func anyInstant(rng *rand.Rand) int64 {
	at := 631152000000 + rng.Int64N(2208988800000)
	if rng.IntN(2) == 0 {
		at -= at % 1000
	}
	return at
}

func maybeInstant(rng *rand.Rand) *int64 {
	if rng.IntN(2) == 0 {
		return nil
	}
	return ptr(anyInstant(rng))
}

// laterThan is an instant a millisecond to some weeks after another.
func laterThan(rng *rand.Rand, at int64) *int64 {
	return ptr(at + 1 + rng.Int64N(1<<uint(1+rng.IntN(31))))
}

func anyText(rng *rand.Rand) string {
	words := []string{"", "a", "O'Hara", `say "no"`, "näide", "two\nlines", `back\slash`, "#1", "'''", "\ttab", "\u2028", "\u007f", "🐝"}
	return anyOf(rng, words) + anyOf(rng, words)
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

func anyOf[T any](rng *rand.Rand, items []T) T { return items[rng.IntN(len(items))] }

func percentOf(v *float64) *float64 { return scaled(v, percent) }

func ptr[T any](v T) *T { return &v }

// anyFiles is none for a logger that waits for its read-out.
func anyFiles(rng *rand.Rand) []string {
	if rng.IntN(4) == 0 {
		return nil
	}
	return []string{anyText(rng) + "*.csv"}
}
