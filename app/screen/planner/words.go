package planner

import (
	"regexp"
	"strings"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// speaker words a plan in the practice's language and units. Where body mass is
// hidden it speaks of litres only.
type speaker struct {
	w  *words.Words
	by amount.Writer
}

func (sp speaker) say(key string, args ...any) string { return sp.w.Say(key, args...) }

// litres writes a volume of a whole session: "0.80 L".
func (sp speaker) litres(l float64) string { return sp.by.Amount(l, quantity.Litre) }

// millilitres writes a volume as it is drunk: "120 mL".
func (sp speaker) millilitres(ml float64) string { return sp.by.Amount(ml, quantity.Millilitre) }

// rate writes a rate of drinking or sweating.
func (sp speaker) rate(lh float64) string { return sp.by.Amount(lh, quantity.LitrePerHour) }

// carbohydrate writes grams an hour.
func (sp speaker) carbohydrate(gh float64) string { return sp.by.Amount(gh, quantity.GramPerHour) }

// plain writes a rate without its unit.
func (sp speaker) plain(x float64, u quantity.Unit) string { return sp.by.Number(x, u) }

// percent writes a share of a whole; of body mass see change.
func (sp speaker) percent(x float64, decimals int) string {
	return sp.w.Number(x, decimals) + "\u00a0" + string(quantity.PerCent)
}

// end is the deficit at the end as a change, in per cent of body mass or, where
// that is hidden, in litres: a deficit is below zero.
func (sp speaker) end(litres, percent plan.Ranged) (x plan.Ranged, u quantity.Unit) {
	if sp.by.Hidden {
		return turned(litres), quantity.Litre
	}
	return turned(percent), quantity.PerCent
}

// turned changes the sign of a number with its range.
func turned(r plan.Ranged) plan.Ranged {
	r.Value, r.Low, r.High = -r.Value, -r.High, -r.Low
	return r
}

// change is a change of the body with its sign: "−2.1 %", "−1.35 L".
func (sp speaker) change(x float64, u quantity.Unit) string { return sp.by.Signed(x, u) }

// deficit is the deficit at the end of a prediction.
func (sp speaker) deficit(q plan.Prediction) string {
	x, u := sp.end(q.DeficitL, q.Deficit)
	return sp.change(x.Value, u)
}

// spread is the range of the deficit at the end, the mild end first.
func (sp speaker) spread(q plan.Prediction) string {
	x, u := sp.end(q.DeficitL, q.Deficit)
	return sp.say("planner.to", sp.by.Number(x.High, u), sp.change(x.Low, u))
}

// product is the name of what stands in a slot.
func (sp speaker) product(c consult.Case, slot plan.Slot) string {
	if slot == plan.Salt {
		return sp.say("planner.salt")
	}
	if name := c.Slots[slot].Product.Name; name != "" {
		return sp.named(name)
	}
	return sp.say("planner.water")
}

// named is the name of a product. Where mass is hidden no per cent is on the
// screen: a strength is written as grams in 100 mL.
func (sp speaker) named(name string) string {
	if !sp.by.Hidden {
		return name
	}
	strength := regexp.MustCompile(`(\d+(?:[.,]\d+)?)[\s\x{00a0}]*%`)
	return strength.ReplaceAllString(name, sp.say("planner.strength.hidden", "${1}"))
}

// strength writes how strong a drink is, g in 100 mL.
func (sp speaker) strength(x float64) string {
	if sp.by.Hidden {
		return sp.say("planner.strength.hidden", sp.w.Number(x, 1))
	}
	return sp.percent(x, 1)
}

// portions writes an amount of a food: "½ fig bar".
func (sp speaker) portions(x float64, name string) string {
	if x > 1 {
		return sp.say("planner.portions", sp.w.Half(x), lower(name))
	}
	return sp.w.Half(x) + "\u00a0" + lower(name)
}

// portionWord is the unit behind a number of portions.
func (sp speaker) portionWord(x float64) string {
	if x > 1 {
		return sp.say("planner.portion.more")
	}
	return sp.say("planner.portion")
}

// lower writes a name as it stands within a sentence: with a small letter,
// unless it is an abbreviation.
func lower(name string) string {
	runes := []rune(name)
	if len(runes) > 1 && strings.ToUpper(string(runes[1])) != string(runes[1]) {
		return strings.ToLower(string(runes[0])) + string(runes[1:])
	}
	return name
}

// capital writes a text as it stands at the beginning of a line.
func capital(text string) string {
	runes := []rune(text)
	if len(runes) == 0 {
		return text
	}
	return strings.ToUpper(string(runes[0])) + string(runes[1:])
}

// amount writes what there is of a slot, with its unit.
func (sp speaker) amount(c consult.Case, slot plan.Slot, x float64) string {
	switch {
	case slot.IsFood():
		return sp.portions(x, sp.product(c, slot))
	case slot == plan.Salt:
		return sp.w.Number(x, 1) + "\u00a0" + string(quantity.Gram)
	}
	return sp.litres(x / 1000)
}

// step is a difference between two amounts of a slot, without its unit; empty
// where there is none.
func (sp speaker) step(slot plan.Slot, x float64) string {
	switch {
	case x == 0:
		return ""
	case slot.IsFood():
		if x < 0 {
			return "−" + sp.w.Half(-x)
		}
		return "+" + sp.w.Half(x)
	case slot == plan.Salt:
		return sp.w.Signed(x, 1)
	}
	signed := sp.by.Signed(x/1000, quantity.Litre)
	return strings.TrimSuffix(signed, "\u00a0"+string(sp.by.Unit(quantity.Litre)))
}

// substance is the hue of a slot.
func substance(slot plan.Slot) look.Substance {
	switch {
	case slot == plan.Water:
		return look.Water
	case slot.IsDrink():
		return look.Drink
	case slot.IsFood():
		return look.Food
	}
	return look.Salt
}

// slotName is a slot in the names of controls.
func slotName(slot plan.Slot) string {
	names := [plan.Slots]string{"water", "drink1", "drink2", "drink3", "food1", "food2", "food3", "food4", "salt"}
	return names[slot]
}

// optionName is the name of an option.
func (sp speaker) optionName(o record.Option) string {
	if o.Name != "" {
		return o.Name
	}
	return sp.say("planner.option.unnamed")
}
