package analysis

import "thawbook/analysis/series"

// eventCandidates are the power cuts and open doors that are more than a may be, each with the hours a room takes to
// answer (leadMS). The room is taken to have had none at other times: what nobody noted and no trace shows is no cause.
func eventCandidates(j judgement, r *Review) (out []candidate) {
	for _, of := range []struct {
		event, code string
		kinds       []string
	}{
		{powerCut, PowerCut, []string{"warm", "damp", "moist"}},
		{doorsOpen, DoorsOpen, []string{"warm", "cold", "damp", "moist", "dry"}},
	} {
		var on []series.Span
		for _, e := range r.Events {
			if e.Kind == of.event && !e.MayBe {
				on = append(on, series.Span{From: e.Span.From, To: e.Span.To + leadMS})
			}
		}
		if len(on) > 0 {
			out = append(out, candidate{code: of.code, kinds: of.kinds, on: series.Union(on), known: []series.Span{j.beesTime}})
		}
	}
	return out
}
