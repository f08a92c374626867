package plan

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan/proposal"
)

// Prediction is what a mix comes to over a session.
type Prediction struct {
	Minutes float64
	// LossL is the sweat loss.
	LossL Ranged
	Fluid Fluid
	// DeficitL and Deficit are the deficit at the end, what the scale will say, in
	// L (a kilogram is a litre) and in % of body mass; above zero when less went
	// in than out.
	DeficitL, Deficit Ranged
	// ByDrinks is the deficit in % with the drinks alone, by which a limit or an
	// aim is tested.
	ByDrinks     Ranged
	Carbohydrate Carbohydrate
	// StrengthPercent is the carbohydrate of what is drunk, g per 100 mL.
	StrengthPercent float64
	Sodium          Sodium
	Plasma          Plasma
	Ceiling         Ceiling
	Guards          Guard
}

// Fluid is what goes in.
type Fluid struct {
	// BySlotML is the volume drunk, and the water in foods, of each slot.
	BySlotML   [Slots]float64
	DrunkL     float64
	FoodWaterL float64
	// RateLH is the drinking rate: volume drunk an hour.
	RateLH float64
	// NotReplacedL is sweat less drinks, L; beside the deficit there are foods,
	// breath and gas exchange.
	NotReplacedL Ranged
	// Share of the sweat loss that is replaced, 0 to 1 and above.
	Share float64
}

// Carbohydrate is what goes in by source and by family.
type Carbohydrate struct {
	BySlotGH        [Slots]float64
	TotalG, TotalGH float64
	// GlucoseGH, FructoseGH and UnknownGH part the total by family.
	GlucoseGH, FructoseGH, UnknownGH float64
	// FructoseShare of the carbohydrate whose family is known, 0 to 1.
	FructoseShare float64
	Advice        fuel.Advice
	EnergyKcal    float64
}

// Sodium is sodium in against sodium out.
type Sodium struct {
	BySlotMgH [Slots]float64
	// InMg and InMgH count drinks, foods and salt; Incomplete when a
	// product's sodium is unknown.
	InMg, InMgH float64
	Incomplete  bool
	// DrunkMmolL is the concentration of what is drunk, added salt included.
	DrunkMmolL float64
	// LossMg and LossMgH are unknown while the sweat sodium is.
	LossMg, LossMgH Ranged
	// Share of the loss that is replaced, 0 to 1 and above.
	Share Ranged
	// HoldMgH is what would hold plasma sodium, never above the loss and unknown
	// where more is drunk than lost; HoldMatters when that is needed at all.
	HoldMgH     Ranged
	HoldMatters bool
}

// sums is what the slots add up to.
type sums struct {
	drunkL, foodWaterL           float64
	taken                        proposal.Sum // gels and their water
	massKg                       float64
	carbohydrateG, drunkG        float64
	split                        fuel.Split
	sodiumMg, drunkMg, potassium float64
	energy                       float64
	incomplete                   bool
}

// Evaluate predicts a mix for one length of the session. It allocates nothing
// and is exact arithmetic on the basis:
//
//	sweat loss = sweat rate * hours
//	deficit    = sweat loss + respiratory water + gas exchange - mass of drinks and foods
//	percent    = 100 * deficit / body mass
//
// That is the change of body mass the scale will show; a plan foresees no urine.
// The range of the deficit is that of the planned loss; intake is what is
// decided, so it has none. Amounts in slots that are not in use count as nothing.
func (p *Planner) Evaluate(l Length, mix Mix) Prediction {
	h := p.hours(l)
	q := Prediction{Minutes: p.session.Minutes[l], Ceiling: p.CeilingOf(l), LossL: p.basis.SweatRate.times(h)}
	t := p.add(mix, h, &q)
	q.Fluid.DrunkL, q.Fluid.FoodWaterL, q.Fluid.RateLH = t.drunkL, t.foodWaterL, t.drunkL/h
	intake := t.drunkL + t.foodWaterL
	q.Fluid.Share = intake / q.LossL.Value
	q.Fluid.NotReplacedL = q.LossL.plus(-t.drunkL)
	q.DeficitL = q.LossL.plus(p.basis.BreathLH()*h - t.massKg)
	q.Deficit = q.DeficitL.times(100 / p.basis.Body.MassKg)
	q.ByDrinks = q.LossL.plus(p.basis.BreathLH()*h - t.drunkL).times(100 / p.basis.Body.MassKg)
	if t.drunkL > 0 {
		q.StrengthPercent = t.drunkG / t.drunkL / 10
		q.Sodium.DrunkMmolL = t.drunkMg / evidence.SodiumMolarMass / t.drunkL
	}
	p.carbohydrateOf(&q, t, h)
	p.sodiumOf(&q, t, h)
	q.Plasma = p.plasmaOf(&q, t)
	q.Guards = p.guardsOf(&q, &t.taken)
	return q
}

// add fills in what each slot gives and returns the sums.
func (p *Planner) add(mix Mix, h float64, q *Prediction) sums {
	var t sums
	for s := range p.menu {
		item, x := &p.menu[s], mix[s]
		if !item.InUse || !(x > 0) {
			continue
		}
		u := &item.Unit
		carbohydrate, sodium := u.CarbohydrateG*x, u.SodiumMg*x
		q.Fluid.BySlotML[s] = u.fluidL() * x * 1000
		q.Carbohydrate.BySlotGH[s] = carbohydrate / h
		q.Sodium.BySlotMgH[s] = sodium / h
		t.drunkL += u.FluidL * x
		t.foodWaterL += u.FoodWaterL * x
		t.massKg += u.massKg() * x
		item.countGels(&t.taken, Slot(s), x)
		t.carbohydrateG += carbohydrate
		t.split.Glucose += u.Split.Glucose * x
		t.split.Fructose += u.Split.Fructose * x
		t.split.Unknown += u.Split.Unknown * x
		t.sodiumMg += sodium
		t.potassium += u.PotassiumMg * x
		t.energy += u.EnergyKcal * x
		t.incomplete = t.incomplete || item.SodiumUnknown
		if !Slot(s).IsFood() {
			t.drunkG += carbohydrate
			t.drunkMg += sodium
		}
	}
	return t
}

// countGels adds an amount of a slot to the gels, and to the water they are taken with.
func (i *Item) countGels(sum *proposal.Sum, s Slot, x float64) {
	ml := i.Unit.FluidL * x * 1000
	switch {
	case s == Water:
		sum.GelWaterML += ml
	case s.IsDrink():
		sum.GelWaterML += evidence.GelDrinkPart * ml
	case i.Gel:
		sum.Gels += x
	}
}

// FoodKg is the mass of the foods of a mix.
func (p *Planner) FoodKg(mix Mix) float64 {
	sum := 0.0
	for s := Food1; s <= Food4; s++ {
		if p.menu[s].InUse {
			sum += p.menu[s].Unit.massKg() * max(0, mix[s])
		}
	}
	return sum
}

// carbohydrateOf fills in carbohydrate.
func (p *Planner) carbohydrateOf(q *Prediction, t sums, h float64) {
	c := &q.Carbohydrate
	c.TotalG, c.TotalGH, c.EnergyKcal = t.carbohydrateG, t.carbohydrateG/h, t.energy
	c.GlucoseGH, c.FructoseGH, c.UnknownGH = t.split.Glucose/h, t.split.Fructose/h, t.split.Unknown/h
	c.FructoseShare = t.split.FructoseShare()
	c.Advice = fuel.CarbohydrateDuring(q.Minutes, p.session.Effort)
}

// sodiumOf fills in sodium.
func (p *Planner) sodiumOf(q *Prediction, t sums, h float64) {
	n, c := &q.Sodium, p.basis.Sodium
	n.InMg, n.InMgH, n.Incomplete = t.sodiumMg, t.sodiumMg/h, t.incomplete
	if !c.Known {
		return
	}
	n.LossMgH = p.basis.SweatRate.product(c).times(evidence.SodiumMolarMass)
	n.LossMg = n.LossMgH.times(h)
	n.Share = n.LossMg.under(t.sodiumMg)
	if q.Fluid.Share <= 1 {
		n.HoldMgH = p.hold((t.drunkL+t.foodWaterL)/h, n.LossMgH)
	}
	n.HoldMatters = q.Fluid.Share > evidence.HoldFromShare && c.Value >= evidence.HoldFromSodium &&
		q.Minutes > evidence.SodiumMattersAfter
}

// hold is the sodium in mg/h that would hold plasma sodium at a fluid intake
// in L/h: per litre of sweat max(0, c - 159 (1 - f)), with c the sodium and
// potassium of sweat and f the share of fluid replaced (from the equation of
// Nguyen and Kurtz). It never passes the loss.
func (p *Planner) hold(fluidLH float64, loss Ranged) Ranged {
	rate, c := p.basis.SweatRate, p.basis.Sodium
	at := func(rateLH, sodium float64) float64 {
		perLitre := sodium + p.potassium() - evidence.HoldPlasma*(1-fluidLH/rateLH)
		return min(max(0, perLitre), sodium) * rateLH * evidence.SodiumMolarMass
	}
	mid := at(rate.Value, c.Value)
	slow, fast := mid, at(rate.High, c.Value)
	if rate.Low > 0 {
		slow = at(rate.Low, c.Value)
	}
	up := math.Hypot(max(slow, fast, mid)-mid, at(rate.Value, c.High)-mid)
	down := math.Hypot(mid-min(slow, fast, mid), mid-at(rate.Value, c.Low))
	return Between(mid, max(0, mid-down), min(loss.High, mid+up))
}

// potassium of sweat, mmol/L, or what is assumed.
func (p *Planner) potassium() float64 {
	if p.basis.PotassiumMmolL > 0 {
		return p.basis.PotassiumMmolL
	}
	return evidence.SweatPotassium
}
