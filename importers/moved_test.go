package importers

import (
	"fmt"
	"testing"
)

// A row with one more number than the columns, whose values are as likely moved as not, is left out where it is alone; a
// column without a name that was added to the log from some row on is none. Both forms are our own.
func TestANumberBeyondTheTable(t *testing.T) {
	lone, added := "time,t1,t2,t3\n", "time,t1,t2,t3\n"
	for i := range 20 {
		row := fmt.Sprintf("2026-01-13 10:%02d,%d.5,%d.5,%d.0", i, 4+i%2, 5-i%3, 4+i%3)
		lone, added = lone+row, added+row
		if i == 7 {
			lone += ",4.5"
		}
		if i > 12 {
			added += ",3.9"
		}
		lone, added = lone+"\n", added+"\n"
	}
	for _, c := range []struct {
		file, code string
		readings   int
	}{{lone, RemarkMovedLine, 19}, {added, RemarkLongLine, 20}} {
		e := readText(t, c.file)
		if len(e.Remarks) != 1 || e.Remarks[0].Code != c.code || len(e.Series) != 3 {
			t.Errorf("%v, want %s", e.Remarks, c.code)
		}
		if n := len(e.Series[0].Val); n != c.readings {
			t.Errorf("%d readings, want %d", n, c.readings)
		}
	}
}
