package handout

import (
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// during is what to take at each chance, or an hour where there are none.
func (k composer) during() During {
	d := During{
		Drinks: k.columns(), TotalFoods: k.foods(k.mix), Mouthful: quantity.Millilitres(k.c.Athlete.Mouthful.Or(0)),
		Carbohydrate: quantity.GramsPerHour(k.at.Carbohydrate.TotalGH),
	}
	d.Total = k.volumes(k.at.Fluid.BySlotML, 1)
	if len(k.spread.Takes) == 0 {
		hours := k.at.Minutes / 60
		d.PerHour = k.volumes(k.at.Fluid.BySlotML, hours)
		for _, f := range d.TotalFoods {
			d.Foods = append(d.Foods, Portion{Name: f.Name, Portions: f.Portions / hours})
		}
		return d
	}
	for _, t := range k.spread.Takes {
		d.Chances = append(d.Chances, k.chance(t))
		d.TotalMouthfuls += t.Mouthfuls
	}
	return d
}

// columns are the drinks of the mix, water first.
func (k composer) columns() []Column {
	var list []Column
	for _, p := range k.parts(k.at) {
		list = append(list, Column{Substance: p.Substance, Name: p.Name})
	}
	return list
}

// volumes are the drinks in use by the hour, in mL.
func (k composer) volumes(bySlot [plan.Slots]float64, hours float64) []quantity.Millilitres {
	var list []quantity.Millilitres
	for s := plan.Water; s <= plan.Drink3; s++ {
		if k.c.Slots[s].InUse && k.at.Fluid.BySlotML[s] > 0 {
			list = append(list, quantity.Millilitres(bySlot[s]/hours))
		}
	}
	return list
}

// chance is one row of the schedule.
func (k composer) chance(t plan.Take) Chance {
	c := Chance{Name: k.chanceName(t.Chance.Code), Mouthfuls: t.Mouthfuls, Maybe: t.Chance.Certainty != plan.Certain}
	for s := plan.Water; s <= plan.Drink3; s++ {
		if k.c.Slots[s].InUse && k.at.Fluid.BySlotML[s] > 0 {
			c.Volumes = append(c.Volumes, quantity.Millilitres(t.ByDrink[s]))
		}
	}
	for f := range plan.Foods {
		if t.Food[f] > 0 {
			c.Foods = append(c.Foods, Portion{Name: k.c.Slots[int(plan.Food1)+f].Product.Name, Portions: t.Food[f]})
		}
	}
	return c
}

// chanceName words a chance of the table; one that was typed is its own name.
func (k composer) chanceName(code string) string {
	if key := "chance." + code; k.w.Has(key) {
		return k.w.Say(key)
	}
	return code
}
