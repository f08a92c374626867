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
