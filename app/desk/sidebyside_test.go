package desk

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"thawbook/analysis/compare"
	"thawbook/app/engine"
	"thawbook/app/winter"
)

// ashAndBirch is a plan with two barns, of which each has one logger and a count of the dead; more is added to B's logger.
const ashAndBirch = `[winter]
name = "2024–25"
zone = "UTC"
[[barn]]
name = "Ash"
bees_in = 2024-11-12T12:00:00
bees_out = 2025-04-01T12:00:00
[[barn.heads]]
at = 2024-11-12T12:00:00
change = 340
[[barn.note]]
at = 2025-04-01T16:00:00
kind = "dead count"
value = 34
[[barn.logger]]
name = "ash"
files = ["ash.csv"]
place = "room"
[[barn]]
name = "Birch"
bees_in = 2024-11-12T12:00:00
bees_out = 2025-04-01T12:00:00
[[barn.note]]
at = 2025-04-01T16:00:00
kind = "dead count"
value = 5
of = 50
[[barn.logger]]
name = "birch"
files = ["birch.csv"]
place = "room"
`

// twoLogs are the logs of both. From 8 to 11 November the loggers lie together in a kitchen at 15 to 17 °C, where birch
// reads 0.4 K more than ash. With the bees Ash has 4.6 °C in the mean and Birch 4.5, which birch reads as 4.9.
func twoLogs(t *testing.T) map[string]string {
	bees := utcMS(t, "2024-11-12 06:00")
	log := func(meanC, offK, pace float64) string {
		return logOf("time,temperature (°C)", "2024-11-08 00:00", 145, 30, isoFace, func(at time.Time) string {
			hour := float64(at.UnixMilli()) / 3600000
			if at.UnixMilli() < bees {
				return fmt.Sprintf("%.2f", 16+math.Sin(2*math.Pi*hour/24)+offK)
			}
			return fmt.Sprintf("%.2f", meanC+offK+1.2*math.Sin(2*math.Pi*hour/24)+math.Sin(2*math.Pi*hour/pace))
		})
	}
	return map[string]string{"ash.csv": log(4.6, 0, 17), "birch.csv": log(4.5, 0.4, 31)}
}

// pairRow is the whole's mean air temperature of a result's only pair.
func pairRow(t *testing.T, r *engine.Result) compare.Row {
	t.Helper()
	setSideBySide(t, r)
	if len(r.Pairs) != 1 || len(r.Pairs[0].Rows) == 0 || r.Pairs[0].Rows[0].Quantity != compare.AirTemperature {
		t.Fatalf("pairs %+v", r.Pairs)
	}
	return r.Pairs[0].Rows[0]
}

func setSideBySide(t *testing.T, r *engine.Result) {
	t.Helper()
	if err := r.SetSideBySide(context.Background()); err != nil {
		t.Fatal(err)
	}
}

func close2(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 0.02 {
		t.Errorf("%s is %g, want %g", what, got, want)
	}
}

// Which barn was warmer? As read 4.6 and 4.9. Three days together show birch 0.4 K high of ash: taken over, the barns are 0.1 K
// apart, which is more than these loggers can tell. The same with the offset set down by hand: Birch has 4.5. Of the dead it is
// said that 34 of 340 are 10 %, as are 5 of 50 looked at (Wilson's intervals by hand: 0.1045 ± 0.0320 and 0.1286 ± 0.0853), and what is to be borne in mind.
func TestTwoBarnsOfWhichOneLoggerReadsHigh(t *testing.T) {
	logs := twoLogs(t)
	first := judgedFiles(t, ashAndBirch, logs)
	asRead := pairRow(t, &first)
	close2(t, "Ash as read", asRead.A, 4.6)
	close2(t, "Birch as read", asRead.B, 4.9)

	byHand := judgedFiles(t, ashAndBirch+"offset_c = -0.4\n", logs)
	row := pairRow(t, &byHand)
	close2(t, "Birch set right", row.B, 4.5)
	close2(t, "added", row.AddedB, -0.4)
	if row.Verdict != compare.CantTell {
		t.Errorf("verdict %s", row.Verdict)
	}
	said := TwoBarnsOf(&byHand, OtherWinter{}, 0, 0, Units{})
	if want := "Ash read 0.1 °C warmer than Birch: which was the warmer is more than these loggers can tell."; plain(said.Sentence) != want {
		t.Errorf("%q, want %q", said.Sentence, want)
	}
	if want := "As read, Ash had 4.6 °C and Birch 4.9 °C; set right by checks of the loggers, 4.6 °C and 4.5 °C. "; !strings.HasPrefix(plain(said.Sure), want) {
		t.Errorf("%q, want %q", said.Sure, want)
	}
	for _, want := range []string{"Ash lost 34 of 340, 10.0 % (7.2–13.6 %).", "Birch lost 5 of 50 looked at, 10.0 % (4.3–21.4 %).", "could be chance"} {
		if !strings.Contains(plain(said.Losses), want) {
			t.Errorf("%q lacks %q", said.Losses, want)
		}
	}
	for _, want := range []string{"by lot", "mites, queens and stores kill more", "one winter is one winter"} {
		if !strings.Contains(said.Cautions[0], want) {
			t.Errorf("%q lacks %q", said.Cautions[0], want)
		}
	}
}

// The same from what the loggers themselves show, by the press that takes it over: each is set right to the mean of the two.
func TestTwoBarnsByThreeDaysTogether(t *testing.T) {
	asRead := judgedFiles(t, ashAndBirch, twoLogs(t))
	files := engine.Folder(folderOf(t, twoLogs(t)))
	found, err := engine.SideBySide(context.Background(), asRead.Winter, files, nil)
	if err != nil || len(found) != 1 {
		t.Fatalf("%d stretches, %v", len(found), err)
	}
	w, err := winter.AddChecks{Checks: checksOf(found[0])}.Apply(asRead.Winter)
	if err != nil {
		t.Fatal(err)
	}
	r, err := engine.Review(context.Background(), w, files, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	row := pairRow(t, &r)
	close2(t, "birch against ash", row.AddedA-row.AddedB, 0.4)
	close2(t, "difference", row.Difference, 0.1)
	if row.Verdict != compare.CantTell {
		t.Errorf("verdict %s", row.Verdict)
	}
	close2(t, "loggers", row.SensorHalf, math.Hypot(0.3, 0.3))
}

// The winter after, of the same two barns, from files: each barn is set beside itself, day by day of the winter. Ash had 5.6 °C
// instead of 4.6 in the second, and Birch the same as before; the logs are the first winter's a year of 365 days on.
func TestTwoWintersOfTwoBarns(t *testing.T) {
	first := judgedFiles(t, ashAndBirch, twoLogs(t))
	logs := twoLogs(t)
	for name := range logs {
		logs[name] = strings.NewReplacer("2024-", "2025-", "2025-", "2026-").Replace(logs[name])
	}
	plan := strings.NewReplacer("2024-", "2025-", "2025-", "2026-", "2024–25", "2025–26", `name = "ash"`, "name = \"ash\"\noffset_c = 1.0").Replace(ashAndBirch)
	second := judgedFiles(t, plan, logs)
	across, err := engine.Winters(context.Background(), &second, &first)
	if err != nil || len(across) != 2 {
		t.Fatalf("%d pairs, %v", len(across), err)
	}
	ash, birch := across[0], across[1]
	if ash.A != "Ash, 2025–26" || ash.B != "Ash, 2024–25" || !ash.ByWinterDay || ash.OverlapHours != 140*24 {
		t.Errorf("%s beside %s, %g h", ash.A, ash.B, ash.OverlapHours)
	}
	close2(t, "Ash", ash.Rows[0].Difference, 1)
	close2(t, "Birch", birch.Rows[0].Difference, 0)
	if ash.Rows[0].Verdict != compare.More || !strings.HasPrefix(plain(TwoBarnsSaid(ash, Units{}).Sentence), "Ash, 2025–26 was 1.0 °C warmer than Ash, 2024–25.") {
		t.Errorf("%s: %q", ash.Rows[0].Verdict, TwoBarnsSaid(ash, Units{}).Sentence)
	}
	setSideBySide(t, &second)
	second.Pairs = append(second.Pairs, across...)
	if d := ReviewDocument(second, Program{}); len(d.Pairs) != 3 || !d.Pairs[2].ByWinterDay || len(d.Pairs[2].Remarks) != 1 || !strings.Contains(d.Pairs[2].Remarks[0].Text, "weather of their own") {
		t.Errorf("%d pairs, %+v", len(d.Pairs), d.Pairs[len(d.Pairs)-1].Remarks)
	}
}
