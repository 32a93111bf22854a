package importers

import "slices"

// stillShare is the share of full speed up to which a fan is taken to stand: below it a drive moves no air (common
// practice, no source).
const stillShare = 0.05

// mains are the frequencies of the world's mains, Hz, each with the highest a record of a drive on it may show.
var mains = []struct{ hz, most float64 }{{50, 51}, {60, 61}}

// FullSpeed is what a record of speed shows at full speed, in its unit: 100 %, the mains its drive hangs on, which
// is the lowest that the record does not pass, or of turns the most it shows. ok is false for other quantities, where it
// passes both mains and where nothing turned.
func (s Series) FullSpeed() (full float64, ok bool) {
	switch {
	case s.Quantity != Speed || len(s.Val) == 0:
		return 0, false
	case s.Unit == "percent":
		return 100, true
	}
	highest := slices.Max(s.Val)
	if s.Unit == "rpm" {
		return highest, highest > 0
	}
	for _, m := range mains {
		if highest <= m.most {
			return m.hz, true
		}
	}
	return 0, false
}

// AsSpeed is a record of speed as a share of full speed.
func (s Series) AsSpeed() (Series, bool) {
	full, ok := s.FullSpeed()
	if !ok {
		return Series{}, false
	}
	out := s
	out.Unit, out.Val = "fraction", make([]float64, len(s.Val))
	for i, v := range s.Val {
		out.Val[i] = max(v, 0) / full
	}
	return out, true
}
