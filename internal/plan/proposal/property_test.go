package proposal

import (
	"fmt"
	"testing"
)

// reasons tells why a proposal may drink less than the habit.
func reasons(p *Proposal) bool { return p.Limits.Case == Less }

// broken says what is wrong with a mix that is proposed; empty when nothing is.
func broken(c *Case, p *Proposal, m Mix) string {
	habit, sum := c.SumOf(c.Habit), c.SumOf(m)
	limit := max(p.Limits.LimitML, 0)
	if p.Limits.Case != Less {
		limit = max(limit, habit.DrunkML+habit.FoodWaterML)
	}
	switch {
	case sum.DrunkML+sum.FoodWaterML > limit+1e-6:
		return "over the limit"
	case sum.DrunkML < noLess(p, habit.DrunkML)-inPlace(p, &habit, &sum)-1e-6 && !reasons(p):
		return "drinks less than the habit"
	case sum.CarbohydrateG > max(c.AdviceMost*c.hours(), habit.CarbohydrateG)+1e-6:
		return "more carbohydrate than the advice"
	case sum.CarbohydrateG < habit.CarbohydrateG-1e-6 && !reasons(p) && !c.upset() && sum.CarbohydrateG/c.hours() < p.Wants.AimGH-5:
		return "less carbohydrate than the habit, and under the aim"
	case sum.Gels > max(habit.Gels, c.placesForGels())+1e-6:
		return "more gels than there is time for"
	case p.Limits.Case != Less && sum.DrunkML > max(p.Limits.ReachML, habit.DrunkML)+1e-6:
		return "out of reach"
	}
	for i, x := range m {
		if k := c.Sources[i].Kind; (k == Water || k == Drink) && x != c.Habit[i] && x > 0 && x < 50 {
			return "a sip"
		}
	}
	return ""
}

// noLess is what a mix has at least after so much was drunk: where no fluid is added,
// an amount that was poured on no increment may come down to the increment below.
func noLess(p *Proposal, drunk float64) float64 {
	if p.Limits.TargetML > drunk {
		return drunk
	}
	return FloorTo(drunk, 50)
}

// inPlace is what food that brings water of its own may take the place of, where what
// was taken is the limit itself: one increment.
func inPlace(p *Proposal, before, now *Sum) float64 {
	if p.Limits.Case == Unsure && now.FoodWaterML > before.FoodWaterML {
		return 50
	}
	return 0
}

// TestNoWorseThanTheHabit: over drawn cases no aim and no step drinks less than the
// habit but where that may be too much, none passes the limit, and the steps go
// one way, two things at a time.
func TestNoWorseThanTheHabit(t *testing.T) {
	kinds := map[Outcome]int{}
	for seed := range uint64(3000) {
		c := seeded(seed).draw()
		p := Propose(&c)
		kinds[p.Outcome]++
		for way, r := range p.Routes {
			if !r.Exists {
				continue
			}
			if why := broken(&c, &p, r.Aim); why != "" {
				t.Errorf("seed %d, way %d: the aim %v is %s", seed, way, r.Aim, why)
			}
			for _, wrong := range brokenSteps(&c, &p, &r) {
				t.Errorf("seed %d, way %d: %s", seed, way, wrong)
			}
		}
	}
	for _, k := range []Outcome{Nothing, Change, DrinkLess, Stuck} {
		if kinds[k] < 20 {
			t.Errorf("outcome %d came %d times: the cases show one side only", k, kinds[k])
		}
	}
}

// brokenSteps says what is wrong with the steps of a route.
func brokenSteps(c *Case, p *Proposal, r *Route) (wrong []string) {
	if len(r.Steps) == 0 || len(r.Steps) > 6 {
		wrong = append(wrong, fmt.Sprintf("%d steps", len(r.Steps)))
	}
	before := c.Habit
	for k, s := range r.Steps {
		if why := broken(c, p, s.Mix); why != "" && !s.Held {
			wrong = append(wrong, fmt.Sprintf("step %d: %v is %s", k, s.Mix, why))
		}
		if n := moved(before, s.Mix); n > 2 && !s.Cut {
			wrong = append(wrong, fmt.Sprintf("step %d: %d things at once", k, n))
		}
		before = s.Mix
	}
	return wrong
}

func moved(a, b Mix) int {
	n := 0
	for i := range a {
		if a[i] != b[i] {
			n++
		}
	}
	return n
}

// TestStepsRise: with several drinks as with one, the steps of a way go one way: what is
// drunk in all never falls from one to the next and never passes the aim's, but where it
// comes down at once, and no carbohydrate is lost on the way.
func TestStepsRise(t *testing.T) {
	several := 0
	for seed := range uint64(3000) {
		c := seeded(seed).draw()
		p := Propose(&c)
		if p.Limits.Case == Less {
			continue
		}
		for way, r := range p.Routes {
			before := c.SumOf(c.Habit)
			aim := c.SumOf(r.Aim)
			habit, start := before.DrunkML, before
			for k, s := range r.Steps {
				now := c.SumOf(s.Mix)
				if now.DrunkML < min(noLess(&p, before.DrunkML), start.DrunkML-inPlace(&p, &start, &now))-1e-6 || now.DrunkML > max(habit, aim.DrunkML)+1e-6 {
					t.Errorf("seed %d, way %d, step %d: %g mL after %g, the aim has %g", seed, way, k, now.DrunkML, before.DrunkML, aim.DrunkML)
				}
				if now.CarbohydrateG < before.CarbohydrateG-1e-6 && aim.CarbohydrateG > before.CarbohydrateG {
					t.Errorf("seed %d, way %d, step %d: %g g after %g, the aim has %g", seed, way, k, now.CarbohydrateG, before.CarbohydrateG, aim.CarbohydrateG)
				}
				if len(r.Steps) > 1 && drinksOf(&c, s.Mix) > 1 {
					several++
				}
				before = now
			}
		}
	}
	if several < 50 {
		t.Errorf("%d steps with several drinks: the cases show nothing", several)
	}
}

// drinksOf counts the drinks of a mix, water among them.
func drinksOf(c *Case, m Mix) int {
	n := 0
	for i, x := range m {
		if k := c.Sources[i].Kind; x > 0 && (k == Water || k == Drink) {
			n++
		}
	}
	return n
}

// TestSearchIsExact holds the search against one that tries every mix.
func TestSearchIsExact(t *testing.T) {
	found := 0
	for seed := range uint64(400) {
		c := seeded(seed).draw()
		p := aimOf(&c, seed%2 == 1)
		if p.size() > 200_000 {
			continue
		}
		got, want := p.solve(), p.every()
		if got.ok != want.ok || got.misses != want.misses || got.ok && (got.cost-want.cost > 1e-9 || want.cost-got.cost > 1e-9) {
			t.Errorf("seed %d: %+v, every mix tried: %+v", seed, got, want)
		}
		if want.ok {
			found++
		}
	}
	if found < 100 {
		t.Errorf("%d compared", found)
	}
}

// aimOf is the search for the aim of a case.
func aimOf(c *Case, food bool) program {
	l, w := LimitsOf(c), WantsOf(c)
	p := c.aimed(&l, &w)
	p.base = c.Habit
	if l.Case == Less {
		p.base = c.cut(&l)
	}
	p.from = c.SumOf(p.base)
	p.open(food)
	if food {
		base := c.SumOf(p.base)
		p.leastFoodG = base.FoodG + max(0.25*(p.fuelGH*c.hours()-base.CarbohydrateG), 1)
	}
	return p
}

func (p *program) size() int {
	n := 1
	for i := range p.values {
		n *= max(1, len(p.values[i]))
		if n > 1<<30 {
			return n
		}
	}
	return n
}

// every tries every mix.
func (p *program) every() found {
	best, mix := found{}, p.base
	var try func(slot int)
	try = func(slot int) {
		if slot == Slots {
			things, cost := 0, 0.0
			for i := range mix {
				if d := mix[i] - p.base[i]; d > 1e-9 || d < -1e-9 {
					things++
				}
				cost += p.cost(i, mix[i])
			}
			sum := p.c.SumOf(mix)
			if things > p.things || !p.meets(&sum) {
				return
			}
			m := p.misses(&sum)
			cost += p.off(sum.DrunkML)
			if !best.ok || m.less(best.misses) || m == best.misses && cost < best.cost {
				best = found{ok: true, mix: mix, misses: m, cost: cost}
			}
			return
		}
		if len(p.values[slot]) == 0 {
			try(slot + 1)
			return
		}
		for _, x := range p.values[slot] {
			mix[slot] = x
			try(slot + 1)
		}
	}
	try(0)
	return best
}
