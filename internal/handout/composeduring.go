package handout

import (
	"math"

	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// during is what to take at each chance, or an hour where there are none.
func (k composer) during() During {
	if k.over {
		return During{}
	}
	if k.spread.Closed() {
		return During{Closed: true}
	}
	d := During{
		Drinks: k.columns(), TotalFoods: k.foods(k.mix), Mouthful: quantity.Millilitres(k.c.Athlete.Mouthful.Or(0)),
		Carbohydrate: quantity.GramsPerHour(k.at.Carbohydrate.TotalGH),
	}
	if d.Mouthful <= 0 {
		d.Assumed = quantity.Millilitres(consult.MouthfulOf(k.c.Athlete))
	}
	d.Total = k.volumes(k.at.Fluid.BySlotML, 1)
	if len(k.spread.Takes) == 0 {
		hours := k.at.Minutes / 60
		for _, v := range k.volumes(k.at.Fluid.BySlotML, hours) {
			d.PerHour = append(d.PerHour, wholeSteps(v, k.step(hourStep)))
		}
		if k.us {
			for i, v := range d.Total {
				d.Total[i] = wholeSteps(v, k.step(hourStep))
			}
		}
		for _, f := range d.TotalFoods {
			d.Foods = append(d.Foods, Portion{Name: f.Name, Portions: f.Portions / hours})
		}
		return d
	}
	for i, t := range k.spread.Takes {
		c := k.chance(t)
		c.Name = k.numbered(i, c.Name)
		d.Chances = append(d.Chances, c)
		d.TotalMouthfuls += t.Mouthfuls
	}
	d.Total = pourable(d.Chances, len(d.Drinks), k.step(pourStep))
	k.stand(d.Chances)
	return d
}

// step is what amounts are rounded down to, mL: the metric step, or a fluid
// ounce where the page is in ounces, since no part of one is written.
func (k composer) step(metric float64) float64 {
	if k.us {
		return convert(1, quantity.FluidOunce, quantity.Millilitre)
	}
	return metric
}

// wholeSteps rounds a volume down to whole steps.
func wholeSteps(v quantity.Millilitres, step float64) quantity.Millilitres {
	return quantity.Millilitres(math.Floor(float64(v)/step+1e-9) * step)
}

// pourStep is what an amount at a break is rounded to, mL: a bottle can be
// read to no less. Our own proposal.
const pourStep = 5.0

// pourable rounds the amounts at the chances to steps in mL so that at none of
// them more has been drunk than was planned until then, and returns what they
// add up to.
func pourable(chances []Chance, drinks int, step float64) []quantity.Millilitres {
	total := make([]quantity.Millilitres, drinks)
	for d := range drinks {
		var planned quantity.Millilitres
		for i := range chances {
			planned += chances[i].Volumes[d]
			until := wholeSteps(planned, step)
			chances[i].Volumes[d] = until - total[d]
			total[d] = until
		}
	}
	return total
}

// carriedBottle is the chance that comes by the clock: it is named by its minute.
const carriedBottle = "carried-bottle"

// numbered tells chances of one name apart: "drinks break 2".
func (k composer) numbered(at int, name string) string {
	if c := k.spread.Takes[at].Chance; c.Code == carriedBottle {
		return k.w.Say("handout.during.minute", k.w.Number(c.Minute, 0))
	}
	same, before := 0, 0
	for i, t := range k.spread.Takes {
		if t.Chance.Code != k.spread.Takes[at].Chance.Code {
			continue
		}
		same++
		if i <= at {
			before++
		}
	}
	if same < 2 {
		return name
	}
	return k.w.Say("handout.during.numbered", name, k.w.Number(float64(before), 0))
}

// hourStep is what an amount for an hour is rounded down to, mL: nobody pours to
// the millilitre, and no hour asks for more than the plan. Our own proposal.
const hourStep = 10.0

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
			c.Foods = append(c.Foods, Portion{Name: inside(k.w, k.c.Slots[int(plan.Food1)+f].Product), Portions: t.Food[f]})
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
