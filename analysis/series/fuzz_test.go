package series_test

import (
	"encoding/binary"
	"math"
	"testing"
	"time"

	"thawbook/analysis/series"
)

// FuzzCurve makes a curve of any bytes - two for each step, two for each value - and asks everything of
// it: nothing panics, and what is always true holds.
func FuzzCurve(f *testing.F) {
	f.Add([]byte{}, int64(0), int64(10), int64(5))
	f.Add([]byte{1, 0, 1, 0, 2, 0, 255, 255, 3, 0, 9, 9}, int64(-5), int64(400), int64(300))
	f.Fuzz(func(t *testing.T, data []byte, from, length, maxStep int64) {
		const far = 1 << 40
		if from < -far || from > far || length < 0 || length > 1<<22 {
			return
		}
		c, s := fromBytes(data), series.Span{From: from, To: from + length}
		c.MaxStepMS = maxStep
		if _, err := series.NewReadings(c.Readings.At, c.Val); err != nil {
			t.Fatal(err)
		}
		b, o := c.Bin(s), c.Outside(s, -100, 100)
		known := c.KnownMS(s)
		if b.KnownMS != known || o.KnownMS != known || series.LengthMS(c.Known(s)) != known || known > length {
			t.Errorf("known %d, bin %d, outside %d", known, b.KnownMS, o.KnownMS)
		}
		if o.BelowMS+o.AboveMS > float64(known)*(1+1e-12) || b.N > c.Len() || b.Min > b.Max {
			t.Errorf("bin %+v, outside %+v", b, o)
		}
		if m := b.Weighted(); m < b.Min-1e-6 || m > b.Max+1e-6 {
			t.Errorf("mean %g outside %g to %g", m, b.Min, b.Max)
		}
		above := 0.0
		for _, r := range c.Above(s, 100) {
			above += r.To - r.From
		}
		near(t, "runs above", above, o.AboveMS, 1e-3*(1+float64(b.N)))
		part := c.Slice(s)
		for _, d := range []series.Curve{part, c.Map(math.Sqrt), series.Zip(c, part, math.Atan2),
			series.ZipAlong(c, part, math.Hypot), series.Mean([]series.Curve{c, part}, minute)} {
			if _, err := series.NewReadings(d.Readings.At, d.Val); err != nil {
				t.Error(err)
			}
		}
		cols := make([]series.Column, 17)
		series.NewPyramid(c).Columns(cols, s)
		for _, col := range cols {
			if col.Lo > col.Hi || col.First < col.Lo || col.Last > col.Hi {
				t.Errorf("column %+v", col)
			}
		}
		if days := series.LocalDays(s, time.UTC); series.LengthMS(days) != length {
			t.Errorf("days %v", days)
		}
	})
}

// fromBytes reads steps and values; a step's top bit makes a break.
func fromBytes(data []byte) series.Curve {
	c, at := series.Curve{}, int64(0)
	for ; len(data) >= 4; data = data[4:] {
		step := binary.LittleEndian.Uint16(data)
		at += 1 + int64(step&0x7fff)
		if step&0x8000 != 0 {
			c.Breaks = append(c.Breaks, at)
		}
		c.Readings.At = append(c.Readings.At, at)
		c.Val = append(c.Val, float64(int16(binary.LittleEndian.Uint16(data[2:])))/10)
	}
	return c
}
