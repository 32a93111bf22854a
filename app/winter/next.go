package winter

import "slices"

// Next is the winter after one: its barns with the settings that held last, and where its loggers hung, but
// no logs, no dates, no notes and no head count. What was said of files written one way holds for the next ones.
func Next(w Winter, name string) Winter {
	remembered := slices.DeleteFunc(slices.Clone(w.Answers), func(a Answer) bool { return a.Layout == "" })
	out := Winter{Name: name, Answers: remembered, Zone: w.Zone, GapMinutes: w.GapMinutes, Bands: w.Bands, Tariff: w.Tariff, Outdoor: emptied(w.Outdoor)}
	for _, b := range w.Barns {
		b.BeesIn, b.BeesOut, b.Heads, b.Notes, b.Exclusions = nil, nil, nil, nil, nil
		b.Stages = lastOf(b.Stages, func(s *Stage) (string, **int64) { return s.Name, &s.From })
		b.Mixing = lastOf(b.Mixing, func(c *Circulation) (string, **int64) { return c.Name, &c.From })
		b.Phases = slices.Clone(b.Phases)
		for i := range b.Phases {
			b.Phases[i].From = nil
		}
		b.Loggers = emptied(b.Loggers)
		out.Barns = append(out.Barns, b)
	}
	return out
}

// lastOf keeps the last setting of each name, in the order the names first stand, and without its date. One
// without a date is another thing of the name.
func lastOf[T any](all []T, parts func(*T) (name string, from **int64)) (out []T) {
	for _, setting := range all {
		name, from := parts(&setting)
		dated := *from != nil
		*from = nil
		i := -1
		if dated {
			i = slices.IndexFunc(out, func(o T) bool { earlier, _ := parts(&o); return earlier == name })
		}
		if i < 0 {
			out = append(out, setting)
			continue
		}
		out[i] = setting
	}
	return out
}

// emptied are loggers where they hung last, waiting for their next read-out: without files, and without
// what was true of the old files alone.
func emptied(all []Logger) (out []Logger) {
	for _, l := range lastOf(all, func(l *Logger) (string, **int64) { return l.Name, &l.From }) {
		l.Files, l.Anchors, l.AheadMS, l.Exclusions, l.Kept = nil, nil, 0, nil, nil
		out = append(out, l)
	}
	return out
}
