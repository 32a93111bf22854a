package importers

import (
	"slices"

	"thawbook/analysis/series"
)

// The questions a file can leave open, in the order they are asked, and the answers there are. An answer to
// another question is not for the importers. Some take what is typed besides, or instead.
var answerable = []struct {
	id      string
	options []string
	typed   func(answer string) bool // nil: nothing
}{
	{dayMonth, []string{string(dmy), string(mdy), string(ymd)}, nil},
	{dayZero, dayZeros, nil},
	{temperatureUnit, nil, isUnitSaid},
	{pairing, []string{pairsInOrder, pairsApart}, isGroups},
	{decimalMark, []string{".", ","}, nil},
	{humidityUnit, []string{"percent", "fraction"}, nil},
	{yearQuestion, nil, func(answer string) bool { return isYear([]byte(answer)) }},
	{firstDay, nil, isDay},
	{loneQuantity, append(slices.Clone(loneQuantities), tsQuantities...), nil},
	{swappedColumns, nil, isSwaps},
}

func isGroups(answer string) bool {
	_, ok := ParseGroups(answer)
	return ok
}

// settleAnswers keeps the answers that are among the options and remarks on the others.
func settleAnswers(given Answers, n *notes) Answers {
	kept := Answers{"zone": given["zone"]}
	for _, q := range answerable {
		answer, said := given[q.id]
		if !said {
			continue
		}
		if slices.Contains(q.options, answer) || q.typed != nil && q.typed(answer) {
			kept[q.id] = answer
		}
		if kept[q.id] == "" {
			n.add(series.Remark{Code: RemarkNoAnswer, Args: []string{q.id, answer}})
		}
	}
	return kept
}
