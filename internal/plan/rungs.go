package plan

import (
	"math"
	"slices"

	"ebbwell/internal/plan/smallest"
)

// totals of a mix that a ladder moves, per hour: L/h drunk and g/h.
type totals struct{ fluid, carbohydrate float64 }

func (p *Planner) totalsOf(l Length, m Mix) totals {
	h := p.hours(l)
	var t totals
	for s := range p.menu {
		if item := &p.menu[s]; item.InUse {
			t.fluid += item.Unit.FluidL * m[s] / h
			t.carbohydrate += item.Unit.CarbohydrateG * m[s] / h
		}
	}
	return t
}

// mostRungs bounds a ladder; more is no way to practise.
const mostRungs = 60

// rungs lists the mixes from the first rung to the aim. A habit above the
// ceiling comes down at once.
func (p *Planner) rungs(c Climb) []Mix {
	if c.Habit == c.Aim {
		return nil
	}
	var list []Mix
	if !p.Evaluate(c.Length, c.Habit).Guards.Stops() {
		gap := p.totalsOf(c.Length, c.Aim).fluid - p.totalsOf(c.Length, c.Habit).fluid
		rule := p.coarse(c, totals{fluid: c.Rules.fluid(gap), carbohydrate: c.Rules.CarbohydrateGH})
		for before := c.Habit; len(list) < mostRungs; {
			mix, ok := p.rung(c, rule, before)
			if !ok {
				break
			}
			list = append(list, mix)
			before = mix
		}
	}
	return append(list, c.Aim)
}

// coarse lifts the rules to one increment of the coarsest slot that moves: no
// step can be finer.
func (p *Planner) coarse(c Climb, rule totals) totals {
	for s := range p.menu {
		item := &p.menu[s]
		if !item.InUse || c.Habit[s] == c.Aim[s] {
			continue
		}
		each := item.Step / p.hours(c.Length)
		if rule.fluid > 0 {
			rule.fluid = max(rule.fluid, item.Unit.FluidL*each)
		}
		if rule.carbohydrate > 0 {
			rule.carbohydrate = max(rule.carbohydrate, item.Unit.CarbohydrateG*each)
		}
	}
	return rule
}

// stepsFor is how many steps of a size a gap takes.
func stepsFor(gap, size float64) float64 {
	if !(size > 0) {
		return 1
	}
	return max(1, math.Ceil(math.Abs(gap)/size-hair))
}

// rung is the next mix on the way from the one before: the one in whole
// increments nearest to an even part of what is left, no slot, no fluid and no
// carbohydrate going back or beyond the aim, no larger a step than the rules.
// ok is false when the aim itself is the next, or nothing lies between.
func (p *Planner) rung(c Climb, rule totals, before Mix) (mix Mix, ok bool) {
	from, to := p.totalsOf(c.Length, before), p.totalsOf(c.Length, c.Aim)
	left := max(stepsFor(to.fluid-from.fluid, rule.fluid), stepsFor(to.carbohydrate-from.carbohydrate, rule.carbohydrate))
	if left <= 1 {
		return mix, false
	}
	q := p.rungProblem(c, rule, before, left)
	answer := q.Solve()
	if !answer.Found || mixOf(answer.Values) != before {
		return mixOf(answer.Values), answer.Found && mixOf(answer.Values) != c.Aim
	}
	best := math.Inf(1)
	for s := range q.Slots { // the nearest that is not where one stands
		moved := q
		moved.Slots = slices.Clone(q.Slots)
		moved.Slots[s].Values = slices.DeleteFunc(slices.Clone(q.Slots[s].Values), func(v float64) bool { return v == before[s] })
		if len(moved.Slots[s].Values) == 0 {
			continue
		}
		if a := moved.Solve(); a.Found && a.Cost < best {
			best, mix = a.Cost, mixOf(a.Values)
		}
	}
	return mix, best < math.Inf(1) && mix != c.Aim
}

// rungProblem states the search for one rung.
func (p *Planner) rungProblem(c Climb, rule totals, before Mix, left float64) smallest.Problem {
	q := smallest.Problem{Slots: make([]smallest.Slot, Slots)}
	fluid, carbohydrate := make([]float64, Slots), make([]float64, Slots)
	h := p.hours(c.Length)
	for s := range q.Slots {
		item, x := &p.menu[s], before[s]
		q.Slots[s] = smallest.Slot{Values: []float64{x}, Home: x}
		if !item.InUse {
			continue
		}
		q.Slots[s] = smallest.Slot{
			Values: increments(x, c.Aim[s], item.Step),
			Home:   x + (c.Aim[s]-x)/left, Cost: 1 / item.Step,
		}
		fluid[s], carbohydrate[s] = item.Unit.FluidL/h, item.Unit.CarbohydrateG/h
	}
	from, to := p.totalsOf(c.Length, before), p.totalsOf(c.Length, c.Aim)
	q.Rows = append(forward(fluid, from.fluid, to.fluid, rule.fluid), forward(carbohydrate, from.carbohydrate, to.carbohydrate, rule.carbohydrate)...)
	return q
}

// forward holds a total between where it is and the aim, and to one step.
func forward(a []float64, from, to, size float64) []smallest.Row {
	low, high := min(from, to), max(from, to)
	if size > 0 {
		low, high = max(low, from-size), min(high, from+size)
	}
	minus := make([]float64, len(a))
	for i := range a {
		minus[i] = -a[i]
	}
	return []smallest.Row{{A: a, Most: high}, {A: minus, Most: -low}}
}

// increments lists both ends and the whole increments between them, rising.
func increments(a, b, step float64) []float64 {
	low, high := min(a, b), max(a, b)
	list := []float64{low}
	for k := math.Ceil(low / step); k*step < high-hair*step; k++ {
		if k*step > low+hair*step {
			list = append(list, k*step)
		}
	}
	if high > low {
		list = append(list, high)
	}
	return list
}
