package plan

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan/proposal"
)

// serve spreads the food over the chances that let one eat, evenly and in
// whole steps, gels whole, each where enough is drunk for it, or beside; chances
// that may not happen only when there are no others. A gel is carried, so every
// chance to drink will do (common practice, no source).
func (p *Planner) serve(mix Mix, out *Schedule) {
	each := p.gelWaterEach()
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
		units := proposal.Begun(portions, step)
		for u := range units {
			amount := min(step, portions-float64(u)*step)
			wanted := 0
			if item.Gel {
				wanted = int(math.Round(amount * each))
			}
			at := nthEatable(out.Takes, item.Gel, maybe, (2*u+1)*n/(2*units))
			if !out.Takes[at].waters(wanted) {
				at = wetter(out.Takes, at, item.Gel, maybe, wanted)
			}
			t := &out.Takes[at]
			t.Food[f] += amount
			t.WaterWantedML += wanted
		}
	}
	p.dryTakes(out, each)
}

// dryTakes marks the chances that lack water for their gels where all of them together
// do, as a plan is judged. Where they do not, the water before and after goes with the
// gel, and what is drunk here is what it is taken with.
func (p *Planner) dryTakes(out *Schedule, each float64) {
	var all proposal.Sum
	for i := range out.Takes {
		t := &out.Takes[i]
		all.GelWaterML += t.gelWaterML()
		for f, x := range t.Food {
			if p.menu[int(Food1)+f].Gel {
				all.Gels += x
			}
		}
	}
	dry := all.Dry(each)
	for i := range out.Takes {
		t := &out.Takes[i]
		switch {
		case t.waters(0):
		case dry:
			t.Dry = true
		default:
			t.WaterWantedML = t.ML
		}
	}
}

// gelWaterML is what of a take counts as water for gels, mL.
func (t *Take) gelWaterML() float64 {
	water := float64(t.ByDrink[Water])
	return water + evidence.GelDrinkPart*(float64(t.ML)-water)
}

// waters reports whether enough is drunk here for food that wants so much more.
func (t *Take) waters(wanted int) bool {
	return !proposal.Passes(float64(t.WaterWantedML+wanted), t.gelWaterML())
}

// wetter is where food goes for which too little is drunk at a chance: the one before it
// where enough is; else that one of the three at which most is left to drink with it, the
// chance itself before its neighbours.
func wetter(takes []Take, at int, gel, maybe bool, wanted int) int {
	best := at
	for _, j := range [2]int{at - 1, at + 1} {
		if j < 0 || j >= len(takes) || !takes[j].eats(gel, maybe) {
			continue
		}
		if j < at && takes[j].waters(wanted) {
			return j
		}
		if proposal.Passes(takes[j].spareML(), takes[best].spareML()) {
			best = j
		}
	}
	return best
}

// spareML is what is drunk at a chance beside what its gels are taken with, mL.
func (t *Take) spareML() float64 { return t.gelWaterML() - float64(t.WaterWantedML) }

// eats reports whether food, or a gel, can be given at a chance.
func (t *Take) eats(gel, maybe bool) bool {
	return t.Chance.Code != NoDrinking && (t.Chance.CanEat || gel) && (maybe || t.Chance.Certainty == Certain)
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

func nthEatable(takes []Take, gel, maybe bool, n int) int {
	for i := range takes {
		if !takes[i].eats(gel, maybe) {
			continue
		}
		if n == 0 {
			return i
		}
		n--
	}
	return -1
}
