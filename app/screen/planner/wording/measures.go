package wording

import (
	"math"

	"ebbwell/app/screen/planner/state"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// More is how an amount differs from the habit: "0.15 L more", "½ less"; empty where
// it does not.
func (sp Speaker) More(slot plan.Slot, x float64) string {
	var text string
	size := math.Abs(x)
	if shown := sp.By.Unit(quantity.Litre); slot.IsDrink() {
		litres, err := quantity.Convert(size/1000, quantity.Litre, shown)
		if err == nil && quantity.Round(litres, quantity.Decimals(shown)) == 0 {
			return "" // reads as nothing
		}
	}
	switch {
	case slot.IsFood():
		text = sp.Words.Half(size)
	case slot == plan.Salt:
		text = sp.Words.Number(size, 1) + "\u00a0" + string(quantity.Gram)
	default:
		text = sp.By.Amount(size/1000, quantity.Litre)
	}
	switch {
	case x == 0:
		return ""
	case x < 0:
		return sp.Say("planner.less", text)
	}
	return sp.Say("planner.more", text)
}

// parts of a bottle that one can see, with their words.
func bottleParts() []struct {
	part float64
	key  string
} {
	return []struct {
		part float64
		key  string
	}{{0.25, "quarter"}, {1.0 / 3, "third"}, {0.5, "half"}, {2.0 / 3, "twothirds"}, {0.75, "threequarters"}, {1, "one"}}
}

// InBottles says a volume in mL as the athlete's own bottles: "about two thirds of a
// 500 mL bottle". The smallest bottle that holds it is taken, else the largest. Empty
// without bottles, and for less than can be seen in one.
func (sp Speaker) InBottles(sizes []float64, ml float64) string {
	size := 0.0
	for _, one := range sizes {
		switch {
		case size == 0, one >= ml && (size < ml || one < size), size < ml && one > size:
			size = one
		}
	}
	if size <= 0 || ml <= 0 {
		return ""
	}
	n := ml / size
	if halves := math.Round(2*n) / 2; halves > 1 {
		return sp.Say("planner.bottle.several", sp.Words.Half(halves), sp.Millilitres(size))
	}
	best := bottleParts()[0]
	for _, p := range bottleParts() {
		if math.Abs(p.part-n) < math.Abs(best.part-n) {
			best = p
		}
	}
	if n < best.part/2 {
		return ""
	}
	return sp.Say("planner.bottle."+best.key, sp.Millilitres(size))
}

// InMouthfuls says a volume in mL in mouthfuls.
func (sp Speaker) InMouthfuls(ml float64, m plan.Mouthful) string {
	if n := int(math.Round(ml / float64(m))); m > 0 && n > 0 {
		return sp.Say("planner.mouthfuls.about", n)
	}
	return ""
}

// Mouthfuls are so many; empty for none.
func (sp Speaker) Mouthfuls(n int) string {
	if n == 0 {
		return ""
	}
	return sp.Say("planner.mouthfuls", n)
}

// Rounded are grams as they are written, so that what is said of them agrees with the
// figure.
func (sp Speaker) Rounded(grams float64) float64 { return quantity.Round(grams, 0) }

// Taken is a mix in one line: "0.45 + 0.35 L + ½ fig bar".
func (sp Speaker) Taken(s state.State, mix plan.Mix) string {
	parts := []string{sp.DrinksOf(s, mix)}
	for slot := plan.Food1; slot.IsFood(); slot++ {
		if mix[slot] > 0 {
			parts = append(parts, sp.Words.Portions(mix[slot], sp.ProductWithin(s.PlanCase, slot)))
		}
	}
	return sp.Words.Plus(parts)
}

// InWords is a mix as it is said: "0.45 L water, 0.35 L sports drink 6 % and ½ fig bar".
func (sp Speaker) InWords(s state.State, mix plan.Mix) string {
	var list []string
	for slot := plan.Water; slot < plan.Slots; slot++ {
		switch {
		case !s.PlanCase.Slots[slot].InUse || !(mix[slot] > 0):
		case slot.IsFood():
			list = append(list, sp.Words.Portions(mix[slot], sp.ProductWithin(s.PlanCase, slot)))
		default:
			list = append(list, sp.Words.AmountOf(sp.Amount(s.PlanCase, slot, mix[slot]), sp.ProductWithin(s.PlanCase, slot)))
		}
	}
	if len(list) == 0 {
		return sp.Say("planner.split.nothing")
	}
	return sp.Words.List(list)
}
