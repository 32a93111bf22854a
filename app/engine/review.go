package engine

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/files"
	"thawbook/app/winter"
	"thawbook/app/winter/plan"
	"thawbook/app/winter/store"
	"thawbook/importers"
)

// maxPlanBytes bounds a plan: a thousand barns fit into it.
const maxPlanBytes = 1 << 20

// ReviewFile reviews the winter of a winter file, which is only read, or of a plan, whose file patterns are
// relative to its folder. The error is that of the plan (*plan.Error, *files.Error) or winter file
// (*store.Error), or the context's; files that could not be read are in the Result. progress may be nil.
func ReviewFile(ctx context.Context, path string, progress Progress) (Result, error) {
	if !IsWinterFile(path) {
		w, err := ReadPlan(path)
		if err != nil {
			return Result{}, err
		}
		return Review(ctx, w, Folder(filepath.Dir(path)), nil, progress)
	}
	s, err := store.Read(path)
	if err != nil {
		return Result{}, err
	}
	defer s.Close()
	return Review(ctx, s.Winter(), NewKept(s), nil, progress)
}

// IsWinterFile says by its name whether a file is a winter file; else it is a plan.
func IsWinterFile(path string) bool { return strings.EqualFold(filepath.Ext(path), store.Ending) }

// ReadWinter reads the document of a winter file or a plan.
func ReadWinter(path string) (winter.Winter, error) {
	if !IsWinterFile(path) {
		return ReadPlan(path)
	}
	s, err := store.Read(path)
	if err != nil {
		return winter.Winter{}, err
	}
	defer s.Close()
	return s.Winter(), nil
}

// ReadPlan reads a plan's file.
func ReadPlan(path string) (winter.Winter, error) {
	source, err := files.Open(path)
	if err != nil {
		return winter.Winter{}, err
	}
	defer source.Close()
	if source.Size > maxPlanBytes {
		return winter.Winter{}, &plan.Error{Name: path, Line: 1, Column: 1, Code: plan.Syntax, Msg: "this is no plan: it is larger than 1 MiB"}
	}
	var text bytes.Buffer
	if _, err := text.ReadFrom(io.LimitReader(source, maxPlanBytes)); err != nil {
		return winter.Winter{}, &files.Error{Path: path, Code: files.Failed, Err: err}
	}
	return plan.Read(text.Bytes(), path)
}

// Review reads the winter's files from their source, puts its loggers together and judges every barn. A file
// that is missing or refused becomes a File with its error and a remark, and costs only itself; so does a
// barn that a fault of the program keeps from being judged. The error is the context's, or that of the
// winter's zone. cache and progress may be nil; with a cache only what changed is worked out anew.
func Review(ctx context.Context, w winter.Winter, source Source, cache *Cache, progress Progress) (Result, error) {
	zone, err := winter.Location(w.Zone)
	if err != nil {
		return Result{}, err
	}
	out := Result{Winter: w, Remarks: []series.Remark{}}
	g := gather(w, source)
	read, err := reader{source: source, cache: cache, answers: w.Answers, progress: progress}.readAll(ctx, g.paths)
	if err != nil {
		return Result{}, err
	}
	out.Files = append(read, g.refused...)
	for _, f := range out.Files {
		out.Remarks = append(out.Remarks, refusal(f)...)
	}
	out.Remarks = append(out.Remarks, twins(read)...)
	out.Remarks = append(out.Remarks, unusedAnswers(w.Answers, g.paths)...)
	if cache == nil {
		cache = &Cache{}
	}
	err = newBench(w, zone, g, read, cache).judge(ctx, &out, progress)
	out.Remarks, out.ZoneOpen = zonesAssumed(w, out.Remarks)
	return out, err
}

// bench is where the barns of one winter are judged.
type bench struct {
	winter winter.Winter
	joiner joiner
	files  gathered
	read   []File
	cache  *Cache
}

func newBench(w winter.Winter, zone *time.Location, g gathered, read []File, cache *Cache) bench {
	cache.lists.begin()
	cache.barns.begin()
	return bench{w, joiner{zone: zone, gapMinutes: w.GapMinutes}, g, read, cache}
}

// joinLists joins the loggers outdoors, which come first, and of every barn, and adds to a review what there is to remark
// on them.
func (b bench) joinLists(ctx context.Context, out *Result) (lists []joined, keys []memoKey, err error) {
	lists = make([]joined, len(b.winter.Barns)+1)
	keys = make([]memoKey, len(lists))
	for i := range lists {
		if err := ctx.Err(); err != nil {
			return nil, nil, err
		}
		list := b.winter.Outdoor
		if i > 0 {
			list = b.winter.Barns[i-1].Loggers
		}
		keys[i] = b.key(list)
		lists[i] = b.cache.lists.of(keys[i], func() (joined, bool) {
			l := b.join(ctx, list)
			return l, len(l.faults) == 0 && ctx.Err() == nil
		})
		out.Remarks = append(out.Remarks, lists[i].remarks...)
		out.Faults = append(out.Faults, lists[i].faults...)
	}
	return lists, keys, nil
}

// judge fills in a review's barns, and what there is to remark on their loggers.
func (b bench) judge(ctx context.Context, out *Result, progress Progress) error {
	lists, keys, err := b.joinLists(ctx, out)
	if err != nil {
		return err
	}
	for i, barn := range b.winter.Barns {
		if err := ctx.Err(); err != nil {
			return err
		}
		key := keyOfAll(keys[0], keys[i+1], barn, b.winter.Bands, b.winter.Tariff, b.winter.Zone, analysis.RulesVersion)
		j := b.cache.barns.of(key, func() (judged, bool) {
			j := judgedBarn(ctx, b.tellOf(i, progress), inputOf(barn, b.winter.Bands, b.winter.Tariff, b.joiner.zone, slices.Concat(lists[i+1].loggers, lists[0].loggers)))
			return j, j.fault == nil && len(lists[0].faults)+len(lists[i+1].faults) == 0
		})
		if err := ctx.Err(); err != nil {
			return err
		}
		out.Inputs, out.Barns = append(out.Inputs, j.input), append(out.Barns, j.review)
		if j.fault != nil {
			out.Faults = append(out.Faults, j.fault)
			out.Remarks = append(out.Remarks, series.Remark{Code: BarnFault, Args: []string{barn.Name}, Count: 1})
		}
	}
	return nil
}

// tellOf tells of the parts of a barn's judgement as they begin, of all barns' together.
func (b bench) tellOf(barn int, progress Progress) func(part, of int) {
	return func(part, of int) {
		if progress != nil {
			progress(int64(barn*of+part), int64(len(b.winter.Barns)*of), "Working out "+b.winter.Barns[barn].Name)
		}
	}
}

// key is all that the curves of a list of loggers are made of.
func (b bench) key(list []winter.Logger) memoKey {
	var sums [][]string
	for _, l := range list {
		var own []string
		for _, p := range b.files.of(l) {
			f := b.read[p]
			key := keyOf(f.SHA256, f.Name, with(answersFor(f.Name, b.winter.Answers), f.Remembered))
			own = append(own, key.name, key.sha256, key.answers, fmt.Sprint(f.Err))
		}
		sums = append(sums, own)
	}
	return keyOfAll(list, sums, b.winter.Zone, b.winter.GapMinutes, importers.ReaderVersion)
}

// join makes the curves of a list of loggers, in the pool, and keeps what there is to remark. A logger whose
// curves can't be made through a fault of the program is left without.
func (b bench) join(ctx context.Context, list []winter.Logger) (out joined) {
	out.loggers = make([]analysis.Logger, len(list))
	remarks, faults := make([][]series.Remark, len(list)), make([]error, len(list))
	spreadUntil(ctx)(len(list), func(i int) { out.loggers[i], remarks[i], faults[i] = b.logger(list, i) })
	for i, l := range list {
		if faults[i] != nil {
			out.loggers[i] = analysis.Logger{Name: l.Name, Place: l.Place}
			out.faults = append(out.faults, faults[i])
			remarks[i] = []series.Remark{{Code: LoggerFault, Args: []string{l.Name}, Count: 1}}
		}
		out.remarks = append(out.remarks, remarks[i]...)
	}
	return out
}

// logger makes the curves of one logger of a list.
func (b bench) logger(list []winter.Logger, i int) (made analysis.Logger, remarks []series.Remark, err error) {
	defer caught(&err, list[i].Name)
	var own []File
	for _, p := range b.files.of(list[i]) {
		own = append(own, b.read[p])
	}
	made, remarks = b.joiner.logger(list[i], own, untilOf(list, i))
	return made, remarks, nil
}

// judgeBarn judges a barn in the pool; tests put a fault in its place.
var judgeBarn = analysis.JudgeSpread

// judgedBarn is a barn with its review; after a fault of the program, and where the context ended meanwhile, with that of
// a barn nothing is known of.
func judgedBarn(ctx context.Context, begin func(part, of int), in analysis.Input) (out judged) {
	out.input = in
	func() {
		defer caught(&out.fault, in.Name)
		out.review = judgeBarn(in, halting(ctx), begin)
	}()
	if out.fault != nil {
		out.review = analysis.Judge(analysis.Input{Name: in.Name, Zone: in.Zone, PressurePa: in.PressurePa})
	}
	return out
}

// gathered is which files the winter names: each path once, in the order it is first named.
type gathered struct {
	paths   []string
	byWords map[string][]int // per pattern, its files
	refused []File           // the patterns that stand for no file
}

// gather finds the files of every pattern of the winter.
func gather(w winter.Winter, source Source) gathered {
	g := gathered{byWords: map[string][]int{}}
	for _, barn := range w.Barns {
		for _, l := range barn.Loggers {
			g.expand(source, l.Files)
		}
	}
	for _, l := range w.Outdoor {
		g.expand(source, l.Files)
	}
	return g
}

// expand adds the files of some patterns.
func (g *gathered) expand(source Source, patterns []string) {
	for _, pattern := range patterns {
		if _, known := g.byWords[pattern]; known {
			continue
		}
		g.byWords[pattern] = nil
		found, err := source.Find(pattern)
		if err != nil {
			g.refused = append(g.refused, File{Name: pattern, Err: err})
		}
		for _, p := range found {
			i := slices.Index(g.paths, p)
			if i < 0 {
				i = len(g.paths)
				g.paths = append(g.paths, p)
			}
			g.byWords[pattern] = append(g.byWords[pattern], i)
		}
	}
}

// of is a logger's files, each once, in the order of its patterns.
func (g *gathered) of(l winter.Logger) (out []int) {
	for _, pattern := range l.Files {
		for _, i := range g.byWords[pattern] {
			if !slices.Contains(out, i) {
				out = append(out, i)
			}
		}
	}
	return out
}

// twins remark on files that hold the same bytes as an earlier one: a log given twice under two names.
func twins(read []File) (remarks []series.Remark) {
	seen := map[string]string{}
	for _, f := range read {
		if f.Export == nil {
			continue
		}
		if earlier, found := seen[f.SHA256]; found {
			remarks = append(remarks, series.Remark{Code: SameFile, Args: []string{f.Name, earlier}, Count: 1})
			continue
		}
		seen[f.SHA256] = f.Name
	}
	return remarks
}

// refusal remarks on a file that could not be read, with its place where it has one.
func refusal(f File) []series.Remark {
	if f.Err == nil {
		return nil
	}
	r := series.Remark{Code: FileRefused, Args: []string{f.Name, "", f.Err.Error()}, Count: 1}
	var why *importers.Refusal
	if errors.As(f.Err, &why) {
		code, args, line, column := why.Reason()
		r.Args, r.Line, r.Column = append([]string{f.Name, code}, args...), line, column
	}
	return []series.Remark{r}
}

// unusedAnswers remarks on answers whose pattern matches no file of the winter: most likely a slip of the pen.
func unusedAnswers(answers []winter.Answer, paths []string) (out []series.Remark) {
	for _, a := range answers {
		if a.Layout == "" && !slices.ContainsFunc(paths, func(p string) bool { return matches(a.File, p) }) {
			out = append(out, series.Remark{Code: AnswerUnused, Args: []string{a.File, a.ID}, Count: 1})
		}
	}
	return out
}
