package engine

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/winter"
	"thawbook/importers"
)

func TestAPanicIsThatFilesError(t *testing.T) {
	was := readExport
	defer func() { readExport = was }()
	readExport = func(ctx context.Context, r io.Reader, name string, answers importers.Answers) (*importers.Export, error) {
		if strings.HasSuffix(name, "b.csv") {
			panic("an index out of range")
		}
		return was(ctx, r, name, answers)
	}
	log := hourly(t, "2026-11-12 00:00", 30, saw, flat(60))
	read, err := Inspect(context.Background(), []string{folder(t, map[string]string{"a.csv": log, "b.csv": log, "c.csv": log})}, nil, nil)
	if err != nil || read[0].Err != nil || read[2].Err != nil {
		t.Fatalf("the neighbours suffered: %v, %+v", err, read)
	}
	var fault *Fault
	if !errors.As(read[1].Err, &fault) || read[1].Export != nil || !strings.Contains(fault.Error(), "b.csv") {
		t.Errorf("got %v", read[1].Err)
	}
}

// What goes to the program's makers says where the fault was and nothing of the keeper's.
func TestTheNoteOfAFaultHoldsNoData(t *testing.T) {
	for _, thrown := range []any{"4.25 degrees in secret barn.csv", errors.New("secret"), fmt.Errorf("%w", os.ErrPermission)} {
		note := faultOf(thrown).Note()
		if strings.Contains(note, "secret") || strings.Contains(note, "4.25") || !strings.Contains(note, "engine.faultOf") || !strings.Contains(note, ".go:") {
			t.Errorf("%v gives the note %q", thrown, note)
		}
	}
	var none []int
	if f := faultOf(func() { _ = none[7] }); !strings.Contains(f.Kind, "index out of range [7] with length 0") {
		t.Errorf("a runtime error is %q", f.Kind)
	}
}

// faultOf is the fault of throwing something, or of calling it.
func faultOf(thrown any) *Fault {
	var err error
	func() {
		defer caught(&err, "secret barn.csv")
		if call, is := thrown.(func()); is {
			call()
		}
		panic(thrown)
	}()
	return err.(*Fault)
}

func TestABarnsFaultCostsOnlyThatBarn(t *testing.T) {
	was := judgeBarn
	defer func() { judgeBarn = was }()
	judgeBarn = func(in analysis.Input, spread analysis.Spread, begin func(int, int)) analysis.Review {
		if in.Name == "B" {
			panic("fault")
		}
		return was(in, spread, begin)
	}
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2026-11-12 00:00", 240, saw, flat(60))})
	l := []winter.Logger{{Name: "a", Files: []string{"a.csv"}, Place: "room"}}
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Loggers: l}, {Name: "B", Loggers: l}, {Name: "C", Loggers: l}}}
	var cache Cache
	for range 2 { // what failed is not remembered
		result, err := Review(context.Background(), w, Folder(dir), &cache, nil)
		if err != nil {
			t.Fatal(err)
		}
		states := []analysis.State{result.Barns[0].Verdict.Held.State, result.Barns[1].Verdict.Held.State, result.Barns[2].Verdict.Held.State}
		if states[0] != analysis.Yes || states[1] != analysis.Unknown || states[2] != analysis.Yes || len(result.Faults) != 1 {
			t.Errorf("%v, %v", states, result.Faults)
		}
		if !slices.ContainsFunc(result.Remarks, func(r series.Remark) bool { return r.Code == BarnFault && r.Args[0] == "B" }) {
			t.Errorf("%+v", result.Remarks)
		}
	}
	judgeBarn = was
	if result, err := Review(context.Background(), w, Folder(dir), &cache, nil); err != nil || result.Barns[1].Verdict.Held.State != analysis.Yes {
		t.Errorf("%v", err)
	}
}

// Spread over workers or one after another, a barn's review is the same to the last bit; a fault in a worker is the
// barn's, with where it was.
func TestSpreadingChangesNothing(t *testing.T) {
	content := map[string]string{"outdoor.csv": hourly(t, "2026-11-12 00:00", 3000, func(i int) float64 { return -5 + float64(i%37) }, flat(80))}
	w := winter.Winter{Zone: "UTC", Outdoor: []winter.Logger{{Name: "o", Files: []string{"outdoor.csv"}, Place: "outdoor"}}, Barns: []winter.Barn{{Name: "A"}}}
	for i := range 7 {
		name := fmt.Sprintf("l%d.csv", i)
		content[name] = hourly(t, "2026-11-12 00:00", 3000-i, func(k int) float64 { return 3 + float64(k*(i+3)%91)/20 }, func(k int) float64 { return 50 + float64(k%(30+i)) })
		w.Barns[0].Loggers = append(w.Barns[0].Loggers, winter.Logger{Name: name, Files: []string{name}, Place: []string{"room", "wall"}[i%2]})
	}
	result, err := Review(context.Background(), w, Folder(folder(t, content)), nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(result.Barns[0], analysis.Judge(result.Inputs[0])) {
		t.Error("the reviews differ")
	}
	var fault error
	func() {
		defer caught(&fault, "barn A")
		spreadUntil(context.Background())(9, func(i int) {
			if i == 4 {
				panic("thrown in a worker")
			}
		})
	}()
	var f *Fault
	if !errors.As(fault, &f) || f.Doing != "barn A" || f.Kind != "string" || !strings.Contains(f.Note(), "TestSpreadingChangesNothing") {
		t.Errorf("%+v", fault)
	}
}
