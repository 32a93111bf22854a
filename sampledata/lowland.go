package sampledata

import "time"

// The stretch every logger of the lowland is about: they were started a few days before the first bees and read
// out after the last.
var record = span{standard(2024, time.November, 1, 9, 0), standard(2025, time.April, 9, 0, 0)}

// powerCut is when the lines were down.
var powerCut = span{standard(2025, time.February, 4, 17, 20), standard(2025, time.February, 4, 23, 50)}

// lowland is the northern lowland the two barns stand in. The simulation starts a week before the loggers, so that
// the rooms have forgotten how they were started.
func lowland() *site {
	return &site{
		zone: tallinn, simulated: span{standard(2024, time.October, 25, 0, 0), record.to}, latitude: 58.6,
		meanC: []anchor{
			{standard(2024, time.October, 25, 0, 0), 5}, {standard(2024, time.November, 15, 0, 0), 1.5},
			{standard(2024, time.December, 15, 0, 0), -3}, {standard(2025, time.January, 15, 0, 0), -5},
			{standard(2025, time.February, 10, 0, 0), -5.5}, {standard(2025, time.March, 10, 0, 0), -2},
			{standard(2025, time.April, 1, 0, 0), 1.5}, {standard(2025, time.April, 15, 0, 0), 5},
		},
		swingC: []anchor{
			{standard(2024, time.October, 25, 0, 0), 2.2}, {standard(2024, time.December, 1, 0, 0), 0.8},
			{standard(2025, time.January, 10, 0, 0), 0.8}, {standard(2025, time.March, 1, 0, 0), 2.8},
			{standard(2025, time.April, 15, 0, 0), 4.5},
		},
		spreadK: []anchor{
			{standard(2024, time.October, 25, 0, 0), 1.6}, {standard(2024, time.December, 15, 0, 0), 1.0},
			{standard(2025, time.February, 1, 0, 0), 1.2}, {standard(2025, time.April, 15, 0, 0), 2.6},
		},
		airMasses: []airMass{
			{span{standard(2024, time.December, 16, 0, 0), standard(2024, time.December, 22, 12, 0)}, 4, 0.4},
			{span{standard(2025, time.January, 8, 0, 0), standard(2025, time.January, 17, 0, 0)}, -9, 1},
			{span{standard(2025, time.February, 17, 0, 0), standard(2025, time.February, 21, 12, 0)}, 4.5, 0.5},
			{span{standard(2025, time.March, 1, 12, 0), standard(2025, time.March, 6, 0, 0)}, -5, 1.2},
			{span{standard(2025, time.March, 25, 0, 0), standard(2025, time.March, 30, 12, 0)}, 6, 1.3},
		},
	}
}

// outdoors is the logger under the eaves between the barns, set to universal time.
func outdoors() *logger {
	return &logger{
		name: "Outdoor", files: one("outdoor.txt"), place: "outdoor", layout: americanTabs,
		firstMS: record.from, lastMS: record.to, everyMS: hourMS, clock: worldTime,
		channels: []*channel{
			{title: "Temp", quantity: temperature, see: func(s *scene) float64 { return s.outC }, lagS: 600, offset: 0.12, noise: 0.03, step: 0.1, decimals: 1},
			{title: "RH", quantity: humidity, see: func(s *scene) float64 { return 100 * relHum(s.outVapPa, s.outC) }, lagS: 600, offset: 1.1, noise: 0.4, step: 0.1, decimals: 1},
		},
	}
}
