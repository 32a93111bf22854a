package desk

import (
	"archive/zip"
	"bytes"
	"compress/gzip"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"thawbook/app/engine"
	"thawbook/app/winter"
)

// Two windows that begin a winter in the same second get a draft each.
func TestTwoDraftsInOneSecond(t *testing.T) {
	was := now
	defer func() { now = was }()
	now = func() int64 { return 1763000000000 }
	drafts, dir := t.TempDir(), t.TempDir()
	var both sync.WaitGroup
	paths := make([]string, 6)
	for i := range paths {
		log := loggerFile(t, dir, fmt.Sprintf("l%d.csv", i), float64(i))
		both.Go(func() {
			k := &Keeper{Drafts: drafts}
			b, err := k.Add(context.Background(), Book{}, []string{log}, nil)
			if err != nil {
				t.Error(err)
				return
			}
			paths[i] = b.Path
			k.Close()
		})
	}
	both.Wait()
	for i, path := range paths {
		k := keeper(t)
		if b := opened(t, k, path); len(b.Result.Files) != 1 || b.Result.Files[0].Name != fmt.Sprintf("l%d.csv", i) {
			t.Errorf("draft %d holds %+v", i, b.Result.Files)
		}
	}
}

// What another window has open is not cleared away by one that may only look.
func TestAnothersDraftStays(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	second := &Keeper{Drafts: k.Drafts}
	defer second.Close()
	seen := opened(t, second, b.Path)
	if _, err := second.KeepAs(seen, filepath.Join(t.TempDir(), "kept")); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(b.Path); err != nil {
		t.Errorf("the first window's draft is gone: %v", err)
	}
	if _, err := k.Edit(b, winter.Rename{Winter: "still here", Barns: b.BarnNames()}); err != nil {
		t.Error(err)
	}
}

func TestEditsGoToTheWinterTheyWereMeantFor(t *testing.T) {
	k := keeper(t)
	a := added(t, k, Book{}, loggerFile(t, t.TempDir(), "a.csv", 4))
	dir := t.TempDir()
	loggerFile(t, dir, "a.csv", 4)
	b := opened(t, k, written(t, dir, "plan.toml", planText))
	edit := winter.Rename{Winter: "x", Barns: []string{"y", "z"}}
	_, edited := k.Edit(a, edit)
	_, undone := k.UndoEdit(a)
	_, kept := k.KeepAs(a, filepath.Join(t.TempDir(), "x"))
	_, added := k.Add(context.Background(), a, []string{loggerFile(t, t.TempDir(), "c.csv", 4)}, nil)
	for _, err := range []error{edited, undone, kept, added} {
		if !errors.Is(err, errOther) {
			t.Errorf("%v", err)
		}
	}
	if k.store.Winter().Name != b.Name() || a.Same(b) {
		t.Errorf("%q", k.store.Winter().Name)
	}
}

// Once the other window is closed, opening the winter again makes it changeable.
func TestOpeningAgainAfterTheOtherClosed(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "a.csv", 4))
	second := keeper(t)
	if seen := opened(t, second, b.Path); seen.Changeable() {
		t.Error("two windows can change one winter")
	}
	k.Close()
	if seen := opened(t, second, b.Path); !seen.Changeable() {
		t.Errorf("%+v", seen.Standing())
	}
}

// gzipped and zipped pack by the standard library's writers.
func gzipped(t *testing.T, path, text string) string {
	t.Helper()
	var out bytes.Buffer
	w := gzip.NewWriter(&out)
	if _, err := io.WriteString(w, text); err != nil {
		t.Fatal(err)
	}
	w.Close()
	return written(t, filepath.Dir(path), filepath.Base(path), out.String())
}

func zipped(t *testing.T, path string, content ...string) string {
	t.Helper()
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for i := 0; i < len(content); i += 2 {
		f, err := w.Create(content[i])
		if err == nil {
			_, err = io.WriteString(f, content[i+1])
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	w.Close()
	return written(t, filepath.Dir(path), filepath.Base(path), out.String())
}

func textOf(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// Packed files are kept as they came, under whatever name, are read there, and are known again.
func TestPackedFilesAreKept(t *testing.T) {
	one, two := t.TempDir(), t.TempDir()
	a, b := textOf(t, loggerFile(t, one, "a.csv", 4)), textOf(t, loggerFile(t, two, "b.csv", 9))
	paths := []string{
		gzipped(t, filepath.Join(one, "room.csv.gz"), a), gzipped(t, filepath.Join(two, "room.csv.gz"), b), gzipped(t, filepath.Join(two, "q!q 15-00.csv.gz"), a+"\n"),
		zipped(t, filepath.Join(one, "logs.zip"), "a [1].csv", b+"\n", "in/wall.csv", a+"\n\n"),
	}
	k := keeper(t)
	book := added(t, k, Book{}, paths...)
	if len(book.Faults) != 0 || len(book.Result.Files) != 5 || book.Result.Refused() {
		t.Fatalf("%+v, %d files", book.Faults, len(book.Result.Files))
	}
	again := added(t, k, book, paths...)
	if len(again.Shell().Tray) != 0 || len(again.Faults) != 5 || !strings.Contains(again.Faults[4].Text, "already here") {
		t.Errorf("added again: %d in the tray, %+v", len(again.Shell().Tray), again.Faults)
	}
	out := t.TempDir()
	said, err := k.GiveBack(context.Background(), out, nil)
	if err != nil || !strings.HasPrefix(said, "4 files lie in") {
		t.Errorf("%q, %v", said, err)
	}
	if err := k.SavePlan(filepath.Join(out, "plan.toml")); err != nil {
		t.Fatal(err)
	}
	result, err := engine.ReviewFile(context.Background(), filepath.Join(out, "plan.toml"), nil)
	if err != nil || result.Refused() || len(result.Files) != 5 || result.Barns[0].Verdict.Held.Figure.Mid != book.Result.Barns[0].Verdict.Held.Figure.Mid {
		t.Errorf("the plan and its files are another winter: %v, %d files", err, len(result.Files))
	}
}

// A name in a plan that meant no file does not take files that come later.
func TestAPatternTakesNothingLater(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	b := opened(t, k, written(t, dir, "plan.toml", strings.Replace(planText, `files = ["a.csv"]`, `files = ["*.csv"]`, 1)))
	b = added(t, k, b, loggerFile(t, t.TempDir(), "x.csv", 4))
	if n := b.Result.Inputs[0].Loggers[0].TempC.Len(); n != 0 {
		t.Errorf("a file in the tray gave %d readings to another logger", n)
	}
}

// Loggers that bear one name go through a plan: beside each other in the tray, and apart in a new winter.
func TestLoggersOfOneName(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "room.csv", 4), loggerFile(t, t.TempDir(), "room.csv", 5))
	if s := b.Shell(); len(s.Barns[0].Loggers) != 2 || s.Barns[0].Loggers[1].Name != "room (2)" {
		t.Errorf("%+v", s.Barns[0].Loggers)
	}
	added(t, k, b, loggerFile(t, t.TempDir(), "room.csv", 6), loggerFile(t, t.TempDir(), "room.csv", 7))
	path := filepath.Join(t.TempDir(), "plan.toml")
	if err := k.SavePlan(path); err != nil {
		t.Fatal(err)
	}
	if w, err := engine.ReadPlan(path); err != nil || len(w.Tray) != 2 || len(w.Barns[0].Loggers) != 2 {
		t.Errorf("%v", err)
	}
}

func TestAPanicIsAnError(t *testing.T) {
	noted := ""
	k := Keeper{Crash: func(note string) { noted = note }}
	err := k.Guarded(func() error { panic("secret.csv") })
	if err == nil || strings.Contains(err.Error(), "secret") || strings.Contains(noted, "secret") || !strings.Contains(noted, "TestAPanicIsAnError") {
		t.Errorf("%v, %q", err, noted)
	}
}

// Of two loggers called "1" the one that shares its file with a "2" is told by its file.
func TestLoggersOfOneNameAreToldByTheirFiles(t *testing.T) {
	dir := t.TempDir()
	both := logOf("Time,Temp 1 (°C),RH 1 (%),Temp 2 (°C),RH 2 (%)", "2024-11-13 00:00", 2, 60, isoFace, func(time.Time) string { return "4.0,60,4.5,61" })
	b := added(t, keeper(t), Book{}, loggerFile(t, dir, "1.csv", 4), written(t, dir, "pair.csv", both))
	var names []string
	for _, l := range b.Shell().Barns[0].Loggers {
		names = append(names, l.Name)
	}
	if got := strings.Join(names, ", "); got != "1, pair 1, 2" {
		t.Error(got)
	}
}
