package climate

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// EffortKind is how a metabolic rate was found, best first.
type EffortKind string

// The kinds of effort.
const (
	ByPower    EffortKind = "power"
	BySpeed    EffortKind = "speed"
	ByEnergy   EffortKind = "energy"
	ByActivity EffortKind = "activity"
	ByRating   EffortKind = "rating"
)

// Motion is how a body moves.
type Motion string

// The motions.
const (
	OnFoot  Motion = "on-foot"
	Cycling Motion = "cycling"
	Rowing  Motion = "rowing"
	// InWater is not calculated: water takes heat in other ways than air.
	InWater Motion = "in-water"
)

// Effort is what a session asks of a body.
type Effort struct {
	Kind   EffortKind
	Motion Motion
	// Metabolic is the metabolic rate in W/m² with its range and why.
	Metabolic figure.Figure
	// Work is what leaves as external work.
	Work quantity.WattsPerSquareMetre
	// OwnSpeed is the body's own through still air.
	OwnSpeed quantity.MetresPerSecond
	// OnTheSpot: treadmill, ergometer, a hall's floor; the air past the body
	// is then the fan's, at least 0.5 m/s.
	OnTheSpot bool
}

// AirPast is the air past the body in a wind at body height.
//
//	v = √(own² + wind²)
//
// On the spot it is the wind (the fan), at least 0.5 m/s. Source: a proposal;
// the wind blows from any side over a session.
func (e Effort) AirPast(wind quantity.MetresPerSecond) quantity.MetresPerSecond {
	if e.OnTheSpot {
		return max(wind, evidence.TreadmillAir)
	}
	return quantity.MetresPerSecond(hypot(float64(e.OwnSpeed), float64(wind)))
}

// Over averages an effort over elapsed time of which a part was played; the
// rest is spent standing at 2 MET. Played time that is longer changes nothing.
func (e Effort) Over(b Body, played, elapsed quantity.Minutes) Effort {
	if played <= 0 || elapsed <= 0 || played >= elapsed {
		return e
	}
	share := float64(played / elapsed)
	rest := metFlux(evidence.EffortRestMet, b)
	e.Metabolic.Why = figure.Why{
		Formula: "share*active+(1-share)*rest",
		Inputs: []figure.Input{
			{Symbol: "share", Value: share},
			{Symbol: "active", Value: e.Metabolic.Value, Unit: quantity.WattPerSquareMetre, U: e.Metabolic.U},
			{Symbol: "rest", Value: rest, Unit: quantity.WattPerSquareMetre},
		},
		Sources: append(e.Metabolic.Why.Sources, "oxygen.effort.base"),
	}
	relative := e.Metabolic.U / e.Metabolic.Value
	e.Metabolic.Value = share*e.Metabolic.Value + (1-share)*rest
	e.Metabolic = withSpread(e.Metabolic, relative*e.Metabolic.Value)
	e.Work *= quantity.WattsPerSquareMetre(share)
	e.OwnSpeed *= quantity.MetresPerSecond(share)
	return e
}

// metFlux is the metabolic rate of a number of METs in W/m², through oxygen:
// MET 3.5/1000 kg/60 × 20 900 / area. The flux of 58.15 W/m² to the MET that
// comfort standards use overstates by about a quarter at 70 kg.
func metFlux(met float64, b Body) float64 {
	return met * evidence.MetOxygen / 1000 * float64(b.Mass) / 60 * evidence.OxygenEnergy / b.Area()
}

// metabolic makes the figure of a metabolic rate from oxygen uptake in
// mL/kg/min, whose formula in its inputs is given.
func metabolic(oxygen float64, b Body, formula string, inputs []figure.Input, relativeU float64, source ...string) figure.Figure {
	value := oxygen / 1000 * float64(b.Mass) / 60 * evidence.OxygenEnergy / b.Area()
	inputs = append(inputs,
		figure.Input{Symbol: "mass", Value: float64(b.Mass), Unit: quantity.Kilogram},
		figure.Input{Symbol: "energy", Value: evidence.OxygenEnergy, Unit: "J/L"},
		figure.Input{Symbol: "area", Value: b.Area(), Unit: "m²"},
	)
	f := figure.Figure{Known: true, Value: value, Unit: quantity.WattPerSquareMetre, Estimate: true, Why: figure.Why{
		Formula: "(" + formula + ")/1000*mass/60*energy/area", Inputs: inputs,
		Budget:  []figure.Share{{Source: "effort", Part: 1}},
		Sources: append(source, "climate.effort.oxygen-energy", "climate.strain.area.scale"),
	}}
	return withSpread(f, relativeU*value)
}
