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
	// WaterWantedML is the water the food asks for; Dry when less is drunk
	// at this chance.
	WaterWantedML int
	Dry           bool
	Mouthfuls     int
	// even is what the fill gives before it is rounded, mL.
	even float64
}

// Schedule is a plan spread over the chances.
type Schedule struct {
	Takes []Take
	// PlannedML is the plan to the mL; DrinkableML is what of it the chances can
	// carry, and what Takes add up to.
	PlannedML, DrinkableML int
	// Fits is false when the plan cannot be drunk at this sport's breaks.
	Fits bool
	// Fill is the number from 0 to 4 that the chances are filled to.
	Fill float64
	// FoodLeft is portions that no chance lets one eat.
	FoodLeft [Foods]float64
	// DeficitL and Deficit are the deficit at the end as scheduled, L and %.
	DeficitL, Deficit Ranged
	WithoutMaybe      WithoutMaybe
}

// WithoutMaybe tells what is left when the chances that may not come do not.
type WithoutMaybe struct {
	// MissedML stood at those chances; the deficit at the end without it.
	MissedML          int
	DeficitL, Deficit Ranged
	// CertainML is what of the plan the certain chances could carry; Holds
	// when that is all of it.
	CertainML int
	Holds     bool
}

// Schedule spreads a mix over the chances into out, whose memory is used
// again. Chances are filled by one number, [Chance.FillML]: comfortable amounts
// first, then chances that may not happen, then half-time and long breaks, hard
// limits last, found so that the whole comes to the plan. Nothing stands in the
// stomach above 500 mL, which empties 18 mL/min, in running 12, and at no chance
// has more been drunk than was lost until then (our proposal); the whole is not
// more than the ceiling, whatever the mix. Chances outside the session are left
// out.
func (p *Planner) Schedule(l Length, mix Mix, chances []Chance, mouthful Mouthful, out *Schedule) {
	if !(mouthful >= 1) {
		mouthful = UsualMouthful(p.basis.Body.Sex)
	}
	*out = Schedule{Takes: p.place(l, chances, out.Takes[:0])}
	volumes := p.volumes(mix)
	for _, v := range volumes {
		out.PlannedML += v
	}
	room, g := p.roomFor(l, mix, out.PlannedML), p.gut()
	out.Fill, _ = g.fill(out.Takes, float64(room), evidence.FillMost)
	out.DrinkableML = wholeML(out.Takes)
	out.Fits = out.DrinkableML == out.PlannedML
	share(out.Takes, volumes, out.DrinkableML)
	p.serve(mix, out)
	for i := range out.Takes {
		t := &out.Takes[i]
		t.Mouthfuls = mouthful.count(t.ML)
		t.Dry = t.WaterWantedML > t.ML
	}
	out.WithoutMaybe.CertainML = min(room, int(g.run(out.Takes, Chance.certainML)))
	p.deficits(l, mix, out)
}

// place copies the chances inside the session, in order of time.
func (p *Planner) place(l Length, chances []Chance, takes []Take) []Take {
	for _, c := range chances {
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

// volumes of water and drinks, to the mL.
func (p *Planner) volumes(mix Mix) [Drinks]int {
	var v [Drinks]int
	for s := range v {
		if p.menu[s].InUse && mix[s] > 0 {
			v[s] = int(math.Round(mix[s]))
		}
	}
	return v
}

// deficits fills in what the schedule leaves at the end.
func (p *Planner) deficits(l Length, mix Mix, out *Schedule) {
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
	without.Holds = without.CertainML == out.PlannedML
	out.DeficitL = p.basis.SweatRate.times(h).plus(p.basis.BreathLH()*h - taken)
	out.Deficit = out.DeficitL.times(100 / p.basis.Body.MassKg)
	without.DeficitL = out.DeficitL.plus(missed)
	without.Deficit = without.DeficitL.times(100 / p.basis.Body.MassKg)
}
