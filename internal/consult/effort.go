package consult

import (
	"ebbwell/internal/climate"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// EffortInput is the metabolic rate of a session from the best that is known:
// power, running speed, MET, the activity of the table, effort rating. A body mass is needed for all of
// them: the one before, else the usual one.
func EffortInput(t record.Test, a record.Athlete, d Desk) sweat.Effort {
	e := sweat.Effort{Rating: t.Session.Effort.Value}
	mass := sessionMass(t, a)
	if mass <= 0 {
		return e
	}
	sport := SportOf(sportOf(t, a))
	var uptake sweat.Uptake
	switch {
	case t.Session.Power.Known() && !sport.Rowing:
		uptake = sweat.FromCycling(*t.Session.Power.Value, mass)
	case t.Session.Speed.Known():
		uptake = sweat.FromRunning(*t.Session.Speed.Value, 0, mass)
	case t.Session.Met.Known():
		uptake = sweat.FromMet(*t.Session.Met.Value, mass)
	default:
		activity, ok := d.Activities.Find(t.Session.Activity)
		if !ok {
			return e
		}
		uptake = sweat.FromMet(activity.Met, mass)
	}
	e.Oxygen, e.RelativeU = &uptake.Litres, uptake.RelativeU
	return e
}

// sessionMass is the first mass before, else the usual one; 0 when neither is
// known.
func sessionMass(t record.Test, a record.Athlete) float64 {
	if list := masses(t, record.Before); len(list) > 0 {
		return float64(list[0])
	}
	return a.UsualMass.Or(0)
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
