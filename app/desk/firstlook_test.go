package desk

import (
	"strings"
	"testing"

	"thawbook/analysis"
)

// plain is a text with its thin spaces made plain.
func plain(s string) string { return strings.ReplaceAll(s, thinSpace, " ") }

func textsOf(f FirstLook) []string {
	out := []string{plain(f.Headline), plain(f.Sure)}
	for _, s := range f.Sentences {
		out = append(out, plain(s.Text), plain(s.Sure))
	}
	return out
}

// A dew point known for a fifth of the bees' time gives no mean of it.
func TestTooLittleKnownOfTheDewPointIsNoSentence(t *testing.T) {
	in := gappy(t)
	in.Surfaces = nil
	for _, text := range textsOf(FirstLookOf(in, analysis.Judge(in), Units{})) {
		if strings.Contains(text, "would have sweated") {
			t.Error(text)
		}
	}
}

// The lines between hourly readings cross 6 °C 0.4 h after leaving 4 for 9 °C, and 8 °C after 0.8 h: above 6 are
// 60 + 2 × 0.6 = 61.2 h of 2400, above 8 are 60 + 2 × 0.2 = 60.4 h (arithmetic of straight lines).
func TestFirstLookSays(t *testing.T) {
	for _, c := range []struct {
		winter string
		unit   TemperatureUnit
		says   []string
	}{
		{"rich", Celsius, []string{
			"It mostly held: 97 of 100 hours between 2 and 6 °C.", "Known throughout",
			"It was warmer than 6 °C for 61 h, 60 h of it above 8 °C, most of it on 21–22 December",
			"the warmest was 9.0 °C on", "That went with 12.0 °C outside on average", "every stage called for all that time", "there was no colder air to bring in.",
			"The room's humidity was between 40 and 75 % throughout.",
			"Stage 1 and Stage 2 carried 97 of 100 hours alone; the larger ones were called for 61 h, mostly in December.",
		}},
		{"rich", Fahrenheit, []string{
			"97 of 100 hours between 36 and 43 °F.", "It was warmer than 43 °F for 61 h, 60 h of it above 46 °F", "the warmest was 48.2 °F",
		}},
		{"even", Celsius, []string{"It held: 100 of 100 hours between 2 and 6 °C.", "It was never warmer than 6 °C."}},
		{"thin", Celsius, []string{
			"It mostly held: 97 of 100 hours", "Anything colder than the dew point would have sweated",
			"What can't be told: whether the warm spells came with the weather (no temperature outside is known); what the fans did (no stage is set down).",
			"What would settle most: the days the bees went in and came out",
		}},
		{"no humidity", Celsius, []string{"What can't be told: whether it was damp or dry (no logger in the room recorded humidity)"}},
		{"limits by phase", Celsius, []string{"It held: 100 of 100 hours inside the limits of the phase.", "It was never warmer than the limit of the phase."}},
		{"humidity alone", Celsius, []string{
			"Whether it held can't be told: no logger in the room recorded temperature.", "The room's humidity was between 40 and 75 % throughout.",
			"What would settle most: a logger in the room that records temperature.",
		}},
		{"carried in", Celsius, []string{"What would settle most: the day the bees came out, so that only their time is judged."}},
		{"mostly unknown", Celsius, []string{
			"Whether it held can't be told: too few hours were recorded.", "What would settle most: the missing part of the room's record",
			"What can't be told: how much the small fans carried (too few hours were recorded).",
		}},
		{"bare", Celsius, []string{
			"Whether it held can't be told: there is no reading from the room.", "What would settle most: a logger file from inside the room.",
		}},
		{"recorded", Celsius, []string{"Stage 3 was called for", "and ran 0 h"}},
		{"two loggers", Celsius, []string{"(middle) to", "(door) on average: more apart than the loggers alone explain"}},
		{"frozen", Celsius, []string{"It was colder than 2 °C for", "the coldest was −3.0 °C on"}},
	} {
		in := winters[c.winter](t)
		all := strings.Join(textsOf(FirstLookOf(in, analysis.Judge(in), Units{Temperature: c.unit})), "\n")
		for _, want := range c.says {
			if !strings.Contains(all, want) {
				t.Errorf("%s in °%s lacks %q:\n%s", c.winter, c.unit, want, all)
			}
		}
	}
}

// What the files do not support must not be mentioned.
func TestFirstLookKeepsQuietOf(t *testing.T) {
	for winter, never := range map[string][]string{
		"thin":           {"outside on average", "wall was", "stage carried", "hives"},
		"no humidity":    {"sweated", "Humidity was", "wet for"},
		"mostly unknown": {"of 100 hours between", "It was warmer", "It was colder"},
		"bare":           {"0 h", "of 100 hours"},
		"even":           {"most of it on"},
	} {
		in := winters[winter](t)
		all := strings.Join(textsOf(FirstLookOf(in, analysis.Judge(in), Units{})), "\n")
		for _, words := range never {
			if strings.Contains(all, words) {
				t.Errorf("%s says %q:\n%s", winter, words, all)
			}
		}
	}
}

func TestFirstLookIsShortAndOrdered(t *testing.T) {
	for name, make := range winters {
		in := make(t)
		f := FirstLookOf(in, analysis.Judge(in), Units{})
		if n := len(f.Sentences); n > mostSentences {
			t.Errorf("%s: %d sentences below the headline", name, n)
		}
		for i := 1; i < len(f.Sentences); i++ {
			if a, b := f.Sentences[i-1], f.Sentences[i]; b.weight > a.weight {
				t.Errorf("%s: %q stands before the weightier %q", name, a.Text, b.Text)
			}
		}
	}
}

// The winter's wall: surface = −5 + 0.9 × 9 = 3.1 °C; air of 4 °C and 60 % has its dew point near −3 °C (ASHRAE
// Fundamentals, psychrometric table, 4 °C: 8.135 mbar × 0.6 = 4.88 mbar), so it is never wet.
func TestADryWallIsCalledDry(t *testing.T) {
	in := rich(t)
	all := strings.Join(textsOf(FirstLookOf(in, analysis.Judge(in), Units{})), "\n")
	if !strings.Contains(all, "The north wall was not wet for as much as an hour") {
		t.Error(all)
	}
}

// A surface of factor 0.1 is −5 + 0.1 × 9 = −4.1 °C in the cold, below the frost point of that air (about −2.9 °C by
// the same table over ice), so it carries frost through the cold weather.
func TestAWetWallIsNamedWithItsFrost(t *testing.T) {
	in := rich(t)
	in.Surfaces[0].Mid, in.Surfaces[0].Low, in.Surfaces[0].High = 0.1, 0.05, 0.15
	all := strings.Join(textsOf(FirstLookOf(in, analysis.Judge(in), Units{})), "\n")
	for _, want := range []string{"The north wall was wet for 23", "frost", "room's warmth reaches it (10 %, assumed)"} {
		if !strings.Contains(all, want) {
			t.Errorf("lacks %q:\n%s", want, all)
		}
	}
	in.Surfaces[0].Kind = "metal"
	all = strings.Join(textsOf(FirstLookOf(in, analysis.Judge(in), Units{})), "\n")
	if !strings.Contains(all, "Cold metal sweats first; it does not count") {
		t.Error(all)
	}
}

func TestEveryTextIsFitToRead(t *testing.T) {
	for name, make := range winters {
		for _, unit := range []TemperatureUnit{Celsius, Fahrenheit} {
			in := make(t)
			for _, text := range everyText(in, Units{Temperature: unit}) {
				fit(t, name+" in °"+string(unit), text)
			}
		}
	}
}

func fit(t *testing.T, where, text string) {
	t.Helper()
	for _, bad := range []string{"NaN", "null", "Inf", "nil", "%!", "!", "  ", "..", "−0 ", "−0.0", "_", "because", " ,", " ."} {
		if strings.Contains(text, bad) {
			t.Errorf("%s: %q holds %q", where, text, bad)
		}
	}
}

// everyText is all that the screens of a winter say.
func everyText(in analysis.Input, u Units) []string {
	r := analysis.Judge(in)
	f, h, s, tl := FirstLookOf(in, r, u), HeaderOf(in, r, u), StagesOf(in, r, u), TimelineOf(in, r, u)
	out := append(textsOf(f), h.Line, h.Noted, s.Sentence, s.Sure, s.Lacks, tl.Sentence, tl.Lacks)
	out = append(out, f.Cautions...)
	for _, a := range h.Answers {
		out = append(out, a.Question, a.Word, a.Figure, a.Sentence)
	}
	for _, row := range s.Table.Rows {
		out = append(out, row...)
	}
	for i := range s.Days {
		out = append(out, ReadDay(s.Days, i))
	}
	for _, l := range tl.Lanes {
		out = append(out, l.Title, l.Unit, l.Help)
	}
	return out
}

func TestTheOneThingThatWouldSettleMost(t *testing.T) {
	full := rich(t)
	for _, c := range []struct {
		name string
		edit func(*analysis.Input)
		want string
	}{
		{"no dates", func(in *analysis.Input) { in.BeesIn, in.BeesOut, in.Heads = nil, nil, nil }, "the days the bees went in"},
		{"no outdoor", func(in *analysis.Input) { in.Loggers = in.Loggers[:1] }, "a file of the temperature outside"},
		{"no stages", func(in *analysis.Input) { in.Stages = nil }, "at what temperatures each fan stage"},
		{"no surface", func(in *analysis.Input) { in.Surfaces = nil }, "naming the coldest wall"},
	} {
		in := full
		c.edit(&in)
		if got := newBarn(in, analysis.Judge(in), Units{}).settle(); !strings.Contains(got, c.want) {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}

// Two loggers checked in ice, ±0.3 K each, are good to 0.2 K together.
func TestLoggersCheckedApartAreSaidToBeBetterTogether(t *testing.T) {
	in := rich(t)
	in.Loggers[0].TempErrK, in.Loggers[0].TempApart = 0.3, true
	second := in.Loggers[0]
	second.Name = "second"
	in.Loggers = append(in.Loggers, second)
	if sure := plain(FirstLookOf(in, analysis.Judge(in), Units{}).Sure); !strings.Contains(sure, "these loggers together may read 0.2 °C too high or too low") {
		t.Error(sure)
	}
}
