package desk

import (
	"strings"
	"time"

	"thawbook/analysis/series"
	"thawbook/app/engine"
)

// firstDay is the question on which day the first row of a file of times of day lies.
const firstDay = "first_day"

const exampleDay, dayTyped = "2024-11-12", "2006-01-02"

// optionDay is a day that is an answer, in words.
func optionDay(option string) (words string, ok bool) {
	day, err := time.Parse(dayTyped, option)
	return day.Format("2 January 2006"), err == nil
}

// Typed is the answer that a text gives to a file's question, with what the file would then say; problem is a sentence
// where it gives none, and all are "" while nothing is typed.
func (b Book) Typed(name string, q FileQuestion, text string, u Units) (option, preview, problem string) {
	all := b.files()
	i := fileNamed(all, name)
	switch {
	case i < 0 || strings.TrimSpace(text) == "":
		return "", "", ""
	case q.ID == engine.Zone:
		return b.typedZone(all[i], strings.TrimSpace(text))
	}
	return typedDay(all[i], text, u)
}

// typedDay is Typed for the day of the first row.
func typedDay(f engine.File, text string, u Units) (option, preview, problem string) {
	at, err := momentIn(text, time.UTC)
	switch {
	case err != nil:
		return "", "", Sentenced(err)
	case *at%(24*series.HourMS) != 0:
		return "", "", "The day alone, please: the rows have their times."
	}
	p := onDay(f, *at)
	return time.UnixMilli(*at).UTC().Format(dayTyped), p.words(u), ""
}

// onDay is what a file of times of day says when its first row lies on a day.
func onDay(f engine.File, midnight int64) (p preview) {
	p.id = firstDay
	p.read(f)
	p.firstMS, p.lastMS = p.firstMS+midnight-engine.Undated, p.lastMS+midnight-engine.Undated
	return p
}
