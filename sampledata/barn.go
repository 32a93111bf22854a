package sampledata

import "context"

// stepS is the simulation's step in seconds.
const stepS = 10

// thermostatLagS is how slowly the thermostat's own sensor follows the air.
const thermostatLagS = 60

// barn is one wintering barn: the room, what happened to it, what the keeper knows of it, and the loggers that hang
// in it.
type barn struct {
	room
	name            string
	powerCuts       []span
	heats           []heatSource
	alarm           *alarm
	wallLow, wallHi float64 // the wall's temperature factor as far as the keeper knows it
	wallLogger      string
	notes           []note
	loggers         []*logger
}

// note is something the keeper wrote down: at an instant, or until another where there is one.
type note struct {
	atMS    int64
	kind    string
	value   float64 // 0 for none
	unit    string
	text    string
	untilMS int64
}

// beesTime runs from the first colony in to the last one out.
func (b *barn) beesTime() span {
	return span{b.headCount[0].atMS, b.headCount[len(b.headCount)-1].atMS}
}

// simulation is a barn on its way through the winter.
type simulation struct {
	*barn
	site    *site
	weather *weather
	state   state
	ladder  *ladder
	heating *heating
	feltC   float64 // by the thermostat
	takeUp  float64
	scene   scene
	tally   *tally
}

func newSimulation(b *barn, s *site, w *weather) *simulation {
	start := state{airC: 6, massC: 6, humRatio: 0.0045, storeRelHum: 0.75, wallC: 6}
	sim := &simulation{
		barn: b, site: s, weather: w, state: start, feltC: start.airC, takeUp: takeUp(thermostatLagS),
		ladder: newLadder(b.ladderStages), heating: newHeating(b.heats, b.ladderStages), tally: newTally(b, s.zone),
	}
	sim.scene.called, sim.scene.ran, sim.scene.heating = sim.ladder.called, sim.ladder.ran, sim.heating.on
	return sim
}

// run steps through the winter; day is told each day that is done.
func (sim *simulation) run(ctx context.Context, day func()) error {
	s := sim.site.simulated
	for morning := s.from; morning < s.to; morning += dayMS {
		if err := ctx.Err(); err != nil {
			return err
		}
		for at := morning; at < min(morning+dayMS, s.to); at += stepS * secondMS {
			sim.step(at)
		}
		day()
	}
	return nil
}

// step lets the thermostat, the loggers and the tally look at an instant, and moves on to the next.
func (sim *simulation) step(atMS int64) {
	now := sim.weather.at(atMS)
	power := !within(sim.powerCuts, atMS)
	sim.feltC += (sim.state.airC - sim.feltC) * sim.takeUp
	sim.ladder.follow(sim.feltC, atMS, power)
	sim.heating.follow(sim.ladder.ran, now.sunWM2, power)
	sc := &sim.scene
	sc.atMS, sc.outC, sc.outVapPa = atMS, now.tempC, now.vapPresPa
	sc.airC, sc.wallC, sc.vapPa = sim.state.airC, sim.state.wallC, vapPresOf(sim.state.humRatio, sim.pressurePa)
	bees := within([]span{sim.tally.bees}, atMS)
	for _, l := range sim.loggers {
		l.watch(sc, bees)
	}
	n := colonies(sim.headCount, atMS)
	if bees {
		sim.tally.add(sc, n)
		if sim.alarm != nil {
			sim.alarm.feel(sim.feltC, atMS)
		}
	}
	sim.state = sim.room.step(sim.state, sim.forcing(n, atMS, now), stepS)
}

// forcing is what acts on the room now.
func (sim *simulation) forcing(n int, atMS int64, now moment) forcing {
	daysIn := max(0, float64(atMS-sim.tally.bees.from)/dayMS)
	heatW, vapourKgS := sim.heat(n, sim.state.airC, daysIn)
	flow := sim.leakM3S + sim.ladder.flowM3S()
	if within(sim.doorsOpen, atMS) {
		flow += sim.doorFlowM3S
	}
	return forcing{
		outC: now.tempC, outHumRatio: humRatioOf(now.vapPresPa, sim.pressurePa), flowM3S: flow,
		heatW: heatW, floorW: sim.heating.floorW(now.sunWM2), vapourKgS: vapourKgS,
	}
}
