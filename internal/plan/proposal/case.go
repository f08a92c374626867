package proposal

import "ebbwell/internal/evidence"

// Slots is how many sources a mix may have.
const Slots = 9

// Mix is how much is taken of each source: mL of drinks, portions of foods and
// gels, g of salt.
type Mix [Slots]float64

// Kind is what a source is.
type Kind int

// The kinds of source; a zero Kind is an empty slot.
const (
	None Kind = iota
	Water
	Drink
	Gel
	Food
	Salt
)

// Source is what one unit of a slot holds: one mL of a drink, one portion, one
// g of salt.
type Source struct {
	Kind Kind
	// FoodWaterML is water in a portion of food or gel.
	FoodWaterML   float64
	CarbohydrateG float64
	// OneSourceG of it is glucose, or of a family that is not known.
	OneSourceG float64
	SodiumMg   float64
	// BesideG is what a unit weighs beside the water that is counted of it, g: it is on
	// the scale at the end, and nothing is decided by it.
	BesideG float64
	// Whole: a food that nobody halves.
	Whole bool
	// Fixed: the amount stays as it is in the habit.
	Fixed bool
}

// Chance is a moment at which one may drink.
type Chance struct {
	// Seconds it lasts; zero for a carried bottle.
	Seconds float64
	CanEat  bool
	Certain bool
}

// Known is a number that may be unknown.
type Known struct {
	Known bool
	Value float64
}

// Is returns a number that is known.
func Is(x float64) Known { return Known{Known: true, Value: x} }

// Case is all that a proposal is made from.
type Case struct {
	Minutes float64
	// LossML is the sweat expected in the session, LowML the low end of its
	// planned range, BreathML breath and gas exchange.
	LossML, LowML, BreathML float64
	MassKg                  float64
	// Hidden: the mass is not to be worked out from what is proposed.
	Hidden bool
	// SodiumMmolL is the sodium of the sweat.
	SodiumMmolL Known
	// DeficitAim is the loss of body mass aimed at, %.
	DeficitAim float64
	// Light effort needs little carbohydrate; Running lowers what a stomach takes.
	Light, Running bool
	Age            Known // years
	// Stomach, 0-10, in the test of the habit; Confidence, 0-10, in a change.
	Stomach, Confidence Known
	// PastLowSodium: exercise-associated hyponatraemia before. Gained: mass went
	// up at the test. AsksLess: a physician or a flag of the profile asks for no
	// more fluid than the target.
	PastLowSodium, Gained, AsksLess bool
	NoFood, NoMoreDrink, NoNewDrink bool
	// Tested: the habit was measured in the conditions of the plan. Cool: the
	// air is cool, so that the low end is wide.
	Tested, Cool bool
	// Carbohydrate and Sodium are the aims set by hand, g/h and mg/h; SodiumMost is the
	// most sodium set by hand, mg/h, zero for none. AdviceMost is the upper end of the
	// advice on carbohydrate.
	Carbohydrate, Sodium Known
	SodiumMost           float64
	AdviceMost           float64
	// BreaksML is what the breaks carry: certain chances in full, others half
	// of what is comfortable, through stomach and the low end of the loss.
	// Chances are the breaks one by one; none means that they were not asked for.
	BreaksML float64
	// AllBreaksML is what all of them carry at the very most, those that may not
	// happen in full.
	AllBreaksML float64
	Chances     []Chance
	// Closed: one may not drink or eat in the session.
	Closed bool
	// BreaksConfirmed: these are all the breaks there are; nobody has to ask.
	BreaksConfirmed bool
	// StepLH and StepGH are how much drink, L/h, and carbohydrate, g/h, change in a
	// whole step; zero takes what is usual.
	StepLH, StepGH float64
	// MostLH and MostStrength are limits set with the athlete: drinks in L/h, and
	// carbohydrate in them in g per 100 mL. Zero sets none.
	MostLH, MostStrength float64
	// Bottles are the sizes owned, mL; drinks that change then come to sums of
	// whole bottles, unless these fall short. Empty: increments.
	Bottles []float64
	// DrinkStepML is the increment of water and of other drinks where the practice has
	// its own, mL; zero takes what is usual. One larger than a step is not used.
	DrinkStepML float64
	Sources     [Slots]Source
	Habit       Mix
}

const perHour = 60

func (c *Case) hours() float64 { return c.Minutes / perHour }

// percent of body mass, in mL.
func (c *Case) percent() float64 { return c.MassKg * 10 }

// calm reports a test with the stomach at 0-3.
func (c *Case) calm() bool { return c.Stomach.Known && c.Stomach.Value <= evidence.StepStomachGood }

// careful reports low blood sodium before, or a gain at the test.
func (c *Case) careful() bool { return c.PastLowSodium || c.Gained }

// young reports an age at which gels are not for.
func (c *Case) young() bool { return c.Age.Known && c.Age.Value < evidence.FuelAimYoungUnder }

// long reports a session with coarser amounts and one more change.
func (c *Case) long() bool { return c.Minutes > evidence.ProposalLong }

// limited reports that fluid does not rise for the sake of carbohydrate.
func (c *Case) limited() bool { return c.careful() || c.AsksLess || c.NoMoreDrink }

// Sum is what a mix comes to.
type Sum struct {
	// DrunkML of water and drinks; FoodWaterML in foods and gels.
	DrunkML, FoodWaterML float64
	// CarbohydrateG in all, DrinksG of it in drinks, FoodG in foods and gels.
	CarbohydrateG, DrinksG, FoodG float64
	// OneSourceG may come from one family.
	OneSourceG float64
	SodiumMg   float64
	// Gels and Portions of other foods; SaltG added.
	Gels, Portions, SaltG float64
	// GelWaterML counts toward the water that gels are taken with.
	GelWaterML float64
}

// SumOf adds a mix up.
func (c *Case) SumOf(m Mix) Sum {
	var s Sum
	for i := range m {
		s.add(&c.Sources[i], m[i])
	}
	return s
}

// add counts an amount of a source.
func (s *Sum) add(src *Source, x float64) {
	g := src.CarbohydrateG * x
	s.CarbohydrateG += g
	s.OneSourceG += src.OneSourceG * x
	s.SodiumMg += src.SodiumMg * x
	switch src.Kind {
	case Water:
		s.DrunkML += x
		s.DrinksG += g
		s.GelWaterML += x
	case Drink:
		s.DrunkML += x
		s.DrinksG += g
		s.GelWaterML += evidence.GelDrinkPart * x
	case Gel:
		s.FoodWaterML += src.FoodWaterML * x
		s.FoodG += g
		s.Gels += x
	case Food:
		s.FoodWaterML += src.FoodWaterML * x
		s.FoodG += g
		s.Portions += x
	case Salt:
		s.SaltG += x
	case None:
	}
}

// ShownEnd is the change of body mass that a mix leads to as the scale shows it, all
// that is drunk and eaten counted, % of body mass.
func (c *Case) ShownEnd(m Mix) float64 {
	end := c.EndPercent(c.SumOf(m))
	for i := range m {
		end += c.Sources[i].BesideG * m[i] / c.percent()
	}
	return end
}

// EndPercent is the change of body mass that the rows of the checks show: drinks and
// food water against sweat, breath and gas exchange, % of body mass.
func (c *Case) EndPercent(s Sum) float64 {
	return (s.DrunkML + s.FoodWaterML - c.LossML - c.BreathML) / c.percent()
}
