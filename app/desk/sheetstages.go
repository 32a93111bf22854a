package desk

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"thawbook/app/winter"
)

// How a stage is switched, in the keeper's words.
const (
	alwaysOn     = "always on"
	byThermostat = "by thermostat"
	byTimer      = "by timer"
)

const (
	m3hPerM3S = 3600
	cfmPerM3S = 1 / (0.3048 * 0.3048 * 0.3048) * 60 // the foot is 0.3048 m
)

// stageSheet is a sheet of fan stages in the making.
type stageSheet struct {
	u    Units
	was  []winter.Stage
	zone *time.Location
}

// StageSheet is the list of a barn's fan stages, in the units shown.
func (b Book) StageSheet(barn int, u Units) Sheet {
	s := stageSheet{u: u, was: b.doc.Barns[barn].Stages, zone: b.location()}
	t := u.TempSymbol()
	sheet := Sheet{Title: "Fan stages of " + b.doc.Barns[barn].Name, Help: HelpLine("stage_sheet"), Add: "Add a stage", Columns: []SheetColumn{
		{Title: "Stage", Hint: "Stage 1", Wide: true}, {Title: "Runs", Choices: []string{byThermostat, alwaysOn, byTimer}},
		{Title: "On at, " + t, Hint: u.Limit(4)}, {Title: "Off at, " + t, Hint: u.Limit(3.5)},
		{Title: "Air, " + s.flowUnit(), Hint: "as rated"}, {Title: "Power, W"}, {Title: "From", Hint: "all winter", Wide: true},
	}}
	for i, st := range s.was {
		sheet.Rows = append(sheet.Rows, SheetRow{s.cells(st), i + 1})
	}
	for _, r := range waitingRecords(b.doc.Barns[barn]) {
		if r.fan && len(s.was) == 0 {
			sheet.Rows = append(sheet.Rows, SheetRow{s.cells(winter.Stage{Name: r.name}), 0})
		}
	}
	sheet.read = func(rows []SheetRow) (winter.Edit, error) {
		stages := []winter.Stage{}
		for i, r := range rows {
			st, err := s.stage(r)
			if err != nil {
				return nil, fmt.Errorf("row %d, %w", i+1, err)
			}
			stages = append(stages, st)
		}
		if err := stillNamed(b.doc.Barns[barn], stages); err != nil {
			return nil, err
		}
		return winter.SetSettings{Barn: barn, Of: "stages", Stages: stages}, laterSettings(stages)
	}
	return sheet
}

// flowUnit goes with the temperatures: cubic feet a minute with °F.
func (s stageSheet) flowUnit() string {
	if s.u.Temperature == Fahrenheit {
		return "cfm"
	}
	return "m³/h"
}

func (s stageSheet) perM3S() float64 {
	if s.u.Temperature == Fahrenheit {
		return cfmPerM3S
	}
	return m3hPerM3S
}

func (s stageSheet) flowText(m3s float64) string { return plainNumber(m3s*s.perM3S(), 0) }
func (s stageSheet) tempText(tempC float64) string {
	return shortest(s.u.TempValue(tempC))
}

// plainNumber is a number as it can be typed: no space between thousands.
func plainNumber(v float64, decimals int) string {
	return strings.ReplaceAll(number(v, decimals), thinSpace, "")
}

// cells are a stage as text.
func (s stageSheet) cells(st winter.Stage) []string {
	c := []string{st.Name, byThermostat, textIf(st.OnC, s.tempText), textIf(st.OffC, s.tempText), s.flowCell(st), textIf(st.Watts, shortest), momentText(st.From, s.zone)}
	switch {
	case st.AlwaysOn:
		c[1] = alwaysOn
	case st.TimerOnS != nil:
		c[1], c[2], c[3] = byTimer, textIf(st.TimerOnS, shortest), textIf(st.TimerEvery, shortest)
	}
	return c
}

// flowCell is a flow, or its range.
func (s stageSheet) flowCell(st winter.Stage) string {
	switch {
	case st.FlowLow == nil:
		return ""
	case st.FlowHigh == nil || *st.FlowHigh == *st.FlowLow:
		return s.flowText(*st.FlowLow)
	}
	return s.flowText(*st.FlowLow) + enDash + s.flowText(*st.FlowHigh)
}

// stage reads a row.
func (s stageSheet) stage(r SheetRow) (winter.Stage, error) {
	var was winter.Stage
	if r.Was > 0 {
		was = s.was[r.Was-1]
	}
	st := winter.Stage{Name: r.cell(0), FlowMeasured: was.FlowMeasured}
	if st.Name == "" {
		return st, fmt.Errorf("the stage has no name")
	}
	err := s.switching(&st, was, r)
	if err != nil {
		return st, err
	}
	if st.FlowLow, st.FlowHigh, err = s.flow(r.cell(4), was); err != nil {
		return st, err
	}
	if st.Watts, err = numberIn(r.cell(5), "power", "W", 0, 1e5); err != nil {
		return st, err
	}
	st.From, err = momentIn(r.cell(6), s.zone)
	return st, err
}

// switching reads how a stage is switched.
func (s stageSheet) switching(st *winter.Stage, was winter.Stage, r SheetRow) (err error) {
	on, off := r.cell(2), r.cell(3)
	switch {
	case r.Cells[1] == alwaysOn && on+off != "":
		return fmt.Errorf("%s is always on: it has no temperature to switch at", st.Name)
	case r.Cells[1] == alwaysOn:
		st.AlwaysOn = true
		return nil
	case on == "" || off == "":
		return fmt.Errorf("%s needs both: when it goes on and when it goes off", st.Name)
	case r.Cells[1] == byTimer:
		if st.TimerOnS, err = numberIn(on, "seconds on", "s", 1, 86400); err == nil {
			st.TimerEvery, err = numberIn(off, "seconds from start to start", "s", 1, 86400)
		}
		if err == nil && *st.TimerEvery <= *st.TimerOnS {
			err = fmt.Errorf("%s: a timer's seconds on must be fewer than those from start to start", st.Name)
		}
		return err
	}
	if st.OnC, err = s.limit(on, "on at", was.OnC); err == nil {
		st.OffC, err = s.limit(off, "off at", was.OffC)
	}
	if err == nil && *st.OffC >= *st.OnC {
		err = fmt.Errorf("%s goes off at %s and on at %s; off must be the lower", st.Name, off, on)
	}
	return err
}

// limit reads a temperature, °C.
func (s stageSheet) limit(cell, what string, was *float64) (*float64, error) {
	v, err := numberIn(cell, what, s.u.TempSymbol(), s.u.TempValue(-60), s.u.TempValue(80))
	if err != nil {
		return nil, err
	}
	tempC := s.u.fromShown(*v)
	return kept(cell, was, s.tempText, &tempC), nil
}

// flow reads a flow or a range of one, m³/s.
func (s stageSheet) flow(cell string, was winter.Stage) (low, high *float64, err error) {
	if cell == s.flowCell(was) {
		return was.FlowLow, was.FlowHigh, nil
	}
	if low, high, err = rangeIn(cell, "air", s.flowUnit(), 1, 1e7); low == nil {
		return nil, nil, err
	}
	*low, *high = *low/s.perM3S(), *high/s.perM3S()
	return low, high, nil
}

// laterSettings holds a stage that is named again to a later day: its setting from then on.
func laterSettings(stages []winter.Stage) error {
	last := map[string]int64{}
	for _, st := range stages {
		before, again := last[st.Name]
		if again && (st.From == nil || *st.From <= before) {
			return fmt.Errorf("stage %s is there twice: the second needs a later day it was set so from", st.Name)
		}
		last[st.Name] = 0
		if st.From != nil {
			last[st.Name] = *st.From
		}
	}
	return nil
}

// stillNamed holds a name to stay as long as a heat source is wired with the stage or a logger records it: a winter whose
// heat or record belongs to no stage could not be written down as a plan and read again.
func stillNamed(barn winter.Barn, stages []winter.Stage) error {
	gone := func(name string) bool {
		return name != "" && !slices.ContainsFunc(stages, func(st winter.Stage) bool { return st.Name == name })
	}
	for _, h := range barn.Heats {
		if gone(h.WithStage) {
			return fmt.Errorf("heat %s is wired with %s; change that first, under Heat", h.Name, h.WithStage)
		}
	}
	for _, l := range barn.Loggers {
		if gone(l.RecordsStage) {
			return fmt.Errorf("logger %s records %s, so the stage keeps its name", l.Name, l.RecordsStage)
		}
	}
	return nil
}
