package plan

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
)

func products(t *testing.T) []fuel.Product {
	t.Helper()
	c, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	return c.Products()
}

// sound fails where a number of a prediction is not one, or lies outside its
// own range.
func sound(t tester, q *Prediction) {
	t.Helper()
	for name, r := range map[string]Ranged{
		"loss": q.LossL, "deficit L": q.DeficitL, "deficit": q.Deficit, "sodium loss": q.Sodium.LossMg,
		"sodium loss rate": q.Sodium.LossMgH, "sodium share": q.Sodium.Share, "hold": q.Sodium.HoldMgH,
	} {
		if !r.Known {
			continue
		}
		finite := !math.IsNaN(r.Low+r.Value+r.High) && !math.IsInf(r.Low+r.Value+r.High, 0)
		if !finite || r.Low > r.Value+1e-9*math.Abs(r.Value) || r.Value > r.High+1e-9*math.Abs(r.Value) {
			t.Fatalf("%s: %g in %g to %g", name, r.Value, r.Low, r.High)
		}
	}
	for name, x := range map[string]float64{
		"drunk": q.Fluid.DrunkL, "rate": q.Fluid.RateLH, "share": q.Fluid.Share, "carbohydrate": q.Carbohydrate.TotalGH,
		"strength": q.StrengthPercent, "sodium": q.Sodium.InMgH, "mmol/L": q.Sodium.DrunkMmolL, "plasma": q.Plasma.MmolL,
		"ceiling": q.Ceiling.FluidL, "fructose": q.Carbohydrate.FructoseShare,
	} {
		if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
			t.Fatalf("%s is %g", name, x)
		}
	}
}

func TestPredictionIsSound(t *testing.T) {
	list := products(t)
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		mix := d.mix(p.menu)
		for l := Short; l < Lengths; l++ {
			q := p.Evaluate(l, mix)
			sound(t, &q)
			slots, carbohydrate, sodium := 0.0, 0.0, 0.0
			for s := range mix {
				slots += q.Fluid.BySlotML[s] / 1000
				carbohydrate += q.Carbohydrate.BySlotGH[s]
				sodium += q.Sodium.BySlotMgH[s]
			}
			near(t, "fluid of the slots", slots, q.Fluid.DrunkL+q.Fluid.FoodWaterL)
			near(t, "carbohydrate of the slots", carbohydrate, q.Carbohydrate.TotalGH)
			near(t, "sodium of the slots", sodium, q.Sodium.InMgH)
			near(t, "families", q.Carbohydrate.GlucoseGH+q.Carbohydrate.FructoseGH+q.Carbohydrate.UnknownGH, q.Carbohydrate.TotalGH)
			breath := (p.Basis().RespiratoryLH + p.Basis().ExchangeLH) * p.hours(l)
			taken := 0.0
			for s, x := range mix {
				if p.menu[s].InUse {
					taken += p.menu[s].Unit.MassKg * x
				}
			}
			near(t, "what the scale says", q.LossL.Value+breath-taken, q.DeficitL.Value)
			near(t, "by drinks alone", (q.LossL.Value+breath-q.Fluid.DrunkL)*100/p.Basis().Body.MassKg, q.ByDrinks.Value)
			near(t, "not replaced", q.LossL.Value-q.Fluid.DrunkL, q.Fluid.NotReplacedL.Value)
		}
	})
}

func near(t tester, name string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9*(1+math.Abs(want)) {
		t.Fatalf("%s: %g, want %g", name, got, want)
	}
}

// More water, all else held, never means more deficit, strength or carbohydrate.
func TestMoreWaterNeverRaises(t *testing.T) {
	list := products(t)
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		mix := d.mix(p.menu)
		more := mix
		more[Water] += d.between(0, 2000)
		a, b := p.Evaluate(Expected, mix), p.Evaluate(Expected, more)
		if b.DeficitL.Value > a.DeficitL.Value || b.Deficit.Value > a.Deficit.Value {
			t.Fatalf("deficit rises from %g to %g", a.Deficit.Value, b.Deficit.Value)
		}
		if b.StrengthPercent > a.StrengthPercent && a.Fluid.DrunkL > 0 {
			t.Fatalf("strength rises from %g to %g", a.StrengthPercent, b.StrengthPercent)
		}
		if b.Carbohydrate.TotalG > a.Carbohydrate.TotalG {
			t.Fatal("carbohydrate rises")
		}
	})
}

// However the sliders are moved, no plan passes its ceiling, nor gets nearer
// to it from above than it was.
func TestMovesNeverPassTheCeiling(t *testing.T) {
	list := products(t)
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		mix := d.mix(p.menu)
		for range 1 + d.IntN(8) {
			l := Length(d.IntN(Lengths))
			slot := Slot(d.IntN(Slots+2) - 1)
			to := oneOf(d, -50, 0, 200, 1e9, math.Inf(1), d.between(0, 3000), d.between(0, 10))
			before := p.Evaluate(l, mix)
			moved, why := p.Move(l, mix, slot, to)
			after := p.Evaluate(l, moved)
			intake := after.Fluid.DrunkL + after.Fluid.FoodWaterL
			allowed := math.Max(after.Ceiling.FluidL, before.Fluid.DrunkL+before.Fluid.FoodWaterL)
			if intake > allowed*(1+1e-9)+1e-9 {
				t.Fatalf("%g L, ceiling %g L, before %g L", intake, after.Ceiling.FluidL, before.Fluid.DrunkL+before.Fluid.FoodWaterL)
			}
			if after.Guards.Has(OverCeiling|GainInMass) && !before.Guards.Has(OverCeiling|GainInMass) {
				t.Fatalf("guards %v after a move", after.Guards.Codes())
			}
			if slot >= 0 && slot < Slots && moved[slot] != to && why == Free {
				t.Fatalf("slot %d stopped at %g of %g without a reason", slot, moved[slot], to)
			}
			mix = moved
		}
	})
}

func TestMoveGivesItsReason(t *testing.T) {
	p := courtPlanner(t)
	long := courtSession()
	long.Minutes = [Lengths]float64{240, 240, 240}
	b := courtBasis()
	b.SweatRate = Between(1, 0.99, 1.1)
	tight := newPlanner(t, b, long, fullMenu(t), Aim{})
	cases := []struct {
		name string
		p    *Planner
		slot Slot
		to   float64
		want float64
		why  Reason
	}{
		{"free", p, Water, 900, 900, Free},
		{"low end of the loss", p, Water, 2500, 1855, LowEnd},
		{"past three hours", tight, Water, 3000, 2676, LongSession},
		{"negative", p, Water, -5, 0, NotNegative},
		{"food slider", p, Food4, 40, 7.5, SliderEnd},
		{"not a number", p, Water, math.NaN(), 600, NotInUse},
		{"no such slot", p, Slot(12), 1, 0, NotInUse},
		{"salt slider", p, Salt, 50, 6.6, SodiumLost},
	}
	for _, c := range cases {
		mix, why := c.p.Move(Expected, courtHabit(), c.slot, c.to)
		got := 0.0
		if c.slot < Slots {
			got = mix[c.slot]
		}
		if math.Abs(got-c.want) > 1e-9 || why != c.why {
			t.Errorf("%s: %g %q, want %g %q", c.name, got, why, c.want, c.why)
		}
	}
	b.Sodium = Between(10, 8, 12)
	little := newPlanner(t, b, courtSession(), fullMenu(t), Aim{})
	if mix, why := little.Move(Expected, Mix{}, Salt, 4); why != SodiumLost || mix[Salt] != 1.0 {
		t.Errorf("salt %g %q", mix[Salt], why)
	}
}

// From above its ceiling a habit can only be moved down.
func TestHabitAboveTheCeilingComesDown(t *testing.T) {
	p := courtPlanner(t)
	habit := Mix{Water: 3000}
	if q := p.Evaluate(Expected, habit); !q.Guards.Stops() {
		t.Fatal("an over-drinking habit passes")
	}
	if mix, why := p.Move(Expected, habit, Drink1, 50); mix[Drink1] != 0 || why != LowEnd {
		t.Errorf("drink added above the ceiling: %g %q", mix[Drink1], why)
	}
	if mix, why := p.Move(Expected, habit, Water, 2900); mix[Water] != 2900 || why != Free {
		t.Errorf("water lowered: %g %q", mix[Water], why)
	}
	if under := p.UnderCeiling(Expected, habit); under[Water] != 2450 {
		t.Errorf("under the ceiling: %g", under[Water])
	}
}

// The mix of another length keeps the rates and stays under that length's ceiling.
func TestScaledStaysUnderTheCeiling(t *testing.T) {
	list := products(t)
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		mix := d.mix(p.menu)
		for l := Short; l < Lengths; l++ {
			scaled := p.Scaled(mix, Expected, l)
			q := p.Evaluate(l, scaled)
			if q.Guards.Has(OverCeiling) {
				t.Fatalf("length %d: %g L over %g L", l, q.Fluid.DrunkL+q.Fluid.FoodWaterL, q.Ceiling.FluidL)
			}
			for s := range scaled {
				if scaled[s] > mix[s]*p.session.Minutes[l]/p.session.Minutes[Expected]+1e-9 {
					t.Fatalf("slot %d grows from %g to %g", s, mix[s], scaled[s])
				}
			}
		}
	})
}

// One guard each: the mix at which it speaks, and one at which it is silent.
func TestGuards(t *testing.T) {
	p := courtPlanner(t)
	strong := newPlanner(t, courtBasis(), courtSession(), menuOf(t, []string{"drink-16"}, nil), Aim{})
	sugar := newPlanner(t, courtBasis(), courtSession(), menuOf(t, []string{"rehydration-solution"}, []string{"bread-white"}), Aim{})
	wild := courtBasis()
	wild.SweatRate = Between(3, 2.2, 4)
	outruns := newPlanner(t, wild, courtSession(), fullMenu(t), Aim{})
	running := courtSession()
	running.Running = true
	runs := newPlanner(t, courtBasis(), running, fullMenu(t), Aim{})
	cases := []struct {
		guard      Guard
		p          *Planner
		loud, calm Mix
	}{
		{GainInMass, p, Mix{Water: 3400}, Mix{Water: 3200}},
		{OverCeiling, p, Mix{Water: 2500}, Mix{Water: 2450}},
		{OverStomach, p, Mix{Water: 2150}, Mix{Water: 2100}},
		{NearStomach, p, Mix{Water: 1800}, Mix{Water: 1750}},
		{NearStomach, runs, Mix{Water: 1300}, Mix{Water: 1250}},
		{OverStomach, runs, Mix{Water: 1800}, Mix{Water: 1750}},
		{OverUsual, p, Mix{Water: 1800}, Mix{Water: 1750}},
		{PastLimit, p, Mix{Water: 1650}, Mix{Water: 1750}},
		{StrongDrink, strong, Mix{Drink1: 500}, Mix{Drink1: 500, Water: 510}},
		{DryFood, p, Mix{Food3: 1, Water: 210}, Mix{Food3: 1, Water: 220}},
		{OverCarbohydrate, p, Mix{Food2: 5}, Mix{Food2: 4}},
		{OneSource, sugar, Mix{Food1: 10}, Mix{Food1: 4}},
		{SplitUnknown, p, Mix{Drink1: 1800}, Mix{Drink1: 1700}},
		{OverSodium, p, Mix{Salt: 7.5}, Mix{Salt: 7}},
	}
	for _, c := range cases {
		if q := c.p.Evaluate(Expected, c.loud); !q.Guards.Has(c.guard) {
			t.Errorf("%s is silent at %v: %v", c.guard.Code(), c.loud, q.Guards.Codes())
		}
		if q := c.p.Evaluate(Expected, c.calm); q.Guards.Has(c.guard) {
			t.Errorf("%s speaks at %v", c.guard.Code(), c.calm)
		}
	}
	if q := outruns.Evaluate(Expected, Mix{}); !q.Guards.Has(LossOutruns) {
		t.Error("a loss no stomach keeps up with is not said")
	}
	if q := p.Evaluate(Expected, Mix{}); q.Guards.Has(LossOutruns) {
		t.Error("a loss of 1.9 L/h needs 1.05 L/h to end at 2 %")
	}
}

// Over-drinking with plain water by a small athlete is predicted to lower
// plasma sodium under 135, and is said; a minor gets no figure.
func TestPlasmaSodiumCaution(t *testing.T) {
	b := courtBasis()
	b.Body = Body{MassKg: 45, HeightM: 1.55, AgeYears: 30, Sex: "female"}
	b.SweatRate = Between(0.4, 0.3, 0.53)
	s := courtSession()
	s.Minutes = [Lengths]float64{240, 300, 360}
	p := newPlanner(t, b, s, NewMenu(), Aim{})
	q := p.Evaluate(Expected, Mix{Water: 4000})
	if !q.Plasma.Known || !q.Plasma.Show || !q.Plasma.Outside || !q.Guards.Has(LowPlasmaSodium) {
		t.Errorf("plasma %+v, guards %v", q.Plasma, q.Guards.Codes())
	}
	q = p.Evaluate(Expected, Mix{Water: 900})
	if q.Plasma.Show || q.Guards.Has(LowPlasmaSodium) || q.Plasma.Outside {
		t.Errorf("plasma %+v at half the loss", q.Plasma)
	}
	b.Body.AgeYears = 16
	if q := newPlanner(t, b, s, NewMenu(), Aim{}).Evaluate(Expected, Mix{Water: 4000}); q.Plasma.Known || !q.Plasma.Show {
		t.Errorf("a minor has %+v", q.Plasma)
	}
}

func TestNewRefuses(t *testing.T) {
	good, s, m := courtBasis(), courtSession(), fullMenu(t)
	change := func(f func(*Basis)) Basis { b := good; f(&b); return b }
	cases := []struct {
		name  string
		b     Basis
		field evidence.Field
		code  string
	}{
		{"no rate", change(func(b *Basis) { b.SweatRate = Ranged{} }), evidence.SweatRate, evidence.CodeMissing},
		{"rate not a number", change(func(b *Basis) { b.SweatRate.Value = math.NaN() }), evidence.SweatRate, evidence.CodeNotFinite},
		{"range the wrong way", change(func(b *Basis) { b.SweatRate.Low = 9 }), evidence.SweatRate, evidence.CodeOrder},
		{"negative low end", change(func(b *Basis) { b.SweatRate.Low = -1 }), evidence.SweatRate, evidence.CodeNegative},
		{"no mass", change(func(b *Basis) { b.Body.MassKg = 0 }), evidence.BodyMass, evidence.CodeMissing},
		{"mass infinite", change(func(b *Basis) { b.Body.MassKg = math.Inf(1) }), evidence.BodyMass, evidence.CodeNotFinite},
		{"sodium negative", change(func(b *Basis) { b.Sodium.Low = -3 }), evidence.PatchSodium, evidence.CodeNegative},
		{"used to infinite", change(func(b *Basis) { b.Usual.LH = math.Inf(1) }), evidence.DrinkingRate, evidence.CodeNotFinite},
	}
	for _, c := range cases {
		_, err := New(c.b, s, m, Aim{})
		var problem evidence.Problem
		if !errors.As(err, &problem) || problem.Field != c.field || problem.Code != c.code {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	s.Minutes = [Lengths]float64{120, 105, 150}
	if _, err := New(good, s, m, Aim{}); err == nil {
		t.Error("short session longer than the expected")
	}
	if _, err := New(good, Session{}, m, Aim{}); err == nil {
		t.Error("no duration")
	}
	m[Drink1].Unit.CarbohydrateG = math.NaN()
	if _, err := New(good, courtSession(), m, Aim{}); err == nil {
		t.Error("a drink that is not a number")
	}
	if _, err := New(good, courtSession(), fullMenu(t), Aim{Deficit: Within(3, 1)}); err == nil {
		t.Error("an aim the wrong way round")
	}
}

func TestMenuRefuses(t *testing.T) {
	m := NewMenu()
	unknown := fuel.Product{ID: "x", Name: "x", Form: fuel.Drink, Density: fuel.Of(1)}
	for name, err := range map[string]error{
		"a food as a drink":       m.SetDrink(Drink1, find(t, "banana")),
		"a drink as a food":       m.SetFood(Food1, find(t, "cola")),
		"a drink in a food slot":  m.SetDrink(Food1, find(t, "cola")),
		"a food in a drink slot":  m.SetFood(Water, find(t, "banana")),
		"a food in the salt":      m.SetFood(Salt, find(t, "banana")),
		"carbohydrate not known":  m.SetDrink(Drink1, unknown),
		"a drink without density": m.SetDrink(Drink1, fuel.Product{ID: "y", Form: fuel.Drink}),
	} {
		if !errors.Is(err, ErrMenu) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := m.SetFood(Food1, find(t, "gel")); err != nil || !m[Food1].SodiumUnknown {
		t.Errorf("gel: %v %+v", err, m[Food1])
	}
	m.Clear(Food1)
	m.Clear(Water)
	if m[Food1].InUse || !m[Water].InUse {
		t.Error("water goes, or a food stays")
	}
}

func TestThirstWillDo(t *testing.T) {
	hot, mild := courtSession(), courtSession()
	mild.Heat, mild.Effort = Temperate, fuel.Moderate
	short := hot
	short.Minutes[Expected] = 90
	slow := courtBasis()
	slow.SweatRate = Between(0.8, 0.6, 1.1)
	for _, c := range []struct {
		name string
		b    Basis
		s    Session
		a    Aim
		want bool
	}{
		{"long, hot and hard", courtBasis(), hot, Aim{}, false},
		{"90 min", courtBasis(), short, Aim{}, true},
		{"long and mild, slow sweat", slow, mild, Aim{}, true},
		{"long and mild, much sweat", courtBasis(), mild, Aim{}, false},
		{"60 g/h wanted", slow, short, Aim{Carbohydrate: Within(60, 90)}, false},
		{"30 g/h wanted", slow, short, Aim{Carbohydrate: Within(30, 60)}, true},
	} {
		if got := ThirstWillDo(c.b, c.s, c.a); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}
