package desk

// Cautions belong beside the figures they qualify. The program is no alarm and no safety device.
const (
	cautionAlarm      = "This looks back over a winter. It is no alarm: keep a thermostat and a call-out that do not depend on it."
	cautionCO2        = "Before going in to look: a closed barn full of hives can hold carbon dioxide at a level harmful to people. Air it or carry a meter."
	cautionMould      = "Where walls stayed wet, wear a mask when brushing off mould, and do not brush it dry. Wear it for the winter's dust too, and air the room before going in where mites were treated: vapours stay in a closed one."
	cautionFans       = "Lock a fan out before reaching into it or its belt: a stage that is off by its thermostat can start at any moment."
	cautionSalt       = "The salt is for the check and no longer food: keep it away from food and hives, and wash your hands."
	cautionOneAtATime = "Change one setting at a time, and write down when: two at once can't be told apart afterwards. The limits here are practice, not law."
	cautionAir        = "When fans stop, carbon dioxide can climb to a harmful level within an hour or two: air first, measure, and have someone stay outside. Never cut the always-on air, nor add water, to cure dry air."
	cautionHeat       = "No burner without a flue among bees or people: carbon monoxide kills. A generator stands outside, its exhaust away from doors and intakes, with a transfer switch by an electrician. Solar loops scald."
	cautionElectrics  = "Wiring in a damp barn is an electrician's work, behind a residual-current device."
	cautionComparison = "Hives were not put into the barns by lot, and one winter is one winter: mites, queens and stores kill more colonies than thermostats do."
)

// cautions are those that First look's sentences call for.
func (b barn) cautions() []string {
	out := []string{cautionAlarm, cautionCO2}
	for _, s := range b.r.Surfaces {
		if s.DewHours.OK && s.DewHours.Mid >= 1 {
			return append(out, cautionMould)
		}
	}
	return out
}

// Cautions are all of them, for the help page.
func Cautions() []string {
	return []string{cautionAlarm, cautionCO2, cautionMould, cautionFans, cautionElectrics, cautionSalt, cautionOneAtATime, cautionAir, cautionHeat, cautionComparison}
}
