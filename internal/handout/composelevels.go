package handout

import (
	"slices"

	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// mostBottles is how many bottles a page speaks of: of more nobody keeps the levels
// in mind. Our own proposal.
const mostBottles = 4

// levels are the bottles of the drinks, filled with what whole breaks take from
// them; nothing where there are many.
func (k composer) levels() []BottleLevel {
	holds, mark := bottle, k.landmark()
	if sizes := consult.BottlesOf(k.c.Plan); len(sizes) > 0 {
		holds = slices.Max(sizes)
	}
	var list []BottleLevel
	for s := plan.Water; s <= plan.Drink3; s++ {
		if !k.c.Slots[s].InUse || k.at.Fluid.BySlotML[s] <= 0 {
			continue
		}
		list = append(list, k.levelsOf(s, k.spread.Levels(s, int(holds), nil), mark)...)
	}
	if len(list) > mostBottles {
		return nil
	}
	return list
}

// levelsOf are the bottles of one drink, with where they stand after a break.
func (k composer) levelsOf(s plan.Slot, levels []plan.Level, mark int) []BottleLevel {
	var list []BottleLevel
	for i, l := range levels {
		if i == 0 || levels[i-1].Bottle != l.Bottle {
			list = append(list, BottleLevel{Name: k.c.Slots[s].Product.Name, Bottle: l.Bottle, Fill: quantity.Millilitres(l.FullML)})
		}
		if b := &list[len(list)-1]; mark >= 0 && l.Take <= mark {
			b.By, b.Left = k.numbered(mark, k.chanceName(k.spread.Takes[mark].Chance.Code)), quantity.Millilitres(l.LeftML)
		}
	}
	if len(list) == 1 {
		list[0].Bottle = 0
	}
	return list
}

// landmark is the place of the longest break that is certain and stands alone;
// -1 where there is none.
func (k composer) landmark() int {
	best, alone := -1, false
	for i, t := range k.spread.Takes {
		if t.Chance.Certainty != plan.Certain {
			continue
		}
		switch {
		case best < 0 || t.Chance.Seconds > k.spread.Takes[best].Chance.Seconds:
			best, alone = i, true
		case t.Chance.Seconds == k.spread.Takes[best].Chance.Seconds:
			alone = false
		}
	}
	if !alone {
		return -1
	}
	return best
}
