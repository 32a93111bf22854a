package desk

import (
	"strings"
	"testing"
)

// A log of hours without a date, from noon to noon two days later: the day its name bears is proposed, another can be
// typed, and either is shown with where the last of its 49 rows then lies.
func TestTheDayOfTheFirstRowIsAsked(t *testing.T) {
	text := "time,temp (C)\n12:00,4.0\n"
	for h := 13; h <= 12+48; h++ {
		text += strings.Replace("HH:00,4.5\n", "HH", string(rune('0'+h%24/10))+string(rune('0'+h%24%10)), 1)
	}
	k := keeper(t)
	b := added(t, k, Book{}, written(t, t.TempDir(), "shed 2024-02-28.csv", text))
	name := b.Files().Files[0].Name
	p := pageOf(t, b, name)
	if len(p.Questions) != 1 || p.Questions[0].Typed == "" || !strings.Contains(p.Sentence, "hangs on the answer") || b.Files().Files[0].Note != "begun on which day?" {
		t.Fatalf("%+v", p)
	}
	o := p.Questions[0].Options
	if len(o) != 1 || o[0].Label != "28 February 2024" || plain(o[0].Preview) != "first reading 28 February 2024 12:00, 4.0 °C; last 1 March 2024 12:00" {
		t.Errorf("%+v", o)
	}
	option, preview, problem := b.Typed(name, p.Questions[0], "2024-12-30", Units{})
	if option != "2024-12-30" || plain(preview) != "first reading 30 December 2024 12:00, 4.0 °C; last 1 January 2025 12:00" || problem != "" {
		t.Errorf("%q, %q, %q", option, preview, problem)
	}
	for _, wrong := range []string{"30.12.2024", "2024-12-30 10:00"} {
		if option, _, problem := b.Typed(name, p.Questions[0], wrong, Units{}); option != "" || problem == "" {
			t.Errorf("%q is taken as %q", wrong, option)
		}
	}
	b = edited(t, k, b, Answered(name, p.Questions[0], option, true))
	if p = pageOf(t, b, name); !strings.Contains(plain(p.Sentence), "from 30 December 2024 12:00 to 1 January 2025 12:00, 49 rows") || len(p.Answers) != 1 || !strings.HasSuffix(p.Answers[0].Text, "You said: 30 December 2024.") {
		t.Errorf("%+v", p)
	}
}
