package evidence

import "ebbwell/internal/quantity"

// SunPreset is a sun for people without instruments: what it adds to the
// radiant temperature, and how strongly it shines.
type SunPreset struct {
	// Code is how records keep it: "full-high".
	Code string
	// Step orders the presets from none to full; neighbours are one apart.
	Step int
	// Radiant is mean radiant less air temperature, °C.
	Radiant float64
	// Irradiance is on the level, W/m²; Direct its direct share, 0 to 1;
	// CosZenith the cosine of the sun's distance from overhead.
	Irradiance, Direct, CosZenith float64
}

// SunRadiantError is the half width of the 95 % range of a preset's radiant
// temperature, °C.
const SunRadiantError = 9.0

// SunPresets lists the presets, the weakest first. All are proposals.
func SunPresets() []SunPreset {
	return []SunPreset{
		{Code: "indoor-night", Step: 0},
		{Code: "shade", Step: 1, Radiant: 4.5, Irradiance: 80, CosZenith: 0.75},
		{Code: "overcast", Step: 2, Radiant: 12, Irradiance: 250, CosZenith: 0.75},
		{Code: "full-low", Step: 3, Radiant: 22, Irradiance: 400, Direct: 0.6, CosZenith: 0.4},
		{Code: "part-cloud", Step: 3, Radiant: 23, Irradiance: 600, Direct: 0.5, CosZenith: 0.75},
		{Code: "full-high", Step: 4, Radiant: 30, Irradiance: 900, Direct: 0.75, CosZenith: 0.85},
	}
}

// sunEntries lists the presets.
func sunEntries() []Entry {
	own := ownProposal()
	list := []Entry{{ID: "climate.sun.error", Value: SunRadiantError, Unit: quantity.DegreeCelsius, Source: own, Sure: Proposal}}
	for _, p := range SunPresets() {
		id := "climate.sun." + p.Code
		list = append(list,
			Entry{ID: id + ".radiant", Value: p.Radiant, Unit: quantity.DegreeCelsius, Source: own, Sure: Proposal},
			Entry{ID: id + ".irradiance", Value: p.Irradiance, Unit: quantity.WattPerSquareMetre, Source: own, Sure: Proposal},
			Entry{ID: id + ".direct", Value: p.Direct, Source: own, Sure: Proposal},
			Entry{ID: id + ".cos-zenith", Value: p.CosZenith, Source: own, Sure: Proposal},
		)
	}
	return list
}
