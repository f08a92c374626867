package consult

import (
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Gap is something taken in a test that a plan cannot calculate with: nobody knows
// what is in it, or it is one more than a plan holds. A drink then counts as
// plain water in the habit and a food not at all, and both have to be said.
type Gap struct {
	// Item is the place on the sheet, from 1; Food tells a food from a bottle.
	Item int
	Food bool
	// Name is what stands on the sheet; may be empty.
	Name string
}

// HabitUrine is the urine and stool of the test whose habit the plan begins at,
// L, which a plan foresees none of; 0 where there was none.
func (c Case) HabitUrine() float64 {
	f, ok := c.habitTest()
	if !ok || c.Plan.UsualHabit {
		return 0
	}
	return max(0, f.OtherLosses().Urine)
}

// Gaps lists what the habit of a test leaves open, in the order of the sheet.
func (f Findings) Gaps() []Gap {
	_, _, gaps := habitParts(f)
	return gaps
}

// habitParts parts what was taken in a test into drinks and foods that can
// stand in a plan, and gaps. Bottles of one product are one drink.
func habitParts(f Findings) (drinks, foods []fuel.Part, gaps []Gap) {
	menu := plan.NewMenu()
	slots := map[record.ID]plan.Slot{}
	next := map[bool]plan.Slot{false: plan.Drink1, true: plan.Food1}
	stands := func(p fuel.Part, food bool) bool {
		id := record.ID(p.Product.ID)
		if _, has := slots[id]; has {
			return true
		}
		last, set, at := plan.Drink3, menu.SetDrink, next[food]
		if food {
			last, set = plan.Food4, menu.SetFood
		}
		if id == "" || at > last || set(at, p.Product) != nil {
			return false
		}
		slots[id], next[food] = at, at+1
		return true
	}
	for _, p := range f.Intake.Bottles {
		switch {
		case !p.Known || p.Millilitres <= 0:
		case record.ID(p.Product.ID) == Water || stands(p, false):
			drinks = append(drinks, p)
		default:
			gaps = append(gaps, Gap{Item: p.Item, Name: p.Product.Name})
			p.Product.ID = string(Water)
			drinks = append(drinks, p)
		}
	}
	for _, p := range f.Intake.Foods {
		switch {
		case p.Known && p.Grams <= 0:
		case p.Known && stands(p, true):
			foods = append(foods, p)
		default:
			gaps = append(gaps, Gap{Item: p.Item, Food: true, Name: p.Product.Name})
		}
	}
	return drinks, foods, gaps
}

// habitOf is what was drunk and eaten in the test, as an option. Bottles of one
// drink join; amounts are as measured. What a plan cannot calculate with is in
// [Findings.Gaps].
func habitOf(p record.Plan, f Findings, d Setup) record.Option {
	o := emptyOption(p, record.OptionHabit, "", 0)
	add := func(role record.Role, id record.ID, name string, x float64) {
		for i, it := range o.Items {
			if it.ProductID == id && it.Role == role {
				o.Items[i] = amount(it, it.Volume.Or(0)+it.Portions.Or(0)+x)
				return
			}
		}
		it := record.Item{
			Meta: record.Meta{ID: record.NewID()}, OptionID: o.ID, Order: len(o.Items), Role: role, ProductID: id, Name: name,
		}
		o.Items = append(o.Items, amount(it, x))
	}
	add(record.RoleWater, Water, waterName(d), 0)
	drinks, foods, _ := habitParts(f)
	for _, part := range drinks {
		id := record.ID(part.Product.ID)
		if id == Water {
			add(record.RoleWater, Water, waterName(d), quantity.Round(part.Millilitres, 0))
			continue
		}
		add(record.RoleDrink, id, part.Product.Name, quantity.Round(part.Millilitres, 0))
	}
	for _, part := range foods {
		portions := quantity.RoundTo(part.Grams/part.Product.Portion.Grams, 0.25)
		add(record.RoleFood, record.ID(part.Product.ID), part.Product.Name, portions)
	}
	o.Salt = record.Num(0, quantity.Gram)
	return o
}

// Gaps are those of the test whose habit the plan begins at; none where that
// test is not among those it is based on.
func (c Case) Gaps() []Gap {
	tests := c.Basis.Tests
	if c.Basis.Calculation != nil {
		tests = append(tests[:len(tests):len(tests)], c.Basis.Calculation.Tests...)
	}
	for _, f := range tests {
		if f.Test.ID == c.Plan.Basis.TestID {
			return f.Gaps()
		}
	}
	return nil
}
