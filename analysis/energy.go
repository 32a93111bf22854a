package analysis

// Power is what the fans took over the bees' time; Stages and mixing fans without a figure are left out and named.
type Power struct {
	KWh, Cost Figure
	Currency  string   // ISO 4217; empty without a price
	Without   []string // fans that no figure could be given for
}

// energy is electricity in kWh from hours and the watts while running.
func energy(watts *float64, hours Figure) Figure {
	switch {
	case watts == nil:
		return unknown("no_watts")
	case !hours.OK:
		return unknown("hours_unknown")
	}
	return hours.times(*watts/1000, *watts/1000)
}

// hoursOf are the hours of the first work there is.
func hoursOf(works ...*Work) Figure {
	for _, w := range works {
		if w != nil {
			return w.Hours
		}
	}
	return unknown("hours_unknown")
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
