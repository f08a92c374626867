package proposal

import (
	"slices"

	"ebbwell/internal/evidence"
)

// Way names a route.
type Way int

// The routes.
const (
	// DrinksAlone changes drinks and salt; food stays as in the habit.
	DrinksAlone Way = iota
	// WithFood changes food too.
	WithFood
	// Ways is how many there are.
	Ways = 2
)

// Route is one way to an aim.
type Route struct {
	// Exists is false where nothing of this kind fits, or only the habit.
	Exists bool
	Aim    Mix
	Misses Misses
	Cost   float64
	Steps  []Step
	// WholeFuel: carbohydrate rises in whole steps though those of fluid are halved.
	WholeFuel bool
}

// Outcome is what a proposal comes to.
type Outcome int

// The outcomes.
const (
	// Nothing is missing: the habit stays.
	Nothing Outcome = iota
	// Change is a step toward more.
	Change
	// DrinkLess brings the fluid down at once.
	DrinkLess
	// Stuck: something is missing, and nothing fits inside the limits.
	Stuck
	// Closed: one may not drink in the session, so that nothing is proposed for it.
	Closed
)

// Proposal is what is proposed for a case.
type Proposal struct {
	Limits  Limits
	Wants   Wants
	Outcome Outcome
	// Habit is what the habit misses.
	Habit Misses
	// Cut is the habit, or what it comes down to at once, with a bad stomach one step.
	Cut    Mix
	Routes [Ways]Route
	Pick   Way
	// Ask: these breaks carry so little that the plan would end deep, or clearly
	// less than was drunk, which proves that there is more. Whether a bottle can be
	// carried, or more stops made, is asked before anything is handed over, and the
	// habit's amount stands until then. Lacking: it is asked for what was drunk.
	Ask, Lacking bool
	Said         []Saying
}

// foodAtAll is a trace of carbohydrate, g, that tells some food from none.
const foodAtAll = 1e-6

// Propose finds what to propose for a case: in whole bottles where these get as far as
// any volumes do.
func Propose(c *Case) Proposal {
	out := c.propose()
	if len(c.Bottles) == 0 {
		return out
	}
	loose := *c
	loose.Bottles = nil
	anyVolume := loose.propose()
	if out.reaches(&anyVolume) {
		return out
	}
	anyVolume.Said = append(anyVolume.Said, Saying{Code: SayBottles})
	return anyVolume
}

// reaches reports that every route of another proposal exists here too, and misses no more
// than there but for a little to drink.
func (o *Proposal) reaches(other *Proposal) bool {
	for way, r := range other.Routes {
		own := &o.Routes[way]
		if !r.Exists {
			continue
		}
		less := float64(own.Misses.Fluid-r.Misses.Fluid) * o.Limits.Increment
		if !own.Exists || own.Misses.Carbohydrate > r.Misses.Carbohydrate || own.Misses.Sodium > r.Misses.Sodium || Passes(less, evidence.BottlesShort) {
			return false
		}
	}
	return true
}

// propose finds what to propose in the amounts there are.
func (c *Case) propose() Proposal {
	out := Proposal{Limits: LimitsOf(c), Wants: WantsOf(c), Cut: c.Habit}
	if c.Closed {
		out.Outcome, out.Cut = Closed, Mix{}
		out.Said = c.sayClosed()
		return out
	}
	p := c.aimed(&out.Limits, &out.Wants)
	habit := c.SumOf(c.Habit)
	out.Habit = p.misses(&habit)
	cut := out.Limits.Case == Less
	switch {
	case cut:
		out.Cut = c.cut(&out.Limits)
	case c.upset():
		out.Cut = c.eased()
	}
	if !cut && out.Cut != c.Habit {
		out.back(&p)
		return c.finish(&out)
	}
	if out.Habit.None() && !cut && out.Limits.Case != NoRoom {
		return c.finish(&out)
	}
	p.base = out.Cut
	base := c.SumOf(out.Cut)
	p.leastG = min(base.CarbohydrateG, p.fuelGH*c.hours())
	p.leastML, p.from = base.DrunkML, base
	out.Routes = p.routes(&base)
	out.decide(cut)
	if !cut && out.Limits.TargetML <= base.DrunkML && p.offIncrements(&out) {
		out.about(p, &base)
	}
	if out.Limits.Case == Unsure && !c.NoFood && !c.long() {
		out.inPlace(p)
	}
	return c.finish(&out)
}

// routes are the two ways from what a base comes to.
func (p program) routes(base *Sum) (both [Ways]Route) {
	both[DrinksAlone] = p.route(p.c, p.base, false)
	if !p.c.NoFood && p.misses(base).Carbohydrate > 0 {
		both[WithFood] = p.route(p.c, p.base, true)
	}
	return both
}

// offIncrements reports that what was drunk lies on no increment, and that carbohydrate
// is still missing: where there is no room above, no other amounts come to the same
// drink then, and neither water can be put for drink nor anything eaten.
func (p program) offIncrements(o *Proposal) bool {
	below := FloorTo(p.from.DrunkML, evidence.ProposalWater)
	missing := p.misses(&p.from).Carbohydrate
	if r := o.Picked(); r.Exists {
		missing = r.Misses.Carbohydrate
	}
	return missing > 0 && below > 0 && Passes(p.from.DrunkML, below)
}

// about searches once more, for mixes that come to less than one increment below what
// was drunk, and takes what it finds where that brings more carbohydrate.
func (o *Proposal) about(p program, base *Sum) {
	p.fine = true
	p.leastML = FloorTo(p.leastML, evidence.ProposalWater)
	p.targetML = p.leastML
	other := *o
	other.Routes = p.routes(base)
	other.decide(false)
	r, was := other.Picked(), o.Picked()
	if r.Exists && (!was.Exists || r.Misses.Carbohydrate < was.Misses.Carbohydrate) {
		*o = other
	}
}

// inPlace searches the way with food once more where what was taken is the limit itself,
// so that food, which brings water of its own, has no room beside it: for mixes with one
// increment less to drink. It takes what it finds where that brings more carbohydrate. In
// a long session drinks have room for that.
func (o *Proposal) inPlace(p program) {
	p.fine = true
	p.leastML = max(0, p.leastML-evidence.ProposalWater)
	p.targetML = p.leastML
	r, was := p.route(p.c, p.base, true), o.Picked()
	if !r.Exists || was.Exists && r.Misses.Carbohydrate >= was.Misses.Carbohydrate || !Passes(p.c.SumOf(r.Aim).FoodG, p.from.FoodG) {
		return
	}
	o.Routes[WithFood] = r
	o.decide(false)
}

// finish adds the question of the breaks, and what is said.
func (c *Case) finish(o *Proposal) Proposal {
	o.Lacking = c.lacks(o)
	o.Ask = o.Lacking || c.cutLacks(o) || c.asks(o)
	o.Said = c.say(o)
	return *o
}

// carries reports whether a bottle is carried.
func (c *Case) carries() bool {
	return slices.ContainsFunc(c.Chances, func(at Chance) bool { return at.Seconds == 0 })
}

// lacks reports whether all breaks together carry clearly less than was drunk at
// them. What lacks by less than a tenth is lost in whole mouthfuls, and not worth a
// question; a habit that comes down anyway proves nothing, nor does one past a loss that
// the breaks carry whole.
func (c *Case) lacks(o *Proposal) bool {
	drunk, carried := c.SumOf(c.Habit).DrunkML, max(c.AllBreaksML, c.BreaksML)
	return !c.BreaksConfirmed && len(c.Chances) > 0 && !c.carries() && o.Limits.Case != Less &&
		drunk > c.BreaksML && drunk-carried >= evidence.AskedGap*drunk && Passes(c.LowML, carried)
}

// cutLacks reports whether all breaks together carry clearly less than what the habit
// comes down to: what is written down could not be drunk there.
func (c *Case) cutLacks(o *Proposal) bool {
	drunk := c.SumOf(o.Cut).DrunkML
	return !c.BreaksConfirmed && len(c.Chances) > 0 && !c.carries() && o.Limits.Case == Less &&
		drunk-max(c.AllBreaksML, c.BreaksML) >= max(evidence.AskedGap*drunk, evidence.AskedRoom)
}

// asks reports whether the breaks have to be settled because a plan at them would end
// deep, or a long session would get less than half of the carbohydrate asked for, and
// more to drink there would help.
func (c *Case) asks(o *Proposal) bool {
	l, end := &o.Limits, c.SumOf(c.Habit)
	if r := o.Picked(); r.Exists {
		end = c.SumOf(r.Aim)
	}
	if c.BreaksConfirmed || c.carries() || len(c.Chances) == 0 || !l.moreBreaksHelp() {
		return false
	}
	deep := l.Clash && (l.Case == More || l.Case == NoRoom) && -c.EndPercent(end) > evidence.DeepDeficit
	hungry := c.long() && !c.limited() && l.Case != Unsure && l.Case != Less &&
		end.CarbohydrateG < evidence.AskedFuel*o.Wants.AimGH*c.hours()
	return deep || hungry
}

// aimed is the search for an aim.
func (c *Case) aimed(l *Limits, w *Wants) program {
	p := c.hard(l)
	p.targetML, p.increment = l.TargetML, l.Increment
	p.fuelGH, p.sodium, p.sodiumMg = w.TargetGH, w.Sodium, w.SodiumMgH*c.hours()
	if l.Clash && l.Bound == BoundLoss && l.Case != Less {
		p.foodWaterFrom = c.SumOf(c.Habit).FoodWaterML
	}
	return p
}

// decide picks a route and names the outcome.
func (o *Proposal) decide(cut bool) {
	a, b := &o.Routes[DrinksAlone], &o.Routes[WithFood]
	if b.Exists && (!a.Exists || b.Misses.less(a.Misses)) {
		o.Pick = WithFood
	}
	switch {
	case cut:
		o.Outcome = DrinkLess
	case a.Exists || b.Exists:
		o.Outcome = Change
	default:
		o.Outcome = Stuck
	}
}

// route finds the aim of a way and the steps to it. With food, food brings
// half of the carbohydrate missing, or a quarter, or any.
func (p program) route(c *Case, base Mix, food bool) Route {
	p.open(food)
	r := p.way(c, base, food)
	if r.Exists && manyAtOnce(c.Habit, r.Steps) { // an aim that is reached by two things at a time
		p.things = int(evidence.ThingsAStep)
		r = p.way(c, base, food)
	}
	return r
}

// way is the aim of a route with the steps to it.
func (p program) way(c *Case, base Mix, food bool) Route {
	var f found
	if food {
		f = p.withFood(c.SumOf(base))
	} else {
		f = p.solve()
	}
	if f.ok {
		p.withoutCrumbs(&f)
	}
	if !f.ok || f.mix == c.Habit {
		return Route{}
	}
	r := Route{Exists: true, Aim: f.mix, Misses: f.misses, Cost: f.cost}
	if f.mix == base {
		r.Cost = p.costFrom(c.Habit, f.mix)
	}
	r.Steps, r.WholeFuel = c.ladder(p, base, f.mix, food)
	return r
}

// withoutCrumbs takes away half a portion of a food that is new and brings less
// carbohydrate than one step of the aim: nobody begins with it for so little.
func (p *program) withoutCrumbs(f *found) {
	for i, x := range f.mix {
		src := &p.c.Sources[i]
		if src.Kind != Food || Passes(p.base[i], 0) || !Passes(1, x) || !Passes(evidence.FuelAimStep*p.c.hours(), src.CarbohydrateG*x) {
			continue
		}
		mix := f.mix
		mix[i] = 0
		if sum := p.c.SumOf(mix); Passes(x, 0) && p.meets(&sum) {
			f.mix, f.misses, f.cost = mix, p.misses(&sum), p.costFrom(p.base, mix)
		}
	}
}

// manyAtOnce reports a step, other than a cut, that changes more things than a step
// may.
func manyAtOnce(from Mix, steps []Step) bool {
	for _, s := range steps {
		if !s.Cut && changed(from, s.Mix) > int(evidence.ThingsAStep) {
			return true
		}
		from = s.Mix
	}
	return false
}

// changed is how many sources differ.
func changed(a, b Mix) int {
	n := 0
	for i := range a {
		if !alike(a[i], b[i]) {
			n++
		}
	}
	return n
}

// withFood asks for as much food as can be.
func (p program) withFood(base Sum) found {
	missing := p.fuelGH*p.c.hours() - base.CarbohydrateG
	for _, share := range [...]float64{evidence.FoodShare, evidence.FoodShareLess, 0} {
		p.leastFoodG = base.FoodG + max(share*missing, foodAtAll)
		if f := p.solve(); f.ok {
			return f
		}
	}
	return found{}
}

// costFrom is the cost of a mix counted from another base.
func (p program) costFrom(base, mix Mix) float64 {
	p.base = base
	sum := 0.0
	for i := range mix {
		sum += p.cost(i, mix[i])
	}
	return sum + p.off(p.c.SumOf(mix).DrunkML)
}
