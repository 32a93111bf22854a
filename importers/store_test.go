package importers

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"reflect"
	"testing"
	"time"
)

func TestAListIsWholeWhateverWasExpected(t *testing.T) {
	const n = 50_000
	for _, room := range []int{0, 1, longestBlock + 1, n - 1, n, n + 100, 2 * n, 10 * n} {
		s := store[int64]{room: room}
		for i := range int64(n) {
			s.add(i)
		}
		list := s.whole()
		if len(list) != n || cap(list) > 2*n {
			t.Errorf("room for %d: %d values in room for %d", room, len(list), cap(list))
		}
		for i, v := range list {
			if v != int64(i) {
				t.Fatalf("room for %d: value %d is %d", room, i, v)
			}
		}
	}
}

// sized is a text that says how long it is.
type sized struct {
	io.Reader
	size int64
}

func (s sized) Size() int64 { return s.size }

func TestASizeThatIsWrongChangesNothing(t *testing.T) {
	var text bytes.Buffer
	text.WriteString("time,temp °C,rh %\n")
	at := time.Date(2025, 11, 1, 0, 0, 0, 0, time.UTC)
	for i := range 60_000 {
		cells := number2(i)
		if i > 30_000 {
			cells += "000" // longer lines than the head's
		}
		fmt.Fprintf(&text, "%s%s\n", at.Add(time.Duration(i)*time.Minute).Format("2006-01-02 15:04"), cells)
	}
	read := func(size int64) *Export {
		e, err := Read(t.Context(), sized{bytes.NewReader(text.Bytes()), size}, "a.csv", nil)
		if err != nil {
			t.Fatal(err)
		}
		return e
	}
	want := read(0)
	for _, size := range []int64{1, int64(text.Len()) / 2, int64(text.Len()), 2 * int64(text.Len()), 1 << 32, math.MaxInt64} {
		if e := read(size); !sameBits(e, want) || !reflect.DeepEqual(e.Remarks, want.Remarks) {
			t.Errorf("of %d bytes, said to be %d, another export", text.Len(), size)
		}
	}
}
