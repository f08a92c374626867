package sweat

import "ebbwell/internal/evidence"

// Uptake is an oxygen uptake with how well it is known.
type Uptake struct {
	// Litres per minute, STPD.
	Litres float64
	// RelativeU is the relative standard uncertainty.
	RelativeU float64
}

// FromMet is the oxygen uptake of an activity from the table of METs: 3.5
// mL/kg/min in one MET (Ainsworth et al. 2011). Mass in kg. Meant for whole
// activities, not for a certain pace.
func FromMet(met, mass float64) Uptake {
	return Uptake{met * evidence.MetOxygen * mass / 1000, evidence.MetRelativeU}
}

// FromRunning is the oxygen uptake of running at a speed in km/h up a grade
// (0.01 is 1 %): 3.5 + 0.2 S + 0.9 S G mL/kg/min with S in m/min (ACSM
// metabolic equations). Meant for steady running above about 8 km/h.
func FromRunning(speed, grade, mass float64) Uptake {
	s := speed * 1000 / 60
	perKg := evidence.RunningBaseOxygen + evidence.RunningLevelOxygen*s + evidence.RunningGradeOxygen*s*grade
	return Uptake{perKg * mass / 1000, evidence.RunningRelativeU}
}

// FromCycling is the oxygen uptake at a pedal power in W: 7 + 10.8 P/kg
// mL/kg/min (ACSM metabolic equations, from memory). Mass in kg, above zero.
func FromCycling(power, mass float64) Uptake {
	perKg := evidence.CyclingBaseOxygen + evidence.CyclingPowerOxygen*power/mass
	return Uptake{perKg * mass / 1000, evidence.PowerRelativeU}
}

// FromRowing is the oxygen uptake at a rowing power in W: the metabolic rate is
// P/0.19, at the energy of a litre of oxygen for the usual exchange ratio. The
// efficiency is this program's proposal.
func FromRowing(power float64) Uptake {
	return Uptake{power / evidence.RowingEfficiency * 60 / EnergyPerOxygen(evidence.UsualRER), evidence.PowerRelativeU}
}

// FromRating is a wide estimate of oxygen uptake from an effort rating, 0-10:
// two METs at rest and one more a step. It is this program's proposal, for when
// nothing better is known.
func FromRating(rating, mass float64) Uptake {
	u := FromMet(evidence.EffortRestMet+evidence.EffortStepMet*rating, mass)
	u.RelativeU = evidence.EffortRelativeU
	return u
}

// EnergyPerOxygen is the energy of a litre of oxygen in J at an exchange ratio:
// (0.23 RER + 0.77) 21 166 (Parsons 1993).
func EnergyPerOxygen(rer float64) float64 {
	return (evidence.OxygenEnergySlope*rer + evidence.OxygenEnergyBase) * evidence.OxygenEnergyScale
}
