//go:build ticker

package ui

import (
	"bufio"
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime/debug"
	"strconv"
	"syscall"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	fyneapp "fyne.io/fyne/v2/app"

	"thawbook/app/desk"
)

// The real window under load: how late a ticker of 20 ms comes on its main loop while large data are opened, looked at
// and given up. It needs a screen and OpenGL, so it is no part of the tests:
//
//	xvfb-run go test -tags=migrated_fynedo,ticker -run '^$' -bench Ticker -benchtime 1x ./app/ui

// TestMain gives the toolkit the process's first thread; the benchmarks run beside it.
func TestMain(m *testing.M) {
	status := make(chan int, 1)
	patience = shippedPatience
	debug.SetGCPercent(25) // as the program does
	KeepQuick()
	app := fyneapp.NewWithID("thawbook.ticker")
	app.NewWindow("the toolkit lives as long as this").Show()
	app.Lifecycle().SetOnStarted(func() {
		go func() { status <- m.Run(); fyne.Do(app.Quit) }()
	})
	app.Run()
	os.Exit(<-status)
}

const tick = 20 * time.Millisecond

// ticker measures the main loop.
type ticker struct {
	stop    chan struct{}
	late    time.Duration // of the latest tick, of all since the stage began
	worst   time.Duration
	stage   string
	stages  []string
	stageAt time.Time
	tells   int
	cpu     time.Duration // of the main loop at the latest tick
	busiest time.Duration // what it worked between two ticks at most
}

// threadCPU is what the calling thread has worked so far: beside other programs a better measure than a clock.
func threadCPU() time.Duration {
	var u syscall.Rusage
	_ = syscall.Getrusage(1 /* RUSAGE_THREAD */, &u)
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

func newTicker() *ticker {
	t := &ticker{stop: make(chan struct{})}
	go func() {
		clock := time.NewTicker(tick)
		defer clock.Stop()
		for {
			select {
			case <-t.stop:
				return
			case due := <-clock.C:
				fyne.Do(func() {
					t.late = max(t.late, time.Since(due))
					now := threadCPU()
					t.busiest, t.cpu = max(t.busiest, now-t.cpu), now
				})
			}
		}
	}()
	return t
}

// begin ends a stage and begins the next.
func (t *ticker) begin(stage string) {
	if t.stage != "" {
		t.worst = max(t.worst, t.late)
		t.stages = append(t.stages, fmt.Sprintf("%-28s %5d ms late at most, %4d ms worked at once at most, took %6d ms", t.stage, t.late.Milliseconds(), t.busiest.Milliseconds(), time.Since(t.stageAt).Milliseconds()))
	}
	t.stage, t.late, t.busiest, t.stageAt = stage, 0, 0, time.Now()
}

// window is a real window under load.
type window struct {
	*UI
	*ticker
	b *testing.B
}

func openWindow(b *testing.B) *window {
	w := &window{b: b, ticker: newTicker()}
	w.UI = &UI{Do: fyne.Do, Version: "ticker", Keeper: &desk.Keeper{Drafts: b.TempDir()}, Memory: &remembered{screens: map[string]desk.Screen{}}, Quit: func() {},
		Demo: func(context.Context, bool, func(int, int)) (string, error) { return "", nil }}
	w.main(func() {
		w.Show(fyne.CurrentApp())
		shown := w.work.progress
		w.work.progress = func(done, total int64, what string) { w.tells++; shown(done, total, what) }
	})
	time.Sleep(time.Second)
	return w
}

func (w *window) main(do func()) { fyne.DoAndWait(do) }

// idle waits until all work is over and drawn.
func (w *window) idle() {
	for quiet := 0; quiet < 10; time.Sleep(tick) {
		busy := false
		w.main(func() { busy = w.work.busy() })
		if quiet++; busy {
			quiet = 0
		}
	}
}

// walk does something in the window as a stage and waits for what comes of it.
func (w *window) walk(stage string, do func()) {
	w.main(func() { w.begin(stage); do() })
	w.idle()
}

// cancel opens something anew and gives it up after a while; the answer is the time until nothing runs.
func (w *window) cancel(path string, after time.Duration) {
	var asked, ended time.Time
	w.main(func() { w.begin(fmt.Sprintf("given up after %d ms", after.Milliseconds())); w.Take([]string{path}) })
	time.Sleep(after)
	busy := false
	w.main(func() { busy = w.work.busy(); asked = time.Now(); w.stopWork() })
	for running := true; running; time.Sleep(time.Millisecond) {
		w.main(func() { running, ended = w.work.busy(), time.Now() })
	}
	w.b.Logf("given up after %d ms (was it running: %v): answered in %d ms", after.Milliseconds(), busy, ended.Sub(asked).Milliseconds())
	w.idle()
}

// tour opens the data and turns every page.
func (w *window) tour(path string) {
	for _, after := range []time.Duration{50, 200, 500, 1000, 2000} {
		w.cancel(path, after*time.Millisecond)
	}
	w.tells = 0
	w.walk("open", func() { w.Take([]string{path}) })
	w.b.Logf("%d steps of progress shown; files %s", w.tells, w.book.Files().Sentence)
	for k, after := range []time.Duration{5, 50, 200, 500, 1000} { // what follows a change is given up
		w.main(func() { // other days: nothing that was worked out before will do
			w.begin("worked out anew, given up")
			if e, ok := w.book.SetBeesInOut(0, desk.BeesTime{In: fmt.Sprintf("2015-11-01 0%d:00", k+1)}); ok {
				w.edit(e)
			}
		})
		time.Sleep(200*time.Millisecond + after*time.Millisecond)
		var asked, ended time.Time
		busy := false
		w.main(func() { busy, asked = w.work.busy(), time.Now(); w.stopWork() })
		for running := true; running; time.Sleep(time.Millisecond) {
			w.main(func() { running, ended = w.work.busy(), time.Now() })
		}
		w.b.Logf("working it out, given up after %d ms (was it running: %v): answered in %d ms", 200+after, busy, ended.Sub(asked).Milliseconds())
	}
	w.walk("worked out anew", w.workOut)
	w.walk("timeline", func() { w.showPage(1) })
	w.walk("spells", func() { w.showPage(2) })
	w.walk("stages", func() { w.showPage(3) })
	w.walk("air and water", func() { w.showPage(4) })
	w.walk("before next winter", func() { w.showPage(5) })
	w.walk("first look", func() { w.showPage(0) })
	w.walk("files", w.showFiles)
	w.walk("a file", func() { all := w.book.Files().Files; w.showFile(all[len(all)-1].Name) })
	w.walk("the list scrolled", func() { w.UI.files.list.ScrollToBottom() })
	w.walk("barn", func() { w.showBarn(0) })
	w.walk("degrees Fahrenheit", func() { w.setTemperature(desk.Fahrenheit) })
	w.walk("dark", func() { w.setVariant(Dark) })
	w.walk("light", func() { w.setVariant(Light) })
	w.walk("rename", func() {
		if e, changes := w.book.Rename("Large", nil); changes {
			w.edit(e)
		}
	})
	w.walk("undo", w.undo)
	w.main(func() { w.begin("") })
	close(w.stop)
	for _, s := range w.stages {
		fmt.Println(s) // a benchmark keeps only ten lines of its log
	}
	w.b.ReportMetric(float64(w.worst.Milliseconds()), "ms_late")
	w.main(func() { w.win.Hide() })
}

// table writes a log of a minute's steps with so many pairs of columns; another seed makes other readings.
func table(b *testing.B, path string, rows, pairs, seed int) {
	file, err := os.Create(path)
	if err != nil {
		b.Fatal(err)
	}
	out := bufio.NewWriterSize(file, 1<<20)
	out.WriteString("Time")
	for p := range pairs {
		fmt.Fprintf(out, ",Temperature %d (°C),Humidity %d (%%)", p+1, p+1)
	}
	at := time.Date(2015, time.November, 1, 0, 0, 0, 0, time.UTC)
	line := []byte{}
	for i := range rows {
		line = at.Add(time.Duration(i)*time.Minute).AppendFormat(append(line[:0], '\n'), "2006-01-02 15:04:05")
		for p := range pairs {
			line = strconv.AppendFloat(append(line, ','), 4+1.5*math.Sin(float64(i+7*p+3*seed)/700)+0.1*math.Sin(float64(i*(p+seed))), 'f', 1, 64)
			line = strconv.AppendFloat(append(line, ','), 62+9*math.Sin(float64(i+p)/1100), 'f', 1, 64)
		}
		out.Write(line)
	}
	out.WriteByte('\n')
	if err := out.Flush(); err != nil {
		b.Fatal(err)
	}
	if err := file.Close(); err != nil {
		b.Fatal(err)
	}
}

func BenchmarkTickerManyRows(b *testing.B) {
	path := filepath.Join(b.TempDir(), "room.csv")
	table(b, path, 10_000_000, 1, 1)
	openWindow(b).tour(path)
}

func BenchmarkTickerManyFiles(b *testing.B) {
	dir := b.TempDir()
	for i := range 500 {
		table(b, filepath.Join(dir, fmt.Sprintf("logger %03d.csv", i)), 500, 1, i)
	}
	openWindow(b).tour(dir)
}

func BenchmarkTickerManyColumns(b *testing.B) {
	path := filepath.Join(b.TempDir(), "all.csv")
	table(b, path, 2000, 499, 1)
	openWindow(b).tour(path)
}
