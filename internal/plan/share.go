package plan

import "math"

// share parts the volume of each chance among the drinks, in proportion to
// the plan. Each drink runs as evenly as whole mL let it; when all of the plan is
// scheduled, each comes to its own total.
func share(takes []Take, volumes [Drinks]int, scheduled int) {
	planned := 0
	for _, v := range volumes {
		planned += v
	}
	if planned == 0 || scheduled == 0 {
		return
	}
	var given [Drinks]int
	total := 0
	for i := range takes {
		t := &takes[i]
		total += t.ML
		for left := t.ML; left > 0; left-- {
			d := neediest(volumes, given, float64(total)/float64(planned))
			n := 1
			if even := int((float64(volumes[d])*float64(total)/float64(planned) - float64(given[d]))); even > 1 {
				n = min(even, left)
			}
			t.ByDrink[d] += n
			given[d] += n
			left -= n - 1
		}
	}
}

// neediest is the drink that lags furthest behind its part.
func neediest(volumes, given [Drinks]int, part float64) int {
	best, lag := -1, 0.0
	for d, v := range volumes {
		if given[d] >= v {
			continue
		}
		if x := float64(v)*part - float64(given[d]); best < 0 || x > lag {
			best, lag = d, x
		}
	}
	return best
}

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
