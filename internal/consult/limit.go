package consult

import (
	"errors"
	"fmt"
	"math"

	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// ErrOverLimit means: a step would be done that is above the limit.
var ErrOverLimit = errors.New("the step is above the limit")

// ErrBasisOpen means: a step cannot be held against the limit, because what the
// plan is based on cannot be calculated with at present.
var ErrBasisOpen = errors.New("the limit cannot be calculated at present")

// HeldStep is a step of a plan held against the limit.
type HeldStep struct {
	// Place of the step, 1 for the first; Option is its mix.
	Place  int
	Option record.Option
	// FluidL is what it has to drink, with the water in foods; LimitL is the lower
	// of the limit it was agreed on and the limit by the present records.
	FluidL, LimitL float64
	// Over: it is above the limit. Salt: it adds salt that is withheld.
	Over, Salt bool
}

// Over reports whether a mix is above the limit of a case: of the calculation it
// was agreed on, or of the present one where a test or a product was corrected.
// Every amount that is agreed, decided on or printed is asked here.
func (c Case) Over(mix plan.Mix) bool {
	if c.Planner.Evaluate(plan.Expected, mix).Guards.Stops() {
		return true
	}
	return c.Since.now != nil && c.Since.now.Evaluate(plan.Expected, mix).Guards.Stops()
}

// Gains reports whether with a mix more would be taken in than is lost.
func (c Case) Gains(mix plan.Mix) bool {
	if c.Planner.Evaluate(plan.Expected, mix).Guards.Has(plan.GainInMass) {
		return true
	}
	return c.Since.now != nil && c.Since.now.Evaluate(plan.Expected, mix).Guards.Has(plan.GainInMass)
}

// LimitL is the limit of what is drunk in the session, with the water in foods, L:
// the lower of the one agreed on and the present one.
func (c Case) LimitL() float64 {
	limit := c.Planner.CeilingOf(plan.Expected).FluidL
	if c.Since.now != nil {
		limit = math.Min(limit, c.Since.now.CeilingOf(plan.Expected).FluidL)
	}
	return limit
}

// HeldSteps holds every step of the plan against the limit, those already done
// too: a decision may go back to them.
func (c Case) HeldSteps() []HeldStep {
	var list []HeldStep
	for i, s := range c.Plan.Steps {
		o, ok := OptionByID(c.Plan, s.OptionID)
		if !ok {
			continue
		}
		mix := c.MixOf(o)
		fluid := c.Planner.Evaluate(plan.Expected, mix).Fluid
		list = append(list, HeldStep{
			Place: i + 1, Option: o, FluidL: fluid.DrunkL + fluid.FoodWaterL, LimitL: c.LimitL(), Over: c.Over(mix),
			Salt: len(c.Care.WithholdSalt) > 0 && o.Salt.Or(0) > 0,
		})
	}
	return list
}

// AboveLimit lists the steps that are above the limit.
func (c Case) AboveLimit() []HeldStep {
	var list []HeldStep
	for _, h := range c.HeldSteps() {
		if h.Over {
			list = append(list, h)
		}
	}
	return list
}

// MayBe returns [ErrOverLimit] where the step in force of a plan of this case is
// above the limit, and [ErrBasisOpen] where that cannot be told.
func (c Case) MayBe(p record.Plan) error {
	if c.Since.Gone {
		return fmt.Errorf("do plan %s: %w", p.ID, ErrBasisOpen)
	}
	o, ok := InForce(p)
	if ok && c.Over(c.MixOf(o)) {
		return fmt.Errorf("do %q of plan %s: %w", o.Name, p.ID, ErrOverLimit)
	}
	return nil
}

// Decide keeps a decision as [Decide] does, unless the step that would then be in
// force is above the limit; the plan then stays as it is. A step stays where it is
// while it cannot be held against the limit: only going back or on is refused.
func (c Case) Decide(p *record.Plan, r record.Review) error {
	next := p.Clone()
	Decide(&next, r)
	if err := c.MayBe(next); err != nil && !(errors.Is(err, ErrBasisOpen) && r.Decision == record.DecisionHold) {
		return err
	}
	*p = next
	return nil
}

// TakeBack takes a decision back as [TakeBack] does, unless the step that would
// then be in force is above the limit. ok is false where there is no decision.
func (c Case) TakeBack(p *record.Plan, r record.Review) (ok bool, err error) {
	next := p.Clone()
	if !TakeBack(&next, r) {
		return false, nil
	}
	if err := c.MayBe(next); err != nil {
		return false, err
	}
	*p = next
	return true, nil
}

// MayAgree returns [ErrOverLimit] where an option of the case, or any step of its
// plan, is above the limit: a plan is then not agreed.
func (c Case) MayAgree(o record.Option) error {
	if c.Over(c.MixOf(o)) {
		return fmt.Errorf("agree %q of plan %s: %w", o.Name, c.Plan.ID, ErrOverLimit)
	}
	if above := c.AboveLimit(); len(above) > 0 {
		return fmt.Errorf("agree step %d of plan %s: %w", above[0].Place, c.Plan.ID, ErrOverLimit)
	}
	return nil
}

// ForMinutes is a mix of the expected session for one of another length: the same
// rates, held under what is lost in it by the calculation agreed on and by the
// present one. It returns the errors of [Case.Lasting].
func (c Case) ForMinutes(mix plan.Mix, minutes float64) (Case, plan.Length, plan.Mix, error) {
	long, length, err := c.Lasting(minutes)
	if err != nil {
		return c, length, mix, err
	}
	mix = long.Planner.Scaled(mix, plan.Expected, length)
	if c.Since.now == nil {
		return long, length, mix, nil
	}
	now := c
	now.Planner = c.Since.now
	if now, length, err = now.Lasting(minutes); err != nil {
		return c, length, mix, err
	}
	return long, length, now.Planner.UnderCeiling(length, mix), nil
}
