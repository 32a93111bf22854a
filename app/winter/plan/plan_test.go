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

[[barn.phase]]
name = "filling"
[[barn.phase]]
name = "deep winter"
from = 2026-12-01
[barn.phase.bands.air_temperature]
good_low = 3
good_high = 5
[barn.phase.bands.relative_humidity]
good_high = 70
[[barn.phase]]
name = "late winter"
from = 2027-02-15T12:00:00
[barn.phase.bands.relative_humidity]
act_high = 90

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

[[barn.mixing]]
name = "ceiling fan"
watts = 120
[[barn.mixing]]
name = "ceiling fan"
from = 2027-02-01
watts = 60.5

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
[[barn.logger.check]]
at = 2026-11-01
method = "ice"
said_c = 0.4
true_c = 0
[[barn.logger.check]]
method = "salt"
said_rh = 78
true_rh = 75.3
[[barn.logger.exclude]]
from = 2026-12-24
to = 2026-12-25
reason = "lay on the desk"
[[barn.logger]]
name = "wall"
files = ["wall*.csv"]
place = "room"
from = 2027-02-01
[[barn.logger]]
name = "fans"
files = ["fans.csv"]
place = "don't know"
assumed = true
records_stage = "Stage 2"

[[barn.note]]
at = 2027-01-02
kind = "wet boxes"
value = 3
text = "along the north wall"
[[barn.note]]
at = 2027-01-09T18:00:00
until = 2027-01-09T21:30:00
kind = "sweepings"
value = 2.5
unit = "pails"

[[barn.exclude]]
from = 2027-01-20T06:00:00
to = 2027-01-20T20:00:00
reason = "doors off for the fitter"

[[outdoor]]
name = "station"
files = ["station.csv"]
station_km = 12
[[outdoor.exclude]]
from = 2026-11-30
to = 2026-12-01

[[tray]]
name = "spare"
files = ["spare.csv"]
[[tray.check]]
method = "side by side"
said_c = 4
true_c = 4.2
said_rh = 61
true_rh = 60
[[tray]]
name = "lent"
files = ["lent.csv"]
place = "hive"
[[tray.exclude]]
from = 2026-11-01
to = 2026-11-12

[tariff]
per_kwh = 0.21
currency = "EUR"

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
		"phases":        len(b.Phases) == 3 && b.Phases[0].Name == "filling" && b.Phases[0].From == nil && *b.Phases[1].From == utc("2026-11-30T22:00:00Z"),
		"its own °C":    *b.Phases[1].Bands.TempC.GoodLow == 3 && *b.Phases[1].Bands.TempC.GoodHigh == 5 && b.Phases[2].Bands.TempC == winter.Band{},
		"its own %":     *b.Phases[1].Bands.RelHum.GoodHigh == 0.7 && *b.Phases[2].Bands.RelHum.ActHigh == 0.9,
		"mixing":        b.Mixing[0].Name == "ceiling fan" && *b.Mixing[0].Watts == 120 && *b.Mixing[1].Watts == 60.5 && *b.Mixing[1].From == utc("2027-01-31T22:00:00Z"),
		"ice":           *b.Loggers[0].Checks[0].At == utc("2026-10-31T22:00:00Z") && *b.Loggers[0].Checks[0].SaidC == 0.4 && *b.Loggers[0].Checks[0].TrueC == 0,
		"salt":          b.Loggers[0].Checks[1].Method == "salt" && *b.Loggers[0].Checks[1].SaidRelHum == 0.78 && *b.Loggers[0].Checks[1].TrueRelHum == 0.753,
		"not used":      b.Loggers[0].Exclusions[0] == winter.Exclusion{From: utc("2026-12-23T22:00:00Z"), To: utc("2026-12-24T22:00:00Z"), Reason: "lay on the desk"},
		"assumed":       b.Loggers[2].Assumed && !b.Loggers[0].Assumed,
		"note's end":    b.Notes[0].Until == nil && *b.Notes[1].Until == utc("2027-01-09T19:30:00Z") && b.Notes[1].Unit == "pails" && b.Notes[1].Text == "",
		"not scored":    b.Exclusions[0] == winter.Exclusion{From: utc("2027-01-20T04:00:00Z"), To: utc("2027-01-20T18:00:00Z"), Reason: "doors off for the fitter"},
		"outdoor's own": w.Outdoor[0].Exclusions[0] == winter.Exclusion{From: utc("2026-11-29T22:00:00Z"), To: utc("2026-11-30T22:00:00Z")},
		"tray":          len(w.Tray) == 2 && w.Tray[0].Place == "" && w.Tray[0].Checks[0].Method == "side by side" && *w.Tray[0].Checks[0].TrueRelHum == 0.6,
		"tray's own":    w.Tray[1].Place == "hive" && w.Tray[1].Exclusions[0].To == utc("2026-11-11T22:00:00Z"),
		"tariff":        *w.Tariff == winter.Tariff{PerKWh: 0.21, Currency: "EUR"},
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
	check := logger + "place = \"room\"\n[[barn.logger.check]]\nmethod = \"ice\"\n"
	deep := barn + "[[barn.phase]]\nname = \"deep winter\"\nfrom = 2026-12-01\n"
	tray := barn + "[[tray]]\nname = \"n\"\nfiles = [\"n.csv\"]\n"
	sweepings := barn + "[[barn.note]]\nkind = \"sweepings\"\nat = 2027-01-09\n"
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
		{"no such phase", barn + "[[barn.phase]]\n§name = \"spring\"\n", BadValue, "filling, deep winter"},
		{"a phase twice", deep + "[[barn.phase]]\n§name = \"deep winter\"\nfrom = 2027-01-01\n", TwiceNamed, "named twice"},
		{"phases at once", deep + "[[barn.phase]]\nname = \"late winter\"\n§from = 2026-12-01\n", BadTime, `"late winter" does not follow "deep winter"`},
		{"phases turned round", deep + "[[barn.phase]]\nname = \"filling\"\n§from = 2027-01-01\n", BadTime, `"filling" does not follow "deep winter"`},
		{"a phase between without date", deep + "[[barn.phase]]\nname = \"late winter\"\n[[barn.phase]]\nname = \"emptying\"\n§from = 2026-11-01\n", BadTime, `"emptying" does not follow "deep winter"`},
		{"a phase's good upside down", deep + "[barn.phase.bands.air_temperature]\ngood_low = 6\n§good_high = 2\n", BadValue, "lies above"},
		{"a later phase's limit", deep + "[barn.phase.bands.relative_humidity]\ngood_high = 70\n[[barn.phase]]\nname = \"emptying\"\n[barn.phase.bands.relative_humidity]\n§good_high = 101\n", BadValue, "from 0 to 100"},
		{"a phase's unknown key", deep + "[barn.phase.bands.air_temperature]\n§fine_low = 6\n", UnknownKey, "barn.phase.bands.air_temperature.fine_low"},
		{"a phase in single brackets", barn + "[barn.§phase]\nname = \"filling\"\n", WrongType, "double brackets: [[barn.phase]]"},
		{"limits of no phase", barn + "[barn.phase.§bands]\n[barn.phase.bands.air_temperature]\ngood_low = 6\n", Absent, "needs its [[barn.phase]]"},
		{"a mixing fan without name", barn + "[[barn.§mixing]]\nwatts = 3\n", Absent, "[[barn.mixing]] needs a name"},
		{"a mixing fan that gives power", barn + "[[barn.mixing]]\nname = \"m\"\n§watts = -3\n", BadValue, "from 0 to"},
		{"a mixing fan again without a date", barn + "[[barn.mixing]]\nname = \"m\"\n[[barn.§mixing]]\nname = \"m\"\n", TwiceNamed, "later than before"},
		{"a mixing fan again earlier", barn + "[[barn.mixing]]\nname = \"m\"\nfrom = 2027-01-01\n[[barn.mixing]]\nname = \"m\"\n§from = 2027-01-01\n", TwiceNamed, "later than before"},
		{"a record of nothing", barn + "[[barn.mixing]]\nname = \"m\"\n[[barn.logger]]\nname = \"n\"\nfiles = [\"n.csv\"]\nplace = \"room\"\n§records_stage = \"x\"\n", NoSuchName, "is not one of: m"},
		{"left out backwards", barn + "[[barn.exclude]]\n§to = 2026-12-01\nfrom = 2026-12-02\n", BadTime, "to is not later than from"},
		{"left out without end", barn + "[[barn.§exclude]]\nfrom = 2026-12-02\n", Absent, "[[barn.exclude]] needs a time: to"},
		{"left out without start", barn + "[[barn.§exclude]]\nto = 2026-12-02\n", Absent, "[[barn.exclude]] needs a time: from"},
		{"a logger left out for no time", logger + "place = \"room\"\n[[barn.logger.exclude]]\nfrom = 2026-12-02\n§to = 2026-12-02\n", BadTime, "to is not later than from"},
		{"outdoors left out backwards", barn + "[[outdoor]]\nname = \"o\"\nfiles = [\"o.csv\"]\n[[outdoor.exclude]]\nfrom = 2026-12-02\n§to = 2026-12-01\n", BadTime, "to is not later than from"},
		{"the tray left out backwards", tray + "[[tray.exclude]]\nfrom = 2026-12-02\n§to = 2026-12-01\n", BadTime, "to is not later than from"},
		{"no such method", logger + "place = \"room\"\n[[barn.logger.check]]\n§method = \"guess\"\nsaid_c = 1\ntrue_c = 0\n", BadValue, "ice, salt, side by side"},
		{"a check of nothing", logger + "place = \"room\"\n[[barn.logger.§check]]\nmethod = \"ice\"\n", OneOf, "[[barn.logger.check]] needs one of: said_c and true_c; said_rh and true_rh"},
		{"said without true", check + "§said_c = 0.4\n", Absent, "said_c needs true_c"},
		{"true without said", check + "said_c = 0.4\ntrue_c = 0\n§true_rh = 75\n", Absent, "true_rh needs said_rh"},
		{"too warm to be said", check + "§said_c = 81\ntrue_c = 0\n", BadValue, "from -60 to 80"},
		{"too cold to be true", check + "said_c = 0.4\n§true_c = -61\n", BadValue, "from -60 to 80"},
		{"too damp to be said", check + "§said_rh = 121\ntrue_rh = 75\n", BadValue, "from 0 to 120"},
		{"too damp to be true", check + "said_rh = 75\n§true_rh = 101\n", BadValue, "from 0 to 100"},
		{"a check at no date", check + "§at = \"autumn\"\nsaid_c = 0\ntrue_c = 0\n", BadTime, "at is no date"},
		{"assumed by a word", logger + "place = \"room\"\n§assumed = \"yes\"\n", WrongType, "takes true or false"},
		{"a note that ends as it begins", sweepings + "§until = 2027-01-09\n", BadTime, "until is not later than at"},
		{"another kind's unit", sweepings + "value = 3\n§unit = \"hives\"\n", BadValue, "pails, barrels, kg"},
		{"the tray without files", barn + "[[§tray]]\nname = \"n\"\n", Absent, "[[tray]] needs its files"},
		{"the tray's place", tray + "§place = \"rafters\"\n", BadValue, "room, control"},
		{"the tray in single brackets", barn + "[§tray]\nname = \"n\"\n", WrongType, "double brackets: [[tray]]"},
		{"only the tray", "§" + head + "[[tray]]\nname = \"n\"\nfiles = [\"n.csv\"]\n", Absent, "no barn"},
		{"no price", barn + "[§tariff]\ncurrency = \"EUR\"\n", Absent, "[tariff] needs a per_kwh"},
		{"a price below nothing", barn + "[tariff]\n§per_kwh = -0.1\ncurrency = \"EUR\"\n", BadValue, "from 0 to"},
		{"no currency", barn + "[§tariff]\nper_kwh = 0.1\n", Absent, "[tariff] needs a currency"},
		{"a currency in small letters", barn + "[tariff]\nper_kwh = 0.1\n§currency = \"eur\"\n", BadValue, "three capital letters"},
		{"a currency and more", barn + "[tariff]\nper_kwh = 0.1\n§currency = \"EUR\\n\"\n", BadValue, "three capital letters"},
		{"a tariff's unknown key", barn + "[tariff]\nper_kwh = 0.1\ncurrency = \"EUR\"\n§per_day = 1\n", UnknownKey, "tariff.per_day"},
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

// What the rules leave free: any unit of a kind without a choice, no text, phases without dates in any
// order, a record of a mixing fan, a place for none in the tray.
func TestWhatIsLeftFree(t *testing.T) {
	barn := head + "[[barn]]\nname = \"Alder\"\n"
	for _, text := range []string{
		"[[barn.note]]\nat = 2027-01-09\nkind = \"swept\"\nvalue = 3\nunit = \"shovels\"\n",
		"[[barn.note]]\nat = 2027-01-09\nkind = \"doors open\"\nunit = \"min\"\ntext = \"\"\n",
		"[[barn.note]]\nat = 2027-01-09\nkind = \"sweepings\"\n",
		"[[barn.phase]]\nname = \"emptying\"\n[[barn.phase]]\nname = \"filling\"\nfrom = 2026-11-01\n",
		"[[barn.phase]]\nname = \"filling\"\n[barn.phase.bands]\n",
		"[[barn.mixing]]\nname = \"m\"\n[[barn.logger]]\nname = \"n\"\nfiles = [\"n.csv\"]\nplace = \"room\"\nrecords_stage = \"m\"\n",
		"[tariff]\nper_kwh = 0\ncurrency = \"SEK\"\n",
		"phase = []\nmixing = []\nexclude = []\n",
	} {
		again(t, read(t, barn+text))
	}
}
