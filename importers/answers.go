package importers

import "thawbook/analysis/series"

// The questions a file can leave open, in the order they are asked, and the answers there are. An answer to
// another question is not for the importers. A question without options takes a year, from 1900 to 2199; that of
// pairing takes groups of columns too.
var answerable = []struct {
	id      string
	options []string
}{
	{dayMonth, []string{string(dmy), string(mdy), string(ymd)}},
	{temperatureUnit, []string{"degC", "degF", "K"}},
	{pairing, []string{pairsInOrder, pairsApart}},
	{decimalMark, []string{".", ","}},
	{humidityUnit, []string{"percent", "fraction"}},
	{yearQuestion, nil},
}

// settleAnswers keeps the answers that are among the options and remarks on the others.
func settleAnswers(given Answers, n *notes) Answers {
	kept := Answers{"zone": given["zone"]}
	for _, q := range answerable {
		answer, said := given[q.id]
		if !said {
			continue
		}
		if q.options == nil && isYear([]byte(answer)) {
			kept[q.id] = answer
		}
		if _, ok := ParseGroups(answer); ok && q.id == pairing {
			kept[q.id] = answer
		}
		for _, o := range q.options {
			if answer == o {
				kept[q.id] = answer
			}
		}
		if kept[q.id] == "" {
			n.add(series.Remark{Code: RemarkNoAnswer, Args: []string{q.id, answer}})
		}
	}
	return kept
}
