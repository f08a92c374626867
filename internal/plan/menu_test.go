package plan

import (
	"errors"
	"math"
	"testing"

	"ebbwell/internal/evidence"
)

// The ends of sliders in the longest session, 150 min: 1.5 L/h of a drink are 3.75 L; 90
// g/h of a food of 20 g are 11.5 portions, of 2 g no more than 60, of 90 g no fewer than
// 4; without carbohydrate 7.5, as of salt by the gram.
func TestSliderEndsByHand(t *testing.T) {
	menu := byHand()
	menu[Food3] = Item{InUse: true, ID: "thin", Step: 0.5, Unit: Unit{CarbohydrateG: 2}}
	menu[Food4] = Item{InUse: true, ID: "rich", Step: 0.5, Unit: Unit{CarbohydrateG: 90}}
	p := newPlanner(t, courtBasis(), courtSession(), menu, Aim{})
	for s, want := range map[Slot]float64{Water: 3750, Drink1: 3750, Food1: 11.5, Food2: 9, Food3: 60, Food4: 4, Salt: 7.5, Drink2: 0} {
		if got := p.Menu()[s].Most; math.Abs(got-want) > 1e-9 {
			t.Errorf("slot %d: %g, want %g", s, got, want)
		}
	}
	menu[Food4].Step = 0.25
	if got := newPlanner(t, courtBasis(), courtSession(), menu, Aim{}).Menu()[Food4].Most; got != 4 {
		t.Errorf("by quarters: %g", got)
	}
	menu[Food1].Unit.CarbohydrateG, menu[Food2].Most = 0, 3
	p = newPlanner(t, courtBasis(), courtSession(), menu, Aim{})
	if got := p.Menu()[Food1].Most; math.Abs(got-7.5) > 1e-9 {
		t.Errorf("without carbohydrate: %g", got)
	}
	if got := p.Menu()[Food2].Most; got != 3 {
		t.Errorf("its own end: %g", got)
	}
}

// What a product holds by the mL and by the portion, from its label: a drink of 1.04
// g/mL with 6 g in 100 g; a food of which a portion is 40 g, half of it water.
func TestUnitsByHand(t *testing.T) { //nolint:gocognit // one product after the other
	m := NewMenu()
	if w := m[Water]; w.Unit != (Unit{FluidL: 0.001, MassKg: 0.001}) || w.Step != 50 || !w.InUse {
		t.Errorf("water: %+v", w)
	}
	if s := m[Salt]; s.Unit != (Unit{SodiumMg: 393.4}) || s.Step != 0.1 || !s.InUse {
		t.Errorf("salt: %+v", s)
	}
	for _, s := range []Slot{Drink1, Drink2, Drink3} {
		if err := m.SetDrink(s, find(t, "drink-6")); err != nil {
			t.Fatal(err)
		}
		u, one := m[s].Unit, find(t, "drink-6")
		if u.FluidL != 0.001 || u.FoodWaterL != 0 || math.Abs(u.MassKg-one.Density.Value/1000) > 1e-12 || m[s].Step != evidence.FluidIncrement || m[s].Gel {
			t.Errorf("drink: %+v", m[s])
		}
	}
	for _, s := range []Slot{Food1, Food4} {
		if err := m.SetFood(s, find(t, "banana")); err != nil {
			t.Fatal(err)
		}
		one := find(t, "banana")
		grams := m[s].Unit.MassKg * 1000
		if want := one.Per100.AvailableCarbohydrate().Value * grams / 100; grams < 50 || math.Abs(m[s].Unit.CarbohydrateG-want) > 1e-9 || m[s].Step != 0.5 || m[s].Gel || m[s].Unit.FluidL != 0 {
			t.Errorf("banana: %+v", m[s])
		}
		if water := m[s].Unit.FoodWaterL * 1000; !(water > 0.6*grams && water < 0.85*grams) {
			t.Errorf("a banana of %g g has %g g of water", grams, water)
		}
	}
	if err := m.SetFood(Food2, find(t, "gel")); err != nil || !m[Food2].Gel {
		t.Errorf("a gel is carried: %v %+v", err, m[Food2])
	}
	for s := range Slot(Slots) {
		err := m.SetDrink(s, find(t, "cola"))
		if (err == nil) != s.IsDrink() || s.IsDrink() != (s <= Drink3) {
			t.Errorf("a drink in slot %d: %v", s, err)
		}
		err = m.SetFood(s, find(t, "fig-bar"))
		if (err == nil) != s.IsFood() || s.IsFood() != (s >= Food1 && s <= Food4) {
			t.Errorf("a food in slot %d: %v", s, err)
		}
	}
	for s := range Slot(Slots) {
		m.Clear(s)
		if m[s].InUse != (s == Water || s == Salt) {
			t.Errorf("slot %d after it was cleared: %+v", s, m[s])
		}
	}
	if Slot(-1).IsDrink() || Slot(9).IsFood() {
		t.Error("what is no slot is a drink or a food")
	}
}

// An item that cannot be computed with is refused, whichever of its numbers it is.
func TestEachNumberOfAnItemIsChecked(t *testing.T) {
	for name, set := range map[string]func(*Item, float64){
		"volume": func(i *Item, x float64) { i.Unit.FluidL = x }, "food water": func(i *Item, x float64) { i.Unit.FoodWaterL = x }, "mass": func(i *Item, x float64) { i.Unit.MassKg = x },
		"carbohydrate": func(i *Item, x float64) { i.Unit.CarbohydrateG = x }, "glucose": func(i *Item, x float64) { i.Unit.Split.Glucose = x },
		"sodium": func(i *Item, x float64) { i.Unit.SodiumMg = x }, "most": func(i *Item, x float64) { i.Most = x }, "step": func(i *Item, x float64) { i.Step = x },
	} {
		for _, x := range []float64{-1, math.NaN(), math.Inf(1)} {
			m := byHand()
			set(&m[Food1], x)
			if _, err := New(courtBasis(), courtSession(), m, Aim{}); err == nil {
				t.Errorf("%s of %g is taken", name, x)
			}
			m[Food1].InUse = false
			if _, err := New(courtBasis(), courtSession(), m, Aim{}); err != nil {
				t.Errorf("%s of %g of what is not in use: %v", name, x, err)
			}
		}
	}
	m := byHand()
	m[Food1].Step = 0
	if _, err := New(courtBasis(), courtSession(), m, Aim{}); err == nil {
		t.Error("no step at all is taken")
	}
}

// Lengths that were not given are the expected one; equal ones are in order.
func TestLengthsByHand(t *testing.T) {
	p := newPlanner(t, courtBasis(), Session{Minutes: [Lengths]float64{0, 90, 0}}, NewMenu(), Aim{})
	if got := p.Session().Minutes; got != [Lengths]float64{90, 90, 90} {
		t.Errorf("%v", got)
	}
	for _, minutes := range [][Lengths]float64{{100, 90, 120}, {80, 90, 85}, {80, -90, 120}, {0, 0, 120}} {
		if _, err := New(courtBasis(), Session{Minutes: minutes}, NewMenu(), Aim{}); err == nil {
			t.Errorf("%v is taken", minutes)
		}
	}
	for l := range Lengths { // a length that is none is named by its place, from 1
		minutes := [Lengths]float64{90, 90, 90}
		minutes[l] = math.Inf(1)
		_, err := New(courtBasis(), Session{Minutes: minutes}, NewMenu(), Aim{})
		var problem evidence.Problem
		if !errors.As(err, &problem) || problem.Field != evidence.Duration || problem.Item != l+1 {
			t.Errorf("length %d: %+v", l, problem)
		}
	}
	for _, next := range []float64{-1, math.NaN()} {
		if _, err := New(courtBasis(), Session{Minutes: [Lengths]float64{90, 90, 90}, NextHours: next}, NewMenu(), Aim{}); err == nil {
			t.Errorf("%g h to the next is taken", next)
		}
	}
	b := courtBasis()
	b.ExchangeLH = -0.02 // little burnt: the body takes up more than it gives off
	newPlanner(t, b, courtSession(), NewMenu(), Aim{})
	b.SweatRate = Between(1, 1, 1)
	newPlanner(t, b, courtSession(), NewMenu(), Aim{})
	for _, x := range []float64{0, -1} {
		b.SweatRate = Between(x, x, x)
		if _, err := New(b, courtSession(), NewMenu(), Aim{}); err == nil {
			t.Errorf("a rate of %g is taken", x)
		}
	}
	for _, r := range []Ranged{Between(1, 1.1, 2), Between(1, 0.5, 0.9)} {
		b.SweatRate = r
		if _, err := New(b, courtSession(), NewMenu(), Aim{}); err == nil {
			t.Errorf("%+v is taken", r)
		}
	}
}

// With a hidden mass the limit of the deficit is in steps of 0.2 L, never none: 2 % of
// 72 kg are 1.44 L, 1.4; of 4 kg 0.08 L, 0.2.
func TestHiddenLimitByHand(t *testing.T) {
	for kg, litres := range map[float64]float64{72: 1.4, 76: 1.6, 4: 0.2, 75: 1.6} {
		b := courtBasis()
		b.Body = Body{MassKg: kg, Hidden: true}
		p := newPlanner(t, b, courtSession(), NewMenu(), Aim{Deficit: Within(0.5, 2)})
		if got := p.limit * kg / 100; math.Abs(got-litres) > 1e-9 || math.Abs(p.Aim().Deficit.High-max(0.5, p.limit)) > 1e-9 {
			t.Errorf("%g kg: %g L, the aim ends at %g %%", kg, got, p.Aim().Deficit.High)
		}
	}
	b := courtBasis()
	b.Body = Body{MassKg: 72, Hidden: true}
	if p := newPlanner(t, b, courtSession(), NewMenu(), Aim{Deficit: Within(2.2, 2.3)}); p.Aim().Deficit != Within(2.2, max(2.2, p.limit)) {
		t.Errorf("%+v, the limit is %g", p.Aim().Deficit, p.limit)
	}
	if p := newPlanner(t, b, courtSession(), NewMenu(), Aim{}); p.Aim().Deficit.On {
		t.Error("an aim that is off is switched on")
	}
}
