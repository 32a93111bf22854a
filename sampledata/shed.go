package sampledata

import "time"

// shedRecord is what the shed's one logger recorded: it was started on the kitchen table weeks before it was hung
// up, and read out days after it had been taken down.
var shedRecord = span{regina.at(2024, time.October, 20, 19, 30), regina.at(2025, time.April, 20, 20, 0)}

// shed is another operation's long shed on a prairie: 180 colonies, three fan stages nobody wrote down, and one
// logger that writes °F every half hour.
func shed() *barn {
	b := &barn{name: "Long shed"}
	b.room = room{
		volumeM3: 380, pressurePa: pressureAtPa(560), altitudeM: 560,
		airJK: 1.0e6, massJK: 4.2e7, airMassWK: 620,
		envelopeWK: 34, groundWK: 36, groundC: 5,
		storeKg: 70, storeKgSPa: 1.6e-6, leakM3S: 0.003,
		wallFactor: 0.93, wallLagS: 2400,
		colonyWatts: 8.2,
		doorFlowM3S: 0.5,
		doorsOpen: []span{
			{regina.at(2024, time.November, 9, 9, 0), regina.at(2024, time.November, 9, 16, 30)},
			{regina.at(2025, time.April, 7, 5, 30), regina.at(2025, time.April, 7, 12, 0)},
		},
		headCount: []headCount{
			{regina.at(2024, time.November, 9, 12, 0), 180, ""},
			{regina.at(2025, time.April, 7, 7, 0), -180, ""},
		},
		ladderStages: []stage{
			{name: "Stage 1", alwaysOn: true, flowM3S: 0.020, watts: 40},
			{name: "Stage 2", settings: set(4.8, 3.9), flowM3S: 0.120, watts: 130},
			{name: "Stage 3", settings: set(5.9, 4.9), flowM3S: 0.450, watts: 380},
		},
	}
	b.loggers = []*logger{{
		name: "Shed", files: one("shed.csv"), place: "room", layout: slashedCommas,
		firstMS: shedRecord.from, lastMS: shedRecord.to, everyMS: 30 * minuteMS, clock: prairieTime,
		inHouse: []span{
			{shedRecord.from - 2*hourMS, regina.at(2024, time.November, 8, 16, 40)},
			{regina.at(2025, time.April, 7, 11, 20), shedRecord.to},
		},
		channels: []*channel{
			airAt("Temperature", 0.005, 540, 0.18, 0.04, 0.1, 1),
			humidityAt("Humidity", 0.005, 600, 1.7, 0.4, 0.1, 1),
		},
	}}
	return b
}

// prairie is where the shed stands: a colder, drier winter, without summer time.
func prairie() *site {
	return &site{
		zone: regina, latitude: 50.5, streams: 1000,
		simulated: span{regina.at(2024, time.October, 12, 0, 0), regina.at(2025, time.April, 21, 0, 0)},
		meanC: []anchor{
			{regina.at(2024, time.October, 12, 0, 0), 7}, {regina.at(2024, time.November, 10, 0, 0), -2},
			{regina.at(2024, time.December, 15, 0, 0), -11}, {regina.at(2025, time.January, 20, 0, 0), -14},
			{regina.at(2025, time.February, 15, 0, 0), -12}, {regina.at(2025, time.March, 15, 0, 0), -5},
			{regina.at(2025, time.April, 21, 0, 0), 5},
		},
		swingC: []anchor{
			{regina.at(2024, time.October, 12, 0, 0), 5}, {regina.at(2024, time.December, 10, 0, 0), 2.5},
			{regina.at(2025, time.February, 1, 0, 0), 3.5}, {regina.at(2025, time.April, 21, 0, 0), 6},
		},
		spreadK: []anchor{
			{regina.at(2024, time.October, 12, 0, 0), 4}, {regina.at(2024, time.December, 15, 0, 0), 2.5},
			{regina.at(2025, time.April, 21, 0, 0), 5},
		},
		airMasses: []airMass{
			{span{regina.at(2024, time.December, 27, 0, 0), regina.at(2025, time.January, 2, 0, 0)}, 6, 0.8},
			{span{regina.at(2025, time.January, 25, 0, 0), regina.at(2025, time.February, 4, 0, 0)}, -10, 1},
			{span{regina.at(2025, time.March, 22, 0, 0), regina.at(2025, time.March, 28, 0, 0)}, 8, 1},
		},
	}
}
