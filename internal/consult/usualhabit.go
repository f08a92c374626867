package consult

import (
	"errors"
	"fmt"

	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// ErrNoHabit says that a plan cannot start from a habit that nobody has told.
var ErrNoHabit = errors.New("no usual habit in the profile")

// HasUsualHabit reports whether the profile tells a usual habit.
func HasUsualHabit(a record.Athlete) bool {
	h := a.Habit
	return h.Water.Known() || h.Drink.Known() || h.Portions.Known() && h.FoodID != ""
}

// The steps that a usual habit is rounded to: nobody knows theirs more finely.
const (
	habitML      = 10
	habitPortion = 0.5
)

// StartFrom makes a plan start from the habit of the test day, or from the usual
// one that the profile tells, drunk at the same rates in the plan's session. It
// returns [ErrNoHabit] where there is none.
func (c Case) StartFrom(p *record.Plan, usual bool, d Setup) error {
	habit, ok := OptionOf(*p, record.OptionHabit)
	if !ok {
		return fmt.Errorf("start plan %s from a habit: %w", p.ID, ErrNoHabit)
	}
	var fresh record.Option
	if test, ok := c.habitTest(); ok && !usual {
		fresh = habitOf(*p, test, d)
	} else if usual && HasUsualHabit(c.Athlete) {
		fresh = c.usualHabit(*p, d)
	} else {
		return fmt.Errorf("start plan %s from a habit: %w", p.ID, ErrNoHabit)
	}
	for i := range fresh.Items {
		fresh.Items[i].OptionID = habit.ID
	}
	for i := range p.Options {
		if p.Options[i].ID == habit.ID {
			p.Options[i].Items, p.Options[i].Salt = fresh.Items, fresh.Salt
		}
	}
	p.UsualHabit = usual
	return nil
}

// usualHabit is what the athlete says they usually take, over the plan's session.
func (c Case) usualHabit(p record.Plan, d Setup) record.Option {
	h, hours := c.Athlete.Habit, c.Planner.Session().Minutes[plan.Expected]/60
	o := emptyOption(p, record.OptionHabit, "", 0)
	add := func(role record.Role, id record.ID, name string, x, grain float64) {
		it := record.Item{Meta: record.Meta{ID: record.NewID()}, Order: len(o.Items), Role: role, ProductID: id, Name: name}
		o.Items = append(o.Items, amount(it, quantity.RoundTo(x, grain)))
	}
	add(record.RoleWater, Water, waterName(d), h.Water.Or(0)*1000*hours, habitML)
	drink := h.DrinkID
	if drink == "" {
		drink = firstDrink
	}
	if product, ok := d.Pantry.Find(drink); ok && h.Drink.Or(0) > 0 && drink != Water {
		add(record.RoleDrink, drink, product.Name, *h.Drink.Value*1000*hours, habitML)
	}
	if product, ok := d.Pantry.Find(h.FoodID); ok && h.Portions.Or(0) > 0 {
		add(record.RoleFood, h.FoodID, product.Name, *h.Portions.Value*hours, habitPortion)
	}
	o.Salt = record.Num(0, quantity.Gram)
	return o
}
