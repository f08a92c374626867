package proposal

import (
	"math"

	"ebbwell/internal/evidence"
)

// program is one search: the amounts there are, what may not be passed, and
// what is wanted. Cost counts from a base mix.
type program struct {
	c      *Case
	base   Mix
	values [Slots][]float64

	// Wanted, in the order in which it counts.
	targetML, increment float64
	foodWaterFrom       float64 // food water above it counts as fluid; infinite: none does
	fuelGH              float64
	sodium              bool
	sodiumMg            float64 // of the session, set by hand; zero asks by the litre drunk

	// Hard.
	leastML, mostML, intakeML  float64
	mostOneG                   float64
	mostG, mostSodiumMg        float64
	leastG                     float64 // no way brings less than the habit, or than is asked for
	leastFoodG                 float64 // at least this from food
	strength                   float64 // g/mL
	gels, gelWater             float64
	from                       Sum // what the base comes to
	portions, saltPerML, saltG float64
	things                     int
	fine                       bool // water by the finer increment, also in a long session
}

// hard states what every mix of a case is held to.
func (c *Case) hard(l *Limits) program {
	habit, h := c.SumOf(c.Habit), c.hours()
	cut := l.Case == Less
	p := program{
		c: c, foodWaterFrom: math.Inf(1), leastML: habit.DrunkML,
		intakeML: max(evidence.ReachShareIntake*l.LimitML, habit.DrunkML+habit.FoodWaterML),
		mostML:   l.TargetML, mostG: max(c.AdviceMost*h, habit.CarbohydrateG), mostOneG: max(evidence.OneSourceHigh*h, habit.OneSourceG),
		from: habit, gelWater: GelWaterEach(&habit, c.calm()),
		saltPerML: evidence.SaltStrengthMost / 1000, saltG: habit.SaltG,
		things: int(evidence.ThingsChanged),
	}
	if cut {
		p.leastML, p.intakeML = 0, l.LimitML // the cut sets its own least
	}
	if !cut && !c.limited() {
		p.mostML = max(l.TargetML, min(l.ReachML, max(l.TargetML, habit.DrunkML)+evidence.RiseForFuel*h))
	}
	if c.long() {
		p.things = int(evidence.ThingsChangedLong)
	}
	mmol := evidence.SodiumUnknown
	if c.SodiumMmolL.Known {
		mmol = c.SodiumMmolL.Value
	}
	p.mostSodiumMg = evidence.SodiumShare * c.LossML / 1000 * mmol * evidence.SodiumMolarMass
	if c.SodiumMost > 0 {
		p.mostSodiumMg = min(p.mostSodiumMg, c.SodiumMost*h)
	}
	p.mostSodiumMg = max(p.mostSodiumMg, habit.SodiumMg)
	p.strength = evidence.StrengthHigh / 100
	if habit.DrunkML > 0 && c.calm() {
		p.strength = max(p.strength, habit.DrinksG/habit.DrunkML)
	}
	if c.MostStrength > 0 {
		p.strength = min(p.strength, c.MostStrength/100)
	}
	p.gels, p.portions = c.placesForGels(), c.placesForFood()
	p.gels, p.portions = max(p.gels, habit.Gels), max(p.portions, habit.Portions)
	return p
}

// placesForGels is how many gels there is time and a certain chance for.
func (c *Case) placesForGels() float64 {
	certain := 0.0
	for _, at := range c.Chances {
		if at.Certain {
			certain++
		}
	}
	return min(wholes(c.Minutes, evidence.GelEvery), certain, evidence.GelsMost)
}

// placesForFood is how many portions the certain chances to eat have time for.
func (c *Case) placesForFood() float64 {
	portions, carried := 0.0, false
	for _, at := range c.Chances {
		switch {
		case !at.Certain || !at.CanEat:
		case at.Seconds == 0:
			carried = true
		case at.Seconds >= evidence.FoodBreak:
			portions++
		case at.Seconds >= evidence.FoodBreakShort:
			portions += evidence.FoodHalf
		default:
			portions += evidence.FoodQuarter
		}
	}
	if carried {
		portions += c.Minutes / evidence.FoodEvery
	}
	return portions
}

// meets reports whether a mix passes nothing; s is what it comes to.
func (p *program) meets(s *Sum) bool {
	over := Passes
	switch {
	case over(s.DrunkML, p.mostML), over(p.leastML, s.DrunkML), over(s.DrunkML+s.FoodWaterML, p.intakeML),
		over(s.CarbohydrateG, p.mostG), over(p.leastG, s.CarbohydrateG), over(p.leastFoodG, s.FoodG), over(s.SodiumMg, p.mostSodiumMg),
		over(s.DrinksG, p.strength*s.DrunkML), over(s.OneSourceG, p.mostOneG), over(s.Gels, p.gels), over(s.Portions, p.portions):
		return false
	case over(s.SaltG, p.saltG) && over(s.SaltG, p.saltPerML*s.DrunkML):
		return false
	}
	return !p.lacksWater(s)
}

// misses counts what a mix misses.
func (p *program) misses(s *Sum) Misses {
	fluid := s.DrunkML + max(0, s.FoodWaterML-p.foodWaterFrom)
	m := Misses{
		Fluid:        Begun(p.targetML-fluid, p.increment),
		Carbohydrate: p.fuelMissing(s.CarbohydrateG),
	}
	m.Sodium = p.sodiumMissing(s.DrunkML, s.SodiumMg)
	return m
}

func (p *program) fuelMissing(g float64) int {
	return fuelParts(p.fuelGH - g/p.c.hours())
}

// sodiumMissing counts what sodium is missing of what is asked for with so much drunk.
func (p *program) sodiumMissing(drunk, mg float64) int {
	asked := evidence.SodiumAimMet * drunk / 1000
	switch {
	case !p.sodium:
		return 0
	case p.sodiumMg > 0:
		asked = p.sodiumMg
	case Passes(evidence.SodiumAimFrom, drunk):
		return 0
	}
	return Begun((asked-mg)/p.c.hours(), evidence.SodiumAimStep)
}

// cost of changing one source from the base.
func (p *program) cost(slot int, x float64) float64 {
	from, src := p.base[slot], &p.c.Sources[slot]
	if alike(x, from) {
		return 0
	}
	sum := evidence.CostThing
	if !Passes(from, 0) {
		sum += evidence.CostNew
	}
	if !Passes(x, 0) && (src.Kind == Water || src.Kind == Drink) {
		sum += evidence.CostDropped
	}
	return sum + math.Abs(x-from)*p.c.unitCost(src.Kind)
}

// unitCost is what a mL, a portion or a g costs.
func (c *Case) unitCost(k Kind) float64 {
	switch k {
	case Water:
		return evidence.CostWater / evidence.CostFluid
	case Drink:
		return evidence.CostDrink / evidence.CostFluid
	case Gel:
		if c.Age.Known && c.Age.Value < evidence.YoungUnder { // food comes before products
			return evidence.CostGel + evidence.CostNew
		}
		return evidence.CostGel
	case Food:
		if c.Running {
			return evidence.CostHalfRunning / evidence.PortionIncrement
		}
		return evidence.CostHalfPortion / evidence.PortionIncrement
	case Salt:
		return evidence.CostSalt / evidence.ProposalSalt
	case None:
	}
	return 0
}

// off is the cost of ending away from the target.
func (p *program) off(drunk float64) float64 {
	return evidence.CostOff * math.Abs(drunk-p.targetML) / evidence.CostFluid
}
