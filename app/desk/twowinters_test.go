package desk

import (
	"context"
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"thawbook/app/winter"
)

// winterOf is a plan of a barn's forty days from 1 December, with its log: a mean, a daily wave and a slow one.
func winterOf(t *testing.T, name, barn string, year int, meanC float64) string {
	t.Helper()
	log := logOf("time,temperature (°C)", fmt.Sprintf("%d-12-01 00:00", year), 40, 30, isoFace, func(at time.Time) string {
		hour := float64(at.UnixMilli()) / 3600000
		return fmt.Sprintf("%.2f", meanC+math.Sin(2*math.Pi*hour/24)+0.3*math.Sin(2*math.Pi*hour/(17+meanC)))
	})
	plan := fmt.Sprintf("[winter]\nname = %q\nzone = \"UTC\"\n[[barn]]\nname = %q\nbees_in = %d-12-01\nbees_out = %d-01-10\n[[barn.logger]]\nname = \"in\"\nfiles = [\"in.csv\"]\nplace = \"room\"\n", name, barn, year, year+1)
	return filepath.Join(folderOf(t, map[string]string{"winter.toml": plan, "in.csv": log}), "winter.toml")
}

// Two degrees more than the winter before are told, by both winters' names. The lines are drawn on one winter's days: from
// 1 December 2023 to 1 December 2024 are 366 days, for 2024 had a 29 February.
func TestAnotherWinterIsSetBeside(t *testing.T) {
	k := keeper(t)
	b := opened(t, k, winterOf(t, "2024–25", "Ash", 2024, 5))
	if v := b.Beside(0, InOtherWinter, Units{}); len(v.Others) != 0 || !strings.Contains(v.Lacks, "another winter") {
		t.Errorf("%v, %q", v.Others, v.Lacks)
	}
	b, err := k.SetBeside(context.Background(), b, winterOf(t, "2023–24", "Ash", 2023, 3), nil)
	if err != nil {
		t.Fatal(err)
	}
	v := b.Beside(0, InOtherWinter, Units{})
	if want := "Ash, 2024–25 was 2.0 °C warmer than Ash, 2023–24."; plain(v.Sentence) != want {
		t.Errorf("%q, want %q", plain(v.Sentence), want)
	}
	if len(v.Paired) == 0 || !strings.HasPrefix(v.Paired[0], "Paired by day of winter") {
		t.Errorf("%q", v.Paired)
	}
	first := utcMS(t, "2024-12-01 00:00")
	for i, tr := range v.Both.Lanes[0].Traces {
		if want := []string{"2024–25", "2023–24"}[i]; tr.Name != want {
			t.Errorf("beside line %d stands %q, want %q", i, tr.Name, want)
		}
		if got := tr.Curve.Readings.At[0]; got != first {
			t.Errorf("%s begins %v, want 1 December 2024", tr.Name, time.UnixMilli(got).UTC())
		}
	}
	b = edited(t, k, b, winter.AddNote{Note: winter.Note{At: first, Kind: "other", Text: "Quiet."}})
	if v := b.Beside(0, InOtherWinter, Units{}); len(v.Others) != 1 {
		t.Errorf("after a change it stands beside %v", v.Others)
	}
	if b = opened(t, k, winterOf(t, "2022–23", "Ash", 2022, 4)); len(b.Beside(0, InOtherWinter, Units{}).Others) != 0 {
		t.Error("the other winter stands beside another that was opened since")
	}
}

// A winter that can't be set beside is refused with what to do, and all stays as it was.
func TestAWinterThatCantBeSetBesideIsRefused(t *testing.T) {
	k := keeper(t)
	plan := "[winter]\nname = \"Now\"\nzone = \"UTC\"\n[[barn]]\nname = \"Ash\"\n[[barn]]\nname = \"Oak\"\n"
	b := opened(t, k, filepath.Join(folderOf(t, map[string]string{"winter.toml": plan}), "winter.toml"))
	other := strings.NewReplacer("Ash", "Elm", "Oak", "Fir").Replace(plan)
	for path, want := range map[string]string{
		filepath.Join(folderOf(t, map[string]string{"other.toml": other}), "other.toml"): "its barns: Elm, Fir. Give them one name (Edit, Rename)",
		filepath.Join(t.TempDir(), "none.toml"):                                          "none.toml does not exist",
	} {
		after, err := k.SetBeside(context.Background(), b, path, nil)
		if err == nil || !strings.Contains(err.Error(), want) || after.other.result != nil || k.other.result != nil {
			t.Errorf("%v, want %q", err, want)
		}
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := k.SetBeside(ctx, b, winterOf(t, "2023–24", "Ash", 2023, 3), nil); err != context.Canceled {
		t.Errorf("%v, want that it was stopped", err)
	}
}
