package importers

import (
	"cmp"
	"slices"
	"strconv"
)

// Under one header several loggers' rows may stand block by block: each below a line with the logger's name, or
// below the header again where the times come again with other values.

// block is where the rows of a further logger, or the rows below a header that came again, begin.
type block struct {
	row   int
	title string // "": no name, the header alone
}

// startsBlock says whether the lines without a time since the last row part a block off that the row at a time
// begins: the header again, or the title of a block, where the clock goes back or, while the order of the dates
// is open, a word says that a name follows or the header follows.
func (s *scan) startsBlock(at int64) bool {
	if s.keyed != nil || s.times.n == 0 || len(s.pending) > maxTitleLines {
		return false
	}
	var lines []string
	again := false
	for _, bad := range s.pending {
		if bad.header {
			again = true
			continue
		}
		if !bad.above || !bad.foot {
			return false
		}
		lines = append(lines, bad.record)
	}
	title, led := titleIn(lines)
	switch {
	case again && len(lines) == 0:
	case title == "" || s.clock.unsure() && !led && !again || !s.clock.unsure() && at >= s.times.open[len(s.times.open)-1]:
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
	s.numberBlocks()
	if len(s.blocks) == 0 {
		return
	}
	s.keyed = &keyed{columns: []column{{kind: device}}, names: [][]string{{s.title}}, of: make([]int32, len(s.at))}
	ids := map[string]int32{s.title: 0}
	for i, b := range s.blocks {
		id, found := ids[b.title]
		if !found {
			id = int32(len(s.keyed.names))
			ids[b.title] = id
			s.keyed.names = append(s.keyed.names, []string{b.title})
		}
		for row := b.row; row < s.blockEnd(i); row++ {
			s.keyed.of[row] = id
		}
	}
}

// quantityInTitle is what a title says a block holds, where it names a quantity and no logger.
func quantityInTitle(title string) (said column, ok bool) {
	said = column{header: title}
	said.describe(nil)
	return said, said.told && said.likeness == ""
}

// nameQuantities says whether the titles of all blocks name quantities, and no loggers.
func (k *keyed) nameQuantities() bool {
	return !slices.ContainsFunc(k.names, func(titles []string) bool { _, ok := quantityInTitle(titles[0]); return !ok })
}

// takeQuantity lets a column of a block measure what the block's title says, unless the column's own name says what else.
func (c *values) takeQuantity(title string) {
	said, _ := quantityInTitle(title)
	if _, unit := cutUnit(c.header); c.kind != number || unit != "" {
		return
	}
	if q, used := quantityOf(words(c.header), ""); q != Other || slices.Contains(used, true) {
		return
	}
	c.logger, c.quantity, c.told, c.unit, c.unitFrom = "", said.quantity, true, said.unit, said.unitFrom
}

// blockEnd is the row behind a block's last.
func (s *scan) blockEnd(i int) int {
	if i+1 < len(s.blocks) {
		return s.blocks[i+1].row
	}
	return len(s.at)
}

// numberBlocks names the blocks without a title by number where they are further loggers', and drops those that
// only go on.
func (s *scan) numberBlocks() {
	kept, from, number, base := s.blocks[:0], 0, 1, cmp.Or(s.title, s.base)
	for i, b := range s.blocks {
		end := s.blockEnd(i)
		if b.title == "" {
			if !s.isAnother(from, b.row, end) {
				continue
			}
			number++
			s.title = joined(base, "1")
			b.title = joined(base, strconv.Itoa(number))
		}
		from = b.row
		kept = append(kept, b)
	}
	s.blocks = kept
}

// isAnother says whether the rows from row to end are another logger's than those from before: at least half of
// their times came there, and most of them with another value in some column.
func (s *scan) isAnother(before, row, end int) bool {
	if row == end || s.at[row] > s.at[row-1] && !s.clock.unsure() {
		return false
	}
	at := make(map[int64]int, row-before)
	for i := before; i < row; i++ {
		at[s.at[i]] = i
	}
	shared, differ := 0, 0
	for i := row; i < end; i++ {
		if k, found := at[s.at[i]]; found {
			shared++
			differ += one(s.valuesDiffer(i, k))
		}
	}
	return 2*shared >= min(row-before, end-row) && 2*differ > shared
}

// valuesDiffer says whether two rows have different values in a column that has both.
func (s *scan) valuesDiffer(a, b int) bool {
	for i := range s.columns {
		v, w := s.columns[i].val[a], s.columns[i].val[b]
		if v == v && w == w && v != w {
			return true
		}
	}
	return false
}
