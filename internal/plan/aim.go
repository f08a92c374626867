package plan

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
)

// Bound is a range that may be switched off.
type Bound struct {
	On bool
	quantity.Range
}

// Within returns a bound that is on.
func Within(low, high float64) Bound {
	return Bound{On: true, Range: quantity.Range{Low: low, High: high}}
}

// Aim is what a plan should meet. The zero Aim asks for nothing but what
// guards the athlete.
type Aim struct {
	// Deficit at the end, % of body mass: Low is the least, High the limit.
	Deficit Bound
	// Carbohydrate in g/h.
	Carbohydrate Bound
	// Sodium in mg/h.
	Sodium Bound
	// Drinking is the drinking rate in L/h; only High counts.
	Drinking Bound
	// Strength of what is drunk in g per 100 mL; only High counts.
	Strength Bound
	// OneSource holds the glucose family, and what is of unknown family, to 60 g/h.
	OneSource bool
	// Allowed are the slots that may change; all when none is set.
	Allowed [Slots]bool
}

// allows reports whether a slot may change.
func (a Aim) allows(s Slot) bool { return a.Allowed == [Slots]bool{} || a.Allowed[s] }

// DeficitLimit is the usual limit of the deficit at the end for a heat class,
// % of body mass: 3 in the cold, otherwise the default of 2 (ACSM 2007 and
// our proposal; a setting).
func DeficitLimit(h Heat) float64 {
	switch h {
	case Cold:
		return evidence.DeficitAimCold
	case Hot:
		return evidence.DeficitAimHot
	}
	return evidence.DeficitAim
}

// DefaultAim is the aim that the published advice gives for the expected
// session: deficit from none to the limit, carbohydrate from what is asked for
// ([CarbohydrateAimed]) to the upper end of the advice, and no bound where small
// amounts are all there is to it; drinking no faster than stomachs take, or
// than this one is used to; drinks no stronger than 8 %.
// Sodium has no aim of its own; it is only held under the loss.
func DefaultAim(u Usual, s Session) Aim {
	advice := fuel.CarbohydrateDuring(s.Minutes[Expected], s.Effort).Range
	advice.Low = min(CarbohydrateAimed(s), advice.High)
	return Aim{
		Deficit:      Within(0, DeficitLimit(s.Heat)),
		Carbohydrate: Bound{On: advice.Low > 0, Range: advice},
		Drinking:     Within(0, toleratedLH(u, s.Running)),
		Strength:     Within(0, evidence.StrengthHigh),
		OneSource:    true,
	}
}

// ThirstWillDo reports whether drinking to thirst serves as well as a plan
// (Kenefick 2018): no more than 90 min, or neither hot nor hard nor with a
// high sweat rate, and no more than 1 g/min of carbohydrate wanted.
func ThirstWillDo(b Basis, s Session, a Aim) bool {
	long := s.Minutes[Expected] > evidence.PlanAbove
	demanding := s.Heat == Hot || s.Effort == fuel.Hard || b.SweatRate.Value >= evidence.PlanRate
	wanted := a.Carbohydrate.On && a.Carbohydrate.Low >= evidence.PlanFuel
	return !(long && demanding) && !wanted
}

// StomachTakes is what a stomach usually takes, L/h: 1.0-1.2, and in running
// from 0.72, what runners emptied (ACSM 2007, from memory; Lambert et al.
// 2008).
func StomachTakes(running bool) quantity.Range {
	if running {
		return quantity.Range{Low: evidence.StomachRunning, High: evidence.StomachLow}
	}
	return quantity.Range{Low: evidence.StomachLow, High: evidence.StomachHigh}
}

// Condition is a set of conditions, a bit each.
type Condition uint32

// The conditions. The last two guard the athlete.
const (
	DeficitMost Condition = 1 << iota
	DeficitLeast
	CarbohydrateMost
	CarbohydrateLeast
	SodiumMost
	SodiumLeast
	DrinkingMost
	StrengthMost
	OneSourceMost
	BreaksMost
	FluidCeiling
	SodiumCeiling
)

// Has reports whether a condition is in the set.
func (c Condition) Has(one Condition) bool { return c&one != 0 }
