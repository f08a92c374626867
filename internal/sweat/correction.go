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

// Why a correction is on or off: what the effort is known from, or why not.
const (
	ReasonEffort  = "correction.effort"  // power, speed, MET, activity, uptake
	ReasonEnergy  = "correction.energy"  // the energy of the session
	ReasonRating  = "correction.rating"  // an effort rating
	ReasonSport   = "correction.sport"   // the sport's MET, as a rating
	ReasonAssumed = "correction.assumed" // nothing known: 6 MET, as a rating
	ReasonField   = "correction.field"   // off: the practice takes the field method
	ReasonWaits   = "correction.waits"   // duration or body mass is missing
)

// Correction is one loss of mass that is not sweat.
type Correction struct {
	// ID is [Respiratory] or [Exchange].
	ID string
	// Size is what it is or would be, kg; unknown without duration or body mass.
	Size figure.Figure
	// On is true when it is taken off the balance.
	On bool
	// Reason is what the effort is known from, or why it is off, a code.
	Reason string
}

// corrected is the two corrections, sized where they can be.
type corrected struct {
	// known is false while duration or body mass is missing.
	known             bool
	on                bool
	reason            string
	respiratory, swap term
	// bias is what leaving them off may do to the loss, kg; zero where they are on.
	bias float64
	// wide says that the effort is known no better than a rating.
	wide bool
}

// oxygen is the uptake over the whole session, L.
type oxygen struct {
	litres term
	rer    float64
	reason string
	wide   bool
}

// correct sizes the corrections and takes them off unless the practice takes the
// field method.
func (s *sheet) correct() corrected {
	o, known := s.oxygenUsed()
	if !known {
		return corrected{reason: ReasonWaits}
	}
	c := corrected{known: true, on: !s.in.Options.Uncorrected, reason: o.reason, wide: o.wide}
	vapour, humid := read(&s.check, evidence.VapourPressure, 0, s.in.Air.Vapour)
	c.respiratory, c.swap = lossesOf(o, vapour, humid)
	if !c.on {
		c.reason = ReasonField
		c.bias = evidence.UncorrectedBias * kilocalories(o.litres.q.Value(), o.rer) / 1000
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

// kilocalories is the energy of an oxygen uptake, L.
func kilocalories(litres, rer float64) float64 {
	return litres * EnergyPerOxygen(rer) / evidence.JoulesPerKilocalorie
}

// oxygenUsed calculates the uptake over the session from the best that is known;
// where nothing is, from the usual MET of the sport, else 6 MET, taken as a
// rating. ok is false without a duration or a body mass.
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
		litres, o.reason = s.overSession(uptake), ReasonEffort
	case spent:
		litres, o.reason = energy*evidence.JoulesPerKilocalorie/EnergyPerOxygen(o.rer), ReasonEnergy
	case rated:
		litres, o.reason = s.overSession(FromRating(rating, s.mass()).Litres), ReasonRating
	case e.Sport != nil && finite(*e.Sport) && *e.Sport > 0:
		litres, o.reason = s.overSession(FromMet(*e.Sport, s.mass()).Litres), ReasonSport
	default:
		litres, o.reason = s.overSession(FromMet(evidence.EffortNotKnownMet, s.mass()).Litres), ReasonAssumed
	}
	if o.wide = !known && !spent; o.wide {
		u = evidence.EffortRelativeU
	}
	o.litres = symbol("oxygen", uncertainty.Measured(litres, u*litres, uncertainty.Source{Name: SourceCorrection}), quantity.Litre)
	return o, true
}

// overSession is an uptake while playing carried over the elapsed time, L; the rests
// at the MET that the heat balance takes for them.
func (s *sheet) overSession(uptake float64) float64 {
	rest := FromMet(evidence.EffortRestMet, s.mass()).Litres
	return uptake*s.played + rest*math.Max(0, s.minutes-s.played)
}

// list makes the lines that show both corrections.
func (c corrected) list() []Correction {
	both := []Correction{{ID: Respiratory, On: c.on, Reason: c.reason}, {ID: Exchange, On: c.on, Reason: c.reason}}
	k := kind{unit: quantity.Kilogram, from: anywhere(), in: true}
	if c.known {
		both[0].Size = c.respiratory.figure(k, "respiratory.coefficient", "correction.combined")
		both[1].Size = c.swap.figure(k, "exchange.carbon-dioxide")
	}
	return both
}
