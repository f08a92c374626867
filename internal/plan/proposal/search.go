package proposal

import (
	"slices"

	"ebbwell/internal/evidence"
)

// found is the best mix of a search.
type found struct {
	ok     bool
	mix    Mix
	misses Misses
	cost   float64
	// tried is how many amounts the search looked at.
	tried int
}

// search walks through the amounts, slot by slot, foods first and water last.
type search struct {
	p     *program
	order []int
	// rest is what the slots from a place in the order on can add at most, kept what
	// they add where they stay as they are.
	rest []most
	kept []Sum
	best found
	mix  Mix
	// tried counts the amounts that were looked at.
	tried int
}

// most is what slots can add at most: drinks in mL with their carbohydrate, foods and
// gels with theirs, and the carbohydrate of the richest portion and gel.
type most struct{ drunk, foodWater, drinks, food, portion, gel, sodium float64 }

// solve finds the mix that misses least fluid, then least carbohydrate, then
// least sodium, then costs least. Of those that cost the same it takes the one
// found first, which has changed the fewest slots from their base.
func (p *program) solve() found {
	s := newSearch(p)
	s.walk(0, Sum{}, 0, 0)
	s.best.tried = s.tried
	return s.best
}

// newSearch is a search that has not begun.
func newSearch(p *program) *search {
	s := &search{p: p, mix: p.base, order: p.order()}
	s.rest, s.kept = make([]most, len(s.order)+1), make([]Sum, len(s.order)+1)
	for k := len(s.order) - 1; k >= 0; k-- {
		slot := s.order[k]
		s.rest[k] = s.rest[k+1].plus(&p.c.Sources[slot], p.values[slot])
		s.kept[k] = s.kept[k+1]
		s.kept[k].add(&p.c.Sources[slot], p.base[slot])
	}
	return s
}

// order lists the slots of the menu as they are tried.
func (p *program) order() []int {
	var list []int
	for i := range p.c.Sources {
		if p.c.Sources[i].Kind != None {
			list = append(list, i)
		}
	}
	slices.SortFunc(list, func(a, b int) int {
		if d := p.place(a) - p.place(b); d != 0 {
			return d
		}
		return b - a
	})
	return list
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
	m.drinks += s.DrinksG
	m.food += s.FoodG
	m.sodium += s.SodiumMg
	switch src.Kind {
	case Gel:
		m.gel = max(m.gel, src.CarbohydrateG)
	case Food:
		m.portion = max(m.portion, src.CarbohydrateG)
	case None, Water, Drink, Salt:
	}
	return m
}

// with adds what was summed up apart.
func (s *Sum) with(o *Sum) {
	s.DrunkML += o.DrunkML
	s.FoodWaterML += o.FoodWaterML
	s.CarbohydrateG += o.CarbohydrateG
	s.OneSourceG += o.OneSourceG
	s.DrinksG += o.DrinksG
	s.FoodG += o.FoodG
	s.SodiumMg += o.SodiumMg
	s.Gels += o.Gels
	s.Portions += o.Portions
	s.SaltG += o.SaltG
	s.GelWaterML += o.GelWaterML
}

// walk tries every amount of the next slot. Once as many things have changed as may,
// the others stay as they are.
func (s *search) walk(k int, sum Sum, cost float64, things int) {
	if k == len(s.order) || things == s.p.things {
		sum.with(&s.kept[k])
		s.keep(&sum, cost)
		return
	}
	slot := s.order[k]
	for _, x := range s.p.values[slot] {
		s.tried++
		n := things
		if !alike(x, s.p.base[slot]) {
			n++
		}
		if n > s.p.things {
			continue
		}
		next, paid := sum, cost+s.p.cost(slot, x)
		next.add(&s.p.c.Sources[slot], x)
		if !s.hopeful(&next, paid, k+1) {
			continue
		}
		s.mix[slot] = x
		s.walk(k+1, next, paid, n)
	}
	s.mix[slot] = s.p.base[slot]
}

// hopeful reports whether what is chosen so far can still be completed to
// something better than the best.
func (s *search) hopeful(sum *Sum, cost float64, k int) bool {
	p, rest := s.p, &s.rest[k]
	switch {
	case Passes(sum.DrunkML, p.mostML), Passes(max(sum.DrunkML, p.leastML)+sum.FoodWaterML, p.intakeML),
		Passes(sum.CarbohydrateG, p.mostG), Passes(sum.SodiumMg, p.mostSodiumMg),
		Passes(sum.Gels, p.gels), Passes(sum.Portions, p.portions),
		Passes(p.leastML, sum.DrunkML+rest.drunk), Passes(p.leastG, s.fuel(sum, rest)),
		Passes(p.leastFoodG, sum.FoodG+rest.food):
		return false
	case !s.best.ok:
		return true
	}
	most := Sum{DrunkML: min(p.mostML, sum.DrunkML+rest.drunk), FoodWaterML: sum.FoodWaterML + rest.foodWater}
	least := Misses{
		Fluid:        Begun(p.targetML-most.DrunkML-max(0, most.FoodWaterML-p.foodWaterFrom), p.increment),
		Carbohydrate: p.fuelMissing(s.fuel(sum, rest)),
	}
	least.Sodium = p.sodiumMissing(max(p.leastML, sum.DrunkML), min(p.mostSodiumMg, sum.SodiumMg+rest.sodium))
	asked := p.targetML - float64(s.best.misses.Fluid)*p.increment - max(0, most.FoodWaterML-p.foodWaterFrom)
	return s.better(least, cost+s.toMove(sum.DrunkML+s.kept[k].DrunkML, asked))
}

// toMove is the least that it costs to bring what is drunk, the rest as it is, within
// its bounds and to what the best reaches: one thing changed, by the cheapest there is.
func (s *search) toMove(drunk, asked float64) float64 {
	least := max(s.p.leastML, asked)
	switch {
	case Passes(drunk, s.p.mostML):
		return evidence.CostThing + (drunk-s.p.mostML)*evidence.CostWater/evidence.CostFluid
	case Passes(least, drunk):
		return evidence.CostThing + (least-drunk)*evidence.CostWater/evidence.CostFluid
	}
	return 0
}

// fuel is the most carbohydrate that what is chosen so far can come to, g: drinks to
// the strength they may have, gels and portions as many as there is time for.
func (s *search) fuel(sum *Sum, rest *most) float64 {
	p := s.p
	drinks := min(rest.drinks, max(0, p.strength*p.mostML-sum.DrinksG))
	food := min(rest.food, max(0, p.gels-sum.Gels)*rest.gel+max(0, p.portions-sum.Portions)*rest.portion)
	return min(p.mostG, sum.CarbohydrateG+drinks+food)
}

// better reports whether misses and a cost beat the best.
func (s *search) better(m Misses, cost float64) bool {
	if m != s.best.misses {
		return m.less(s.best.misses)
	}
	return Passes(s.best.cost, cost)
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
