package ui

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"thawbook/app/desk"
)

// twentyLoggers is a winter file of twenty loggers over five months at a minute, and how many bytes they came as.
func twentyLoggers(b *testing.B) (path string, bytes int) {
	dir := b.TempDir()
	at := time.Date(2025, time.November, 1, 0, 0, 0, 0, time.UTC)
	for k := range 20 {
		var text strings.Builder
		text.WriteString("Time,Temperature (°C),Humidity (%)\n")
		for i := range 216000 {
			text.WriteString(at.Add(time.Duration(i) * time.Minute).Format("2006-01-02 15:04:05"))
			fmt.Fprintf(&text, ",%.1f,%.1f\n", 4+1.5*math.Sin(float64(i+7*k)/700)+0.1*math.Sin(float64(i*k)), 62+9*math.Sin(float64(i+k)/1100))
		}
		bytes += text.Len()
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("room %d.csv", k)), []byte(text.String()), 0o600); err != nil {
			b.Fatal(err)
		}
	}
	k := desk.Keeper{Drafts: b.TempDir()}
	book, err := k.Add(context.Background(), desk.Book{}, []string{dir}, nil)
	if err == nil {
		book, err = k.KeepAs(book, filepath.Join(b.TempDir(), "twenty"))
	}
	if err != nil {
		b.Fatal(err)
	}
	k.Close()
	return book.Path, bytes
}

// BenchmarkFirstPlot opens the winter in the window on its Timeline and draws the window, in software. The yardstick is
// engine's BenchmarkTwentyByTheLibrary: the same readings through the standard library's CSV reader.
func BenchmarkFirstPlot(b *testing.B) {
	path, bytes := twentyLoggers(b)
	info, err := os.Stat(path)
	if err != nil {
		b.Fatal(err)
	}
	b.ResetTimer()
	for range b.N {
		b.StopTimer()
		m := &turn{}
		k := &desk.Keeper{}
		u := &UI{Do: m.do, Keeper: k, Memory: &remembered{screens: map[string]desk.Screen{path: {Page: 1}}}, Quit: func() {}}
		u.Show(test.NewTempApp(b))
		u.win.Resize(fyne.NewSize(1280, 800))
		b.StartTimer()
		u.Take([]string{path})
		for u.work.busy() || u.plot == nil || u.plot.plot == nil {
			if !m.step() {
				time.Sleep(time.Millisecond)
			}
		}
		u.win.Canvas().Capture()
		b.StopTimer()
		k.Close()
		b.StartTimer()
	}
	b.ReportMetric(100*float64(info.Size())/float64(bytes), "%_of_originals")
}
