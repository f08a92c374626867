package trip

import (
	"context"
	"math"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// A trip takes the agreed plan along with the products it was agreed with: a drink whose
// label was corrected since changes nothing of what is planned there.
func TestTripKeepsTheProductsOfTheAgreement(t *testing.T) {
	d, _ := apptest.Demo(t)
	ravka := apptest.AthleteNamed(t, d, "Ravka").ID
	there := func(frozen bool) float64 {
		t.Helper()
		v, _ := hockeyTrip(t, d, 1, ravka)
		for _, m := range v.crew() {
			if m.athlete.ID != ravka {
				continue
			}
			if !frozen {
				m.kept = nil
			}
			m.traveller, m.planned = nil, nil
			plan, err := v.plan(m, v.now().Stops[1])
			if err != nil || !plan.Planned {
				t.Fatalf("planned %v, %v", plan.Planned, err)
			}
			return plan.At.Carbohydrate.TotalGH
		}
		t.Fatal("nobody travels")
		return 0
	}
	before := there(true)
	for _, id := range []string{"generic.drink-6", "generic.drink-4", "generic.drink-8"} {
		corrected := record.Product{
			Name: "Sports drink, corrected", Form: "drink", Replaces: id, Density: record.Num(1.02, quantity.GramPerMillilitre),
			Per100: record.Composition{Water: record.Num(80, quantity.Gram), Available: record.Num(14, quantity.Gram)}, Source: "label",
		}
		if _, err := d.Store.SaveProduct(context.Background(), corrected, store.Edit{}); err != nil {
			t.Fatal(err)
		}
	}
	d.ProductsChanged()
	if after := there(true); math.Abs(after-before) > 1e-9 {
		t.Errorf("%.2f g/h after the label was corrected, %.2f before", after, before)
	}
	if now := there(false); math.Abs(now-before) < 1 {
		t.Errorf("%.2f g/h with the products of now, %.2f as agreed: this test cannot fail", now, before)
	}
}
