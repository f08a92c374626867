package proposal

import (
	"math"

	"ebbwell/internal/evidence"
)

// Step is one rung of a ladder.
type Step struct {
	Mix Mix
	// Held: the habit, held until the stomach is calm. Cut: the fluid that comes
	// down at once. Large: no smaller step lay between. Back: less than the habit, held until
	// a bad stomach is calm.
	Held, Cut, Large, Back bool
}

// halved reports that steps are half as large.
func (c *Case) halved() bool { return c.doubted() || c.PastLowSodium }

// doubted reports that the athlete is not confident of a change.
func (c *Case) doubted() bool {
	return c.Confidence.Known && c.Confidence.Value < evidence.ConfidenceEnough
}

// size of a step: a rate over the session, halved where steps are.
func (c *Case) size(perHour, usual float64) float64 {
	if perHour <= 0 {
		perHour = usual
	}
	if c.halved() {
		perHour *= evidence.SmallerStepShare / 100
	}
	return perHour * c.hours()
}

func (c *Case) stepML() float64 { return c.size(c.StepLH, evidence.StepFluidHigh) * 1000 }
func (c *Case) stepG() float64  { return c.size(c.StepGH, evidence.StepFuelHigh) }

// climb is the way from a base to an aim.
type climb struct {
	p         program
	base, aim Mix
	from, to  Sum
	mostG     float64 // of the session
	stepG     float64
}

// ladder lists the steps of a route. Half steps guard the fluid of those who had low
// blood sodium: where they would go on to the review, carbohydrate takes whole ones.
func (c *Case) ladder(p program, base, aim Mix, food bool) (steps []Step, wholeFuel bool) {
	steps = c.laddered(p, base, aim, food, c.stepG())
	if sure := *c; c.PastLowSodium && !c.doubted() && len(steps) >= int(evidence.StepsMost) {
		sure.PastLowSodium = false
		if whole := c.laddered(p, base, aim, food, sure.stepG()); len(whole) < len(steps) {
			return whole, true
		}
	}
	return steps, false
}

// laddered lists the steps of a route with carbohydrate in steps of so many g: hold and
// cut first where there are, then rungs to the aim; no more than six, then comes a review.
func (c *Case) laddered(p program, base, aim Mix, food bool, stepG float64) []Step {
	var steps []Step
	switch {
	case base != c.Habit:
		steps = append(steps, Step{Mix: base, Cut: true})
	case c.Stomach.Known && c.Stomach.Value >= evidence.StomachHold:
		steps = append(steps, Step{Mix: base, Held: true})
	}
	u := climb{p: p, base: base, aim: aim, from: c.SumOf(base), to: c.SumOf(aim), mostG: p.mostG, stepG: stepG}
	u.p.things, u.p.sodium, u.p.increment = int(evidence.ThingsAStep), false, evidence.ProposalWater
	last, rungs := base, u.count()
	for k := 1; last != aim && len(steps) < int(evidence.StepsMost); k++ {
		mix, ok := u.rung(last, float64(min(k, rungs))/float64(rungs), food && k == 1)
		switch {
		case k >= rungs && u.near(last):
			steps = append(steps, Step{Mix: aim})
			return steps
		case ok && mix != last:
			steps = append(steps, Step{Mix: mix})
			last = mix
		case k >= rungs:
			mix, ok = u.toward(last, false)
			large := !ok
			if large {
				mix, ok = u.toward(last, true)
			}
			if !ok { // three things belong together
				return append(steps, Step{Mix: aim, Large: true})
			}
			steps = append(steps, Step{Mix: mix, Large: large})
			last = mix
		}
	}
	return steps
}

// toward is the aim but for some things that stay as they are for now: where a
// rung has nothing more to ask for, and the aim is three things away. Of those inside
// the limits and one step away it is the one that is nearest to the aim by cost; of
// any size where a large step is meant.
func (u *climb) toward(last Mix, large bool) (Mix, bool) {
	p := u.p
	p.base = u.aim
	p.mostML, p.mostG = u.most(last)
	if large {
		p.mostML, p.mostG = u.to.DrunkML, u.mostG
	}
	p.mostML, p.mostG = min(u.to.DrunkML, p.mostML), min(u.mostG, p.mostG)
	sum := p.c.SumOf(last)
	u.rising(&p, &sum)
	best, mix, ok := math.Inf(1), last, false
	for i := range last {
		for k := range i + 1 {
			m := last
			m[i], m[k] = u.aim[i], u.aim[k]
			sum := p.c.SumOf(m)
			if m == last || !p.meets(&sum) {
				continue
			}
			cost := 0.0
			for j := range m {
				cost += p.cost(j, m[j])
			}
			if cost < best {
				best, mix, ok = cost, m, true
			}
		}
	}
	return mix, ok
}

// count is how many steps the way takes at least.
func (u *climb) count() int {
	steps := func(gap, size float64) float64 { return parts(gap-evidence.StepLeft*size, size) }
	c := u.p.c
	fluid := steps(u.to.DrunkML-u.from.DrunkML, c.stepML())
	fuel := steps(u.to.CarbohydrateG-u.from.CarbohydrateG, u.stepG)
	return int(max(1, fluid, fuel))
}

// smallest is the carbohydrate of the smallest portion on the way from a mix, g.
func (u *climb) smallest(from Mix) float64 {
	least := math.Inf(1)
	for i := range u.aim {
		src := &u.p.c.Sources[i]
		if !Passes(u.aim[i], from[i]) {
			continue
		}
		if src.Kind == Gel || src.Kind == Food {
			least = min(least, src.CarbohydrateG*src.portion())
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// most is what a rung after another may come to, mL and g.
func (u *climb) most(from Mix) (ml, g float64) {
	c := u.p.c
	last := c.SumOf(from)
	ml = last.DrunkML + evidence.StepOver*c.stepML()
	g = last.CarbohydrateG + evidence.StepOver*max(u.stepG, u.smallest(from)) + evidence.StepPortionOver
	return ml, g
}

// rising keeps a step from falling behind the one before it, as far as the aim itself
// does not: what was practised stays.
func (u *climb) rising(p *program, last *Sum) {
	p.leastML = min(max(p.leastML, min(last.DrunkML, u.to.DrunkML)), p.mostML)
	p.leastG = min(max(p.leastG, min(last.CarbohydrateG, u.to.CarbohydrateG)), p.mostG)
}

// near reports whether the aim is two things and one step away.
func (u *climb) near(last Mix) bool {
	ml, g := u.most(last)
	return changed(last, u.aim) <= int(evidence.ThingsAStep) && !Passes(u.to.DrunkML, ml) && !Passes(u.to.CarbohydrateG, g)
}

// rung is the mix after another, a part of the way to the aim. The first of
// the way with food has food in it where that can be.
func (u *climb) rung(last Mix, part float64, food bool) (Mix, bool) {
	q := u.p
	c, sum := q.c, q.c.SumOf(last)
	q.base = last
	ml, g := u.most(last)
	q.mostML, q.mostG = min(u.to.DrunkML, ml), min(u.mostG, g)
	u.rising(&q, &sum)
	q.targetML = FloorTo(u.from.DrunkML+part*(u.to.DrunkML-u.from.DrunkML), evidence.ProposalWater)
	q.fuelGH = (u.from.CarbohydrateG + part*(u.to.CarbohydrateG-u.from.CarbohydrateG)) / c.hours()
	grain := c.grainsOf(true)
	for i := range q.values {
		q.values[i] = []float64{last[i]}
		if !alike(last[i], u.aim[i]) {
			q.values[i] = withAim(grain.between(&c.Sources[i], min(last[i], u.aim[i]), max(last[i], u.aim[i]), last[i]), u.aim[i])
		}
	}
	if food {
		q.leastFoodG = sum.FoodG + foodAtAll
		if found := q.solve(); found.ok {
			return found.mix, true
		}
	}
	q.leastFoodG = 0
	found := q.solve()
	return found.mix, found.ok
}

// withAim adds the aim's own amount where it is on no increment.
func withAim(list []float64, aim float64) []float64 {
	for _, x := range list {
		if alike(x, aim) {
			return list
		}
	}
	return append(list, aim)
}

// Ladder lists the steps from the habit of a case to an aim that was chosen,
// which may be one that is not proposed. A habit that may be more than is lost
// comes down first and alone, as far as the aim does; what rises comes after.
func Ladder(c *Case, aim Mix) []Step {
	if c.Closed {
		if aim == c.Habit {
			return nil
		}
		return []Step{{Mix: aim, Cut: true}}
	}
	l, w := LimitsOf(c), WantsOf(c)
	base, to, further := c.Habit, c.SumOf(aim), false
	if l.Case == Less {
		further = !Passes(to.DrunkML, l.TargetML)
		l.TargetML = min(l.TargetML, to.DrunkML)
		base = c.cut(&l)
	}
	switch {
	case base == c.Habit && aim == base:
		return nil
	case base != c.Habit && (aim == base || further && !c.rises(aim)):
		return []Step{{Mix: aim, Cut: true}}
	}
	p := c.aimed(&l, &w)
	p.base = base
	from := c.SumOf(base)
	p.from = from
	p.reaching(&l, &from, &to)
	steps, _ := c.ladder(p, base, aim, Passes(to.FoodG, from.FoodG))
	return steps
}

// rises reports that a mix has more of anything than the habit.
func (c *Case) rises(m Mix) bool {
	for i := range m {
		if Passes(m[i], c.Habit[i]) {
			return true
		}
	}
	return false
}

// reaching lets the steps go as far as an aim does that passes what would be
// proposed; the limit of fluid holds.
func (p *program) reaching(l *Limits, from, to *Sum) {
	p.intakeML = max(p.intakeML, min(l.LimitML, to.DrunkML+to.FoodWaterML))
	p.leastML = min(from.DrunkML, to.DrunkML)
	p.leastG = min(from.CarbohydrateG, to.CarbohydrateG)
	p.mostOneG = max(p.mostOneG, to.OneSourceG)
	p.mostG, p.mostSodiumMg = max(p.mostG, to.CarbohydrateG), max(p.mostSodiumMg, to.SodiumMg)
	p.gels, p.portions, p.saltG = max(p.gels, to.Gels), max(p.portions, to.Portions), max(p.saltG, to.SaltG)
	if to.DrunkML > 0 {
		p.strength = max(p.strength, to.DrinksG/to.DrunkML)
	}
	if p.lacksWater(to) { // chosen so: the steps go there all the same
		p.gelWater, p.from.Gels, p.from.Portions = 0, to.Gels, to.Portions
	}
}
