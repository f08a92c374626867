package care

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
)

// What is written of the drinks before leaves the mass open by 16 kg and more,
// both drinks together, and tells nobody to drink more than the advice.
func TestBeforeHiddenLeavesTheMassOpen(t *testing.T) {
	written := func(kg float64) [2]quantity.Millilitres {
		advice := fuel.BeforeFourHours(kg).Range
		early, late := BeforeHidden(quantity.Millilitres(1000 * (advice.Low + advice.High) / 2))
		return [2]quantity.Millilitres{early, late}
	}
	spans := map[[2]quantity.Millilitres]quantity.Range{}
	for kg := 30.0; kg <= 130; kg += 0.1 {
		r, ok := spans[written(kg)]
		if !ok {
			r = quantity.Range{Low: kg, High: kg}
		}
		spans[written(kg)] = quantity.Range{Low: min(r.Low, kg), High: max(r.High, kg)}
	}
	for w, r := range spans {
		if r.Low > 30 && r.High < 129 && r.High-r.Low < 16 {
			t.Errorf("%v mL before leaves %.1f to %.1f kg", w, r.Low, r.High)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		kg := rapid.Float64Range(20, 150).Draw(t, "kg")
		w := written(kg)
		early, late := fuel.BeforeFourHours(kg).Range, fuel.BeforeTwoHours(kg).Range
		if float64(w[0]) > 1000*early.High+1e-9 || float64(w[1]) > 1000*late.High+1e-9 {
			t.Fatalf("at %.1f kg %v, advised %v and %v", kg, w, early, late)
		}
		if math.Mod(float64(w[0]), hiddenStep) != 0 || math.Mod(float64(w[1]), hiddenStep) != 0 || w[1] > w[0] {
			t.Fatalf("at %.1f kg %v", kg, w)
		}
	})
}

// What is written of the drinks before, by hand: whole 100 mL, at least one, downwards,
// the later drink two thirds of the early one as (3 to 5) is of (5 to 7) mL/kg.
func TestBeforeHidden(t *testing.T) {
	for _, c := range []struct{ calculated, early, late quantity.Millilitres }{
		{600, 600, 400}, {590, 600, 400}, {570, 500, 300}, {430, 400, 200}, {300, 300, 200}, {90, 100, 100}, {0, 100, 100}, {1000, 1000, 600}, {1600, 1600, 1000},
	} {
		if early, late := BeforeHidden(c.calculated); early != c.early || late != c.late {
			t.Errorf("of %v mL %v and %v are written, not %v and %v", c.calculated, early, late, c.early, c.late)
		}
	}
}

// The classes of a hidden mass, by hand: 20 kg times a power of 1.45.
func TestHiddenClass(t *testing.T) {
	for _, c := range []struct{ mass, low, high, middle float64 }{
		{72.4, 60.9725, 88.4101, 73.4206}, {20.1, 20, 29, 24.0832}, {28.9, 20, 29, 24.0832}, {29.1, 29, 42.05, 34.9206}, {19, 13.7931, 20, 16.6091},
	} {
		low, high := HiddenClass(c.mass)
		if middle := HiddenMass(c.mass); math.Abs(low-c.low) > 1e-4 || math.Abs(high-c.high) > 1e-4 || math.Abs(middle-c.middle) > 1e-4 {
			t.Errorf("%g kg: %.4f to %.4f kg, calculated with %.4f; want %g to %g with %g", c.mass, low, high, middle, c.low, c.high, c.middle)
		}
	}
	for _, none := range []float64{0, -5, math.Inf(1)} {
		if HiddenMass(none) != none {
			t.Errorf("%g kg is calculated with as %g", none, HiddenMass(none))
		}
	}
}
