package analysis

import (
	"testing"

	"thawbook/analysis/series"
)

// The same stage, its fans out for the first eight hours of the call by a power cut that the keeper noted: those hours
// are the cut's, and it parts with the power on as the fan stops.
func TestAStageThatStoodWithoutPower(t *testing.T) {
	in := one(through(0, 400, 0.5, func(h float64) float64 {
		if h >= 100 && h < 260 {
			return 8
		}
		return 4
	}), series.Curve{}, span(0, 400))
	in.Loggers[0].TempErrK = 0.3
	in.Stages = []Stage{{Name: "top", Settings: []Setting{{Span: span(-1, 500), OnC: 7, OffC: 6}}}}
	in.Loggers = append(in.Loggers, recordOver("top", 400, span(108, 200)))
	until := span(0, 108).To
	in.Notes = []Note{{At: span(100, 108).From, Until: &until, Kind: "power cut"}}
	r := Judge(in)
	a := r.Stages[0].Agreement
	near(t, "stood without power", float64(a.CutMS)/hourMS, 8, 0.5)
	near(t, "unanswered", float64(a.UnansweredMS)/hourMS, 68, 0.6)
	if a.Powered == nil || *a.Powered != 200*hourMS {
		t.Errorf("parted with power at %v, want 200 h", a.Powered)
	}
	for _, s := range r.Spells {
		for _, c := range s.WentWith {
			if c.Code == NotRun && s.Span.To <= 108*hourMS {
				t.Errorf("%+v blames the fan for the power cut", s)
			}
		}
	}
}

// The top stage is called for 160 h, from hour 100 to 260, and its record shows 12 h, from 100 to 112: they agree for
// all but 148 of 400 h, and part as the fan stops.
func TestCalledAndRanPartWhereTheFanStops(t *testing.T) {
	in := one(through(0, 400, 0.5, func(h float64) float64 {
		if h >= 100 && h < 260 {
			return 8
		}
		return 4
	}), series.Curve{}, span(0, 400))
	in.Loggers[0].TempErrK = 0.3
	in.Stages = []Stage{{Name: "top", Settings: []Setting{{Span: span(-1, 500), OnC: 7, OffC: 6}}}}
	in.Loggers = append(in.Loggers, recordOver("top", 400, span(100, 112)))
	row := Judge(in).Stages[0]
	near(t, "called for", row.Called.Hours.Mid, 160, 0.5)
	near(t, "ran", row.Ran.Hours.Mid, 12, 1e-9)
	a := row.Agreement
	near(t, "agreement", a.Share.Mid, 252.0/400, 0.5/400)
	near(t, "unanswered", float64(a.UnansweredMS)/hourMS, 148, 0.5)
	if a.Parted == nil || a.PartedRan || *a.Parted != 112*hourMS {
		t.Errorf("parted %v, want as the fan stops, at 112 h", a.Parted)
	}
}

// Late by one sample and on for one sample more: minutes, not a parting. Run by hand for 3 h while cold: one.
func TestSingleSamplesPartNothing(t *testing.T) {
	in := one(through(0, 400, 0.25, func(h float64) float64 {
		if int(h/2)%2 == 1 {
			return 8
		}
		return 4
	}), series.Curve{}, span(0, 400))
	in.Stages = []Stage{{Name: "top", Settings: []Setting{{Span: span(-1, 500), OnC: 7, OffC: 6}}}}
	late := through(0, 400, 0.25, func(h float64) float64 {
		if int((h-0.25)/2)%2 == 1 && h > 0.25 {
			return 1
		}
		return 0
	})
	in.Loggers = append(in.Loggers, Logger{Name: "fan", RecordsStage: "top", State: late})
	if a := Judge(in).Stages[0].Agreement; a.Parted != nil || a.Share.Mid < 0.8 {
		t.Errorf("a record one sample late: %+v", a)
	}
	for i, at := range late.Readings.At {
		if at >= 300*hourMS && at < 303*hourMS {
			late.Val[i] = 1
		}
	}
	a := Judge(in).Stages[0].Agreement
	if a.Parted == nil || !a.PartedRan || *a.Parted < 299*hourMS || *a.Parted > 301*hourMS {
		t.Errorf("run by hand from hour 300: %+v", a)
	}
}

// A sawtooth between 3 and 7 °C, 1 K/h: the thermostat set to 5 starts the fan at 6 and stops it at 4.5 as set.
func TestAThermostatOutOfCalibrationShowsInItsRecord(t *testing.T) {
	saw := func(h float64) float64 {
		if p := int(h) % 8; p < 4 {
			return 3 + (h - float64(int(h)/8*8))
		}
		return 7 - (h - float64(int(h)/8*8) - 4)
	}
	in := one(through(0, 400, 0.25, saw), series.Curve{}, span(0, 400))
	in.Loggers[0].TempErrK = 0.5
	in.Stages = []Stage{{Name: "two", Settings: []Setting{{Span: span(-1, 500), OnC: 5, OffC: 4.5}}}}
	var on []series.Span
	for k := 0.0; k < 400; k += 8 {
		on = append(on, span(k+3, k+6.5)) // rising through 6 at 3 h, falling through 4.5 at 6.5 h
	}
	in.Loggers = append(in.Loggers, recordOver("two", 400, on...))
	row := Judge(in).Stages[0]
	near(t, "starts at", row.StartsC.Mid, 6, 1e-9)
	near(t, "its range is the logger's error", row.StartsC.High-row.StartsC.Low, 1, 1e-9)
	near(t, "stops at", row.StopsC.Mid, 4.5, 1e-9)
	if !hasRemark(row.Remarks, "thermostat_apart") {
		t.Error("starts 1 K above the setting with a logger of 0.5 K: not remarked")
	}
	in.Stages[0].Settings[0].OnC = 5.6
	if row := Judge(in).Stages[0]; hasRemark(row.Remarks, "thermostat_apart") {
		t.Errorf("0.4 K within the logger's 0.5 K was remarked: %+v", row.StartsC)
	}
}

func TestSwitchingTemperaturesNeedTenSwitchings(t *testing.T) {
	in := laddered(2000)
	in.Loggers = append(in.Loggers, recordOver("two", 2000, span(100, 200), span(300, 400)))
	if row := Judge(in).Stages[1]; row.StartsC.OK || row.StartsC.Unknown != "too_few_switchings" {
		t.Errorf("two starts gave %+v", row.StartsC)
	}
}

// A logger that stands at 20 °C for the bees' first five hours before it is hung at 4 °C asked for no fan there: the stage and
// its record, which shows no run, never part.
func TestALoggerOnItsWayAsksForNothing(t *testing.T) {
	in := one(through(-30, 600, 0.25, func(h float64) float64 {
		if h < 5 {
			return 20
		}
		return 4
	}), series.Curve{}, span(0, 600))
	in.Stages = []Stage{{Name: "top", Settings: []Setting{{Span: span(-100, 700), OnC: 7, OffC: 6}}}}
	in.Loggers = append(in.Loggers, recordOver("top", 600))
	in.Loggers[0].Place = "control"
	if a := Judge(in).Stages[0].Agreement; a.Parted != nil || a.UnansweredMS > 0 {
		t.Errorf("parted at %v, unanswered for %v h", a.Parted, float64(a.UnansweredMS)/hourMS)
	}
}
