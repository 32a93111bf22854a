package desk

import (
	"fmt"
	"slices"
	"strings"

	"thawbook/analysis/calibration"
	"thawbook/analysis/series"
	"thawbook/app/engine"
	"thawbook/app/winter"
)

// alongsideOf are the suggestions on stretches in which a logger seems to have hung side by side with others.
func (b Book) alongsideOf(at Slot, u Units) (out []FileDoubt) {
	u.Zone = b.zone()
	for _, a := range b.looked.alongside {
		i := slices.Index(a.Slots, at)
		if i < 0 || b.alongsideAnswered(a) || slices.ContainsFunc(a.TempC, func(c calibration.Check) bool { return c.HalfWidth > tooWideK }) {
			continue
		}
		keep := winter.Exclusion{From: a.Span.From, To: a.Span.To, Reason: sideBySide}
		out = append(out, FileDoubt{
			Text: alongsideWords(a, i, u), Take: winter.AddChecks{Checks: checksOf(a)}, Keep: winter.Keep{At: at, Stretches: []winter.Exclusion{keep}},
			TakeIt: "They did: take it over for all", KeepIt: "They did not",
		})
	}
	return out
}

// alongsideAnswered says whether the keeper said already how it was with a stretch.
func (b Book) alongsideAnswered(a engine.Alongside) bool {
	return slices.ContainsFunc(a.Slots, func(s Slot) bool {
		l, _ := b.doc.Logger(s)
		taken := slices.ContainsFunc(l.Checks, func(c winter.Calibration) bool {
			return c.Method == sideBySide && c.At != nil && a.Span.From <= *c.At && *c.At < a.Span.To
		})
		return taken || slices.ContainsFunc(l.Kept, func(x winter.Exclusion) bool {
			return x.Reason == sideBySide && len(series.Intersect([]series.Span{{From: x.From, To: x.To}}, []series.Span{a.Span})) > 0
		})
	})
}

// alongsideWords say when which loggers seem to have hung side by side, and what each read against their mean.
func alongsideWords(a engine.Alongside, own int, u Units) string {
	var others, offs []string
	for i, name := range a.Names {
		if i != own {
			others = append(others, name)
		}
		offs = append(offs, name+" "+offWords(a, i, u))
	}
	more := ""
	if n := len(others) - mostNamed; n > 1 {
		others, more = others[:mostNamed], fmt.Sprintf(" and %d more", n)
	}
	with := listed(others)
	if more != "" {
		with = strings.Join(others, ", ") + more
	}
	if n := len(offs) - 2*mostNamed; n > 1 {
		offs = append(offs[:2*mostNamed], fmt.Sprintf("%d more", n))
	}
	return fmt.Sprintf("%s it kept its distance to %s more closely than later, as if they hung side by side. If they did, against their mean: %s. What all of them are off by together that can't tell.",
		capital(u.moments(a.Span)), with, strings.Join(offs, "; "))
}

// offWords are what a logger read against the mean of its group, with how sure that is.
func offWords(a engine.Alongside, i int, u Units) string {
	text := fmt.Sprintf("%s\u00a0±\u00a0%s", signedAs(-a.TempC[i].Offset, u.Diff), u.Diff(max(0.05, a.TempC[i].HalfWidth)))
	if a.RelHum != nil {
		points := func(v float64) string { return withUnit(number(100*v, 1), "points") }
		text += fmt.Sprintf(", %s\u00a0±\u00a0%s", signedAs(-a.RelHum[i].Offset, points), points(max(0.001, a.RelHum[i].HalfWidth)))
	}
	return text
}

// signedAs shows a difference with its sign.
func signedAs(v float64, shown func(float64) string) string {
	text := shown(v)
	if v > 0 && text != shown(0) {
		return "+" + text
	}
	return text
}

// checksOf are the checks of all loggers of a stretch. What one said and what the mean of all was stand in them.
func checksOf(a engine.Alongside) (out []winter.CheckOf) {
	for i, s := range a.Slots {
		c := calibrationOf(sideBySide, a.TempC[i], false)
		c.At = &a.Span.From
		if sureEnough(a.RelHum, i) {
			damp := calibrationOf(sideBySide, a.RelHum[i], true)
			c.SaidRelHum, c.TrueRelHum = damp.SaidRelHum, damp.TrueRelHum
		}
		out = append(out, winter.CheckOf{At: s, Check: c})
	}
	return out
}

// sureEnough says whether a check of humidity is there and narrow enough to lower a logger's error.
func sureEnough(all []calibration.Check, i int) bool {
	return i < len(all) && all[i].HalfWidth <= tooWideRelHum
}
