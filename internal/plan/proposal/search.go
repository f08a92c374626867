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
	// tried is how many amounts the search looked at.
	tried int
}

// search walks through the amounts, slot by slot, foods first and water last.
type search struct {
	p     *program
	order []int
	// stays is what the slots come to that may not change.
	stays Sum
	// rest is what the slots from a place in the order on can come to.
	rest []rest
	// floor is the least that can be missing at all.
	floor Misses
	best  found
	mix   Mix
	// tried counts the amounts that were looked at.
	tried int
}

// solve finds the mix that misses least fluid, then least carbohydrate, then
// least sodium, then costs least. Of those that cost the same it takes the one
// found first, which has changed the fewest slots from their base.
func (p *program) solve() found {
	s := newSearch(p)
	s.walk(0, s.stays, 0, 0)
	s.best.tried = s.tried
	return s.best
}

// newSearch is a search that has not begun.
func newSearch(p *program) *search {
	order := slices.DeleteFunc(p.order(), func(i int) bool { return len(p.values[i]) < 2 })
	s := &search{p: p, mix: p.base, order: order, rest: p.rests(order)}
	for i := range p.c.Sources {
		if !slices.Contains(order, i) {
			s.stays.add(&p.c.Sources[i], p.base[i])
		}
	}
	s.floor = s.least(&s.stays, &s.rest[0], p.things)
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

// windowed is how many amounts are worth a window.
const windowed = 6

// walk tries every amount of the next slot. Once as many things have changed as may,
// the others stay as they are.
func (s *search) walk(k int, sum Sum, cost float64, things int) {
	if k == len(s.order) || things == s.p.things {
		sum.with(&s.rest[k].kept)
		s.keep(&sum, cost)
		return
	}
	slot := s.order[k]
	w := anywhere()
	if len(s.p.values[slot]) >= windowed {
		w = s.window(&sum, k, s.p.things-things-1)
	}
	for _, x := range s.p.values[slot] {
		n := things
		if !alike(x, s.p.base[slot]) {
			if n++; w.leavesOut(x) {
				continue
			}
		}
		s.tried++
		next, paid := sum, cost+s.p.cost(slot, x)
		next.add(&s.p.c.Sources[slot], x)
		if !s.hopeful(&next, paid, k+1, s.p.things-n) {
			continue
		}
		s.mix[slot] = x
		s.walk(k+1, next, paid, n)
	}
	s.mix[slot] = s.p.base[slot]
}

// hopeful reports whether what is chosen so far can still be completed to
// something better than the best, with so many things changed as are left.
func (s *search) hopeful(sum *Sum, cost float64, k, left int) bool {
	rest := &s.rest[k]
	to := &rest.by[left]
	switch {
	case s.past(sum, to), s.short(sum, rest, left):
		return false
	case !s.best.ok:
		return true
	}
	return s.better(s.least(sum, rest, left), cost+s.toPay(sum, rest, to))
}

// past reports that what is chosen passes a limit, whatever comes.
func (s *search) past(sum *Sum, to *reach) bool {
	p, least := s.p, &to.least
	drinks, most := sum.DrunkML+least[partDrunk], sum.DrunkML+to.most[partDrunk]
	gel, pieces := sum.Gels+least[partGels], sum.Gels+sum.Portions+least[partGels]+least[partPortions]
	salted := sum.SaltG + least[partSalt]
	return Passes(drinks, p.mostML) || Passes(max(drinks, p.leastML)+sum.FoodWaterML+least[partFoodWater], p.intakeML) ||
		Passes(sum.CarbohydrateG+least[partFuel], p.mostG) || Passes(sum.OneSourceG+least[partOneSource], p.mostOneG) ||
		Passes(sum.SodiumMg+least[partSodium], p.mostSodiumMg) || Passes(gel, p.gels) || Passes(sum.Portions+least[partPortions], p.portions) ||
		Passes(sum.DrinksG-p.strength*sum.DrunkML+least[partTooStrong], 0) ||
		Passes(gel, p.from.Gels) && Passes(p.gelWater*sum.Gels-sum.GelWaterML+least[partTooDry], 0) ||
		Passes(pieces, p.from.Gels+p.from.Portions) && Passes(pieces*evidence.PieceWater, most) ||
		Passes(salted, p.saltG) && Passes(salted, p.saltPerML*most)
}

// short reports that less comes than there has to be.
func (s *search) short(sum *Sum, rest *rest, left int) bool {
	p, to := s.p, &rest.by[left]
	return Passes(p.leastML, sum.DrunkML+to.most[partDrunk]) || Passes(p.leastFoodG, sum.FoodG+to.most[partInFood]) ||
		Passes(p.leastG, s.fuel(sum, rest, left))
}

// least is the least that can be missing in the end.
func (s *search) least(sum *Sum, rest *rest, left int) Misses {
	p, to := s.p, &rest.by[left]
	most := min(p.mostML, sum.DrunkML+to.most[partDrunk])
	m := Misses{
		Fluid:        Begun(p.targetML-most-s.eaten(sum, to), p.increment),
		Carbohydrate: p.fuelMissing(s.fuel(sum, rest, left)),
	}
	salted := min(to.most[partSodium], rest.salted+rest.salty*max(0, most-sum.DrunkML))
	m.Sodium = p.sodiumMissing(max(p.leastML, sum.DrunkML+to.least[partDrunk]), min(p.mostSodiumMg, sum.SodiumMg+salted))
	return m
}

// eaten is the most food water that can count as fluid, mL.
func (s *search) eaten(sum *Sum, to *reach) float64 {
	return max(0, sum.FoodWaterML+to.most[partFoodWater]-s.p.foodWaterFrom)
}

// toPay is the least that has still to be paid to miss no more than the best does: for
// what has to come or go of drinks and what ends off the target, or for carbohydrate, or
// for sodium.
func (s *search) toPay(sum *Sum, rest *rest, to *reach) float64 {
	p := s.p
	kept, asked := sum.DrunkML+rest.kept.DrunkML, s.asked()-s.eaten(sum, to)
	room := p.mostML - kept
	salted := s.askedSodium(max(p.leastML, asked, sum.DrunkML+to.least[partDrunk]))
	return max(s.toMove(kept, asked),
		rest.forFuel.of(s.askedFuel()-sum.CarbohydrateG-rest.kept.CarbohydrateG, room),
		rest.forSodium.of(salted-sum.SodiumMg-rest.kept.SodiumMg, room))
}

// asked is the fluid with which no more is missing than in the best, mL.
func (s *search) asked() float64 {
	return s.p.targetML - float64(s.best.misses.Fluid)*s.p.increment
}

// askedFuel is the carbohydrate with which no more is missing than in the best, g.
func (s *search) askedFuel() float64 {
	return (s.p.fuelGH - evidence.FuelAimStep*float64(s.best.misses.Carbohydrate+1)) * s.p.c.hours()
}

// askedSodium is the sodium with which no more is missing than in the best, with no less
// than so much drunk, mg.
func (s *search) askedSodium(drunk float64) float64 {
	if !s.p.sodium {
		return 0
	}
	asked := s.p.sodiumMg
	if asked <= 0 && Passes(drunk, evidence.SodiumAimFrom) {
		asked = evidence.SodiumAimMet * drunk / 1000
	}
	return asked - evidence.SodiumAimStep*float64(s.best.misses.Sodium)*s.p.c.hours()
}

// toMove is the least that it costs to bring what is drunk, the rest as it is, within
// its bounds and to what the best reaches, and to end there: one thing changed, by the
// cheapest there is.
func (s *search) toMove(drunk, asked float64) float64 {
	end := min(max(drunk, s.p.leastML, asked), s.p.mostML)
	if alike(end, drunk) {
		return s.p.off(end)
	}
	return s.p.off(end) + evidence.CostThing + math.Abs(end-drunk)*leastPerML
}

// fuel is the most carbohydrate that what is chosen so far can come to, g, with so many
// things changed as are left, some of them food and the others drinks.
func (s *search) fuel(sum *Sum, rest *rest, left int) float64 {
	p, to := s.p, &rest.by[left]
	places := max(0, p.gels-sum.Gels)*rest.gel + max(0, p.portions-sum.Portions)*rest.portion
	best := 0.0
	for eaten := left; ; eaten-- {
		food := rest.by[eaten].most[partInFood]
		best = max(best, min(food, places)+s.inDrinks(sum, rest, left-eaten))
		if eaten == 0 {
			return min(p.mostG, sum.CarbohydrateG+min(to.most[partFuel], best))
		}
		if food <= rest.kept.FoodG { // there is none to eat
			eaten = 1
		}
	}
}

// inDrinks is the most carbohydrate of drinks to come with so many of them changed, g: no
// stronger than they may be, and no more than there is room for, of which a single one
// has only what the others leave.
func (s *search) inDrinks(sum *Sum, rest *rest, left int) float64 {
	p, to := s.p, &rest.by[left]
	most := min(p.mostML, sum.DrunkML+to.most[partDrunk])
	g := min(to.most[partInDrinks], max(0, p.strength*most-sum.DrinksG))
	if left == 1 {
		return min(g, rest.kept.DrinksG+rest.drink*max(0, p.mostML-sum.DrunkML-rest.kept.DrunkML))
	}
	return min(g, rest.drink*max(0, most-sum.DrunkML))
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
