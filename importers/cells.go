package importers

import "slices"

// What a row's cells are, whatever their column.

func texts(cells [][]byte) []string {
	out := make([]string, len(cells))
	for i, c := range cells {
		out[i] = text(c)
	}
	return out
}

func isVacant(cells [][]byte) bool { return filledCells(cells) == 0 }

func filledCells(cells [][]byte) int {
	n := 0
	for _, c := range cells {
		if len(trim(c)) > 0 {
			n++
		}
	}
	return n
}

func hasNumber(cells [][]byte) bool { return slices.ContainsFunc(cells, isAnyNumber) }

func countNumbers(cells [][]byte) (n int) {
	for _, c := range cells {
		n += one(isAnyNumber(c))
	}
	return n
}

func isAnyNumber(cell []byte) bool { return isNumber(trim(cell), '.') || isNumber(trim(cell), ',') }

// hasLetter says whether any cell holds a letter, or a sign beyond ASCII, as names do.
func hasLetter(cells [][]byte) bool {
	for _, c := range cells {
		for _, b := range c {
			if b >= 0x80 || 'a' <= b|0x20 && b|0x20 <= 'z' {
				return true
			}
		}
	}
	return false
}

func isNumber(cell []byte, mark byte) bool {
	_, _, _, ok := numberInText(cell, mark)
	return ok
}
