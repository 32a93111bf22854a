package analysis

// Power is what the fans took over the bees' time; Stages and mixing fans without a figure are left out and named.
type Power struct {
	KWh, Cost Figure
	Currency  string   // ISO 4217; empty without a price
	Without   []string // fans that no figure could be given for
}

// energy is electricity in kWh from the recorded, else the called-for hours, and the watts while running. A fan
// whose speed changes is not known here: its power goes with the cube of the speed, and no speed is set down.
func energy(watts *float64, ran, called *Work) Figure {
	w := ran
	if w == nil {
		w = called
	}
	switch {
	case watts == nil:
		return unknown("no_watts")
	case w == nil || !w.Hours.OK:
		return unknown("hours_unknown")
	}
	return w.Hours.times(*watts/1000, *watts/1000)
}

// cost is what energy cost at a price per kWh.
func cost(kWh Figure, price *float64) Figure {
	switch {
	case !kWh.OK:
		return unknown(kWh.Unknown)
	case price == nil:
		return unknown("no_price")
	}
	return kWh.times(*price, *price)
}

// times is a figure multiplied by something between low and high, neither below 0; its middle by the middle.
func (f Figure) times(low, high float64) Figure {
	f.Mid, f.Low, f.High = f.Mid*(low+high)/2, f.Low*low, f.High*high
	return f
}

// plus is the sum of two figures; the ranges add, since one thermostat's offset moves all stages together.
func (f Figure) plus(o Figure) Figure {
	if o.Evidence != f.Evidence {
		f.Evidence = WorkedOut
	}
	f.Mid, f.Low, f.High = f.Mid+o.Mid, f.Low+o.Low, f.High+o.High
	return f
}

// power adds up what stages and mixing fans took.
func power(stages []StageRow, mixing []MixingRow, currency string) Power {
	p := Power{KWh: unknown("no_watts"), Cost: unknown("no_price"), Currency: currency, Without: []string{}}
	add := func(name string, kWh, cost Figure) {
		if !kWh.OK {
			p.Without = append(p.Without, name)
			return
		}
		p.KWh, p.Cost = sumOf(p.KWh, kWh), sumOf(p.Cost, cost)
	}
	for _, r := range stages {
		add(r.Name, r.KWh, r.Cost)
	}
	for _, r := range mixing {
		add(r.Fan.Name, r.KWh, r.Cost)
	}
	return p
}

// sumOf is the sum of those of two figures that are known.
func sumOf(a, b Figure) Figure {
	switch {
	case !a.OK:
		return b
	case !b.OK:
		return a
	}
	return a.plus(b)
}
