package plan

import (
	"math"

	"ebbwell/internal/evidence"
)

// spread is how a volume runs over the chances.
type spread struct {
	takes       []Take
	lossPerMin  float64 // mL
	emptyPerMin float64 // mL
	ceiling     float64 // mL to be drunk beside the water in foods
	certainOnly bool
}

func (p *Planner) spread(l Length, mix Mix, takes []Take) spread {
	empties := StomachTakes(p.session.Running).High
	if p.basis.Usual.Known {
		empties = max(empties, p.basis.Usual.LH)
	}
	ceiling := p.CeilingOf(l).FluidL
	for s := range p.menu {
		if p.menu[s].InUse {
			ceiling -= p.menu[s].Unit.FoodWaterL * mix[s]
		}
	}
	return spread{
		ceiling:     max(0, ceiling*1000),
		takes:       takes,
		lossPerMin:  p.basis.SweatRate.Value * 1000 / minutesPerHour,
		emptyPerMin: empties * 1000 / minutesPerHour,
	}
}

// runs is what is drunk by the end when at every chance the intake is brought
// up to a part of the loss so far, as far as seconds and stomach let it. With
// set it is written down, whole mL, the last chance making up the total.
func (s spread) runs(part float64, set bool, total int) float64 {
	drunk, stomach, last, given := 0.0, 0.0, 0.0, 0
	for i := range s.takes {
		t := &s.takes[i]
		if s.certainOnly && t.Chance.Certainty != Certain {
			continue
		}
		stomach = max(0, stomach-s.emptyPerMin*(t.Chance.Minute-last))
		last = t.Chance.Minute
		most := evidence.StomachAtOnce - stomach
		if t.Chance.Seconds > 0 {
			most = min(most, t.Chance.Seconds*evidence.DrinkingPace)
		}
		now := min(max(0, part*s.lossPerMin*last-drunk), max(0, most))
		drunk, stomach = drunk+now, stomach+now
		if set {
			upTo := min(total, int(math.Round(drunk)))
			t.ML, given = upTo-given, upTo
		}
	}
	return drunk
}

// most is what of a planned volume the chances can carry, mL.
func (s spread) most(planned int) int {
	return min(planned, int(math.Floor(min(s.ceiling, s.runs(1, false, 0))+hair)))
}

// fill writes the planned volume, or what the chances can carry of it, into
// the takes and returns it. The part of the loss that comes to it is found by
// halving: what is drunk rises with the part.
func (s spread) fill(planned int) int {
	total := s.most(planned)
	low, high := 0.0, 1.0
	for range halvings {
		mid := (low + high) / 2
		if s.runs(mid, false, 0) < float64(total) {
			low = mid
		} else {
			high = mid
		}
	}
	s.runs(high, true, total)
	return total
}

// halvings bring the part to a hundredth of a mL in any session.
const halvings = 30

// At returns a planner that also asks that a mix can be drunk at these
// chances: they carry what [Planner.Schedule] can spread over them. A session
// without a chance leaves drinking free.
func (p *Planner) At(chances []Chance) *Planner {
	at := *p
	for l := range at.carried {
		takes := p.place(Length(l), chances, nil)
		most := p.spread(Length(l), Mix{}, takes).runs(1, false, 0)
		at.carried[l] = Within(0, math.Floor(most+hair)/1000)
		at.carried[l].On = len(takes) > 0
	}
	return &at
}
