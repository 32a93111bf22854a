package desk

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// outdoorDays are five days of half-hours about a mean, which are warmest at 14:30 of the clock.
func outdoorDays(t *testing.T, dir, name string, mean float64) string {
	text := "stamp,air temp (C)\n"
	for i := range 5 * 48 {
		hour := float64(i%48) / 2
		text += fmt.Sprintf("2024-11-%02d %02d:%02d,%.2f\n", 13+i/48, i%48/2, i%2*30, mean+3*math.Cos((hour-14.5)*math.Pi/12))
	}
	return written(t, dir, name, text)
}

// A barn's log alone asks no zone. Beside one from outdoors both are asked it once, each answer shown by the barns' clock:
// of one that stood on +02:00 the first reading and the warmest time of its days are two hours earlier in a winter of UTC.
func TestAZoneIsAskedWhereAnHourMatters(t *testing.T) {
	k, dir := keeper(t), t.TempDir()
	b := added(t, k, Book{}, loggerFile(t, dir, "barn.csv", 4))
	if len(b.Result.ZoneOpen) > 0 || b.Files().Sentence != "1 file was read; no question is open." {
		t.Fatalf("%v, %s", b.Result.ZoneOpen, b.Files().Sentence)
	}
	k = keeper(t)
	b = added(t, k, Book{}, loggerFile(t, dir, "barn.csv", 4), outdoorDays(t, dir, "outdoor.csv", -2))
	if b.Files().Sentence != "2 files: the time zone of all is asked." || b.Shell().Files != (FilesRow{"2, a time zone is asked", MarkWatch}) {
		t.Fatalf("%s, %+v, %+v", b.Files().Sentence, b.Shell().Files, b.doc)
	}
	p := pageOf(t, b, "outdoor.csv")
	q := p.Questions[0]
	if len(p.Questions) != 1 || strings.Join(q.Alike, " ") != "barn.csv" || q.Others != "barn.csv names no time zone either." {
		t.Fatalf("%+v", p.Questions)
	}
	if o := q.Options; len(o) != 1 || o[0].Label != "UTC" || o[0].Preview != "first reading 13 November 2024 00:00 on the barns' clock; its days are warmest about 14:30" {
		t.Errorf("%+v", o)
	}
	if option, preview, _ := b.Typed("outdoor.csv", q, "+02:00", Units{}); option != "+02:00" || !strings.Contains(preview, "12 November 2024 22:00 on") || !strings.HasSuffix(preview, "about 12:30") {
		t.Errorf("%q, %q", option, preview)
	}
	if _, _, problem := b.Typed("outdoor.csv", q, "Barnland", Units{}); !strings.Contains(problem, "is no time zone") {
		t.Error(problem)
	}
	one := edited(t, k, b, Answered("outdoor.csv", q, "+02:00", true))
	if got := one.Files().Sentence; got != "2 files: the time zone of 1 is asked." {
		t.Error(got)
	}
	both := edited(t, k, b, Answered("outdoor.csv", q, "+02:00", false))
	if got := both.Files().Sentence; got != "2 files were read; no question is open." {
		t.Error(got)
	}
	if p = pageOf(t, both, "outdoor.csv"); !strings.Contains(p.Clock, "Time zone +02:00, as you said.") || len(p.Answers) != 1 {
		t.Errorf("%s, %+v", p.Clock, p.Answers)
	}
	// The first reading of the outdoor log, of 13 November 0:00, is at 22:00 UTC of the day before now: 1731448800 s.
	if at := both.Result.Inputs[0].Loggers[1].TempC.Readings.At[0]; at != 1731448800000 {
		t.Error(at)
	}
	later := added(t, k, both, outdoorDays(t, dir, "outdoor2.csv", -3))
	if got := pageOf(t, later, "outdoor2.csv").Clock; !strings.Contains(got, "Time zone +02:00, as you said.") {
		t.Errorf("%s: what was said holds for files written the same way", got)
	}
}

// A winter whose zone is written +00:00 is offered UTC once, whatever its files call it.
func TestUTCIsOfferedOnceUnderOneName(t *testing.T) {
	dir := folderOf(t, map[string]string{"winter.toml": "[winter]\nname = \"W\"\nzone = \"+00:00\"\n[[barn]]\nname = \"A\"\n[[barn.logger]]\nname = \"barn\"\nfiles = [\"barn.csv\"]\nplace = \"room\"\n[[outdoor]]\nname = \"out\"\nfiles = [\"out.csv\"]\n"})
	loggerFile(t, dir, "barn.csv", 4)
	outdoorDays(t, dir, "out.csv", -2)
	k := keeper(t)
	b := opened(t, k, filepath.Join(dir, "winter.toml"))
	if got := b.zoneOptions(); !slices.Equal(got, []string{"UTC"}) {
		t.Errorf("%q", got)
	}
}
