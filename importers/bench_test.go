package importers

import (
	"bytes"
	"context"
	"encoding/csv"
	"io"
	"strconv"
	"testing"
	"time"
)

// benchRows is five months of a logger that reports each minute.
const benchRows = 216_000

func BenchmarkRead(b *testing.B) {
	body := manyRows(benchRows)
	b.SetBytes(int64(len(body)))
	b.ReportAllocs()
	for b.Loop() {
		e, err := Read(context.Background(), bytes.NewReader(body), "f.csv", nil)
		if err != nil || e.Rows != benchRows {
			b.Fatal(err, e)
		}
	}
}

// BenchmarkStandardLibrary does the same work on the same bytes with encoding/csv, time.Parse and ParseFloat.
func BenchmarkStandardLibrary(b *testing.B) {
	body := manyRows(benchRows)
	b.SetBytes(int64(len(body)))
	b.ReportAllocs()
	for b.Loop() {
		if n := standardRows(b, body); n != benchRows {
			b.Fatal(n)
		}
	}
}

func standardRows(b *testing.B, body []byte) int {
	r := csv.NewReader(bytes.NewReader(body))
	r.ReuseRecord = true
	if _, err := r.Read(); err != nil {
		b.Fatal(err)
	}
	var at []int64
	var temp, relHum []float64
	for {
		record, err := r.Read()
		if err == io.EOF {
			return len(at) + len(temp) - len(relHum)
		}
		t, err1 := time.Parse("2006-01-02T15:04:05", record[0])
		v, err2 := strconv.ParseFloat(record[1], 64)
		h, err3 := strconv.ParseFloat(record[2], 64)
		if err1 != nil || err2 != nil || err3 != nil {
			b.Fatal(record)
		}
		at, temp, relHum = append(at, t.UnixMilli()), append(temp, v), append(relHum, h)
	}
}
