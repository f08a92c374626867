package evidence

import "ebbwell/internal/quantity"

// SweatDensity turns the balance, which adds kilograms, into litres.
const SweatDensity = 1.0 // kg/L

// Respiratory water and gas exchange, the mass that leaves without being sweat.
const (
	RespiratoryCoefficient = 0.019 // g of water per L of oxygen and mmHg
	RespiratoryVapour      = 44.0  // mmHg, vapour pressure of expired air
	CarbonDioxideMass      = 44.0  // g/mol
	OxygenMass             = 32.0  // g/mol
	MolarGasVolume         = 22.4  // L/mol, STPD
	OxygenEnergySlope      = 0.23
	OxygenEnergyBase       = 0.77
	OxygenEnergyScale      = 21166.0 // J per L of oxygen
	CombinedCorrection     = 0.20    // g per kcal, both losses at once
	CombinedCorrectionHigh = 0.22    // g per kcal, at 5 mmHg vapour pressure
	CombinedCorrectionLow  = 0.14    // g per kcal, at 25 mmHg
	UsualRER               = 0.92    // where the exchange ratio is not known
	MillimetresPerKPa      = 7.5006  // mmHg
	JoulesPerKilocalorie   = 4184.0
)

// What the two corrections are made from where little is known of the effort, and
// how well the energy behind them is known, in the correction as in the estimate.
const (
	EffortNotKnownMet = 6.0  // MET of a session of which nothing is known, taken as a rating
	EnergyRelativeU   = 0.10 // of an energy given without an error
	// CombinedRelativeU is that of the single figure: 0.22 to 0.14 as a rectangle
	// about 0.20, whose half width is √3 standard uncertainties.
	CombinedRelativeU = (CombinedCorrectionHigh - CombinedCorrectionLow) / 2 / rectangle / CombinedCorrection
	rectangle         = 1.7320508075688772
)

// The field method: how far an uncorrected balance is off, and by how much its
// range reaches down for that.
const (
	UncorrectedBias = 0.20 // g per kcal of the session, at every temperature
)

// What leaving something out does to the sweat loss, for the words beside a
// sheet that is not complete.
const (
	UrineMissingLow  = 0.1 // kg too high
	UrineMissingHigh = 0.3 // kg too high
	DrinkMissingLow  = 0.2 // kg too low
	DrinkMissingHigh = 1.0 // kg too low
	KitMissingLow    = 0.1 // kg too low
	KitMissingHigh   = 0.3 // kg too low
)

// Oxygen uptake from what was done.
const (
	MetOxygen          = 3.5  // mL/kg/min in one MET
	RunningBaseOxygen  = 3.5  // mL/kg/min
	RunningLevelOxygen = 0.2  // mL/kg/min per m/min
	RunningGradeOxygen = 0.9  // mL/kg/min per m/min and grade
	CyclingBaseOxygen  = 7.0  // mL/kg/min
	CyclingPowerOxygen = 10.8 // mL/min per W
	MetRelativeU       = 0.20 // of an uptake from the table of activities
	RunningRelativeU   = 0.10 // of an uptake from running speed
	PowerRelativeU     = 0.07 // of an uptake from pedal or rowing power
	EffortRestMet      = 2.0  // MET at effort 0
	EffortStepMet      = 1.0  // MET per step of effort
	EffortRelativeU    = 0.35 // of an uptake from an effort rating
)

// The deficit at the end of a session, % of body mass.
const (
	DeficitAim          = 2.0 // the default limit, a setting
	DeficitSelfPaced    = 4.0 // no harm found up to here when pace is free
	DeficitHarmHeatLow  = 2.0 // blinded trials in heat find harm from here
	DeficitHarmHeatHigh = 3.0
	DeficitAimHot       = 2.0
	DeficitAimCold      = 3.0
	NearLoss            = 90.0 // % of the loss replaced, from where over-drinking is spoken of
)

// hydrationEntries lists the mass balance and the deficit.
func hydrationEntries() []Entry {
	list := correctionEntries()
	list = append(list, oxygenEntries()...)
	return append(list, deficitEntries()...)
}

// correctionEntries lists respiratory water, gas exchange and the field method.
func correctionEntries() []Entry {
	own := ownProposal()
	mitchell := Citation{Short: "Mitchell et al. 1972", Full: "Mitchell, Nadel, Stolwijk 1972, Journal of Applied Physiology 32:474"}
	parsons := Citation{Short: "Parsons 1993", Full: "Parsons 1993, Human Thermal Environments"}
	single := Citation{Short: "Cheuvront & Montain 2017", Full: "Cheuvront, Montain 2017, Experimental Physiology 102:1047"}
	gas := Citation{Code: "gas-exchange"}
	perKcal := quantity.GramPerKilocalorie
	return []Entry{
		{ID: "balance.density", Value: SweatDensity, Unit: "kg/L", Source: baker2017(), Sure: Read},
		{ID: "respiratory.coefficient", Value: RespiratoryCoefficient, Unit: "g/(L·mmHg)", Source: mitchell, Sure: Read},
		{ID: "respiratory.vapour", Value: RespiratoryVapour, Unit: "mmHg", Source: mitchell, Sure: Read},
		{ID: "exchange.carbon-dioxide", Value: CarbonDioxideMass, Unit: "g/mol", Source: gas, Sure: Memory},
		{ID: "exchange.oxygen", Value: OxygenMass, Unit: "g/mol", Source: gas, Sure: Memory},
		{ID: "exchange.volume", Value: MolarGasVolume, Unit: "L/mol", Source: gas, Sure: Memory},
		{ID: "energy.slope", Value: OxygenEnergySlope, Source: parsons, Sure: Read},
		{ID: "energy.base", Value: OxygenEnergyBase, Source: parsons, Sure: Read},
		{ID: "energy.scale", Value: OxygenEnergyScale, Unit: "J/L", Source: parsons, Sure: Read},
		{ID: "correction.combined", Value: CombinedCorrection, Unit: perKcal, Source: single, Sure: Second},
		{ID: "correction.combined.high", Value: CombinedCorrectionHigh, Unit: perKcal, Source: mitchell, Sure: Derived},
		{ID: "correction.combined.low", Value: CombinedCorrectionLow, Unit: perKcal, Source: mitchell, Sure: Derived},
		{ID: "correction.combined.u", Value: CombinedRelativeU, Source: mitchell, Sure: Derived},
		{ID: "correction.rer", Value: UsualRER, Source: own, Sure: Proposal},
		{ID: "unit.mmhg-per-kpa", Value: MillimetresPerKPa, Unit: "mmHg/kPa", Source: unitDefinition(), Sure: Read},
		{ID: "unit.joule-per-kcal", Value: JoulesPerKilocalorie, Unit: "J/kcal", Source: unitDefinition(), Sure: Memory},
		{ID: "correction.effort-not-known", Value: EffortNotKnownMet, Unit: quantity.Met, Source: own, Sure: Proposal},
		{ID: "correction.energy.u", Value: EnergyRelativeU, Source: own, Sure: Proposal},
		{ID: "uncorrected.bias", Value: UncorrectedBias, Unit: perKcal, Source: own, Sure: Proposal},
		{ID: "missing.urine.low", Value: UrineMissingLow, Unit: quantity.Kilogram, Source: own, Sure: Proposal},
		{ID: "missing.urine.high", Value: UrineMissingHigh, Unit: quantity.Kilogram, Source: own, Sure: Proposal},
		{ID: "missing.drink.low", Value: DrinkMissingLow, Unit: quantity.Kilogram, Source: own, Sure: Proposal},
		{ID: "missing.drink.high", Value: DrinkMissingHigh, Unit: quantity.Kilogram, Source: own, Sure: Proposal},
		{ID: "missing.kit.low", Value: KitMissingLow, Unit: quantity.Kilogram, Source: own, Sure: Proposal},
		{ID: "missing.kit.high", Value: KitMissingHigh, Unit: quantity.Kilogram, Source: own, Sure: Proposal},
	}
}

// oxygenEntries lists oxygen uptake from what was done.
func oxygenEntries() []Entry {
	own := ownProposal()
	acsm := Citation{Short: "ACSM metabolic equations", Full: "American College of Sports Medicine, metabolic equations for running and leg cycling"}
	met := Citation{Short: "Ainsworth et al. 2011", Full: "Ainsworth et al. 2011, Medicine and Science in Sports and Exercise 43:1575"}
	const perKg, perWatt = quantity.Unit("mL/(kg·min)"), quantity.Unit("mL/(min·W)")
	return []Entry{
		{ID: "oxygen.met", Value: MetOxygen, Unit: perKg, Source: met, Sure: Read},
		{ID: "oxygen.met.u", Value: MetRelativeU, Source: own, Sure: Proposal},
		{ID: "oxygen.running.base", Value: RunningBaseOxygen, Unit: perKg, Source: acsm, Sure: Read},
		{ID: "oxygen.running.level", Value: RunningLevelOxygen, Unit: "mL/(kg·m)", Source: acsm, Sure: Read},
		{ID: "oxygen.running.grade", Value: RunningGradeOxygen, Unit: "mL/(kg·m)", Source: acsm, Sure: Read},
		{ID: "oxygen.running.u", Value: RunningRelativeU, Source: own, Sure: Proposal},
		{ID: "oxygen.cycling.base", Value: CyclingBaseOxygen, Unit: perKg, Source: acsm, Sure: Memory},
		{ID: "oxygen.cycling.power", Value: CyclingPowerOxygen, Unit: perWatt, Source: acsm, Sure: Memory},
		{ID: "oxygen.power.u", Value: PowerRelativeU, Source: own, Sure: Proposal},
		{ID: "oxygen.effort.base", Value: EffortRestMet, Unit: quantity.Met, Source: own, Sure: Proposal},
		{ID: "oxygen.effort.step", Value: EffortStepMet, Unit: quantity.Met, Source: own, Sure: Proposal},
		{ID: "oxygen.effort.u", Value: EffortRelativeU, Source: own, Sure: Proposal},
	}
}

// deficitEntries lists both views of how far a deficit may go.
func deficitEntries() []Entry {
	own := ownProposal()
	goulet := Citation{Short: "Goulet 2013", Full: "Goulet 2013, British Journal of Sports Medicine 47:679"}
	james := Citation{Short: "James et al. 2019", Full: "James et al. 2019, Sports Medicine 49(S2):103, a review of methods"}
	pc := quantity.PerCent
	return []Entry{
		{ID: "deficit.aim", Value: DeficitAim, Unit: pc, Source: acsmFluid2007(), Sure: Read},
		{ID: "deficit.view.self-paced", Value: DeficitSelfPaced, Unit: pc, Source: goulet, Sure: Read},
		{ID: "deficit.view.heat.low", Value: DeficitHarmHeatLow, Unit: pc, Source: james, Sure: Memory},
		{ID: "deficit.view.heat.high", Value: DeficitHarmHeatHigh, Unit: pc, Source: james, Sure: Memory},
		{ID: "deficit.aim.hot", Value: DeficitAimHot, Unit: pc, Source: own, Sure: Proposal},
		{ID: "deficit.aim.cold", Value: DeficitAimCold, Unit: pc, Source: own, Sure: Proposal},
		{ID: "deficit.near-loss", Value: NearLoss, Unit: pc, Source: own, Sure: Proposal},
	}
}

// acsmFluid2007 is the position stand on exercise and fluid replacement.
func acsmFluid2007() Citation {
	return Citation{Short: "ACSM 2007", Full: "Sawka et al. 2007, Medicine and Science in Sports and Exercise 39:377"}
}

// unitDefinition is the source of exact or conventional unit conversions.
func unitDefinition() Citation {
	return Citation{Code: "units"}
}
