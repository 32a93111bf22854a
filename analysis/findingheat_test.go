package analysis

import "testing"

// Solar heat for 140 h, 71 of them with stage three on, is a finding of that many hours; for 2,000 h on end, whose
// twentieth is 100 h, it is none, nor where they meet for 20 h.
func TestHeatAgainstTheFansIsAFinding(t *testing.T) {
	for _, row := range []struct {
		from, to float64
		found    bool
	}{{760, 900, true}, {0, 2000, false}, {700, 849, false}} {
		in := laddered(2000)
		in.Heats = []HeatSource{{Name: "pump", Kind: "recovery", WithStage: "two"}, {Name: "sun", Kind: "solar"}}
		in.Loggers = append(in.Loggers, recordOver("pump", 2000), recordOver("sun", 2000, span(row.from, row.to)))
		found := false
		for _, f := range Judge(in).Findings {
			if f.Code == "heat_against_fans" {
				found = true
				near(t, "hours", f.Figure("overlap_hours").Mid, 71, 0.5)
				near(t, "the heat's", f.Figure("heat_hours").Mid, 140, 1e-9)
				near(t, "most in one stretch", float64(f.Look.To-f.Look.From)/hourMS, 71, 0.5)
			}
		}
		if found != row.found {
			t.Errorf("from %v to %v: %v, want %v", row.from, row.to, found, row.found)
		}
	}
}
