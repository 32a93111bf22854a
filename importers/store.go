package importers

import "sync"

// store is a growing list in blocks: nothing is copied while it grows, and the whole is as long as it need
// be.
type store[T int64 | float64] struct {
	full [][]T
	open []T
	n    int
	room int // how many values are expected, where that is known
}

// The first block is small, so that a small file stays small; a later one holds as much as all before it,
// up to the longest.
const firstBlock, longestBlock = 256, 16384

// mostSpares is how many blocks of a list are kept for the next file: a year of minutes fits into them.
const mostSpares = 32

// spares are what the files before left behind.
type spares struct {
	blocks sync.Pool // of the longest kind
	lists  sync.Pool // of readings that were summed up and let go
}

var spareInts, spareFloats spares

func sparesOf[T int64 | float64]() *spares {
	if _, ints := any(T(0)).(int64); ints {
		return &spareInts
	}
	return &spareFloats
}

// roomFor is an empty list with room for n values, and not much more than that.
func roomFor[T int64 | float64](n int) []T {
	if spare, ok := sparesOf[T]().lists.Get().(*[]T); ok && cap(*spare) >= n && cap(*spare) <= 2*n {
		return (*spare)[:0]
	}
	return make([]T, 0, n)
}

// letGo leaves a list that nobody reads any more to the files that follow.
func letGo[T int64 | float64](list []T) {
	if cap(list) >= longestBlock {
		sparesOf[T]().lists.Put(&list)
	}
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
	} else if s.room > longestBlock {
		s.open = roomFor[T](s.room)[:0:s.room]
		return
	}
	size := min(max(s.n, firstBlock), longestBlock)
	if size == longestBlock {
		if spare, ok := sparesOf[T]().blocks.Get().(*[]T); ok {
			s.open = (*spare)[:0]
			return
		}
	}
	s.open = make([]T, 0, size)
}

// whole hands the list out in one piece and forgets it.
func (s *store[T]) whole() []T {
	if s.full == nil && cap(s.open) <= s.n+s.n/4 {
		out := s.open
		*s = store[T]{}
		return out
	}
	out := roomFor[T](s.n)
	for i, block := range append(s.full, s.open) {
		out = append(out, block...)
		if i < mostSpares && cap(block) == longestBlock {
			sparesOf[T]().blocks.Put(&block)
		}
	}
	*s = store[T]{}
	return out
}
