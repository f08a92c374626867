package planner

import (
	"math"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// cautions are the sentences that speak about the mix in hand, the gravest
// first: what stopped a movement, the guards, the athlete's conditions.
func (sp speaker) cautions(s state, q plan.Prediction) []string {
	var list []string
	if text := sp.stopped(s, q); text != "" {
		list = append(list, text)
	}
	list = append(list, sp.guards(s.planCase, s.length, q)...)
	if text := sp.plasma(q.Plasma); text != "" {
		list = append(list, text)
	}
	if text := sp.waterCare(s.planCase.Care); text != "" {
		list = append(list, text)
	}
	return list
}

// plasma says what the blood sodium might come to where what is drunk nears or
// passes the loss; empty elsewhere, and where it cannot be said.
func (sp speaker) plasma(p plan.Plasma) string {
	if !p.Known || !p.Show {
		return ""
	}
	return sp.say("planner.plasma", sp.w.Number(p.MmolL, 0))
}

// stopped says why a slider went no further; the end of the slider itself needs
// no words.
func (sp speaker) stopped(s state, q plan.Prediction) string {
	switch s.stop {
	case plan.LowEnd, plan.LongSession:
		return sp.ceiling(q.Ceiling, s.stop)
	case plan.SodiumLost:
		return sp.say(string(s.stop))
	}
	return ""
}

// ceiling says where a plan stops, and why there.
func (sp speaker) ceiling(c plan.Ceiling, why plan.Reason) string {
	if sp.by.Hidden && why == plan.LongSession {
		return sp.say("reason.long-session.hidden", sp.stopsAt(c))
	}
	return sp.say(string(why), sp.stopsAt(c))
}

// stopsAt is the volume a plan stops at. Past three hours it is made with the
// body mass, so where that is hidden it is rounded down, as coarse as leaves the
// mass open.
func (sp speaker) stopsAt(c plan.Ceiling) string {
	if sp.by.Hidden && c.Reason == plan.LongSession {
		return sp.litres(math.Floor(c.FluidL/evidence.HiddenLimitStep+1e-9) * evidence.HiddenLimitStep)
	}
	return sp.litres(c.FluidL)
}

// guards are the sentences of the guards that speak.
func (sp speaker) guards(c consult.Case, l plan.Length, q plan.Prediction) []string {
	var list []string
	for _, one := range q.Guards.Each() {
		list = append(list, sp.guard(c, l, q, one))
	}
	return list
}

// guard is the sentence of one guard.
func (sp speaker) guard(c consult.Case, l plan.Length, q plan.Prediction, one plan.Guard) string {
	takes := plan.StomachTakes(c.Planner.Session().Running)
	key := one.Code()
	switch {
	case sp.by.Hidden && one == plan.PastLimit:
		return sp.say("guard.past-limit.hidden")
	case sp.by.Hidden && one == plan.StrongDrink:
		return sp.say("guard.strong-drink.hidden")
	}
	switch one {
	case plan.GainInMass:
		return sp.say(key, c.Athlete.Name)
	case plan.OverCeiling:
		return sp.say(key, sp.stopsAt(q.Ceiling))
	case plan.OverStomach, plan.NearStomach:
		return sp.say(key, sp.rate(q.Fluid.RateLH), sp.plain(takes.Low, quantity.LitrePerHour), sp.rate(takes.High))
	case plan.OverUsual:
		return sp.usual(c.Planner, l)
	case plan.PastLimit:
		return sp.say(key, sp.w.Number(c.Planner.Aim().Deficit.High, 1))
	}
	return sp.say(key)
}

// usual says above which volume the stomach is not used to it; empty where that
// is not known.
func (sp speaker) usual(p *plan.Planner, l plan.Length) string {
	litres, ok := p.UsualFluid(l)
	if !ok {
		return ""
	}
	return sp.say(plan.OverUsual.Code(), sp.litres(litres), sp.rate(p.Basis().Usual.LH))
}

// limits says, while nothing speaks, what the limits are.
func (sp speaker) limits(s state, q plan.Prediction) string {
	text := sp.ceiling(q.Ceiling, q.Ceiling.Reason)
	if s.stop == q.Ceiling.Reason || q.Guards.Has(plan.OverCeiling) {
		text = "" // it speaks already
	}
	if !q.Guards.Has(plan.OverUsual) {
		if usual := sp.usual(s.planCase.Planner, s.length); usual != "" {
			text = sentences(text, usual)
		}
	}
	return text
}

// waterCare says that drinking too much is the greater danger, and why for this
// athlete; empty where nothing of the profile says so.
func (sp speaker) waterCare(care consult.Care) string {
	if !care.WaterCaution {
		return ""
	}
	var names []string
	for _, kind := range care.Flags {
		if consult.EffectOf(kind).WaterCaution {
			names = append(names, sp.say("flag."+string(kind)+".name"))
		}
	}
	return sp.say("planner.care.water", sp.w.List(names))
}

// saltCare says why salt is not offered; empty where it is.
func (sp speaker) saltCare(care consult.Care) string {
	if len(care.WithholdSalt) == 0 {
		return ""
	}
	var names []string
	for _, kind := range care.WithholdSalt {
		names = append(names, sp.say("flag."+string(kind)+".name"))
	}
	return sp.say("planner.care.salt", sp.w.List(names))
}
