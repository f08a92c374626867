package fuel

import (
	"math"
	"testing"
)

// A part holds what 100 g of its product hold by its mass, the available carbohydrate
// without the fibre; what is not on the label, and a part that was not measured, hold
// nothing that is known.
func TestFilled(t *testing.T) {
	label := Composition{Carbohydrate: Of(20), Fibre: Of(4), Sodium: Of(120)}
	for name, x := range map[string]struct {
		part         Part
		carbohydrate Content
		sodium       Content
	}{
		"250 g":        {Part{Known: true, Grams: 250, Product: Product{Per100: label}}, Of(40), Of(300)},
		"30 g":         {Part{Known: true, Grams: 30, Product: Product{Per100: label}}, Of(4.8), Of(36)},
		"no sodium":    {Part{Known: true, Grams: 250, Product: Product{Per100: Composition{Available: Of(6)}}}, Of(15), Content{}},
		"not measured": {Part{Grams: 250, Product: Product{Per100: label}}, Content{}, Content{}},
	} {
		got := x.part.Filled()
		for what, pair := range map[string][2]Content{"carbohydrate": {got.Carbohydrate, x.carbohydrate}, "sodium": {got.Sodium, x.sodium}} {
			if pair[0].Known != pair[1].Known || math.Abs(pair[0].Value-pair[1].Value) > 1e-9 {
				t.Errorf("%s: %s %+v, want %+v", name, what, pair[0], pair[1])
			}
		}
	}
}
