package fuel

import (
	"errors"
	"math"
	"testing"
)

// Molar masses of common tables, g/mol, typed here again so that what is
// worked out below does not lean on the program's own numbers [D].
const (
	glucose   = 180.156
	sucrose   = 342.30
	sodium    = 22.990
	potassium = 39.098
	saltMass  = 58.44
)

func near(t *testing.T, name string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 2e-4*math.Abs(want)+1e-12) {
		t.Errorf("%s: %g, want %g", name, got, want)
	}
}

// Bands of Thomas, Erdman and Burke 2016 at both sides of each end.
func TestDuringAtTheEndsOfItsBands(t *testing.T) {
	for _, c := range []struct {
		minutes   float64
		effort    Effort
		code      string
		low, high float64
	}{
		{math.NaN(), Hard, FuelNone, 0, 0}, {44.9, Hard, FuelNone, 0, 0}, {45, Hard, FuelRinse, 0, 30}, {45, Easy, FuelNone, 0, 0},
		{45, EffortUnknown, FuelRinse, 0, 30}, {74.9, Hard, FuelRinse, 0, 30}, {74.9, Moderate, FuelNone, 0, 0}, {68, Easy, FuelNone, 0, 0},
		{75, Hard, FuelMiddle, 30, 60}, {75, Easy, FuelMiddle, 30, 60}, {81, Easy, FuelMiddle, 30, 60}, {150, Easy, FuelMiddle, 30, 60}, {150.1, Easy, FuelLong, 30, 90},
	} {
		a := CarbohydrateDuring(c.minutes, c.effort)
		if a.Code != c.code || a.Range.Low != c.low || a.Range.High != c.high {
			t.Errorf("%g min, effort %d: %s %v", c.minutes, c.effort, a.Code, a.Range)
		}
	}
	for minutes, want := range map[float64]bool{140: false, 150: false, 150.1: true, 160: true} {
		a, ok := Studied(minutes)
		if ok != want || ok && (a.Range.Low != 90 || a.Range.High != 120) {
			t.Errorf("studied at %g min: %v %v", minutes, a.Range, ok)
		}
	}
}

// 5 % of 70 kg is 3.5 kg.
func TestAfterALargeLoss(t *testing.T) {
	for kg, want := range map[float64]string{3.49: AfterMeals, 3.5: AfterLarge, 3.6: AfterLarge} {
		if a := After(kg, 70, 48); a.Code != want {
			t.Errorf("%g kg of 70: %s", kg, a.Code)
		}
	}
}

// Each kind of sugar counts in the sum that a label may not exceed, and half a
// gram is rounding.
func TestEachKindOfSugarInTheSum(t *testing.T) {
	for name, of := range map[string]func(*Sugars) *Content{
		"glucose": func(s *Sugars) *Content { return &s.Glucose }, "fructose": func(s *Sugars) *Content { return &s.Fructose },
		"sucrose": func(s *Sugars) *Content { return &s.Sucrose }, "lactose": func(s *Sugars) *Content { return &s.Lactose },
		"maltose": func(s *Sugars) *Content { return &s.Maltose }, "starch": func(s *Sugars) *Content { return &s.Starch },
		"maltodextrin": func(s *Sugars) *Content { return &s.Maltodextrin }, "total": func(s *Sugars) *Content { return &s.Total },
	} {
		c := Composition{Available: Of(10)}
		for grams, want := range map[float64]bool{10: false, 10.48: false, 10.52: true} {
			*of(&c.Sugars) = Of(grams)
			if c.SugarsOver() != want {
				t.Errorf("%s %g of 10 g: %v", name, grams, !want)
			}
		}
	}
}

// 100 g with 1 g glucose, 2 g fructose, 3 g sucrose, 4 g lactose, 5 g maltose,
// 6 g maltodextrin (dextrose equivalent 15), 46 mg sodium, 39.098 mg potassium.
func all() Product {
	return Product{ID: "all", Name: "All", Form: Drink, Density: Of(1.05), Per100: Composition{
		Available: Of(21), Sodium: Of(46), Potassium: Of(39.098), Water: Of(78),
		Sugars: Sugars{Glucose: Of(1), Fructose: Of(2), Sucrose: Of(3), Lactose: Of(4), Maltose: Of(5), Maltodextrin: Of(6)},
	}}
}

func TestOsmolesTermByTerm(t *testing.T) {
	sum := func(p Product) float64 {
		c := p.Per100
		v := 1000 / glucose * (c.Sugars.Glucose.Value + c.Sugars.Fructose.Value)
		v += 1000 / sucrose * (c.Sugars.Sucrose.Value + c.Sugars.Lactose.Value + c.Sugars.Maltose.Value)
		v += 1000 / glucose * 0.15 * c.Sugars.Maltodextrin.Value
		return v + 2*(c.Sodium.Value/sodium+c.Potassium.Value/potassium)
	}
	near(t, "all", all().osmolesPer100().Value, sum(all()))
	for name, drop := range map[string]func(*Composition){
		"glucose": func(c *Composition) { c.Sugars.Glucose = Of(0) }, "fructose": func(c *Composition) { c.Sugars.Fructose = Of(0) },
		"sucrose": func(c *Composition) { c.Sugars.Sucrose = Of(0) }, "lactose": func(c *Composition) { c.Sugars.Lactose = Of(0) },
		"maltose": func(c *Composition) { c.Sugars.Maltose = Of(0) }, "maltodextrin": func(c *Composition) { c.Sugars.Maltodextrin = Of(0) },
		"sodium": func(c *Composition) { c.Sodium = Of(0) }, "potassium": func(c *Composition) { c.Potassium = Of(0) },
	} {
		p := all()
		drop(&p.Per100)
		p.Per100.Available = Of(p.Per100.Sugars.Glucose.Value + p.Per100.Sugars.Fructose.Value + p.Per100.Sugars.Sucrose.Value +
			p.Per100.Sugars.Lactose.Value + p.Per100.Sugars.Maltose.Value + p.Per100.Sugars.Maltodextrin.Value)
		near(t, "without "+name, p.osmolesPer100().Value, sum(p))
	}
	// 1 % of the carbohydrate may be of no known kind: 0.21 g of 21.
	for unknown, want := range map[float64]bool{0.20: true, 0.22: false} {
		p := all()
		p.Per100.Sugars.Maltodextrin = Of(6 - unknown)
		if got := p.osmolesPer100().Known; got != want {
			t.Errorf("%g g of no known kind: %v", unknown, got)
		}
	}
	stated := all()
	stated.Per100.Osmolality = Of(290) // mOsm/L; 100 g of 1.05 g/mL are 95.238 mL
	near(t, "stated", stated.osmolesPer100().Value, 27.619)
}

// Two grams of salt are 786.8 mg of sodium, 34.22 mmol, and 68.44 mOsm.
func TestSaltInADrink(t *testing.T) {
	p := Product{ID: "w", Name: "Water", Form: Drink, Density: Of(1), Per100: Composition{Water: Of(100), Available: Of(0), Sodium: Of(0), Potassium: Of(0)}}
	half, err := p.ByVolume(500)
	if err != nil {
		t.Fatal(err)
	}
	m := Mix([]Amount{half}, 2)
	near(t, "mass", m.MassG.Value, 502)
	near(t, "sodium", m.SodiumMg.Value, 786.8)
	near(t, "sodium drunk", m.Drunk.SodiumMg.Value, 786.8)
	near(t, "osmoles", m.Drunk.Osmoles.Value, 2*2000/saltMass)
	near(t, "mmol/L", m.SodiumMmolL().Value, 786.8/sodium/0.5)
	near(t, "mOsm/L", m.Osmolality().Value, 2*2000/saltMass/0.5)
	// Less than a billionth of a litre is nothing to divide by.
	for litres, want := range map[float64]bool{0.95e-9: false, 1e-9: false, 1.05e-9: true} {
		d := Drunk{VolumeL: Total{Value: litres}}
		if got := d.per(Total{Value: 1}, 1).Known; got != want {
			t.Errorf("per %g L: %v", litres, got)
		}
	}
}

func TestAvailableIsWithoutFibre(t *testing.T) {
	for _, c := range []struct{ carbohydrate, fibre, want float64 }{{30, 4, 26}, {4, 30, 0}, {5, 0, 5}} {
		got := Composition{Carbohydrate: Of(c.carbohydrate), Fibre: Of(c.fibre)}.AvailableCarbohydrate()
		if !got.Known || got.Value != c.want {
			t.Errorf("%g with %g of fibre: %+v", c.carbohydrate, c.fibre, got)
		}
	}
}

func TestWhatAProductCanHold(t *testing.T) {
	for grams, fits := range map[float64]bool{0: true, 95: true, 100: true, 100.1: false, 105: false, -0.1: false} {
		p := all()
		p.Per100.Water = Of(grams)
		if err := p.Check(); (err == nil) != fits {
			t.Errorf("%g g of water in 100: %v", grams, err)
		}
	}
	for x, fits := range map[float64]bool{0.95e9: true, 1e9: true, 1.05e9: false} {
		p := all()
		p.Per100.Energy = Of(x)
		if err := p.Check(); (err == nil) != fits {
			t.Errorf("%g kcal: %v", x, err)
		}
		if _, err := p.ByMass(x); (err == nil) != fits {
			t.Errorf("%g g: %v", x, err)
		}
	}
}

// 120 g of sugar in 2 L: 74.4 mL of it is sugar, 1925.6 g water, 2045.6 g in
// all, 1.0228 g/mL, 5.8662 g in 100 g; a bottle of 500 mL holds 511.4 g.
func TestTwoLitresOfADrink(t *testing.T) {
	sugar := Product{ID: "s", Name: "Sugar", Form: Powder, Per100: Composition{
		Water: Of(0), Energy: Of(400), Carbohydrate: Of(100), Fibre: Of(0), Sodium: Of(0), Potassium: Of(0),
		Sugars: Sugars{Total: Of(100), Sucrose: Of(100)},
	}}
	unknown := Product{ID: "u", Name: "Unknown", Form: Powder}
	d, err := Recipe{ID: "two", Name: "Two litres", Litres: 2, Parts: []Amount{{sugar, 120}, {unknown, 0}}}.Drink()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "density", d.Density.Value, 1.0228)
	near(t, "bottle", d.Portion.Grams, 511.4)
	near(t, "water", d.Per100.Water.Value, 100*1925.6/2045.6)
	near(t, "energy", d.Per100.Energy.Value, 400*120/2045.6)
	if c := d.Per100.AvailableCarbohydrate(); !c.Known {
		t.Error("nothing of an unknown powder makes the drink unknown")
	}
	near(t, "sugar", d.Per100.AvailableCarbohydrate().Value, 5.8662)
	if d, err := (Recipe{ID: "u", Name: "u", Litres: 2, Parts: []Amount{{sugar, 120}, {unknown, 1}}}).Drink(); err != nil || d.Per100.Energy.Known {
		t.Errorf("a gram of what nobody knows counts as nothing: %+v, %v", d.Per100.Energy, err)
	}
	// 1 L holds 1000/0.62 = 1612.9 g of sugar, 2 L twice that.
	for grams, fits := range map[float64]bool{3225: true, 3227: false} {
		if _, err := (Recipe{ID: "x", Name: "x", Litres: 2, Parts: []Amount{{sugar, grams}}}).Drink(); errors.Is(err, ErrTooStrong) == fits {
			t.Errorf("%g g in 2 L: %v", grams, err)
		}
	}
}

// Glucose of 1 + 4 + 5 + 7 + 6 + 3/2 g and fructose of 2 + 3/2 g, of 30.
func TestSplitTermByTerm(t *testing.T) {
	c := all().Per100
	c.Sugars.Starch, c.Available = Of(7), Of(30)
	if s := c.Split(); s != (Split{Glucose: 24.5, Fructose: 3.5, Unknown: 2}) {
		t.Errorf("%+v", s)
	}
	c.Available = Of(14) // half of what the kinds add up to
	if s := c.Split(); s != (Split{Glucose: 12.25, Fructose: 1.75}) {
		t.Errorf("%+v", s)
	}
	for _, c := range []struct {
		s         Split
		low, high float64
		ok        bool
	}{{Split{0, 2, 2}, 0.5, 1, true}, {Split{1, 2, 1}, 0.5, 0.75, true}, {Split{3, 0, 1}, 0, 0.25, true}, {Split{0, 0, 4}, 0, 0, false}} {
		if r, ok := c.s.FructoseRange(); ok != c.ok || r.Low != c.low || r.High != c.high {
			t.Errorf("%+v: %v, %v", c.s, r, ok)
		}
	}
}
