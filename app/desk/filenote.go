package desk

import (
	"cmp"
	"fmt"
	"slices"

	"thawbook/analysis/series"
	"thawbook/app/engine"
)

// FileNoteLine is a note on a file that leads to its line there; Line is 0 where it has none.
type FileNoteLine struct {
	Text   string
	Mark   Mark
	Line   int
	weight int
	count  int
}

// Notes weigh what they may cost the keeper: a choice he should check, readings lost, a blemish.
const (
	blemish    = iota
	worthALook // readings were lost or may stand at a wrong time
	toCheck    // something was chosen for him
)

var noteWeights = map[string]int{
	"unknown_answer": toCheck, engine.SeveralLoggers: toCheck, engine.NothingChosen: toCheck, engine.OfNoStage: toCheck, engine.SameFile: toCheck, engine.ClockContradicts: toCheck, "typical_year": toCheck, "no_times": toCheck, "same_times": toCheck, "half_days": toCheck, engine.ClockZoneUnknown: toCheck,
	"unit_by_values": worthALook, "graded_tenths": worthALook, "bad_time": worthALook, "unreadable_cell": worthALook, "out_of_order": worthALook, "clock_anew": worthALook, "clock_unset": worthALook, "cut_line": worthALook,
	engine.ReadoutsDiffer: worthALook, engine.ClockImpossibleHour: worthALook, engine.SameTimeDropped: worthALook, engine.NoState: worthALook,
	engine.DoubtSwap: worthALook, engine.DoubtOff: worthALook,
}

// shareThatMatters is the share of a file's rows below which lost ones are a blemish.
const shareThatMatters = 0.001

// told elsewhere on the screen: by the questions, the refusal and the line on the clock.
var toldElsewhere = []string{engine.WaitsForAnswer, engine.FileRefused, engine.ClockZoneAssumed}

// mostOfAKind is how many notes of one kind are told one by one, column by column; of more the first stands for all.
const mostOfAKind = 3

// fileNotes are the notes on a file, worst first, those that cost most before the others: the reader's, a few of
// each kind, and those on joining it with the others.
func (b Book) fileNotes(f engine.File) (out []FileNoteLine) {
	for _, kind := range ofAKind(f.Export.Remarks) {
		out = append(out, toldOf(kind, f.Export.Rows)...)
	}
	var joining []series.Remark
	for _, r := range slices.Concat(b.Result.Remarks, b.looked.doubts) {
		if slices.Contains(r.Args, f.Name) && !slices.Contains(toldElsewhere, r.Code) {
			joining = append(joining, r)
		}
	}
	for _, kind := range ofAKind(joining) {
		for i, r := range kind[:min(len(kind), mostOfAKind)] {
			line := FileNoteLine{Text: windowNote(r), weight: noteWeights[r.Code]}
			if more := len(kind) - mostOfAKind; more > 0 && i == mostOfAKind-1 {
				line.Text += fmt.Sprintf(" And %d more of the kind.", more)
			}
			out = append(out, line)
		}
	}
	slices.SortStableFunc(out, func(a, b FileNoteLine) int {
		return cmp.Or(cmp.Compare(b.weight, a.weight), cmp.Compare(b.count, a.count))
	})
	for i := range out {
		if out[i].weight >= worthALook {
			out[i].Mark = MarkWatch
		}
	}
	return out
}

// ofAKind gathers remarks by their code, in the order the codes first come.
func ofAKind(all []series.Remark) (out [][]series.Remark) {
	at := map[string]int{}
	for _, r := range all {
		i, found := at[r.Code]
		if !found {
			i = len(out)
			at[r.Code] = i
			out = append(out, nil)
		}
		out[i] = append(out[i], r)
	}
	return out
}

// toldOf are the lines on remarks of one kind on a file of so many rows: one each, or of many the first with how
// often the same was met in how many other columns.
func toldOf(kind []series.Remark, rows int) (out []FileNoteLine) {
	total := 0
	for _, r := range kind {
		total += r.Count
	}
	line := func(r series.Remark, count int) FileNoteLine {
		n := FileNoteLine{Text: FileNote(r), Line: r.Line, weight: noteWeights[r.Code], count: count}
		if lossOfRows[r.Code] && float64(count) < shareThatMatters*float64(rows) {
			n.weight = blemish
		}
		return n
	}
	if more := len(kind) - 1; more >= mostOfAKind {
		n := line(kind[0], total)
		n.Text += fmt.Sprintf(" The same in %d more columns, %d times.", more, total-kind[0].Count)
		return []FileNoteLine{n}
	}
	for _, r := range kind {
		out = append(out, line(r, r.Count))
	}
	return out
}

// lossOfRows are the notes that count rows or cells left out.
var lossOfRows = map[string]bool{"bad_time": true, "unreadable_cell": true}
