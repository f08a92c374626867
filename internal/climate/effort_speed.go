package climate

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// RunningEffort is running at a speed up a gradient (0.01 is 1 %).
//
//	VO2 = 3.5 + 0.2 S + 0.9 S G mL/kg/min, S in m/min
//
// External work is zero. treadmill puts the run on the spot. Meant for steady
// running over about 8 km/h; not for walking, nor for games, whose pace
// changes. Source: ACSM metabolic equation. Example: 12 km/h, level, 70 kg and
// 1.78 m give 568 W/m².
func RunningEffort(b Body, speed quantity.MetresPerSecond, gradient float64, treadmill bool) (Effort, error) {
	kmh, err := quantity.Convert(float64(speed), quantity.MetrePerSecond, quantity.KilometrePerHour)
	if err != nil {
		return Effort{}, err
	}
	err = refusedAny(append(b.values(), fieldValue{evidence.RunningSpeed, kmh}, fieldValue{evidence.Gradient, gradient})...)
	if err != nil {
		return Effort{}, err
	}
	s := float64(speed) * 60
	uphill := max(0, gradient) // the equation was not made for running down
	oxygen := evidence.RunningBaseOxygen + evidence.RunningLevelOxygen*s + evidence.RunningGradeOxygen*s*uphill
	f := metabolic(oxygen, b, "base+level*speed+grade*speed*gradient", []figure.Input{
		{Symbol: "base", Value: evidence.RunningBaseOxygen, Unit: "mL/(kg·min)"},
		{Symbol: "level", Value: evidence.RunningLevelOxygen, Unit: "mL/(kg·m)"},
		{Symbol: "speed", Value: s, Unit: "m/min"},
		{Symbol: "grade", Value: evidence.RunningGradeOxygen, Unit: "mL/(kg·m)"},
		{Symbol: "gradient", Value: uphill},
	}, evidence.RunningRelativeU, "oxygen.running.base", "oxygen.running.level", "oxygen.running.grade")
	return Effort{BySpeed, OnFoot, f, 0, speed, treadmill}, nil
}

// MetEffort is an activity of so many METs.
//
//	M = MET 3.5/1000 kg/60 × 20 900 / area
//
// External work is zero but for cycling and rowing, where it is the efficiency
// (0.21, 0.19) of M. own is the body's own speed; zero is on the spot. Source:
// Ainsworth et al. 2011. Example: 8 MET at 70 kg and 1.78 m give 366 W/m².
func MetEffort(b Body, met float64, m Motion, own quantity.MetresPerSecond) (Effort, error) {
	return mets(b, met, ByActivity, m, own, evidence.MetRelativeU, "oxygen.met")
}

// RatedEffort is effort as the athlete rates it, 0 to 10: 2 MET and one more a
// step, with an error of a third. A proposal for when nothing better is known.
func RatedEffort(b Body, rating float64, m Motion, own quantity.MetresPerSecond) (Effort, error) {
	if err := refused(evidence.EffortRating, rating); err != nil {
		return Effort{}, err
	}
	met := evidence.EffortRestMet + evidence.EffortStepMet*rating
	e, err := mets(b, met, ByRating, m, own, evidence.EffortRelativeU, "oxygen.met", "oxygen.effort.base", "oxygen.effort.step")
	return e, err
}

// AssumedEffort is an activity of so many METs where nothing is known of the
// effort: it is as wide as a rating, and counts as one. A proposal.
func AssumedEffort(b Body, met float64, m Motion, own quantity.MetresPerSecond) (Effort, error) {
	return mets(b, met, ByRating, m, own, evidence.EffortRelativeU, "oxygen.met", "climate.effort.assumed")
}

// mets makes an effort from METs.
func mets(b Body, met float64, kind EffortKind, m Motion, own quantity.MetresPerSecond, relativeU float64, source ...string) (Effort, error) {
	err := refusedAny(append(b.values(), fieldValue{evidence.MetValue, met}, fieldValue{evidence.OwnSpeed, float64(own)})...)
	if err != nil {
		return Effort{}, err
	}
	f := metabolic(met*evidence.MetOxygen, b, "met*oxygen", []figure.Input{
		{Symbol: "met", Value: met, Unit: quantity.Met},
		{Symbol: "oxygen", Value: evidence.MetOxygen, Unit: "mL/(kg·min)"},
	}, relativeU, source...)
	work, err := m.work(f.Value)
	return Effort{kind, m, f, work, own, own == 0}, err
}

// work is the external work in a metabolic rate of a motion, W/m².
func (m Motion) work(metabolic float64) (quantity.WattsPerSquareMetre, error) {
	switch m {
	case OnFoot, InWater:
		return 0, nil
	case Cycling:
		return quantity.WattsPerSquareMetre(metabolic * evidence.CyclingEfficiency), nil
	case Rowing:
		return quantity.WattsPerSquareMetre(metabolic * evidence.RowingEfficiency), nil
	}
	return 0, problem(evidence.MetabolicRate, evidence.CodeBadChoice, 0)
}
