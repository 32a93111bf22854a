package analysis

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"thawbook/analysis/series"
)

// Finding is something worth a look before next winter: a code, what it is about, and the figures it rests on.
// It says what was seen and never why it came.
type Finding struct {
	Code     string
	About    string  // the place, stage, surface or source it is about; empty for the barn
	Weight   float64 // 0–100: what to look at first
	Figures  []NamedFigure
	Evidence Evidence
	Look     series.Span // where it shows most; empty where it has no one place
}

// NamedFigure is a figure of a finding or an event with its name, which carries its unit.
type NamedFigure struct {
	Name string
	Figure
}

// Figure is the figure of a name; it is unknown where the finding has none.
func (f Finding) Figure(name string) Figure {
	for _, n := range f.Figures {
		if n.Name == name {
			return n.Figure
		}
	}
	return unknown("not_given")
}

// The lines from which something is a finding (common practice, no source): so many hours of a winter, and such
// a part of what it is compared with.
const (
	leastFindingH  = 12
	mostOfThem     = 0.5  // of the hours outside a band
	hardlyRan      = 0.5  // of what it was called for
	ranTwice       = 2    // times what it was called for
	oftenApart     = 0.10 // of the known hours
	offThermostatK = 0.5
	fullCoverage   = 0.95
	mouldBegins    = 1 // the index from which growth is seen under a microscope
)

// findings are all there is to look at, the heaviest first; those of equal weight by code and what they are about.
func findings(j judgement, r *Review) []Finding {
	out := []Finding{}
	for _, find := range []func(judgement, *Review) []Finding{
		spellFindings, stageFindings, startFindings, fansFinding, heatFindings, surfaceFindings, unevenFindings, thermostatFinding, coverageFinding, eventFindings, alarmFindings,
	} {
		out = append(out, find(j, r)...)
	}
	slices.SortStableFunc(out, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(b.Weight, a.Weight), cmp.Compare(a.Code, b.Code), cmp.Compare(a.About, b.About))
	})
	return out
}

// kindWeights are how much hours outside a band weigh: a barn that is too warm loses bees first. What wet surfaces went with
// weighs less than that they were wet (surfaceFindings).
var kindWeights = map[string]float64{"warm": 60, "cold": 40, "damp": 50, "dry": 45, "dew": 40, "frost": 35}

// failures are causes that are something broken: they count however many of a winter's hours they make up. So does what is
// tooSmall, without a failure's weight.
var failures = []string{NotRun, RunUncalled, AlwaysOnOff, HeatOff}

const failureWeight, tooSmall = 20, FansAtLimit

// passing are causes at which there is nothing to turn before next winter: they come behind what can be changed.
var passing = []string{OutdoorDry, JustCarriedIn}

const passingWeight = 20

// weather are causes that no fan answers: they weigh less than what can be set otherwise, and however many their hours and however
// far they took the air what is broken, too small or set against itself comes first.
var weather = []string{OutdoorWarm, OutdoorHumid}

const (
	weatherLess, weatherMost = 10, 5
	unexplainedMost          = 65
)

// How far outside its band the air was counts as well as for how long: from a mean of 1 K on, half of what there is to watch below
// the good band, by 4 for each K, to 20. No cause weighs as much as a fan that did not run (common practice, no source).
const (
	farK, farPerK, farMost = 1, 4, 20
	heaviestCause          = 94
)

// Harm is what so many hours of a kind of spell weigh beside what its kind does, and what being so far outside adds for warm and
// cold ones, in points of a finding's weight: −15 for next to none, 30 for 600 h, 50 for 600 h far outside. Degree-hours, K·h, are
// those outside the band. (Common practice, no source.)
func Harm(kind string, hours, degreeHours float64) float64 {
	return lengthWeight(hours) + farWeight(kind, hours, degreeHours)
}

// lengthWeight is what so many hours add: up to 30 for 600 h and more; under 100 h they take off, up to 15, as a day or two of
// whatever kind is not what a winter is changed for (common practice, no source).
func lengthWeight(hours float64) float64 {
	const longH, perPoint, fewH, fewMost = 600, 20, 100, 15
	return min(hours, longH)/perPoint - fewMost*max(0, 1-hours/fewH)
}

// farWeight is what being so far out on average adds for a kind of spell: of temperature alone.
func farWeight(kind string, hours, degreeHours float64) float64 {
	if kind != "warm" && kind != "cold" || hours <= 0 {
		return 0
	}
	return min(farMost, farPerK*max(0, degreeHours/hours-farK))
}

// spellFindings are the causes that went with most of the hours of one kind of spell, of the room's air or of a surface, and
// failures that went with any. The code is KIND_with_CAUSE.
func spellFindings(j judgement, r *Review) (out []Finding) {
	for _, kind := range slices.Sorted(maps.Keys(kindWeights)) {
		places := []string{j.room.place}
		if kind == "dew" || kind == "frost" {
			places = nil
			for _, s := range r.Surfaces {
				if s.Kind != "metal" {
					places = append(places, s.Name)
				}
			}
		}
		for _, place := range places {
			told := causesAt(r, kind, place)
			if len(told) == 0 && place == j.room.place {
				told = unexplained(r, kind, place)
			}
			out = append(out, told...)
		}
	}
	return out
}

// From so many hours of one kind of spell on it is a finding that none of their causes is known; it comes behind those of which
// one is (common practice, no source).
const (
	unexplainedLeastH = 48
	unexplainedLess   = 15
)

// hasNothingAgainst says whether the verdict has nothing against the room where a kind of spell is concerned.
func (v Verdict) hasNothingAgainst(kind string) bool {
	switch kind {
	case "damp":
		return v.Damp.State == No
	case "dry":
		return v.Dry.State == No
	}
	return v.Held.State == Yes
}

// unexplained is the finding of a place's spells of which no cause is known, where the verdict has something against them.
func unexplained(r *Review, kind, place string) []Finding {
	hours, degreeHours := 0.0, 0.0
	for _, s := range spellsAt(r, kind, place) {
		hours, degreeHours = hours+s.Hours, degreeHours+s.DegreeHours
	}
	if hours < unexplainedLeastH || r.Verdict.hasNothingAgainst(kind) {
		return nil
	}
	return []Finding{{Code: kind + "_unexplained", About: place, Weight: min(unexplainedMost, kindWeights[kind]-unexplainedLess+Harm(kind, hours, degreeHours)),
		Evidence: WorkedOut, Look: longestOfKind(r.Spells, place, kind), Figures: []NamedFigure{{"hours", exactly(hours, Recorded)}}}}
}

// spellsAt are the spells of one kind at one place.
func spellsAt(r *Review, kind, place string) (out []Spell) {
	for _, s := range r.Spells {
		if s.Kind == kind && s.Place == place {
			out = append(out, s)
		}
	}
	return out
}

// causesAt are the findings of one kind of spell at one place: causes that went with most of the spells' hours, told by all
// hours of such spells in which they held. On a surface those of a stage or a heat source are left out: what these did shows
// in the room's air.
func causesAt(r *Review, kind, place string) (out []Finding) {
	type cause struct{ code, about string }
	hours, with, held, far, longest := 0.0, map[cause]float64{}, map[cause]float64{}, map[cause]float64{}, map[cause]Spell{}
	for _, s := range spellsAt(r, kind, place) {
		hours += s.Hours
		for _, w := range s.WentWith {
			c := cause{w.Code, w.About}
			with[c], held[c], far[c] = with[c]+s.Hours, held[c]+w.Hours, far[c]+s.DegreeHours
			if s.Hours > longest[c].Hours {
				longest[c] = s
			}
		}
		for _, w := range s.beside {
			c := cause{w.Code, w.About}
			if held[c] += w.Hours; w.Code == tooSmall { // it counts wherever it held
				with[c] += w.Hours // how far out the air was in just these hours is not told
				if w.Hours > longest[c].Hours {
					longest[c] = Spell{Span: s.Span, Hours: w.Hours}
				}
			}
		}
	}
	for c, spell := range longest {
		failed := slices.Contains(failures, c.code)
		if with[c] < leastFindingH || !failed && c.code != tooSmall && with[c] < mostOfThem*hours || c.about != "" && (kind == "dew" || kind == "frost") {
			continue
		}
		weight, extra := kindWeights[kind], Harm(kind, with[c], far[c])
		switch {
		case failed:
			weight += extra + failureWeight
		case slices.Contains(passing, c.code):
			weight += extra - passingWeight
		case slices.Contains(weather, c.code):
			weight += min(extra-weatherLess, weatherMost)
		default:
			weight += extra
		}
		weight = min(weight, heaviestCause)
		out = append(out, Finding{Code: kind + "_with_" + c.code, About: cmp.Or(c.about, place), Weight: weight, Evidence: WorkedOut, Look: spell.Span,
			Figures: []NamedFigure{{"hours", exactly(hours, Recorded)}, {"hours_with", exactly(held[c], WorkedOut)},
				{"longest_hours", exactly(spell.Hours, Recorded)}}})
	}
	return out
}

// stageFindings are the stages of which the record and what they were called for part.
func stageFindings(_ judgement, r *Review) (out []Finding) {
	for _, row := range r.Stages {
		called, ran, ok := row.CalledAndRan()
		if !ok {
			continue
		}
		f := Finding{About: row.Name, Evidence: Recorded, Look: row.Setting.Span,
			Figures: []NamedFigure{{"called_hours", called}, {"ran_hours", ran}}}
		switch {
		case ran.Mid < hardlyRan*called.Low && called.Low-ran.Mid >= leastFindingH:
			f.Code, f.Weight = "stage_did_not_run", 95
		case ran.Mid > ranTwice*called.High && ran.Mid-called.High >= leastFindingH:
			f.Code, f.Weight = "stage_ran_uncalled", 80
		default:
			continue
		}
		if h, less := row.BothHours(); less {
			f.Figures = append(f.Figures, NamedFigure{"both_hours", exactly(h, Recorded)})
		}
		out = append(out, f)
	}
	return out
}

// startFindings are the recorded stages that switch too often: that wears a fan, and harms no bees.
func startFindings(_ judgement, r *Review) (out []Finding) {
	for _, row := range r.Stages {
		if c := row.Cycling; c != nil && c.Short && row.Ran != nil {
			out = append(out, Finding{Code: "stage_starts_often", About: row.Name, Weight: 45, Evidence: Recorded, Look: row.Setting.Span,
				Figures: []NamedFigure{{"starts", row.Ran.Starts}, {"busiest_hour_starts", count(c.BusiestHour, Recorded)}}})
		}
	}
	return out
}

// fansFinding is that the small stages did not carry nearly all of the winter alone.
func fansFinding(_ judgement, r *Review) []Finding {
	a := r.Verdict.Fans
	if a.State != No && a.State != Mostly {
		return nil
	}
	weight := 35.0
	if a.State == No {
		weight = 55
	}
	return []Finding{{Code: "big_stages_carried_much", Weight: weight, Evidence: a.Figure.Evidence, Figures: []NamedFigure{{"small_alone_percent", a.Figure}}}}
}

// surfaceFindings are walls, ceilings and corners that were wet, and those on which mould could have begun.
func surfaceFindings(_ judgement, r *Review) (out []Finding) {
	for _, s := range r.Surfaces {
		if s.Kind == "metal" || !s.DewHours.OK {
			continue
		}
		wet := s.DewHours.Mid + s.FrostHours.Mid
		if wet >= leastFindingH {
			out = append(out, Finding{Code: "surface_wet", About: s.Name, Weight: 50 + math.Min(wet/20, 30), Evidence: WorkedOut, Look: longestOf(r.Spells, s.Name),
				Figures: []NamedFigure{{"dew_hours", s.DewHours}, {"frost_hours", s.FrostHours}, {"factor", s.Factor}}})
		}
		if s.MouldIndex.OK && s.MouldIndex.Mid >= mouldBegins {
			out = append(out, Finding{Code: "mould_could_begin", About: s.Name, Weight: 50, Evidence: WorkedOut, Figures: []NamedFigure{{"mould_index", s.MouldIndex}}})
		}
	}
	return out
}

// longestOf is the stretch of a place's longest spell; it is empty where it has none.
func longestOf(spells []Spell, place string) series.Span { return longestOfKind(spells, place, "") }

// longestOfKind is that of the longest of one kind, or of any for none.
func longestOfKind(spells []Spell, place, kind string) series.Span {
	var best Spell
	for _, s := range spells {
		if s.Place == place && (kind == "" || s.Kind == kind) && s.Hours > best.Hours {
			best = s
		}
	}
	return best.Span
}

// unevenFindings are places whose loggers were often more than 2 K apart, even with their errors taken off.
func unevenFindings(_ judgement, r *Review) (out []Finding) {
	for _, u := range r.Uniformity {
		if u.ApartHours.OK && u.ApartHours.Low > oftenApart*u.KnownHours {
			out = append(out, Finding{Code: "room_uneven", About: u.Place, Weight: 50, Evidence: Recorded,
				Figures: []NamedFigure{{"apart_hours", u.ApartHours}, {"known_hours", exactly(u.KnownHours, Recorded)}}})
		}
	}
	return out
}

// thermostatFinding is that the fans switched at other temperatures than they were set to, as the logger reads.
func thermostatFinding(j judgement, _ *Review) []Finding {
	o := j.sight.offset
	if o.Evidence != WorkedOut || o.Low <= offThermostatK && o.High >= -offThermostatK {
		return nil
	}
	return []Finding{{Code: "thermostat_apart", About: j.control.Name, Weight: 55, Evidence: WorkedOut, Figures: []NamedFigure{{"offset_k", o}}}}
}

// coverageFinding is that part of the bees' time is not known.
func coverageFinding(_ judgement, r *Review) []Finding {
	if r.BeesOut <= r.BeesIn || r.Coverage >= fullCoverage {
		return nil
	}
	return []Finding{{Code: "room_record_incomplete", Weight: 40 + 40*(1-r.Coverage), Evidence: Recorded,
		Figures: []NamedFigure{{"known_share", exactly(r.Coverage, Recorded)}}}}
}
