package climate

import (
	"math"

	"ebbwell/internal/evidence"
)

// globe is the temperature of the black globe in °C, where
//
//	x⁴ = ½ (εa + εs) T⁴ - h (x - T)/(ε σ) + S (1-α)/(2 ε σ) (fd (1/(2 cosz) - 1) + 1 + αs)
//
// with the heat transfer of a sphere at the film temperature.
func (s site) globe() (float64, bool) {
	sun := s.sun.Irradiance * (1 - evidence.GlobeAlbedo) / 2 *
		(s.sun.Direct*(1/(2*s.sun.CosZenith)-1) + 1 + evidence.GroundAlbedo)
	return s.solve(func(x float64) float64 {
		h := s.sphere((x + s.air) / 2)
		out := evidence.GlobeEmissivity*(evidence.RadiationConstant*fourth(x)-s.longwave) + h*(x-s.air)
		return out - sun
	}, math.Inf(1))
}

// sphere is the heat transfer coefficient of the globe, W/(m²·K).
func (s site) sphere(film float64) float64 {
	mu := viscosity(film)
	reynolds := s.wind * s.density(film) * evidence.GlobeDiameter / mu
	nusselt := evidence.SphereStill + evidence.SphereWind*math.Sqrt(reynolds)*math.Pow(s.prandtl, evidence.SpherePrandtlPower)
	return nusselt * conductivity(mu) / evidence.GlobeDiameter
}

// naturalWetBulb is the temperature of the wick in °C, where
//
//	x = T - (ΔH/r) (es(x) - ea)/(P - es(x)) (Pr/Sc)^0.56 + F/h
//
// F is the radiation the wick takes up, r the heat capacity of air by the mole
// of water.
func (s site) naturalWetBulb() (float64, bool) {
	ratio := evidence.AirHeatCapacity * evidence.AirMolarMass / evidence.WaterMolarMass
	sun := s.wickSun()
	boiling := s.boiling()
	return s.solve(func(x float64) float64 {
		film := (x + s.air) / 2
		h, schmidt := s.cylinder(film)
		es := s.saturation(x)
		heat := evidence.EvaporationHeat + evidence.EvaporationHeatSlope*film
		cooling := heat / ratio * (es - s.vapour) / (s.pressure - es) * math.Pow(s.prandtl/schmidt, evidence.EvaporationPower)
		radiation := evidence.WickEmissivity*(s.longwave-evidence.RadiationConstant*fourth(x)) + sun
		return x - s.air + cooling - radiation/h
	}, boiling)
}

// wickSun is the sunshine a wick takes up, W/m² of its surface.
func (s site) wickSun() float64 {
	end := evidence.WickEndShare * evidence.WickDiameter / evidence.WickLength
	cosine := s.sun.CosZenith
	tangent := math.Sqrt(max(0, 1-cosine*cosine)) / cosine
	direct := s.sun.Direct
	return (1 - evidence.WickAlbedo) * s.sun.Irradiance *
		((1-direct)*(1+end) + direct*(tangent/math.Pi+end) + evidence.GroundAlbedo)
}

// cylinder is the heat transfer coefficient of the wick and the Schmidt
// number of the air about it.
func (s site) cylinder(film float64) (h, schmidt float64) {
	mu := viscosity(film)
	rho := s.density(film)
	reynolds := s.wind * rho * evidence.WickDiameter / mu
	nusselt := evidence.CylinderWind * math.Pow(reynolds, evidence.CylinderWindPower) * math.Pow(s.prandtl, evidence.CylinderPrandtlPower)
	diffusivity := evidence.DiffusivityScale * math.Pow(evidence.DiffusivityWarmth*film, evidence.DiffusivityPower) *
		evidence.SeaLevelPressure * kilo / s.pressure
	return nusselt * conductivity(mu) / evidence.WickDiameter, mu / (rho * diffusivity)
}

// boiling is a temperature under that at which the wick would boil, K.
func (s site) boiling() float64 {
	x := s.air
	for s.saturation(x+1) < s.pressure && x < s.air+100 {
		x++
	}
	return x
}

// solve finds the root, in °C, of a function that rises with temperature in
// kelvin, between brackets about the air; it never looks above top. The chord
// between the brackets is followed, and the value at an end that stays twice is
// halved (the Illinois rule), so that both ends close in.
func (s site) solve(f func(float64) float64, top float64) (float64, bool) {
	low, high := s.air-60, min(s.air+100, top)
	below, above := f(low), f(high)
	if below > 0 || above < 0 {
		return 0, false
	}
	last, stayed := math.Inf(1), 0
	for range 200 {
		x := (low*above - high*below) / (above - below)
		y := f(x)
		if math.Abs(x-last) < solved || y == 0 {
			return x - evidence.KelvinOffset, true
		}
		last = x
		if y > 0 {
			high, above = x, y
			if stayed < 0 {
				below /= 2
			}
			stayed = -1
			continue
		}
		low, below = x, y
		if stayed > 0 {
			above /= 2
		}
		stayed = 1
	}
	return 0, false
}

// solved is the last step at which a temperature counts as solved, K.
const solved = 1e-6
