package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"thawbook/app/desk"
)

// put writes files into a folder of the test and returns the folder.
func put(t *testing.T, content map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range content {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

const (
	log = "time,Temperature (°C),Humidity (%)\n2026-11-12 00:00:00,4.0,60.0\n2026-11-12 01:00:00,5.0,61.0\n2026-11-12 02:00:00,7.0,62.0\n"

	goodPlan = `[winter]
name = "A <small> winter"
zone = "Europe/Tallinn"
[[barn]]
name = "Alder"
[[barn.logger]]
name = "room"
files = ["room.csv"]
place = "room"
`
)

// through goes through a door and returns what it printed.
func through(args ...string) (stdout, stderr string, status int) {
	var out, troubles bytes.Buffer
	status = run(context.Background(), args, &out, &troubles)
	return out.String(), troubles.String(), status
}

func TestStatuses(t *testing.T) {
	dir := put(t, map[string]string{
		"room.csv": log, "empty.csv": "", "binary.csv": "\x00\x01\x02\x03", "short.csv": "time,T\n",
		"good.toml":    goodPlan,
		"missing.toml": strings.Replace(goodPlan, "room.csv", "none.csv", 1),
		"unknown.toml": goodPlan + "colour = \"red\"\n",
		"off.toml":     goodPlan + "[[barn.stage]]\nname = \"1\"\non_c = 4\noff_c = 4\n",
	})
	at := func(name string) string { return filepath.Join(dir, name) }
	for _, c := range []struct {
		args   []string
		status int
		says   string // on stderr; nothing at all where empty
	}{
		{[]string{"version"}, done, ""},
		{[]string{"inspect", at("room.csv")}, done, ""},
		{[]string{"inspect", at("room.csv"), "-json"}, done, ""},
		{[]string{"review", "-json", at("good.toml")}, done, ""},
		{[]string{"review", at("good.toml")}, done, ""},
		{[]string{"review", "-beside", at("good.toml"), at("good.toml")}, done, ""},
		{[]string{"review", "-json", "-beside", at("none.toml"), at("good.toml")}, refused, "none.toml does not exist"},
		{[]string{"review", "-beside", at("missing.toml"), at("good.toml")}, refused, "none.csv does not exist"},
		{[]string{"-h"}, done, "usage:"},
		{[]string{"review", "-h"}, done, "usage:"},
		{[]string{"inspect", at("none.csv")}, refused, "none.csv does not exist"},
		{[]string{"inspect", at("empty.csv")}, refused, "empty.csv"},
		{[]string{"inspect", at("binary.csv")}, refused, "binary.csv"},
		{[]string{"inspect", at("short.csv")}, refused, "short.csv"},
		{[]string{"inspect", dir}, refused, "empty.csv"},
		{[]string{"review", at("none.toml")}, refused, "none.toml does not exist"},
		{[]string{"review", dir}, refused, "is a folder"},
		{[]string{"review", at("missing.toml")}, refused, "none.csv does not exist"},
		{[]string{"review", at("unknown.toml")}, refused, "unknown.toml:10:1: unknown key \"barn.logger.colour\""},
		{[]string{"review", at("off.toml")}, refused, "off.toml:13:1:"},
		{[]string{"reviews"}, wrongUsage, "no command"},
		{[]string{"version", "-x"}, wrongUsage, "no command"},
		{[]string{"inspect"}, wrongUsage, "needs a file"},
		{[]string{"inspect", "-xml", at("room.csv")}, wrongUsage, "-xml"},
		{[]string{"inspect", "-answer", "dmy", at("room.csv")}, wrongUsage, "[PATTERN:]ID=OPTION"},
		{[]string{"review"}, wrongUsage, "needs one winter file or plan"},
		{[]string{"review", at("good.toml"), at("good.toml")}, wrongUsage, "needs one winter file or plan"},
	} {
		_, stderr, status := through(c.args...)
		if status != c.status || !strings.Contains(stderr, c.says) || c.says == "" && stderr != "" {
			t.Errorf("%q: status %d, want %d; it says %q", c.args, status, c.status, stderr)
		}
	}
}

// With -json one JSON value stands on stdout and nothing else, whatever happens.
func TestOneValue(t *testing.T) {
	dir := put(t, map[string]string{"room.csv": log, "good.toml": goodPlan, "bad.toml": "["})
	at := func(name string) string { return filepath.Join(dir, name) }
	for _, args := range [][]string{
		{"inspect", "-json", at("room.csv"), at("none.csv")},
		{"inspect", "-json"},
		{"inspect", "-json", "-answer", "x=", at("room.csv")},
		{"review", "-json", at("good.toml")},
		{"review", "-json", at("bad.toml")},
		{"review", "-json"},
	} {
		stdout, _, _ := through(args...)
		in := json.NewDecoder(strings.NewReader(stdout))
		var value any
		if err := in.Decode(&value); err != nil {
			t.Errorf("%q: %v in %q", args, err, stdout)
		}
		if in.More() {
			t.Errorf("%q: there is more behind the value", args)
		}
		if _, list := value.([]any); list != (args[0] == "inspect") {
			t.Errorf("%q: a %T", args, value)
		}
	}
}

// A winter without a barn of the same name is said to be one: nothing is left out without a word.
func TestAWinterBesideWithoutTheBarn(t *testing.T) {
	two := goodPlan + strings.ReplaceAll(goodPlan[strings.Index(goodPlan, "[[barn]]"):], "Alder", "Birch")
	dir := put(t, map[string]string{"room.csv": log, "good.toml": two, "other.toml": strings.Replace(goodPlan, "Alder", "Long shed", 1)})
	stdout, stderr, status := through("review", "-beside", filepath.Join(dir, "other.toml"), filepath.Join(dir, "good.toml"))
	if want := "other.toml has no barn of the same name as one of this winter; its barns: Long shed."; status != done || stderr != "" || !strings.Contains(stdout, want) {
		t.Errorf("status %d, %q, %q", status, stderr, stdout)
	}
}

func TestNamesStayAsTheyAre(t *testing.T) {
	dir := put(t, map[string]string{"room.csv": log, "good.toml": goodPlan})
	stdout, _, _ := through("review", "-json", filepath.Join(dir, "good.toml"))
	if !strings.Contains(stdout, `"A <small> winter"`) {
		t.Errorf("the winter's name is not in %s", stdout)
	}
}

func TestARefusedPlanSaysWhereAndWhy(t *testing.T) {
	dir := put(t, map[string]string{"bad.toml": goodPlan + "colour = \"red\"\n"})
	stdout, _, _ := through("review", "-json", filepath.Join(dir, "bad.toml"))
	var document desk.ReviewDoc
	if err := json.Unmarshal([]byte(stdout), &document); err != nil {
		t.Fatal(err)
	}
	if len(document.Remarks) != 1 || document.Remarks[0].Code != "plan_refused" || !strings.Contains(document.Remarks[0].Text, "bad.toml:10:1") {
		t.Errorf("remarks %+v", document.Remarks)
	}
}

func TestTheFolderOfAReview(t *testing.T) {
	dir := put(t, map[string]string{"room.csv": log, "good.toml": goodPlan})
	out := filepath.Join(dir, "a", "b")
	stdout, stderr, status := through("review", "-json", "-out", out, filepath.Join(dir, "good.toml"))
	if status != done {
		t.Fatal(stderr)
	}
	written, err := os.ReadFile(filepath.Join(out, "review.json"))
	if err != nil || string(written) != stdout {
		t.Errorf("review.json is not what was printed: %v", err)
	}
	entries, err := os.ReadDir(out)
	if err != nil || len(entries) < 2 {
		t.Errorf("%d files, %v", len(entries), err)
	}
	_, stderr, status = through("review", "-out", filepath.Join(dir, "room.csv"), filepath.Join(dir, "good.toml"))
	if status != refused || !strings.Contains(stderr, "could not be written") {
		t.Errorf("a folder that is a file: status %d, %q", status, stderr)
	}
}

func TestStoppedByTheKeeper(t *testing.T) {
	dir := put(t, map[string]string{"room.csv": log, "good.toml": goodPlan})
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for _, args := range [][]string{{"inspect", filepath.Join(dir, "room.csv")}, {"review", filepath.Join(dir, "good.toml")}} {
		var out, troubles bytes.Buffer
		if status := run(ctx, args, &out, &troubles); status != refused || out.Len() > 0 || !strings.Contains(troubles.String(), "stopped") {
			t.Errorf("%q: status %d, %q, %q", args, status, out.String(), troubles.String())
		}
	}
}

func TestAnAnswerIsTakenApart(t *testing.T) {
	var answers answerFlags
	for _, text := range []string{"zone=UTC", "north*.csv:day_month=dmy", "C:/logs/a.csv:zone=+02:00"} {
		if err := answers.Set(text); err != nil {
			t.Errorf("%s: %v", text, err)
		}
	}
	for i, want := range []struct{ file, id, option string }{
		{"", "zone", "UTC"}, {"north*.csv", "day_month", "dmy"}, {"C:/logs/a.csv", "zone", "+02:00"},
	} {
		if a := answers[i]; a.File != want.file || a.ID != want.id || a.Option != want.option {
			t.Errorf("got %+v, want %+v", a, want)
		}
	}
	for _, text := range []string{"", "zone", "zone=", "=UTC", "a:=UTC"} {
		if answers.Set(text) == nil {
			t.Errorf("%q passes for an answer", text)
		}
	}
}

func TestTheSameTextTwice(t *testing.T) {
	dir := put(t, map[string]string{"room.csv": log, "good.toml": goodPlan})
	first, _, _ := through("review", "-json", filepath.Join(dir, "good.toml"))
	for range 5 {
		if again, _, _ := through("review", "-json", filepath.Join(dir, "good.toml")); again != first {
			t.Fatal("the review differs from one run to the next")
		}
	}
}
