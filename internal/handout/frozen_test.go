package handout

import (
	"reflect"
	"strings"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// agreedAs freezes a plan as the program does.
func agreedAs(t *testing.T, c consult.Case) []record.Frozen {
	t.Helper()
	inputs, results, err := c.FreezePlan()
	if err != nil {
		t.Fatal(err)
	}
	return []record.Frozen{{Inputs: inputs, Results: results}}
}

// The agreed page and card, both bars and the limit stay as they were agreed when the
// test behind them is corrected, a product is changed or taken out, or the test is
// removed; and the case says what was corrected.
func TestAgreedPageStays(t *testing.T) {
	h, w := openHouse(t), english(t)
	a := h.athlete(t, "Ravka")
	p, b := h.plan(t, a)
	c := h.open(t, p, a, b)
	kept := agreedAs(t, c)
	o, _ := consult.InForce(p)
	page, card, limit := AthletePageOf(c, o, h.practice, w), KitBagCardOf(c, o, h.practice, w), c.LimitL()

	corrected := b.Tests[0].Test.Clone()
	for i, x := range corrected.Bottles {
		if x.After.Known() {
			corrected.Bottles[i].After = record.Num(*x.After.Value-60, quantity.Gram)
		}
	}
	generic, err := fuel.Generic()
	if err != nil {
		t.Fatal(err)
	}
	var own []record.Product
	for _, it := range o.Items {
		if it.Role == record.RoleDrink {
			per := record.Composition{Water: record.Num(90, quantity.Gram), Available: record.Num(9, quantity.Gram), Sodium: record.Num(20, quantity.Milligram)}
			own = append(own, record.Product{
				Meta: record.Meta{ID: record.NewID()}, Name: "Corrected", Replaces: string(it.ProductID), Form: string(fuel.Drink), Density: record.Num(1.03, quantity.None), Per100: per,
			})
		}
	}
	other := h.desk
	other.Pantry = consult.NewPantry(generic, own)
	for name, to := range map[string]struct {
		desk  consult.Setup
		tests []consult.Findings
		says  func(s consult.Since) bool
	}{
		"test corrected": {h.desk, []consult.Findings{consult.Find(corrected, a, nil, h.desk)}, func(s consult.Since) bool {
			return s.Test.ID == corrected.ID && s.Before.Value != s.After.Value
		}},
		"test removed":      {h.desk, nil, func(s consult.Since) bool { return s.Gone }},
		"product corrected": {other, b.Tests, func(s consult.Since) bool { return s.Products }},
	} {
		t.Run(name, func(t *testing.T) {
			again, err := consult.OpenPlan(p, a, to.tests, kept, composeDay(), to.desk)
			if err != nil {
				t.Fatal(err)
			}
			if !again.Since.Changed || !to.says(again.Since) {
				t.Errorf("changed %v, test %q, products %v, gone %v", again.Since.Changed, again.Since.Test.ID, again.Since.Products, again.Since.Gone)
			}
			again.Since = consult.Since{} // the present limit is another question
			if got := AthletePageOf(again, o, h.practice, w); !reflect.DeepEqual(got, page) {
				t.Errorf("the page is another:\n%+v\n%+v", got, page)
			}
			if got := KitBagCardOf(again, o, h.practice, w); !reflect.DeepEqual(got, card) {
				t.Error("the card is another")
			}
			if got := again.LimitL(); got != limit {
				t.Errorf("the limit is %g L, was %g L", got, limit)
			}
		})
	}
}

// A page of amounts that the corrected test leaves above the limit tells nobody to
// drink them; the bag's fills add up to what is planned.
func TestPageAboveTheLimitPrintsNoAmounts(t *testing.T) {
	h, w := openHouse(t), english(t)
	a := h.athlete(t, "Ravka")
	p, b := h.plan(t, a)
	c := h.open(t, p, a, b)
	o, _ := consult.InForce(p)
	var bag float64
	for _, it := range AthletePageOf(c, o, h.practice, w).Bag {
		if it.Substance != Food {
			bag += float64(it.Count) * float64(it.Fill)
		}
	}
	drunk := 1000 * c.Planner.Evaluate(plan.Expected, c.MixOf(o)).Fluid.DrunkL
	if bag > drunk+1e-6 || bag < drunk-5*6 {
		t.Errorf("%g mL in the bag of %g mL planned", bag, drunk)
	}
	less := b.Tests[0].Test.Clone()
	for i, x := range less.Weighings {
		if x.Moment == record.After {
			less.Weighings[i].Mass = record.Num(x.Mass.Or(0)+1.3, quantity.Kilogram)
		}
	}
	now, err := consult.OpenPlan(p, a, []consult.Findings{consult.Find(less, a, nil, h.desk)}, agreedAs(t, c), composeDay(), h.desk)
	if err != nil {
		t.Fatal(err)
	}
	if len(now.AboveLimit()) == 0 {
		t.Fatalf("no step is above %g L", now.LimitL())
	}
	page := AthletePageOf(now, o, h.practice, w)
	if len(page.Bag)+len(page.During.Chances)+len(page.During.PerHour)+len(page.Options) != 0 || len(page.Bars) != 1 {
		t.Errorf("amounts are printed: %+v", page)
	}
	if text := all(press(t).AthletePage(page)); !strings.Contains(text, "No amounts are printed") {
		t.Errorf("the page does not say so: %s", text)
	}
}
