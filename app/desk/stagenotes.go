package desk

import (
	"slices"
	"strconv"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// stageNotes are what else the stages have to say, most telling first.
func (b barn) stageNotes() (out []string) {
	for _, h := range b.r.Heats {
		out = append(out, b.heatNote(h)...)
	}
	for _, row := range b.r.Stages {
		out = append(out, b.partingNote(row)...)
	}
	for _, row := range b.r.Stages {
		out = append(append(out, b.switchingNotes(row)...), speedNote(row)...)
		out = append(append(out, knownNote(row, row.Called, "was called for")...), knownNote(row, row.Ran, "ran")...)
		out = append(out, b.unreadNote(row)...)
	}
	return append(append(append(append(out, b.uncertainNote()...), b.topNote()...), b.airNotes()...), b.costNote()...)
}

// uncertainNote says why some stages' hours can't be named, and what would settle it.
func (b barn) uncertainNote() []string {
	var names []string
	recorded := true
	for _, row := range b.r.Stages {
		if row.Called == nil || row.Called.Hours.Unknown != "range_too_wide" || hardlyKnown(row, row.Called) {
			continue
		}
		if recorded = recorded && row.Ran != nil; !slices.Contains(names, row.Name) {
			names = append(names, row.Name)
		}
	}
	if len(names) == 0 {
		return nil
	}
	text := "How long " + listed(names) + " would have been called for can't be named: too often the room lay closer to the setting than the logger tells apart. A logger hung beside the thermostat's own sensor"
	if !recorded {
		text += ", or a record of when the fan ran,"
	}
	return []string{text + " would settle it."}
}

// topNote is for how long the top stage was on in each phase: in deep winter it tells of too much heat or of small fans, in
// spring of the weather.
func (b barn) topNote() []string {
	names := b.thermostatStages()
	if len(names) < 2 || !b.hoursNamed(names[len(names)-1]) {
		return nil
	}
	top := names[len(names)-1]
	on, _, seen := b.worked(top)
	did, never := "was called for ", "was never called for"
	if seen.ran {
		did, never = "ran for ", "never ran for"
	}
	var parts []string
	for _, p := range b.r.Phases {
		if h := hours(series.LengthMS(series.Intersect(on, p.Parts))); h >= 1 {
			parts = append(parts, Hours(h)+" "+phaseWords[p.Name])
		}
	}
	if len(parts) == 0 {
		return []string{top + ", the top stage, " + never + " as much as an hour."}
	}
	return []string{top + ", the top stage, " + did + listed(parts) + "."}
}

// hoursNamed says whether a stage's hours can be named for all its settings.
func (b barn) hoursNamed(stage string) bool {
	named := false
	for _, row := range b.r.Stages {
		if row.Name != stage {
			continue
		}
		w := row.Ran
		if w == nil {
			w = row.Called
		}
		if w == nil || !w.Hours.OK || hardlyKnown(row, w) {
			return false
		}
		named = true
	}
	return named
}

// heatNote says for how long a heat source fought the fans, where it did for an hour or more and no finding says so.
func (b barn) heatNote(h analysis.HeatRow) []string {
	if !h.Overlap.OK || h.Overlap.Mid < 1 || b.foughtFound(h.Source.Name) {
		return nil
	}
	text := capital(h.Source.Name) + " gave heat for " + Hours(h.On().Hours.Mid) + "; for " + Hours(h.Overlap.Mid) + " of it"
	if low, high := h.Overlap.Low, h.Overlap.High; hoursNumber(low) != hoursNumber(high) {
		text += " (" + HoursRange(low, high) + ")"
	}
	return []string{text + " a bigger fan blew the warmth out again."}
}

// partingNote says when a stage's call and its record first parted, and for how long they did; what fell into a power
// cut is said by itself.
func (b barn) partingNote(row analysis.StageRow) (out []string) {
	a := row.Agreement
	if a == nil || a.Parted == nil {
		return nil
	}
	name, all := capital(row.Name), " in all"
	if a.CutMS > 0 {
		out = append(out, name+" was called for and stood for "+Hours(hours(a.CutMS))+" while the power was out.")
		all = " more"
	}
	if a.Powered != nil {
		out = append(out, name+" was called for and did not run, first on "+b.u.DateYear(*a.Powered)+", "+Hours(hours(a.UnansweredMS-a.CutMS))+all+".")
	}
	if a.PartedRan {
		out = append(out, name+" ran while it was not called for, first on "+b.u.DateYear(*a.Parted)+", "+Hours(hours(a.UncalledMS))+" in all.")
	}
	return out
}

// switchingNotes say where a thermostat switches elsewhere than it is set, and that a stage starts too often.
func (b barn) switchingNotes(row analysis.StageRow) (out []string) {
	if row.StartsC.OK && row.StopsC.OK && hasRemark(row.Remarks, "thermostat_apart") {
		out = append(out, capital(row.Name)+" started at "+b.u.Temp(row.StartsC.Mid)+" and stopped at "+b.u.Temp(row.StopsC.Mid)+", by the logger; it is set to "+
			b.u.Temp(row.Setting.OnC)+" and "+b.u.Temp(row.Setting.OffC)+". Try both in the same melting ice.")
	}
	if c := row.Cycling; c != nil && c.Short {
		out = append(out, capital(row.Name)+" starts often: "+strconv.Itoa(c.BusiestHour)+" times in its busiest hour. A wider step between on and off would spare it.")
	}
	return out
}

// knownNote says of how little of a setting's time it is known when a stage was called for, or ran.
func knownNote(row analysis.StageRow, w *analysis.Work, did string) []string {
	if !hardlyKnown(row, w) {
		return nil
	}
	return []string{"When " + row.Name + " " + did + " is known for " + Hours(hours(w.KnownMS)) + " of " + Hours(hours(row.Setting.Span.To-row.Setting.Span.From)) + ", too little for a number."}
}

// unreadNote says that no reading of the room falls into a setting's time.
func (b barn) unreadNote(row analysis.StageRow) []string {
	set, w := row.Setting, row.Called
	if set.AlwaysOn || set.Timer || w != nil && w.KnownMS > 0 {
		return nil
	}
	return []string{"When " + row.Name + " was called for from " + b.u.DateYear(set.Span.From) + " can't be told: no logger read the room under that setting."}
}

// speedNote says how fast a fan ran whose speed is recorded, and what its air and power are taken as.
func speedNote(row analysis.StageRow) []string {
	if !row.Speed.OK {
		return nil
	}
	return []string{capital(row.Name) + " ran at " + Percent(row.Speed.Mid) + " of full speed on average. Its air is taken to fall with the speed, and its power with the cube of it or a little less, for a drive loses some too."}
}

// airNotes say how often the barn's air was changed, and how long the ladder's top step takes for it.
func (b barn) airNotes() (out []string) {
	if c := b.r.Air.ChangesPerHour; c.OK {
		out = append(out, "The stages changed the barn's air about "+number(c.Mid, 1)+" times an hour over the winter ("+rangeOf(number(c.Low, 1), number(c.High, 1))+").")
	}
	quickest := analysis.Figure{}
	for _, row := range b.r.Stages {
		if m := row.ChangeMinutes; m.OK && (!quickest.OK || m.Mid < quickest.Mid) {
			quickest = m
		}
	}
	if quickest.OK {
		minutes := number(quickest.Low, 0)
		if high := number(quickest.High, 0); high != minutes {
			minutes = rangeOf(minutes, high)
		}
		out = append(out, "With every stage on, one change takes "+minutes+" min; about five minutes is usual in the trade.")
	}
	return out
}

// costNote says what the fans took.
func (b barn) costNote() []string {
	p := b.r.Power
	if !p.KWh.OK {
		return nil
	}
	text := "The fans took about "
	if p.KWh.Evidence != analysis.Recorded {
		text = "By what they were called for, the fans took about "
	}
	text += withUnit(number(p.KWh.Mid, 0), "kWh")
	if low, high := number(p.KWh.Low, 0), number(p.KWh.High, 0); low != high {
		text += " (" + rangeOf(low, high) + ")"
	}
	if p.Cost.OK {
		text += ", " + withUnit(number(p.Cost.Mid, 0), p.Currency)
	}
	if len(p.Without) > 0 {
		text += "; without " + listed(unique(p.Without)) + ", whose hours or watts are not known well enough"
	}
	return []string{text + "."}
}

// unique keeps the first of each name.
func unique(names []string) (out []string) {
	seen := map[string]bool{}
	for _, n := range names {
		if !seen[n] {
			out, seen[n] = append(out, n), true
		}
	}
	return out
}
