package sampledata

import "time"

// alder is the larger barn: 340 colonies, well insulated, a ladder that keeps up with most of the winter; after the
// January cold, in which it ran dry, its second stage was set higher. It has two room loggers and no record of its
// fans.
func alder() *barn {
	b := &barn{name: "Alder barn", powerCuts: []span{powerCut}, wallLow: 0.88, wallHi: 0.95}
	b.room = room{
		volumeM3: 620, pressurePa: pressureAtPa(45), altitudeM: 45,
		airJK: 1.6e6, massJK: 5.6e7, airMassWK: 900,
		envelopeWK: 42, groundWK: 40, groundC: 6,
		storeKg: 110, storeKgSPa: 2.4e-6, leakM3S: 0.004,
		wallFactor: 0.92, wallLagS: 2400,
		colonyWatts: 8.8,
		doorFlowM3S: 0.6,
		doorsOpen: []span{
			{standard(2024, time.November, 5, 13, 30), standard(2024, time.November, 5, 17, 0)},
			{standard(2024, time.November, 6, 10, 0), standard(2024, time.November, 6, 14, 30)},
			{standard(2025, time.April, 5, 5, 30), standard(2025, time.April, 5, 10, 0)},
		},
		headCount: []headCount{
			{standard(2024, time.November, 5, 15, 0), 190, "first two loads"},
			{standard(2024, time.November, 6, 12, 0), 150, "the rest"},
			{standard(2025, time.February, 8, 14, 0), -6, "dead-outs carried out"},
			{standard(2025, time.April, 5, 6, 0), -334, ""},
		},
		ladderStages: []stage{
			{name: "Stage 1", alwaysOn: true, flowM3S: 0.080, watts: 90},
			{name: "Stage 2", settings: []setting{{0, 4.2, 3.5}, {standard(2025, time.January, 19, 10, 0), 4.6, 3.8}}, flowM3S: 0.240, watts: 180},
			{name: "Stage 3", settings: set(4.9, 4.0), flowM3S: 0.420, watts: 310},
			{name: "Stage 4", settings: set(6.1, 5.0), flowM3S: 0.850, watts: 620},
		},
	}
	b.notes = []note{
		{atMS: standard(2024, time.December, 19, 16, 0), kind: "other", text: "Lids damp to the touch, fans going all day."},
		{atMS: standard(2025, time.January, 14, 9, 30), kind: "sweepings", value: 9, unit: "pails", text: "since the new year"},
		{atMS: standard(2025, time.January, 19, 10, 0), kind: "other", text: "Dry in there. Second stage set from 4.2 to 4.6."},
		{atMS: standard(2025, time.February, 4, 17, 30), kind: "power cut", untilMS: standard(2025, time.February, 4, 23, 50), text: "Lines down in the whole valley. Stood at the door with a torch."},
		{atMS: standard(2025, time.March, 28, 15, 0), kind: "other", text: "Bees walking on the fronts, every fan going."},
	}
	b.loggers = alderLoggers()
	return b
}

// alderLoggers: the east one was read out at midwinter and again in spring, and kept what it had in between, so that
// its files overlap; its clock gains. The west one was left hanging after the bees and then lay in the kitchen.
func alderLoggers() []*logger {
	return []*logger{
		{
			name: "Alder east", place: "room", layout: dottedSemicolons,
			files: []*file{
				{name: "alder-east-midwinter.csv", part: span{record.from, midwinterReadout}},
				{name: "alder-east-spring.csv", part: span{standard(2024, time.December, 20, 0, 0), record.to}},
			},
			firstMS: record.from + 10*minuteMS, lastMS: record.to - 9*hourMS, everyMS: 10 * minuteMS,
			clock: clock{zone: tallinn, fast: eastGains},
			channels: []*channel{
				airAt("Temperature", -0.010, 480, 0.24, 0.03, 0.1, 1),
				humidityAt("Humidity", -0.010, 540, -1.9, 0.3, 0.1, 1),
			},
		},
		{
			name: "Alder west", files: one("alder-west.csv"), place: "room", layout: isoCommas,
			firstMS: record.from, lastMS: record.to - 9*hourMS, everyMS: 5 * minuteMS, clock: winterTime,
			inHouse: []span{{standard(2025, time.April, 7, 11, 0), record.to}},
			channels: []*channel{
				airAt("Temperature", 0.010, 240, -0.13, 0.02, 0.01, 2),
				humidityAt("Relative humidity", 0.010, 300, 1.2, 0.25, 0.01, 2),
			},
		},
	}
}

// midwinterReadout is when the east logger was read out the first time.
var midwinterReadout = standard(2025, time.January, 12, 16, 0)

// eastGains is what the east logger's clock gains: 31 minutes in the 158 days of its record.
const eastGains = 31.0 / (158 * 24 * 60)

// airAt sees the air at a spot that lies lean × (room − outdoor) above the room's mean.
func airAt(title string, lean, lagS, offset, noise, step float64, decimals int) *channel {
	see := func(s *scene) float64 { return s.airC + lean*(s.airC-s.outC) }
	return &channel{title: title, quantity: temperature, see: see, lagS: lagS, offset: offset, noise: noise, step: step, decimals: decimals}
}

// humidityAt sees the relative humidity, %, at such a spot; the vapour is well mixed.
func humidityAt(title string, lean, lagS, offset, noise, step float64, decimals int) *channel {
	see := func(s *scene) float64 { return 100 * relHum(s.vapPa, s.airC+lean*(s.airC-s.outC)) }
	return &channel{title: title, quantity: humidity, see: see, lagS: lagS, offset: offset, noise: noise, step: step, decimals: decimals}
}
