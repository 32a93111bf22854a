package importers

// Under one header several loggers' rows may stand block by block, each below a line with the logger's name.

// block is where the rows of a further logger begin.
type block struct {
	row   int
	title string
}

// startsBlock says whether the lines without a time since the last row are the title of a block that the row at
// a time begins: the clock goes back there, or, while the order of the dates is open, a word says that a name
// follows.
func (s *scan) startsBlock(at int64) bool {
	if s.keyed != nil || s.times.n == 0 || len(s.pending) > maxTitleLines {
		return false
	}
	var lines []string
	for _, bad := range s.pending {
		if !bad.above || !bad.foot {
			return false
		}
		lines = append(lines, bad.record)
	}
	title, led := titleIn(lines)
	if title == "" || s.clock.unsure() && !led || !s.clock.unsure() && at >= s.times.open[len(s.times.open)-1] {
		return false
	}
	s.blocks = append(s.blocks, block{s.times.n, title})
	s.pending = s.pending[:0]
	return true
}

// maxTitleLines is how many lines may stand above a block.
const maxTitleLines = 10

// keyByBlock gives the rows of each block its title for a logger.
func (s *scan) keyByBlock() {
	if len(s.blocks) == 0 {
		return
	}
	s.keyed = &keyed{columns: []column{{kind: device}}, names: [][]string{{s.title}}, of: make([]int32, s.times.n)}
	ids := map[string]int32{s.title: 0}
	for i, b := range s.blocks {
		id, found := ids[b.title]
		if !found {
			id = int32(len(s.keyed.names))
			ids[b.title] = id
			s.keyed.names = append(s.keyed.names, []string{b.title})
		}
		end := s.times.n
		if i+1 < len(s.blocks) {
			end = s.blocks[i+1].row
		}
		for row := b.row; row < end; row++ {
			s.keyed.of[row] = id
		}
	}
}
