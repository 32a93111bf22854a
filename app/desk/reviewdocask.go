package desk

import (
	"path"
	"slices"

	"thawbook/app/engine"
)

// ReviewQuestionDoc is something only the keeper can know of some files, named without their folders. Those that wait for the answer are left out;
// the zone alone holds no file back.
type ReviewQuestionDoc struct {
	ID      string   `json:"id"`
	Text    string   `json:"text"`
	Files   []string `json:"files"`
	Options []string `json:"options"`
}

// questionDocs are the questions that a winter's files leave open, those with the same words and answers in one.
func questionDocs(r engine.Result) []ReviewQuestionDoc {
	out := []ReviewQuestionDoc{}
	for _, f := range r.Files {
		if f.Export == nil {
			continue
		}
		for _, q := range f.Export.Questions {
			i := slices.IndexFunc(out, func(o ReviewQuestionDoc) bool {
				return o.ID == q.ID && o.Text == QuestionOf(q.ID, q.Columns) && slices.Equal(o.Options, q.Options)
			})
			if i < 0 {
				i = len(out)
				out = append(out, ReviewQuestionDoc{ID: q.ID, Text: QuestionOf(q.ID, q.Columns), Options: append([]string{}, q.Options...)})
			}
			out[i].Files = append(out[i].Files, path.Base(f.Name))
		}
	}
	if len(r.ZoneOpen) > 0 {
		zone := ReviewQuestionDoc{ID: engine.Zone, Text: Question(engine.Zone), Options: []string{}}
		for _, name := range r.ZoneOpen {
			zone.Files = append(zone.Files, path.Base(name))
		}
		out = append(out, zone)
	}
	return out
}
