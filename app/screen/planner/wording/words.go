package wording

import (
	"regexp"
	"strings"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/planner/state"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Speaker words a plan in the practice's language and units. Where body mass is
// hidden it speaks of litres only.
type Speaker struct{ amount.Speaker }

// Litres writes a volume of a whole session: "0.80 L".
func (sp Speaker) Litres(l float64) string { return sp.By.Amount(l, quantity.Litre) }

// Millilitres writes a volume as it is drunk: "120 mL".
func (sp Speaker) Millilitres(ml float64) string { return sp.By.Amount(ml, quantity.Millilitre) }

// Rate writes a rate of drinking or sweating.
func (sp Speaker) Rate(lh float64) string { return sp.By.Amount(lh, quantity.LitrePerHour) }

// Carbohydrate writes grams an hour.
func (sp Speaker) Carbohydrate(gh float64) string { return sp.By.Amount(gh, quantity.GramPerHour) }

// Plain writes a rate without its unit.
func (sp Speaker) Plain(x float64, u quantity.Unit) string { return sp.By.Number(x, u) }

// Percent writes a share of a whole; of body mass see change.
func (sp Speaker) Percent(x float64, decimals int) string {
	return sp.Words.Number(x, decimals) + "\u00a0" + string(quantity.PerCent)
}

// End is the deficit at the end as a change, in per cent of body mass or, where
// that is hidden, in litres: a deficit is below zero.
func (sp Speaker) End(litres, percent plan.Ranged) (x plan.Ranged, u quantity.Unit) {
	if sp.By.Hidden {
		return turned(litres), quantity.Litre
	}
	return turned(percent), quantity.PerCent
}

// turned changes the sign of a number with its range.
func turned(r plan.Ranged) plan.Ranged {
	r.Value, r.Low, r.High = -r.Value, -r.High, -r.Low
	return r
}

// Change is a change of the body with its sign: "−2.1 %", "−1.35 L".
func (sp Speaker) Change(x float64, u quantity.Unit) string { return sp.By.Signed(x, u) }

// Deficit is the deficit at the end of a prediction.
func (sp Speaker) Deficit(q plan.Prediction) string {
	x, u := sp.End(q.DeficitL, q.Deficit)
	return sp.Change(x.Value, u)
}

// Spread is the range of the deficit at the end, the mild end first.
func (sp Speaker) Spread(q plan.Prediction) string {
	x, u := sp.End(q.DeficitL, q.Deficit)
	return sp.Say("planner.to", sp.By.Number(x.High, u), sp.Change(x.Low, u))
}

// Product is the name of what stands in a slot.
func (sp Speaker) Product(c consult.Case, slot plan.Slot) string {
	return sp.product(c, slot, sp.Words.Food, "")
}

// ProductWithin is [Speaker.Product] as it stands within a line.
func (sp Speaker) ProductWithin(c consult.Case, slot plan.Slot) string {
	return sp.product(c, slot, sp.Words.FoodWithin, ".within")
}

// product names what stands in a slot: a product by food, what is none by the end of a key.
func (sp Speaker) product(c consult.Case, slot plan.Slot, food func(id, name string) string, end string) string {
	p := c.Slots[slot].Product
	switch {
	case slot == plan.Salt:
		return sp.Say("planner.salt" + end)
	case p.Name == "":
		return sp.Say("planner.water" + end)
	}
	return sp.Named(food(p.ID, p.Name))
}

// Named is the name of a product. Where mass is hidden no per cent is on the
// screen: a strength is written as grams in 100 mL.
func (sp Speaker) Named(name string) string {
	if !sp.By.Hidden {
		return name
	}
	strength := regexp.MustCompile(`(\d+(?:[.,]\d+)?)[\s\x{00a0}]*%`)
	return strength.ReplaceAllString(name, sp.Say("planner.strength.hidden", "${1}"))
}

// Strength writes how strong a drink is, g in 100 mL.
func (sp Speaker) Strength(x float64) string {
	if sp.By.Hidden {
		return sp.Say("planner.strength.hidden", sp.Words.Number(x, 1))
	}
	return sp.Percent(x, 1)
}

// PortionWord is the unit behind a number of portions.
func (sp Speaker) PortionWord(x float64) string {
	if x > 1 {
		return sp.Say("planner.portion.more")
	}
	return sp.Say("planner.portion")
}

// Amount writes what there is of a slot, with its unit.
func (sp Speaker) Amount(c consult.Case, slot plan.Slot, x float64) string {
	switch {
	case slot.IsFood():
		return sp.Words.Portions(x, sp.ProductWithin(c, slot))
	case slot == plan.Salt:
		return sp.Words.Number(x, 1) + "\u00a0" + string(quantity.Gram)
	}
	return sp.Litres(x / 1000)
}

// Step is a difference between two amounts of a slot, without its unit; empty
// where there is none.
func (sp Speaker) Step(slot plan.Slot, x float64) string {
	switch {
	case x == 0:
		return ""
	case slot.IsFood():
		if x < 0 {
			return "−" + sp.Words.Half(-x)
		}
		return "+" + sp.Words.Half(x)
	case slot == plan.Salt:
		return sp.Words.Signed(x, 1)
	}
	signed := sp.By.Signed(x/1000, quantity.Litre)
	return strings.TrimSuffix(signed, "\u00a0"+string(sp.By.Unit(quantity.Litre)))
}

// SlotName is a slot in the names of controls.
func SlotName(slot plan.Slot) string {
	names := [plan.Slots]string{"water", "drink1", "drink2", "drink3", "food1", "food2", "food3", "food4", "salt"}
	return names[slot]
}

// OptionName is the name of an option.
func (sp Speaker) OptionName(o record.Option) string {
	if o.Name != "" {
		return sp.Words.Option(o.Name)
	}
	return sp.Say("planner.option.unnamed")
}

// RungName names a step: "Step 2", the last one "Step 3, the aim".
func (sp Speaker) RungName(i int, aim bool) string {
	name := sp.Say("option.step", sp.Words.Number(float64(i+1), 0))
	if aim {
		return sp.Say("planner.step.aim", name)
	}
	return name
}

// Short writes a limit in per cent with no idle decimals.
func (sp Speaker) Short(x float64) string { return sp.By.Limit(x, quantity.PerCent) }

// Sodium writes milligrams an hour.
func (sp Speaker) Sodium(mgh float64) string { return sp.By.Amount(mgh, quantity.MilligramPerHour) }

// Doubt says that confidence is low and a smaller step is proposed; empty where
// it is not.
func (sp Speaker) Doubt(o record.Option) (title, sentence string) {
	if !o.Confidence.Known() {
		return "", ""
	}
	if _, ok := plan.DefaultStepRules().Smaller(*o.Confidence.Value); !ok {
		return "", ""
	}
	return sp.Say("planner.smaller.title", sp.Words.Number(*o.Confidence.Value, 0)), sp.Say("planner.smaller")
}

// DrinksOf writes the volumes of water and drinks: "0.45 + 0.35 L".
func (sp Speaker) DrinksOf(s state.State, mix plan.Mix) string {
	var litres []float64
	for slot := plan.Water; slot.IsDrink(); slot++ {
		if s.PlanCase.Slots[slot].InUse && (mix[slot] > 0 || slot == plan.Water) {
			litres = append(litres, mix[slot]/1000)
		}
	}
	return sp.By.Sum(litres, quantity.Litre)
}

// FoodsOf writes what is eaten; a dash for nothing.
func (sp Speaker) FoodsOf(s state.State, mix plan.Mix) string {
	var parts []string
	for slot := plan.Food1; slot.IsFood(); slot++ {
		if mix[slot] > 0 {
			parts = append(parts, sp.Words.Portions(mix[slot], sp.ProductWithin(s.PlanCase, slot)))
		}
	}
	if len(parts) == 0 {
		return sp.Say("planner.none")
	}
	return sp.Words.Commas(parts)
}

// ChanceName names a chance to drink.
func (sp Speaker) ChanceName(c plan.Chance) string { return desk.ChanceWord(sp.Words, c.Code) }

// DoneShare writes how much of a plan was done. Where mass is hidden no per cent
// is on the screen.
func (sp Speaker) DoneShare(percent float64) string {
	if sp.By.Hidden {
		return sp.Say("planner.tenths", sp.Words.Number(percent/10, 0))
	}
	return sp.Percent(percent, 0)
}

// Warmth writes the temperature of the air in whole degrees.
func (sp Speaker) Warmth(celsius float64) string {
	u := sp.By.Unit(quantity.DegreeCelsius)
	x, err := quantity.Convert(celsius, quantity.DegreeCelsius, u)
	if err != nil {
		return ""
	}
	return sp.Words.Number(x, 0) + "\u00a0" + string(u)
}

// Sentences are strings joined with a blank, those that are empty left out.
func Sentences(list ...string) string {
	var kept []string
	for _, s := range list {
		if s != "" {
			kept = append(kept, s)
		}
	}
	return strings.Join(kept, " ")
}

// Minute writes a minute of the session.
func (sp Speaker) Minute(x float64) string { return sp.By.Amount(x, quantity.Minute) }

// FreeName is a name that no option of a plan has yet: "Option 2".
func (sp Speaker) FreeName(p record.Plan, name string) string {
	taken := func(s string) bool {
		for _, o := range p.Options {
			if o.Name == s {
				return true
			}
		}
		return false
	}
	if !taken(name) {
		return name
	}
	for n := 2; ; n++ {
		if s := sp.Say("planner.option.numbered", name, sp.Words.Number(float64(n), 0)); !taken(s) {
			return s
		}
	}
}
