package climate

import (
	"math"

	"ebbwell/internal/evidence"
)

// surroundings is what a body gives heat to.
type surroundings struct {
	air, radiant float64 // °C
	vapour       float64 // kPa
	speed        float64 // m/s, air past the body
	radiation    float64 // W/(m²·K⁴), black body times emissivity times radiating share
	emitted      float64 // W/m², what a surface at the radiant temperature sends out
	forced       float64 // W/(m²·K), convection by the air past the body
	still        float64 // K between skin and air up to which that is the stronger
}

// surround makes the surroundings of a surface of some emissivity of which a
// share radiates.
func surround(air Air, radiant, speed, emissivity, radiating float64) surroundings {
	s := surroundings{air: float64(air.Temperature), radiant: radiant, vapour: float64(air.Vapour), speed: speed}
	s.radiation = emissivity * evidence.BlackBody * radiating
	s.emitted = s.radiation * fourth(radiant+evidence.StrainKelvin)
	s.forced = evidence.ConvectionSlowBase + evidence.ConvectionSlow*speed
	if speed > evidence.ConvectionSlowUpTo {
		s.forced = evidence.ConvectionFast * math.Pow(speed, evidence.ConvectionFastPower)
	}
	s.still = math.Pow(s.forced/evidence.ConvectionStill, 1/evidence.ConvectionStillPower)
	return s
}

// convection is the heat transfer coefficient at a skin temperature: the
// larger of that in still air, 2.38 |tsk - ta|^¼, and that in moving air. The
// root is left out where it cannot win, as this is asked every minute.
func (s *surroundings) convection(skin float64) float64 {
	if apart := math.Abs(skin - s.air); apart > s.still {
		return natural(apart)
	}
	return s.forced
}

// natural is the heat transfer coefficient in still air.
func natural(apart float64) float64 {
	return evidence.ConvectionStill * math.Sqrt(math.Sqrt(apart))
}

// surface finds the temperature of the clothing's surface where the heat from
// the skin equals what leaves by convection and radiation. Newton's steps from
// a guess converge from anywhere, as the balance is convex and rises.
func (s *surroundings) surface(w *worn, skin, guess, h float64) float64 {
	if w.bare {
		return skin
	}
	x := guess
	for range 50 {
		step := s.surfaceStep(w, skin, x, h)
		x -= step
		if math.Abs(step) < surfaceSolved {
			break
		}
	}
	return x
}

// surfaceStep is one of Newton's steps towards the surface temperature.
func (s *surroundings) surfaceStep(w *worn, skin, x, h float64) float64 {
	k := x + evidence.StrainKelvin
	cube := s.radiation * k * k * k
	balance := w.area*(h*(x-s.air)+cube*k-s.emitted) + (x-skin)*w.conductance
	return balance * (1 / (w.area*(h+4*cube) + w.conductance))
}

// surfaceSolved is the last of Newton's steps, K. The balance bends so little
// that the error left after it is under a five-hundredth of its square.
const surfaceSolved = 0.01

// dry is the heat that leaves a surface by convection and by radiation, W/m²
// of body.
func (s *surroundings) dry(w *worn, surface, h float64) (convection, radiation float64) {
	return w.area * h * (surface - s.air), w.area * (s.radiation*fourth(surface+evidence.StrainKelvin) - s.emitted)
}

// breath is the heat that leaves with the breath at a metabolic rate, W/m²:
// dry, and wet.
func (s *surroundings) breath(metabolic float64) (dry, wet float64) {
	expired := evidence.ExpiredBase + evidence.ExpiredAir*s.air + evidence.ExpiredVapour*s.vapour
	dry = evidence.BreathDry * metabolic * (expired - s.air)
	wet = evidence.BreathWet * metabolic * (evidence.BreathWetBase + evidence.BreathWetAir*s.air - evidence.BreathWetVapour*s.vapour)
	return dry, wet
}

// skinLine is the skin temperature as base + slope × rectal temperature.
type skinLine struct{ base, slope float64 }

// skin is the regression of skin temperature, between nude and clothed by
// insulation (ISO 7933:2004).
func (s *surroundings) skin(clothing Clo, metabolic float64) skinLine {
	clothed := skinLine{evidence.SkinClothedBase + evidence.SkinClothedAir*s.air + evidence.SkinClothedRadiant*s.radiant +
		evidence.SkinClothedVapour*s.vapour - evidence.SkinClothedWind*s.speed + evidence.SkinClothedMetabolic*metabolic,
		evidence.SkinClothedRectal}
	nude := skinLine{evidence.SkinNudeBase + evidence.SkinNudeAir*s.air + evidence.SkinNudeRadiant*s.radiant +
		evidence.SkinNudeVapour*s.vapour - evidence.SkinNudeWind*s.speed, evidence.SkinNudeRectal}
	switch {
	case clothing >= evidence.ClothedFrom:
		return clothed
	case clothing <= evidence.NudeUpTo:
		return nude
	}
	part := evidence.SkinBetweenSlope * (float64(clothing) - evidence.NudeUpTo)
	return skinLine{nude.base + part*(clothed.base-nude.base), nude.slope + part*(clothed.slope-nude.slope)}
}
