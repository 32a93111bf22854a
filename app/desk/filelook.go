package desk

import (
	"cmp"
	"context"
	"slices"
	"strconv"
	"strings"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/engine"
	"thawbook/app/winter"
)

// looked is what is shown of the winter's files besides what the review made of them.
type looked struct {
	tray     []engine.File         // the files of loggers that hang nowhere yet
	heads    map[string][]TextLine // the first rows of a file, with the lines above them
	previews map[string][]preview  // what a file that waits would say, by the answer

	likeness map[string]engine.Likeness // of loggers that hang nowhere, with one that does

	closely   bool // odd readings were looked for
	proposals []engine.Proposal
	without   []analysis.Review // the barns without the readings that can hardly be right; none where there are no such
	alongside []engine.Alongside
	doubts    []series.Remark // those that are no logger's alone
}

// preview is what a file would say with an answer: its first reading, when its last row is, and all it reads between.
type preview struct {
	id, option      string
	quantity, unit  string  // no quantity when there would be no reading, no unit while that is asked too
	firstMS, lastMS int64   // as the clock showed it
	val, low, high  float64 // in house units
	pairs           []pair
	loggers         map[int]string // by the column, counted from 1
}

// pair is the first temperature and humidity of a logger of the file, nil where it has none.
type pair struct {
	logger        string
	tempC, relHum *float64
}

// Of a head so many lines are shown above the first row and below it.
const headAbove, headBelow = 2, 4

// look reads what the Files screen shows of the winter a review was made of. The error is the context's.
func (k *Keeper) look(ctx context.Context, b *Book) error {
	l := looked{heads: map[string][]TextLine{}, previews: map[string][]preview{}}
	if len(b.Result.Winter.Tray) > 0 {
		if err := k.lookAtTray(ctx, b.Result, &l); err != nil {
			return err
		}
	}
	for _, f := range slices.Concat(b.Result.Files, l.tray) {
		l.heads[f.Name] = k.head(ctx, f)
		if f.Export != nil && len(f.Export.Questions) > 0 {
			all, err := k.preview(ctx, b.Result.Winter, f, yearsOf(slices.Concat(b.Result.Files, l.tray)))
			if err != nil {
				return err
			}
			l.previews[f.Name] = all
		}
	}
	b.looked = l
	return ctx.Err()
}

// lookAtTray reads the files of loggers that hang nowhere, and with which of those that do they go up and down.
func (k *Keeper) lookAtTray(ctx context.Context, r engine.Result, l *looked) error {
	w := r.Winter
	w.Barns, w.Outdoor = []winter.Barn{{Loggers: w.Tray}}, nil
	tray, err := engine.Review(ctx, w, k.files, &k.aside, nil)
	if err != nil {
		return err
	}
	l.tray = slices.DeleteFunc(tray.Files, func(f engine.File) bool { return fileNamed(r.Files, f.Name) >= 0 })
	l.likeness = map[string]engine.Likeness{}
	for i, logger := range tray.Inputs[0].Loggers {
		if err := ctx.Err(); err != nil {
			return err
		}
		if like, ok := engine.Resembling(r, logger); ok {
			l.likeness[waitingKey(w.Tray[i])] = like
		}
	}
	return nil
}

// waitingKey tells a logger that hangs nowhere from the others.
func waitingKey(l winter.Logger) string {
	return strings.Join(append([]string{l.Name, l.Channel}, l.Files...), "\n")
}

// Closely says whether odd readings of the winter as it is were looked for; Keeper.LookClosely does.
func (b Book) Closely() bool { return b.looked.closely || b.stale || len(b.Result.Files) == 0 }

// LookClosely looks for readings that can hardly be right, for the screens Files and First look. The error is the context's.
func (k *Keeper) LookClosely(ctx context.Context, b Book) (Book, error) {
	ctx = engine.Aside(ctx)
	proposals, remarks, err := engine.Proposals(ctx, b.Result)
	if err != nil {
		return b, err
	}
	alongside, err := engine.SideBySide(ctx, b.Result.Winter, k.files, k.cache)
	if err != nil {
		return b, err
	}
	if b.looked.without, err = k.withoutOdd(ctx, b.Result.Winter, proposals); err != nil {
		return b, err
	}
	b.looked.closely, b.looked.proposals, b.looked.alongside, b.looked.doubts = true, proposals, alongside, nil
	for _, r := range remarks {
		if !slices.ContainsFunc(proposals, func(p engine.Proposal) bool { return p.Remark.Code == r.Code && slices.Equal(p.Remark.Args, r.Args) }) {
			b.looked.doubts = append(b.looked.doubts, r)
		}
	}
	return b.listed(), nil
}

// fileNamed is where a file stands in a list, or −1.
func fileNamed(all []engine.File, name string) int {
	return slices.IndexFunc(all, func(f engine.File) bool { return f.Name == name })
}

// head is the first rows of a file; a kept file never changes, so they are read once.
func (k *Keeper) head(ctx context.Context, f engine.File) []TextLine {
	key := f.Name + "\n" + f.SHA256
	if known, ok := k.heads[key]; ok {
		return known
	}
	first, encoding := 1, ""
	if f.Export != nil {
		first, encoding = max(1, f.Export.Layout.FirstDataLine), f.Export.Layout.Encoding
	}
	lines, err := k.Lines(ctx, f.Name, encoding, max(1, first-headAbove), first+headBelow)
	if err != nil {
		return nil
	}
	if k.heads == nil {
		k.heads = map[string][]TextLine{}
	}
	k.heads[key] = lines
	return lines
}

// yearsOf are the years a log without a year may begin in: those in which the winter's other files begin, and
// the year before each; without one this year and the two before.
func yearsOf(all []engine.File) (out []string) {
	thisYear := time.UnixMilli(now()).UTC().Year()
	var found []int
	for _, f := range all {
		if f.Export == nil || slices.Contains(questionIDs(f), "year") {
			continue
		}
		for _, s := range f.Export.Series {
			if len(s.FaceMS) > 0 && len(found) < 2*mostPlots {
				year := time.UnixMilli(slices.Min(s.FaceMS)).UTC().Year()
				found = append(found, year, year-1)
			}
		}
	}
	if len(found) == 0 {
		found = []int{thisYear, thisYear - 1, thisYear - 2}
	}
	slices.Sort(found)
	for _, year := range slices.Compact(found) {
		out = append(out, strconv.Itoa(year))
	}
	slices.Reverse(out)
	return out[:min(len(out), mostYears)]
}

// mostYears is how many years are offered, the latest first.
const mostYears = 4

// preview reads a file once more with each answer to each of its questions.
func (k *Keeper) preview(ctx context.Context, w winter.Winter, f engine.File, years []string) (out []preview, err error) {
	w.Barns, w.Tray, w.Outdoor = nil, nil, []winter.Logger{{Name: f.Name, Files: []string{f.Name}, Place: "outdoor"}}
	for _, q := range f.Export.Questions {
		options := q.Options
		if q.ID == "year" {
			options = years
		}
		for _, option := range options {
			with := w
			with.Answers = append(slices.Clone(w.Answers), winter.Answer{File: f.Name, ID: q.ID, Option: option})
			r, err := engine.Review(ctx, with, k.files, &k.aside, nil)
			if err != nil {
				return nil, err
			}
			p := preview{id: q.ID, option: option}
			if len(r.Files) > 0 {
				p.read(r.Files[0])
			}
			out = append(out, p)
		}
	}
	return out, nil
}

// read fills in the first reading of a file and the time of its last.
func (p *preview) read(f engine.File) {
	if f.Export == nil {
		return
	}
	for _, s := range f.Export.Series {
		if n := len(s.FaceMS); n > 0 && usable(string(s.Quantity)) {
			p.quantity, p.unit, p.val = string(s.Quantity), s.Unit, s.Val[0]
			p.low, p.high = slices.Min(s.Val), slices.Max(s.Val)
			p.firstMS, p.lastMS = s.FaceMS[0]+s.OffsetAt(0), s.FaceMS[n-1]+s.OffsetAt(n-1)
			break
		}
	}
	p.loggers = map[int]string{}
	for _, s := range f.Export.Series {
		if len(s.Val) > 0 && quantityWords[string(s.Quantity)] != "" {
			p.loggers[s.ColumnIndex] = s.Logger
		}
		if len(s.Val) > 0 {
			p.pairUp(s.Logger, string(s.Quantity), s.Val[0])
		}
	}
}

// pairUp notes a logger's first temperature or humidity.
func (p *preview) pairUp(logger, quantity string, val float64) {
	i := slices.IndexFunc(p.pairs, func(o pair) bool { return o.logger == logger })
	if i < 0 {
		i = len(p.pairs)
		p.pairs = append(p.pairs, pair{logger: logger})
	}
	switch quantity {
	case "air_temperature":
		p.pairs[i].tempC = cmp.Or(p.pairs[i].tempC, &val)
	case "relative_humidity":
		p.pairs[i].relHum = cmp.Or(p.pairs[i].relHum, &val)
	}
}
