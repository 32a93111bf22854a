package engine

import (
	"bytes"
	"context"
	"errors"
	"io"
	"path/filepath"
	"slices"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/files"
	"thawbook/app/winter"
	"thawbook/app/winter/plan"
	"thawbook/importers"
)

// maxPlanBytes bounds a plan: a thousand barns fit into it.
const maxPlanBytes = 1 << 20

// ReviewPlan reads a plan and reviews its winter; file patterns are relative to the plan's folder. The
// error is that of the plan (*plan.Error, *files.Error) or the context's; files that could not be read
// are in the Result. progress may be nil.
func ReviewPlan(ctx context.Context, path string, progress Progress) (Result, error) {
	w, err := ReadPlan(path)
	if err != nil {
		return Result{}, err
	}
	return Review(ctx, w, filepath.Dir(path), nil, progress)
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

// Review reads the winter's files, puts its loggers together and judges every barn. File patterns are
// relative to dir. A file that is missing or refused becomes a File with its error and a remark, and
// costs only itself. The error is the context's, or that of a zone or barn that could not be judged. cache
// and progress may be nil.
func Review(ctx context.Context, w winter.Winter, dir string, cache *Cache, progress Progress) (Result, error) {
	zone, err := winter.Location(w.Zone)
	if err != nil {
		return Result{}, err
	}
	out := Result{Winter: w, Remarks: []series.Remark{}}
	g := gather(w, dir)
	read, err := reader{cache: cache, answers: w.Answers, progress: progress}.readAll(ctx, g.paths)
	if err != nil {
		return Result{}, err
	}
	out.Files = append(read, g.refused...)
	for _, f := range out.Files {
		out.Remarks = append(out.Remarks, refusal(f)...)
	}
	out.Remarks = append(out.Remarks, twins(read)...)
	out.Remarks = append(out.Remarks, unusedAnswers(w.Answers, g.paths)...)
	j := joiner{zone: zone, gapMinutes: w.GapMinutes}
	outdoor := j.loggers(w.Outdoor, g, read, &out)
	for _, barn := range w.Barns {
		loggers := append(j.loggers(barn.Loggers, g, read, &out), outdoor...)
		out.Inputs = append(out.Inputs, inputOf(barn, w.Bands, zone, loggers))
	}
	out.Barns, err = judge(ctx, out.Inputs)
	return out, err
}

// loggers makes the curves of a list of loggers and keeps what there is to remark.
func (j joiner) loggers(all []winter.Logger, g gathered, read []File, out *Result) (loggers []analysis.Logger) {
	for i, l := range all {
		var own []File
		for _, p := range g.of(l) {
			own = append(own, read[p])
		}
		made, remarks := j.logger(l, own, untilOf(all, i))
		loggers = append(loggers, made)
		out.Remarks = append(out.Remarks, remarks...)
	}
	return loggers
}

// judge has every barn judged, in the pool.
func judge(ctx context.Context, inputs []analysis.Input) ([]analysis.Review, error) {
	out := make([]analysis.Review, len(inputs))
	faults := make([]error, len(inputs))
	err := each(ctx, len(inputs), func(i int) {
		defer caught(&faults[i], inputs[i].Name)
		out[i] = analysis.Judge(inputs[i])
	})
	if err == nil {
		err = errors.Join(faults...)
	}
	return out, err
}

// gathered is which files the winter names: each path once, in the order it is first named.
type gathered struct {
	paths   []string
	byWords map[string][]int // per pattern, its files
	refused []File           // the patterns that stand for no file
}

// gather expands every pattern of the winter.
func gather(w winter.Winter, dir string) gathered {
	g := gathered{byWords: map[string][]int{}}
	for _, barn := range w.Barns {
		for _, l := range barn.Loggers {
			g.expand(dir, l.Files)
		}
	}
	for _, l := range w.Outdoor {
		g.expand(dir, l.Files)
	}
	return g
}

// expand adds the files of some patterns.
func (g *gathered) expand(dir string, patterns []string) {
	for _, pattern := range patterns {
		if _, known := g.byWords[pattern]; known {
			continue
		}
		g.byWords[pattern] = nil
		found, err := files.Expand(dir, pattern)
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
	r := series.Remark{Code: FileRefused, Args: []string{f.Name, f.Err.Error()}, Count: 1}
	var why *importers.Refusal
	if errors.As(f.Err, &why) {
		r.Line, r.Column = why.Line, why.Column
	}
	return []series.Remark{r}
}

// unusedAnswers remarks on answers whose pattern matches no file of the winter: most likely a slip of the pen.
func unusedAnswers(answers []winter.Answer, paths []string) (out []series.Remark) {
	for _, a := range answers {
		if !slices.ContainsFunc(paths, func(p string) bool { return matches(a.File, p) }) {
			out = append(out, series.Remark{Code: AnswerUnused, Args: []string{a.File, a.ID}, Count: 1})
		}
	}
	return out
}
