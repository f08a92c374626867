package evidence

import "ebbwell/internal/quantity"

// The instruments: a globe of two inches and a wetted wick.
const (
	GlobeDiameter      = 0.0508 // m
	GlobeEmissivity    = 0.95
	GlobeAlbedo        = 0.05
	WickDiameter       = 0.007  // m
	WickLength         = 0.0254 // m
	WickEmissivity     = 0.95
	WickAlbedo         = 0.4
	WickEndShare       = 0.25
	GroundAlbedo       = 0.45
	GroundEmissivity   = 0.999
	SkyEmissivity      = 0.575
	SkyEmissivityPower = 0.143
)

// What moist air does.
const (
	RadiationConstant      = 5.6696e-8 // W/(m²·K⁴)
	KelvinOffset           = 273.15    // K
	AirHeatCapacity        = 1003.5    // J/(kg·K)
	AirMolarMass           = 28.97     // kg/kmol
	WaterMolarMass         = 18.015    // kg/kmol
	GasConstant            = 8314.34   // J/(kmol·K)
	EuckenFactor           = 1.25
	ViscosityScale         = 2.6693e-6
	ViscosityCollision     = 13.082689
	ViscosityIntegral      = 1.2945
	ViscosityIntegralFall  = 1141.176470588 // K
	DiffusivityScale       = 2.471773765e-5 // m²/s
	DiffusivityWarmth      = 0.00342105637  // 1/K
	DiffusivityPower       = 2.334
	WickSaturationEnhanced = 1.0007
	WickSaturationPressure = 3.46e-6 // 1/hPa
	WickSaturationScale    = 611.21  // Pa
	WickSaturationSlope    = 17.502
	WickSaturationOffset   = 32.18     // K
	EvaporationHeat        = 1665134.5 // J/kg
	EvaporationHeatSlope   = 2370.0    // J/(kg·K)
)

// Heat and mass exchange with the wind.
const (
	SphereStill           = 2.0
	SphereWind            = 0.6
	SpherePrandtlPower    = 0.3333
	CylinderWind          = 0.281
	CylinderWindPower     = 0.6
	CylinderPrandtlPower  = 0.44
	EvaporationPower      = 0.56
	InstrumentWindLeast   = 0.13 // m/s
	InstrumentHeightRatio = 0.2
)

// Stability of the air by wind at 10 m and strength of the sun, and the urban
// exponents of the wind profile.
const (
	StabilityWindLight    = 2.0   // m/s
	StabilityWindGentle   = 3.0   // m/s
	StabilityWindModerate = 5.0   // m/s
	StabilityWindFresh    = 6.0   // m/s
	StabilityWindNight    = 2.5   // m/s
	StabilitySunStrong    = 925.0 // W/m²
	StabilitySunMedium    = 675.0 // W/m²
	StabilitySunWeak      = 175.0 // W/m²
	WindPowerUnstable     = 0.15
	WindPowerSlight       = 0.20
	WindPowerNeutral      = 0.25
	WindPowerStable       = 0.30
)

// Where the sun counts as down.
const (
	CosZenithLeast = 0.00873
)

// instrumentEntries lists the instruments: a globe of two inches and a wetted wick.
func instrumentEntries() []Entry {
	source := Citation{Short: "Liljegren et al. 2008", Full: "Liljegren, Carhart, Lawday, Tschopp, Sharp 2008, Journal of Occupational and Environmental Hygiene 5:645"}
	return []Entry{
		{ID: "climate.weather.globe.diameter", Value: GlobeDiameter, Unit: quantity.Metre, Source: source, Sure: Second},
		{ID: "climate.weather.globe.emissivity", Value: GlobeEmissivity, Source: source, Sure: Second},
		{ID: "climate.weather.globe.albedo", Value: GlobeAlbedo, Source: source, Sure: Second},
		{ID: "climate.weather.wick.diameter", Value: WickDiameter, Unit: quantity.Metre, Source: source, Sure: Second},
		{ID: "climate.weather.wick.length", Value: WickLength, Unit: quantity.Metre, Source: source, Sure: Second},
		{ID: "climate.weather.wick.emissivity", Value: WickEmissivity, Source: source, Sure: Second},
		{ID: "climate.weather.wick.albedo", Value: WickAlbedo, Source: source, Sure: Second},
		{ID: "climate.weather.wick.end-share", Value: WickEndShare, Source: source, Sure: Second},
		{ID: "climate.weather.ground.albedo", Value: GroundAlbedo, Source: source, Sure: Second},
		{ID: "climate.weather.ground.emissivity", Value: GroundEmissivity, Source: source, Sure: Second},
		{ID: "climate.weather.sky.emissivity", Value: SkyEmissivity, Source: source, Sure: Second},
		{ID: "climate.weather.sky.power", Value: SkyEmissivityPower, Source: source, Sure: Second},
	}
}

// moistAirEntries lists what moist air does.
func moistAirEntries() []Entry {
	source := Citation{Short: "Liljegren et al. 2008", Full: "Liljegren, Carhart, Lawday, Tschopp, Sharp 2008, Journal of Occupational and Environmental Hygiene 5:645"}
	return []Entry{
		{ID: "climate.weather.radiation", Value: RadiationConstant, Unit: "W/(m²·K⁴)", Source: source, Sure: Second},
		{ID: "climate.unit.kelvin", Value: KelvinOffset, Unit: "K", Source: source, Sure: Second},
		{ID: "climate.weather.air.heat-capacity", Value: AirHeatCapacity, Unit: "J/(kg·K)", Source: source, Sure: Second},
		{ID: "climate.weather.air.molar-mass", Value: AirMolarMass, Unit: "kg/kmol", Source: source, Sure: Second},
		{ID: "climate.weather.water.molar-mass", Value: WaterMolarMass, Unit: "kg/kmol", Source: source, Sure: Second},
		{ID: "climate.weather.gas-constant", Value: GasConstant, Unit: "J/(kmol·K)", Source: source, Sure: Second},
		{ID: "climate.weather.air.eucken", Value: EuckenFactor, Source: source, Sure: Second},
		{ID: "climate.weather.viscosity.scale", Value: ViscosityScale, Source: source, Sure: Second},
		{ID: "climate.weather.viscosity.collision", Value: ViscosityCollision, Source: source, Sure: Second},
		{ID: "climate.weather.viscosity.integral", Value: ViscosityIntegral, Source: source, Sure: Second},
		{ID: "climate.weather.viscosity.integral-fall", Value: ViscosityIntegralFall, Unit: "K", Source: source, Sure: Second},
		{ID: "climate.weather.diffusivity.scale", Value: DiffusivityScale, Unit: "m²/s", Source: source, Sure: Second},
		{ID: "climate.weather.diffusivity.warmth", Value: DiffusivityWarmth, Unit: "1/K", Source: source, Sure: Second},
		{ID: "climate.weather.diffusivity.power", Value: DiffusivityPower, Source: source, Sure: Second},
		{ID: "climate.weather.saturation.enhanced", Value: WickSaturationEnhanced, Source: source, Sure: Second},
		{ID: "climate.weather.saturation.pressure", Value: WickSaturationPressure, Unit: "1/hPa", Source: source, Sure: Second},
		{ID: "climate.weather.saturation.scale", Value: WickSaturationScale, Unit: "Pa", Source: source, Sure: Second},
		{ID: "climate.weather.saturation.slope", Value: WickSaturationSlope, Source: source, Sure: Second},
		{ID: "climate.weather.saturation.offset", Value: WickSaturationOffset, Unit: "K", Source: source, Sure: Second},
		{ID: "climate.weather.evaporation.constant", Value: EvaporationHeat, Unit: "J/kg", Source: source, Sure: Second},
		{ID: "climate.weather.evaporation.slope", Value: EvaporationHeatSlope, Unit: "J/(kg·K)", Source: source, Sure: Second},
	}
}

// exchangeEntries lists heat and mass exchange with the wind.
func exchangeEntries() []Entry {
	source := Citation{Short: "Liljegren et al. 2008", Full: "Liljegren, Carhart, Lawday, Tschopp, Sharp 2008, Journal of Occupational and Environmental Hygiene 5:645"}
	return []Entry{
		{ID: "climate.weather.sphere.still", Value: SphereStill, Source: source, Sure: Second},
		{ID: "climate.weather.sphere.wind", Value: SphereWind, Source: source, Sure: Second},
		{ID: "climate.weather.sphere.prandtl", Value: SpherePrandtlPower, Source: source, Sure: Second},
		{ID: "climate.weather.cylinder.wind", Value: CylinderWind, Source: source, Sure: Second},
		{ID: "climate.weather.cylinder.wind-power", Value: CylinderWindPower, Source: source, Sure: Second},
		{ID: "climate.weather.cylinder.prandtl", Value: CylinderPrandtlPower, Source: source, Sure: Second},
		{ID: "climate.weather.evaporation.power", Value: EvaporationPower, Source: source, Sure: Second},
		{ID: "climate.weather.wind.least", Value: InstrumentWindLeast, Unit: quantity.MetrePerSecond, Source: source, Sure: Second},
		{ID: "climate.weather.wind.height-ratio", Value: InstrumentHeightRatio, Source: source, Sure: Second},
	}
}

// stabilityEntries lists stability of the air by wind at 10 m and strength of the sun, and the urban.
func stabilityEntries() []Entry {
	source := Citation{Short: "Liljegren et al. 2008", Full: "Liljegren, Carhart, Lawday, Tschopp, Sharp 2008, Journal of Occupational and Environmental Hygiene 5:645"}
	return []Entry{
		{ID: "climate.weather.stability.wind.light", Value: StabilityWindLight, Unit: quantity.MetrePerSecond, Source: source, Sure: Second},
		{ID: "climate.weather.stability.wind.gentle", Value: StabilityWindGentle, Unit: quantity.MetrePerSecond, Source: source, Sure: Second},
		{ID: "climate.weather.stability.wind.moderate", Value: StabilityWindModerate, Unit: quantity.MetrePerSecond, Source: source, Sure: Second},
		{ID: "climate.weather.stability.wind.fresh", Value: StabilityWindFresh, Unit: quantity.MetrePerSecond, Source: source, Sure: Second},
		{ID: "climate.weather.stability.wind.night", Value: StabilityWindNight, Unit: quantity.MetrePerSecond, Source: source, Sure: Memory},
		{ID: "climate.weather.stability.sun.strong", Value: StabilitySunStrong, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Second},
		{ID: "climate.weather.stability.sun.medium", Value: StabilitySunMedium, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Second},
		{ID: "climate.weather.stability.sun.weak", Value: StabilitySunWeak, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Second},
		{ID: "climate.weather.wind.power.unstable", Value: WindPowerUnstable, Source: source, Sure: Second},
		{ID: "climate.weather.wind.power.slight", Value: WindPowerSlight, Source: source, Sure: Second},
		{ID: "climate.weather.wind.power.neutral", Value: WindPowerNeutral, Source: source, Sure: Second},
		{ID: "climate.weather.wind.power.stable", Value: WindPowerStable, Source: source, Sure: Second},
	}
}

// solarEntries lists where the sun counts as down.
func solarEntries() []Entry {
	source := Citation{Short: "Liljegren et al. 2008", Full: "Liljegren, Carhart, Lawday, Tschopp, Sharp 2008, Journal of Occupational and Environmental Hygiene 5:645"}
	return []Entry{
		{ID: "climate.weather.solar.cos-zenith-least", Value: CosZenithLeast, Source: source, Sure: Second},
	}
}
