package compare

import "slices"

// Turned is a pair seen from its second barn: every difference, range and verdict turned round, on B's clock.
func (p Pair) Turned() Pair {
	laterMS := p.LaterMS
	p.A, p.B, p.LaterMS = p.B, p.A, -p.LaterMS
	p.Rows, p.Totals, p.Exposures, p.Apart = slices.Clone(p.Rows), slices.Clone(p.Totals), slices.Clone(p.Exposures), slices.Clone(p.Apart)
	for i := range p.Rows {
		p.Rows[i] = p.Rows[i].turned()
	}
	for i, t := range p.Totals {
		t.A, t.B = t.B, t.A
		t.Difference.Mid, t.Difference.Low, t.Difference.High = -t.Difference.Mid, -t.Difference.High, -t.Difference.Low
		p.Totals[i] = t
	}
	for i, e := range p.Exposures {
		p.Exposures[i].A, p.Exposures[i].B = e.B, e.A
	}
	for i, h := range p.Apart {
		p.Apart[i] = Hour{later(h.Span, laterMS), h.B, h.A, -h.Difference, h.OnB, h.OnA}
	}
	p.Weather, p.Losses = p.Weather.turned(), p.Losses.turned()
	return p
}

func (r Row) turned() Row {
	r.A, r.B, r.Difference = r.B, r.A, -r.Difference
	r.Low, r.High = -r.High, -r.Low
	r.AddedA, r.AddedB = r.AddedB, r.AddedA
	if r.OfB != "" {
		r.Of, r.OfB = r.OfB, r.Of
	}
	r.Verdict = r.Verdict.turned()
	return r
}

func (v Verdict) turned() Verdict {
	switch v {
	case More:
		return Less
	case Less:
		return More
	}
	return v
}

func (w Weather) turned() Weather {
	w.Bins, w.Stages = slices.Clone(w.Bins), slices.Clone(w.Stages)
	for i, b := range w.Bins {
		w.Bins[i] = WeatherBin{b.FromC, b.ToC, b.HoursB, b.HoursA, b.B, b.A}
	}
	for i, s := range w.Stages {
		w.Stages[i] = StageWeather{s.Name, s.B, s.A}
	}
	return w
}

func (l Losses) turned() Losses {
	return Losses{l.B, l.A, -l.Difference, -l.High, -l.Low, l.Unknown, l.Verdict.turned()}
}
