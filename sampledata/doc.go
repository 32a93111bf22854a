// Package sampledata makes the demo winters: what the loggers of two invented wintering barns would have
// written, and that of an invented shed; the plans that describe them, and the truth behind them.
//
// Nothing here is measured. An invented northern winter (weather.go) drives a room with an air node, a mass
// node and a moisture store (room.go), in steps of ten seconds; bees warm and dampen it (bees.go); a fan ladder
// with a thermostat cools it (ladder.go), loops in the floor warm it (heat.go), an alarm calls (alarm.go); loggers with
// an offset, noise, a lag and a resolution look at it (logger.go) and write files in five layouts (layout.go). truth.go
// says what really happened, so that a program that reads the files can be judged. The scenarios are tables:
// the rich one alder.go, rowan.go and lowland.go, the thin one shed.go.
//
// The package uses the standard library only and its own physics, so that it can catch the program's faults.
package sampledata
