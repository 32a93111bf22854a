package plan

import (
	"errors"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"thawbook/app/winter"
)

const head = "[winter]\nname = \"A winter\"\nzone = \"Europe/Tallinn\"\n"

// full uses every key there is.
const full = `[winter]
name = "2026/27"
zone = "Europe/Tallinn"
gap_minutes = 45

[[barn]]
name = "Alder"
altitude_m = 120
volume_m3 = 850.5
bees_in = 2026-11-12
bees_out = 2027-04-04T10:00:00
water_lines = true

[[barn.heads]]
at = 2026-11-12T09:00:00
change = 340
[[barn.heads]]
at = "2027-02-03"
change = -12
note = "dead-outs"

[[barn.stage]]
name = "Stage 1"
always_on = true
flow_m3h = 216
watts = 85
[[barn.stage]]
name = "Stage 2"
on_c = 4.5
off_c = 3.5
flow_low = 900
flow_high = 1800
[[barn.stage]]
name = "Stage 2"
from = 2027-03-01T00:00:00+02:00
on_c = 5
off_c = 4
[[barn.stage]]
name = "Stage 0"
timer_on_s = 60
timer_every_s = 600

[[barn.heat]]
name = "floor"
kind = "floor"
with_stage = "Stage 2"
into = "water"

[[barn.surface]]
name = "north wall"
kind = "wall"
low = 0.9
high = 0.95
logger = "wall"
[[barn.surface]]
name = "door"
kind = "metal"
factor = -0.25

[[barn.logger]]
name = "wall"
files = ["wall*.csv", "more/wall.csv"]
place = "wall"
channel = "probe"
offset_c = -0.3
offset_rh = 2.5
zone = "+02:00"
follows_dst = false
anchors = [["2026-11-12T09:00:00", "2026-11-12 09:02"], [2027-04-04T10:00:00, 2027-04-04T10:07:00+03:00]]
[[barn.logger]]
name = "wall"
files = ["wall*.csv"]
place = "room"
from = 2027-02-01
[[barn.logger]]
name = "fans"
files = ["fans.csv"]
place = "don't know"
records_stage = "Stage 2"

[[barn.note]]
at = 2027-01-02
kind = "wet boxes"
value = 3
text = "along the north wall"

[[outdoor]]
name = "station"
files = ["station.csv"]
station_km = 12

[bands.air_temperature]
good_low = 2
good_high = 6
watch_low = 1
watch_high = 8
act_low = 0
act_high = 9.5
[bands.relative_humidity]
good_low = 40
good_high = 75
watch_low = 30
watch_high = 85
act_low = 20
act_high = 95

[[answer]]
file = "station*.csv"
id = "day_month"
option = "dmy"
`

func read(t *testing.T, text string) winter.Winter {
	t.Helper()
	w, err := Read([]byte(text), "plan.toml")
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestEveryKeyArrives(t *testing.T) {
	w := read(t, full)
	// Tallinn is two hours ahead of UTC in winter and three from the last Sunday of March (IANA).
	utc := func(text string) int64 {
		at, err := time.Parse(time.RFC3339, text)
		if err != nil {
			t.Fatal(err)
		}
		return at.UnixMilli()
	}
	b := w.Barns[0]
	for what, ok := range map[string]bool{
		"winter":        w.Name == "2026/27" && w.Zone == "Europe/Tallinn" && *w.GapMinutes == 45,
		"barn":          b.Name == "Alder" && *b.AltitudeM == 120 && *b.VolumeM3 == 850.5 && b.WaterLines,
		"bare date":     *b.BeesIn == utc("2026-11-11T22:00:00Z"),
		"local time":    *b.BeesOut == utc("2027-04-04T07:00:00Z"),
		"heads":         b.Heads[1] == winter.HeadCount{At: utc("2027-02-02T22:00:00Z"), Change: -12, Note: "dead-outs"},
		"always on":     b.Stages[0].AlwaysOn && *b.Stages[0].Watts == 85,
		"flow in m³/s":  *b.Stages[0].FlowLow == 0.06 && *b.Stages[0].FlowHigh == 0.06,
		"flow range":    *b.Stages[1].FlowLow == 0.25 && *b.Stages[1].FlowHigh == 0.5,
		"thermostat":    *b.Stages[2].OnC == 5 && *b.Stages[2].OffC == 4,
		"offset time":   *b.Stages[2].From == utc("2027-02-28T22:00:00Z"),
		"timer":         *b.Stages[3].TimerOnS == 60 && *b.Stages[3].TimerEvery == 600,
		"heat":          b.Heats[0] == winter.HeatSource{Name: "floor", Kind: "floor", WithStage: "Stage 2", Into: "water"},
		"surface range": *b.Surfaces[0].Low == 0.9 && *b.Surfaces[0].High == 0.95 && b.Surfaces[0].Logger == "wall",
		"factor":        *b.Surfaces[1].Factor == -0.25,
		"logger":        len(b.Loggers[0].Files) == 2 && b.Loggers[0].Channel == "probe" && b.Loggers[0].Zone == "+02:00",
		"offsets":       b.Loggers[0].OffsetC == -0.3 && b.Loggers[0].OffsetRelHum == 0.025,
		"dst":           *b.Loggers[0].FollowsDST == false && b.Loggers[1].FollowsDST == nil,
		"first anchor":  b.Loggers[0].Anchors[0] == winter.Anchor{FaceMS: utc("2026-11-12T09:00:00Z"), At: utc("2026-11-12T07:02:00Z")},
		"second anchor": b.Loggers[0].Anchors[1] == winter.Anchor{FaceMS: utc("2027-04-04T10:00:00Z"), At: utc("2027-04-04T07:07:00Z")},
		"moved":         b.Loggers[1].Place == "room" && *b.Loggers[1].From == utc("2027-01-31T22:00:00Z"),
		"records":       b.Loggers[2].RecordsStage == "Stage 2",
		"note":          b.Notes[0].Kind == "wet boxes" && *b.Notes[0].Value == 3 && b.Notes[0].Text == "along the north wall",
		"outdoor":       w.Outdoor[0].Place == "outdoor" && *w.Outdoor[0].StationKM == 12,
		"°C":            *w.Bands.TempC.ActHigh == 9.5 && *w.Bands.TempC.WatchLow == 1,
		"percent":       *w.Bands.RelHum.GoodHigh == 0.75 && *w.Bands.RelHum.ActLow == 0.2,
		"answer":        w.Answers[0] == winter.Answer{File: "station*.csv", ID: "day_month", Option: "dmy"},
	} {
		if !ok {
			t.Errorf("%s did not arrive", what)
		}
	}
}

// Each plan is whole but for the spot marked §, where the fault is to be pointed at.
func TestFaultsPointAtTheirPlace(t *testing.T) {
	barn := head + "[[barn]]\nname = \"Alder\"\n"
	logger := barn + "[[barn.logger]]\nname = \"n\"\nfiles = [\"n.csv\"]\n"
	for _, c := range []struct{ name, text, code, says string }{
		{"unknown key", barn + "§volumes_m3 = 3\n", UnknownKey, "volumes_m3"},
		{"unknown table", barn + "[§fans]\n", UnknownKey, "fans"},
		{"unknown key in a list", barn + "[[barn.stage]]\nname = \"1\"\n§onc = 3\n", UnknownKey, "barn.stage.onc"},
		{"broken text", head + "§[[barn]\n", Syntax, ""},
		{"twice", barn + "§name = \"Birch\"\n", Syntax, "already defined"},
		{"a text for a number", barn + "§altitude_m = \"high\"\n", WrongType, "takes a number"},
		{"a number for a text", head + "[[barn]]\n§name = 3\n", WrongType, "takes a text"},
		{"a fraction of a hive", barn + "[[barn.heads]]\nat = 2026-11-12\n§change = 1.5\n", WrongType, "takes a whole number"},
		{"single brackets", head + "[§barn]\nname = \"Alder\"\n", WrongType, "double brackets: [[barn]]"},
		{"no number", barn + "§volume_m3 = nan\n", BadValue, "from 1 to"},
		{"endless", barn + "§altitude_m = inf\n", BadValue, "from -500 to 9000"},
		{"no zone", "[§winter]\nname = \"A\"\n[[barn]]\nname = \"Alder\"\n", Absent, "needs the zone"},
		{"no such zone", "[winter]\nname = \"A\"\n§zone = \"Mars\"\n[[barn]]\nname = \"Alder\"\n", BadZone, "Mars"},
		{"no name", "[§winter]\nzone = \"UTC\"\n[[barn]]\nname = \"Alder\"\n", Absent, "name"},
		{"no barn", "§" + head, Absent, "no barn"},
		{"a barn without name", head + "[[§barn]]\naltitude_m = 3\n", Absent, "[[barn]] needs a name"},
		{"two of a name", barn + "[[barn]]\n§name = \"Alder\"\n", TwiceNamed, "named twice"},
		{"out before in", barn + "bees_in = 2026-11-12\n§bees_out = 2026-11-12\n", BadTime, "not later"},
		{"no date", barn + "§bees_in = \"12 November\"\n", BadTime, "no date"},
		{"a time of day", barn + "§bees_in = 12:00:00\n", BadTime, "no date"},
		{"a skipped hour", barn + "§bees_out = 2027-03-28T03:30:00\n", BadTime, "skipped"},
		{"a year long gone", barn + "§bees_out = 0207-03-28\n", BadTime, "between 1970"},
		{"off at on", barn + "[[barn.stage]]\nname = \"1\"\non_c = 4\n§off_c = 4.0\n", OffNotLow, `stage "1" switches off at 4 °C`},
		{"off above on", barn + "[[barn.stage]]\nname = \"1\"\n§off_c = 5\non_c = 4\n", OffNotLow, "off must be the lower"},
		{"on alone", barn + "[[barn.stage]]\nname = \"1\"\n§on_c = 5\n", Absent, "off_c"},
		{"no way", barn + "[[barn.§stage]]\nname = \"1\"\nwatts = 5\n", OneOf, "needs one of"},
		{"two ways", barn + "[[barn.§stage]]\nname = \"1\"\nalways_on = true\non_c = 5\noff_c = 4\n", OneOf, "needs one of"},
		{"a timer that never ends", barn + "[[barn.stage]]\nname = \"1\"\ntimer_on_s = 70\n§timer_every_s = 60\n", BadValue, "above"},
		{"two flows", barn + "[[barn.stage]]\nname = \"1\"\nalways_on = true\nflow_m3h = 5\n§flow_low = 4\nflow_high = 5\n", OneOf, "not both"},
		{"set again without a date", barn + strings.Repeat("[[barn.stage]]\nname = \"1\"\nalways_on = true\n", 1) + "[[barn.§stage]]\nname = \"1\"\nalways_on = true\n", TwiceNamed, "later than before"},
		{"no such stage", barn + "[[barn.heat]]\nname = \"floor\"\nkind = \"floor\"\n§with_stage = \"3\"\n", NoSuchName, "with_stage"},
		{"no such kind", barn + "[[barn.heat]]\nname = \"f\"\n§kind = \"stove\"\n", BadValue, "floor, solar, heater, recovery"},
		{"a surface's logger", barn + "[[barn.surface]]\nname = \"w\"\nkind = \"wall\"\n§logger = \"w\"\n", NoSuchName, "logger"},
		{"no such place", logger + "§place = \"rafters\"\n", BadValue, "room, control"},
		{"no files", barn + "[[barn.§logger]]\nname = \"n\"\nplace = \"room\"\n", Absent, "needs its files"},
		{"an anchor alone", logger + "place = \"room\"\n§anchors = [[\"2026-11-12T09:00:00\"]]\n", BadValue, "pair"},
		{"anchors turned round", logger + "place = \"room\"\n§anchors = [[\"2026-11-12 09:00\", \"2026-11-12 09:00\"], [\"2026-11-11 09:00\", \"2026-11-13 09:00\"]]\n", BadTime, "order"},
		{"good upside down", barn + "[bands.air_temperature]\ngood_low = 6\n§good_high = 2\n", BadValue, "lies above"},
		{"humidity as a share too high", barn + "[bands.relative_humidity]\n§good_high = 120\n", BadValue, "from 0 to 100"},
		{"in one line", head + "barn = 3\n", UnknownKey, ""},
		{"an inline list", "barn = [{name = \"A\", stage = [{name = \"1\", on_c = 4, §off_c = 5}]}]\n" + head, OffNotLow, "off must"},
	} {
		t.Run(c.name, func(t *testing.T) {
			before, _, marked := strings.Cut(c.text, "§")
			_, err := Read([]byte(strings.Replace(c.text, "§", "", 1)), "plan.toml")
			var fault *Error
			if !errors.As(err, &fault) {
				t.Fatalf("got %v", err)
			}
			line := strings.Count(before, "\n") + 1
			column := len(before) - strings.LastIndex(before, "\n")
			if marked && (fault.Line != line || c.code != Syntax && !nearColumn(c.code, fault.Column, column)) {
				t.Errorf("points at %d:%d, want %d:%d (%v)", fault.Line, fault.Column, line, column, err)
			}
			if marked && fault.Code != c.code {
				t.Errorf("code %q, want %q (%v)", fault.Code, c.code, err)
			}
			if !strings.Contains(err.Error(), c.says) || strings.Contains(err.Error(), "\n") {
				t.Errorf("it says %q", err)
			}
		})
	}
}

// nearColumn lets a wrong type be pointed at its value, a few columns behind its key.
func nearColumn(code string, got, want int) bool {
	return got == want || code == WrongType && got > want
}

func TestAMarkInFrontIsNoMatter(t *testing.T) {
	read(t, "\ufeff"+head+"[[barn]]\nname = \"Alder\"\n")
}
