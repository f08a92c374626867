package climate

import (
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
