package plan

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan/proposal"
)

// Background is what a proposal needs to know beside the mix of the habit: how
// it was drunk, what the profile says and what the athlete wishes.
type Background struct {
	// Stomach, 0-10, in the test of the habit; Confidence, 0-10, in a change.
	Stomach, Confidence proposal.Known
	// PastLowSodium: exercise-associated hyponatraemia before. Gained: mass went
	// up at the test. AsksLess: a condition of the profile asks for caution with fluid.
	PastLowSodium, Gained, AsksLess bool
	// Wishes of the athlete: no food, no more to drink, no drink that is new.
	NoFood, NoMoreDrink, NoNewDrink bool
	// Tested: the habit was measured in the conditions of the plan.
	Tested bool
	// Carbohydrate is the aim set by hand, g/h.
	Carbohydrate proposal.Known
	// Held are slots that stay as they are in the habit.
	Held [Slots]bool
	// Bottles are the sizes owned, mL; empty: increments.
	Bottles []float64
	// DrinkStepML is how much of a drink changes at once, mL; zero is what is usual.
	DrinkStepML float64
	// BreaksConfirmed: the breaks are all there are.
	BreaksConfirmed bool
}

// From returns a planner that knows the habit and how it was drunk. Where
// that was measured in the conditions of the plan, ended at -1 % or lower, and
// lies above the low end of the estimate alone, it is the ceiling.
func (p *Planner) From(habit Mix, b Background) *Planner {
	from := *p
	from.habit, from.background, from.measuredLH = habit, b, 0
	c := from.proposalCase(Expected, habit, DefaultStepRules())
	if l := proposal.LimitsOf(&c); l.Case == proposal.Unsure {
		from.measuredLH = l.LimitML / 1000 / p.hours(Expected)
	}
	return &from
}

// Habit returns the habit of [Planner.From].
func (p *Planner) Habit() Mix { return p.habit }

// Background returns how the habit was drunk, of [Planner.From].
func (p *Planner) Background() Background { return p.background }

// Propose finds what to propose for the habit of [Planner.From], at the chances of
// [Planner.At]: drinks alone and with food, each with its aim and its steps, and
// what is to be said; see package proposal.
func (p *Planner) Propose(r StepRules) proposal.Proposal {
	c := p.proposalCase(Expected, p.habit, r)
	return proposal.Propose(&c)
}

// proposalCase puts a case together.
func (p *Planner) proposalCase(l Length, habit Mix, r StepRules) proposal.Case {
	b := &p.background
	h := p.hours(l)
	c := proposal.Case{
		Minutes: p.session.Minutes[l], LossML: p.basis.SweatRate.Value * h * 1000, LowML: p.basis.SweatRate.Low * h * 1000,
		BreathML: p.basis.BreathLH() * h * 1000, MassKg: p.basis.Body.MassKg, Hidden: p.basis.Body.Hidden,
		DeficitAim: p.limit, Light: p.session.Effort == fuel.Easy, Running: p.session.Running,
		Stomach: b.Stomach, Confidence: b.Confidence, PastLowSodium: b.PastLowSodium, Gained: b.Gained, AsksLess: b.AsksLess,
		NoFood: b.NoFood, NoMoreDrink: b.NoMoreDrink, NoNewDrink: b.NoNewDrink, Tested: b.Tested,
		Cool: p.basis.Cool || p.session.Heat == Cold, Carbohydrate: b.Carbohydrate, BreaksML: p.carried[l].High * 1000, AllBreaksML: p.carriesAtMostML(l, p.chances),
		AdviceMost: fuel.CarbohydrateDuring(p.session.Minutes[l], p.session.Effort).Range.High,
		StepLH:     r.fluid(0), StepGH: r.CarbohydrateGH, Bottles: b.Bottles, DrinkStepML: b.DrinkStepML, BreaksConfirmed: b.BreaksConfirmed, Habit: proposal.Mix(habit),
	}
	if a := p.aim.Drinking; a.On && proposal.Passes(toleratedLH(p.basis.Usual, p.session.Running), a.High) {
		c.MostLH = a.High
	}
	if a := p.aim.Sodium; a.On {
		c.SodiumMost = a.High
		if a.Low > 0 {
			c.Sodium = proposal.Is(a.Low)
		}
	}
	if a := p.aim.Strength; a.On && proposal.Passes(evidence.StrengthHigh, a.High) {
		c.MostStrength = a.High
	}
	if p.basis.Sodium.Known {
		c.SodiumMmolL = proposal.Is(p.basis.Sodium.Value)
	}
	if p.basis.Body.AgeYears > 0 {
		c.Age = proposal.Is(p.basis.Body.AgeYears)
	}
	for s := range p.menu {
		c.Sources[s] = p.source(Slot(s))
		c.Sources[s].Fixed = b.Held[s] || !p.aim.allows(Slot(s))
	}
	c.Closed = Closed(p.chances)
	for _, ch := range p.chances {
		if ch.Minute <= p.session.Minutes[l] {
			c.Chances = append(c.Chances, proposal.Chance{Seconds: ch.Seconds, CanEat: ch.CanEat, Certain: ch.Certainty != Maybe})
		}
	}
	return c
}

// source is a slot of the menu as a proposal takes it.
func (p *Planner) source(s Slot) proposal.Source {
	item := &p.menu[s]
	if !item.InUse {
		return proposal.Source{}
	}
	src := proposal.Source{
		Kind: proposal.Food, Whole: proposal.Passes(item.Step, evidence.PortionIncrement), FoodWaterML: item.Unit.FoodWaterL * 1000,
		BesideG:       (item.Unit.massKg() - item.Unit.fluidL()) * 1000,
		CarbohydrateG: item.Unit.CarbohydrateG, OneSourceG: item.Unit.Split.Glucose + item.Unit.Split.Unknown, SodiumMg: item.Unit.SodiumMg,
	}
	switch {
	case s == Water:
		src.Kind = proposal.Water
	case s.IsDrink():
		src.Kind = proposal.Drink
	case s == Salt:
		src.Kind = proposal.Salt
	case item.Gel:
		src.Kind = proposal.Gel
	}
	return src
}

// CarbohydrateAimed is the carbohydrate asked for in a session where nothing was
// chosen, g/h: it rises with the length without a jump.
func CarbohydrateAimed(s Session) float64 {
	c := proposal.Case{Minutes: s.Minutes[Expected], Light: s.Effort == fuel.Easy}
	return proposal.CarbohydrateAim(&c)
}

// toleratedLH is the drinking rate that a plan is held to, L/h: what stomachs take,
// or what this one is used to where that is more.
func toleratedLH(u Usual, running bool) float64 {
	rate := evidence.ReachStomach
	if running {
		rate = evidence.ReachStomachRun
	}
	if u.Known {
		rate = max(rate, u.LH)
	}
	return rate
}
