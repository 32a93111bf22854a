package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"thawbook/analysis/series"
	"thawbook/app/desk"
	"thawbook/app/engine"
	"thawbook/app/files"
	"thawbook/app/report"
	"thawbook/app/winter/plan"
)

// review judges the winter of a winter file or a plan.
func (d door) review(args []string) int {
	flags := flag.NewFlagSet("review", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "")
	out := flags.String("out", "", "")
	beside := flags.String("beside", "", "")
	plans, status, ok := d.parse(flags, args)
	if ok && len(plans) != 1 {
		status, ok = d.misused("review needs one winter file or plan"), false
	}
	result := engine.Result{}
	var err error
	if ok {
		if result, err = engine.ReviewFile(d.ctx, plans[0], nil); err == nil {
			err = result.SetSideBySide(d.ctx)
		}
		if err == nil && *beside != "" {
			status, err = d.setBeside(&result, *beside)
		}
		status = max(status, d.troubles(result, err))
	}
	if err != nil {
		result.Remarks = []series.Remark{planRefused(err)}
	}
	document := desk.ReviewDocument(result, program())
	if ok && err == nil && *out != "" {
		status = max(status, d.troubles(engine.Result{}, writeReview(*out, document)))
	}
	switch {
	case *asJSON:
		err = writeJSON(d.stdout, document)
	case ok && err == nil:
		err = d.tell(result)
	default:
		return status
	}
	return max(status, d.troubles(engine.Result{}, err))
}

// setBeside adds to a review its pairs with the winter at path; the status tells of files of that one that were refused.
func (d door) setBeside(result *engine.Result, path string) (int, error) {
	other, err := engine.ReviewFile(d.ctx, path, nil)
	if err != nil {
		return refused, err
	}
	across, err := engine.Winters(d.ctx, result, &other)
	if len(across) == 0 {
		result.Remarks = append(result.Remarks, other.NotAlike(path))
	}
	result.Pairs = append(result.Pairs, across...)
	return d.troubles(other, nil), err
}

// troubles prints what went wrong and gives the status for it.
func (d door) troubles(r engine.Result, err error) int {
	status := done
	if err != nil {
		status = d.trouble(err)
	}
	for _, f := range r.Files {
		if f.Err != nil {
			_, text := desk.Refusal(f.Name, f.Err)
			status = d.trouble(errors.New(text))
		}
	}
	return status
}

// planRefused is the remark of a review that could not be made.
func planRefused(err error) series.Remark {
	r := series.Remark{Code: "plan_refused", Args: []string{err.Error()}, Count: 1}
	var fault *plan.Error
	if errors.As(err, &fault) {
		r.Line, r.Column = fault.Line, fault.Column
	}
	return r
}

// tell prints a review as text: per barn who stood there and when, then the first look; then
// the barns two by two.
func (d door) tell(r engine.Result) error {
	var text strings.Builder
	fmt.Fprintf(&text, "%s\n", r.Winter.Name)
	for i, b := range r.Barns {
		units := desk.Units{Zone: r.Inputs[i].Zone}
		fmt.Fprintf(&text, "\n%s\n%s\n", b.Barn, desk.HeaderOf(r.Inputs[i], b, units).Line)
		look := desk.FirstLookOf(r.Inputs[i], b, units)
		for _, sentence := range append([]desk.Sentence{{Text: look.Headline, Sure: look.Sure}}, look.Sentences...) {
			fmt.Fprintf(&text, "- %s\n", strings.TrimSpace(sentence.Text+" "+sentence.Sure))
		}
	}
	tellPairs(&text, r)
	if len(r.Remarks) > 0 {
		fmt.Fprintf(&text, "\nNotes on the data\n")
	}
	for _, remark := range r.Remarks {
		fmt.Fprintf(&text, "- %s\n", desk.ReviewNote(remark))
	}
	_, err := io.WriteString(d.stdout, text.String())
	return err
}

// tellPairs prints the barns two by two; the cautions, which are the same for all, come last.
func tellPairs(text *strings.Builder, r engine.Result) {
	var cautions []string
	for _, p := range r.Pairs {
		fmt.Fprintf(text, "\n%s and %s\n", p.A, p.B)
		said := desk.TwoBarnsSaid(p, desk.Units{})
		for _, line := range []string{said.Sentence, said.Sure, said.Settle, said.Losses} {
			if line != "" {
				fmt.Fprintf(text, "- %s\n", line)
			}
		}
		cautions = append(cautions, said.Cautions...)
	}
	slices.Sort(cautions)
	for _, caution := range slices.Compact(cautions) {
		fmt.Fprintf(text, "\n%s\n", caution)
	}
}

// writeReview writes the review and its tables into a folder, which is made where there is none.
func writeReview(dir string, document desk.ReviewDoc) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return &files.Error{Path: dir, Code: files.NotWritten, Err: err}
	}
	err := files.WriteAtomic(filepath.Join(dir, "review.json"), func(w io.Writer) error { return writeJSON(w, document) })
	for _, table := range report.Tables(document) {
		if err == nil {
			err = files.WriteAtomic(filepath.Join(dir, table.Name), table.WriteCSV)
		}
	}
	return err
}
