package proposal

import "math"

// window is where the amount of one source may lie.
type window struct{ low, high float64 }

// anywhere is the window that leaves out nothing.
func anywhere() window { return window{math.Inf(-1), math.Inf(1)} }

func (w window) leavesOut(x float64) bool { return x < w.low || x > w.high }

// slack is far more than rounding, and far less than any amount differs by: what lies
// near the edge of a window is left to be looked at.
const slack = 1e-6

// below narrows a window to where a sum, that begins at from and rises by each, ends no
// higher than most.
func (w *window) below(from, each, most float64) {
	room := most + slack*(1+math.Abs(most)) - from
	switch {
	case each > 0:
		w.high = min(w.high, room/each)
	case each < 0:
		w.low = max(w.low, room/each)
	case room < 0:
		w.low, w.high = math.Inf(1), math.Inf(-1)
	}
}

// above is the same with an end that is no lower than least.
func (w *window) above(from, each, least float64) { w.below(-from, -each, -least) }

// window is where a thing that changes can lie, with so many more of the slots after it
// changed as are left: no limit is passed, and no more is missing than in the best.
func (s *search) window(sum *Sum, k, left int) window {
	p, w, rest := s.p, anywhere(), &s.rest[k+1]
	to := &rest.by[left]
	least, most := &to.least, &to.most
	var one Sum
	one.add(&p.c.Sources[s.order[k]], 1)
	u, from := p.amountsOf(&one), p.amountsOf(sum)
	for _, x := range [...]struct {
		i    part
		most float64
	}{
		{partDrunk, p.mostML}, {partFuel, p.mostG}, {partOneSource, p.mostOneG}, {partSodium, p.mostSodiumMg},
		{partTooStrong, 0}, {partGels, p.gels}, {partPortions, p.portions},
	} {
		w.below(from[x.i]+least[x.i], u[x.i], x.most)
	}
	w.below(from[partDrunk]+from[partFoodWater]+least[partDrunk]+least[partFoodWater], u[partDrunk]+u[partFoodWater], p.intakeML)
	drunk, fuel, salted := p.leastML, p.leastG, math.Inf(-1)
	if s.best.ok && (u[partFoodWater] <= 0 || math.IsInf(p.foodWaterFrom, 1)) {
		drunk = max(drunk, s.asked()-s.eaten(sum, to))
		if s.best.misses.Fluid <= s.floor.Fluid {
			fuel = max(fuel, s.askedFuel())
			if s.best.misses.Carbohydrate <= s.floor.Carbohydrate {
				salted = s.askedSodium(drunk)
			}
		}
	}
	w.above(from[partDrunk]+most[partDrunk], u[partDrunk], drunk)
	w.above(from[partFuel]+most[partFuel], u[partFuel], fuel)
	w.above(from[partInFood]+most[partInFood], u[partInFood], p.leastFoodG)
	w.above(from[partSodium]+most[partSodium], u[partSodium], salted)
	return w
}
