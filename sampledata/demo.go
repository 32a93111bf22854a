package sampledata

import (
	"context"
	"time"
)

// File is one file of the demo: its name, without a folder, and its bytes.
type File struct {
	Name string
	Data []byte
}

// simulated starts a week before the loggers, so that the rooms have forgotten how they were started.
var simulated = span{standard(2024, time.October, 25, 0, 0), record.to}

// Demo makes the two-barn winter: the loggers' files in four layouts, winter.toml (the plan that describes
// them) and truth.json (a Truth). The bytes are the same every time. progress, which may be nil, is told
// how many of how many steps of work are done; a cancelled context ends the work with its error.
func Demo(ctx context.Context, progress func(done, total int)) ([]File, error) {
	barns := []*barn{alder(), rowan()}
	days := int((simulated.to - simulated.from) / dayMS)
	done := 0
	day := func() {
		done++
		if progress != nil {
			progress(done, days*len(barns))
		}
	}
	w := newWeather(simulated)
	truth := Truth{Seed: seed, StepS: stepS}
	outdoor := outdoors()
	outdoor.ready(100)
	listen(outdoor, w)
	loggers := []*logger{outdoor}
	for i, b := range barns {
		for j, l := range b.loggers {
			l.ready(uint64(100*(i+2) + j))
		}
		sim := newSimulation(b, w)
		if err := sim.run(ctx, simulated, day); err != nil {
			return nil, err
		}
		truth.Barns = append(truth.Barns, sim.truth())
		loggers = append(loggers, b.loggers...)
	}
	truth.Outdoor = append(truth.Outdoor, outdoor.truth())
	return files(loggers, planOf(barns, outdoor), truth)
}

// listen lets an outdoor logger stand through the winter.
func listen(l *logger, w *weather) {
	s := scene{}
	for at := simulated.from; at < simulated.to; at += stepS * secondMS {
		s.atMS = at
		s.outC, s.outVapPa = w.at(at)
		l.watch(&s, false)
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
		out = append(out, File{l.file, l.text})
	}
	return out, nil
}
