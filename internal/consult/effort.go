package consult

import (
	"ebbwell/internal/climate"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// effortFrom is what the effort of a session is known from.
type effortFrom int

// What an effort is known from, best first.
const (
	fromPower effortFrom = iota
	fromSpeed
	fromMet
	fromEnergy
	fromActivity
	fromRating
	// fromSport and fromNothing are taken as a rating: the sport's usual activity,
	// else 6 MET.
	fromSport
	fromNothing
)

// effortKnown is what the effort of a session is known from and how the body
// moves in it.
type effortKnown struct {
	from   effortFrom
	motion climate.Motion
	// own is the body's own speed.
	own quantity.MetresPerSecond
	// activity is that of the table, where it is one.
	activity climate.Activity
	// assumed is the MET taken where nothing is known of the effort, sportMet
	// the sport's usual one, nil where it has none.
	assumed  float64
	sportMet *float64
}

// effortKnownOf finds the best that is known of a session's effort: power in
// cycling and rowing, running speed, MET, energy, the activity of the table,
// effort rating, the usual activity of the sport, and 6 MET where nothing is.
// The correction of a test and the heat balance both go by it.
func effortKnownOf(s record.Session, a record.Athlete, d Setup) effortKnown {
	code := s.Sport
	if code == "" {
		code = a.Sport
	}
	sport := SportOf(code)
	usual, hasUsual := d.Activities.Find(sport.Activity)
	k := effortKnown{motion: motionOf(sport), own: usual.OwnSpeed, assumed: evidence.EffortNotKnownMet}
	if hasUsual {
		k.assumed, k.sportMet = usual.Met, &usual.Met
	}
	chosen, has := d.Activities.Find(s.Activity)
	switch {
	case has:
		k.activity, k.own, k.motion = chosen, chosen.OwnSpeed, chosen.Motion
	case !hasUsual && k.motion == climate.OnFoot:
		k.own = evidence.CourtSpeedLow
	}
	k.from = k.best(s, has)
	return k
}

// best is the best that is known; inTable says that the activity is one of the
// table.
func (k effortKnown) best(s record.Session, inTable bool) effortFrom {
	switch {
	case s.Power.Known() && (k.motion == climate.Cycling || k.motion == climate.Rowing):
		return fromPower
	case s.Speed.Known() && k.motion == climate.OnFoot:
		return fromSpeed
	case s.Met.Known():
		return fromMet
	case s.Energy.Known():
		return fromEnergy
	case inTable:
		return fromActivity
	case s.Effort.Known():
		return fromRating
	case k.sportMet != nil:
		return fromSport
	}
	return fromNothing
}

// EffortInput is the effort of a test as its correction takes it, from what
// [effortKnownOf] says it is known from. An uptake needs a body mass: the one
// before, else the usual one.
func EffortInput(t record.Test, a record.Athlete, d Setup) sweat.Effort {
	s, k, mass := t.Session, effortKnownOf(t.Session, a, d), sessionMass(t, a)
	e := sweat.Effort{Rating: s.Effort.Value, Energy: as[quantity.Kilocalories](s.Energy), Sport: k.sportMet}
	if mass <= 0 {
		return e
	}
	var uptake sweat.Uptake
	switch k.from {
	case fromPower:
		uptake = sweat.FromCycling(*s.Power.Value, mass)
		if k.motion == climate.Rowing {
			uptake = sweat.FromRowing(*s.Power.Value)
		}
	case fromSpeed:
		uptake = sweat.FromRunning(*s.Speed.Value, 0, mass)
	case fromMet:
		uptake = sweat.FromMet(*s.Met.Value, mass)
	case fromActivity:
		uptake = sweat.FromMet(k.activity.Met, mass)
	default:
		return e
	}
	e.Oxygen, e.RelativeU = &uptake.Litres, uptake.RelativeU
	return e
}

// sessionMass is the first mass before, else the usual one; 0 when neither is
// known.
func sessionMass(t record.Test, a record.Athlete) float64 {
	if list := masses(t, record.Before); len(list) > 0 {
		if hiddenOn(a, TestDay(t)) {
			return hiddenMass(a, float64(list[0]))
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
