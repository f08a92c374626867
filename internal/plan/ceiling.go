package plan

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan/proposal"
)

// Reason says why a value stopped where it did.
type Reason string

// The reasons; words under each.
const (
	Free        Reason = ""
	LowEnd      Reason = "reason.low-end"      // low end of the planned loss
	LongSession Reason = "reason.long-session" // past 3 h the plan ends at -1 % or lower
	SodiumLost  Reason = "reason.sodium-lost"
	SliderEnd   Reason = "reason.slider-end"
	NotNegative Reason = "reason.not-negative"
	NotInUse    Reason = "reason.not-in-use"
	Measured    Reason = "reason.measured" // what was drunk in the test, above the low end
)

// Ceiling is the fluid, drinks and food water together, that no plan passes:
// a limit, not room left to fill.
type Ceiling struct {
	FluidL float64
	RateLH float64
	Reason Reason
}

// CeilingOf returns the ceiling of a length: the low end of the planned
// loss's 95 % range, for a test as for an estimate; past 3 h also what leaves
// a deficit of 1 % of body mass (our proposal), in coarse steps where the mass is
// hidden. Breathing does not raise it.
func (p *Planner) CeilingOf(l Length) Ceiling {
	h := p.hours(l)
	c := Ceiling{FluidL: p.basis.SweatRate.Low * h, Reason: LowEnd}
	if p.session.Minutes[l] > evidence.LongSession {
		long := p.basis.SweatRate.Value*h - evidence.LongSessionAtMost/100*p.basis.Body.MassKg
		if p.basis.Body.Hidden {
			long = proposal.FloorTo(long, evidence.HiddenLimitStep)
		}
		if long < c.FluidL {
			c.FluidL, c.Reason = max(0, long), LongSession
		}
	}
	if measured := p.measuredLH * h; measured > c.FluidL {
		c.FluidL, c.Reason = measured, Measured
	}
	c.RateLH = c.FluidL / h
	return c
}

// Move sets one slot of a mix to a value, as far as the ceiling lets it:
// over-drinking cannot be planned, and added salt not beyond the sodium that
// is lost. The reason says why it stopped short. A move downwards is always free, also
// from a habit that lies above the ceiling.
func (p *Planner) Move(l Length, mix Mix, s Slot, to float64) (Mix, Reason) {
	if s < 0 || s >= Slots || !p.menu[s].InUse || math.IsNaN(to) {
		return mix, NotInUse
	}
	reason := Free
	if to < 0 {
		to, reason = 0, NotNegative
	}
	if to > mix[s] {
		most, why := p.most(l, mix, s)
		if to > most {
			to, reason = max(most, mix[s]), why
		}
	}
	mix[s] = to
	return mix, reason
}

// Most returns the largest value a slot may be moved to with the others held.
func (p *Planner) Most(l Length, mix Mix, s Slot) (most float64, why Reason) {
	if s < 0 || s >= Slots || !p.menu[s].InUse {
		return 0, NotInUse
	}
	return p.most(l, mix, s)
}

func (p *Planner) most(l Length, mix Mix, s Slot) (float64, Reason) {
	item := &p.menu[s]
	most, why := item.Most, SliderEnd
	lower := func(room, each float64, reason Reason) {
		if each <= 0 {
			return
		}
		if x := proposal.FloorTo(room/each, p.grain(s)); x < most {
			most, why = x, reason
		}
	}
	ceiling := p.CeilingOf(l)
	lower(ceiling.FluidL-p.fluidBeside(mix, s), item.Unit.fluidL(), ceiling.Reason)
	if s == Salt && p.basis.Sodium.Known {
		lost := p.basis.SweatRate.Value * p.basis.Sodium.Value * evidence.SodiumMolarMass * p.hours(l)
		lower(lost-p.sodiumBeside(mix, s), item.Unit.SodiumMg, SodiumLost)
	}
	return most, why
}

// grain is the finest amount of a slot that makes sense: 1 mL, or a step.
func (p *Planner) grain(s Slot) float64 {
	if s.IsDrink() {
		return evidence.RoundFluid
	}
	return p.menu[s].Step
}

// fluidBeside is the fluid of all slots but one, L.
func (p *Planner) fluidBeside(mix Mix, but Slot) float64 {
	sum := 0.0
	for s := range p.menu {
		if Slot(s) != but && p.menu[s].InUse {
			sum += p.menu[s].Unit.fluidL() * mix[s]
		}
	}
	return sum
}

// sodiumBeside is the sodium of all slots but one, mg.
func (p *Planner) sodiumBeside(mix Mix, but Slot) float64 {
	sum := 0.0
	for s := range p.menu {
		if Slot(s) != but && p.menu[s].InUse {
			sum += p.menu[s].Unit.SodiumMg * mix[s]
		}
	}
	return sum
}

// Scaled turns a mix for one length into one for another: the same rates,
// rounded down to the slots' increments, held under that length's ceiling by
// taking from the slots in their order, water first.
func (p *Planner) Scaled(mix Mix, from, to Length) Mix {
	ratio := p.session.Minutes[to] / p.session.Minutes[from]
	for s := range mix {
		if p.menu[s].InUse && ratio != 1 {
			mix[s] = proposal.FloorTo(mix[s]*ratio, p.menu[s].Step)
		}
	}
	return p.UnderCeiling(to, mix)
}

// UnderCeiling takes from a mix what lies above the ceiling, from the drinks
// in their order, water first, then the foods, in whole increments.
func (p *Planner) UnderCeiling(l Length, mix Mix) Mix {
	ceiling := p.CeilingOf(l).FluidL
	for s := range p.menu {
		each := p.menu[s].Unit.fluidL()
		over := p.fluidBeside(mix, -1) - ceiling
		if !p.menu[s].InUse || each <= 0 || !proposal.Passes(over, 0) {
			continue
		}
		step := p.menu[s].Step
		mix[s] = max(0, mix[s]-proposal.CeilTo(over/each, step))
	}
	return mix
}
