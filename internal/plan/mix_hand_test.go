package plan

import (
	"math"
	"testing"

	"ebbwell/internal/fuel"
	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/sweat"
)

// byHand is a menu of round numbers: 6 g, 50 mg and 2 mg of potassium in 100 mL of a
// drink; 20 g of which 12 glucose and 6 fructose, 40 mg, 100 kcal, 30 mL of water and
// 50 g in a portion of food; a gel of 25 g in 40 g with 15 mL.
func byHand() Menu {
	m := NewMenu()
	m[Drink1] = Item{InUse: true, ID: "drink", Step: 50, Unit: Unit{
		FluidL: 0.001, MassKg: 0.00102, CarbohydrateG: 0.06, Split: fuel.Split{Glucose: 0.04, Fructose: 0.02}, SodiumMg: 0.5, PotassiumMg: 0.02, EnergyKcal: 0.24,
	}}
	m[Food1] = Item{InUse: true, ID: "food", Step: 0.5, Unit: Unit{
		FoodWaterL: 0.03, MassKg: 0.05, CarbohydrateG: 20, Split: fuel.Split{Glucose: 12, Fructose: 6, Unknown: 2}, SodiumMg: 40, PotassiumMg: 10, EnergyKcal: 100,
	}}
	m[Food2] = Item{InUse: true, ID: "gel", Step: 1, Gel: true, Unit: Unit{
		FoodWaterL: 0.015, MassKg: 0.04, CarbohydrateG: 25, Split: fuel.Split{Glucose: 25}, SodiumMg: 50,
	}}
	return m
}

// A whole evaluation by hand: 2 h at 1 L/h (0.8 to 1.3), 0.1 L/h of breath, 60 kg,
// 40 mmol/L of sodium (30 to 50).
func TestEvaluateByHand(t *testing.T) {
	b := Basis{
		SweatRate: Between(1, 0.8, 1.3), RespiratoryLH: 0.08, ExchangeLH: 0.02, Sodium: Between(40, 30, 50),
		Body: Body{MassKg: 60, HeightM: 1.7, AgeYears: 30, Sex: sweat.Female}, PotassiumMmolL: 5,
	}
	s := Session{Minutes: [Lengths]float64{60, 120, 240}, Effort: fuel.Hard, Heat: Hot}
	p := newPlanner(t, b, s, byHand(), Aim{})
	mix := Mix{Water: 400, Drink1: 500, Food1: 1.5, Food2: 2, Salt: 0.5}
	q := p.Evaluate(Expected, mix)
	sodium := 250 + 60 + 100 + 196.7 // drink, food, gels, 0.5 g of salt
	for name, c := range map[string][2]float64{
		"minutes": {q.Minutes, 120}, "loss": {q.LossL.Value, 2}, "loss low": {q.LossL.Low, 1.6}, "loss high": {q.LossL.High, 2.6},
		"drunk": {q.Fluid.DrunkL, 0.9}, "food water": {q.Fluid.FoodWaterL, 0.075}, "rate": {q.Fluid.RateLH, 0.45},
		"not replaced": {q.Fluid.NotReplacedL.Value, 1.1}, "not replaced low": {q.Fluid.NotReplacedL.Low, 0.7}, "share": {q.Fluid.Share, 0.4875},
		"water": {q.Fluid.BySlotML[Water], 400}, "in food": {q.Fluid.BySlotML[Food1], 45}, "in gels": {q.Fluid.BySlotML[Food2], 30},
		"deficit":       {q.DeficitL.Value, 2 + 0.2 - 0.4 - 0.51 - 0.075 - 0.08},
		"deficit high":  {q.DeficitL.High, 2.6 + 0.2 - 0.4 - 0.51 - 0.075 - 0.08},
		"deficit %":     {q.Deficit.Value, (2 + 0.2 - 0.4 - 0.51 - 0.075 - 0.08) / 0.6},
		"by drinks":     {q.ByDrinks.Value, 1.3 / 0.6},
		"by drinks low": {q.ByDrinks.Low, 0.9 / 0.6},
		"carbohydrate":  {q.Carbohydrate.TotalG, 110}, "an hour": {q.Carbohydrate.TotalGH, 55}, "of the drink": {q.Carbohydrate.BySlotGH[Drink1], 15},
		"glucose": {q.Carbohydrate.GlucoseGH, (20 + 18 + 50) / 2.0}, "fructose": {q.Carbohydrate.FructoseGH, 9.5}, "unknown": {q.Carbohydrate.UnknownGH, 1.5},
		"fructose share": {q.Carbohydrate.FructoseShare, 19 / 107.0}, "energy": {q.Carbohydrate.EnergyKcal, 270},
		"advice": {q.Carbohydrate.Advice.Range.High, 60}, "strength": {q.StrengthPercent, 30 / 9.0},
		"sodium": {q.Sodium.InMg, sodium}, "sodium an hour": {q.Sodium.InMgH, sodium / 2}, "of the salt": {q.Sodium.BySlotMgH[Salt], 98.35},
		"mmol/L drunk": {q.Sodium.DrunkMmolL, (250 + 196.7) / 22.99 / 0.9}, "sodium lost": {q.Sodium.LossMg.Value, 2 * 40 * 22.99},
		"lost an hour": {q.Sodium.LossMgH.Value, 40 * 22.99}, "lost low": {q.Sodium.LossMgH.Low, 40 * 22.99 * (1 - math.Hypot(0.2, 0.25))},
		"lost high": {q.Sodium.LossMgH.High, 40 * 22.99 * (1 + math.Hypot(0.3, 0.25))}, "replaced": {q.Sodium.Share.Value, sodium / (2 * 40 * 22.99)},
	} {
		if math.Abs(c[0]-c[1]) > 1e-9*(1+math.Abs(c[1])) {
			t.Errorf("%s: %g, want %g", name, c[0], c[1])
		}
	}
	if q.Sodium.Incomplete {
		t.Error("all sodium is known")
	}
	if none := p.Evaluate(Expected, Mix{}); none.StrengthPercent != 0 || none.Sodium.DrunkMmolL != 0 {
		t.Errorf("nothing drunk has %g %% and %g mmol/L", none.StrengthPercent, none.Sodium.DrunkMmolL)
	}
	if less := p.Evaluate(Expected, Mix{Water: -300}); less.Fluid.DrunkL != 0 {
		t.Errorf("less than nothing is %g L", less.Fluid.DrunkL)
	}
}

// Sodium that would hold plasma is asked for past 2 h, with salty sweat, where most is
// replaced; and not known where more is drunk than lost.
func TestHoldMattersByHand(t *testing.T) {
	at := func(minutes, mmol, share float64) Sodium {
		b := Basis{SweatRate: Between(1, 0.9, 1.1), Sodium: Between(mmol, mmol, mmol), Body: Body{MassKg: 70}}
		p := newPlanner(t, b, Session{Minutes: [Lengths]float64{minutes, minutes, minutes}}, NewMenu(), Aim{})
		return p.Evaluate(Expected, Mix{Water: share * 1000 * minutes / 60}).Sodium
	}
	for _, c := range []struct {
		minutes, mmol, share float64
		matters              bool
	}{
		{121, 40, 0.81, true}, {120, 40, 0.81, false}, {121, 39.9, 0.81, false}, {121, 40, 0.8, false}, {125, 41, 0.85, true}, {115, 60, 0.95, false}, {180, 37, 0.95, false}, {180, 60, 0.75, false},
	} {
		if got := at(c.minutes, c.mmol, c.share); got.HoldMatters != c.matters || !got.HoldMgH.Known {
			t.Errorf("%+v: %+v", c, got)
		}
	}
	if got := at(180, 50, 1.05); got.HoldMgH.Known {
		t.Errorf("more drunk than lost: %+v", got.HoldMgH)
	}
	if got := at(180, 50, 1); !got.HoldMgH.Known || math.Abs(got.HoldMgH.Value-50*22.99) > 1e-6 {
		t.Errorf("all replaced: %+v, want all sodium back", got.HoldMgH)
	}
	if got := at(180, 20, 0.8); got.HoldMgH.Value != 0 { // 20 + 4 - 159 x 0.2 is below nothing
		t.Errorf("little sodium: %+v", got.HoldMgH)
	}
	// 60 + 4 - 31.8 = 32.2 mmol a litre with the 4 mmol/L of potassium that are assumed.
	if got := at(180, 60, 0.8); math.Abs(got.HoldMgH.Value-32.2*22.99) > 1e-6 {
		t.Errorf("much sodium: %+v", got.HoldMgH)
	}
}

// Plasma sodium by hand: 2 L lost with 40 and 5 mmol/L, 1.9 L drunk without a
// mineral, 0.16 L breathed out; total body water 30.338 L.
func TestPlasmaByHand(t *testing.T) {
	b := Basis{
		SweatRate: Between(1, 0.9, 1.1), RespiratoryLH: 0.08, Sodium: Between(40, 30, 50), PotassiumMmolL: 5,
		Body: Body{MassKg: 60, HeightM: 1.65, AgeYears: 30, Sex: sweat.Female},
	}
	s := Session{Minutes: [Lengths]float64{120, 120, 120}}
	menu := byHand()
	p := newPlanner(t, b, s, menu, Aim{})
	water := 30.3375
	after := func(drunk, food, lost, mmol float64) float64 {
		return (163.8*water+1.03*(mmol-lost*45))/(water+drunk+food-lost-0.16) - 23.8
	}
	q := p.Evaluate(Expected, Mix{Water: 1900})
	if !q.Plasma.Known || !q.Plasma.Show || math.Abs(q.Plasma.MmolL-after(1.9, 0, 2, 0)) > 0.01 {
		t.Errorf("%+v, want %g", q.Plasma, after(1.9, 0, 2, 0))
	}
	q = p.Evaluate(Expected, Mix{Water: 900, Drink1: 900, Food1: 2, Salt: 1})
	mmol := (450+80+393.4)/22.99 + (18+20)/39.098
	if math.Abs(q.Plasma.MmolL-after(1.8, 0.06, 2, mmol)) > 0.01 {
		t.Errorf("with minerals: %+v, want %g", q.Plasma, after(1.8, 0.06, 2, mmol))
	}
	for ml, want := range map[float64]struct{ show, outside bool }{1750: {false, false}, 1800: {true, false}, 2100: {true, false}, 2200: {true, true}} {
		if got := p.Evaluate(Expected, Mix{Water: ml}).Plasma; got.Show != want.show || got.Outside != want.outside {
			t.Errorf("%g mL of 2 L: %+v", ml, got)
		}
	}
	b.SweatRate = Between(2, 1.9, 2.1)
	dry := newPlanner(t, b, s, menu, Aim{}) // 2.5 L are past -4 % of 60 kg, 2.2 L are not
	for ml, outside := range map[float64]bool{1700: true, 1900: false} {
		if got := dry.Evaluate(Expected, Mix{Water: ml}).Plasma; got.Outside != outside {
			t.Errorf("%g mL of 4 L: %+v", ml, got)
		}
	}
	for name, body := range map[string]Body{
		"a minor": {60, 1.65, 17.9, sweat.Female, false}, "no height": {60, 0, 30, sweat.Female, false}, "no sex": {60, 1.65, 30, "", false},
	} {
		b.Body = body
		if got := newPlanner(t, b, s, menu, Aim{}).Evaluate(Expected, Mix{Water: 1900}).Plasma; got.Known {
			t.Errorf("%s: %+v", name, got)
		}
	}
	b.Body = Body{60, 1.65, 18, sweat.Female, false}
	if got := newPlanner(t, b, s, menu, Aim{}).Evaluate(Expected, Mix{Water: 1900}).Plasma; !got.Known {
		t.Error("of age, and no figure")
	}
}

// What a proposal is asked with, from a plan: all in mL and g of the session.
func TestProposalCaseByHand(t *testing.T) {
	b := Basis{
		SweatRate: Between(1, 0.8, 1.3), RespiratoryLH: 0.08, ExchangeLH: 0.02, Sodium: Between(40, 30, 50),
		Body: Body{MassKg: 60, AgeYears: 30, Hidden: true}, Usual: Usual{Known: true, LH: 0.6},
	}
	s := Session{Minutes: [Lengths]float64{120, 120, 120}, Effort: fuel.Easy, Running: true, Heat: Cold}
	aim := Aim{Drinking: Within(0, 0.5), Strength: Within(0, 6), Allowed: [Slots]bool{Water: true, Drink1: true, Food2: true}}
	p := newPlanner(t, b, s, byHand(), aim).At([]Chance{
		{Minute: 30, Seconds: 60, CanEat: true}, {Minute: 60, Seconds: 600, Certainty: Maybe}, {Minute: 120, Seconds: 60}, {Minute: 130, Seconds: 60},
	}).From(Mix{Water: 400}, Background{Held: [Slots]bool{Food2: true}})
	c := p.proposalCase(Expected, p.Habit(), StepRules{FluidLH: 0.12, CarbohydrateGH: 11})
	for name, x := range map[string][2]float64{
		"loss": {c.LossML, 2000}, "low": {c.LowML, 1600}, "breath": {c.BreathML, 200}, "mass": {c.MassKg, 60}, "step": {c.StepLH, 0.12},
		"step g": {c.StepGH, 11}, "sodium": {c.SodiumMmolL.Value, 40}, "age": {c.Age.Value, 30}, "most": {c.MostLH, 0.5}, "strength": {c.MostStrength, 6},
		"advice": {c.AdviceMost, p.Evaluate(Expected, Mix{}).Carbohydrate.Advice.Range.High}, "breaks": {c.BreaksML, p.carried[Expected].High * 1000},
		"all breaks": {c.AllBreaksML, p.carriesAtMostML(Expected, p.chances)}, "habit": {c.Habit[Water], 400}, "aim": {c.DeficitAim, p.limit},
	} {
		if math.Abs(x[0]-x[1]) > 1e-9 {
			t.Errorf("%s: %g, want %g", name, x[0], x[1])
		}
	}
	if !c.Hidden || !c.Light || !c.Running || !c.Cool || c.Closed || !c.SodiumMmolL.Known || !c.Age.Known {
		t.Errorf("%+v", c)
	}
	want := []proposal.Chance{{Seconds: 60, CanEat: true, Certain: true}, {Seconds: 600}, {Seconds: 60, Certain: true}}
	if len(c.Chances) != len(want) {
		t.Fatalf("%+v", c.Chances)
	}
	for i := range want {
		if c.Chances[i] != want[i] {
			t.Errorf("chance %d: %+v", i, c.Chances[i])
		}
	}
	for slot, kind := range map[Slot]proposal.Kind{
		Water: proposal.Water, Drink1: proposal.Drink, Food1: proposal.Food, Food2: proposal.Gel, Salt: proposal.Salt, Drink2: proposal.None,
	} {
		if c.Sources[slot].Kind != kind {
			t.Errorf("slot %d is %v", slot, c.Sources[slot].Kind)
		}
	}
	if f := c.Sources[Food1]; f.FoodWaterML != 30 || f.CarbohydrateG != 20 || f.OneSourceG != 14 || f.SodiumMg != 40 || !f.Fixed {
		t.Errorf("food %+v", f)
	}
	if c.Sources[Drink1].Fixed || !c.Sources[Food2].Fixed || !c.Sources[Salt].Fixed {
		t.Error("what is held or not allowed stays, the rest may change")
	}
	// Limits of the aim that are no tighter than a stomach's, or than advice, are none.
	aim.Drinking, aim.Strength = Within(0, 0.8), Within(0, 8)
	b.Body.AgeYears, b.Sodium, s.Effort, s.Heat = 0, Ranged{}, fuel.Hard, Temperate
	c = newPlanner(t, b, s, byHand(), aim).proposalCase(Expected, Mix{}, DefaultStepRules())
	if c.MostLH != 0 || c.MostStrength != 0 || c.Age.Known || c.SodiumMmolL.Known || c.Light || c.Cool {
		t.Errorf("%+v", c)
	}
}

// Sodium is worth planning past 2 h, with salty sweat and much of it, or where the
// habit adds salt.
func TestSodiumMattersByHand(t *testing.T) {
	for _, c := range []struct {
		minutes, rate, mmol float64
		habit               Mix
		want                bool
	}{
		{120, 1.2, 60, Mix{}, false}, {121, 0.5, 20, Mix{}, true}, {60, 1.21, 40, Mix{}, true}, {60, 1.21, 39, Mix{}, false}, {60, 1.2, 40, Mix{}, false},
		{60, 1.25, 0, Mix{}, false}, {60, 1.25, 42, Mix{}, true}, {60, 1.15, 60, Mix{}, false}, {60, 1, 20, Mix{Salt: 0.1}, true}, {60, 1, 20, Mix{Water: 500}, false}, {110, 1, 20, Mix{}, false}, {130, 1, 20, Mix{}, true},
	} {
		b := Basis{SweatRate: Between(c.rate, c.rate, c.rate), Body: Body{MassKg: 70}, Sodium: Ranged{Known: c.mmol > 0, Value: c.mmol, Range: Between(0, c.mmol, c.mmol).Range}}
		p := newPlanner(t, b, Session{Minutes: [Lengths]float64{c.minutes, c.minutes, c.minutes}}, NewMenu(), Aim{}).From(c.habit, Background{})
		if got := p.SodiumMatters(Expected); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// What a stomach is used to over a session is its rate for the time.
func TestUsualFluidByHand(t *testing.T) {
	if litres, ok := courtPlanner(t).UsualFluid(Long); !ok || litres != 2.5 {
		t.Errorf("1 L/h in 150 min: %g %v", litres, ok)
	}
}

// The difference of two mixes, each figure the second less the first.
func TestCompareByHand(t *testing.T) {
	p := newPlanner(t, courtBasis(), courtSession(), byHand(), Aim{})
	a, b := Mix{Water: 1800}, Mix{Water: 500, Drink1: 1000, Food1: 1, Salt: 1}
	x, y, d := p.Evaluate(Expected, a), p.Evaluate(Expected, b), p.Compare(Expected, a, b)
	for name, c := range map[string][2]float64{
		"water": {d.Mix[Water], -1300}, "drink": {d.Mix[Drink1], 1000}, "litres": {d.DeficitL, 1.8 - 0.5 - 1.02 - 0.05}, "%": {d.Deficit, y.Deficit.Value - x.Deficit.Value},
		"drunk": {d.DrunkL, -0.3}, "rate": {d.RateLH, -0.3 / 1.75}, "carbohydrate": {d.CarbohydrateGH, 80 / 1.75}, "sodium": {d.SodiumMgH, (500 + 40 + 393.4) / 1.75}, "strength": {d.Strength, 4},
	} {
		near(t, name, c[0], c[1])
	}
	back := p.Compare(Expected, b, a)
	for name, c := range map[string][2]float64{
		"water": {back.Mix[Water], 1300}, "litres": {back.DeficitL, -d.DeficitL}, "%": {back.Deficit, -d.Deficit}, "drunk": {back.DrunkL, 0.3}, "rate": {back.RateLH, 0.3 / 1.75},
		"carbohydrate": {back.CarbohydrateGH, -80 / 1.75}, "sodium": {back.SodiumMgH, -(500 + 40 + 393.4) / 1.75}, "strength": {back.Strength, -4},
	} {
		near(t, name+" back", c[0], c[1])
	}
	if !d.Lost.Has(NearStomach) || d.Gained.Has(NearStomach) || !d.Gained.Has(PastLimit) || d.Lost.Has(PastLimit) {
		t.Errorf("gained %v, lost %v", d.Gained.Codes(), d.Lost.Codes())
	}
}
