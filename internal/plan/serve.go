package plan

import "math"

// serve spreads the food over the chances that let one eat, evenly and in
// whole steps, gels whole, each where enough is drunk for it, or beside; chances
// that may not happen only when there are no others. A gel is carried, so every
// chance to drink will do (common practice, no source).
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
		step := item.Step
		if item.Gel {
			step = math.Ceil(step) // nobody keeps half a gel
		}
		units := max(1, int(math.Ceil(portions/step-hair)))
		for u := range units {
			amount := min(step, portions-float64(u)*step)
			wanted := int(math.Round(amount * item.Unit.WaterWantedL * 1000))
			t := nthEatable(out.Takes, item.Gel, maybe, (2*u+1)*n/(2*units))
			if !t.waters(wanted) {
				t = wetter(out.Takes, t, item.Gel, maybe, wanted)
			}
			t.Food[f] += amount
			t.WaterWantedML += wanted
		}
	}
}

// waters reports whether enough is drunk here for food that wants so much more.
func (t *Take) waters(wanted int) bool { return t.WaterWantedML+wanted <= t.ML }

// wetter is the chance beside one at which enough is drunk for food, the one before
// it first; that chance itself where there is none.
func wetter(takes []Take, at *Take, gel, maybe bool, wanted int) *Take {
	for i := range takes {
		if &takes[i] != at {
			continue
		}
		for _, j := range [2]int{i - 1, i + 1} {
			if j >= 0 && j < len(takes) && takes[j].eats(gel, maybe) && takes[j].waters(wanted) {
				return &takes[j]
			}
		}
	}
	return at
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
