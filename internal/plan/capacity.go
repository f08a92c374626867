package plan

import (
	"math"

	"ebbwell/internal/evidence"
)

// MostML is what a chance can carry at the very most, mL: its net drinking
// time at 8 mL/s, 500 mL in all. Net drinking time is 0.35 of the seconds and at
// least 8 s; from a carried bottle 250 mL are the most (our proposal, the pace
// from memory).
func (c Chance) MostML() float64 {
	if c.Code == NoDrinking {
		return 0
	}
	if c.Seconds == 0 {
		return evidence.CarriedMost
	}
	seconds := max(evidence.DrinkingLeast, evidence.DrinkingShare*c.Seconds)
	return min(evidence.StomachAtOnce, seconds*evidence.DrinkingPace)
}

// ComfortableML is what a chance carries without hurry, mL: 0.7 of the most.
// A station is so short that both are the same; from a carried bottle it is
// 150 mL (our proposal).
func (c Chance) ComfortableML() float64 {
	switch {
	case c.Code == NoDrinking:
		return 0
	case c.Seconds == 0:
		return evidence.CarriedComfortable
	case c.Seconds <= evidence.DrinkingLeast:
		return c.MostML()
	}
	return evidence.ComfortableShare * c.MostML()
}

// mayNotHappen: the chance is counted on only after all others. A break for heat
// that is in the list is one that the organiser gives.
func (c Chance) mayNotHappen() bool { return c.Certainty == Maybe }

// long breaks are filled above comfort before the others.
func (c Chance) long() bool { return !c.mayNotHappen() && c.Seconds >= evidence.LongBreak }

// FillML is what a chance is given at a fill of 0 to 4, mL (our proposal): from
// 0 to 1 the certain chances come to comfort; from 1 to 2 those that may not
// happen; from 2 to 3 certain breaks of 300 s and more go to their most, from 3
// to 4 all. It never falls while the fill rises.
func (c Chance) FillML(fill float64) float64 {
	comfortable, most := c.ComfortableML(), c.MostML()
	within := func(from float64) float64 { return min(1, max(0, fill-from)) }
	given := comfortable * within(0)
	if c.mayNotHappen() {
		given = comfortable * within(1)
	}
	above := within(3)
	if c.long() {
		above = within(2)
	}
	return given + (most-comfortable)*above
}

// wantML is what a chance is to be given at a fill, mL: what was set by hand, else
// [Chance.FillML].
func (c Chance) wantML(fill float64) float64 {
	if c.Fixed.On {
		return min(max(0, c.Fixed.ML), c.MostML())
	}
	return c.FillML(fill)
}

// fillFor is the fill at which a chance is given so many mL; infinite for more
// than it carries.
func (c Chance) fillFor(ml float64) float64 {
	comfortable, most := c.ComfortableML(), c.MostML()
	from, above := 0.0, 3.0
	if c.mayNotHappen() {
		from = 1
	}
	if c.long() {
		above = 2
	}
	switch {
	case ml <= comfortable:
		return from + ml/comfortable
	case ml <= most:
		return above + (ml-comfortable)/(most-comfortable)
	}
	return math.Inf(1)
}

// sureML is what a chance is counted for when one asks how much the chances
// carry: filled to the most of a schedule where it is certain, half of comfort where
// it may not happen.
func (c Chance) sureML(most float64) float64 {
	if c.mayNotHappen() {
		return evidence.MaybeShare * c.ComfortableML()
	}
	return c.FillML(most)
}

// CarriesML is what chances can carry in a session of a length, mL: certain
// ones to their most, or in a session that is filled comfortably only as far as its
// schedule fills them; others to half of comfort; as far as the stomach and the loss
// by then let it, the loss at the low end of its range (our proposal). A session
// without a chance carries nothing.
func (p *Planner) CarriesML(l Length, chances []Chance) float64 {
	takes := p.place(l, chances, nil)
	low := p.gut()
	low.lossPerMin = p.basis.SweatRate.Low * 1000 / minutesPerHour
	most := p.fillMost()
	return low.run(takes, func(c Chance) float64 { return c.sureML(most) })
}

// carriesAtMostML is what all chances carry at the very most, mL, those that may not
// happen too: what is shown can come to no more.
func (p *Planner) carriesAtMostML(l Length, chances []Chance) float64 {
	return p.gut().run(p.place(l, chances, nil), func(c Chance) float64 { return c.FillML(evidence.FillMost) })
}
