package desk

import (
	"slices"
	"strings"
	"testing"
	"time"
)

// Three days at 60 °C of one logger among three are told of first on First look once somebody looked closely, with the way there; once
// they are left out, or kept, nothing is.
func TestFirstLookTellsOfReadingsThatCanHardlyBeRight(t *testing.T) {
	k := keeper(t)
	odd := func(n int, air float64) (time.Duration, float64) {
		if n >= 10*144 && n < 13*144 {
			return 0, 60
		}
		return 0, air
	}
	b := added(t, k, Book{}, together(t, t.TempDir(), map[string]func(int, float64) (time.Duration, float64){
		"a.csv": asItIs(0), "b.csv": odd, "c.csv": asItIs(0),
	})...)
	told := func(b Book) (s Sentence, ok bool) {
		v, _ := b.Barn(0, Units{})
		i := slices.IndexFunc(v.FirstLook.Sentences, func(s Sentence) bool { return strings.Contains(s.Text, "can hardly be right") })
		if i > 0 {
			t.Errorf("it is sentence %d", i)
		}
		return append(v.FirstLook.Sentences, Sentence{})[max(0, i)], i == 0
	}
	if s, ok := told(b); ok {
		t.Errorf("before anybody looked: %q", s.Text)
	}
	b = closely(t, k, b)
	s, ok := told(b)
	days := time.Duration(s.Look.To-s.Look.From) * time.Millisecond
	if !ok || !strings.Contains(s.Text, "b’s temperature on 23–25 November. Without them it ") || days < 71*time.Hour || days > 74*time.Hour {
		t.Errorf("%q, %v", s.Text, days)
	}
	if got := b.Shell().Files; got != (FilesRow{"3, readings are in doubt", MarkWatch}) {
		t.Errorf("the way to the files says %+v", got)
	}
	d := pageOf(t, b, "b.csv").Loggers[0].Doubts
	if len(d) == 0 {
		t.Fatal("nothing is doubted on Files")
	}
	if s, ok := told(closely(t, k, edited(t, k, b, d[0].Keep))); ok {
		t.Errorf("kept: %q", s.Text)
	}
	left := closely(t, k, edited(t, k, b, d[0].Take))
	if s, ok := told(left); ok {
		t.Errorf("left out: %q", s.Text)
	}
	if v, _ := left.Barn(0, Units{}); !strings.Contains(s.Text, "Without them "+lowerFirst(v.FirstLook.Headline)) {
		t.Errorf("said beforehand: %q; once they are left out: %q", s.Text, v.FirstLook.Headline)
	}
}
