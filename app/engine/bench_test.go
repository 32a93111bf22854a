package engine

import (
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"thawbook/app/winter"
	"thawbook/app/winter/store"
)

// minutely is a log of n rows a minute apart, as a logger in a barn prints it, from 1 November 2025 on.
func minutely(seed, n int) string {
	var text strings.Builder
	text.WriteString("Time,Temperature (°C),Humidity (%)\n")
	days := []int{30, 31, 31, 28, 31, 30}
	month, day := 0, 0
	for i := range n {
		if i%1440 == 0 && i > 0 {
			if day++; day == days[month] {
				month, day = month+1, 0
			}
		}
		year, name := 2025, 11+month
		if name > 12 {
			year, name = 2026, name-12
		}
		fmt.Fprintf(&text, "%d-%02d-%02d %02d:%02d:00,%.1f,%.1f\n", year, name, day+1, i/60%24, i%60,
			4+1.5*math.Sin(float64(i+7*seed)/700)+0.1*math.Sin(float64(i*seed)), 62+9*math.Sin(float64(i+seed)/1100))
	}
	return text.String()
}

// twenty is a winter file of twenty loggers over five months at a minute, ten in each of two barns.
func twenty(b *testing.B) string {
	path := filepath.Join(b.TempDir(), "w.thawbook")
	s, err := store.Create(path, store.Step{What: "begun", Winter: winter.Winter{Zone: "UTC"}})
	if err != nil {
		b.Fatal(err)
	}
	defer s.Close()
	w := winter.Winter{Name: "W", Zone: "UTC", Barns: []winter.Barn{{Name: "A"}, {Name: "B"}}}
	for i := range 20 {
		name := fmt.Sprintf("l%d.csv", i)
		taken(b, s, name, minutely(i, 216000))
		barn := &w.Barns[i%2]
		barn.Loggers = append(barn.Loggers, winter.Logger{Name: name, Files: []string{name}, Place: "room"})
	}
	if err := s.Commit(store.Step{What: "add", Winter: w}); err != nil {
		b.Fatal(err)
	}
	return path
}

// BenchmarkOpenTwenty opens the winter and reviews it, from the file to the last figure.
func BenchmarkOpenTwenty(b *testing.B) {
	path := twenty(b)
	for b.Loop() {
		if _, err := ReviewFile(context.Background(), path, nil); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkTwentyByTheLibrary is the yardstick: the same texts, from memory, through the standard library's CSV
// reader, time.Parse and ParseFloat, one file after another, and nothing worked out of them.
func BenchmarkTwentyByTheLibrary(b *testing.B) {
	var texts []string
	for i := range 20 {
		texts = append(texts, minutely(i, 216000))
	}
	for b.Loop() {
		for _, text := range texts {
			parsed(b, text)
		}
	}
}

func parsed(b *testing.B, text string) {
	in := csv.NewReader(strings.NewReader(text))
	in.ReuseRecord = true
	in.Read() // the header
	for {
		row, err := in.Read()
		if err == io.EOF {
			return
		}
		_, err1 := time.Parse("2006-01-02 15:04:05", row[0])
		_, err2 := strconv.ParseFloat(row[1], 64)
		_, err3 := strconv.ParseFloat(row[2], 64)
		if err := errors.Join(err, err1, err2, err3); err != nil {
			b.Fatal(err)
		}
	}
}
