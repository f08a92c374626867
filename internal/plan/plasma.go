package plan

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/sweat"
)

// Plasma is the predicted plasma sodium: a caution, never a diagnosis.
type Plasma struct {
	// Known for adults whose height, age and sex are known, with a sweat
	// sodium.
	Known bool
	// Show when intake nears or passes the loss.
	Show bool
	// MmolL at the end, from 140 before.
	MmolL float64
	// Outside the change of body mass over which the equation was tried.
	Outside bool
}

// plasmaOf predicts plasma sodium from what goes in and out.
func (p *Planner) plasmaOf(q *Prediction, t sums) Plasma {
	tbw, ok := p.basis.Body.water()
	show := 100*q.Fluid.Share >= evidence.NearLoss
	lost := q.LossL.Value + p.basis.RespiratoryLH*q.Minutes/minutesPerHour - q.Fluid.DrunkL - q.Fluid.FoodWaterL
	if !ok || !p.basis.Sodium.Known || tbw <= lost {
		return Plasma{Show: show}
	}
	out := q.LossL.Value * (p.basis.Sodium.Value + p.potassium())
	in := t.sodiumMg/evidence.SodiumMolarMass + t.potassium/evidence.PotassiumMolarMass
	after := sweat.PlasmaSodium(evidence.PlasmaSodium, tbw, in-out, -lost)
	if !(after > 0) { // far beyond any body
		return Plasma{Show: show}
	}
	change := -q.Deficit.Value
	return Plasma{
		Known: true, Show: show, MmolL: after,
		Outside: change < evidence.PlasmaGoodFrom || change > evidence.PlasmaGoodTo,
	}
}

// water is total body water in L (Watson et al. 1980); ok is false for minors
// and where height, age or sex is missing.
func (b Body) water() (litres float64, ok bool) {
	if b.AgeYears < evidence.AdultAge || !(b.HeightM > 0) {
		return 0, false
	}
	litres = sweat.BodyWater(b.Sex, b.AgeYears, 100*b.HeightM, b.MassKg)
	return litres, litres > 0
}
