package consult

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// aim is what the plan should meet: what was chosen with the athlete, and the
// published advice where nothing was. A chosen drinking rate only lowers what
// the stomach is used to, which rises by a review alone. No sodium is aimed at
// where advice to add salt is withheld.
func (c Case) aim(s plan.Session, u plan.Usual, d Setup) plan.Aim {
	aim, own := plan.DefaultAim(u, s), c.Plan.Aims
	switch {
	case c.Plan.Target.DeficitAim.Known():
		aim.Deficit.High = *c.Plan.Target.DeficitAim.Value
	case c.Athlete.DeficitAim.Known():
		aim.Deficit.High = *c.Athlete.DeficitAim.Value
	case d.Settings.DeficitAim.Known():
		aim.Deficit.High = *d.Settings.DeficitAim.Value
	}
	low := own.CarbohydrateLow
	for _, n := range [...]record.Number{c.Athlete.CarbohydrateAim, d.Settings.CarbohydrateAim} {
		if !low.Known() && !own.CarbohydrateHigh.Known() {
			low = n
		}
	}
	aim.Carbohydrate = chosen(aim.Carbohydrate, evidence.AimCarbohydrate, low, own.CarbohydrateHigh)
	if len(c.Care.WithholdSalt) == 0 {
		aim.Sodium = chosen(aim.Sodium, evidence.AimSodium, own.SodiumLow, own.SodiumHigh)
	}
	aim.Drinking.High = min(aim.Drinking.High, chosen(aim.Drinking, evidence.AimDrinking, record.Number{}, own.Drinking).High)
	aim.Strength = chosen(aim.Strength, evidence.AimStrength, record.Number{}, own.Strength)
	return aim
}

// UsualAim is what the published advice asks of the plan, which holds where
// nothing was chosen.
func (c Case) UsualAim() plan.Aim {
	return plan.DefaultAim(c.Planner.Basis().Usual, c.Planner.Session())
}

// chosen is a bound with the ends that were chosen; an end that cannot be, or
// that passes the other, is not taken. A low end alone is asked for with no
// most but the field's own.
func chosen(usual plan.Bound, f evidence.Field, low, high record.Number) plan.Bound {
	limit, _ := evidence.LimitOf(f)
	fits := func(n record.Number) bool {
		return n.Known() && *n.Value >= limit.Refuse.Low && *n.Value <= limit.Refuse.High
	}
	b := usual
	if !fits(low) && !fits(high) {
		return usual
	}
	if !b.On {
		b.Low, b.High = 0, limit.Refuse.High
	}
	if fits(low) {
		b.On, b.Low = true, *low.Value
	}
	if fits(high) {
		b.On, b.High = true, *high.Value
	}
	switch {
	case b.Low <= b.High:
		return b
	case fits(low) && fits(high): // contradict each other
		return usual
	case fits(low):
		b.High = b.Low
	default:
		b.Low = b.High
	}
	return b
}
