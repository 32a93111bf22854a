package plan

import (
	"errors"
	"strings"
	"testing"
	_ "time/tzdata"
)

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
		{"an alarm after two days", barn + "§alarm_delay_min = 2880\n", BadValue, "from 0 to 1440"},
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
		{"act inside good", barn + "[bands.air_temperature]\ngood_high = 10\n§act_high = 8\n", BadValue, "good_high (10) lies above act_high (8)"},
		{"watch above good's lower end", barn + "[bands.air_temperature]\nwatch_low = 3\n§good_low = 2\n", BadValue, "watch_low (3) lies above good_low (2)"},
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
