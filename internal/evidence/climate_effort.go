package evidence

import "ebbwell/internal/quantity"

// Metabolic heat from oxygen and from power.
const (
	OxygenEnergy      = 20900.0 // J/L
	CyclingEfficiency = 0.21
	RowingEfficiency  = 0.19
)

// What is taken where nothing is written down.
const (
	AssumedMet      = EffortNotKnownMet
	AssumedAir      = 20.0 // °C
	AssumedHumidity = 50.0 // %
	UsualBuild      = 22.5 // kg/m²
)

// Air past the body.
const (
	WindAtBody    = 0.68
	TreadmillAir  = 0.5 // m/s
	CourtSpeedLow = 1.0 // m/s
)

// Clothing.
const (
	ClothingVest      = 0.2 // clo
	ClothingShirt     = 0.3 // clo
	ClothingTracksuit = 0.6 // clo
	ClothingMax       = 2.0 // clo
)

// metabolicEntries lists metabolic heat from oxygen and from power.
func metabolicEntries() []Entry {
	source := ownProposal()
	oxygen := Citation{Code: "memory-oxygen"}
	return []Entry{
		{ID: "climate.effort.oxygen-energy", Value: OxygenEnergy, Unit: "J/L", Source: oxygen, Sure: Memory},
		{ID: "climate.effort.cycling.efficiency", Value: CyclingEfficiency, Source: source, Sure: Proposal},
		{ID: "climate.effort.rowing.efficiency", Value: RowingEfficiency, Source: source, Sure: Proposal},
		{ID: "climate.effort.assumed", Value: AssumedMet, Unit: quantity.Met, Source: source, Sure: Proposal},
		{ID: "climate.assumed.air", Value: AssumedAir, Unit: quantity.DegreeCelsius, Source: source, Sure: Proposal},
		{ID: "climate.assumed.humidity", Value: AssumedHumidity, Unit: quantity.PerCent, Source: source, Sure: Proposal},
		{ID: "climate.assumed.build", Value: UsualBuild, Unit: "kg/m²", Source: source, Sure: Proposal},
	}
}

// airPastEntries lists air past the body.
func airPastEntries() []Entry {
	source := ownProposal()
	return []Entry{
		{ID: "climate.effort.wind.at-body", Value: WindAtBody, Source: source, Sure: Proposal},
		{ID: "climate.effort.air.treadmill", Value: TreadmillAir, Unit: quantity.MetrePerSecond, Source: source, Sure: Proposal},
		{ID: "climate.effort.air.court.low", Value: CourtSpeedLow, Unit: quantity.MetrePerSecond, Source: source, Sure: Proposal},
	}
}

// clothingEntries lists clothing.
func clothingEntries() []Entry {
	source := Citation{Short: "ISO 9920", Full: "ISO 9920:2007, Ergonomics of the thermal environment: estimation of thermal insulation of a clothing ensemble"}
	return []Entry{
		{ID: "climate.clothing.vest", Value: ClothingVest, Unit: "clo", Source: source, Sure: Memory},
		{ID: "climate.clothing.shirt", Value: ClothingShirt, Unit: "clo", Source: source, Sure: Memory},
		{ID: "climate.clothing.tracksuit", Value: ClothingTracksuit, Unit: "clo", Source: source, Sure: Memory},
		{ID: "climate.clothing.max", Value: ClothingMax, Unit: "clo", Source: source, Sure: Memory},
	}
}
