package climate

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"fmt"
	"math"
)

// Estimate is what tests say about a planned session: [NewTestSet], then
// [TestSet.Estimate].
func Estimate(a Athlete, tests []Test, plan Session) (Basis, error) {
	s, err := NewTestSet(a, tests)
	if err != nil {
		return Basis{}, fmt.Errorf("estimate a sweat rate: %w", err)
	}
	return s.Estimate(plan)
}

// PredictStrain is the Predicted Heat Strain of ISO 7933:2004, in steps of a
// minute.
//
// Each minute the core's target follows the metabolic rate, the skin its
// regression, clothing its balance of radiation and convection; what heat is
// left must evaporate (Ereq), what can evaporate is Emax; sweating follows
// the need with a time constant of 10 min under its maximum, and the heat
// that stays warms the core.
//
// Meant for healthy adults at work: air 15-50 °C, wind to 3 m/s, 100-450 W,
// clothing 0.1-1.0 clo ([StrainInput.Outside] says what is not). Not for
// sport, but as an extrapolated caution, and its maximum of sweating is not an
// athlete's. °C, kPa, m/s, W/m², g, min. It returns an [evidence.Problem] for
// impossible input. Source: ISO 7933:2004, read in three open ports that
// agree. Example: annex F case 1 (40 °C, 2.5 kPa, 150 W/m², 480 min) gives
// 37.5 °C and 6168 g.
func PredictStrain(in StrainInput) (StrainResult, error) {
	return TraceStrain(in, nil)
}

// TraceStrain is [PredictStrain] and shows every minute to see, which may be
// nil.
func TraceStrain(in StrainInput, see func(StrainMinute)) (StrainResult, error) {
	if err := in.refused(); err != nil {
		return StrainResult{}, err
	}
	s := newStrain(in, strainSetting{heatCapacity: evidence.BodyHeatCapacity, skinMetabolicMax: math.Inf(1)})
	return s.run(in, see), nil
}

// refused is the error of input that cannot be.
func (in StrainInput) refused() error {
	if _, ok := in.Posture.radiating(); !ok {
		return problem(evidence.PostureField, evidence.CodeBadChoice, 0)
	}
	if r := in.Clothing.Reflective; !(r >= 0 && r <= 1) {
		return problem(evidence.Insulation, evidence.CodeOutside, r)
	}
	if in.Minutes <= 0 || in.Minutes > 24*60 {
		return problem(evidence.Duration, evidence.CodeNegative, float64(in.Minutes))
	}
	walk := 0.0
	if in.Walking != nil {
		walk = float64(in.Walking.Speed)
		if math.IsNaN(in.Walking.Degrees) || math.IsInf(in.Walking.Degrees, 0) {
			return problem(evidence.WalkingSpeed, evidence.CodeNotFinite, in.Walking.Degrees)
		}
	}
	return refusedAny(
		fieldValue{evidence.BodyMass, float64(in.Body.Mass)},
		fieldValue{evidence.Height, float64(in.Body.Height)},
		fieldValue{evidence.AirTemperature, float64(in.Air.Temperature)},
		fieldValue{evidence.VapourPressure, float64(in.Air.Vapour)},
		fieldValue{evidence.RadiantTemperature, float64(in.Radiant)},
		fieldValue{evidence.Wind, float64(in.Wind)},
		fieldValue{evidence.MetabolicRate, float64(in.Metabolic)},
		fieldValue{evidence.MetabolicRate, float64(in.Metabolic - in.Work)},
		fieldValue{evidence.Insulation, float64(in.Clothing.Insulation)},
		fieldValue{evidence.WalkingSpeed, walk},
	)
}

// SolarWBGT calculates the wet bulb globe temperature from weather with measured
// sunshine; the preset of w is not looked at. at10m is the wind at 10 m.
func SolarWBGT(w Weather, at10m quantity.MetresPerSecond, sun Solar) (GlobeReading, error) {
	w.Radiant = nil
	err := refusedAny(append(w.values(),
		fieldValue{evidence.Irradiance, sun.Irradiance},
		fieldValue{evidence.DirectShare, sun.Direct},
		fieldValue{evidence.CosZenith, sun.CosZenith})...)
	if err != nil {
		return GlobeReading{}, err
	}
	return solarWBGT(w, at10m, sun)
}
