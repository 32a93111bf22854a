package desk

import (
	"fmt"

	"thawbook/app/winter"
)

// ExcludedSheet is the list of the stretches of a barn's bees' time that are not judged.
func (b Book) ExcludedSheet(barn int) Sheet {
	zone, was := b.location(), b.doc.Barns[barn].Exclusions
	s := Sheet{Title: "Times in " + b.doc.Barns[barn].Name + " that are not judged", Help: HelpLine("excluded_sheet"), Add: "Add a time", Columns: []SheetColumn{
		{Title: "From", Hint: "2025-03-02 10:00", Wide: true}, {Title: "To", Hint: "2025-03-08 18:00", Wide: true}, {Title: "Why", Hint: "a batch out", Wide: true},
	}}
	for i, x := range was {
		s.Rows = append(s.Rows, SheetRow{[]string{momentText(&x.From, zone), momentText(&x.To, zone), x.Reason}, i + 1})
	}
	s.read = func(rows []SheetRow) (winter.Edit, error) {
		out := []winter.Exclusion{}
		for i, r := range rows {
			var stood struct{ from, to *int64 }
			if r.Was > 0 {
				stood.from, stood.to = &was[r.Was-1].From, &was[r.Was-1].To
			}
			from, err := keptMoment(r.cell(0), stood.from, zone)
			if err != nil {
				return nil, err
			}
			to, err := keptMoment(r.cell(1), stood.to, zone)
			switch {
			case err != nil:
				return nil, err
			case from == nil || to == nil:
				return nil, fmt.Errorf("row %d needs both: from when and to when", i+1)
			case *to <= *from:
				return nil, fmt.Errorf("row %d ends before it begins", i+1)
			}
			out = append(out, winter.Exclusion{From: *from, To: *to, Reason: r.cell(2)})
		}
		return winter.SetSettings{Barn: barn, Of: "exclusions", Exclusions: out}, nil
	}
	return s
}

// PhaseSheet has a row for each phase of a barn's winter: when it begins and its own limits; what is left empty is as usual.
func (b Book) PhaseSheet(barn int, u Units) Sheet {
	zone, usual := b.location(), "as usual"
	s := Sheet{Title: "Phases of " + b.doc.Barns[barn].Name, Help: HelpLine("phase_sheet"), Fixed: true, Columns: []SheetColumn{
		{Wide: true, Label: true}, {Title: "Begins", Hint: usual, Wide: true}, {Title: "Good from, " + u.TempSymbol(), Hint: usual}, {Title: "to", Hint: usual},
		{Title: "Act above", Hint: usual}, {Title: "Good from, %", Hint: usual}, {Title: "to", Hint: usual},
	}}
	was := map[string]winter.Phase{}
	for _, p := range b.doc.Barns[barn].Phases {
		was[p.Name] = p
	}
	for i, name := range winter.PhaseNames {
		p := was[name]
		row := []string{capital(name), momentText(p.From, zone)}
		for _, l := range phaseLimits(&p.Bands, u) {
			row = append(row, textIf(*l.at, l.text))
		}
		s.Rows = append(s.Rows, SheetRow{row, i + 1})
	}
	s.read = func(rows []SheetRow) (edit winter.Edit, err error) {
		out := []winter.Phase{}
		for i, name := range winter.PhaseNames {
			p := winter.Phase{Name: name}
			if p.From, err = keptMoment(rows[i].cell(1), was[name].From, zone); err != nil {
				return nil, err
			}
			if p.Bands, err = phaseLimitsRead(rows[i], was[name].Bands, u); err != nil {
				return nil, err
			}
			if p.From != nil || p.Bands != (winter.Bands{}) {
				out = append(out, p)
			}
		}
		return winter.SetSettings{Barn: barn, Of: "phases", Phases: out}, inTurn(out)
	}
	return s
}

// phaseLimit is a limit of a phase's sheet: where it stands, how it is shown and read, and between which ends.
type phaseLimit struct {
	at          **float64
	text        func(float64) string
	back        func(float64) float64
	least, most float64
}

// phaseLimits are those of some bands in the order of the sheet.
func phaseLimits(b *winter.Bands, u Units) []phaseLimit {
	temp := func(at **float64) phaseLimit {
		return phaseLimit{at, func(v float64) string { return shortest(u.TempValue(v)) }, u.fromShown, u.TempValue(-60), u.TempValue(80)}
	}
	humid := func(at **float64) phaseLimit {
		return phaseLimit{at, percentText, func(v float64) float64 { return v / 100 }, 0, 100}
	}
	return []phaseLimit{temp(&b.TempC.GoodLow), temp(&b.TempC.GoodHigh), temp(&b.TempC.ActHigh), humid(&b.RelHum.GoodLow), humid(&b.RelHum.GoodHigh)}
}

// phaseLimitsRead reads a row's limits; those the sheet does not show stay.
func phaseLimitsRead(r SheetRow, was winter.Bands, u Units) (winter.Bands, error) {
	out, stood := was, phaseLimits(&was, u)
	for i, l := range phaseLimits(&out, u) {
		cell := r.cell(i + 2)
		v, err := numberIn(cell, r.Cells[0], "", l.least, l.most)
		if err != nil {
			return out, err
		}
		if v != nil {
			*v = l.back(*v)
		}
		*l.at = kept(cell, *stood[i].at, l.text, v)
	}
	if !nested(out.TempC) || !nested(out.RelHum) {
		return out, fmt.Errorf("%s: good must lie inside watch, and watch inside act", r.Cells[0])
	}
	return out, nil
}

// inTurn says which phase begins before the one it follows.
func inTurn(phases []winter.Phase) error {
	last := winter.Phase{}
	for _, p := range phases {
		if p.From == nil {
			continue
		}
		if last.From != nil && *p.From <= *last.From {
			return fmt.Errorf("%s must begin after %s", p.Name, last.Name)
		}
		last = p
	}
	return nil
}

// RoomSheet is what there is to know of a barn's room itself, and what its alarm is set to.
func (b Book) RoomSheet(barn int, u Units) Sheet {
	was := b.doc.Barns[barn]
	s := Sheet{Title: "The room of " + was.Name, Help: HelpLine("room_sheet"), Fixed: true, Columns: []SheetColumn{
		{Title: "Volume, m³", Hint: "not known"}, {Title: "Water lines in it", Choices: []string{"no", "yes"}},
		{Title: "Alarm above, " + u.TempSymbol(), Hint: u.Limit(8)}, {Title: "for, min", Hint: "30"},
	}}
	temp := func(v float64) string { return shortest(u.TempValue(v)) }
	lines := "no"
	if was.WaterLines {
		lines = "yes"
	}
	s.Rows = []SheetRow{{[]string{textIf(was.VolumeM3, shortest), lines, textIf(was.AlarmC, temp), textIf(was.AlarmMin, shortest)}, 1}}
	s.read = func(rows []SheetRow) (winter.Edit, error) {
		r := rows[0]
		v, err := numberIn(r.cell(0), "the volume", "m³", 1, 1e7)
		if err != nil {
			return nil, err
		}
		limit, err := numberIn(r.cell(2), "the alarm", u.TempSymbol(), u.TempValue(-20), u.TempValue(40))
		if err != nil {
			return nil, err
		}
		if limit != nil {
			*limit = u.fromShown(*limit)
		}
		delay, err := numberIn(r.cell(3), "the alarm's minutes", "min", 0, 1440)
		return winter.SetRoom{
			Barn: barn, VolumeM3: kept(r.cell(0), was.VolumeM3, shortest, v), WaterLines: r.Cells[1] == "yes",
			AlarmC: kept(r.cell(2), was.AlarmC, temp, limit), AlarmMin: kept(r.cell(3), was.AlarmMin, shortest, delay),
		}, err
	}
	return s
}
