package evidence

import "ebbwell/internal/quantity"

// The steady heat balance.
const (
	SteadyCore       = 38.3  // °C
	SkinMetabolicMax = 450.0 // W/m²
	OnsetTime        = 10.0  // min
	RangeOnlyAbove   = 3.0   // L/h
)

// What evaporating sweat takes.
const (
	SweatLatent = 0.674 // W·h/g
)

// Highest skin wettedness.
const (
	WettednessUntrained    = 0.72
	WettednessTrained      = 0.84
	WettednessAcclimatised = 0.95
)

// When to test again.
const (
	RetestHotter = 5.0  // °C over every test
	TestAge      = 12.0 // months
	PlanAirReach = 5.0  // °C either way that a page is said to hold for
)

// Regressions of soldiers' sweat, for comparison only.
const (
	SoldierScale          = 147.0  // g/(m²·h)
	SoldierRise           = 0.0012 // m²·h/g
	SoldierNeed           = 27.9
	SoldierCapacityPower  = 0.455
	SoldierLinearNeed     = 1.527
	SoldierLinearCapacity = 0.87
	SoldierNeedLow        = 50.0  // W/m²
	SoldierNeedHigh       = 360.0 // W/m²
	SoldierCapacityLow    = 20.0  // W/m²
	SoldierCapacityHigh   = 525.0 // W/m²
	SoldierAirLow         = 15.0  // °C
	SoldierAirHigh        = 46.0  // °C
	SoldierWindLow        = 0.4   // m/s
	SoldierWindHigh       = 2.5   // m/s
)

// Heat caution beside the WBGT band.
const (
	WettednessWatch = 0.85
	WettednessShown = 2.0  // more is said in words, not as a figure
	CoreWatch       = 39.5 // °C
	CoreStop        = 40.0 // °C
	CoreFollowed    = 41.0 // °C, no body is followed beyond it by the formula
)

// balanceEntries lists the steady heat balance.
func balanceEntries() []Entry {
	source := ownProposal()
	return []Entry{
		{ID: "climate.estimate.core", Value: SteadyCore, Unit: quantity.DegreeCelsius, Source: source, Sure: Proposal},
		{ID: "climate.estimate.skin-metabolic-max", Value: SkinMetabolicMax, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Proposal},
		{ID: "climate.estimate.onset", Value: OnsetTime, Unit: quantity.Minute, Source: source, Sure: Proposal},
		{ID: "climate.estimate.range-only-above", Value: RangeOnlyAbove, Unit: quantity.LitrePerHour, Source: source, Sure: Proposal},
	}
}

// latentEntries lists what evaporating sweat takes.
func latentEntries() []Entry {
	source := Citation{Short: "latent heat of sweat", Full: "Wenger 1972, Journal of Applied Physiology 32:456"}
	return []Entry{
		{ID: "climate.estimate.latent", Value: SweatLatent, Unit: "W·h/g", Source: source, Sure: Memory},
	}
}

// wettednessEntries lists highest skin wettedness.
func wettednessEntries() []Entry {
	source := Citation{Short: "Ravanelli et al. 2018", Full: "Ravanelli et al. 2018, Medicine and Science in Sports and Exercise 50:298"}
	return []Entry{
		{ID: "climate.estimate.wettedness.untrained", Value: WettednessUntrained, Source: source, Sure: Read},
		{ID: "climate.estimate.wettedness.trained", Value: WettednessTrained, Source: source, Sure: Read},
		{ID: "climate.estimate.wettedness.acclimatised", Value: WettednessAcclimatised, Source: source, Sure: Read},
	}
}

// retestEntries lists when to test again.
func retestEntries() []Entry {
	source := ownProposal()
	return []Entry{
		{ID: "climate.retest.hotter", Value: RetestHotter, Unit: quantity.DegreeCelsius, Source: source, Sure: Proposal},
		{ID: "climate.plan.air-reach", Value: PlanAirReach, Unit: quantity.DegreeCelsius, Source: source, Sure: Proposal},
		{ID: "climate.retest.age", Value: TestAge, Unit: "months", Source: source, Sure: Proposal},
	}
}

// militaryEntries lists regressions of soldiers' sweat, for comparison only.
func militaryEntries() []Entry {
	source := Citation{Short: "Gonzalez et al. 2009", Full: "Gonzalez et al. 2009, Journal of Applied Physiology 107:379"}
	return []Entry{
		{ID: "climate.military.scale", Value: SoldierScale, Unit: "g/(m²·h)", Source: source, Sure: Second},
		{ID: "climate.military.rise", Value: SoldierRise, Unit: "m²·h/g", Source: source, Sure: Second},
		{ID: "climate.military.need", Value: SoldierNeed, Source: source, Sure: Second},
		{ID: "climate.military.capacity-power", Value: SoldierCapacityPower, Source: source, Sure: Second},
		{ID: "climate.military.linear.need", Value: SoldierLinearNeed, Source: source, Sure: Second},
		{ID: "climate.military.linear.capacity", Value: SoldierLinearCapacity, Source: source, Sure: Second},
		{ID: "climate.military.domain.need.low", Value: SoldierNeedLow, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Second},
		{ID: "climate.military.domain.need.high", Value: SoldierNeedHigh, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Second},
		{ID: "climate.military.domain.capacity.low", Value: SoldierCapacityLow, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Second},
		{ID: "climate.military.domain.capacity.high", Value: SoldierCapacityHigh, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Second},
		{ID: "climate.military.domain.air.low", Value: SoldierAirLow, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.military.domain.air.high", Value: SoldierAirHigh, Unit: quantity.DegreeCelsius, Source: source, Sure: Second},
		{ID: "climate.military.domain.wind.low", Value: SoldierWindLow, Unit: quantity.MetrePerSecond, Source: source, Sure: Second},
		{ID: "climate.military.domain.wind.high", Value: SoldierWindHigh, Unit: quantity.MetrePerSecond, Source: source, Sure: Second},
	}
}

// heatCautionEntries lists heat caution beside the WBGT band.
func heatCautionEntries() []Entry {
	source := ownProposal()
	stroke := Citation{Short: "ACSM 2007", Full: "Armstrong et al. 2007, Medicine and Science in Sports and Exercise 39:556"}
	return []Entry{
		{ID: "climate.caution.wettedness.watch", Value: WettednessWatch, Source: source, Sure: Proposal},
		{ID: "climate.caution.wettedness.shown", Value: WettednessShown, Source: source, Sure: Proposal},
		{ID: "climate.caution.core.watch", Value: CoreWatch, Unit: quantity.DegreeCelsius, Source: source, Sure: Proposal},
		{ID: "climate.caution.core.stop", Value: CoreStop, Unit: quantity.DegreeCelsius, Source: stroke, Sure: Memory},
		{ID: "climate.caution.core.followed", Value: CoreFollowed, Unit: quantity.DegreeCelsius, Source: source, Sure: Proposal},
	}
}
