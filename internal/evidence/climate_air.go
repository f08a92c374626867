package evidence

import "ebbwell/internal/quantity"

// Saturated water vapour over water.
const (
	SaturationScale  = 0.6105 // kPa
	SaturationSlope  = 17.27
	SaturationOffset = 237.3 // °C
)

// Wet bulb temperature in the shade, and where its formula was fitted.
const (
	WetBulbRoot         = 0.151977
	WetBulbRootOffset   = 8.313659 // %
	WetBulbShift        = 1.676331 // %
	WetBulbHumid        = 0.00391838
	WetBulbHumidPower   = 1.5
	WetBulbHumidAngle   = 0.023101
	WetBulbConstant     = 4.686035 // °C
	WetBulbHumidityLow  = 5.0      // %
	WetBulbHumidityHigh = 99.0     // %
	WetBulbAirLow       = -20.0    // °C
	WetBulbAirHigh      = 50.0     // °C
)

// Air pressure at altitude, standard atmosphere.
const (
	SeaLevelPressure = 101.325    // kPa
	PressureLapse    = 2.25577e-5 // 1/m
	PressureExponent = 5.25588
)

// Heat index, °F and % relative humidity; a screen only.
const (
	HeatIndexConstant            = -42.379 // °F
	HeatIndexAir                 = 2.04901523
	HeatIndexHumidity            = 10.14333127
	HeatIndexAirHumidity         = -0.22475541
	HeatIndexAirAir              = -6.83783e-3
	HeatIndexHumidityHumidity    = -5.481717e-2
	HeatIndexAirAirHumidity      = 1.22874e-3
	HeatIndexAirHumidityHumidity = 8.5282e-4
	HeatIndexAllSquared          = -1.99e-6
	HeatIndexFrom                = 80.0 // °F
	HeatIndexDryBelow            = 13.0 // %
	HeatIndexDryDivisor          = 4.0
	HeatIndexDryCentre           = 95.0  // °F
	HeatIndexDryWidth            = 17.0  // °F
	HeatIndexDryHigh             = 112.0 // °F
	HeatIndexHumidAbove          = 85.0  // %
	HeatIndexHumidDivisor        = 10.0
	HeatIndexHumidHigh           = 87.0 // °F
	HeatIndexHumidWidth          = 5.0  // °F
	HeatIndexSimpleBase          = 61.0 // °F
	HeatIndexSimpleCentre        = 68.0 // °F
	HeatIndexSimpleSlope         = 1.2
	HeatIndexSimpleHumidity      = 0.094
)

// Short form of the WBGT from air and vapour pressure; a screen only.
const (
	ShortWbgtAir      = 0.567
	ShortWbgtVapour   = 0.393 // °C/hPa
	ShortWbgtConstant = 3.94  // °C
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

// wetBulbEntries lists wet bulb temperature in the shade, and where its formula was fitted.
func wetBulbEntries() []Entry {
	source := Citation{Short: "Stull 2011", Full: "Stull 2011, Journal of Applied Meteorology and Climatology 50:2267"}
	return []Entry{
		{ID: "climate.air.wet-bulb.root", Value: WetBulbRoot, Source: source, Sure: Second},
		{ID: "climate.air.wet-bulb.root-offset", Value: WetBulbRootOffset, Unit: quantity.PerCent, Source: source, Sure: Second},
		{ID: "climate.air.wet-bulb.shift", Value: WetBulbShift, Unit: quantity.PerCent, Source: source, Sure: Second},
		{ID: "climate.air.wet-bulb.humid", Value: WetBulbHumid, Source: source, Sure: Second},
		{ID: "climate.air.wet-bulb.humid-power", Value: WetBulbHumidPower, Source: source, Sure: Second},
		{ID: "climate.air.wet-bulb.humid-angle", Value: WetBulbHumidAngle, Source: source, Sure: Second},
		{ID: "climate.air.wet-bulb.constant", Value: WetBulbConstant, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.air.wet-bulb.humidity.low", Value: WetBulbHumidityLow, Unit: quantity.PerCent, Source: source, Sure: Second},
		{ID: "climate.air.wet-bulb.humidity.high", Value: WetBulbHumidityHigh, Unit: quantity.PerCent, Source: source, Sure: Second},
		{ID: "climate.air.wet-bulb.air.low", Value: WetBulbAirLow, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.air.wet-bulb.air.high", Value: WetBulbAirHigh, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
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

// heatIndexEntries lists heat index, °F and % relative humidity; a screen only.
func heatIndexEntries() []Entry {
	source := Citation{Short: "Rothfusz 1990", Full: "Rothfusz 1990, National Weather Service Technical Attachment SR 90-23, after Steadman 1979, Journal of Applied Meteorology 18:861"}
	return []Entry{
		{ID: "climate.air.heat-index.constant", Value: HeatIndexConstant, Unit: quantity.DegreeFahrenheit, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.air", Value: HeatIndexAir, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.humidity", Value: HeatIndexHumidity, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.air-humidity", Value: HeatIndexAirHumidity, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.air-air", Value: HeatIndexAirAir, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.humidity-humidity", Value: HeatIndexHumidityHumidity, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.air-air-humidity", Value: HeatIndexAirAirHumidity, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.air-humidity-humidity", Value: HeatIndexAirHumidityHumidity, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.all-squared", Value: HeatIndexAllSquared, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.from", Value: HeatIndexFrom, Unit: quantity.DegreeFahrenheit, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.dry.below", Value: HeatIndexDryBelow, Unit: quantity.PerCent, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.dry.divisor", Value: HeatIndexDryDivisor, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.dry.centre", Value: HeatIndexDryCentre, Unit: quantity.DegreeFahrenheit, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.dry.width", Value: HeatIndexDryWidth, Unit: quantity.DegreeFahrenheit, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.dry.high", Value: HeatIndexDryHigh, Unit: quantity.DegreeFahrenheit, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.humid.above", Value: HeatIndexHumidAbove, Unit: quantity.PerCent, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.humid.divisor", Value: HeatIndexHumidDivisor, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.humid.high", Value: HeatIndexHumidHigh, Unit: quantity.DegreeFahrenheit, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.humid.width", Value: HeatIndexHumidWidth, Unit: quantity.DegreeFahrenheit, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.simple.base", Value: HeatIndexSimpleBase, Unit: quantity.DegreeFahrenheit, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.simple.centre", Value: HeatIndexSimpleCentre, Unit: quantity.DegreeFahrenheit, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.simple.slope", Value: HeatIndexSimpleSlope, Source: source, Sure: Read},
		{ID: "climate.air.heat-index.simple.humidity", Value: HeatIndexSimpleHumidity, Source: source, Sure: Read},
	}
}

// shortWbgtEntries lists short form of the WBGT from air and vapour pressure; a screen only.
func shortWbgtEntries() []Entry {
	source := Citation{Short: "short WBGT", Full: "approximation of the wet bulb globe temperature used by weather services, after ACSM 1984, Medicine and Science in Sports and Exercise 16:ix"}
	return []Entry{
		{ID: "climate.wbgt.short.air", Value: ShortWbgtAir, Source: source, Sure: Memory},
		{ID: "climate.wbgt.short.vapour", Value: ShortWbgtVapour, Unit: "°C/hPa", Source: source, Sure: Memory},
		{ID: "climate.wbgt.short.constant", Value: ShortWbgtConstant, Unit: quantity.DegreeCelsius, Source: source, Sure: Memory},
	}
}
