package plan

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan/proposal"
)

// row is one condition as a half space: the sum of a[s]*mix[s] is at most
// most. Strengths are fixed, so every condition of a plan is linear in the mix.
type row struct {
	condition Condition
	a         [Slots]float64
	most      float64
}

// maxRows is one row for each condition but the choice of items.
const maxRows = 12

// rows is the conditions in force, without allocation.
type rows struct {
	list [maxRows]row
	n    int
}

func (r *rows) all() []row { return r.list[:r.n] }

// atMost states sum(of) <= most.
func (r *rows) atMost(p *Planner, c Condition, most float64, of func(Slot, *Unit) float64) {
	w := row{condition: c, most: most}
	for s := range p.menu {
		if p.menu[s].InUse {
			w.a[s] = of(Slot(s), &p.menu[s].Unit)
		}
	}
	r.list[r.n] = w
	r.n++
}

// atLeast states sum(of) >= least.
func (r *rows) atLeast(p *Planner, c Condition, least float64, of func(Slot, *Unit) float64) {
	r.atMost(p, c, -least, func(s Slot, u *Unit) float64 { return -of(s, u) })
}

// The parts of a unit that the conditions are about.
func fluidOf(_ Slot, u *Unit) float64        { return u.fluidL() }
func drunkOf(_ Slot, u *Unit) float64        { return u.FluidL }
func carbohydrateOf(_ Slot, u *Unit) float64 { return u.CarbohydrateG }
func sodiumOf(_ Slot, u *Unit) float64       { return u.SodiumMg }
func oneSourceOf(_ Slot, u *Unit) float64    { return u.Split.Glucose + u.Split.Unknown }

// rowsOf states aim and guards for one length.
func (p *Planner) rowsOf(l Length) rows {
	var r rows
	a, h := &p.aim, p.hours(l)
	loss := p.basis.SweatRate.Value*h + p.basis.BreathLH()*h
	each := p.basis.Body.MassKg / 100 // L in 1 % of body mass
	if a.Deficit.On {
		r.atLeast(p, DeficitMost, loss-a.Deficit.High*each-proposal.KeepML(p.basis.Body.MassKg, p.basis.Body.Hidden)/1000, drunkOf) // food is for carbohydrate
		r.atMost(p, DeficitLeast, loss-a.Deficit.Low*each, fluidOf)
	}
	if a.Carbohydrate.On {
		r.atMost(p, CarbohydrateMost, a.Carbohydrate.High*h, carbohydrateOf)
		r.atLeast(p, CarbohydrateLeast, a.Carbohydrate.Low*h, carbohydrateOf)
	}
	if a.Sodium.On {
		r.atMost(p, SodiumMost, a.Sodium.High*h, sodiumOf)
		r.atLeast(p, SodiumLeast, a.Sodium.Low*h, sodiumOf)
	}
	if a.Drinking.On {
		r.atMost(p, DrinkingMost, a.Drinking.High*h, drunkOf)
	}
	if a.Strength.On {
		limit := a.Strength.High * 10 // g per L
		r.atMost(p, StrengthMost, 0, func(s Slot, u *Unit) float64 {
			if s.IsFood() {
				return 0
			}
			return u.CarbohydrateG - limit*u.FluidL
		})
	}
	if a.OneSource {
		r.atMost(p, OneSourceMost, evidence.OneSourceHigh*h, oneSourceOf)
	}
	if p.carried[l].On {
		r.atMost(p, BreaksMost, p.carried[l].High, drunkOf)
	}
	p.addGuards(&r, l, h)
	return r
}

// addGuards states what is never relaxed.
func (p *Planner) addGuards(r *rows, l Length, h float64) {
	r.atMost(p, FluidCeiling, p.CeilingOf(l).FluidL, fluidOf)
	if p.basis.Sodium.Known {
		lost := p.basis.SweatRate.Value * p.basis.Sodium.Value * evidence.SodiumMolarMass * h
		r.atMost(p, SodiumCeiling, lost, sodiumOf)
	}
}

// sum is the row's left side.
func (w *row) sum(mix *Mix) float64 {
	t := 0.0
	for s, a := range w.a {
		t += a * mix[s]
	}
	return t
}

// misses reports that a mix does not meet the row.
func (w *row) misses(mix *Mix) bool { return proposal.Passes(w.sum(mix), w.most) }
