package desk

import (
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

// TypedDay is the answer that a day as typed gives to the question on which day a file's first row lies, with what the
// file would then say; problem is a sentence where it is no day, and both are "" while nothing is typed.
func (b Book) TypedDay(name, text string, u Units) (option, preview, problem string) {
	at, err := momentIn(text, time.UTC)
	all := b.files()
	i := fileNamed(all, name)
	switch {
	case err != nil:
		return "", "", Sentenced(err)
	case at == nil || i < 0:
		return "", "", ""
	case *at%(24*series.HourMS) != 0:
		return "", "", "The day alone, please: the rows have their times."
	}
	p := onDay(all[i], *at)
	return time.UnixMilli(*at).UTC().Format(dayTyped), p.words(u), ""
}

// onDay is what a file of times of day says when its first row lies on a day.
func onDay(f engine.File, midnight int64) (p preview) {
	p.id = firstDay
	p.read(f)
	p.firstMS, p.lastMS = p.firstMS+midnight-engine.Undated, p.lastMS+midnight-engine.Undated
	return p
}
