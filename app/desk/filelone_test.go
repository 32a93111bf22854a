package desk

import (
	"fmt"
	"testing"
)

// A log of one column that nothing names waits for what it holds, each answer shown; said once it holds for all files
// written so.
func TestWhatAColumnHoldsIsAsked(t *testing.T) {
	lone := func(day int) (text string) {
		for h := range 24 {
			text += fmt.Sprintf("2024-11-%02d %02d:00;%d\n", day, h, 60+h)
		}
		return text
	}
	k, dir := keeper(t), t.TempDir()
	b := added(t, k, Book{}, written(t, dir, "a.csv", lone(13)), written(t, dir, "b.csv", lone(14)))
	p := pageOf(t, b, "a.csv")
	if len(p.Questions) != 1 || b.Files().Files[0].Note != "temperature or humidity?" || len(p.Questions[0].Alike) != 1 {
		t.Fatalf("%+v", p.Questions)
	}
	q := p.Questions[0]
	want := []string{
		"Temperature: first reading 13 November 2024 00:00, 15.6 °C; last 13 November 2024 23:00", // 60 °F, for 83 °C has no air
		"Humidity: first reading 13 November 2024 00:00, 60 %; last 13 November 2024 23:00",
		"Neither: no reading could be used",
	}
	for i, o := range q.Options {
		if got := plain(o.Label + ": " + o.Preview); got != want[i] {
			t.Errorf("got  %s\nwant %s", got, want[i])
		}
	}
	b = edited(t, k, b, Answered("a.csv", q, "relative_humidity", false))
	if got := b.Files().Sentence; got != "2 files were read; no question is open." {
		t.Error(got)
	}
	later := added(t, k, b, written(t, dir, "c.csv", lone(15)))
	if p := pageOf(t, later, "c.csv"); len(p.Questions) > 0 || len(p.Answers) != 1 {
		t.Errorf("%+v, %+v", p.Questions, p.Answers)
	}
}
