package sampledata

// room is a wintering room as two thermal nodes, air and mass (slab, walls' inner leaf, hives), and two
// moisture nodes, air and the store in wood and comb. Heat flows from the bees into the air, from air to
// outdoors through the envelope and with the ventilation, from mass to air and to the ground below; heating loops lie
// in the mass.
type room struct {
	volumeM3     float64
	pressurePa   float64
	airJK        float64 // heat capacity of air and of what follows it at once
	massJK       float64
	airMassWK    float64 // between air and mass
	envelopeWK   float64 // between air and outdoors
	groundWK     float64 // between mass and ground
	groundC      float64
	storeKg      float64 // water taken up as the store's relative humidity goes from 0 to 1
	storeKgSPa   float64 // vapour flow per pascal between air and store
	leakM3S      float64 // through cracks, whatever the fans do
	wallFactor   float64 // temperature factor of the listed wall
	wallLagS     float64 // first-order delay of that wall's inner surface
	altitudeM    float64
	colonyWatts  float64 // of one resting colony at 5–10 °C in midwinter
	wetBoxKg     float64 // rain a colony's boxes brought in
	doorsOpen    []span
	doorFlowM3S  float64
	headCount    []headCount
	ladderStages []stage
}

// state is what a room remembers from one step to the next.
type state struct{ airC, massC, humRatio, storeRelHum, wallC float64 }

// forcing is what acts on a room during one step.
type forcing struct {
	outC, outHumRatio float64
	flowM3S           float64 // all air exchanged with outdoors
	heatW             float64 // sensible, into the air
	floorW            float64 // into the mass
	vapourKgS         float64
}

// rate is the state's change per second; massSatPa is the saturation pressure at the mass, Pa.
func (r *room) rate(s state, f forcing, massSatPa float64) state {
	vapPa := vapPresOf(s.humRatio, r.pressurePa)
	toMass := r.airMassWK * (s.airC - s.massC)
	toOut := (r.envelopeWK + airHeatJM3K*f.flowM3S) * (s.airC - f.outC)
	toGround := r.groundWK * (s.massC - r.groundC)
	toStore := r.storeKgSPa * (vapPa - s.storeRelHum*massSatPa)
	carried := airDensityKgM3 * f.flowM3S * (f.outHumRatio - s.humRatio)
	wall := f.outC + r.wallFactor*(s.airC-f.outC)
	return state{
		airC:        (f.heatW - toMass - toOut) / r.airJK,
		massC:       (toMass - toGround + f.floorW) / r.massJK,
		humRatio:    (f.vapourKgS + carried - toStore) / (airDensityKgM3 * r.volumeM3),
		storeRelHum: toStore / r.storeKg,
		wallC:       (wall - s.wallC) / r.wallLagS,
	}
}

// step moves a state on by seconds, by the midpoint rule; within a step the mass is as warm as it was. Vapour beyond
// saturation of the air drips out.
func (r *room) step(s state, f forcing, seconds float64) state {
	massSatPa := satPresWaterPa(s.massC)
	mid := s.plus(r.rate(s, f, massSatPa), seconds/2)
	next := s.plus(r.rate(mid, f, massSatPa), seconds)
	if next.airC < 0 || vapPresOf(next.humRatio, r.pressurePa) > leastSatPa {
		next.humRatio = min(next.humRatio, humRatioOf(satPresWaterPa(next.airC), r.pressurePa))
	}
	return next
}

// leastSatPa is below what air from 0 °C on can hold: 611 Pa.
const leastSatPa = 611

func (s state) plus(rate state, seconds float64) state {
	return state{
		airC:        s.airC + rate.airC*seconds,
		massC:       s.massC + rate.massC*seconds,
		humRatio:    s.humRatio + rate.humRatio*seconds,
		storeRelHum: s.storeRelHum + rate.storeRelHum*seconds,
		wallC:       s.wallC + rate.wallC*seconds,
	}
}
