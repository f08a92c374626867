package consult

import (
	"errors"
	"fmt"
	"math"

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
// one that the profile tells, drunk at the same rates in the plan's session. A session
// as long as the test becomes as long as the usual one, and back; one whose length was
// set by hand stays. It returns [ErrNoHabit] where there is none.
func (c Case) StartFrom(p *record.Plan, usual bool, d Setup) error {
	habit, ok := OptionOf(*p, record.OptionHabit)
	if !ok {
		return fmt.Errorf("start plan %s from a habit: %w", p.ID, ErrNoHabit)
	}
	var fresh record.Option
	test, tested := c.habitTest()
	told := c.Athlete.Habit.Minutes.Or(0)
	switch {
	case tested && !usual:
		c.lasts(p, told, test.Minutes)
		fresh = habitOf(*p, test, d)
	case usual && HasUsualHabit(c.Athlete):
		c.lasts(p, test.Minutes, told)
		fresh = c.usualHabit(*p, d)
	default:
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

// lasts makes a plan's session that is as long as one before, min, as long as another,
// with its breaks. Without a length of either it stays.
func (c Case) lasts(p *record.Plan, before, after float64) {
	if t := &p.Target; before > 0 && after > 0 && math.Abs(t.Minutes.Or(0)-before) < 0.5 {
		p.Chances = c.Rescaled(p.Chances, t.Minutes.Or(0), after)
		t.Minutes = record.Num(after, quantity.Minute)
		if t.Short.Or(0) > after {
			t.Short = record.Number{}
		}
		if x := t.Long.Or(after); x < after {
			t.Long = record.Number{}
		}
	}
}

// usualHabit is what the athlete says they usually take, over the plan's session.
func (c Case) usualHabit(p record.Plan, d Setup) record.Option {
	h, hours := c.Athlete.Habit, p.Target.Minutes.Or(0)/60
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
