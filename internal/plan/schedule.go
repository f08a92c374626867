package plan

import (
	"math"

	"ebbwell/internal/evidence"
)

// Take is what to take at one chance.
type Take struct {
	Chance Chance
	ML     int
	// ByDrink is mL of water and the three drinks; they add up to ML.
	ByDrink [Drinks]int
	// Food is portions of the four foods.
	Food [Foods]float64
	// WaterWantedML is what its gels are taken with; Dry when less is drunk at this
	// chance, and the whole plan lacks water for its gels.
	WaterWantedML int
	Dry           bool
	Mouthfuls     int
	// even is what the fill gives before it is rounded, mL.
	even float64
	// stands are the drinks that stand here, mouthfuls those of each; full takes
	// no mouthful more.
	stands    [Drinks]bool
	mouthfuls [Drinks]int
	full      bool
}

// Schedule is a plan spread over the chances.
type Schedule struct {
	Takes []Take
	// PlannedML is the plan to the mL; DrinkableML is what Takes add up to: what of
	// it the chances can carry, in whole mouthfuls.
	PlannedML, DrinkableML int
	// DrinksFit is false when the plan cannot be drunk at this sport's breaks, be it in
	// mouthfuls or not; FoodFits when some of its food can be eaten at none of them.
	DrinksFit, FoodFits bool
	// Fill is the number from 0 to 4 that the chances are filled to.
	Fill float64
	// FoodLeft is portions that no chance lets one eat.
	FoodLeft [Foods]float64
	// DeficitL and Deficit are the deficit at the end as scheduled, L and %.
	DeficitL, Deficit Ranged
	WithoutMaybe      WithoutMaybe

	bottles bottling
}

// Fits reports whether the breaks carry all of the plan: what is drunk and what is eaten.
func (s *Schedule) Fits() bool { return s.DrinksFit && s.FoodFits }

// Bottles is how many drinks are taken at the chance.
func (t *Take) Bottles() int {
	n := 0
	for _, ml := range t.ByDrink {
		if ml > 0 {
			n++
		}
	}
	return n
}

// WithoutMaybe tells what is left when the chances that may not come do not.
type WithoutMaybe struct {
	// MissedML stood at those chances; the deficit at the end without it.
	MissedML          int
	DeficitL, Deficit Ranged
}

// Schedule spreads a mix over the chances into out, whose memory is used
// again. Chances are filled by one number, [Chance.FillML]: comfortable amounts
// first, then chances that may not happen, then half-time and long breaks, hard
// limits last, so that the whole comes to the plan. No more than 500 mL stand in
// the stomach, which empties 18 mL/min, in running 12; at no chance has more been
// drunk than was lost until then; the whole is not more than the ceiling (our
// proposal). At each chance stand whole mouthfuls, rounded down to 5 mL, of one
// drink where the totals let it: that with most carbohydrate at the long breaks.
// A schedule of what it adds up to is the same again. Chances outside the session
// are left out.
func (p *Planner) Schedule(l Length, mix Mix, chances []Chance, mouthful Mouthful, out *Schedule) {
	if !(mouthful >= 1) {
		mouthful = UsualMouthful(p.basis.Body.Sex)
	}
	*out = Schedule{Takes: p.place(l, chances, out.Takes[:0]), bottles: out.bottles}
	volumes := p.volumes(mix)
	for _, v := range volumes {
		out.PlannedML += v
	}
	w := pouring{gut: p.gut(), takes: out.Takes, mouthful: float64(mouthful), most: p.fillMost(), single: p.session.OneBottle}
	room := float64(p.roomFor(l, mix, out.PlannedML))
	var carried float64
	out.Fill, carried = w.fill(out.Takes, room, w.most)
	out.DrinksFit = !exceeds(float64(out.PlannedML), carried)
	wanted := cutTo(volumes, min(carried, room)) // amounts set by hand may come to more
	p.pour(&w, &out.bottles, wanted)
	for i := range out.Takes {
		out.DrinkableML += out.Takes[i].ML
	}
	out.DrinksFit = out.DrinksFit && !(w.single && w.lacks(wanted, out.DrinkableML))
	p.serve(mix, out)
	out.FoodFits = out.FoodLeft == [Foods]float64{}
	p.deficits(l, out)
}

// fillMost is the fill that is not passed.
func (p *Planner) fillMost() float64 {
	if p.session.Comfortable {
		return evidence.FillComfortable
	}
	return evidence.FillMost
}

// cutTo takes from volumes what is above a sum, mL, in the order of the slots: what
// breaks have no room for is water before it is drink.
func cutTo(volumes [Drinks]int, sum float64) (left [Drinks]float64) {
	over := -sum
	for d, v := range volumes {
		left[d] = float64(v)
		over += left[d]
	}
	for d := range left {
		cut := min(left[d], max(0, over))
		left[d] -= cut
		over -= cut
	}
	return left
}

// pour gives out volumes in whole mouthfuls until a schedule of what was given
// out is the same: what was agreed is then what is scheduled.
func (p *Planner) pour(w *pouring, b *bottling, left [Drinks]float64) {
	for {
		given := p.pourOnce(w, b, left)
		if given == left {
			return
		}
		left = given
	}
}

// pourOnce gives out volumes in whole mouthfuls and returns what came to be given.
func (p *Planner) pourOnce(w *pouring, b *bottling, volumes [Drinks]float64) (given [Drinks]float64) {
	whole := 0.0
	for _, v := range volumes {
		whole += v
	}
	w.left, w.done = volumes, [Drinks]bool{}
	for i := range w.takes {
		w.takes[i] = Take{Chance: w.takes[i].Chance}
	}
	w.fill(w.takes, whole, w.most)
	b.put(w.takes, w.most)
	var sorted [Drinks]int
	b.stand(p.bySweetness(volumes, sorted[:0]), volumes)
	w.pourAll()
	for d := range volumes {
		given[d] = 0
		for i := range w.takes {
			given[d] += float64(w.takes[i].ByDrink[d])
		}
	}
	return given
}

// bySweetness appends the drinks of which there is something, that with most
// carbohydrate first and water last.
func (p *Planner) bySweetness(volumes [Drinks]float64, into []int) []int {
	for d, v := range volumes {
		if v <= 0 {
			continue
		}
		into = append(into, d)
		for j := len(into) - 1; j > 0 && p.sweeter(into[j], into[j-1]); j-- {
			into[j], into[j-1] = into[j-1], into[j]
		}
	}
	return into
}

func (p *Planner) sweeter(d, than int) bool {
	if x, y := p.menu[d].Unit.CarbohydrateG, p.menu[than].Unit.CarbohydrateG; x != y {
		return x > y
	}
	return d > than
}

// Carried returns a mix as it is scheduled: the drinks the chances add up to and
// the food that can be eaten at them. Without a chance it is the mix.
func (s *Schedule) Carried(mix Mix) Mix {
	if len(s.Takes) == 0 {
		return mix
	}
	for d := range Drinks {
		mix[d] = 0
		for i := range s.Takes {
			mix[d] += float64(s.Takes[i].ByDrink[d])
		}
	}
	for f, left := range s.FoodLeft {
		mix[int(Food1)+f] -= left
	}
	return mix
}

// place copies the chances inside the session, in order of time; where one may not
// drink there are no others.
func (p *Planner) place(l Length, chances []Chance, takes []Take) []Take {
	closed := Closed(chances)
	for _, c := range chances {
		if closed && c.Code != NoDrinking {
			continue
		}
		if !(c.Minute >= 0) || c.Minute > p.session.Minutes[l] || !(c.Seconds >= 0) {
			continue
		}
		takes = append(takes, Take{Chance: c})
		for i := len(takes) - 1; i > 0 && takes[i].Chance.Minute < takes[i-1].Chance.Minute; i-- {
			takes[i], takes[i-1] = takes[i-1], takes[i]
		}
	}
	return takes
}

// volumes of water and drinks, whole mL: rounded down, so that no bottle carries
// more than is planned.
func (p *Planner) volumes(mix Mix) [Drinks]int {
	var v [Drinks]int
	for s := range v {
		if p.menu[s].InUse && mix[s] > 0 {
			v[s] = int(math.Floor(mix[s] + negligibleML))
		}
	}
	return v
}

// deficits fills in what the schedule leaves at the end.
func (p *Planner) deficits(l Length, out *Schedule) {
	h := p.hours(l)
	taken, missed := 0.0, 0.0
	without := &out.WithoutMaybe
	for i := range out.Takes {
		t := &out.Takes[i]
		taken += p.takenKg(t)
		if t.Chance.Certainty != Certain {
			without.MissedML += t.ML
			missed += p.drunkKg(t)
		}
	}
	out.DeficitL = p.basis.SweatRate.times(h).plus(p.basis.BreathLH()*h - taken)
	out.Deficit = out.DeficitL.times(100 / p.basis.Body.MassKg)
	without.DeficitL = out.DeficitL.plus(missed)
	without.Deficit = without.DeficitL.times(100 / p.basis.Body.MassKg)
}
