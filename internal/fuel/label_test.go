package fuel

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestLabelGrams(t *testing.T) {
	for _, c := range []struct {
		name  string
		label Label
		want  Content
	}{
		{"100 g", Label{Per: Per100Grams, Form: Solid}, Of(100)},
		{"100 mL, density known", Label{Per: Per100Millilitres, Form: Gel, Density: Of(1.25)}, Of(125)},
		{"100 mL of a drink", Label{Per: Per100Millilitres, Form: Drink, Carbohydrate: Of(6)}, Of(102.28)},
		{"100 mL of a drink nobody knows", Label{Per: Per100Millilitres, Form: Drink}, Of(100)},
		{"100 mL of a bar", Label{Per: Per100Millilitres, Form: Solid}, Content{}},
		{"portion by mass", Label{Per: PerPortion, Form: Gel, PortionGrams: Of(40)}, Of(40)},
		{"portion by volume", Label{Per: PerPortion, Form: Drink, PortionMillilitres: Of(500), Carbohydrate: Of(30)}, Of(511.4)},
		{"no portion", Label{Per: PerPortion, Form: Gel}, Content{}},
		{"portion of nothing", Label{Per: PerPortion, Form: Gel, PortionGrams: Of(0)}, Content{}},
	} {
		if got := c.label.Grams(); got.Known != c.want.Known || math.Abs(got.Value-c.want.Value) > 1e-9 {
			t.Errorf("%s: got %+v, want %+v", c.name, got, c.want)
		}
	}
}

// A drink weighs the same whichever way its label counts, and as much as the
// recipe that makes it up.
func TestLabelWeightAgrees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		held := rapid.Float64Range(0, 60).Draw(t, "g in 100 mL")
		volume := Label{Per: Per100Millilitres, Form: Drink, Carbohydrate: Of(held)}
		weight := volume.Weight().Value
		mass := Label{Per: Per100Grams, Form: Drink, Carbohydrate: Of(held / weight)}
		portion := Label{Per: PerPortion, Form: Drink, PortionMillilitres: Of(750), Carbohydrate: Of(7.5 * held)}
		byMass := Label{Per: PerPortion, Form: Drink, PortionGrams: Of(500), Carbohydrate: Of(5 * held / weight)}
		for _, l := range []Label{mass, portion, byMass} {
			if got := l.Weight().Value; math.Abs(got-weight) > 1e-9 {
				t.Fatalf("%s: %g g/mL, by volume %g", l.Per, got, weight)
			}
		}
		sugar := Product{ID: "s", Name: "s", Form: Powder, Per100: Composition{Available: Of(100)}}
		made, err := sugar.MadeUp(held)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(made.Density.Value-weight) > 1e-9 {
			t.Fatalf("the recipe weighs %g g/mL, the label %g", made.Density.Value, weight)
		}
	})
}

func TestSugarsOver(t *testing.T) {
	c := Composition{Available: Of(30), Sugars: Sugars{Glucose: Of(20), Fructose: Of(10.4)}}
	if c.SugarsOver() {
		t.Error("rounding is called too much")
	}
	if c.Sugars.Fructose = Of(11); !c.SugarsOver() {
		t.Error("31 g of sugars in 30 g of carbohydrate pass")
	}
	if c.Available = (Content{}); c.SugarsOver() {
		t.Error("sugars pass a carbohydrate nobody knows")
	}
}

func TestFructoseRange(t *testing.T) {
	for _, c := range []struct {
		split     Split
		low, high float64
		ok        bool
	}{
		{Split{Glucose: 5, Fructose: 4, Unknown: 1}, 0.4, 0.5, true},
		{Split{Glucose: 10}, 0, 0, true},
		{Split{Unknown: 10}, 0, 0, false},
		{Split{}, 0, 0, false},
	} {
		if r, ok := c.split.FructoseRange(); ok != c.ok || math.Abs(r.Low-c.low) > 1e-12 || math.Abs(r.High-c.high) > 1e-12 {
			t.Errorf("%+v: got %v, %v", c.split, r, ok)
		}
	}
}

// Every sort of sugar counts: 4 g of the one and 6 g of any other are within 10
// g of carbohydrate, 7 g are over it by more than rounding, 6.4 g are not.
func TestEachSugarCounts(t *testing.T) {
	for name, set := range map[string]func(*Composition, float64){
		"glucose":      func(c *Composition, g float64) { c.Sugars.Glucose = Of(g) },
		"sucrose":      func(c *Composition, g float64) { c.Sugars.Sucrose = Of(g) },
		"lactose":      func(c *Composition, g float64) { c.Sugars.Lactose = Of(g) },
		"maltose":      func(c *Composition, g float64) { c.Sugars.Maltose = Of(g) },
		"starch":       func(c *Composition, g float64) { c.Sugars.Starch = Of(g) },
		"maltodextrin": func(c *Composition, g float64) { c.Sugars.Maltodextrin = Of(g) },
	} {
		for g, over := range map[float64]bool{6: false, 6.4: false, 6.6: true, 7: true} {
			c := Composition{Available: Of(10)}
			c.Sugars.Fructose = Of(4)
			set(&c, g)
			if c.SugarsOver() != over {
				t.Errorf("4 g of fructose and %v g of %s in 10 g: over is %v", g, name, !over)
			}
		}
	}
}

// 8 g of carbohydrate in 100 g, or 16 g in a portion of 200 g, lift water to
// 1 / (1 - 0.38 x 0.08) = 1.03135 g/mL; a powder that is all carbohydrate, or
// said to be more, to 1 / 0.62.
func TestWeightOfADrinkByMass(t *testing.T) {
	gain := 1 - 0.62
	for name, c := range map[string]struct {
		label Label
		want  float64
	}{
		"in 100 g":     {Label{Form: Drink, Per: Per100Grams, Carbohydrate: Of(8)}, 1 / (1 - gain*0.08)},
		"in a portion": {Label{Form: Drink, Per: PerPortion, PortionGrams: Of(200), Carbohydrate: Of(16)}, 1 / (1 - gain*0.08)},
		"all of it":    {Label{Form: Drink, Per: Per100Grams, Carbohydrate: Of(100)}, 1 / 0.62},
		"more":         {Label{Form: Drink, Per: Per100Grams, Carbohydrate: Of(130)}, 1 / 0.62},
		"in 100 mL":    {Label{Form: Drink, Per: Per100Millilitres, Carbohydrate: Of(8)}, 1.0304},
	} {
		if got := c.label.Weight(); !got.Known || math.Abs(got.Value-c.want) > 2e-4 {
			t.Errorf("%s: %v, want %.5f", name, got, c.want)
		}
	}
}
