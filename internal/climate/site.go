package climate

import (
	"math"

	"ebbwell/internal/evidence"
)

// site is the weather around the instruments, in kelvin and pascal.
type site struct {
	air      float64 // K
	vapour   float64 // Pa
	pressure float64 // Pa
	wind     float64 // m/s at the instruments
	sun      Solar
	longwave float64 // half the radiation of sky and ground, W/m² over emissivity
	prandtl  float64
}

// newSite brings weather to the height of the instruments.
func newSite(w Weather, at10m float64, sun Solar) site {
	if sun.CosZenith < evidence.CosZenithLeast {
		sun = Solar{CosZenith: 1}
	}
	kpa := pressure(float64(w.Altitude))
	air := float64(w.Temperature) + evidence.KelvinOffset
	s := site{air: air, pressure: kpa * kilo, sun: sun, wind: windAtInstruments(at10m, sun.Irradiance)}
	s.vapour = s.saturation(air) * float64(w.Humidity) / 100
	sky := evidence.SkyEmissivity * math.Pow(s.vapour/100, evidence.SkyEmissivityPower)
	s.longwave = evidence.RadiationConstant * (sky + evidence.GroundEmissivity) / 2 * fourth(air)
	gas := evidence.GasConstant / evidence.AirMolarMass
	s.prandtl = evidence.AirHeatCapacity / (evidence.AirHeatCapacity + evidence.EuckenFactor*gas)
	return s
}

// windAtInstruments brings the wind from 10 m down to 2 m by the stability of
// the air: the urban power law of the source.
func windAtInstruments(at10m, irradiance float64) float64 {
	return max(evidence.InstrumentWindLeast, at10m*math.Pow(evidence.InstrumentHeightRatio, windPower(at10m, irradiance)))
}

// windPower is the exponent of the wind profile.
func windPower(at10m, irradiance float64) float64 {
	const unstable, slight, neutral, stable = evidence.WindPowerUnstable, evidence.WindPowerSlight, evidence.WindPowerNeutral, evidence.WindPowerStable
	if irradiance == 0 {
		if at10m < evidence.StabilityWindNight {
			return stable
		}
		return neutral
	}
	// Columns: strong, medium, weak and hardly any sun.
	column := 0
	for _, least := range [...]float64{evidence.StabilitySunStrong, evidence.StabilitySunMedium, evidence.StabilitySunWeak} {
		if irradiance >= least {
			break
		}
		column++
	}
	switch {
	case at10m < evidence.StabilityWindLight:
		return [...]float64{unstable, unstable, unstable, neutral}[column]
	case at10m < evidence.StabilityWindGentle:
		return [...]float64{unstable, unstable, slight, neutral}[column]
	case at10m < evidence.StabilityWindModerate:
		return [...]float64{unstable, unstable, slight, neutral}[column]
	case at10m < evidence.StabilityWindFresh:
		return [...]float64{slight, slight, neutral, neutral}[column]
	}
	return [...]float64{slight, neutral, neutral, neutral}[column]
}

// saturation is the vapour pressure at the wick, Pa, at x kelvin.
func (s site) saturation(x float64) float64 {
	enhanced := evidence.WickSaturationEnhanced + evidence.WickSaturationPressure*s.pressure/100
	return enhanced * evidence.WickSaturationScale *
		math.Exp(evidence.WickSaturationSlope*(x-evidence.KelvinOffset)/(x-evidence.WickSaturationOffset))
}

// viscosity of air in kg/(m·s) at x kelvin.
func viscosity(x float64) float64 {
	return evidence.ViscosityScale * math.Sqrt(evidence.AirMolarMass*x) /
		(evidence.ViscosityCollision * (evidence.ViscosityIntegral - x/evidence.ViscosityIntegralFall))
}

// conductivity of air in W/(m·K) from its viscosity.
func conductivity(mu float64) float64 {
	return (evidence.AirHeatCapacity + evidence.EuckenFactor*evidence.GasConstant/evidence.AirMolarMass) * mu
}

// density of air in kg/m³ at x kelvin.
func (s site) density(x float64) float64 {
	return s.pressure * evidence.AirMolarMass / (evidence.GasConstant * x)
}

// fourth is the fourth power.
func fourth(x float64) float64 { return x * x * x * x }
