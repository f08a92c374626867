package evidence

import "ebbwell/internal/quantity"

// Acclimatisation to heat.
const (
	AcclimatisationMost = 7.0  // days
	AcclimatisationDays = 14.0 // days
	SodiumFallsFrom     = 3.0  // days
	RateRisesFrom       = 7.0  // days
	FirstRetestFrom     = 5.0  // days
	FirstRetestUntil    = 7.0  // days
	SecondRetestFrom    = 10.0 // days
	SecondRetestUntil   = 14.0 // days
)

// The climate table and the course of a day.
const (
	MissingMaxAdds = 5.0  // °C
	HotDayAdds     = 5.0  // °C
	HumidityCap    = 98.0 // %
	DayBegins      = 6.0  // h
	DaySpan        = 18.0 // h
)

// What a trip's page may print as an amount.
const (
	EstimateTooWide = 3.0 // high end of a rate over its low end
)

// Packing.
const (
	PackingMarginLow  = 0.15
	PackingMarginHigh = 0.20
	HandLiquidMax     = 100.0  // mL
	HandLiquidTotal   = 1000.0 // mL
	FreshWater        = 50.0   // g in 100 g of a food
)

// Water beside what sessions need.
const (
	DailyDrinkingWater = 2.0 // L
)

// Fluid in the air.
const (
	FlightFluidLow  = 100.0 // mL/h
	FlightFluidHigh = 300.0 // mL/h
)

// acclimatisationEntries lists acclimatisation to heat.
func acclimatisationEntries() []Entry {
	source := Citation{Code: "acclimatisation"}
	return []Entry{
		{ID: "climate.acclimatisation.most", Value: AcclimatisationMost, Unit: "days", Source: source, Sure: Read},
		{ID: "climate.acclimatisation.full", Value: AcclimatisationDays, Unit: "days", Source: source, Sure: Read},
		{ID: "climate.acclimatisation.sodium-falls", Value: SodiumFallsFrom, Unit: "days", Source: source, Sure: Read},
		{ID: "climate.acclimatisation.rate-rises", Value: RateRisesFrom, Unit: "days", Source: source, Sure: Read},
		{ID: "climate.acclimatisation.retest.first.from", Value: FirstRetestFrom, Unit: "days", Source: source, Sure: Memory},
		{ID: "climate.acclimatisation.retest.first.until", Value: FirstRetestUntil, Unit: "days", Source: source, Sure: Memory},
		{ID: "climate.acclimatisation.retest.second.from", Value: SecondRetestFrom, Unit: "days", Source: source, Sure: Memory},
		{ID: "climate.acclimatisation.retest.second.until", Value: SecondRetestUntil, Unit: "days", Source: source, Sure: Memory},
	}
}

// climateTableEntries lists the climate table and the course of a day.
func climateTableEntries() []Entry {
	source := ownProposal()
	return []Entry{
		{ID: "climate.climate-table.missing-max", Value: MissingMaxAdds, Unit: quantity.DegreeCelsius, Source: source, Sure: Proposal},
		{ID: "climate.climate-table.hot-day", Value: HotDayAdds, Unit: quantity.DegreeCelsius, Source: source, Sure: Proposal},
		{ID: "climate.climate-table.humidity-cap", Value: HumidityCap, Unit: quantity.PerCent, Source: source, Sure: Proposal},
		{ID: "climate.climate-table.day-begins", Value: DayBegins, Unit: quantity.Hour, Source: source, Sure: Proposal},
		{ID: "climate.estimate.too-wide", Value: EstimateTooWide, Source: source, Sure: Proposal},
		{ID: "climate.climate-table.day-span", Value: DaySpan, Unit: quantity.Hour, Source: source, Sure: Proposal},
	}
}

// packingEntries lists packing.
func packingEntries() []Entry {
	source := Citation{Code: "packing"}
	return []Entry{
		{ID: "climate.packing.margin.low", Value: PackingMarginLow, Source: source, Sure: Memory},
		{ID: "climate.packing.margin.high", Value: PackingMarginHigh, Source: source, Sure: Memory},
		{ID: "climate.packing.hand.liquid", Value: HandLiquidMax, Unit: quantity.Millilitre, Source: source, Sure: Practice},
		{ID: "climate.packing.fresh-water", Value: FreshWater, Unit: quantity.Gram, Source: ownProposal(), Sure: Proposal},
		{ID: "climate.packing.hand.total", Value: HandLiquidTotal, Unit: quantity.Millilitre, Source: source, Sure: Practice},
	}
}

// dailyWaterEntries lists water beside what sessions need.
func dailyWaterEntries() []Entry {
	source := Citation{Short: "EFSA 2010", Full: "EFSA 2010, Scientific opinion on dietary reference values for water, EFSA Journal 8(3):1459"}
	return []Entry{
		{ID: "climate.packing.water.daily", Value: DailyDrinkingWater, Unit: quantity.Litre, Source: source, Sure: Memory},
	}
}

// flightEntries lists fluid in the air.
func flightEntries() []Entry {
	source := Citation{Code: "flight"}
	return []Entry{
		{ID: "climate.flight.fluid.low", Value: FlightFluidLow, Unit: quantity.MillilitrePerHour, Source: source, Sure: Second},
		{ID: "climate.flight.fluid.high", Value: FlightFluidHigh, Unit: quantity.MillilitrePerHour, Source: source, Sure: Second},
	}
}
