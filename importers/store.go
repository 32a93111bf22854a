package importers

// store is a growing list in blocks: nothing is copied while it grows, and the whole is as long as it need
// be.
type store[T any] struct {
	full [][]T
	open []T
	n    int
}

// The first block is small, so that a small file stays small; a later one holds as much as all before it,
// up to the longest.
const firstBlock, longestBlock = 256, 16384

func (s *store[T]) add(v T) {
	if len(s.open) == cap(s.open) {
		if s.open != nil {
			s.full = append(s.full, s.open)
		}
		s.open = make([]T, 0, min(max(s.n, firstBlock), longestBlock))
	}
	s.open = append(s.open, v)
	s.n++
}

// whole hands the list out in one piece and forgets it.
func (s *store[T]) whole() []T {
	out := make([]T, 0, s.n)
	for _, block := range s.full {
		out = append(out, block...)
	}
	out = append(out, s.open...)
	*s = store[T]{}
	return out
}
