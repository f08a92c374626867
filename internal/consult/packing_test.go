package consult

import (
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/figure"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// packed is a list by product.
func packed(t *testing.T, stops []StopPlan, supplies []record.Supply, d Setup) (climate.PackingList, map[string]climate.PackedSupply) {
	t.Helper()
	list, err := PackTrip(stops, supplies, 0.15, d)
	if err != nil {
		t.Fatal(err)
	}
	by := map[string]climate.PackedSupply{}
	for _, s := range list.Supplies {
		by[s.Supply.ID] = s
	}
	return list, by
}

// taking is a stop at which so much is taken, without a calculation.
func taking(c Case, days int, sessions float64, mix plan.Mix) StopPlan {
	s := StopPlan{Length: days, Stop: record.Stop{SessionsADay: record.Num(sessions, quantity.None)}}
	s.Planned, s.Case, s.Mix = true, c, mix
	s.At = c.Planner.Evaluate(plan.Expected, mix)
	return s
}

// withPowder is the case with a powder of 6 g to 100 mL in the second drink
// slot, its strength not written down, and a gel.
func withPowder(t *testing.T) (Case, Setup) {
	t.Helper()
	c, d := newCase(t)
	p := c.Plan.Clone()
	o := p.Options[1]
	o.Items = append(o.Items,
		record.Item{Meta: record.Meta{ID: "p"}, OptionID: o.ID, Role: record.RoleDrink, ProductID: "generic.sugar", Name: "Sugar", Volume: record.Num(0, quantity.Millilitre)},
		record.Item{Meta: record.Meta{ID: "g"}, OptionID: o.ID, Role: record.RoleFood, ProductID: "generic.gel", Name: "Gel", Portions: record.Num(0, quantity.Portion)})
	p.Options[1] = o
	c, err := OpenCase(p, c.Athlete, c.Basis, d)
	if err != nil {
		t.Fatal(err)
	}
	return c, d
}

func slotOf(t *testing.T, c Case, id string) plan.Slot {
	t.Helper()
	for s, info := range c.Slots {
		if info.InUse && info.Product.ID == id {
			return plan.Slot(s)
		}
	}
	t.Fatalf("nothing is %s", id)
	return 0
}

// Stops at which different amounts are taken add up by the gram: common
// arithmetic of packing, 15 % on top.
func TestPackingAddsUp(t *testing.T) {
	c, d := withPowder(t)
	powder, gel := slotOf(t, c, "generic.sugar"), slotOf(t, c, "generic.gel")
	var one, two plan.Mix
	one[plan.Water], one[powder], one[gel], one[plan.Salt] = 300, 500, 1, 1
	two[plan.Water], two[powder], two[gel], two[plan.Salt] = 300, 250, 2, 0.5
	list, by := packed(t, []StopPlan{taking(c, 4, 2, one), taking(c, 3, 1, two)}, nil, d)
	// 8 sessions of a bottle and 3 of half a bottle: 9.5 × 1.15 = 10.9, 11 bottles of 30 g.
	if got := by["generic.sugar"]; got.Supply.Form != climate.Powder || got.Servings != 11 || got.Mass != 330 || got.Problem != "" {
		t.Errorf("powder: %+v", got)
	}
	// 8 × 1 g and 3 × 0.5 g: 9.5 × 1.15 = 10.9, 11 g.
	if got := by[string(SaltID)]; got.Mass != 11 || list.Salt != 11 {
		t.Errorf("salt: %+v, %v in all", got, list.Salt)
	}
	// 8 × 1 and 3 × 2 gels: 14 × 1.15 = 16.1.
	if got := by["generic.gel"]; got.Servings != 17 || list.Gels != 17 {
		t.Errorf("gels: %+v", got)
	}
	// 0.8 L twice a day and 2 L beside; the other stop needs less.
	near(t, "safe water a day", float64(list.SafeWater), 2*0.8+2, 1e-9)
	if list.Bottles != 2 {
		t.Errorf("%d bottles for 0.8 L", list.Bottles)
	}
}

func TestPackingLots(t *testing.T) {
	c, d := withPowder(t)
	gel := slotOf(t, c, "generic.gel")
	var mix plan.Mix
	mix[plan.Water], mix[gel] = 300, 1
	stops := []StopPlan{taking(c, 0, 1, mix)}
	_, by := packed(t, stops, nil, d)
	if got := by["generic.gel"]; got.Problem != climate.LotMissing || got.Servings != 2 {
		t.Errorf("a gel without a lot, on open dates: %+v", got)
	}
	_, by = packed(t, stops, []record.Supply{{ProductID: "generic.gel", Lot: "L 7"}}, d)
	if got := by["generic.gel"]; got.Problem != "" || got.Supply.Lot != "L 7" || !got.Supply.Supplement {
		t.Errorf("a gel with its lot: %+v", got)
	}
	if list, _ := packed(t, []StopPlan{{Length: 4}}, nil, d); len(list.Supplies) != 0 || list.SafeWater != 0 {
		t.Errorf("a stop without a plan packs %+v", list)
	}
}

// For a stop that is too uncertain to drink by there is water to carry, and no product:
// it is weighed there first.
func TestPackingForWhatIsTooUncertain(t *testing.T) {
	c, d := withPowder(t)
	powder, gel := slotOf(t, c, "generic.sugar"), slotOf(t, c, "generic.gel")
	var mix plan.Mix
	mix[plan.Water], mix[powder], mix[gel], mix[plan.Salt] = 300, 500, 1, 1
	sure := taking(c, 4, 1, mix)
	unsure := sure
	unsure.Calculation.Climate.Rate = figure.Figure{Known: true, Ranged: true, Estimate: true, Range: quantity.Range{Low: 0.3, High: 1.2}}
	list, by := packed(t, []StopPlan{unsure}, nil, d)
	if len(by) != 0 || list.Salt != 0 || list.Bottles != 2 || list.SafeWater <= 0.8 {
		t.Errorf("%v g of salt, %d bottles, %v L of water, %+v", list.Salt, list.Bottles, list.SafeWater, by)
	}
	if _, by := packed(t, []StopPlan{sure, unsure}, nil, d); by["generic.gel"].Servings != 5 { // 4 × 1.15
		t.Errorf("beside one that is sure: %+v", by["generic.gel"])
	}
}
