package desk

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/calibration"
	"thawbook/analysis/series"
	"thawbook/app/engine"
	"thawbook/app/winter"
)

// CheckWords are the ways a logger is held against something known.
var CheckWords = []string{"in melting ice", "over table salt", "over magnesium chloride", "over potassium chloride"}

// salts are the salts of those ways; ice is none.
var salts = map[string]calibration.SaltName{
	CheckWords[1]: calibration.SodiumChloride, CheckWords[2]: calibration.MagnesiumChloride, CheckWords[3]: calibration.PotassiumChloride,
}

// CheckHint says how such a check is done, and what to mind; caution is "" for ice.
func CheckHint(way string) (hint, caution string) {
	if way == CheckWords[0] {
		return HelpLine("ice"), ""
	}
	return HelpLine("salt"), cautionSalt
}

// FileCheck is what a check found, in words, and the edit that takes it over.
type FileCheck struct {
	Text    string
	Caution string
	Take    winter.Edit // nil where nothing can be taken from it
}

// CheckSpan is the time of a check as typed; problem is a sentence where it can't be read so.
func (b Book) CheckSpan(from, to string) (s Span, problem string) {
	start, err := b.moment(from)
	if err != nil {
		return s, Sentenced(err)
	}
	end, err := b.moment(to)
	switch {
	case err != nil:
		return s, Sentenced(err)
	case start == nil || end == nil:
		return s, "Say from when to when it was there, with the times: 2024-11-12 10:00 and 2024-11-12 11:30."
	case *end <= *start:
		return s, "The check can't end before it begins."
	}
	return Span{From: *start, To: *end}, ""
}

// Check looks what a logger said while it was held against something known. The error is the context's, or one
// sentence.
func (k *Keeper) Check(ctx context.Context, b Book, at Slot, way string, s Span, u Units) (FileCheck, error) {
	if err := k.meant(b); err != nil || k.store == nil {
		return FileCheck{}, err
	}
	bare, err := engine.Bare(ctx, k.store.Winter(), k.files, k.cache, []Slot{at})
	if err != nil {
		return FileCheck{}, err
	}
	u.Zone = b.zone()
	if salt, ok := salts[way]; ok {
		c := saltCheck(bare[0], s, salt, way, at, u)
		c.Caution = cautionSalt
		return c, nil
	}
	return iceCheck(bare[0], s, at, u), nil
}

// The most a check may be off itself and still lower a logger's error to what the house rules give a checked one.
const tooWideK, tooWideRelHum = 0.3, 0.03

func iceCheck(l analysis.Logger, s Span, at Slot, u Units) FileCheck {
	if l.TempC.Slice(s).Len() == 0 {
		return FileCheck{Text: "It recorded no temperature between these times, so ice says nothing about it."}
	}
	c, ok := calibration.Ice(l.TempC, s, l.TempStepK)
	switch {
	case !ok:
		return FileCheck{Text: fmt.Sprintf("Between these times it never stayed close to 0 °C and steady for %s, so nothing can be taken from it. Seal it in a bag, bury it in crushed ice with a little water, and leave it there longer.", needed(l.TempC, calibration.IceMS))}
	case c.HalfWidth > tooWideK:
		return FileCheck{Text: fmt.Sprintf("In the ice its readings wandered by %s, too much to take anything from. Use more ice and less water, and leave it alone.", u.Diff(2*c.HalfWidth))}
	}
	text := fmt.Sprintf("%s it said %s in melting ice, which is %s: %s.", capital(u.moments(c.Span)), u.Temp(c.Said), u.Temp(0), tooMuch(-c.Offset, u.Diff))
	text += fmt.Sprintf(" Give or take %s. Taken over, all its temperatures are set right by that, and its error counts as %s instead of %s.", u.Diff(math.Max(0.05, c.HalfWidth)), u.Diff(0.3), u.Diff(0.5))
	return FileCheck{Text: text, Take: takeCheck(at, "ice", c, false)}
}

func saltCheck(l analysis.Logger, s Span, salt calibration.SaltName, way string, at Slot, u Units) FileCheck {
	if l.RelHum.Slice(s).Len() == 0 {
		return FileCheck{Text: "It recorded no humidity between these times, so a salt says nothing about it."}
	}
	temp := l.TempC.Bin(s)
	c, ok := calibration.Salt(l.TempC, l.RelHum, s, salt, l.RelHum.SmallestStep())
	switch {
	case math.IsNaN(calibration.RelHum(salt, temp.Weighted())):
		return FileCheck{Text: "A salt holds a known humidity from 0 to 50 °C, and the logger was not known to be in that range. Keep the jar where it is warmer."}
	case !ok:
		return FileCheck{Text: fmt.Sprintf("Between these times its humidity never stayed steady near %s for %s, so nothing can be taken from it. Close the jar well, keep it where the temperature does not change, and leave it for a day.", Percent(calibration.RelHum(salt, temp.Weighted())), needed(l.RelHum, calibration.SaltMS))}
	case c.HalfWidth > tooWideRelHum:
		return FileCheck{Text: "In the jar its readings wandered too much to take anything from. Keep the jar where the temperature does not change."}
	}
	points := func(v float64) string { return withUnit(number(100*v, 1), "points") }
	text := fmt.Sprintf("%s it said %s %s, which holds %s at %s (Greenspan 1977): %s.", capital(u.moments(c.Span)), tenths(c.Said), way, tenths(c.True), u.Temp(temp.Weighted()), tooMuch(-c.Offset, points))
	text += fmt.Sprintf(" Give or take %s. Taken over, all its humidities are set right by that, and its error counts as 3 points instead of 5.", points(c.HalfWidth))
	return FileCheck{Text: text, Take: takeCheck(at, "salt", c, true)}
}

// needed is how long a logger must be steady for a check: the time it needs to settle, or the readings that are counted.
func needed(c series.Curve, least int64) string {
	minutes := float64(max(least, calibration.SteadyReadings*c.Interval())) / minuteMS
	return minutesWords(minutes)
}

// tenths shows a share in percent to a tenth.
func tenths(share float64) string { return withUnit(number(100*share, 1), "%") }

// tooMuch is "it reads 0.4 K too high", or that it reads right.
func tooMuch(off float64, shown func(float64) string) string {
	switch size := shown(math.Abs(off)); {
	case size == shown(0):
		return "it reads right"
	case off > 0:
		return "it reads " + size + " too high"
	default:
		return "it reads " + size + " too low"
	}
}

// moments is "from 10:20 to 11:20 on 11 November", or from one day's moment to another's.
func (u Units) moments(s Span) string {
	from, to := u.local(s.From), u.local(s.To)
	if from.Format(time.DateOnly) == to.Format(time.DateOnly) {
		return "from " + from.Format("15:04") + " to " + to.Format("15:04") + " on " + from.Format("2 January")
	}
	return "from " + from.Format("2 January 15:04") + " to " + to.Format("2 January 15:04")
}

// takeCheck is the edit that sets a check down.
func takeCheck(at Slot, method string, c calibration.Check, humidity bool) winter.Edit {
	return winter.AddChecks{Checks: []winter.CheckOf{{At: at, Check: calibrationOf(method, c, humidity)}}}
}

// calibrationOf is a check as it is kept.
func calibrationOf(method string, c calibration.Check, humidity bool) winter.Calibration {
	said, meant := rounded(c.Said), rounded(c.True)
	out := winter.Calibration{At: &c.Span.From, Method: method}
	if humidity {
		out.SaidRelHum, out.TrueRelHum = &said, &meant
		return out
	}
	out.SaidC, out.TrueC = &said, &meant
	return out
}

// rounded is a value to four digits behind the point: far finer than any logger.
func rounded(v float64) float64 { return math.Round(v*1e4) / 1e4 }

// checked are the checks of a logger, each with the press that takes it back.
func (b Book) checked(l winter.Logger, at Slot, u Units) (out []LeftOut) {
	u.Zone = b.zone()
	for _, c := range l.Checks {
		var parts []string
		if c.SaidC != nil && c.TrueC != nil {
			parts = append(parts, tooMuch(*c.SaidC-*c.TrueC, u.Diff))
		}
		if c.SaidRelHum != nil && c.TrueRelHum != nil {
			parts = append(parts, tooMuch(*c.SaidRelHum-*c.TrueRelHum, func(v float64) string { return withUnit(number(100*v, 1), "points") }))
		}
		text := "Checked " + methodShort(c.Method)
		if c.At != nil {
			text += " on " + u.DateYear(*c.At)
		}
		out = append(out, LeftOut{text + ": " + strings.Join(parts, ", ") + ".", "Take it back", winter.RemoveChecks{Checks: b.sameCheck(c, at)}})
	}
	return out
}

// methodShort is a check's way in words.
func methodShort(method string) string {
	if word, ok := methodWordsOf[method]; ok {
		return word
	}
	return method
}

// sameCheck are the checks that were set down with one: of loggers side by side all of them.
func (b Book) sameCheck(c winter.Calibration, at Slot) (out []winter.CheckOf) {
	if c.Method != sideBySide || c.At == nil {
		return []winter.CheckOf{{At: at, Check: c}}
	}
	for list := OutdoorList; list < len(b.doc.Barns); list++ {
		all, _ := b.doc.List(list)
		for i, l := range all {
			k := slices.IndexFunc(l.Checks, func(o winter.Calibration) bool { return o.Method == sideBySide && o.At != nil && *o.At == *c.At })
			if k >= 0 {
				out = append(out, winter.CheckOf{At: Slot{List: list, Index: i}, Check: l.Checks[k]})
			}
		}
	}
	return out
}

const sideBySide = "side by side"
