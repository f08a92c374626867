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
