package desk

import "thawbook/analysis"

// StageDoc is one stage over one setting period; called or ran is null without its evidence.
type StageDoc struct {
	Name         string   `json:"name"`
	SettingStart string   `json:"setting_start"`
	SettingEnd   string   `json:"setting_end"`
	OnC          *float64 `json:"on_c"`
	OffC         *float64 `json:"off_c"`
	Called       *WorkDoc `json:"called"`
	Ran          *WorkDoc `json:"ran"`
	ShareOfAir   *float64 `json:"share_of_air"`
	KWh          *float64 `json:"kwh"`
	Cost         *float64 `json:"cost"`
	KWhRange     RangeDoc `json:"kwh_range"`
	Speed        RangeDoc `json:"mean_speed"` // 0–1 of full speed, while it ran

	Agreement *AgreementDoc `json:"agreement"`
	StartsC   RangeDoc      `json:"recorded_starts_c"`
	StopsC    RangeDoc      `json:"recorded_stops_c"`

	ShareOfAirRange RangeDoc    `json:"share_of_air_range"`
	AirM3           RangeDoc    `json:"air_m3"`
	AirChanges      RangeDoc    `json:"air_changes"`
	ChangeMinutes   RangeDoc    `json:"minutes_per_change"` // with this stage and all smaller ones on
	Cycling         *CyclingDoc `json:"cycling"`            // null where starts can't be seen
	ByHour          []ShareDoc  `json:"by_hour"`
	ByOutdoor       []ShareDoc  `json:"by_outdoor_c"`

	Remarks []NoteDoc `json:"remarks"`
}

// CyclingDoc is how often a stage switches.
type CyclingDoc struct {
	BusiestHour int     `json:"busiest_hour_starts"`
	ShortRuns   float64 `json:"runs_under_2_min"`
	Short       bool    `json:"short_cycling"`
}

// ShareDoc is the share of time on in an hour of the local day, or from a whole degree outdoors to the next.
type ShareDoc struct {
	At         int     `json:"at"`
	Share      float64 `json:"share"`
	HoursKnown float64 `json:"hours_known"`
}

// AirDoc is what all stages with a flow moved.
type AirDoc struct {
	M3             RangeDoc `json:"m3"`
	ChangesPerHour RangeDoc `json:"changes_per_hour"`
	HoursKnown     float64  `json:"hours_known"`
}

// AgreementDoc sets called for beside ran; null without both.
type AgreementDoc struct {
	Share           RangeDoc `json:"share"`
	Called          RangeDoc `json:"called_hours"` // of the hours known
	Ran             RangeDoc `json:"ran_hours"`
	HoursKnown      float64  `json:"hours_known"`
	FirstParted     *string  `json:"first_parted"`
	Parted          *string  `json:"parted_as"` // called_not_run, run_not_called
	UnansweredHours float64  `json:"unanswered_hours"`
	UncalledHours   float64  `json:"uncalled_hours"`
	CutHours        float64  `json:"power_cut_hours"`      // of the unanswered ones
	Powered         *string  `json:"first_parted_powered"` // first called for and not run though there was power
}

// WorkDoc is how long something was on over its known hours.
type WorkDoc struct {
	Hours        *float64 `json:"hours"`
	Low          *float64 `json:"low"`
	High         *float64 `json:"high"`
	HoursKnown   float64  `json:"hours_known"`
	Duty         *float64 `json:"duty"`
	Starts       *float64 `json:"starts"`
	MedianRunMin *float64 `json:"median_run_min"`
	Evidence     *string  `json:"evidence"`
	Unknown      *string  `json:"unknown"`
}

// HeatDoc is a heat source.
type HeatDoc struct {
	Name         string   `json:"name"`
	Kind         string   `json:"kind"`
	Called       *WorkDoc `json:"called"`
	Ran          *WorkDoc `json:"ran"`
	OverlapHours *float64 `json:"overlap_hours"` // on together with a stage above its own

	OverlapRange  RangeDoc     `json:"overlap"`
	OverlapKnown  float64      `json:"overlap_hours_known"`
	Against       []AgainstDoc `json:"overlap_with"`
	WithStage     *string      `json:"with_stage"`
	Into          *string      `json:"into"`
	Effectiveness RangeDoc     `json:"effectiveness"`
}

// AgainstDoc is for how many hours a heat source was on together with one stage.
type AgainstDoc struct {
	Stage string   `json:"stage"`
	Hours RangeDoc `json:"hours"`
}

// MixingDoc is a mixing fan over one setting period.
type MixingDoc struct {
	Name         string   `json:"name"`
	SettingStart string   `json:"setting_start"`
	SettingEnd   string   `json:"setting_end"`
	Ran          *WorkDoc `json:"ran"`
	KWh          *float64 `json:"kwh"`
	Cost         *float64 `json:"cost"`
}

// EnergyDoc is the electricity of stages and mixing fans over the bees' time; Without names those it leaves out.
type EnergyDoc struct {
	KWh      RangeDoc `json:"kwh"`
	Cost     RangeDoc `json:"cost"`
	Currency *string  `json:"currency"`
	Without  []string `json:"without"`
}

func stageDoc(s analysis.StageRow, clock func(int64) string) StageDoc {
	d := StageDoc{
		Name: s.Name, SettingStart: clock(s.Setting.Span.From), SettingEnd: clock(s.Setting.Span.To),
		Called: workDoc(s.Called), Ran: workDoc(s.Ran), ShareOfAir: mid(s.ShareOfAir), KWh: mid(s.KWh), Cost: mid(s.Cost), KWhRange: rangeDoc(s.KWh), Speed: rangeDoc(s.Speed),
		Agreement: agreementDoc(s.Agreement, clock), StartsC: rangeDoc(s.StartsC), StopsC: rangeDoc(s.StopsC),
		ShareOfAirRange: rangeDoc(s.ShareOfAir), AirM3: rangeDoc(s.AirM3), AirChanges: rangeDoc(s.AirChanges), ChangeMinutes: rangeDoc(s.ChangeMinutes),
		ByHour: shareDocs(s.ByHour), ByOutdoor: shareDocs(s.ByOutdoor), Remarks: noteDocs(s.Remarks),
	}
	if c := s.Cycling; c != nil {
		d.Cycling = &CyclingDoc{c.BusiestHour, c.ShortRuns, c.Short}
	}
	if !s.Setting.AlwaysOn && !s.Setting.Timer {
		on, off := s.Setting.OnC, s.Setting.OffC
		d.OnC, d.OffC = &on, &off
	}
	return d
}

func shareDocs(shares []analysis.Share) []ShareDoc {
	out := []ShareDoc{}
	for _, s := range shares {
		out = append(out, ShareDoc{s.At, float64(s.OnMS) / float64(s.KnownMS), hours(s.KnownMS)})
	}
	return out
}

func airDoc(a analysis.Air) AirDoc {
	return AirDoc{rangeDoc(a.M3), rangeDoc(a.ChangesPerHour), hours(a.KnownMS)}
}

func agreementDoc(a *analysis.Agreement, clock func(int64) string) *AgreementDoc {
	if a == nil {
		return nil
	}
	d := &AgreementDoc{
		Share: rangeDoc(a.Share), Called: rangeDoc(a.Called), Ran: rangeDoc(a.Ran), HoursKnown: hours(a.KnownMS),
		UnansweredHours: hours(a.UnansweredMS), UncalledHours: hours(a.UncalledMS), CutHours: hours(a.CutMS),
	}
	if a.Powered != nil {
		at := clock(*a.Powered)
		d.Powered = &at
	}
	if a.Parted != nil {
		at, as := clock(*a.Parted), "called_not_run"
		if a.PartedRan {
			as = "run_not_called"
		}
		d.FirstParted, d.Parted = &at, &as
	}
	return d
}

func workDoc(w *analysis.Work) *WorkDoc {
	if w == nil {
		return nil
	}
	d := &WorkDoc{
		Hours: mid(w.Hours), HoursKnown: hours(w.KnownMS), Duty: mid(w.Duty), Starts: mid(w.Starts),
		MedianRunMin: mid(w.MedianRunMin), Evidence: textOrNull(string(w.Hours.Evidence)), Unknown: textOrNull(w.Hours.Unknown),
	}
	if w.Hours.OK || w.Hours.Evidence != "" {
		d.Low, d.High = &w.Hours.Low, &w.Hours.High
	}
	return d
}

func heatDoc(h analysis.HeatRow) HeatDoc {
	d := HeatDoc{
		Name: h.Source.Name, Kind: h.Source.Kind, WithStage: textOrNull(h.Source.WithStage), Into: textOrNull(h.Source.Into),
		Called: workDoc(h.Called), Ran: workDoc(h.Ran), OverlapHours: mid(h.Overlap), OverlapRange: rangeDoc(h.Overlap),
		OverlapKnown: hours(h.KnownMS), Against: []AgainstDoc{}, Effectiveness: rangeDoc(h.Effectiveness),
	}
	for _, a := range h.Against {
		d.Against = append(d.Against, AgainstDoc{a.Stage, rangeDoc(a.Hours)})
	}
	return d
}

func energyDoc(p analysis.Power) EnergyDoc {
	return EnergyDoc{rangeDoc(p.KWh), rangeDoc(p.Cost), textOrNull(p.Currency), append([]string{}, p.Without...)}
}
