package desk

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"thawbook/analysis/series"
	"thawbook/app/engine"
)

// settingNote is the sentence for what the keeper set down that moves readings or leaves them out, or that may be set
// down of a clock; "" for another note.
func settingNote(r series.Remark) string {
	arg := func(i int) string {
		if i < len(r.Args) {
			return r.Args[i]
		}
		return ""
	}
	n := max(1, r.Count)
	switch r.Code {
	case engine.LeftOut:
		return fmt.Sprintf("Logger %s: %s of %s left out by you%s.", arg(0), plural(number(float64(n), 0), "reading", "readings"), arg(1), becauseOf(arg(2)))
	case engine.ClockMoved:
		minutes, _ := strconv.ParseFloat(arg(1), 64)
		return fmt.Sprintf("Logger %s: its clock is taken to be %s, as you took over; its readings are moved by that.", arg(0), aheadWords(minutes))
	case engine.ClockAnchored:
		return fmt.Sprintf("Logger %s: its times are set right by %s of yours.", arg(0), plural(strconv.Itoa(n), "comparison with a watch", "comparisons with a watch"))
	case engine.Corrected:
		return fmt.Sprintf("Logger %s: %s is added to its %s, %s.", arg(0), offsetWords(arg(2), arg(1)), arg(1), methodWords(arg(3)))
	case engine.DoubtClock, engine.DoubtClockHours:
		return "Logger " + arg(0) + ": its" + strings.TrimPrefix(clockDoubt(r), "Its")
	}
	return ""
}

// becauseOf is ": it stood still", empty where no reason was set down.
func becauseOf(reason string) string {
	if word := reasonWord(reason); word != "" {
		return ": " + word
	}
	return ""
}

// aheadWords are "2 h ahead", "37 min behind".
func aheadWords(minutes float64) string {
	side := "ahead"
	if minutes < 0 {
		side, minutes = "behind", -minutes
	}
	return minutesWords(minutes) + " " + side
}

// minutesWords are "2 h", "1 h 35 min", "37 min".
func minutesWords(minutes float64) string {
	whole := math.Round(minutes)
	hours := math.Floor(whole / 60)
	rest := whole - 60*hours
	switch {
	case hours == 0:
		return withUnit(number(rest, 0), "min")
	case rest == 0:
		return withUnit(number(hours, 0), "h")
	}
	return withUnit(number(hours, 0), "h") + " " + withUnit(number(rest, 0), "min")
}

// offsetWords are "+0.3 K", "−2 points".
func offsetWords(offset, quantity string) string {
	v, _ := strconv.ParseFloat(offset, 64)
	unit := "K"
	if quantity == "humidity" {
		unit = "points"
	}
	return withUnit(signed(v), unit)
}

// signed is a number with its sign, a true minus, to two digits at most.
func signed(v float64) string {
	v = math.Round(100*v) / 100
	if v > 0 {
		return "+" + shortest(v)
	}
	return shortest(v)
}

// methodWordsOf are the ways of a check.
var methodWordsOf = map[string]string{"ice": "in melting ice", "salt": "over a salt", sideBySide: "beside other loggers"}

// methodWords say by what an offset was found.
func methodWords(methods string) string {
	if methods == "set" {
		return "as you set it"
	}
	var parts []string
	for m := range strings.SplitSeq(methods, ", ") {
		parts = append(parts, methodShort(m))
	}
	return "as its check " + listed(parts) + " found"
}

// clockDoubt says how a logger's clock seems to stand to the others', by how much that may be off, and how sure it is.
func clockDoubt(r series.Remark) string {
	if len(r.Args) < 5 {
		return ""
	}
	ahead, _ := strconv.ParseFloat(r.Args[2], 64)
	if r.Code == engine.DoubtClockHours {
		ahead *= 60
	}
	half, _ := strconv.ParseFloat(r.Args[3], 64)
	agreeing, _ := strconv.Atoi(r.Args[4])
	text := fmt.Sprintf("Its clock seems to be %s of %s", aheadWords(ahead), r.Args[1]+"'s")
	if agreeing > 1 {
		text = fmt.Sprintf("Its clock seems to be %s of the %d others'", aheadWords(ahead), agreeing)
	}
	text += ", give or take " + minutesWords(max(1, half)) + ": moved by that, they rise and fall together."
	if r.Code == engine.DoubtClockHours {
		text += " Whole hours are most often a time zone or summer time."
	}
	if agreeing > 1 {
		return text + " With so many agreeing that is hardly in doubt."
	}
	return text + " Which of the two is right can't be told from two; a watch would settle it."
}
