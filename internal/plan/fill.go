package plan

import "ebbwell/internal/evidence"

// gut is what the loss at its middle and the stomach let one drink.
func (p *Planner) gut() gut {
	g := gut{lossPerMin: p.basis.SweatRate.Value * 1000 / minutesPerHour, emptiesPerMin: evidence.StomachEmpties}
	if p.session.Running {
		g.emptiesPerMin = evidence.StomachEmptiesRun
	}
	return g
}

// gut clips what is drunk: no more in the stomach than it holds, and no more in
// all than was lost until then.
type gut struct {
	lossPerMin    float64 // mL
	emptiesPerMin float64 // mL
}

// run goes through chances in order of time, gives each what is wanted as far
// as stomach and loss let it, leaves that in the take, and returns the sum, mL.
func (g gut) run(takes []Take, want func(Chance) float64) float64 {
	at := sofar{gut: g}
	for i := range takes {
		t := &takes[i]
		room := at.room(t.Chance.Minute)
		t.even = min(want(t.Chance), room)
		at.drink(t.even)
	}
	return at.drunk
}

// sofar is where stomach and loss stand in the course of a session.
type sofar struct {
	gut
	minute, drunk, stomach float64
}

// room moves on to a minute and returns what may be drunk there, mL.
func (s *sofar) room(minute float64) float64 {
	s.stomach = max(0, s.stomach-s.emptiesPerMin*(minute-s.minute))
	s.minute = minute
	return max(0, min(evidence.StomachAtOnce-s.stomach, s.lossPerMin*minute-s.drunk))
}

func (s *sofar) drink(ml float64) {
	s.drunk += ml
	s.stomach += ml
}

// filled fills takes to one number and returns what they come to, mL. An amount
// that was set by hand stands.
func (g gut) filled(takes []Take, fill float64) float64 {
	at := sofar{gut: g}
	for i := range takes {
		t := &takes[i]
		room := at.room(t.Chance.Minute)
		t.even = min(t.Chance.wantML(fill), room)
		at.drink(t.even)
	}
	return at.drunk
}

// fill finds by halving the number, no more than most, at which the chances
// come to a volume, mL, and leaves the takes filled to it; what most cannot carry
// is missing from the sum.
func (g gut) fill(takes []Take, ml, most float64) (fill, sum float64) {
	if sum = g.filled(takes, most); sum <= ml {
		return most, sum
	}
	low, high := 0.0, most
	for range halvings {
		mid := (low + high) / 2
		if g.filled(takes, mid) < ml {
			low = mid
		} else {
			high = mid
		}
	}
	return high, g.filled(takes, high)
}

// halvings bring the fill to what moves less than a thousandth of a mL.
const halvings = 40
