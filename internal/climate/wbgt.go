package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// Readings are the three thermometers of a WBGT meter.
type Readings struct {
	NaturalWetBulb, Globe, Air quantity.Celsius
	// Indoors: under a roof or without sun, where the air has no weight.
	Indoors bool
}

// wbgt weighs the three temperatures.
func wbgt(r Readings) float64 {
	if r.Indoors {
		return evidence.WbgtWetBulb*float64(r.NaturalWetBulb) + evidence.WbgtGlobeIndoors*float64(r.Globe)
	}
	return evidence.WbgtWetBulb*float64(r.NaturalWetBulb) + evidence.WbgtGlobe*float64(r.Globe) + evidence.WbgtAir*float64(r.Air)
}

// wbgtWhy shows how the three temperatures were weighed.
func wbgtWhy(wet, globe, air float64, sun bool) figure.Why {
	c := quantity.DegreeCelsius
	inputs := []figure.Input{
		{Symbol: "a", Value: evidence.WbgtWetBulb}, {Symbol: "tnw", Value: wet, Unit: c},
		{Symbol: "b", Value: evidence.WbgtGlobeIndoors}, {Symbol: "tg", Value: globe, Unit: c},
	}
	why := figure.Why{Formula: "a*tnw+b*tg", Inputs: inputs, Sources: []string{
		"climate.wbgt.weight.wet-bulb", "climate.wbgt.weight.globe-indoors"}}
	if sun {
		inputs[2].Value = evidence.WbgtGlobe
		why.Formula = "a*tnw+b*tg+c*ta"
		why.Inputs = append(inputs, figure.Input{Symbol: "c", Value: evidence.WbgtAir}, figure.Input{Symbol: "ta", Value: air, Unit: c})
		why.Sources = []string{"climate.wbgt.weight.wet-bulb", "climate.wbgt.weight.globe", "climate.wbgt.weight.air"}
	}
	return why
}

// withSpread gives a figure the symmetric 95 % range of a standard
// uncertainty; an infinite or undefined one leaves it without a range.
func withSpread(f figure.Figure, u float64) figure.Figure {
	if math.IsNaN(u) || math.IsInf(u, 0) {
		return f
	}
	f.U, f.Ranged = u, true
	f.Range = quantity.Range{Low: f.Value - evidence.CoverageFactor*u, High: f.Value + evidence.CoverageFactor*u}
	return f
}
