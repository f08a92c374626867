package proposal

import (
	"math"

	"ebbwell/internal/evidence"
)

// upset reports a stomach so bad that nobody holds what was taken, let alone adds to it.
func (c *Case) upset() bool {
	return c.Stomach.Known && !Passes(evidence.StepStomachBad, c.Stomach.Value)
}

// eased is the habit one step back: fewer gels, or where none were taken water in place of
// some of a drink, or else less food. Who took water alone holds it.
func (c *Case) eased() Mix {
	m := c.Habit
	for _, k := range [...]Kind{Gel, Drink, Food} {
		for i := range m {
			src := &c.Sources[i]
			if src.Kind == k && !src.Fixed && Passes(m[i], 0) && src.CarbohydrateG > 0 {
				c.less(&m, i)
				return m
			}
		}
	}
	return m
}

// less takes away of a source what comes nearest to a step of carbohydrate. Water takes
// the place of a drink.
func (c *Case) less(m *Mix, i int) {
	src := &c.Sources[i]
	unit, least := src.portion(), 0.0
	if src.Kind == Drink {
		unit, least = evidence.ProposalDrink, c.grainsOf(true).least
	}
	x := min(m[i], unit*max(1, math.Round(c.stepG()/(unit*src.CarbohydrateG))))
	if Passes(least, m[i]-x) {
		x = m[i]
	}
	m[i] -= x
	for w := range m {
		if src.Kind == Drink && c.Sources[w].Kind == Water && !c.Sources[w].Fixed {
			m[w] += x
			return
		}
	}
}

// back proposes that step, and nothing after it: what was taken with a bad stomach is
// proposed from again when it is calm.
func (o *Proposal) back(p *program) {
	eased := p.c.SumOf(o.Cut)
	p.base = p.c.Habit
	o.Routes[DrinksAlone] = Route{
		Exists: true, Aim: o.Cut, Misses: p.misses(&eased), Cost: p.costFrom(p.c.Habit, o.Cut), Steps: []Step{{Mix: o.Cut, Back: true}},
	}
	o.Outcome = Change
}
