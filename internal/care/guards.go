package care

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// GuardRow is what one guard of a plan is said with. Its sentence is in the catalogue
// of texts under the guard's code, or where body mass is hidden under Covered.
type GuardRow struct {
	Guard plan.Guard
	// Covered is the key of the other form the sentence has for a hidden mass; empty
	// where it has none.
	Covered string
	// figures are what the sentence takes.
	figures func(GuardCase) []GuardFigure
}

// GuardCase is a plan about which a guard speaks.
type GuardCase struct {
	Athlete string
	Planner *plan.Planner
	Length  plan.Length
	At      plan.Prediction
	// Hidden: body mass is hidden.
	Hidden bool
}

// GuardFigure is one thing that a sentence of a guard takes: a name, or an amount
// with its unit or, where the next one bears it, without.
type GuardFigure struct {
	Name  string
	Value float64
	Unit  quantity.Unit
	Bare  bool
	// Set: a limit that somebody set, without idle decimals.
	Set bool
}

// GuardSaid is the sentence of a guard: its key and what it takes.
type GuardSaid struct {
	Key     string
	Figures []GuardFigure
}

// Guards is the one table of guards, most serious first: planner, agreement, trips and
// pages say a guard by it and by nothing else.
func Guards() []GuardRow {
	none := func(GuardCase) []GuardFigure { return nil }
	return []GuardRow{
		{Guard: plan.GainInMass, figures: func(c GuardCase) []GuardFigure { return []GuardFigure{{Name: c.Athlete}} }},
		{Guard: plan.OverCeiling, figures: func(c GuardCase) []GuardFigure {
			return []GuardFigure{{Value: StopsAt(c.At.Ceiling, c.Hidden), Unit: quantity.Litre}}
		}},
		{Guard: plan.LowPlasmaSodium, figures: none},
		{Guard: plan.LossOutruns, figures: none},
		{Guard: plan.OverStomach, figures: stomachFigures},
		{Guard: plan.NearStomach, figures: stomachFigures},
		{Guard: plan.OverUsual, figures: usualFigures},
		{Guard: plan.PastLimit, Covered: "guard.past-limit.hidden", figures: func(c GuardCase) []GuardFigure {
			return []GuardFigure{{Value: c.Planner.Aim().Deficit.High, Unit: quantity.PerCent, Set: true}}
		}},
		{Guard: plan.StrongDrink, Covered: "guard.strong-drink.hidden", figures: none},
		{Guard: plan.DryFood, figures: none},
		{Guard: plan.OverCarbohydrate, figures: none},
		{Guard: plan.OneSource, figures: none},
		{Guard: plan.SplitUnknown, figures: none},
		{Guard: plan.OverSodium, figures: none},
	}
}

// SayGuard is how a guard is said about a plan; ok is false for a set of guards, and
// where what the sentence speaks of is not known.
func SayGuard(g plan.Guard, c GuardCase) (said GuardSaid, ok bool) {
	for _, row := range Guards() {
		if row.Guard != g {
			continue
		}
		said = GuardSaid{Key: g.Code()}
		if c.Hidden && row.Covered != "" {
			said.Key = row.Covered
			return said, true
		}
		said.Figures = row.figures(c)
		return said, g != plan.OverUsual || len(said.Figures) > 0
	}
	return GuardSaid{}, false
}

// stomachFigures are the rate and what stomachs usually take.
func stomachFigures(c GuardCase) []GuardFigure {
	takes, unit := plan.StomachTakes(c.Planner.Session().Running), quantity.LitrePerHour
	return []GuardFigure{{Value: c.At.Fluid.RateLH, Unit: unit}, {Value: takes.Low, Unit: unit, Bare: true}, {Value: takes.High, Unit: unit}}
}

// usualFigures are the volume above which the stomach is not used to it, and the rate
// it tolerates; none where that is not known.
func usualFigures(c GuardCase) []GuardFigure {
	litres, ok := c.Planner.UsualFluid(c.Length)
	if !ok {
		return nil
	}
	return []GuardFigure{{Value: litres, Unit: quantity.Litre}, {Value: c.Planner.Basis().Usual.LH, Unit: quantity.LitrePerHour}}
}

// StopsAt is the volume a plan stops at as it is written, L. Past three hours it is
// made with the body mass, so where that is hidden it is rounded down, as coarse as
// leaves the mass open.
func StopsAt(c plan.Ceiling, hidden bool) float64 {
	if hidden && c.Reason == plan.LongSession {
		return math.Floor(c.FluidL/evidence.HiddenLimitStep+rounding) * evidence.HiddenLimitStep
	}
	return c.FluidL
}
