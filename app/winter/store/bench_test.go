package store

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"thawbook/app/winter"
)

// logOf is a log of n rows a minute apart: a slow wave with a jitter, as a logger in a barn prints it.
func logOf(seed, n int) string {
	var text strings.Builder
	text.WriteString("Time,Temperature (°C),Humidity (%)\n")
	state := uint32(seed)*2654435761 + 1
	for i := range n {
		state = state*1664525 + 1013904223
		jitter := float64(state>>16)/65536 - 0.5
		day, hour, minute := 1+i/1440%28, i/60%24, i%60
		fmt.Fprintf(&text, "2025-%02d-%02d %02d:%02d:00,%.1f,%.1f\n", 1+i/40320%12, day, hour, minute,
			4+1.5*math.Sin(float64(i)/700)+0.3*jitter, 62+9*math.Sin(float64(i)/1100)+jitter)
	}
	return text.String()
}

func arrival(came, text string) Arrival {
	sum := sha256.Sum256([]byte(text))
	return Arrival{Came: came, SHA256: hex.EncodeToString(sum[:]), Open: func() (io.ReadCloser, error) { return io.NopCloser(strings.NewReader(text)), nil }}
}

// BenchmarkOpen opens a winter of twenty loggers over five months at a minute and reads all their files back.
func BenchmarkOpen(b *testing.B) {
	path := filepath.Join(b.TempDir(), "w.thawbook")
	s, err := Create(path, Step{What: "begun", Winter: winter.Winter{Name: "W", Zone: "UTC"}})
	if err != nil {
		b.Fatal(err)
	}
	var all []Arrival
	size := 0
	for i := range 20 {
		text := logOf(i, 216000)
		size += len(text)
		all = append(all, arrival(fmt.Sprintf("l%d.csv", i), text))
	}
	if _, err := s.Take(context.Background(), all); err != nil {
		b.Fatal(err)
	}
	s.Close()
	b.SetBytes(int64(size))
	for b.Loop() {
		s, err := Open(path)
		if err != nil {
			b.Fatal(err)
		}
		for _, e := range s.Exports() {
			in, err := s.OpenExport(e.Name)
			if err != nil {
				b.Fatal(err)
			}
			if _, err := io.Copy(io.Discard, in); err != nil {
				b.Fatal(err)
			}
			in.Close()
		}
		s.Close()
	}
}
