package sampledata

import "time"

// The stretch every logger of the demo is about: they were started a few days before the first bees and read
// out after the last.
var record = span{standard(2024, time.November, 1, 9, 0), standard(2025, time.April, 9, 0, 0)}

// alder is the larger barn: 340 colonies, well insulated, a ladder that keeps up with most of the winter. It
// has two room loggers and no record of its fans.
func alder() *barn {
	b := &barn{name: "Alder barn", wallLow: 0.88, wallHi: 0.95}
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
			{name: "Stage 2", onC: 4.2, offC: 3.5, flowM3S: 0.240, watts: 180},
			{name: "Stage 3", onC: 4.9, offC: 4.0, flowM3S: 0.420, watts: 310},
			{name: "Stage 4", onC: 6.1, offC: 5.0, flowM3S: 0.850, watts: 620},
		},
	}
	b.notes = []note{
		{standard(2024, time.December, 19, 16, 0), "seen", 0, "Lids damp to the touch, fans going all day."},
		{standard(2025, time.January, 14, 9, 30), "swept", 9, "litres of dead bees off the floor since the new year."},
		{standard(2025, time.March, 28, 15, 0), "seen", 0, "Bees walking on the fronts, every fan going."},
	}
	b.loggers = alderLoggers()
	return b
}

func alderLoggers() []*logger {
	return []*logger{
		{
			name: "Alder east", file: "alder-east.csv", place: "room", layout: dottedSemicolons,
			firstMS: record.from + 10*minuteMS, lastMS: record.to - 9*hourMS, everyMS: 10 * minuteMS, clock: winterTime,
			channels: []*channel{
				airAt("Temperature", -0.010, 480, 0.24, 0.03, 0.1, 1),
				humidityAt("Humidity", -0.010, 540, -1.9, 0.3, 0.1, 1),
			},
		},
		{
			name: "Alder west", file: "alder-west.csv", place: "room", layout: isoCommas,
			firstMS: record.from, lastMS: record.to - 9*hourMS, everyMS: 5 * minuteMS, clock: winterTime,
			channels: []*channel{
				airAt("Temperature", 0.010, 240, -0.13, 0.02, 0.01, 2),
				humidityAt("Relative humidity", 0.010, 300, 1.2, 0.25, 0.01, 2),
			},
		},
	}
}

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
