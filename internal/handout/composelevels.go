package handout

import (
	"math"
	"slices"

	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// mostBottles is how many bottles of a drink are filled one by one. Our own proposal.
const mostBottles = 4

// holds is the bottle of the drink at a place among those of the mix: the athlete's
// own at that place, else the largest of the sizes of the plan; known is false where
// nobody wrote one down, and the usual size is taken.
func (k composer) holds(drink int) (own consult.OwnBottle, known bool) {
	if list := consult.OwnBottles(k.c.Athlete); drink < len(list) {
		return list[drink], true
	}
	if sizes := consult.BottlesOf(k.c.Plan); len(sizes) > 0 {
		return consult.OwnBottle{Full: quantity.Millilitres(slices.Max(sizes))}, true
	}
	return consult.OwnBottle{Full: bottle}, false
}

// poured are the bottles of each drink with what goes into each: what whole breaks
// take from it, or even shares where there are no breaks or many bottles.
func (k composer) poured() []BagItem {
	var list []BagItem
	drink := 0
	for s := plan.Water; s <= plan.Drink3; s++ {
		ml := k.at.Fluid.BySlotML[s]
		if !k.c.Slots[s].InUse || ml <= 0 {
			continue
		}
		own, known := k.holds(drink)
		holds := float64(own.Full)
		drink++
		item := BagItem{Substance: slotSubstance(s), Name: inside(k.w, k.c.Slots[s].Product), Count: 1, Volume: quantity.Millilitres(holds), Assumed: !known, Bottle: own.Name}
		fills := fillsOf(k.spread.Levels(s, int(holds), nil))
		if n := len(fills); n == 0 || n > mostBottles || float64(slices.Max(fills)) > holds {
			count := math.Ceil(ml/holds - 1e-9)
			item.Bottle = ""
			item.Count, item.Fill = int(count), wholeSteps(quantity.Millilitres(ml/count), k.step(pourStep))
			list = append(list, item)
			continue
		}
		for _, fill := range fills {
			item.Fill = wholeSteps(quantity.Millilitres(fill), k.step(pourStep))
			if at := len(list) - 1; at >= 0 && like(list[at], item) {
				list[at].Count++
				continue
			}
			list = append(list, item)
		}
	}
	return list
}

// like reports whether two bottles hold the same, of the same.
func like(a, b BagItem) bool {
	a.Count = b.Count
	return a == b
}

// fillsOf is what is poured into each bottle of a drink.
func fillsOf(levels []plan.Level) []int {
	var fills []int
	for i, l := range levels {
		if i == 0 || levels[i-1].Bottle != l.Bottle {
			fills = append(fills, l.FullML)
		}
	}
	return fills
}

// stand puts the bottles to the breaks, where their size is known and each break is
// drunk from one that holds it.
func (k composer) stand(chances []Chance) {
	drink := 0
	for s := plan.Water; s <= plan.Drink3; s++ {
		if !k.c.Slots[s].InUse || k.at.Fluid.BySlotML[s] <= 0 {
			continue
		}
		own, known := k.holds(drink)
		if !known {
			drink++
			continue
		}
		holds := float64(own.Full)
		levels := k.spread.Levels(s, int(holds), nil)
		fills := fillsOf(levels)
		for _, l := range levels {
			if float64(l.FullML) > holds {
				break
			}
			one := Stand{
				Name: own.Name, Drink: drink, Bottle: l.Bottle, Holds: quantity.Millilitres(holds), Left: quantity.Millilitres(l.LeftML), Line: l.Line,
				Before: quantity.Millilitres(l.LeftML + k.spread.Takes[l.Take].ByDrink[s]),
			}
			if len(fills) == 1 {
				one.Bottle = 0
			}
			chances[l.Take].Stands = append(chances[l.Take].Stands, one)
		}
		drink++
	}
}

// slotSubstance is what a slot of a mix holds.
func slotSubstance(s plan.Slot) Substance {
	if s == plan.Water {
		return Water
	}
	return Drink
}
