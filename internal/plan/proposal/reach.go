package proposal

import (
	"math"
	"slices"

	"ebbwell/internal/evidence"
)

// part is one of the sums that are bounded, a place in a list of them.
type part int

// The parts: mL, g, mg and numbers as in Sum; of the last two the least is asked for.
const (
	partDrunk part = iota
	partFoodWater
	partFuel
	partOneSource
	partInDrinks
	partInFood
	partSodium
	partGels
	partPortions
	partSalt
	partTooStrong // g in drinks past the strength they may have
	partTooDry    // mL of water that gels lack
	allParts
)

// amounts holds a value for each part.
type amounts [allParts]float64

// amountsOf splits a sum into its parts.
func (p *program) amountsOf(s *Sum) amounts {
	return amounts{
		partDrunk: s.DrunkML, partFoodWater: s.FoodWaterML, partFuel: s.CarbohydrateG, partOneSource: s.OneSourceG, partInDrinks: s.DrinksG, partInFood: s.FoodG,
		partSodium: s.SodiumMg, partGels: s.Gels, partPortions: s.Portions, partSalt: s.SaltG,
		partTooStrong: s.DrinksG - p.strength*s.DrunkML, partTooDry: p.gelWater*s.Gels - s.GelWaterML,
	}
}

// mostThings is the most that ever changes at once.
const mostThings = int(evidence.ThingsChangedLong)

// reach is what slots can come to while no more than some of them change: each
// part by itself, the least and the most.
type reach struct{ least, most amounts }

// rest is what the slots from a place in the order on can come to.
type rest struct {
	// kept is what they come to as they are, by is where they get to with so many changed.
	kept Sum
	by   [mostThings + 1]reach
	// Of gels, portions and mL of drinks the most carbohydrate, g; of mL of drinks the
	// most sodium, mg, and what all else adds of it, mg.
	gel, portion, drink, salty, salted float64
	// forFuel and forSodium are what more of them costs.
	forFuel, forSodium dues
}

// dues is the least that more of a part costs.
type dues struct {
	// begin is for one thing that has some of it, each for a unit of it.
	begin, each float64
	// inFull is for a unit with what it takes to drink so much less of something else.
	inFull float64
}

// noWay is where nothing has any of it.
func noWay() dues { return dues{math.Inf(1), math.Inf(1), math.Inf(1)} }

// of is the least that a gap costs with so much room left to drink, mL.
func (d dues) of(gap, room float64) float64 {
	if !Passes(gap, 0) {
		return 0
	}
	return d.begin + max(gap*d.each, gap*d.inFull-room*leastPerML)
}

// rests works out what is left at every place of the order.
func (p *program) rests(order []int) []rest {
	list := make([]rest, len(order)+1)
	list[len(order)].forFuel, list[len(order)].forSodium = noWay(), noWay()
	var up, down [mostThings]amounts // the largest steps from the base, largest first
	for k := len(order) - 1; k >= 0; k-- {
		slot := order[k]
		src, base := &p.c.Sources[slot], p.base[slot]
		r := &list[k]
		*r = list[k+1]
		r.kept.add(src, base)
		var one Sum
		one.add(src, 1)
		unit := p.amountsOf(&one)
		low, high := slices.Min(p.values[slot])-base, slices.Max(p.values[slot])-base
		for i, u := range unit {
			a, b := u*low, u*high
			insert(&up, part(i), max(a, b, 0), 1)
			insert(&down, part(i), min(a, b, 0), -1)
		}
		r.richest(src, base+high)
		if high > 0 {
			r.forFuel.owe(p.c, src, base, src.CarbohydrateG)
			r.forSodium.owe(p.c, src, base, src.SodiumMg)
		}
		r.from(p.amountsOf(&r.kept), &up, &down)
	}
	return list
}

// insert puts a step where it belongs among the largest in one direction.
func insert(list *[mostThings]amounts, i part, x, sign float64) {
	for n := range list {
		if x*sign > list[n][i]*sign {
			x, list[n][i] = list[n][i], x
		}
	}
}

// from adds steps to what is kept, one after the other.
func (r *rest) from(kept amounts, up, down *[mostThings]amounts) {
	r.by[0] = reach{kept, kept}
	for n := range mostThings {
		a, b := &r.by[n], &r.by[n+1]
		for i := range b.least {
			b.least[i], b.most[i] = a.least[i]+down[n][i], a.most[i]+up[n][i]
		}
	}
}

// richest remembers the carbohydrate and the sodium of what may be taken.
func (r *rest) richest(src *Source, most float64) {
	if !Passes(most, 0) {
		return
	}
	switch src.Kind {
	case Gel:
		r.gel = max(r.gel, src.CarbohydrateG)
	case Food:
		r.portion = max(r.portion, src.CarbohydrateG)
	case Water, Drink:
		r.drink, r.salty = max(r.drink, src.CarbohydrateG), max(r.salty, src.SodiumMg)
		return
	case Salt, None:
	}
	r.salted += src.SodiumMg * most
}

// owe counts a source of which more may be taken, with so much in a unit of it.
func (d *dues) owe(c *Case, src *Source, base, holds float64) {
	if holds <= 0 {
		return
	}
	begin, unit, less := evidence.CostThing, c.unitCost(src.Kind), 0.0
	if !Passes(base, 0) {
		begin += evidence.CostNew
	}
	if src.Kind == Water || src.Kind == Drink {
		less = leastPerML
	}
	d.begin = min(d.begin, begin)
	d.each, d.inFull = min(d.each, unit/holds), min(d.inFull, (unit+less)/holds)
}

// leastPerML is the least that a mL more or less to drink costs.
const leastPerML = evidence.CostWater / evidence.CostFluid
