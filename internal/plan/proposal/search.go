package proposal

import (
	"math"
	"slices"

	"ebbwell/internal/evidence"
)

// found is the best mix of a search.
type found struct {
	ok     bool
	mix    Mix
	misses Misses
	cost   float64
}

// search walks through the amounts, slot by slot, foods first and water last.
type search struct {
	p     *program
	order []int
	// rest is what the slots from a place in the order on can add at most.
	rest []most
	best found
	mix  Mix
}

// most is what slots can add at most.
type most struct{ drunk, foodWater, carbohydrate, food, sodium float64 }

// solve finds the mix that misses least fluid, then least carbohydrate, then
// least sodium, then costs least. Of those that cost the same it takes the one
// found first, which has changed the fewest slots from their base.
func (p *program) solve() found {
	s := &search{p: p, mix: p.base}
	for i := range p.c.Sources {
		if p.c.Sources[i].Kind != None {
			s.order = append(s.order, i)
		}
	}
	slices.SortFunc(s.order, func(a, b int) int {
		if d := p.place(a) - p.place(b); d != 0 {
			return d
		}
		return b - a
	})
	s.rest = make([]most, len(s.order)+1)
	for k := len(s.order) - 1; k >= 0; k-- {
		s.rest[k] = s.rest[k+1].plus(&p.c.Sources[s.order[k]], p.values[s.order[k]])
	}
	s.walk(0, Sum{}, 0, 0)
	return s.best
}

// place of a slot in the order of the search. Of two that cost the same the
// later in the order is found first: gels before food, food before gels for those under
// 18, and the earlier on the menu.
func (p *program) place(slot int) int {
	gel, food := 1, 0
	if p.c.Age.Known && p.c.Age.Value < evidence.YoungUnder {
		gel, food = food, gel
	}
	switch p.c.Sources[slot].Kind {
	case Food:
		return food
	case Gel:
		return gel
	case Salt:
		return 2
	case Drink:
		return 3
	case Water, None:
	}
	return 4
}

// plus adds the largest amount of a slot.
func (m most) plus(src *Source, values []float64) most {
	x := slices.Max(values)
	var s Sum
	s.add(src, x)
	m.drunk += s.DrunkML
	m.foodWater += s.FoodWaterML
	m.carbohydrate += s.CarbohydrateG
	m.food += s.FoodG
	m.sodium += s.SodiumMg
	return m
}

// walk tries every amount of the next slot.
func (s *search) walk(k int, sum Sum, cost float64, things int) {
	if k == len(s.order) {
		s.keep(&sum, cost)
		return
	}
	slot := s.order[k]
	for _, x := range s.p.values[slot] {
		n := things
		if math.Abs(x-s.p.base[slot]) > hair {
			n++
		}
		if n > s.p.things {
			continue
		}
		next, paid := sum, cost+s.p.cost(slot, x)
		next.add(&s.p.c.Sources[slot], x)
		if !s.hopeful(&next, paid, &s.rest[k+1]) {
			continue
		}
		s.mix[slot] = x
		s.walk(k+1, next, paid, n)
	}
	s.mix[slot] = s.p.base[slot]
}

// hopeful reports whether what is chosen so far can still be completed to
// something better than the best.
func (s *search) hopeful(sum *Sum, cost float64, rest *most) bool {
	p := s.p
	slack := hair * (1 + p.intakeML)
	switch {
	case sum.DrunkML > p.mostML+slack, sum.DrunkML+sum.FoodWaterML > p.intakeML+slack,
		sum.CarbohydrateG > p.mostG+slack, sum.SodiumMg > p.mostSodiumMg+slack,
		sum.Gels > p.gels+hair, sum.Portions > p.portions+hair,
		sum.DrunkML+rest.drunk < p.leastML-slack, sum.CarbohydrateG+rest.carbohydrate < p.leastG-slack,
		p.leastFoodG >= 0 && sum.FoodG+rest.food < p.leastFoodG-slack:
		return false
	case !s.best.ok:
		return true
	}
	most := Sum{DrunkML: min(p.mostML, sum.DrunkML+rest.drunk), FoodWaterML: sum.FoodWaterML + rest.foodWater}
	least := Misses{
		Fluid:        begun(p.targetML-most.DrunkML-max(0, most.FoodWaterML-p.foodWaterFrom), p.increment),
		Carbohydrate: p.fuelMissing(min(p.mostG, sum.CarbohydrateG+rest.carbohydrate)),
	}
	return s.better(least, cost)
}

// better reports whether misses and a cost beat the best.
func (s *search) better(m Misses, cost float64) bool {
	if m != s.best.misses {
		return m.less(s.best.misses)
	}
	return cost < s.best.cost-hair
}

// keep takes a complete mix as the best when it is.
func (s *search) keep(sum *Sum, cost float64) {
	if !s.p.meets(sum) {
		return
	}
	misses := s.p.misses(sum)
	cost += s.p.off(sum.DrunkML)
	if !s.best.ok || s.better(misses, cost) {
		s.best = found{ok: true, mix: s.mix, misses: misses, cost: cost}
	}
}
