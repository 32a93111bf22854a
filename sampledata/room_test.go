package sampledata

import (
	"math"
	"testing"
)

// testRoom is a room of round figures without moisture store effects unless a test asks for them.
func testRoom() *room {
	return &room{
		volumeM3: 500, pressurePa: 101325, airJK: 2e6, massJK: 4e7, airMassWK: 800,
		envelopeWK: 100, groundWK: 50, groundC: 6, storeKg: 100, wallFactor: 0.7, wallLagS: 3600,
	}
}

// march steps a room under a constant forcing.
func march(r *room, s state, f forcing, seconds int) state {
	for i := 0; i < seconds; i += stepS {
		s = r.step(s, f, stepS)
	}
	return s
}

// twoNodes is the closed form of the two heat nodes under a constant forcing: the temperatures at rest, and
// the matrix of their decay, per second.
type twoNodes struct {
	airC, massC float64
	a, b, c, d  float64
}

// closedForm solves air: Q = G(Ta − Tm) + H(Ta − To) and mass: G(Ta − Tm) = K(Tm − Tg) by hand.
func closedForm(r *room, f forcing) twoNodes {
	g, k := r.airMassWK, r.groundWK
	h := r.envelopeWK + airHeatJM3K*f.flowM3S
	series := g * k / (g + k)
	airC := (f.heatW + h*f.outC + series*r.groundC) / (h + series)
	return twoNodes{
		airC: airC, massC: (g*airC + k*r.groundC) / (g + k),
		a: -(g + h) / r.airJK, b: g / r.airJK, c: g / r.massJK, d: -(g + k) / r.massJK,
	}
}

// rates are the two decay rates, 1/s, the slow one first: the eigenvalues of the matrix.
func (n twoNodes) rates() (slow, fast float64) {
	mid, half := (n.a+n.d)/2, math.Sqrt((n.a-n.d)*(n.a-n.d)/4+n.b*n.c)
	return mid + half, mid - half
}

// after is the state some seconds after the nodes stood at given temperatures.
func (n twoNodes) after(airC, massC, seconds float64) (float64, float64) {
	slow, fast := n.rates()
	x, y := airC-n.airC, massC-n.massC
	// e^(At) = (e^(λ₁t)(A − λ₂) − e^(λ₂t)(A − λ₁)) / (λ₁ − λ₂) for two distinct eigenvalues (Sylvester).
	es, ef := math.Exp(slow*seconds), math.Exp(fast*seconds)
	ax, ay := n.a*x+n.b*y, n.c*x+n.d*y
	gap := slow - fast
	return n.airC + (es*(ax-fast*x)-ef*(ax-slow*x))/gap, n.massC + (es*(ay-fast*y)-ef*(ay-slow*y))/gap
}

// One always-on stage and a constant outdoors: the room must follow the closed form of two nodes, on its way and
// at rest.
func TestRoomFollowsTheClosedForm(t *testing.T) {
	r := testRoom()
	f := forcing{outC: -8, outHumRatio: 0.0015, flowM3S: 0.08, heatW: 2500}
	want := closedForm(r, f)
	start := state{airC: 12, massC: 9, humRatio: 0.003, storeRelHum: 0.6}
	for _, seconds := range []int{600, 3600, 86400, 10 * 86400} {
		airC, massC := want.after(12, 9, float64(seconds))
		got := march(r, start, f, seconds)
		if math.Abs(got.airC-airC) > 1e-3 || math.Abs(got.massC-massC) > 1e-3 {
			t.Errorf("after %d s air and mass are %.5f and %.5f °C, want %.5f and %.5f", seconds, got.airC, got.massC, airC, massC)
		}
	}
	rest := march(r, start, f, 60*86400)
	near(t, "air at rest", rest.airC, want.airC, 1e-9)
	near(t, "mass at rest", rest.massC, want.massC, 1e-9)
}

// Expected values: the two-state building model with Ci = 2 and Ce = 8 kWh/K, Rie = 0.5 and Rea = 2 K/kW has the time
// constants 20.208 h and 0.79176 h (roots of its characteristic polynomial). Here its outer resistance is
// the way from the mass to the ground.
func TestTimeConstantsOfATwoStateModel(t *testing.T) {
	const kWh = 3.6e6
	r := &room{volumeM3: 1, pressurePa: 101325, airJK: 2 * kWh, massJK: 8 * kWh, airMassWK: 2000, groundWK: 500, storeKg: 1, wallLagS: 3600}
	slow, fast := closedForm(r, forcing{}).rates()
	near(t, "slow time constant", -1/slow/3600, 20.208, 1e-4)
	near(t, "fast time constant", -1/fast/3600, 0.79176, 1e-4)

	late := march(r, state{airC: 10, massC: 10}, forcing{}, 40*3600)
	later := march(r, late, forcing{}, 3600)
	near(t, "time constant seen", 1/math.Log(late.massC/later.massC), 20.208, 1e-3)
}

// At rest the air's humidity ratio is the intake's plus vapour over dry air flow, and the store's relative humidity
// is the vapour pressure over saturation at the mass.
func TestMoistureAtRest(t *testing.T) {
	r := testRoom()
	r.storeKgSPa = 2e-6
	f := forcing{outC: -5, outHumRatio: 0.002, flowM3S: 0.1, heatW: 2500, vapourKgS: 1.5e-4}
	got := march(r, state{airC: 5, massC: 5, humRatio: 0.003, storeRelHum: 0.5}, f, 90*86400)
	near(t, "humidity ratio", got.humRatio, 0.002+1.5e-4/(airDensityKgM3*0.1), 1e-6)
	near(t, "store", got.storeRelHum, relHum(vapPresOf(got.humRatio, 101325), got.massC), 1e-6)
}

// Without a store the room's vapour decays with volume over flow: 500 m³ at 0.1 m³/s is 5000 s.
func TestMoistureTimeConstant(t *testing.T) {
	f := forcing{outC: 5, outHumRatio: 0.002, flowM3S: 0.1}
	got := march(testRoom(), state{airC: 5, massC: 5, humRatio: 0.004}, f, 5000)
	near(t, "what is left of 2 g/kg", got.humRatio-0.002, 0.002/math.E, 1e-5)
}

// The listed wall comes to rest where its temperature factor says: T_out + f (T_in − T_out).
func TestWallAtRest(t *testing.T) {
	got := march(testRoom(), state{airC: 5, massC: 5}, forcing{outC: -10, heatW: 2500}, 60*86400)
	near(t, "wall above outdoors", got.wallC+10, 0.7*(got.airC+10), 1e-6)
}

// Air can't hold more than saturation.
func TestVapourBeyondSaturationDripsOut(t *testing.T) {
	f := forcing{outC: 4, flowM3S: 0.01, outHumRatio: 0.004, vapourKgS: 0.01}
	got := march(testRoom(), state{airC: 4, massC: 4, humRatio: 0.004}, f, 86400)
	near(t, "relative humidity", relHum(vapPresOf(got.humRatio, 101325), got.airC), 1, 1e-9)
}
