package importers

import (
	"bytes"
	"context"
	"math"
	"math/rand"
	"slices"
	"testing"
)

// mutate changes a few bytes of a log's rows to what damaged files hold.
func mutate(random *rand.Rand, body []byte) []byte {
	const letters = "0123456789:-. ,;T\"\n\r+eNA°"
	out := bytes.Clone(body)
	for range 1 + random.Intn(6) {
		at := 20 + random.Intn(len(out)-20)
		c := letters[random.Intn(len(letters))]
		switch random.Intn(3) {
		case 0:
			out[at] = c
		case 1:
			out = slices.Insert(out, at, c)
		default:
			out = slices.Delete(out, at, at+1)
		}
	}
	return out
}

// The quick path and the plain path give the same bits, remarks and refusals on damaged rows: 3,000 logs of
// ten rows and more, in three layouts.
func TestQuickPathIsThePlainPath(t *testing.T) {
	logs := [][]byte{
		manyRows(12),
		[]byte("Zeit;Nr;Temp °C;RH %;x\n" + "13.01.2026 10:00;1;4,5;80,5;a\n13.01.2026 10:10;2;4,25;;b\n13.01.2026 10:20;3;-0,5;81;c\n14.01.2026 00:00;4;5;82;d\n14.01.2026 00:10;5;5,0;82;e\n14.01.2026 00:20;6;5,1;82;\n"),
		[]byte("n\ttemp C\ttime\n1\t4.5\t2026-01-13T10:00:00\n2\t4.25\t2026-01-13T10:00:10\n3\t-4.25\t2026-01-13T10:00:20\r\n4\t\t2026-01-13T10:00:30\n5\t1e1\t2026-01-13T10:00:40\n"),
	}
	random := rand.New(rand.NewSource(1))
	quickRows := 0
	for i := range 3000 {
		body := mutate(random, logs[i%len(logs)])
		quick, err := read(context.Background(), bytes.NewReader(body), "f.csv", nil, true)
		plain, errPlain := read(context.Background(), bytes.NewReader(body), "f.csv", nil, false)
		if (err == nil) != (errPlain == nil) || err != nil && err.Error() != errPlain.Error() {
			t.Fatalf("%q: %v, plain %v", body, err, errPlain)
		}
		if err != nil {
			continue
		}
		quickRows += quick.Rows
		if describe(quick) != describe(plain) || !sameBits(quick, plain) {
			t.Fatalf("%q:\n%s\nplain\n%s", body, describe(quick), describe(plain))
		}
	}
	if quickRows < 15_000 {
		t.Errorf("only %d rows were compared", quickRows)
	}
}

func sameBits(a, b *Export) bool {
	for i, s := range a.Series {
		o := b.Series[i]
		if !slices.Equal(s.FaceMS, o.FaceMS) || s.Decimals != o.Decimals {
			return false
		}
		for k, v := range s.Val {
			if math.Float64bits(v) != math.Float64bits(o.Val[k]) {
				return false
			}
		}
	}
	return true
}
