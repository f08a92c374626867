package evidence

import "ebbwell/internal/quantity"

// Drinking before a session, mL per kg of body mass.
const (
	BeforeEarlyLow   = 5.0 // mL/kg, at least four hours before
	BeforeEarlyHigh  = 7.0 // mL/kg
	BeforeEarlyHours = 4.0 // h
	BeforeLateLow    = 3.0 // mL/kg, two hours before, where no urine came or it is dark
	BeforeLateHigh   = 5.0 // mL/kg
	BeforeLateHours  = 2.0 // h
)

// Drinking during a session.
const (
	PlanAbove         = 90.0  // min, from where a plan may serve better than thirst
	PlanRate          = 1.2   // L/h of sweat, a high rate
	PlanFuel          = 60.0  // g/h of carbohydrate: 1 g/min
	StomachLow        = 1.0   // L/h
	StomachHigh       = 1.2   // L/h
	StomachRunning    = 0.72  // L/h, emptied by runners drinking to match sweat
	LongSession       = 180.0 // min, past it the plan ends with a deficit
	LongSessionAtMost = 1.0   // % of body mass, the least deficit past it
	// CoolerDayShare of the ceiling is what a plan may come to if it is to stay
	// under the low end of the loss 5 °C cooler too, where that end is a fifth to
	// a quarter lower.
	CoolerDayShare = 75.0 // %
	// HiddenLimitStep is what a limit made with the body mass is rounded to where
	// the mass is hidden: 0.2 L of 1 % leave 20 kg open, of 2 % 10 kg.
	HiddenLimitStep = 0.2 // L
)

// Drinking after a session.
const (
	RestoreLow    = 1.25 // L per kg of mass deficit
	RestoreHigh   = 1.5  // L per kg
	RestoreSoon   = 12.0 // h to the next session: at once
	RestoreWithin = 24.0 // h to the next session: still worth it
	RestoreAnyway = 5.0  // % of body mass, from where meals and water are not enough
)

// drinkingEntries lists drinking before, during and after.
func drinkingEntries() []Entry {
	acsm07, own := acsmFluid2007(), ownProposal()
	kenefick := Citation{Short: "Kenefick 2018", Full: "Kenefick 2018, Sports Medicine 48(S1):31"}
	lambert := Citation{Short: "Lambert et al. 2008", Full: "Lambert et al. 2008, International Journal of Sports Medicine 29:878"}
	mccartney := Citation{Short: "McCartney et al. 2017", Full: "McCartney et al. 2017, Sports Medicine Open 3:13"}
	german := Citation{Short: "German Nutrition Society 2020", Full: "German Nutrition Society 2020, position on fluid in sport"}
	stomach := Citation{Code: "memory-stomach"}
	mlkg, lh, h := quantity.MillilitrePerKilogram, quantity.LitrePerHour, quantity.Hour
	return []Entry{
		{ID: "before.early.low", Value: BeforeEarlyLow, Unit: mlkg, Source: acsm07, Sure: Second},
		{ID: "before.early.high", Value: BeforeEarlyHigh, Unit: mlkg, Source: acsm07, Sure: Second},
		{ID: "before.early.hours", Value: BeforeEarlyHours, Unit: h, Source: acsm07, Sure: Second},
		{ID: "before.late.low", Value: BeforeLateLow, Unit: mlkg, Source: acsm07, Sure: Second},
		{ID: "before.late.high", Value: BeforeLateHigh, Unit: mlkg, Source: acsm07, Sure: Second},
		{ID: "before.late.hours", Value: BeforeLateHours, Unit: h, Source: acsm07, Sure: Second},
		{ID: "during.plan-above", Value: PlanAbove, Unit: quantity.Minute, Source: kenefick, Sure: Read},
		{ID: "during.plan-rate", Value: PlanRate, Unit: lh, Source: own, Sure: Proposal},
		{ID: "during.plan-carbohydrate", Value: PlanFuel, Unit: quantity.GramPerHour, Source: kenefick, Sure: Read},
		{ID: "stomach.low", Value: StomachLow, Unit: lh, Source: stomach, Sure: Memory},
		{ID: "stomach.high", Value: StomachHigh, Unit: lh, Source: stomach, Sure: Memory},
		{ID: "stomach.running", Value: StomachRunning, Unit: lh, Source: lambert, Sure: Read},
		{ID: "long-session.from", Value: LongSession, Unit: quantity.Minute, Source: own, Sure: Proposal},
		{ID: "long-session.deficit", Value: LongSessionAtMost, Unit: quantity.PerCent, Source: own, Sure: Proposal},
		{ID: "limit.hidden-step", Value: HiddenLimitStep, Unit: quantity.Litre, Source: own, Sure: Proposal},
		{ID: "cooler-day.share", Value: CoolerDayShare, Unit: quantity.PerCent, Source: own, Sure: Proposal},
		{ID: "after.low", Value: RestoreLow, Unit: quantity.LitrePerKilogram, Source: mccartney, Sure: Read},
		{ID: "after.high", Value: RestoreHigh, Unit: quantity.LitrePerKilogram, Source: mccartney, Sure: Read},
		{ID: "after.soon", Value: RestoreSoon, Unit: h, Source: mccartney, Sure: Read},
		{ID: "after.within", Value: RestoreWithin, Unit: h, Source: german, Sure: Memory},
		{ID: "after.anyway", Value: RestoreAnyway, Unit: quantity.PerCent, Source: german, Sure: Memory},
	}
}
