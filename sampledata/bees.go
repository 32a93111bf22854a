package sampledata

import "math"

// Honey turned into heat sets water free: 4.58 g a day per watt (stoichiometry of glucose with the water
// of honey of 18 %), which takes 2.49 kJ/g with it when it leaves as vapour.
const (
	waterKgSPerW   = 4.58e-3 / 86400
	vapourJKg      = 2.49e6
	vapourShare    = 0.62  // of that water which reaches the room's air; the rest stays in bees and stores
	colderShareK   = 0.035 // more heat per kelvin below 5 °C
	warmerShareK   = 0.07  // and per kelvin above 10 °C
	unrestShare    = 0.3   // more heat on the day of moving in, gone within a week or two
	unrestDays     = 4.0
	broodShare     = 0.75 // more heat with full spring brood
	boxesDryDays   = 5.0  // in which rain-wet boxes give off most of their water
	broodStartDays = 75.0 // after moving in
	broodFullDays  = 150.0
)

// headCount is a change of the number of colonies in a room.
type headCount struct {
	atMS   int64
	change int
	note   string
}

// colonies is how many there are at an instant.
func colonies(ledger []headCount, atMS int64) int {
	n := 0
	for _, h := range ledger {
		if h.atMS <= atMS {
			n += h.change
		}
	}
	return n
}

// colonyW is the total heat of one colony: least between 5 and 10 °C, more away from it, and more with brood
// as the winter goes on. The shape is the trade's, the coefficients are this scenario's.
func colonyW(restingW, airC, daysIn float64) float64 {
	cold := colderShareK * max(0, 5-airC)
	warm := warmerShareK * max(0, airC-10)
	brood := broodShare * min(1, max(0, (daysIn-broodStartDays)/(broodFullDays-broodStartDays)))
	unrest := unrestShare * math.Exp(-daysIn/unrestDays)
	return restingW * (1 + cold + warm + brood + unrest)
}

// heat splits the colonies' heat: the sensible part in W and the vapour in kg/s. Boxes that came in wet
// dry at the expense of the sensible part.
func (r *room) heat(n int, airC, daysIn float64) (sensibleW, vapourKgS float64) {
	totalW := float64(n) * colonyW(r.colonyWatts, airC, daysIn)
	drying := float64(n) * r.wetBoxKg * math.Exp(-daysIn/boxesDryDays) / (boxesDryDays * 86400)
	vapourKgS = totalW*waterKgSPerW*vapourShare + drying
	return totalW - vapourKgS*vapourJKg, vapourKgS
}
