package plan

import (
	"reflect"
	"regexp"
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
alarm_c = 9
alarm_delay_min = 15
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
flow_measured = true
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
clock_ahead_min = 2.5
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
quantity = "temperature"
[[barn.logger.keep]]
from = 2027-01-05
to = 2027-01-06
reason = "stuck"
quantity = "humidity"
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
of = 50
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
place = "outdoor"
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
layout = "a layout"

[[refused]]
file = "torn.csv"
code = "no_clock"
args = ["torn.csv"]
line = 3
column = 5
`

func read(t *testing.T, text string) winter.Winter {
	t.Helper()
	w, err := Read([]byte(text), "plan.toml")
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// The text called full does hold every key that the tables know.
func TestFullIsFull(t *testing.T) {
	var look func(table reflect.Type)
	look = func(table reflect.Type) {
		for table.Kind() == reflect.Slice || table.Kind() == reflect.Pointer {
			table = table.Elem()
		}
		if table.Kind() != reflect.Struct {
			return
		}
		for field := range table.Fields() {
			key, _, _ := strings.Cut(field.Tag.Get("toml"), ",")
			if !regexp.MustCompile(`(?m)^(\[\[?([a-z_]+\.)*)?` + key + `\b`).MatchString(full) {
				t.Errorf("%s: no %s", table, key)
			}
			look(field.Type)
		}
	}
	look(reflect.TypeFor[document]())
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
		"barn":          b.Name == "Alder" && *b.AltitudeM == 120 && *b.VolumeM3 == 850.5 && b.WaterLines && *b.AlarmC == 9 && *b.AlarmMin == 15,
		"bare date":     *b.BeesIn == utc("2026-11-11T22:00:00Z"),
		"local time":    *b.BeesOut == utc("2027-04-04T07:00:00Z"),
		"heads":         b.Heads[1] == winter.HeadCount{At: utc("2027-02-02T22:00:00Z"), Change: -12, Note: "dead-outs"},
		"always on":     b.Stages[0].AlwaysOn && b.Stages[0].FlowMeasured && !b.Stages[1].FlowMeasured && *b.Stages[0].Watts == 85,
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
		"not used":      b.Loggers[0].Exclusions[0] == winter.Exclusion{From: utc("2026-12-23T22:00:00Z"), To: utc("2026-12-24T22:00:00Z"), Reason: "lay on the desk", Quantity: winter.OfTemperature},
		"kept":          b.Loggers[0].Kept[0] == winter.Exclusion{From: utc("2027-01-04T22:00:00Z"), To: utc("2027-01-05T22:00:00Z"), Reason: "stuck", Quantity: winter.OfHumidity},
		"ahead":         b.Loggers[0].AheadMS == 150_000 && b.Loggers[1].AheadMS == 0,
		"assumed":       b.Loggers[2].Assumed && !b.Loggers[0].Assumed,
		"note's end":    b.Notes[0].Until == nil && *b.Notes[1].Until == utc("2027-01-09T19:30:00Z") && b.Notes[1].Unit == "pails" && b.Notes[1].Text == "",
		"not scored":    b.Exclusions[0] == winter.Exclusion{From: utc("2027-01-20T04:00:00Z"), To: utc("2027-01-20T18:00:00Z"), Reason: "doors off for the fitter"},
		"outdoor's own": w.Outdoor[0].Exclusions[0] == winter.Exclusion{From: utc("2026-11-29T22:00:00Z"), To: utc("2026-11-30T22:00:00Z")},
		"tray":          len(w.Tray) == 2 && w.Tray[0].Place == "" && w.Tray[0].Checks[0].Method == "side by side" && *w.Tray[0].Checks[0].TrueRelHum == 0.6,
		"tray's own":    w.Tray[1].Place == "hive" && w.Tray[1].Exclusions[0].To == utc("2026-11-11T22:00:00Z"),
		"tariff":        *w.Tariff == winter.Tariff{PerKWh: 0.21, Currency: "EUR"},
		"records":       b.Loggers[2].RecordsStage == "Stage 2",
		"note":          b.Notes[0].Kind == "wet boxes" && *b.Notes[0].Value == 3 && *b.Notes[0].Of == 50 && b.Notes[0].Text == "along the north wall",
		"outdoor":       w.Outdoor[0].Place == "outdoor" && *w.Outdoor[0].StationKM == 12,
		"°C":            *w.Bands.TempC.ActHigh == 9.5 && *w.Bands.TempC.WatchLow == 1,
		"percent":       *w.Bands.RelHum.GoodHigh == 0.75 && *w.Bands.RelHum.ActLow == 0.2,
		"answer":        w.Answers[0] == winter.Answer{File: "station*.csv", ID: "day_month", Option: "dmy", Layout: "a layout"},
		"refused":       reflect.DeepEqual(w.Refused, []winter.Refused{{Name: "torn.csv", Code: "no_clock", Args: []string{"torn.csv"}, Line: 3, Column: 5}}),
	} {
		if !ok {
			t.Errorf("%s did not arrive", what)
		}
	}
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
