package sampledata

import "context"

// File is one file of a demo: its name, without a folder, and its bytes.
type File struct {
	Name string
	Data []byte
}

// Demo makes the two-barn winter: the loggers' files in four layouts, winter.toml (the plan that describes
// them) and truth.json (a Truth). The bytes are the same every time. progress, which may be nil, is told
// how many of how many steps of work are done; a cancelled context ends the work with its error.
func Demo(ctx context.Context, progress func(done, total int)) ([]File, error) {
	place, barns, outdoor := lowland(), []*barn{alder(), rowan()}, outdoors()
	truth, err := winterOf(ctx, place, barns, outdoor, progress)
	if err != nil {
		return nil, err
	}
	loggers := []*logger{outdoor}
	for _, b := range barns {
		loggers = append(loggers, b.loggers...)
	}
	return files(loggers, planOf(place, barns, outdoor), truth)
}

// Thin makes the winter of another keeper, who has one logger and no records: its file, a plan that says where it
// hung, and the truth. It is made like Demo.
func Thin(ctx context.Context, progress func(done, total int)) ([]File, error) {
	place, b := prairie(), shed()
	truth, err := winterOf(ctx, place, []*barn{b}, nil, progress)
	if err != nil {
		return nil, err
	}
	return files(b.loggers, thinPlanOf(place, b), truth)
}

// winterOf lets barns and an outdoor logger, where there is one, go through the winter of a site.
func winterOf(ctx context.Context, s *site, barns []*barn, outdoor *logger, progress func(done, total int)) (Truth, error) {
	days := int((s.simulated.to - s.simulated.from) / dayMS)
	done := 0
	day := func() {
		done++
		if progress != nil {
			progress(done, days*len(barns))
		}
	}
	w := newWeather(s)
	truth := Truth{Seed: seed, StepS: stepS, Outdoor: []LoggerTruth{}}
	if outdoor != nil {
		outdoor.ready(s.streams + 100)
		listen(outdoor, s, w)
		truth.Outdoor = append(truth.Outdoor, outdoor.truth())
	}
	for i, b := range barns {
		for j, l := range b.loggers {
			l.ready(s.streams + uint64(100*(i+2)+j))
		}
		sim := newSimulation(b, s, w)
		if err := sim.run(ctx, day); err != nil {
			return truth, err
		}
		truth.Barns = append(truth.Barns, sim.truth())
	}
	return truth, nil
}

// listen lets an outdoor logger stand through the winter.
func listen(l *logger, s *site, w *weather) {
	sc := scene{}
	for at := s.simulated.from; at < s.simulated.to; at += stepS * secondMS {
		now := w.at(at)
		sc.atMS, sc.outC, sc.outVapPa = at, now.tempC, now.vapPresPa
		l.watch(&sc, false)
	}
}

// files puts everything in order: plan and truth, then the loggers' files.
func files(loggers []*logger, plan []byte, truth Truth) ([]File, error) {
	text, err := truth.text()
	if err != nil {
		return nil, err
	}
	out := []File{{"winter.toml", plan}, {"truth.json", text}}
	for _, l := range loggers {
		for _, f := range l.files {
			out = append(out, File{f.name, f.text})
		}
	}
	return out, nil
}
