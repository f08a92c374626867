package evidence

import "ebbwell/internal/quantity"

// Saturated water vapour over water.
const (
	SaturationScale  = 0.6105 // kPa
	SaturationSlope  = 17.27
	SaturationOffset = 237.3 // °C
)

// Air pressure at altitude, standard atmosphere.
const (
	SeaLevelPressure = 101.325    // kPa
	PressureLapse    = 2.25577e-5 // 1/m
	PressureExponent = 5.25588
)

// saturationEntries lists saturated water vapour over water.
func saturationEntries() []Entry {
	source := Citation{Short: "ISO 7726", Full: "ISO 7726:1998, Ergonomics of the thermal environment: instruments for measuring physical quantities"}
	return []Entry{
		{ID: "climate.air.saturation.scale", Value: SaturationScale, Unit: quantity.Kilopascal, Source: source, Sure: Second},
		{ID: "climate.air.saturation.slope", Value: SaturationSlope, Source: source, Sure: Second},
		{ID: "climate.air.saturation.offset", Value: SaturationOffset, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
	}
}

// pressureEntries lists air pressure at altitude, standard atmosphere.
func pressureEntries() []Entry {
	source := Citation{Short: "ISO 2533", Full: "ISO 2533:1975, Standard atmosphere"}
	return []Entry{
		{ID: "climate.air.pressure.sea-level", Value: SeaLevelPressure, Unit: quantity.Kilopascal, Source: source, Sure: Memory},
		{ID: "climate.air.pressure.lapse", Value: PressureLapse, Unit: "1/m", Source: source, Sure: Memory},
		{ID: "climate.air.pressure.exponent", Value: PressureExponent, Source: source, Sure: Memory},
	}
}
