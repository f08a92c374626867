package proposal

import (
	"cmp"
	"math"
	"slices"

	"ebbwell/internal/evidence"
)

// grains are the increments of a session.
type grains struct {
	water, drink float64 // mL
	least        float64 // mL of a source that is taken at all
}

// grainsOf works out the increments; a rung of a ladder takes water in the finer.
func (c *Case) grainsOf(rung bool) grains {
	g := grains{water: evidence.ProposalWater, drink: evidence.ProposalDrink, least: evidence.ProposalLeast}
	if c.long() && !rung {
		g.water = evidence.ProposalWaterLong
	}
	if c.Minutes < evidence.ProposalShort {
		g.least = evidence.ProposalLeastShort
	}
	if c.Minutes >= evidence.ProposalLong && !Passes(evidence.ProposalDrinkStep, c.stepML()) {
		g.drink, g.least = evidence.ProposalDrinkLong, evidence.ProposalDrinkLong
	}
	if own := c.DrinkStepML; own > 0 && !Passes(own, c.stepML()) {
		g.water, g.drink, g.least = own, own, max(own, evidence.ProposalLeast)
		if c.Minutes < evidence.ProposalShort {
			g.least = max(own, evidence.ProposalLeastShort)
		}
	}
	return g
}

// of a source: the increment, the least that is taken at all, and the least move.
func (g grains) of(src *Source) (step, least, move float64) {
	switch src.Kind {
	case Water:
		return g.water, g.least, evidence.ProposalWater
	case Drink:
		return g.drink, g.least, evidence.ProposalWater
	case Gel, Food: // one and a half become two
		return src.portion(), src.portion(), evidence.PortionIncrement
	case Salt:
		step = evidence.ProposalSalt
	case None:
		step = 1
	}
	return step, step, step
}

// portion is the smallest part of a food that is taken: a half, or a whole where nobody
// halves it.
func (src *Source) portion() float64 {
	if src.Whole || src.Kind == Gel {
		return 1
	}
	return evidence.PortionIncrement
}

// between lists the amounts of a source from low to high that differ enough from
// home, and home itself, home first and then by distance.
func (g grains) between(src *Source, low, high, home float64) []float64 {
	step, least, move := g.of(src)
	list := []float64{home}
	for down, up := wholes(home, step), wholes(home, step)+1; ; down, up = down-1, up+1 {
		if Passes(low, down*step) && Passes(up*step, high) {
			return list
		}
		for _, x := range [...]float64{down * step, up * step} {
			inside := !Passes(max(0, low), x) && !Passes(x, high)
			if inside && (!Passes(x, 0) || !Passes(least, x)) && !Passes(move, math.Abs(x-home)) {
				list = append(list, x)
			}
		}
	}
}

// open fills in the amounts of the aim: what may not change stays at the base.
// Foods change on the way with food only.
func (p *program) open(food bool) {
	g := p.c.grainsOf(false)
	if p.fine {
		g.water = min(g.water, evidence.ProposalWater)
	}
	for i := range p.values {
		src, home := &p.c.Sources[i], p.base[i]
		p.values[i] = []float64{home}
		if !p.mayChange(i, food) {
			continue
		}
		if bottled := src.Kind == Water || src.Kind == Drink; bottled && len(p.c.Bottles) > 0 {
			least := p.leastOf(i)
			p.values[i] = slices.DeleteFunc(bottleSums(p.c.Bottles, p.mostOf(i), home), func(x float64) bool { return Passes(least, x) })
			continue
		}
		p.values[i] = g.between(src, p.leastOf(i), p.mostOf(i), home)
	}
}

// bottleSums lists home and what whole bottles add up to, nearest to home first.
func bottleSums(sizes []float64, most, home float64) []float64 {
	n := int(wholes(most, 1))
	reached := make([]bool, n+1)
	reached[0] = true
	list := []float64{home}
	for v := range reached {
		for _, size := range sizes {
			if b := int(math.Round(size)); b > 0 && v >= b && reached[v-b] {
				reached[v] = true
			}
		}
		if reached[v] && !alike(float64(v), home) {
			list = append(list, float64(v))
		}
	}
	slices.SortStableFunc(list, func(a, b float64) int { return cmp.Compare(math.Abs(a-home), math.Abs(b-home)) })
	return list
}

// mayChange tells whether a source may change on a route.
func (p *program) mayChange(i int, food bool) bool {
	src := &p.c.Sources[i]
	switch src.Kind {
	case None:
		return false
	case Gel, Food:
		return food && !src.Fixed
	case Drink:
		return !src.Fixed && !(p.c.NoNewDrink && !Passes(p.c.Habit[i], 0))
	case Water, Salt:
	}
	return !src.Fixed
}

// leastOf is the smallest amount of a source that is looked at: no way takes
// food away, and after a cut what is left stays. In a very long session some of the
// plain water that is drunk stays: nobody goes without for so long.
func (p *program) leastOf(i int) float64 {
	switch k := p.c.Sources[i].Kind; {
	case k == Gel || k == Food:
		return p.base[i]
	case k == Water && p.c.Minutes > evidence.WaterKeptPast:
		return min(evidence.WaterKept, p.base[i])
	}
	return 0
}

// mostOf is the largest amount of a source that is looked at.
func (p *program) mostOf(i int) float64 {
	c := p.c
	habit := c.Habit[i]
	switch c.Sources[i].Kind {
	case Water, Drink:
		return max(p.mostML, p.base[i])
	case Gel:
		if c.young() {
			return habit
		}
		return max(p.gels, habit)
	case Food:
		return max(1, min(evidence.FoodKindMost, evidence.FoodKindAnHour*c.hours()), habit)
	case Salt:
		return max(p.saltPerML*p.mostML, habit)
	case None:
	}
	return habit
}
