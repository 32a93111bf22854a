package series

import (
	"slices"
	"testing"
)

func TestUnion(t *testing.T) {
	for _, row := range []struct {
		name     string
		in, want []Span
	}{
		{"none", nil, nil},
		{"apart, out of order", []Span{{5, 6}, {1, 2}}, []Span{{1, 2}, {5, 6}}},
		{"touching", []Span{{1, 2}, {2, 3}}, []Span{{1, 3}}},
		{"overlapping and inside", []Span{{1, 9}, {2, 3}, {8, 10}}, []Span{{1, 10}}},
	} {
		before := slices.Clone(row.in)
		if got := Union(row.in); !slices.Equal(got, row.want) {
			t.Errorf("%s: %v, want %v", row.name, got, row.want)
		}
		if !slices.Equal(row.in, before) {
			t.Errorf("%s: the argument was changed to %v", row.name, row.in)
		}
	}
}
