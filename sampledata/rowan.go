package sampledata

import "time"

// rowan is the smaller and older barn: 220 colonies, leaky, a badly insulated north wall, a ladder that starts
// late, and a third stage whose breaker tripped in the December thaw. A floor loop is wired with the second stage,
// another runs with the sun. Its fans and pumps are recorded, and an alarm hangs beside the thermostat.
func rowan() *barn {
	b := &barn{name: "Rowan barn", powerCuts: []span{powerCut}, wallLow: 0.57, wallHi: 0.74, wallLogger: "Rowan wall"}
	b.room = room{
		volumeM3: 430, pressurePa: pressureAtPa(45), altitudeM: 45,
		airJK: 1.1e6, massJK: 3.6e7, airMassWK: 560,
		envelopeWK: 98, groundWK: 28, groundC: 6,
		storeKg: 75, storeKgSPa: 1.5e-6, leakM3S: 0.005,
		wallFactor: 0.66, wallLagS: 2400,
		colonyWatts: 8, wetBoxKg: 0.5,
		doorFlowM3S: 0.5,
		doorsOpen: []span{
			{standard(2024, time.November, 8, 12, 0), standard(2024, time.November, 8, 17, 0)},
			{standard(2025, time.March, 11, 9, 0), standard(2025, time.March, 11, 11, 0)},
			{standard(2025, time.March, 16, 16, 0), standard(2025, time.March, 16, 18, 0)},
			{standard(2025, time.April, 6, 5, 0), standard(2025, time.April, 6, 9, 0)},
		},
		headCount: []headCount{
			{standard(2024, time.November, 8, 14, 0), 220, "wet through, it had rained on the way"},
			{standard(2025, time.February, 9, 11, 0), -5, "dead-outs carried out"},
			{standard(2025, time.March, 11, 10, 0), -60, "a batch out to be looked through"},
			{standard(2025, time.March, 16, 17, 0), 58, "the batch back, two given up"},
			{standard(2025, time.April, 6, 6, 30), -213, ""},
		},
		ladderStages: []stage{
			{name: "Stage 1", alwaysOn: true, flowM3S: 0.016, watts: 55},
			{name: "Stage 2", settings: set(4.5, 3.7), flowM3S: 0.110, watts: 120},
			{name: "Stage 3", settings: set(5.6, 4.6), flowM3S: 0.260, watts: 230, dead: []span{tripped}},
			{name: "Stage 4", settings: set(7.3, 6.0), flowM3S: 0.360, watts: 350},
		},
	}
	b.heats = []heatSource{
		{name: "Floor loop", kind: "floor", withStage: "Stage 2", watts: 150},
		{name: "Solar loop", kind: "solar", areaM2: 5},
	}
	b.alarm = &alarm{
		limitC: 8, delayMS: 30 * minuteMS, lateMS: []int64{3 * minuteMS, 4 * minuteMS, 40 * minuteMS, 2 * minuteMS},
		off: []span{
			{standard(2024, time.November, 8, 14, 0), standard(2024, time.November, 10, 9, 0)},
			{standard(2025, time.March, 28, 20, 0), standard(2025, time.March, 30, 9, 0)},
		},
	}
	b.notes = []note{
		{atMS: standard(2024, time.November, 8, 17, 0), kind: "wet boxes", value: 220, unit: "boxes", text: "all of them"},
		{atMS: standard(2024, time.November, 10, 9, 0), kind: "other", text: "North wall running wet, the boxes still steaming."},
		{atMS: standard(2024, time.December, 21, 10, 30), kind: "other", text: "Breaker of the third stage found tripped, put back in."},
		{atMS: standard(2025, time.January, 12, 9, 0), kind: "other", text: "Rime along the north wall, knee high."},
		{atMS: standard(2025, time.January, 20, 9, 0), kind: "sweepings", value: 11, unit: "pails", text: "since the new year"},
		{atMS: standard(2025, time.March, 11, 9, 0), kind: "doors open", untilMS: standard(2025, time.March, 11, 11, 0), text: "batch out"},
		{atMS: standard(2025, time.March, 27, 16, 0), kind: "other", text: "Bees flying at the lamp."},
	}
	b.loggers = append(rowanLoggers(), rowanFans())
	return b
}

// tripped is when the third stage's breaker was out.
var tripped = span{standard(2024, time.December, 18, 3, 40), standard(2024, time.December, 21, 10, 20)}

// rowanLoggers: the south one's humidity stuck for nine days in February, the north one follows summer time and was
// silent for 31 hours, the wall's battery was empty on 2 March.
func rowanLoggers() []*logger {
	return []*logger{
		{
			name: "Rowan control", files: one("rowan-control.csv"), place: "control", layout: isoCommas,
			firstMS: record.from + 2*minuteMS, lastMS: record.to - 8*hourMS, everyMS: minuteMS, clock: winterTime,
			channels: []*channel{airAt("Temperature", 0, 180, 0.21, 0.02, 0.01, 2)},
		},
		{
			name: "Rowan south", files: one("rowan-south.txt"), place: "room", layout: americanTabs,
			firstMS: record.from + 5*minuteMS, lastMS: record.to - 8*hourMS, everyMS: 5 * minuteMS, clock: winterTime,
			channels: []*channel{
				airAt("Temp", 0.012, 300, -0.27, 0.03, 0.1, 1),
				stuck(humidityAt("RH", 0.012, 360, 2.3, 0.3, 0.1, 1), standard(2025, time.February, 19, 3, 20), standard(2025, time.February, 28, 14, 5)),
			},
		},
		{
			name: "Rowan north", files: one("rowan-north.csv"), place: "room", layout: twoColumnClock,
			firstMS: record.from + 20*minuteMS, lastMS: record.to - 8*hourMS, everyMS: 10 * minuteMS, clock: wallClock,
			silent: []span{{standard(2025, time.February, 13, 4, 15), standard(2025, time.February, 14, 11, 5)}}, loss: 0.0008,
			channels: []*channel{
				airAt("Temperature", -0.012, 600, 0.09, 0.04, 0.1, 1),
				humidityAt("Humidity", -0.012, 600, -2.6, 0.4, 0.5, 1),
			},
		},
		{
			name: "Rowan wall", files: one("rowan-wall.csv"), place: "wall", layout: dottedSemicolons,
			firstMS: record.from + 15*minuteMS, lastMS: standard(2025, time.March, 2, 4, 40), everyMS: 15 * minuteMS, clock: winterTime,
			emptyBattery: true,
			planned:      planned{channel: "Probe"},
			channels: []*channel{
				airAt("Case", -0.02, 600, 0.3, 0.03, 0.1, 1),
				{title: "Probe", quantity: surface, see: func(s *scene) float64 { return s.wallC }, lagS: 180, offset: -0.15, noise: 0.03, step: 0.1, decimals: 1},
			},
		},
	}
}

// stuck is a channel that says the same for a while.
func stuck(c *channel, fromMS, toMS int64) *channel {
	c.stuck = span{fromMS, toMS}
	return c
}

// rowanFans writes what every stage's fans and every loop's pump did.
func rowanFans() *logger {
	l := &logger{
		name: "Rowan fans", files: one("rowan-fans.csv"), place: "other", layout: isoCommas,
		firstMS: record.from, lastMS: record.to - 8*hourMS, everyMS: 2 * minuteMS, clock: winterTime,
		planned: planned{recordsStages: true},
	}
	for i, title := range []string{"Stage 1", "Stage 2", "Stage 3", "Stage 4"} {
		l.channels = append(l.channels, stateOf(title, func(s *scene) bool { return s.ran[i] }))
	}
	for i, title := range []string{"Floor loop", "Solar loop"} {
		l.channels = append(l.channels, stateOf(title, func(s *scene) bool { return s.heating[i] }))
	}
	return l
}

// stateOf is a column of on and off.
func stateOf(title string, on func(*scene) bool) *channel {
	see := func(s *scene) float64 {
		if on(s) {
			return 1
		}
		return 0
	}
	return &channel{title: title, quantity: state01, see: see}
}
