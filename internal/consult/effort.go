package consult

import (
	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// EffortInput is the metabolic rate of a session from the best that is known:
// power in cycling and rowing, running speed, MET, energy, the activity of the
// table, effort rating, the usual activity of the sport. An uptake needs a body
// mass: the one before, else the usual one.
func EffortInput(t record.Test, a record.Athlete, d Desk) sweat.Effort {
	e := sweat.Effort{Rating: t.Session.Effort.Value, Energy: as[quantity.Kilocalories](t.Session.Energy)}
	if usual, ok := d.Activities.Find(SportOf(sportOf(t, a)).Activity); ok {
		e.Sport = &usual.Met
	}
	uptake, measured := measuredUptake(t, a, d)
	if !measured && e.Energy != nil {
		return e
	}
	if !measured {
		activity, ok := d.Activities.Find(t.Session.Activity)
		mass := sessionMass(t, a)
		if !ok || mass <= 0 {
			return e
		}
		uptake = sweat.FromMet(activity.Met, mass)
	}
	e.Oxygen, e.RelativeU = &uptake.Litres, uptake.RelativeU
	return e
}

// measuredUptake is the oxygen uptake from what was typed for this session: a
// power where the activity, else the sport, has an equation for it, a speed on
// foot, a MET. ok is false where none was, or body mass is not known.
func measuredUptake(t record.Test, a record.Athlete, d Desk) (u sweat.Uptake, ok bool) {
	s, mass := t.Session, sessionMass(t, a)
	motion := motionOf(SportOf(sportOf(t, a)))
	if activity, found := d.Activities.Find(s.Activity); found {
		motion = activity.Motion
	}
	switch {
	case mass <= 0:
		return u, false
	case s.Power.Known() && motion == climate.Cycling:
		return sweat.FromCycling(*s.Power.Value, mass), true
	case s.Power.Known() && motion == climate.Rowing:
		return sweat.FromRowing(*s.Power.Value), true
	case s.Speed.Known() && motion == climate.OnFoot:
		return sweat.FromRunning(*s.Speed.Value, 0, mass), true
	case s.Met.Known():
		return sweat.FromMet(*s.Met.Value, mass), true
	}
	return u, false
}

// sessionMass is the first mass before, else the usual one; 0 when neither is
// known.
func sessionMass(t record.Test, a record.Athlete) float64 {
	if list := masses(t, record.Before); len(list) > 0 {
		if hiddenOn(a, TestDay(t)) {
			return care.HiddenMass(float64(list[0]))
		}
		return float64(list[0])
	}
	return usualMass(a)
}

// vapour is the vapour pressure of the air; nil while temperature or humidity
// is missing or impossible.
func vapour(air record.Air) *quantity.Kilopascals {
	if !air.Temperature.Known() || !air.Humidity.Known() {
		return nil
	}
	made, err := climate.NewAir(quantity.Celsius(*air.Temperature.Value), quantity.Percent(*air.Humidity.Value))
	if err != nil {
		return nil
	}
	return &made.Vapour
}
