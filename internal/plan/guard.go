package plan

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan/proposal"
)

// Guard is a set of cautions about a plan, a bit each, most serious first.
type Guard uint32

// The guards.
const (
	// GainInMass: more fluid than the expected loss.
	GainInMass Guard = 1 << iota
	// OverCeiling: more fluid than the ceiling allows.
	OverCeiling
	// LowPlasmaSodium: the predicted plasma sodium is under 135 mmol/L.
	LowPlasmaSodium
	// LossOutruns: even what a stomach usually takes leaves a deficit past
	// the limit: shorter, cooler, more breaks; never more drink.
	LossOutruns
	// OverStomach: faster than stomachs usually take.
	OverStomach
	// NearStomach: above the lower figure of what stomachs take, not the upper.
	NearStomach
	// OverUsual: faster than the stomach is used to.
	OverUsual
	// PastLimit: the deficit at the end, with the drinks alone, passes the limit.
	PastLimit
	// StrongDrink: what is drunk is above 8 %.
	StrongDrink
	// DryFood: gels want more water than is drunk.
	DryFood
	// OverCarbohydrate: above the advice.
	OverCarbohydrate
	// OneSource: more than 60 g/h from one family alone.
	OneSource
	// SplitUnknown: above 60 g/h, and too much of unknown family to tell.
	SplitUnknown
	// OverSodium: more sodium than is lost.
	OverSodium
	guardEnd
)

// Has reports whether a guard is in the set.
func (g Guard) Has(one Guard) bool { return g&one != 0 }

// Stops reports whether a plan may not be agreed: it would be over-drinking.
func (g Guard) Stops() bool { return g.Has(OverCeiling | GainInMass) }

// Each lists the guards of a set one by one, most serious first.
func (g Guard) Each() []Guard {
	var list []Guard
	for one := GainInMass; one < guardEnd; one <<= 1 {
		if g.Has(one) {
			list = append(list, one)
		}
	}
	return list
}

// Code of a single guard; words under it.
func (g Guard) Code() string {
	switch g {
	case GainInMass:
		return "guard.gain-in-mass"
	case OverCeiling:
		return "guard.over-ceiling"
	case LowPlasmaSodium:
		return "guard.low-plasma-sodium"
	case LossOutruns:
		return "guard.loss-outruns-stomach"
	case OverStomach:
		return "guard.over-stomach"
	case NearStomach:
		return "guard.near-stomach"
	case OverUsual:
		return "guard.over-usual"
	case PastLimit:
		return "guard.past-limit"
	case StrongDrink:
		return "guard.strong-drink"
	case DryFood:
		return "guard.dry-food"
	case OverCarbohydrate:
		return "guard.over-carbohydrate"
	case OneSource:
		return "guard.one-source"
	case SplitUnknown:
		return "guard.split-unknown"
	case OverSodium:
		return "guard.over-sodium"
	}
	return ""
}

// Codes lists the codes of the set.
func (g Guard) Codes() []string {
	var list []string
	for _, one := range g.Each() {
		list = append(list, one.Code())
	}
	return list
}

// guardIf returns a guard when a value passes a limit by more than rounding.
func guardIf(one Guard, x, limit float64) Guard {
	if proposal.Passes(x, limit) {
		return one
	}
	return 0
}

// guardsOf judges a prediction.
func (p *Planner) guardsOf(q *Prediction, taken *proposal.Sum) Guard {
	intake := q.Fluid.DrunkL + q.Fluid.FoodWaterL
	g := guardIf(GainInMass, intake, q.LossL.Value) | guardIf(OverCeiling, intake, q.Ceiling.FluidL)
	if q.Plasma.Known && q.Plasma.MmolL < evidence.Hyponatraemia {
		g |= LowPlasmaSodium
	}
	if p.pastLimit(q.ByDrinks.Value) {
		g |= PastLimit
	}
	g |= p.outruns(q)
	takes := StomachTakes(p.session.Running)
	if over := guardIf(OverStomach, q.Fluid.RateLH, takes.High); over != 0 {
		g |= over
	} else {
		g |= guardIf(NearStomach, q.Fluid.RateLH, takes.Low)
	}
	if p.basis.Usual.Known {
		g |= guardIf(OverUsual, q.Fluid.RateLH, p.basis.Usual.LH)
	}
	g |= guardIf(StrongDrink, q.StrengthPercent, evidence.StrengthHigh)
	if taken.Dry(p.gelWaterEach()) {
		g |= DryFood
	}
	if q.Sodium.LossMg.Known {
		g |= guardIf(OverSodium, q.Sodium.InMg, q.Sodium.LossMg.Value)
	}
	return g | carbohydrateGuards(&q.Carbohydrate)
}

// pastLimit reports that a loss of body mass, %, passes the limit, as a proposal takes it.
func (p *Planner) pastLimit(percent float64) bool {
	body, each := &p.basis.Body, p.basis.Body.MassKg*10
	return proposal.PastAim(percent*each, p.limit*each, body.MassKg, body.Hidden)
}

// gelWaterEach is the water a gel is taken with, mL, by how those of the habit were.
func (p *Planner) gelWaterEach() float64 {
	var habit proposal.Sum
	for s := range p.menu {
		if item := &p.menu[s]; item.InUse {
			item.countGels(&habit, Slot(s), p.habit[s])
		}
	}
	stomach := &p.background.Stomach
	return proposal.GelWaterEach(&habit, stomach.Known && stomach.Value <= evidence.StepStomachGood)
}

// outruns tells whether no stomach keeps up with the loss.
func (p *Planner) outruns(q *Prediction) Guard {
	taken := StomachTakes(p.session.Running).High * q.Minutes / minutesPerHour
	lost := q.LossL.Value + p.basis.BreathLH()*q.Minutes/minutesPerHour
	return guardIf(LossOutruns, p.percent(lost-taken), p.limit)
}

// carbohydrateGuards judges carbohydrate. Where none is needed a small amount
// is still no fault.
func carbohydrateGuards(c *Carbohydrate) Guard {
	g := guardIf(OverCarbohydrate, c.TotalGH, max(c.Advice.Range.High, evidence.FuelSmallHigh))
	one := guardIf(OneSource, max(c.GlucoseGH, c.FructoseGH), evidence.OneSourceHigh)
	if one == 0 && c.Advice.Code != fuel.FuelNone {
		one = guardIf(SplitUnknown, c.GlucoseGH+c.UnknownGH, evidence.OneSourceHigh)
	}
	return g | one
}
