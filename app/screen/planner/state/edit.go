package state

import (
	"slices"

	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// The functions here change a plan that is the caller's own copy.

// RoleOf is what a product is in a mix: a powder is drunk, made up.
func RoleOf(p fuel.Product) record.Role {
	if p.Form == fuel.Drink || p.Form == fuel.Powder {
		return record.RoleDrink
	}
	return record.RoleFood
}

// newItem is a product at nothing.
func newItem(o record.Option, product fuel.Product) record.Item {
	it := record.Item{
		Meta: record.Meta{ID: record.NewID()}, OptionID: o.ID, Order: len(o.Items), Role: RoleOf(product),
		ProductID: record.ID(product.ID), Name: product.Name,
	}
	if product.Form == fuel.Powder {
		it.Strength = record.Num(consult.DefaultStrength, quantity.PerCent)
	}
	return atNothing(it)
}

// AddItem puts a product into an option; one that is there already stays.
func AddItem(p *record.Plan, option record.ID, product fuel.Product) {
	Edit(p, option, func(o *record.Option) {
		there := func(it record.Item) bool { return it.ProductID == record.ID(product.ID) && it.Role == RoleOf(product) }
		if !slices.ContainsFunc(o.Items, there) {
			o.Items = append(o.Items, newItem(*o, product))
		}
	})
}

// RemoveItem takes an item out of an option.
func RemoveItem(p *record.Plan, option, item record.ID) {
	Edit(p, option, func(o *record.Option) {
		o.Items = slices.DeleteFunc(o.Items, func(it record.Item) bool { return it.ID == item })
	})
}

// SetStrength makes a powder up to another strength, g per 100 mL, wherever the
// plan has it; what the habit had of it stays as it was.
func SetStrength(p *record.Plan, c consult.Case, slot plan.Slot, strength float64, typed quantity.Unit) {
	x := strength
	for i := range p.Options {
		o := &p.Options[i]
		for j, it := range o.Items {
			at, ok := c.SlotOf(it)
			if !ok || at != slot || o.Kind == record.OptionHabit && it.Volume.Or(0) > 0 {
				continue
			}
			o.Items[j].Strength = record.Number{Value: &x, Unit: typed}
		}
	}
}

// Edit changes one option of a plan.
func Edit(p *record.Plan, option record.ID, f func(*record.Option)) {
	for i := range p.Options {
		if p.Options[i].ID == option {
			f(&p.Options[i])
		}
	}
}

// copyOption is an option of a plan of its own, with ids of its own.
func copyOption(o record.Option, plan record.ID, order int) record.Option {
	o.Meta, o.PlanID, o.Order = record.Meta{ID: record.NewID()}, plan, order
	o.Items = slices.Clone(o.Items)
	for i := range o.Items {
		o.Items[i].Meta, o.Items[i].OptionID = record.Meta{ID: record.NewID()}, o.ID
	}
	return o
}

// Duplicate adds a copy of an option under a name and returns its id. What the
// athlete said of the first is not said of the copy.
func Duplicate(p *record.Plan, o record.Option, name string) record.ID {
	o = copyOption(o, p.ID, len(p.Options))
	o.Kind, o.Name, o.Words = record.OptionOwn, name, ""
	o.Importance, o.Confidence = record.Number{}, record.Number{}
	p.Options = append(p.Options, o)
	return o.ID
}

// RemoveOption takes an option of the practitioner's own out of a plan.
func RemoveOption(p *record.Plan, option record.ID) {
	p.Options = slices.DeleteFunc(p.Options, func(o record.Option) bool { return o.ID == option && o.Kind == record.OptionOwn })
	if p.Agreement.OptionID == option {
		p.Agreement.OptionID = ""
	}
}

// SideBySide are the options that stand in the table: the habit, the others in
// their order, the aim. The mixes of steps have a tab of their own.
func SideBySide(p record.Plan) []record.Option {
	var first, middle, last []record.Option
	for _, o := range p.Options {
		switch o.Kind {
		case record.OptionStep:
		case record.OptionHabit:
			first = append(first, o)
		case record.OptionAim:
			last = append(last, o)
		default:
			middle = append(middle, o)
		}
	}
	slices.SortStableFunc(middle, func(a, b record.Option) int { return a.Order - b.Order })
	return slices.Concat(first, middle, last)
}

// InTable are the options that stand side by side, with the selected step, if one
// is, before the aim.
func (s State) InTable() []record.Option {
	list := SideBySide(s.Plan)
	if o := s.Selected(); o.Kind == record.OptionStep {
		list = slices.Insert(list, max(len(list)-1, 0), o)
	}
	return list
}

// Differing is the first option whose amounts differ between two states of a
// plan; empty when none does.
func Differing(c consult.Case, before, after record.Plan) record.ID {
	for _, o := range after.Options {
		if old, ok := consult.OptionByID(before, o.ID); !ok || c.MixOf(old) != c.MixOf(o) {
			return o.ID
		}
	}
	return ""
}

// atNothing gives an item an amount of zero in the unit of its role.
func atNothing(it record.Item) record.Item {
	if it.Role == record.RoleFood {
		it.Portions = record.Num(0, quantity.Portion)
		return it
	}
	it.Volume = record.Num(0, quantity.Millilitre)
	return it
}

// OptionAt is an option of a plan, in place; nil where it is not there.
func OptionAt(p *record.Plan, id record.ID) *record.Option {
	for i := range p.Options {
		if p.Options[i].ID == id {
			return &p.Options[i]
		}
	}
	return nil
}
