package importers

import "sync"

// store is a growing list in blocks: nothing is copied while it grows, and the whole is as long as it need
// be.
type store[T int64 | float64] struct {
	full [][]T
	open []T
	n    int
}

// The first block is small, so that a small file stays small; a later one holds as much as all before it,
// up to the longest.
const firstBlock, longestBlock = 256, 16384

// mostSpares is how many blocks of a list are kept for the next file: a year of minutes fits into them.
const mostSpares = 32

// spareInts and spareFloats are blocks of the longest kind that the files before left behind.
var spareInts, spareFloats sync.Pool

func spares[T int64 | float64]() *sync.Pool {
	if _, ints := any(T(0)).(int64); ints {
		return &spareInts
	}
	return &spareFloats
}

func (s *store[T]) add(v T) {
	n := len(s.open)
	if n == cap(s.open) {
		s.grow()
		n = 0
	}
	s.open = s.open[:n+1]
	s.open[n] = v
	s.n++
}

// take makes values that stand in the open block behind the list a part of it.
func (s *store[T]) take(n int) {
	s.open, s.n = s.open[:len(s.open)+n], s.n+n
}

// grow begins another block.
func (s *store[T]) grow() {
	if s.open != nil {
		s.full = append(s.full, s.open)
	}
	size := min(max(s.n, firstBlock), longestBlock)
	if size == longestBlock {
		if spare, ok := spares[T]().Get().(*[]T); ok {
			s.open = (*spare)[:0]
			return
		}
	}
	s.open = make([]T, 0, size)
}

// whole hands the list out in one piece and forgets it.
func (s *store[T]) whole() []T {
	out := make([]T, 0, s.n)
	for i, block := range append(s.full, s.open) {
		out = append(out, block...)
		if i < mostSpares && cap(block) == longestBlock {
			spares[T]().Put(&block)
		}
	}
	*s = store[T]{}
	return out
}
