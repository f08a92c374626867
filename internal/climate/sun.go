package climate

import (
	"math"

	"ebbwell/internal/evidence"
)

// Sun is the sun on the athlete, in words for people without instruments.
type Sun string

// The presets, the weakest first.
const (
	SunNone     Sun = "indoor-night"
	SunShade    Sun = "shade"
	SunOvercast Sun = "overcast"
	SunLow      Sun = "full-low"
	SunPart     Sun = "part-cloud"
	SunHigh     Sun = "full-high"
)

// Suns lists the presets, the weakest first.
func Suns() []Sun {
	return []Sun{SunNone, SunShade, SunOvercast, SunLow, SunPart, SunHigh}
}

// preset finds what a sun means.
func (s Sun) preset() (evidence.SunPreset, error) {
	for _, p := range evidence.SunPresets() {
		if p.Code == string(s) {
			return p, nil
		}
	}
	return evidence.SunPreset{}, problem(evidence.SunField, evidence.CodeBadChoice, 0)
}

// Solar is sunshine on the level.
type Solar struct {
	// Irradiance in W/m².
	Irradiance float64
	// Direct is the share that comes straight from the sun, 0 to 1.
	Direct float64
	// CosZenith is the cosine of the sun's distance from overhead.
	CosZenith float64
}

// SolarFromReading splits a measured irradiance into direct and diffuse.
//
//	S0 = 1367 cosz / d²   s = min(S/S0, 0.85)   direct = exp(3 - 1.34 s - 1.65/s), 0 to 0.9
//
// irradiance in W/m² on the level, cosZenith -1 to 1, distance from the sun in
// astronomical units (1 where not known). With the sun down there is none.
// Source: Liljegren et al. 2008; 1367 and 0.85 from memory.
func SolarFromReading(irradiance, cosZenith, distance float64) (Solar, error) {
	err := refusedAny(fieldValue{evidence.Irradiance, irradiance}, fieldValue{evidence.CosZenith, cosZenith})
	if err != nil {
		return Solar{}, err
	}
	if cosZenith < evidence.CosZenithLeast || irradiance == 0 || distance <= 0 || math.IsNaN(distance) {
		return Solar{}, nil
	}
	ratio := min(irradiance*distance*distance/(evidence.SolarConstant*cosZenith), evidence.SolarRatioMax)
	direct := math.Exp(evidence.DirectShareConstant - evidence.DirectShareSlope*ratio - evidence.DirectShareInverse/ratio)
	return Solar{irradiance, min(direct, evidence.DirectShareMax), cosZenith}, nil
}
