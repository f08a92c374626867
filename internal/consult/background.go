package consult

import (
	"slices"
	"strings"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/record"
)

// Wish is what an athlete does not want in a proposal.
type Wish string

// The wishes.
const (
	WishNoFood     Wish = "no-food"
	WishNoMore     Wish = "no-more-drink"
	WishNoNewDrink Wish = "no-new-drink"
	// WishOneBottle: one bottle stands at each break.
	WishOneBottle Wish = "one-bottle"
	// BreaksConfirmed is no wish: it says that the breaks are all there are.
	BreaksConfirmed Wish = "breaks-settled"
	// GutOnPage is no wish either: it says that the weeks of gut training are printed
	// on the athlete's page.
	GutOnPage Wish = "gut-training"
)

// Wishes lists every word that is kept with a plan.
func Wishes() []Wish {
	return []Wish{WishNoFood, WishNoMore, WishNoNewDrink, WishOneBottle, BreaksConfirmed, GutOnPage}
}

// Wished reports whether a plan keeps to a wish.
func Wished(p record.Plan, w Wish) bool {
	return slices.Contains(strings.Fields(p.Rules.Wishes), string(w))
}

// SetWish writes a wish down, or takes it back.
func SetWish(p *record.Plan, w Wish, on bool) {
	var list []string
	for _, one := range Wishes() {
		if Wished(*p, one) && one != w || on && one == w {
			list = append(list, string(one))
		}
	}
	p.Rules.Wishes = strings.Join(list, " ")
}

// background is what a proposal needs to know beside the habit's mix.
func (c Case) background(d Setup) plan.Background {
	p, a := c.Plan, c.Athlete
	b := plan.Background{
		PastLowSodium: slices.Contains(c.Care.Flags, record.FlagHyponatraemia), AsksLess: c.Care.WaterCaution,
		NoFood: Wished(p, WishNoFood), NoMoreDrink: Wished(p, WishNoMore), NoNewDrink: Wished(p, WishNoNewDrink),
		Tested: c.Basis.Kind != record.BasisEstimate && !p.UsualHabit, Bottles: BottlesOf(p), BreaksConfirmed: Wished(p, BreaksConfirmed),
		Carbohydrate: knownOf(p.Aims.CarbohydrateLow, a.CarbohydrateAim, d.Settings.CarbohydrateAim),
	}
	if n := d.Settings.DrinkStep; n.Known() && !refused(evidence.DrinkStep, *n.Value) {
		b.DrinkStepML = *n.Value
	}
	if f, ok := c.habitTest(); ok && !p.UsualHabit {
		b.Stomach = knownOf(f.Test.Feeling.Stomach)
	}
	if f, ok := c.habitTest(); ok {
		b.Gained = f.Sweat.Fluid.MassChange.Known && f.Sweat.Fluid.MassChange.Value > 0
	}
	if UsualSize(p, d.Settings) && !d.Settings.WholeSteps {
		b.Confidence = knownOf(Meant(p).Confidence)
	}
	for s := range b.Held {
		id := record.ID(c.Slots[s].Product.ID)
		if plan.Slot(s) == plan.Salt {
			id = HeldSalt
		}
		b.Held[s] = Held(p, id) || plan.Slot(s) == plan.Salt && len(c.Care.WithholdSalt) > 0
	}
	return b
}

// refused reports that a number lies beyond the limits of what it stands for.
func refused(f evidence.Field, x float64) bool {
	odd := evidence.CheckIn(evidence.Limits(), f, 0, x)
	return odd != nil && odd.Severity == evidence.Refuses
}

// Meant is the option that is marked for the agreement; the one in force where
// none is.
func Meant(p record.Plan) record.Option {
	if o, ok := OptionByID(p, p.Agreement.OptionID); ok {
		return o
	}
	o, _ := InForce(p)
	return o
}

// habitTest is the test whose habit the plan begins at.
func (c Case) habitTest() (Findings, bool) {
	tests := c.Basis.Tests
	if c.Basis.Calculation != nil {
		tests = append(tests[:len(tests):len(tests)], c.Basis.Calculation.Tests...)
	}
	for _, f := range tests {
		if f.Test.ID == c.Plan.Basis.TestID {
			return f, true
		}
	}
	return Findings{}, false
}

// knownOf is the first number that is known.
func knownOf(list ...record.Number) proposal.Known {
	for _, n := range list {
		if n.Known() {
			return proposal.Is(*n.Value)
		}
	}
	return proposal.Known{}
}

// UsualSize reports whether the steps of a plan are as large as they usually are
// in the practice, so that they are halved where confidence is low.
func UsualSize(p record.Plan, s record.Settings) bool {
	own, usual := RulesOf(p), PracticeRules(s)
	return own.FluidLH == usual.FluidLH && own.CarbohydrateGH == usual.CarbohydrateGH
}

// PracticeRules are the rules of steps in a practice where a plan has none of its own.
func PracticeRules(s record.Settings) plan.StepRules {
	var p record.Plan
	p.Rules.Fluid, p.Rules.Carbohydrate = s.StepFluid, s.StepCarbohydrate
	return RulesOf(p)
}
