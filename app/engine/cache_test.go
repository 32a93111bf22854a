package engine

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"

	"thawbook/analysis"
	"thawbook/app/winter"
	"thawbook/importers"
)

// An export of a million rows of two columns that share their times takes 24 MB: sixty-five of them fill 1,500 MiB.
func TestTheCacheIsBoundedByBytes(t *testing.T) {
	times := make([]int64, 1_000_000)
	values := make([]float64, len(times))
	export := &importers.Export{Series: []importers.Series{{FaceMS: times, Val: values}, {FaceMS: times, Val: values}}}
	c := &Cache{}
	for i := range 65 {
		c.keep(keyOf(fmt.Sprint(i), "log.csv", nil), int64(i), export)
	}
	if c.export(keyOf("0", "log.csv", nil)) == nil || !c.mayHold(0) {
		t.Error("what fits is not kept")
	}
	c.keep(keyOf("64", "log.csv", nil), 64, export) // the same once more takes no more room
	if c.export(keyOf("0", "log.csv", nil)) == nil {
		t.Error("what is kept was counted twice")
	}
	c.keep(keyOf("65", "log.csv", nil), 65, export)
	if c.export(keyOf("0", "log.csv", nil)) != nil || c.mayHold(0) || c.export(keyOf("65", "log.csv", nil)) == nil {
		t.Error("the cache did not start anew")
	}
}

// An edit of one barn works out that barn anew and no other, whatever the edit; an edit taken back works out none.
func TestAnEditWorksOutItsBarnAlone(t *testing.T) {
	var lock sync.Mutex
	var judged []string
	was := judgeBarn
	defer func() { judgeBarn = was }()
	judgeBarn = func(in analysis.Input, spread analysis.Spread, begin func(int, int)) analysis.Review {
		lock.Lock()
		judged = append(judged, in.Name)
		lock.Unlock()
		return was(in, spread, begin)
	}
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2026-11-12 00:00", 240, saw, flat(60)), "o.csv": hourly(t, "2026-11-12 00:00", 240, flat(-5), flat(80))})
	first := winter.Winter{Zone: "UTC", Barns: []winter.Barn{
		{Name: "A", Loggers: []winter.Logger{{Name: "a", Files: []string{"a.csv"}, Place: "room"}}},
		{Name: "B", Loggers: []winter.Logger{{Name: "b", Files: []string{"a.csv"}, Place: "room"}}},
	}}
	in := utc(t, "2026-11-14 00:00")
	bees, err := winter.SetBeesTime{Barn: 1, In: &in}.Apply(first)
	if err != nil {
		t.Fatal(err)
	}
	offset := bees
	offset.Barns = slices.Clone(bees.Barns)
	offset.Barns[0].Loggers = []winter.Logger{{Name: "a", Files: []string{"a.csv"}, Place: "room", OffsetC: 1}}
	outdoor := offset
	outdoor.Outdoor = []winter.Logger{{Name: "o", Files: []string{"o.csv"}, Place: "outdoor"}}
	banded := outdoor
	good := 3.0
	banded.Bands.TempC.GoodLow = &good
	zoned := banded
	zoned.Zone = "Europe/Tallinn"
	var cache Cache
	for i, step := range []struct {
		w    winter.Winter
		want string
	}{{first, "A B"}, {first, ""}, {bees, "B"}, {offset, "A"}, {outdoor, "A B"}, {banded, "A B"}, {zoned, "A B"}, {outdoor, ""}, {first, ""}} {
		judged = nil
		result, err := Review(context.Background(), step.w, Folder(dir), &cache, nil)
		if err != nil {
			t.Fatal(err)
		}
		slices.Sort(judged)
		if got := strings.Join(judged, " "); got != step.want {
			t.Errorf("step %d judged %q, want %q", i, got, step.want)
		}
		if fresh, err := Review(context.Background(), step.w, Folder(dir), nil, nil); err != nil || !reflect.DeepEqual(fresh.Barns, result.Barns) || !reflect.DeepEqual(fresh.Remarks, result.Remarks) {
			t.Errorf("step %d: what was kept is not what is worked out fresh", i)
		}
	}
}

// What was decoded once is not decoded again, unless the bytes or the answers are others.
func TestTheCache(t *testing.T) {
	decoded := 0
	was := readExport
	defer func() { readExport = was }()
	readExport = func(ctx context.Context, r io.Reader, name string, answers importers.Answers) (*importers.Export, error) {
		decoded++
		return was(ctx, r, name, answers)
	}
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2026-11-12 00:00", 30, saw, flat(60))})
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Loggers: []winter.Logger{{Name: "a", Files: []string{"a.csv"}, Place: "room"}}}}}
	var cache Cache
	var results []Result
	for i, want := range []int{1, 1, 2, 3} {
		switch i {
		case 2:
			w.Answers = []winter.Answer{{File: "a.csv", ID: "zone", Option: "+02:00"}}
		case 3:
			folderFile := filepath.Join(dir, "a.csv")
			if err := os.WriteFile(folderFile, []byte(hourly(t, "2026-11-12 00:00", 30, saw, flat(61))), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		result, err := Review(context.Background(), w, Folder(dir), &cache, nil)
		if err != nil {
			t.Fatal(err)
		}
		results = append(results, result)
		if decoded != want {
			t.Errorf("review %d: decoded %d times, want %d", i, decoded, want)
		}
	}
	if !reflect.DeepEqual(results[0], results[1]) {
		t.Error("the review from the cache is another")
	}
	if results[3].Inputs[0].Loggers[0].RelHum.Val[0] != 0.61 {
		t.Error("the new bytes did not arrive")
	}
}
