package sweat

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/uncertainty"
)

// The corrections.
const (
	Respiratory = "respiratory"
	Exchange    = "exchange"
)

// Why a correction is on or off.
const (
	ReasonChoice   = "correction.choice"    // somebody said so
	ReasonLong     = "correction.long"      // past two hours
	ReasonHard     = "correction.hard"      // hard effort
	ReasonDry      = "correction.dry"       // dry air
	ReasonNoNeed   = "correction.not-ruled" // none of these
	ReasonNoEnergy = "correction.no-energy" // neither effort nor energy is known
	ReasonRating   = "correction.rating"    // only an effort rating: too wide to switch on by rule
)

// Correction is one loss of mass that is not sweat.
type Correction struct {
	// ID is [Respiratory] or [Exchange].
	ID string
	// Size is what it is or would be, kg; unknown without effort or duration.
	Size figure.Figure
	// On is true when it is taken off the balance.
	On bool
	// Reason it is on or off, a code.
	Reason string
}

// corrected is the two corrections, sized where they can be.
type corrected struct {
	known             bool
	respiratory, swap switched
	// coolU is the standard uncertainty that cool air adds, kg.
	cool  bool
	coolU float64
	// coolKnown is false when cool air adds something that cannot be sized yet.
	coolKnown bool
}

// switched is one correction: its size, and whether it is taken off and why.
type switched struct {
	size   term
	on     bool
	reason string
}

// both reports whether nothing is left uncorrected, any whether something is
// taken off.
func (c corrected) both() bool { return c.respiratory.on && c.swap.on }
func (c corrected) any() bool  { return c.respiratory.on || c.swap.on }

// oxygen is the uptake over the whole session, L.
type oxygen struct {
	litres term
	rer    float64
	perMin float64 // averaged over the session, L/min
	rated  bool    // from an effort rating only
}

// correct sizes the corrections and decides whether they are on.
func (s *sheet) correct() corrected {
	o, known := s.oxygenUsed()
	c := corrected{known: known}
	vapour, humid := read(&s.check, evidence.VapourPressure, 0, s.in.Air.Vapour)
	if known {
		c.respiratory.size, c.swap.size = lossesOf(o, vapour, humid)
	}
	choice := s.in.Options.Corrections
	due, why := s.rule(o, vapour, humid)
	c.respiratory.on, c.respiratory.reason = decide(choice.Respiratory, known, due, why)
	c.swap.on, c.swap.reason = decide(choice.Exchange, known, due, why)
	air, ok := read(&s.check, evidence.AirTemperature, 0, s.in.Air.Temperature)
	if c.cool = ok && air < evidence.CoolAir && !c.both(); c.cool {
		c.coolU, c.coolKnown = s.coolError(o, known)
	}
	return c
}

// lossesOf gives respiratory water and gas exchange, kg; by the two formulas
// where the vapour pressure is known, else by the single figure less the
// exchange.
func lossesOf(o oxygen, vapour float64, humid bool) (respiratory, swap term) {
	swap = o.litres.times(constant("carbon", evidence.CarbonDioxideMass, "g/mol").
		times(constant("rer", o.rer, quantity.None)).
		minus(constant("oxygenmass", evidence.OxygenMass, "g/mol"))).
		over(constant("molarvolume", evidence.MolarGasVolume, "L/mol")).over(number(1000))
	if humid {
		gap := constant("expired", evidence.RespiratoryVapour, "mmHg").
			minus(constant("vapour", vapour, quantity.Kilopascal).times(constant("mmhg", evidence.MillimetresPerKPa, "mmHg/kPa")))
		respiratory = constant("respired", evidence.RespiratoryCoefficient, "g/(L·mmHg)").times(o.litres).times(gap).over(number(1000))
		return respiratory, swap
	}
	both := constant("pergram", evidence.CombinedCorrection, quantity.GramPerKilocalorie).
		times(o.litres).times(constant("perlitre", EnergyPerOxygen(o.rer)/evidence.JoulesPerKilocalorie, "kcal/L")).over(number(1000))
	both = both.with(evidence.CombinedRelativeU*both.q.Value(), uncertainty.Source{Name: SourceCorrection, Item: 1})
	return both.minus(swap), swap
}

// decide says whether a correction is taken off, and why: as it is switched,
// else as the rule has it.
func decide(choice Switch, known, due bool, why string) (on bool, reason string) {
	switch {
	case choice == Off:
		return false, ReasonChoice
	case !known:
		return false, ReasonNoEnergy
	case choice == On:
		return true, ReasonChoice
	}
	return due, why
}

// rule says whether the corrections are due where nobody switched them, and
// why.
func (s *sheet) rule(o oxygen, vapour float64, humid bool) (due bool, why string) {
	switch {
	case o.rated:
		return false, ReasonRating
	case s.minutes > evidence.CorrectionAfter:
		return true, ReasonLong
	case o.perMin >= FromMet(evidence.CorrectionHardMet, s.mass()).Litres:
		return true, ReasonHard
	case humid && vapour < evidence.CorrectionDryPressure:
		return true, ReasonDry
	}
	return false, ReasonNoNeed
}

// coolError is what leaving the corrections off in cool air may do, kg.
func (s *sheet) coolError(o oxygen, known bool) (u float64, ok bool) {
	litres := o.litres.q.Value()
	if !known {
		if !s.timed || s.mass() == 0 {
			return 0, false
		}
		o.rer = evidence.UsualRER
		litres = FromMet(evidence.CoolAirMet, s.mass()).Litres * s.minutes
	}
	return evidence.CoolAirU * kilocalories(litres, o.rer) / 1000, true
}

// kilocalories is the energy of an oxygen uptake, L.
func kilocalories(litres, rer float64) float64 {
	return litres * EnergyPerOxygen(rer) / evidence.JoulesPerKilocalorie
}

// oxygenUsed calculates the uptake over the session from the best that is known.
// A body mass is needed for the rests, and for an effort rating.
func (s *sheet) oxygenUsed() (o oxygen, ok bool) {
	e := s.in.Effort
	o.rer = evidence.UsualRER
	if r, ok := read(&s.check, evidence.ExchangeRatio, 0, e.RER); ok {
		o.rer = r
	}
	uptake, known := read(&s.check, evidence.Oxygen, 0, e.Oxygen)
	energy, spent := read(&s.check, evidence.EnergyUsed, 0, e.Energy)
	rating, rated := read(&s.check, evidence.EffortRating, 0, e.Rating)
	u := e.RelativeU
	if !(u > 0 && u <= 1) {
		u = evidence.EnergyRelativeU
	}
	if !s.timed || s.mass() == 0 {
		return o, false
	}
	var litres float64
	switch {
	case known:
		litres = s.overSession(uptake)
	case spent:
		litres = energy * evidence.JoulesPerKilocalorie / EnergyPerOxygen(o.rer)
	case rated:
		guess := FromRating(rating, s.mass())
		litres, u, o.rated = s.overSession(guess.Litres), guess.RelativeU, true
	default:
		return o, false
	}
	o.perMin = litres / s.minutes
	o.litres = symbol("oxygen", uncertainty.Measured(litres, u*litres, uncertainty.Source{Name: SourceCorrection}), quantity.Litre)
	return o, true
}

// overSession is an uptake while playing carried over the elapsed time, the
// rests at one MET, L.
func (s *sheet) overSession(uptake float64) float64 {
	rest := FromMet(1, s.mass()).Litres
	return uptake*s.played + rest*math.Max(0, s.minutes-s.played)
}

// list makes the lines that show both corrections.
func (c corrected) list() []Correction {
	both := []Correction{
		{ID: Respiratory, On: c.respiratory.on, Reason: c.respiratory.reason},
		{ID: Exchange, On: c.swap.on, Reason: c.swap.reason},
	}
	k := kind{unit: quantity.Kilogram, from: anywhere(), in: true}
	if c.known {
		both[0].Size = c.respiratory.size.figure(k, "respiratory.coefficient", "correction.combined")
		both[1].Size = c.swap.size.figure(k, "exchange.carbon-dioxide")
	}
	return both
}
