package ui

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// wideFile is six days of hourly readings of so many loggers side by side, a temperature and a humidity each. Every
// seventh is a degree warmer than the one before it, every fifth stands still, every third runs on its own.
func wideFile(t *testing.T, loggers int) string {
	t.Helper()
	var text bytes.Buffer
	text.WriteString("Time")
	for k := range loggers {
		fmt.Fprintf(&text, ",Temperature %d (°C),Humidity %d (%%)", k+1, k+1)
	}
	at := time.Date(2024, time.November, 13, 0, 0, 0, 0, time.UTC)
	for h := range 6 * 24 {
		text.WriteString(at.Add(time.Duration(h) * time.Hour).Format("\n2006-01-02 15:04"))
		for k := range loggers {
			tempC := 3 + float64(k%7) + math.Sin(float64(h)/24)
			switch {
			case k%5 == 0 && h > 20 && h < 120:
				tempC = 4
			case k%3 == 0:
				tempC = 4 + 3*math.Sin(float64(h*(k+1)))
			}
			fmt.Fprintf(&text, ",%.1f,%.1f", tempC, 70+20*math.Sin(float64(h+k)/90))
		}
	}
	path := filepath.Join(t.TempDir(), fmt.Sprintf("%d loggers.csv", loggers))
	if err := os.WriteFile(path, text.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// objects counts what there is to draw and to lay out in an object; of pages behind tabs those that were made.
func objects(o fyne.CanvasObject) int {
	n := 1
	switch w := o.(type) {
	case *later:
		if w.page != nil {
			n += objects(w.page)
		}
	case *pageTabs:
		n += objects(w.titles)
		for _, page := range w.pages {
			n += objects(page)
		}
	case *fyne.Container:
		for _, c := range w.Objects {
			n += objects(c)
		}
	case fyne.Widget:
		for _, c := range test.WidgetRenderer(w).Objects() {
			n += objects(c)
		}
	}
	return n
}

// pagesDrawn are how many objects each page has, with the rail beside it.
func pagesDrawn(t *testing.T, loggers int) (out map[string]int) {
	s := show(t)
	s.take(t, wideFile(t, loggers))
	out = map[string]int{}
	for i, name := range pageNames {
		s.page = i
		s.refresh()
		s.main.until(t, "the page is made", func() bool {
			return s.tabs != nil && s.tabs.chosen() == i && !s.barnViews.making && !s.besideViews.making
		})
		out[name] = objects(s.win.Content())
	}
	s.showFiles()
	s.settled(t)
	s.main.until(t, "the file is made", func() bool { return !s.fileViews.making && len(s.files.detail.Objects) > 0 })
	out["Files"] = objects(s.win.Content())
	return out
}

// Of hundreds of loggers, a thousand columns, no more is made than of forty: what is in sight, and the first of long
// lists. A half more is for rows whose words are longer.
func TestHundredsOfLoggersDrawLikeForty(t *testing.T) {
	few, many := pagesDrawn(t, 40), pagesDrawn(t, 499)
	for page, n := range many {
		t.Logf("%s: %d objects for 40 loggers, %d for 499", page, few[page], n)
		if n > 3*few[page]/2 {
			t.Errorf("%s has %d objects for 499 loggers, %d for 40", page, n, few[page])
		}
	}
}
