package plan

import (
	"math"
	"testing"

	"ebbwell/internal/fuel"
	"ebbwell/internal/plan/proposal"
)

// Guards by hand, each a little under and a little over its limit, in 2 h of hard
// effort at 1.5 L/h (1.2 to 1.9), 60 kg, 0.15 L/h of breath, 40 mmol/L.
func TestGuardsByHand(t *testing.T) {
	b := Basis{
		SweatRate: Between(1.5, 1.2, 1.9), RespiratoryLH: 0.1, ExchangeLH: 0.05, Sodium: Between(40, 30, 50),
		Body: Body{MassKg: 60}, Usual: Usual{Known: true, LH: 0.6},
	}
	s := Session{Minutes: [Lengths]float64{120, 120, 120}, Effort: fuel.Hard, Heat: Hot}
	menu := byHand()
	menu[Drink2] = Item{InUse: true, ID: "strong", Step: 50, Unit: Unit{FluidL: 0.001, MassKg: 0.001, CarbohydrateG: 0.16, Split: fuel.Split{Glucose: 0.08, Fructose: 0.08}}}
	menu[Food3] = Item{InUse: true, ID: "unknown", Step: 0.5, Unit: Unit{CarbohydrateG: 10, MassKg: 0.02, Split: fuel.Split{Unknown: 10}}}
	menu[Food4] = Item{InUse: true, ID: "fruit", Step: 0.5, Unit: Unit{CarbohydrateG: 10, MassKg: 0.02, Split: fuel.Split{Fructose: 10}}}
	p := newPlanner(t, b, s, menu, Aim{})
	for _, c := range []struct {
		guard      Guard
		calm, loud Mix
	}{
		{GainInMass, Mix{Water: 2900, Food1: 3.3}, Mix{Water: 2900, Food1: 3.4}},
		{OverCeiling, Mix{Water: 2300, Food1: 3.3}, Mix{Water: 2300, Food1: 3.4}},
		{OverUsual, Mix{Water: 1200}, Mix{Water: 1201}},
		{NearStomach, Mix{Water: 2000}, Mix{Water: 2001}}, {OverStomach, Mix{Water: 2400}, Mix{Water: 2401}},
		{PastLimit, Mix{Water: 1981}, Mix{Water: 1979}}, // 3.3 L less 2.2 % of 60 kg
		{StrongDrink, Mix{Drink2: 500, Water: 500}, Mix{Drink2: 500, Water: 480}},
		{DryFood, Mix{Water: 220, Food2: 1}, Mix{Water: 219, Food2: 1}}, {DryFood, Mix{Drink1: 440, Food2: 1}, Mix{Drink1: 438, Food2: 1}},
		{OverCarbohydrate, Mix{Food4: 6, Food3: 6}, Mix{Food4: 6, Food3: 6.1}},
		{OneSource, Mix{Food4: 12}, Mix{Food4: 12.1}}, {SplitUnknown, Mix{Food2: 4, Food3: 2}, Mix{Food2: 4, Food3: 2.1}},
		{OverSodium, Mix{Salt: 7}, Mix{Salt: 7.1}}, // 2758.8 mg are lost, 7.01 g of salt
	} {
		if q := p.Evaluate(Expected, c.calm); q.Guards.Has(c.guard) {
			t.Errorf("%s speaks at %v", c.guard.Code(), c.calm)
		}
		if q := p.Evaluate(Expected, c.loud); !q.Guards.Has(c.guard) {
			t.Errorf("%s is silent at %v: %v", c.guard.Code(), c.loud, q.Guards.Codes())
		}
	}
	s.Minutes = [Lengths]float64{30, 30, 30} // none is needed, a little is no fault
	short := newPlanner(t, b, s, menu, Aim{})
	for portions, over := range map[float64]bool{1.5: false, 1.4: false, 1.55: true} {
		if got := short.Evaluate(Expected, Mix{Food4: portions}).Guards.Has(OverCarbohydrate); got != over {
			t.Errorf("%g g/h in half an hour: %v", 20*portions, got)
		}
	}
	q := p.Evaluate(Expected, Mix{Water: 2401})
	if q.Guards.Has(NearStomach) {
		t.Error("past the stomach, and also near it")
	}
	if q := p.Evaluate(Expected, Mix{Food2: 5}); q.Guards.Has(SplitUnknown) || !q.Guards.Has(OneSource) {
		t.Errorf("62.5 g/h of glucose: %v", q.Guards.Codes())
	}
}

// A loss that no stomach keeps up with, breath and gas exchange counted: 2.1 L/h and
// 0.15 L/h for 2 h are 4.5 L; 2.4 L are taken, 2.1 L are 3.5 % of 60 kg, the limit is 2.
// At 1.6 L/h it is 1.1 L or 1.8 %; at 1.65 L/h 1.2 L, just the limit.
func TestOutrunsByHand(t *testing.T) {
	for rate, want := range map[float64]bool{2.1: true, 1.7: true, 1.66: true, 1.64: false, 1.6: false} {
		b := Basis{SweatRate: Between(rate, rate, rate), RespiratoryLH: 0.1, ExchangeLH: 0.05, Body: Body{MassKg: 60}}
		p := newPlanner(t, b, Session{Minutes: [Lengths]float64{120, 120, 120}, Heat: Hot}, NewMenu(), Aim{})
		if got := p.Evaluate(Expected, Mix{}).Guards.Has(LossOutruns); got != want {
			t.Errorf("%g L/h: %v", rate, got)
		}
	}
}

// A gel of any place on the menu tells how much water its like is taken with; a stomach
// of 3 was calm, one of 3.2 was not.
func TestWaterForGelsByHand(t *testing.T) {
	menu := byHand()
	menu[Food4], menu[Food2] = menu[Food2], Item{}
	p := newPlanner(t, courtBasis(), courtSession(), menu, Aim{})
	for rating, want := range map[float64]float64{0: 120, 3: 120, 3.2: 220} {
		if got := p.From(Mix{Food4: 1}, Background{Stomach: proposal.Is(rating)}).gelWaterEach(); got != want {
			t.Errorf("stomach %g: %g mL", rating, got)
		}
	}
	if got := p.From(Mix{}, Background{Stomach: proposal.Is(1)}).gelWaterEach(); got != 220 {
		t.Errorf("no gel in the habit: %g mL", got)
	}
	// A third less than what they were taken with, from 120 to 220; half of a drink counts.
	for _, c := range []struct {
		habit Mix
		want  float64
	}{
		{Mix{Food4: 2, Water: 480}, 160}, {Mix{Food4: 2, Water: 360}, 120}, {Mix{Food4: 2, Water: 359}, 120}, {Mix{Food4: 2, Water: 660}, 220},
		{Mix{Food4: 2, Water: 900}, 220}, {Mix{Food4: 2, Water: 240, Drink1: 480}, 160}, {Mix{Food4: 3, Water: 600, Salt: 2}, 400.0 / 3},
	} {
		if got := p.From(c.habit, Background{Stomach: proposal.Is(1)}).gelWaterEach(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v: %g mL, want %g", c.habit, got, c.want)
		}
	}
}

// A bit that is no guard is not listed; a set has each of its own, most serious first.
func TestGuardSets(t *testing.T) {
	if list := (guardEnd | OverSodium | GainInMass).Each(); len(list) != 2 || list[0] != GainInMass || list[1] != OverSodium {
		t.Errorf("%v", list)
	}
	for g, stops := range map[Guard]bool{GainInMass: true, OverCeiling: true, OverStomach: false, OverSodium | PastLimit: false} {
		if g.Stops() != stops {
			t.Errorf("%v stops: %v", g.Codes(), g.Stops())
		}
	}
}
