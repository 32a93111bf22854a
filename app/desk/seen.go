package desk

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"math"
	"strings"

	"thawbook/analysis"
	"thawbook/app/engine"
	"thawbook/app/winter/store"
)

// lastSeen is what is remembered of a winter's last review: of which document it was, by which versions, and the
// verdicts' figures. It says, after the program was updated, whether and why figures changed.
type lastSeen struct {
	Document string       `json:"document"` // SHA-256 of the document, in hex
	Program  string       `json:"program"`
	Rules    int          `json:"rules"`
	Reader   int          `json:"reader"`
	TZData   string       `json:"tzdata"`
	Figures  []seenFigure `json:"figures"`
}

// seenFigure is one figure of one barn's verdict.
type seenFigure struct {
	Barn, Question, Unit string
	Value                float64
}

// seenOf is what there is to remember of a book.
func (k *Keeper) seenOf(b Book) lastSeen {
	document, err := json.Marshal(b.doc)
	if err != nil {
		panic(err) // it was written to the file already
	}
	sum := sha256.Sum256(document)
	out := lastSeen{Document: hex.EncodeToString(sum[:]), Program: k.Program.Version, Rules: analysis.RulesVersion, Reader: engine.ReaderVersion, TZData: k.Program.TZData}
	for _, r := range b.Result.Barns {
		for _, q := range []struct {
			question string
			answer   analysis.Answer
		}{{"Held", r.Verdict.Held}, {"Damp", r.Verdict.Damp}, {"Dry", r.Verdict.Dry}, {"Fans", r.Verdict.Fans}} {
			if f := q.answer.Figure; f.OK {
				out.Figures = append(out.Figures, seenFigure{r.Barn, q.question, q.answer.Unit, f.Mid})
			}
		}
	}
	return out
}

// remember keeps what a review said and tells what has changed since, if that is the program's doing.
func (k *Keeper) remember(b Book) Fault {
	is := k.seenOf(b)
	text, err := json.Marshal(is)
	if err != nil {
		return Fault{}
	}
	before, err := k.store.Seen()
	if err != nil || string(before) == string(text) {
		return Fault{}
	}
	if k.store.Mode() == store.Writable {
		if err := k.store.See(text); err != nil {
			return Fault{Text: capital(err.Error()) + "."}
		}
	}
	var was lastSeen
	if json.Unmarshal(before, &was) != nil || was.Document != is.Document {
		return Fault{}
	}
	return changeOf(was, is)
}

// changeOf puts into words how the figures of one document differ between two versions of the program.
func changeOf(was, is lastSeen) Fault {
	var why []string
	for _, v := range []struct {
		differs bool
		what    string
	}{
		{was.Rules != is.Rules, fmt.Sprintf("the rules of the figures are others (%d, now %d)", was.Rules, is.Rules)},
		{was.Reader != is.Reader, fmt.Sprintf("files are read otherwise (%d, now %d)", was.Reader, is.Reader)},
		{was.TZData != is.TZData, fmt.Sprintf("the time zones' rules are others (%s, now %s)", was.TZData, is.TZData)},
	} {
		if v.differs {
			why = append(why, v.what)
		}
	}
	if len(why) == 0 && was.Program != is.Program {
		why = append(why, "the program was updated")
	}
	changes := changedFigures(was.Figures, is.Figures)
	if len(changes) == 0 || len(why) == 0 {
		return Fault{}
	}
	return Fault{Text: "Figures changed because " + strings.Join(why, " and ") + ": " + strings.Join(changes, "; ") + ".", Next: "Nothing you gave was changed."}
}

// changedFigures lists what a figure was and is now.
func changedFigures(was, is []seenFigure) (out []string) {
	key := func(f seenFigure) string { return f.Barn + ", " + strings.ToLower(f.Question) }
	before := map[string]seenFigure{}
	for _, f := range was {
		before[key(f)] = f
	}
	for _, f := range is {
		old, known := before[key(f)]
		delete(before, key(f))
		if known && math.Abs(old.Value-f.Value) <= 1e-9*math.Max(1, math.Abs(f.Value)) {
			continue
		}
		text := "can't be told"
		if known {
			text = inUnit(old)
		}
		out = append(out, fmt.Sprintf("%s: %s, now %s", key(f), text, inUnit(f)))
	}
	for _, f := range was {
		if _, left := before[key(f)]; left {
			out = append(out, fmt.Sprintf("%s: %s, now can't be told", key(f), inUnit(f)))
		}
	}
	return out
}

// inUnit is a figure with its unit.
func inUnit(f seenFigure) string {
	if f.Unit == "percent" {
		return fmt.Sprintf("%.1f %%", f.Value)
	}
	return fmt.Sprintf("%.1f h", f.Value)
}
