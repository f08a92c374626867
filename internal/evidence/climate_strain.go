package evidence

import "ebbwell/internal/quantity"

// The body.
const (
	BodyAreaScale       = 0.202 // m²
	BodyAreaMassPower   = 0.425
	BodyAreaHeightPower = 0.725
	BodyHeatCapacity    = 57.83 // W·min/(kg·K)
	RadiatingSitting    = 0.70
	RadiatingStanding   = 0.77
	RadiatingCrouching  = 0.67
	StartSkin           = 34.1 // °C
	StartCore           = 36.8 // °C
	SkinWeightRest      = 0.3
	SkinWeightFall      = 0.09 // 1/K
	SkinWeightLeast     = 0.1
	CoreRise            = 0.0036 // K·m²/W
	CoreBase            = 36.6   // °C
	RectalCore          = 2.0
	RectalBefore        = 1.962
	RectalConstant      = 1.31 // K
	RectalDivisor       = 9.0
)

// Sweating and its limits.
const (
	SweatMaxOffset                  = 32.0  // W/m²
	SweatMaxLow                     = 250.0 // W/m²
	SweatMaxHigh                    = 400.0 // W/m²
	SweatMaxAcclimatised            = 1.25
	StrainWettednessMax             = 0.85
	StrainWettednessMaxAcclimatised = 1.0
	WettednessSplit                 = 1.0
	WettednessBeyond                = 2.0
	WettednessFull                  = 1.7
	SweatRatioLeast                 = 0.5
	SkinDelay                       = 3.0  // min
	CoreDelay                       = 10.0 // min
	SweatDelay                      = 10.0 // min
	SweatWaterScale                 = 2.67
	SweatWaterDivisor               = 1.8
	RectalLimit                     = 38.0 // °C
	LossLimitMean                   = 0.075
	LossLimitMost                   = 0.05
	NoDrinkFactor                   = 0.6
)

// Air past the body, and what it does to clothing.
const (
	WalkingRise          = 0.0052
	WalkingOffset        = 58.0  // W/m²
	WalkingMax           = 0.7   // m/s
	AirSpeedMax          = 3.0   // m/s
	WalkingCorrectionMax = 1.5   // m/s
	CloInsulation        = 0.155 // m²·K/W
	ClothingAreaRise     = 0.3   // 1/clo
	AirLayer             = 0.111 // m²·K/W
	ClothedScale         = 1.044
	ClothedWindSquare    = 0.066
	ClothedWind          = 0.398
	ClothedWalkSquare    = 0.094
	ClothedWalk          = 0.378
	NudeWindSquare       = 0.047
	NudeWind             = 0.472
	NudeWalkSquare       = 0.117
	NudeWalk             = 0.342
	ClothedFrom          = 0.6 // clo
	NudeUpTo             = 0.2 // clo
	MoistureSquare       = 2.6
	MoistureLinear       = 6.5
	MoistureConstant     = 4.9
	MoistureMax          = 0.9
	LewisRelation        = 16.7 // K/kPa
	ClothingPermeability = 0.38
	ReflectiveShare      = 0.54
	ReflectiveEmissivity = 0.97
	SurfaceEmissivity    = 0.97
)

// Heat to and from the body.
const (
	ExpiredBase          = 28.56 // °C
	ExpiredAir           = 0.115
	ExpiredVapour        = 0.641    // K/kPa
	BreathDry            = 0.001516 // 1/K
	BreathWet            = 0.00127
	BreathWetBase        = 59.34
	BreathWetAir         = 0.53
	BreathWetVapour      = 11.63
	ConvectionStill      = 2.38 // W/(m²·K)
	ConvectionStillPower = 0.25
	ConvectionSlowBase   = 3.5 // W/(m²·K)
	ConvectionSlow       = 5.2
	ConvectionSlowUpTo   = 1.0 // m/s
	ConvectionFast       = 8.7
	ConvectionFastPower  = 0.6
	BlackBody            = 5.67e-8 // W/(m²·K⁴)
	StrainKelvin         = 273.0   // K
)

// Skin temperature.
const (
	SkinClothedBase      = 12.165 // °C
	SkinClothedAir       = 0.02017
	SkinClothedRadiant   = 0.04361
	SkinClothedVapour    = 0.19354 // K/kPa
	SkinClothedWind      = 0.25315
	SkinClothedMetabolic = 0.005346 // K·m²/W
	SkinClothedRectal    = 0.51274
	SkinNudeBase         = 7.191 // °C
	SkinNudeAir          = 0.064
	SkinNudeRadiant      = 0.061
	SkinNudeVapour       = 0.198 // K/kPa
	SkinNudeWind         = 0.348
	SkinNudeRectal       = 0.616
	SkinBetweenSlope     = 2.5 // 1/clo
)

// Where the standard holds.
const (
	StrainAirLow        = 15.0  // °C
	StrainAirHigh       = 50.0  // °C
	StrainMetabolicLow  = 100.0 // W
	StrainMetabolicHigh = 450.0 // W
	StrainVapourHigh    = 4.5   // kPa
	StrainRadiantHigh   = 60.0  // °C
	StrainClothingLow   = 0.1   // clo
	StrainClothingHigh  = 1.0   // clo
)

// iso7933 is the standard these come from.
func iso7933() Citation {
	return Citation{Short: "ISO 7933", Full: "ISO 7933:2004, Ergonomics of the thermal environment: analytical determination and interpretation of heat stress using calculation of the predicted heat strain"}
}

// strainBodyEntries lists the body.
func strainBodyEntries() []Entry {
	source := iso7933()
	return []Entry{
		{ID: "climate.strain.area.scale", Value: BodyAreaScale, Unit: "m²", Source: source, Sure: Second},
		{ID: "climate.strain.area.mass", Value: BodyAreaMassPower, Source: source, Sure: Second},
		{ID: "climate.strain.area.height", Value: BodyAreaHeightPower, Source: source, Sure: Second},
		{ID: "climate.strain.heat-capacity", Value: BodyHeatCapacity, Unit: "W·min/(kg·K)", Source: source, Sure: Second},
		{ID: "climate.strain.radiating.sitting", Value: RadiatingSitting, Source: source, Sure: Second},
		{ID: "climate.strain.radiating.standing", Value: RadiatingStanding, Source: source, Sure: Second},
		{ID: "climate.strain.radiating.crouching", Value: RadiatingCrouching, Source: source, Sure: Second},
		{ID: "climate.strain.start.skin", Value: StartSkin, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.strain.start.core", Value: StartCore, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.strain.skin-weight.rest", Value: SkinWeightRest, Source: source, Sure: Second},
		{ID: "climate.strain.skin-weight.fall", Value: SkinWeightFall, Unit: "1/K", Source: source, Sure: Second},
		{ID: "climate.strain.skin-weight.least", Value: SkinWeightLeast, Source: source, Sure: Second},
		{ID: "climate.strain.core.rise", Value: CoreRise, Unit: "K·m²/W", Source: source, Sure: Second},
		{ID: "climate.strain.core.base", Value: CoreBase, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.strain.rectal.core", Value: RectalCore, Source: source, Sure: Second},
		{ID: "climate.strain.rectal.before", Value: RectalBefore, Source: source, Sure: Second},
		{ID: "climate.strain.rectal.constant", Value: RectalConstant, Unit: "K", Source: source, Sure: Second},
		{ID: "climate.strain.rectal.divisor", Value: RectalDivisor, Source: source, Sure: Second},
	}
}

// strainSweatEntries lists sweating and its limits.
func strainSweatEntries() []Entry {
	source := iso7933()
	return []Entry{
		{ID: "climate.strain.sweat-max.offset", Value: SweatMaxOffset, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Second},
		{ID: "climate.strain.sweat-max.low", Value: SweatMaxLow, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Second},
		{ID: "climate.strain.sweat-max.high", Value: SweatMaxHigh, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Second},
		{ID: "climate.strain.sweat-max.acclimatised", Value: SweatMaxAcclimatised, Source: source, Sure: Second},
		{ID: "climate.strain.wettedness.max", Value: StrainWettednessMax, Source: source, Sure: Second},
		{ID: "climate.strain.wettedness.max-acclimatised", Value: StrainWettednessMaxAcclimatised, Source: source, Sure: Second},
		{ID: "climate.strain.wettedness.split", Value: WettednessSplit, Source: source, Sure: Second},
		{ID: "climate.strain.wettedness.beyond", Value: WettednessBeyond, Source: source, Sure: Second},
		{ID: "climate.strain.wettedness.full", Value: WettednessFull, Source: source, Sure: Second},
		{ID: "climate.strain.sweat-ratio.least", Value: SweatRatioLeast, Source: source, Sure: Second},
		{ID: "climate.strain.delay.skin", Value: SkinDelay, Unit: quantity.Minute, Source: source, Sure: Second},
		{ID: "climate.strain.delay.core", Value: CoreDelay, Unit: quantity.Minute, Source: source, Sure: Second},
		{ID: "climate.strain.delay.sweat", Value: SweatDelay, Unit: quantity.Minute, Source: source, Sure: Second},
		{ID: "climate.strain.water.scale", Value: SweatWaterScale, Source: source, Sure: Second},
		{ID: "climate.strain.water.divisor", Value: SweatWaterDivisor, Source: source, Sure: Second},
		{ID: "climate.strain.limit.rectal", Value: RectalLimit, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.strain.limit.loss-mean", Value: LossLimitMean, Source: source, Sure: Second},
		{ID: "climate.strain.limit.loss-most", Value: LossLimitMost, Source: source, Sure: Second},
		{ID: "climate.strain.limit.no-drink", Value: NoDrinkFactor, Source: source, Sure: Second},
	}
}

// strainClothingEntries lists air past the body, and what it does to clothing.
func strainClothingEntries() []Entry {
	source := iso7933()
	return []Entry{
		{ID: "climate.strain.walking.rise", Value: WalkingRise, Source: source, Sure: Second},
		{ID: "climate.strain.walking.offset", Value: WalkingOffset, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Second},
		{ID: "climate.strain.walking.max", Value: WalkingMax, Unit: quantity.MetrePerSecond, Source: source, Sure: Second},
		{ID: "climate.strain.air-speed.max", Value: AirSpeedMax, Unit: quantity.MetrePerSecond, Source: source, Sure: Second},
		{ID: "climate.strain.walking.correction-max", Value: WalkingCorrectionMax, Unit: quantity.MetrePerSecond, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.clo", Value: CloInsulation, Unit: "m²·K/W", Source: source, Sure: Second},
		{ID: "climate.strain.clothing.area", Value: ClothingAreaRise, Unit: "1/clo", Source: source, Sure: Second},
		{ID: "climate.strain.clothing.air-layer", Value: AirLayer, Unit: "m²·K/W", Source: source, Sure: Second},
		{ID: "climate.strain.clothing.clothed.scale", Value: ClothedScale, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.clothed.wind-square", Value: ClothedWindSquare, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.clothed.wind", Value: ClothedWind, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.clothed.walk-square", Value: ClothedWalkSquare, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.clothed.walk", Value: ClothedWalk, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.nude.wind-square", Value: NudeWindSquare, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.nude.wind", Value: NudeWind, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.nude.walk-square", Value: NudeWalkSquare, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.nude.walk", Value: NudeWalk, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.clothed-from", Value: ClothedFrom, Unit: "clo", Source: source, Sure: Second},
		{ID: "climate.strain.clothing.nude-up-to", Value: NudeUpTo, Unit: "clo", Source: source, Sure: Second},
		{ID: "climate.strain.clothing.moisture.square", Value: MoistureSquare, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.moisture.linear", Value: MoistureLinear, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.moisture.constant", Value: MoistureConstant, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.moisture.max", Value: MoistureMax, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.lewis", Value: LewisRelation, Unit: "K/kPa", Source: source, Sure: Second},
		{ID: "climate.strain.clothing.permeability", Value: ClothingPermeability, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.reflective-share", Value: ReflectiveShare, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.reflective-emissivity", Value: ReflectiveEmissivity, Source: source, Sure: Second},
		{ID: "climate.strain.clothing.emissivity", Value: SurfaceEmissivity, Source: source, Sure: Second},
	}
}

// strainHeatEntries lists heat to and from the body.
func strainHeatEntries() []Entry {
	source := iso7933()
	return []Entry{
		{ID: "climate.strain.breath.base", Value: ExpiredBase, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.strain.breath.air", Value: ExpiredAir, Source: source, Sure: Second},
		{ID: "climate.strain.breath.vapour", Value: ExpiredVapour, Unit: "K/kPa", Source: source, Sure: Second},
		{ID: "climate.strain.breath.dry", Value: BreathDry, Unit: "1/K", Source: source, Sure: Second},
		{ID: "climate.strain.breath.wet", Value: BreathWet, Source: source, Sure: Second},
		{ID: "climate.strain.breath.wet-base", Value: BreathWetBase, Source: source, Sure: Second},
		{ID: "climate.strain.breath.wet-air", Value: BreathWetAir, Source: source, Sure: Second},
		{ID: "climate.strain.breath.wet-vapour", Value: BreathWetVapour, Source: source, Sure: Second},
		{ID: "climate.strain.convection.still", Value: ConvectionStill, Unit: "W/(m²·K)", Source: source, Sure: Second},
		{ID: "climate.strain.convection.still-power", Value: ConvectionStillPower, Source: source, Sure: Second},
		{ID: "climate.strain.convection.slow-base", Value: ConvectionSlowBase, Unit: "W/(m²·K)", Source: source, Sure: Second},
		{ID: "climate.strain.convection.slow", Value: ConvectionSlow, Source: source, Sure: Second},
		{ID: "climate.strain.convection.slow-up-to", Value: ConvectionSlowUpTo, Unit: quantity.MetrePerSecond, Source: source, Sure: Second},
		{ID: "climate.strain.convection.fast", Value: ConvectionFast, Source: source, Sure: Second},
		{ID: "climate.strain.convection.fast-power", Value: ConvectionFastPower, Source: source, Sure: Second},
		{ID: "climate.strain.radiation", Value: BlackBody, Unit: "W/(m²·K⁴)", Source: source, Sure: Second},
		{ID: "climate.strain.kelvin", Value: StrainKelvin, Unit: "K", Source: source, Sure: Second},
	}
}

// strainSkinEntries lists skin temperature.
func strainSkinEntries() []Entry {
	source := iso7933()
	return []Entry{
		{ID: "climate.strain.skin.clothed.base", Value: SkinClothedBase, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.strain.skin.clothed.air", Value: SkinClothedAir, Source: source, Sure: Second},
		{ID: "climate.strain.skin.clothed.radiant", Value: SkinClothedRadiant, Source: source, Sure: Second},
		{ID: "climate.strain.skin.clothed.vapour", Value: SkinClothedVapour, Unit: "K/kPa", Source: source, Sure: Second},
		{ID: "climate.strain.skin.clothed.wind", Value: SkinClothedWind, Source: source, Sure: Second},
		{ID: "climate.strain.skin.clothed.metabolic", Value: SkinClothedMetabolic, Unit: "K·m²/W", Source: source, Sure: Second},
		{ID: "climate.strain.skin.clothed.rectal", Value: SkinClothedRectal, Source: source, Sure: Second},
		{ID: "climate.strain.skin.nude.base", Value: SkinNudeBase, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.strain.skin.nude.air", Value: SkinNudeAir, Source: source, Sure: Second},
		{ID: "climate.strain.skin.nude.radiant", Value: SkinNudeRadiant, Source: source, Sure: Second},
		{ID: "climate.strain.skin.nude.vapour", Value: SkinNudeVapour, Unit: "K/kPa", Source: source, Sure: Second},
		{ID: "climate.strain.skin.nude.wind", Value: SkinNudeWind, Source: source, Sure: Second},
		{ID: "climate.strain.skin.nude.rectal", Value: SkinNudeRectal, Source: source, Sure: Second},
		{ID: "climate.strain.skin.between", Value: SkinBetweenSlope, Unit: "1/clo", Source: source, Sure: Second},
	}
}

// strainDomainEntries lists where the standard holds.
func strainDomainEntries() []Entry {
	source := iso7933()
	return []Entry{
		{ID: "climate.strain.domain.air.low", Value: StrainAirLow, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.strain.domain.air.high", Value: StrainAirHigh, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.strain.domain.metabolic.low", Value: StrainMetabolicLow, Unit: quantity.Watt, Source: source, Sure: Second},
		{ID: "climate.strain.domain.metabolic.high", Value: StrainMetabolicHigh, Unit: quantity.Watt, Source: source, Sure: Second},
		{ID: "climate.strain.domain.vapour.high", Value: StrainVapourHigh, Unit: quantity.Kilopascal, Source: source, Sure: Memory},
		{ID: "climate.strain.domain.radiant.high", Value: StrainRadiantHigh, Unit: quantity.DegreeCelsius, Source: source, Sure: Memory},
		{ID: "climate.strain.domain.clothing.low", Value: StrainClothingLow, Unit: "clo", Source: source, Sure: Memory},
		{ID: "climate.strain.domain.clothing.high", Value: StrainClothingHigh, Unit: "clo", Source: source, Sure: Memory},
	}
}
