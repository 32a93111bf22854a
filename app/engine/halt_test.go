package engine

import (
	"context"
	"errors"
	"io"
	"reflect"
	"strings"
	"testing"

	"thawbook/app/winter"
	"thawbook/importers"
)

// haltWinter is a barn with outdoor weather, long enough that every question has something to work on.
func haltWinter(t *testing.T) (winter.Winter, Source) {
	dir := folder(t, map[string]string{
		"a.csv": hourly(t, "2026-11-12 00:00", 2000, func(i int) float64 { return 3 + float64(i*3%91)/20 }, func(i int) float64 { return 50 + float64(i%40) }),
		"o.csv": hourly(t, "2026-11-12 00:00", 2000, func(i int) float64 { return -5 + float64(i%37) }, flat(80)),
	})
	return winter.Winter{
		Zone: "UTC", Outdoor: []winter.Logger{{Name: "o", Files: []string{"o.csv"}, Place: "outdoor"}},
		Barns: []winter.Barn{{Name: "Alder", Loggers: []winter.Logger{{Name: "a", Files: []string{"a.csv"}, Place: "room"}}}},
	}, Folder(dir)
}

// Given up at whatever part, a review ends with that, and nothing half done is kept for the next one.
func TestAReviewIsGivenUpAtAnyPart(t *testing.T) {
	w, source := haltWinter(t)
	whole, err := Review(context.Background(), w, source, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	var cache Cache
	for at := int64(0); ; at++ {
		ctx, cancel := context.WithCancel(context.Background())
		met := false
		_, err := Review(ctx, w, source, &cache, func(done, _ int64, what string) {
			if what == "Working out Alder" && done == at {
				met = true
				cancel()
			}
		})
		cancel()
		if !met { // there are no more parts
			if at < 10 || err != nil {
				t.Errorf("%d parts, %v", at, err)
			}
			break
		}
		if !errors.Is(err, context.Canceled) {
			t.Errorf("given up at part %d: %v", at, err)
		}
	}
	again, err := Review(context.Background(), w, source, &cache, nil)
	if err != nil || !reflect.DeepEqual(again.Barns, whole.Barns) {
		t.Errorf("the review after those that were given up is another, %v", err)
	}
}

// A file of 1 MB is told of while it is read, with every half megabyte at least, each time further on; then come the parts
// of the judgement.
func TestProgressMovesWithinAFile(t *testing.T) {
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2016-11-12 00:00", 40_000, saw, flat(60))})
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "Alder", Loggers: []winter.Logger{{Name: "a", Files: []string{"a.csv"}, Place: "room"}}}}}
	steps, before, verb := map[string]int{}, int64(-1), ""
	_, err := Review(context.Background(), w, Folder(dir), nil, func(done, total int64, what string) {
		now, _, _ := strings.Cut(what, " ")
		if now != verb {
			verb, before = now, -1
		}
		if done < before || done > total {
			t.Errorf("%s: %d of %d after %d", what, done, total, before)
		}
		if done > before {
			steps[now]++
		}
		before = done
	})
	size := Folder(dir).Size(dir + "/a.csv")
	if read := steps[dir+"/a.csv"]; err != nil || size < 1_000_000 || int64(read) < size/(512<<10) || steps["Working"] < 10 {
		t.Errorf("%d bytes, steps %v, %v", size, steps, err)
	}
}

// Inspecting is over when it is given up, though the decoder of a file hears of it only later.
func TestInspectingIsOverWhenItIsGivenUp(t *testing.T) {
	was, begun, free, left := readExport, make(chan struct{}), make(chan struct{}), make(chan struct{})
	defer func() { <-left; readExport = was }()
	readExport = func(ctx context.Context, in io.Reader, name string, answers importers.Answers) (*importers.Export, error) {
		defer close(left)
		close(begun)
		<-free
		return was(ctx, in, name, answers)
	}
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2026-11-12 00:00", 24, saw, flat(60))})
	ctx, cancel := context.WithCancel(context.Background())
	go func() { <-begun; cancel() }()
	if read, err := Inspect(ctx, []string{dir + "/a.csv"}, nil, nil); !errors.Is(err, context.Canceled) || read != nil {
		t.Errorf("%v, %v", read, err)
	}
	close(free)
}
