package desk

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"

	"thawbook/app/winter"
)

// WallSheet is the list of a barn's walls and ceilings towards the open air.
func (b Book) WallSheet(barn int) Sheet {
	was, none := b.doc.Barns[barn].Surfaces, "none"
	s := Sheet{Title: "Walls and ceilings of " + b.doc.Barns[barn].Name, Help: HelpLine("wall_sheet"), Add: "Add a surface", Columns: []SheetColumn{
		{Title: "Surface", Hint: "north wall", Wide: true}, {Title: "Kind", Choices: []string{"wall", "ceiling", "corner", "metal"}}, {Title: "Warmth that reaches it, %", Hint: "by its kind", Wide: true},
		{Title: "Logger on it", Choices: append([]string{none}, loggersOnThings(b.doc.Barns[barn])...)},
	}}
	for i, w := range was {
		s.Rows = append(s.Rows, SheetRow{[]string{w.Name, w.Kind, warmthText(w), cmp.Or(w.Logger, none)}, i + 1})
	}
	if len(was) == 0 {
		s.Rows = rowsOfHung(b.doc.Barns[barn])
	}
	s.read = func(rows []SheetRow) (winter.Edit, error) {
		surfaces, names := []winter.Surface{}, []string{}
		for _, r := range rows {
			w := winter.Surface{}
			if r.Was > 0 {
				w = was[r.Was-1]
			}
			if err := warmthRead(&w, r.cell(2), "surface "+r.cell(0)); err != nil {
				return nil, err
			}
			if w.Name, w.Kind, w.Logger = r.cell(0), r.Cells[1], r.Cells[3]; w.Logger == none {
				w.Logger = ""
			}
			surfaces, names = append(surfaces, w), append(names, w.Name)
		}
		return winter.SetSettings{Barn: barn, Of: "surfaces", Surfaces: surfaces}, namedApart(names, "surface")
	}
	return s
}

// surfaceKinds are the kinds of surface that loggers hang on, by their place.
var surfaceKinds = map[string]string{"wall": "wall", "ceiling": "ceiling", "cold metal": "metal"}

// rowsOfHung is a row for what each logger on a wall, a ceiling or metal hangs on, to begin a list with.
func rowsOfHung(barn winter.Barn) (rows []SheetRow) {
	for _, name := range loggersOnThings(barn) {
		at := slices.IndexFunc(barn.Loggers, func(l winter.Logger) bool { return l.Name == name && surfaceKinds[l.Place] != "" })
		rows = append(rows, SheetRow{[]string{name, surfaceKinds[barn.Loggers[at].Place], "", name}, 0})
	}
	return rows
}

// loggersOnThings names the loggers of a barn that hang on a wall, a ceiling or metal, and those said to hang on a surface.
func loggersOnThings(barn winter.Barn) (out []string) {
	on := map[string]bool{}
	for _, s := range barn.Surfaces {
		on[s.Logger] = true
	}
	for _, l := range barn.Loggers {
		if (on[l.Name] || surfaceKinds[l.Place] != "") && !slices.Contains(out, l.Name) {
			out = append(out, l.Name)
		}
	}
	return out
}

// warmthText is the share of the room's warmth that reaches a surface, or its range, in percent.
func warmthText(w winter.Surface) string {
	switch {
	case w.Factor != nil:
		return percentText(*w.Factor)
	case w.Low != nil && w.High != nil:
		return percentText(*w.Low) + enDash + percentText(*w.High)
	}
	return ""
}

// warmthRead reads that share or range into a surface; what stands there still is kept to the last bit.
func warmthRead(w *winter.Surface, cell, what string) error {
	if cell == warmthText(*w) {
		return nil
	}
	low, high, err := rangeIn(cell, what, "%", 0, 100)
	if err != nil {
		return err
	}
	w.Factor, w.Low, w.High = nil, nil, nil
	if low == nil {
		return nil
	}
	*low, *high = *low/100, *high/100
	if *low == *high {
		w.Factor = low
	} else {
		w.Low, w.High = low, high
	}
	return nil
}

func percentText(share float64) string { return shortest(100 * share) }

// HeatSheet is the list of a barn's heat sources.
func (b Book) HeatSheet(barn int) Sheet {
	was, none := b.doc.Barns[barn].Heats, "none"
	stages := []string{none}
	for _, st := range b.doc.Barns[barn].Stages {
		if stages[len(stages)-1] != st.Name {
			stages = append(stages, st.Name)
		}
	}
	s := Sheet{Title: "Heat in " + b.doc.Barns[barn].Name, Help: HelpLine("heat_sheet"), Add: "Add a heat source", Columns: []SheetColumn{
		{Title: "Heat", Hint: "floor loop", Wide: true}, {Title: "Kind", Choices: []string{"floor", "solar", "heater", "recovery"}},
		{Title: "Warms", Choices: []string{"air", "floor", "water"}}, {Title: "Wired with", Choices: stages},
	}}
	for i, h := range was {
		row := []string{h.Name, h.Kind, h.Into, h.WithStage}
		if h.Into == "" {
			row[2] = "air"
		}
		if h.WithStage == "" {
			row[3] = none
		}
		s.Rows = append(s.Rows, SheetRow{row, i + 1})
	}
	for _, r := range waitingRecords(b.doc.Barns[barn]) {
		if r.kind != "" && len(was) == 0 {
			s.Rows = append(s.Rows, SheetRow{[]string{r.name, r.kind, "air", none}, 0})
		}
	}
	s.read = func(rows []SheetRow) (winter.Edit, error) {
		heats, names := []winter.HeatSource{}, []string{}
		for _, r := range rows {
			h := winter.HeatSource{Name: r.cell(0), Kind: r.Cells[1], Into: r.Cells[2], WithStage: r.Cells[3]}
			if h.WithStage == none {
				h.WithStage = ""
			}
			if r.Was > 0 && was[r.Was-1].Into == "" && h.Into == "air" { // as it was shown
				h.Into = ""
			}
			heats, names = append(heats, h), append(names, h.Name)
		}
		return winter.SetSettings{Barn: barn, Of: "heats", Heats: heats}, namedApart(names, "heat source")
	}
	return s
}

// HiveSheet is the ledger of hives in and out of a barn.
func (b Book) HiveSheet(barn int) Sheet {
	zone, was := b.location(), b.doc.Barns[barn].Heads
	s := Sheet{Title: "Hives in and out of " + b.doc.Barns[barn].Name, Help: HelpLine("hive_sheet"), Add: "Add a move", Columns: []SheetColumn{
		{Title: "When", Hint: "2024-11-12 14:30", Wide: true}, {Title: "Hives", Hint: "340 or -12"}, {Title: "Note", Wide: true},
	}}
	for i, h := range was {
		s.Rows = append(s.Rows, SheetRow{[]string{momentText(&h.At, zone), strconv.Itoa(h.Change), h.Note}, i + 1})
	}
	s.read = func(rows []SheetRow) (winter.Edit, error) {
		heads := []winter.HeadCount{}
		for i, r := range rows {
			var stood *int64
			if r.Was > 0 {
				stood = &was[r.Was-1].At
			}
			at, err := keptMoment(r.cell(0), stood, zone)
			if err != nil {
				return nil, err
			}
			count, err := numberIn(r.cell(1), "hives", "", -1e5, 1e5)
			switch {
			case err != nil:
				return nil, err
			case at == nil || count == nil || *count == 0 || *count != math.Trunc(*count):
				return nil, fmt.Errorf("row %d needs a day and a whole number of hives: so many in, or with a minus so many out", i+1)
			}
			heads = append(heads, winter.HeadCount{At: *at, Change: int(*count), Note: r.cell(2)})
		}
		return winter.SetSettings{Barn: barn, Of: "heads", Heads: heads}, nil
	}
	return s
}

// LimitSheet are the limits all barns are judged by; what is left empty is as usual.
func (b Book) LimitSheet(u Units) Sheet {
	was := b.doc.Bands
	temp := func(v float64) string { return shortest(u.TempValue(v)) }
	s := Sheet{Title: "Safe limits", Help: limitHelp(u), Fixed: true, Columns: []SheetColumn{{Wide: true, Label: true},
		{Title: "Good from", Hint: "as usual"}, {Title: "to", Hint: "as usual"}, {Title: "Watch below", Hint: "as usual"}, {Title: "above", Hint: "as usual"}, {Title: "Act below", Hint: "as usual"}, {Title: "above", Hint: "as usual"}}}
	s.Rows = []SheetRow{{append([]string{"Temperature, " + u.TempSymbol()}, limitCells(was.TempC, temp)...), 1}, {append([]string{"Relative humidity, %"}, limitCells(was.RelHum, percentText)...), 2}}
	s.read = func(rows []SheetRow) (edit winter.Edit, err error) {
		e := winter.SetBands{}
		if e.Bands.TempC, err = limitsRead(rows[0], was.TempC, temp, u.fromShown, u.TempValue(-60), u.TempValue(80)); err == nil {
			e.Bands.RelHum, err = limitsRead(rows[1], was.RelHum, percentText, func(v float64) float64 { return v / 100 }, 0, 100)
		}
		return e, err
	}
	return s
}

// limitHelp says what the limits are where nothing is set down, in the unit shown.
func limitHelp(u Units) string {
	degree := withUnit(shortest(u.TempValue(1)-u.TempValue(0)), u.TempSymbol())
	return "Left empty, the usual limits hold: good is " + withUnit(rangeOf(u.Limit(2), u.Limit(6)), u.TempSymbol()) + " and 40" + enDash + "75" + thinSpace + "%; to watch " + degree +
		" above the top stage and above 85" + thinSpace + "%; to act above " + u.LimitWithUnit(8) + " and 85" + thinSpace + "%. They are practice, not law."
}

// ends are a band's limits in the order of the sheet.
func ends(b *winter.Band) [6]**float64 {
	return [6]**float64{&b.GoodLow, &b.GoodHigh, &b.WatchLow, &b.WatchHigh, &b.ActLow, &b.ActHigh}
}

func limitCells(b winter.Band, text func(float64) string) (out []string) {
	for _, end := range ends(&b) {
		out = append(out, textIf(*end, text))
	}
	return out
}

// limitsRead reads a row of limits; back leads from what is shown to what is kept.
func limitsRead(r SheetRow, was winter.Band, text func(float64) string, back func(float64) float64, low, high float64) (out winter.Band, err error) {
	for i, end := range ends(&out) {
		v, err := numberIn(r.cell(i+1), r.Cells[0], "", low, high)
		if err != nil {
			return out, err
		}
		if v != nil {
			*v = back(*v)
		}
		*end = kept(r.cell(i+1), *ends(&was)[i], text, v)
	}
	for i := 0; i < 6; i += 2 {
		if l, h := *ends(&out)[i], *ends(&out)[i+1]; l != nil && h != nil && *l >= *h {
			return out, fmt.Errorf("%s: of each two limits the first must be the lower", r.Cells[0])
		}
	}
	if !nested(out) {
		return out, fmt.Errorf("%s: good must lie inside watch, and watch inside act", r.Cells[0])
	}
	return out, nil
}

// nested says whether each wider band of those set holds the narrower ones.
func nested(b winter.Band) bool {
	var set []float64
	for _, end := range []*float64{b.ActLow, b.WatchLow, b.GoodLow, b.GoodHigh, b.WatchHigh, b.ActHigh} {
		if end != nil {
			set = append(set, *end)
		}
	}
	return slices.IsSorted(set)
}
