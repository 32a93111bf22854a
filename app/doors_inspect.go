package main

import (
	"cmp"
	"flag"
	"fmt"
	"io"
	"path/filepath"
	"runtime/debug"
	"strings"
	"time"

	"thawbook/app/desk"
	"thawbook/app/engine"
	"thawbook/app/winter"
	"thawbook/importers"
)

// usualPercent is how much the heap of inspect may grow before it is swept: it keeps no readings, so that there is little
// to save by sweeping more often, and a sweep for every file read costs a seventh of the work.
const usualPercent = 100

// inspect says how files were understood.
func (d door) inspect(args []string) int {
	debug.SetGCPercent(usualPercent)
	flags := flag.NewFlagSet("inspect", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "")
	var answers answerFlags
	flags.Var(&answers, "answer", "")
	paths, status, ok := d.parse(flags, args)
	if ok && len(paths) == 0 {
		status, ok = d.misused("inspect needs a file or a folder"), false
	}
	var read []engine.File
	var err error
	if ok {
		read, err = engine.Inspect(d.ctx, paths, answers, nil)
	}
	if err != nil {
		read, status = nil, d.trouble(err)
	}
	if *asJSON && status != done {
		writeJSON(d.stdout, []struct{}{})
		return status
	}
	if !ok || err != nil {
		return status
	}
	return d.show(read, *asJSON)
}

// answerFlags gathers -answer [PATTERN:]ID=OPTION.
type answerFlags []winter.Answer

// String is what the flag package asks for.
func (a *answerFlags) String() string { return fmt.Sprint(*a) }

// Set reads one answer.
func (a *answerFlags) Set(text string) error {
	question, option, found := strings.Cut(text, "=")
	pattern, id := "", question
	if i := strings.LastIndex(question, ":"); i >= 0 {
		pattern, id = question[:i], question[i+1:]
	}
	if !found || id == "" || option == "" {
		return fmt.Errorf("an answer is written [PATTERN:]ID=OPTION")
	}
	*a = append(*a, winter.Answer{File: pattern, ID: id, Option: option})
	return nil
}

// show prints what was understood; a file that was refused makes the status so.
func (d door) show(read []engine.File, asJSON bool) int {
	status := d.troubles(engine.Result{Files: read}, nil)
	var err error
	if asJSON {
		err = writeJSON(d.stdout, desk.Inspect(read))
	} else {
		_, err = io.WriteString(d.stdout, understood(read))
	}
	return max(status, d.troubles(engine.Result{}, err))
}

// understood is a few lines for every file that was read.
func understood(read []engine.File) string {
	var text strings.Builder
	for _, f := range read {
		if f.Export == nil {
			continue
		}
		layout := f.Export.Layout
		fmt.Fprintf(&text, "%s\n  %s, separated by %q, decimal mark %q, clock %s", f.Name, layout.Encoding, layout.Delimiter, layout.DecimalMark, layout.Clock.Order)
		if layout.Clock.Zone != "" {
			fmt.Fprintf(&text, " in %s", layout.Clock.Zone)
		}
		fmt.Fprintf(&text, "; data from line %d, %d rows, %d with a bad time\n", layout.FirstDataLine, f.Export.Rows, f.Export.BadTime)
		for _, s := range f.Export.Series {
			fmt.Fprintf(&text, "  %s, %s: %s\n", s.Logger, s.Column, seriesLine(s))
		}
		for _, r := range f.Export.Remarks {
			fmt.Fprintf(&text, "  note: %s\n", desk.FileNote(r))
		}
		for _, q := range f.Export.Questions {
			fmt.Fprintf(&text, "  question: %s Answer with -answer %s:%s=%s.\n", desk.QuestionOf(q.ID, q.Columns), filepath.Base(f.Name), q.ID, cmp.Or(strings.Join(q.Options, "|"), anAnswer[q.ID]))
		}
	}
	return text.String()
}

// anAnswer is an example for a question without options.
var anAnswer = map[string]string{"year": "2024", "first_day": "2024-11-12"}

// seriesLine is what one column holds.
func seriesLine(s importers.Series) string {
	sum := s.Summary()
	if sum.Readings == 0 {
		return fmt.Sprintf("%s, no readings", s.Quantity)
	}
	day := func(ms int64) string { return time.UnixMilli(ms).UTC().Format("2006-01-02 15:04") }
	scale, unit := 1.0, ""
	switch s.Quantity {
	case importers.AirTemperature, importers.SurfaceTemperature, importers.DewPoint:
		unit = " °C"
	case importers.RelativeHumidity:
		scale, unit = 100, " %"
	}
	if sum.IntervalMS == 0 {
		return fmt.Sprintf("%s, a single time, %s: %.4g%s", s.Quantity, day(sum.FirstMS+sum.FirstOffsetMS), scale*sum.Mean, unit)
	}
	return fmt.Sprintf("%s, %d readings every %s from %s to %s, %.4g to %.4g%s, mean %.4g%s", s.Quantity, sum.Readings,
		time.Duration(sum.IntervalMS)*time.Millisecond, day(sum.FirstMS+sum.FirstOffsetMS), day(sum.LastMS+sum.LastOffsetMS),
		scale*sum.Min, scale*sum.Max, unit, scale*sum.Mean, unit)
}
