package plan

import (
	"fmt"
	"regexp"
	"slices"

	"thawbook/app/winter"
)

// secondsPerHour turns m³/h into m³/s.
const secondsPerHour = 3600

// percent turns percent into 0–1.
const percent = 100

// winter builds the whole document.
func (b *builder) winter(doc document) winter.Winter {
	if doc.Winter.Name == nil {
		b.refuse("winter.name", Absent, "the plan needs a [winter] table with a name")
	}
	if doc.Winter.Zone == "" {
		b.refuse("winter.zone", Absent, `[winter] needs the zone its times are in, such as zone = "Europe/Tallinn"`)
	}
	if len(doc.Barns) == 0 {
		b.refuse("", Absent, "the plan names no barn; write one in a table [[barn]]")
	}
	if b.err != nil {
		return winter.Winter{}
	}
	b.loc = b.zone("winter", doc.Winter.Zone)
	w := winter.Winter{
		Name: *doc.Winter.Name, Zone: doc.Winter.Zone,
		GapMinutes: b.number("winter", "gap_minutes", doc.Winter.GapMinutes, 1, 10080),
	}
	for i, t := range doc.Barns {
		w.Barns = append(w.Barns, b.barn(fmt.Sprintf("barn[%d]", i), t))
	}
	namedOnce(b, "barn", w.Barns, func(barn winter.Barn) string { return barn.Name })
	w.Outdoor = b.outdoor(doc.Outdoor)
	w.Tray = b.tray(doc.Tray)
	w.Bands = b.bands("bands", doc.Bands)
	w.Tariff = b.tariff(doc.Tariff)
	w.Answers = b.answers(doc.Answers)
	for i, t := range doc.Refused {
		t.Name, t.Args = b.text(fmt.Sprintf("refused[%d]", i), "file", t.Name), listOf(t.Args)
		w.Refused = append(w.Refused, winter.Refused(t))
	}
	return w
}

// barn builds one barn and checks the names its tables call each other by.
func (b *builder) barn(path string, t barnTable) winter.Barn {
	barn := winter.Barn{
		Name:       b.text(path, "name", t.Name),
		AltitudeM:  b.number(path, "altitude_m", t.AltitudeM, -500, 9000),
		VolumeM3:   b.number(path, "volume_m3", t.VolumeM3, 1, 1e7),
		BeesIn:     b.momentIf(path, "bees_in", t.BeesIn),
		BeesOut:    b.momentIf(path, "bees_out", t.BeesOut),
		WaterLines: t.WaterLines,
		AlarmC:     b.number(path, "alarm_c", t.AlarmC, -20, 40),
		AlarmMin:   b.number(path, "alarm_delay_min", t.AlarmMin, 0, 1440),
		Heads:      b.heads(path, t.Heads),
		Phases:     b.phases(path, t.Phases),
		Stages:     b.stages(path, t.Stages),
		Mixing:     b.mixing(path, t.Mixing),
	}
	b.later(path, "bees_in", "bees_out", barn.BeesIn, barn.BeesOut)
	barn.Heats = b.heats(path, t.Heats, barn.Stages)
	barn.Loggers = b.barnLoggers(path, t.Loggers, barn.Recordable())
	barn.Surfaces = b.surfaces(path, t.Surfaces, loggerNames(barn.Loggers))
	barn.Notes = b.notes(path, t.Notes)
	barn.Exclusions = b.exclusions(path+".exclude", t.Exclusions)
	return barn
}

// heads builds the head-count ledger.
func (b *builder) heads(path string, tables []headsTable) (out []winter.HeadCount) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.heads[%d]", path, i)
		if t.Change == nil {
			b.refuse(join(at, "change"), Absent, "[[barn.heads]] needs a change, such as 340 in or -12 out")
			return out
		}
		out = append(out, winter.HeadCount{At: b.momentAt(at, "at", t.At), Change: *t.Change, Note: t.Note})
	}
	return out
}

// heats builds the heat sources.
func (b *builder) heats(path string, tables []heatTable, stages []winter.Stage) (out []winter.HeatSource) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.heat[%d]", path, i)
		h := winter.HeatSource{
			Name:      b.text(at, "name", t.Name),
			Kind:      b.oneOf(at, "kind", t.Kind, []string{"floor", "solar", "heater", "recovery"}),
			WithStage: t.WithStage,
			Into:      b.oneOf(at, "into", t.Into, []string{"air", "floor", "water", ""}),
		}
		b.known(at, "with_stage", t.WithStage, stageNames(stages))
		out = append(out, h)
	}
	namedOnce(b, path+".heat", out, func(h winter.HeatSource) string { return h.Name })
	return out
}

// surfaces builds the surfaces between room and outdoors.
func (b *builder) surfaces(path string, tables []surfaceTable, loggers []string) (out []winter.Surface) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.surface[%d]", path, i)
		s := winter.Surface{
			Name:   b.text(at, "name", t.Name),
			Kind:   b.oneOf(at, "kind", t.Kind, []string{"wall", "ceiling", "corner", "metal"}),
			Factor: b.number(at, "factor", t.Factor, -1, 1),
			Low:    b.number(at, "low", t.Low, -1, 1),
			High:   b.number(at, "high", t.High, -1, 1),
			Logger: t.Logger,
		}
		b.pair(at, "low", "high", t.Low, t.High)
		b.rising(at, "low", "factor", t.Low, t.Factor)
		b.rising(at, "factor", "high", t.Factor, t.High)
		b.known(at, "logger", t.Logger, loggers)
		out = append(out, s)
	}
	namedOnce(b, path+".surface", out, func(s winter.Surface) string { return s.Name })
	return out
}

// notes builds what the keeper saw.
func (b *builder) notes(path string, tables []noteTable) (out []winter.Note) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.note[%d]", path, i)
		n := winter.Note{
			At:    b.momentAt(at, "at", t.At),
			Until: b.momentIf(at, "until", t.Until),
			Kind:  b.text(at, "kind", t.Kind),
			Value: b.number(at, "value", t.Value, -1e12, 1e12),
			Of:    b.number(at, "of", t.Of, 1, 1e12),
			Unit:  t.Unit,
			Text:  t.Text,
		}
		b.later(at, "at", "until", &n.At, n.Until)
		b.rising(at, "value", "of", t.Value, t.Of)
		if units := noteUnits(n.Kind); n.Unit != "" && len(units) > 0 {
			b.oneOf(at, "unit", n.Unit, units)
		}
		out = append(out, n)
	}
	return out
}

// noteUnits are the units a kind of note leaves a choice of; none where any will do.
func noteUnits(kind string) []string {
	i := slices.IndexFunc(winter.NoteKinds, func(k winter.NoteKind) bool { return k.Name == kind })
	if i < 0 {
		return nil
	}
	return winter.NoteKinds[i].Units
}

// bothQuantities is the word for all a logger recorded, the same as none.
const bothQuantities = "both"

// exclusions builds the stretches left out, of a barn or of a logger. of are the quantities that may be left out alone.
func (b *builder) exclusions(path string, tables []excludeTable, of ...string) (out []winter.Exclusion) {
	for i, t := range tables {
		at := fmt.Sprintf("%s[%d]", path, i)
		x := winter.Exclusion{From: b.momentAt(at, "from", t.From), To: b.momentAt(at, "to", t.To), Reason: t.Reason}
		b.later(at, "from", "to", &x.From, &x.To)
		switch {
		case t.Quantity == "" || t.Quantity == bothQuantities:
		case len(of) == 0:
			b.refuse(join(at, "quantity"), BadValue, "a stretch of a barn's time is left out as a whole; quantity is for a logger's")
		default:
			x.Quantity = b.oneOf(at, "quantity", t.Quantity, of)
		}
		out = append(out, x)
	}
	return out
}

// currency is the form of a currency's code (ISO 4217: three capital letters).
var currency = regexp.MustCompile(`^[A-Z]{3}$`)

// tariff builds the price of electricity; nil where the plan has none.
func (b *builder) tariff(t *tariffTable) *winter.Tariff {
	if t == nil {
		return nil
	}
	if t.PerKWh == nil {
		b.refuse("tariff.per_kwh", Absent, "[tariff] needs a per_kwh, the price of one kWh")
		return nil
	}
	out := winter.Tariff{
		PerKWh:   *b.number("tariff", "per_kwh", t.PerKWh, 0, 1e6),
		Currency: b.text("tariff", "currency", t.Currency),
	}
	if !currency.MatchString(out.Currency) {
		b.refuse("tariff.currency", BadValue, "currency %q is not three capital letters, such as EUR", out.Currency)
	}
	return &out
}

// answers builds the replies to questions about files.
func (b *builder) answers(tables []answerTable) (out []winter.Answer) {
	for i, t := range tables {
		at := fmt.Sprintf("answer[%d]", i)
		out = append(out, winter.Answer{
			File: b.text(at, "file", t.File), ID: b.text(at, "id", t.ID), Option: b.text(at, "option", t.Option), Layout: t.Layout,
		})
	}
	return out
}
