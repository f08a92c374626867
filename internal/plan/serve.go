package plan

import "math"

// serve spreads the food over the chances that let one eat, evenly and in
// whole steps; chances that may fall out only when there are no others. A gel is
// carried, so every chance to drink will do (common practice, no source).
func (p *Planner) serve(mix Mix, out *Schedule) {
	for f := range Foods {
		item, portions := &p.menu[int(Food1)+f], mix[int(Food1)+f]
		if !item.InUse || !(portions > 0) {
			continue
		}
		n := eatable(out.Takes, item.Gel, false)
		maybe := n == 0
		if maybe {
			n = eatable(out.Takes, item.Gel, true)
		}
		if n == 0 {
			out.FoodLeft[f] = portions
			continue
		}
		units := max(1, int(portions/item.Step+hair))
		for u := range units {
			amount := item.Step
			if u == units-1 {
				amount = portions - float64(units-1)*item.Step
			}
			t := nthEatable(out.Takes, item.Gel, maybe, (2*u+1)*n/(2*units))
			t.Food[f] += amount
			t.WaterWantedML += int(math.Round(amount * item.Unit.WaterWantedL * 1000))
		}
	}
}

// eats reports whether food, or a gel, can be given at a chance.
func (t *Take) eats(gel, maybe bool) bool {
	return (t.Chance.CanEat || gel) && (maybe || t.Chance.Certainty == Certain)
}

func eatable(takes []Take, gel, maybe bool) int {
	n := 0
	for i := range takes {
		if takes[i].eats(gel, maybe) {
			n++
		}
	}
	return n
}

func nthEatable(takes []Take, gel, maybe bool, n int) *Take {
	for i := range takes {
		if !takes[i].eats(gel, maybe) {
			continue
		}
		if n == 0 {
			return &takes[i]
		}
		n--
	}
	return nil
}
