package evidence

import "ebbwell/internal/quantity"

// CoverageFactor turns a standard uncertainty into the half width of a 95 %
// range (JCGM 100:2008, table G.1, normal distribution).
const CoverageFactor = 1.96

// What one weighing, one bottle, one glance at the clock is good for in the
// field. None of these is published; each is this program's proposal.
const (
	FieldScaleU      = 0.03 // kg, at least, for one weighing on a field scale
	TowelU           = 0.05 // kg, towel and minimal clothes, on the difference
	KitOnU           = 0.10 // kg, where kit stays on and is not weighed
	ScaleOffsetU     = 0.10 // kg, constant offset of one scale
	BottleWeighingU  = 1.0  // g, one weighing of a bottle
	PouredRelativeU  = 0.05 // of a volume taken from a carton or a cup
	FoodRelativeU    = 0.05 // of a mass eaten
	UrineU           = 10.0 // g, urine or stool caught and weighed
	KitWeighingU     = 0.02 // kg, one weighing of kit apart from the body
	DurationU        = 1.0  // min
	NarrowingWorth   = 0.05 // of the width of a range: below it a change hardly helps
	ExactTimesRemain = 0.25 // of the variance of time, when times are kept to half a minute
)

// How a sweat test differs from one like day to the next. The CV of the field
// rate is worked out from the mean difference of 0.15 L/h between like days: a
// normal spread whose differences average that has a standard deviation of
// 0.15 sqrt(pi)/2 L/h, which is 11 % of the mean rate of 1.21 L/h.
const (
	DayToDayRateCV = 0.11  // field sweat rate; see below
	DayToDayRate   = 0.15  // L/h, same athlete, same WBGT band, on average
	LocalSodiumCV  = 0.104 // local sodium, repeated laboratory tests
)

// uncertaintyEntries lists what ranges are made of.
func uncertaintyEntries() []Entry {
	own := ownProposal()
	hayden := Citation{Short: "Hayden 2004", Full: "Hayden et al. 2004, European Journal of Applied Physiology 91:748"}
	ours := Citation{Code: "proposal-day"}
	smith := Citation{Short: "Smith et al. 2021", Full: "Smith, Bello, Price 2021, Nutrients 13:1807"}
	return []Entry{
		{ID: "uncertainty.coverage-factor", Value: CoverageFactor, Source: jcgm100(), Sure: Read},
		{ID: "uncertainty.scale", Value: FieldScaleU, Unit: quantity.Kilogram, Source: own, Sure: Proposal},
		{ID: "uncertainty.towel", Value: TowelU, Unit: quantity.Kilogram, Source: own, Sure: Proposal},
		{ID: "uncertainty.kit-on", Value: KitOnU, Unit: quantity.Kilogram, Source: own, Sure: Proposal},
		{ID: "uncertainty.scale-offset", Value: ScaleOffsetU, Unit: quantity.Kilogram, Source: own, Sure: Proposal},
		{ID: "uncertainty.bottle", Value: BottleWeighingU, Unit: quantity.Gram, Source: own, Sure: Proposal},
		{ID: "uncertainty.poured", Value: PouredRelativeU, Source: own, Sure: Proposal},
		{ID: "uncertainty.food", Value: FoodRelativeU, Source: own, Sure: Proposal},
		{ID: "uncertainty.urine", Value: UrineU, Unit: quantity.Gram, Source: own, Sure: Proposal},
		{ID: "uncertainty.kit-weighing", Value: KitWeighingU, Unit: quantity.Kilogram, Source: own, Sure: Proposal},
		{ID: "uncertainty.duration", Value: DurationU, Unit: quantity.Minute, Source: own, Sure: Proposal},
		{ID: "uncertainty.narrowing-worth", Value: NarrowingWorth, Source: own, Sure: Proposal},
		{ID: "uncertainty.exact-times", Value: ExactTimesRemain, Source: own, Sure: Proposal},
		{ID: "day-to-day.rate.cv", Value: DayToDayRateCV, Source: ours, Sure: Proposal},
		{ID: "day-to-day.rate", Value: DayToDayRate, Unit: quantity.LitrePerHour, Source: smith, Sure: Read},
		{ID: "day-to-day.sodium.cv", Value: LocalSodiumCV, Source: hayden, Sure: Read},
	}
}

// ownProposal is the source of what this program proposes itself.
func ownProposal() Citation {
	return Citation{Code: "proposal"}
}

// jcgm100 is the guide to uncertainty.
func jcgm100() Citation {
	return Citation{Short: "JCGM 100:2008", Full: "JCGM 100:2008, Evaluation of measurement data: guide to the expression of uncertainty in measurement"}
}
