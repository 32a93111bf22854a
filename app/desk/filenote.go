package desk

import (
	"cmp"
	"slices"

	"thawbook/app/engine"
)

// FileNoteLine is a note on a file that leads to its line there; Line is 0 where it has none.
type FileNoteLine struct {
	Text   string
	Mark   Mark
	Line   int
	weight int
}

// Notes weigh what they may cost the keeper: a choice he should check, readings lost, a blemish.
const (
	blemish    = iota
	worthALook // readings were lost or may stand at a wrong time
	toCheck    // something was chosen for him
)

var noteWeights = map[string]int{
	"unknown_answer": toCheck, engine.SeveralLoggers: toCheck, engine.NothingChosen: toCheck, engine.SameFile: toCheck, engine.ClockContradicts: toCheck, "typical_year": toCheck, "half_days": toCheck, engine.ClockZoneUnknown: toCheck,
	"unit_by_values": worthALook, "bad_time": worthALook, "unreadable_cell": worthALook, "out_of_order": worthALook, "clock_anew": worthALook, "cut_line": worthALook,
	engine.ReadoutsDiffer: worthALook, engine.ClockImpossibleHour: worthALook, engine.SameTimeDropped: worthALook, engine.NoState: worthALook,
	engine.DoubtSwap: worthALook, engine.DoubtOff: worthALook,
}

// shareThatMatters is the share of a file's rows below which lost ones are a blemish.
const shareThatMatters = 0.001

// told elsewhere on the screen: by the questions, the refusal and the line on the clock.
var toldElsewhere = []string{engine.WaitsForAnswer, engine.FileRefused, engine.ClockZoneAssumed}

// fileNotes are the notes on a file, worst first: the reader's, one for each kind and column, and those on
// joining it with the others.
func (b Book) fileNotes(f engine.File) (out []FileNoteLine) {
	for _, r := range f.Export.Remarks {
		w := noteWeights[r.Code]
		if lossOfRows[r.Code] && float64(r.Count) < shareThatMatters*float64(f.Export.Rows) {
			w = blemish
		}
		out = append(out, FileNoteLine{Text: FileNote(r), Line: r.Line, weight: w})
	}
	for _, r := range slices.Concat(b.Result.Remarks, b.looked.doubts) {
		if slices.Contains(r.Args, f.Name) && !slices.Contains(toldElsewhere, r.Code) {
			out = append(out, FileNoteLine{Text: ReviewNote(r), weight: noteWeights[r.Code]})
		}
	}
	slices.SortStableFunc(out, func(a, b FileNoteLine) int { return cmp.Compare(b.weight, a.weight) })
	for i := range out {
		if out[i].weight >= worthALook {
			out[i].Mark = MarkWatch
		}
	}
	return out
}

// lossOfRows are the notes that count rows or cells left out.
var lossOfRows = map[string]bool{"bad_time": true, "unreadable_cell": true}
