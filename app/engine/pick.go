package engine

import (
	"strconv"
	"strings"

	"thawbook/app/winter"
	"thawbook/importers"
)

// picked are the series of one export that belong to a logger; nil where it has none.
type picked struct {
	temp, relHum, state, light *importers.Series
	speed                      *importers.Series // as a share of full speed
	limit                      string            // above which current, power or speed is taken for on; "" where the record is of states
	full                       string            // what is taken as full speed
	loggers                    int               // how many loggers the choice was among
}

// pick chooses a logger's series: those of the channel where one is named (a logger's name or a column's
// text or a variable's, whole or in part, in any case); else those of the logger in the file that bears the same name;
// else the first. Temperature and humidity come from the same logger of the file.
func pick(l winter.Logger, export *importers.Export) picked {
	var p picked
	all := pointers(export.Series)
	chosen := all
	if l.Channel != "" {
		chosen = byChannel(all, l.Channel)
	} else if named := byLogger(all, l.Name); len(named) > 0 {
		chosen = named
	}
	temperatures := []importers.Quantity{importers.AirTemperature, importers.SurfaceTemperature}
	if isSurface(l.Place) {
		temperatures[0], temperatures[1] = temperatures[1], temperatures[0]
	}
	p.temp = first(chosen, temperatures...)
	same := chosen
	if p.temp != nil {
		same = byLogger(chosen, p.temp.Logger)
	}
	p.relHum = first(same, importers.RelativeHumidity)
	p.light = lightOf(same)
	if l.RecordsStage != "" || p.temp == nil && p.relHum == nil && p.light == nil {
		p.state, p.limit, p.speed, p.full = recordOf(chosen)
	}
	p.loggers = loggersOf(chosen)
	return p
}

// recordOf is the record of what ran among some series.
func recordOf(all []*importers.Series) (state *importers.Series, limit string, speed *importers.Series, full string) {
	if state = first(all, importers.State); state == nil {
		state, limit = stateOf(all)
	}
	speed, full = speedOf(all)
	return state, limit, speed, full
}

// stateOf is the first record of current, power or speed that can be read as states, and the limit between them with
// its unit; or the first column of an unknown thing that holds nothing but 0 and 1.
func stateOf(all []*importers.Series) (state *importers.Series, limit string) {
	for _, s := range all {
		on, above, ok := s.AsState()
		if ok && s.Quantity == importers.Other {
			return &on, ""
		}
		if ok {
			return &on, strings.TrimSpace(strconv.FormatFloat(above, 'g', 4, 64) + " " + s.Unit)
		}
	}
	return nil, ""
}

// speedOf is the record of speed among some series, as a share of full speed, and what is taken as that; nil for none.
func speedOf(all []*importers.Series) (speed *importers.Series, full string) {
	s := first(all, importers.Speed)
	if s == nil {
		return nil, ""
	}
	share, ok := s.AsSpeed()
	if !ok {
		return nil, ""
	}
	of, _ := s.FullSpeed()
	return &share, strconv.FormatFloat(of, 'f', 0, 64) + " " + strings.Replace(s.Unit, "percent", "%", 1)
}

// lightOf is the first record of light, in lux or as dark and light.
func lightOf(all []*importers.Series) *importers.Series {
	return first(keep(all, func(s *importers.Series) bool { return s.IsLight() }), importers.Light, importers.State)
}

// empty says whether nothing was found.
func (p picked) empty() bool {
	return p.temp == nil && p.relHum == nil && p.state == nil && p.light == nil
}

// isSurface says whether a logger at the place touches a thing rather than hangs in air.
func isSurface(place string) bool {
	switch place {
	case "wall", "ceiling", "cold metal", "floor":
		return true
	}
	return false
}

// pointers avoids copying the series.
func pointers(all []importers.Series) []*importers.Series {
	out := make([]*importers.Series, len(all))
	for i := range all {
		out[i] = &all[i]
	}
	return out
}

// byChannel keeps the series whose logger, column or variable is the channel; failing that, whose logger, column or
// variable holds it.
func byChannel(all []*importers.Series, channel string) []*importers.Series {
	exact := keep(all, func(s *importers.Series) bool {
		return strings.EqualFold(s.Logger, channel) || strings.EqualFold(s.Column, channel) || strings.EqualFold(s.Variable, channel)
	})
	if len(exact) > 0 {
		return exact
	}
	part := strings.ToLower(channel)
	return keep(all, func(s *importers.Series) bool {
		return strings.Contains(strings.ToLower(s.Logger+"\n"+s.Column+"\n"+s.Variable), part)
	})
}

// byLogger keeps the series of one logger of the file.
func byLogger(all []*importers.Series, name string) []*importers.Series {
	return keep(all, func(s *importers.Series) bool { return strings.EqualFold(s.Logger, name) })
}

// keep is what passes.
func keep(all []*importers.Series, pass func(*importers.Series) bool) (out []*importers.Series) {
	for _, s := range all {
		if pass(s) {
			out = append(out, s)
		}
	}
	return out
}

// first is the first series with readings of the first quantity that has one.
func first(all []*importers.Series, quantities ...importers.Quantity) *importers.Series {
	for _, q := range quantities {
		for _, s := range all {
			if s.Quantity == q && len(s.FaceMS) > 0 {
				return s
			}
		}
	}
	return nil
}

// loggersOf counts the loggers among series.
func loggersOf(all []*importers.Series) int {
	seen := map[string]bool{}
	for _, s := range all {
		seen[s.Logger] = true
	}
	return len(seen)
}
