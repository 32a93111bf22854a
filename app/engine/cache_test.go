package engine

import (
	"fmt"
	"testing"

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
