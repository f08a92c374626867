package evidence

import "ebbwell/internal/quantity"

// Plasma sodium after a session (Nguyen and Kurtz), mmol/L.
const (
	NguyenKurtzOffset = 23.8
	NguyenKurtzSlope  = 1.03
	PlasmaSodium      = 140.0 // assumed before, where it was not measured
	PlasmaSodiumU     = 2.0
	Hyponatraemia     = 135.0 // below it
	// The equation is good for a change of body mass from -4 to 0 %; at +2 %
	// it reads 2.6 mmol/L low.
	PlasmaGoodFrom = -4.0
	PlasmaGoodTo   = 0.0
	AdultAge       = 18.0
	// GainToBelieve is the gain of body mass up to which a refused pair of
	// weighings still raises the flag of a gain; beyond it somebody mistyped.
	GainToBelieve = 10.0 // %
)

// Total body water of adults, L, from age in years, height in cm, mass in kg.
const (
	WaterMenBase     = 2.447
	WaterMenAge      = 0.09516
	WaterMenHeight   = 0.1074
	WaterMenMass     = 0.3362
	WaterWomenBase   = -2.097
	WaterWomenHeight = 0.1069
	WaterWomenMass   = 0.2466
	WaterMenU        = 3.76 // L, standard error of the estimate
	WaterWomenU      = 3.60
)

// overdrinkingEntries lists plasma sodium and body water.
func overdrinkingEntries() []Entry {
	watson := Citation{Short: "Watson et al. 1980", Full: "Watson et al. 1980, American Journal of Clinical Nutrition 33:27"}
	baker := Citation{Short: "Baker et al. 2008", Full: "Baker, Lang, Kenney 2008, Journal of Applied Physiology 105:91"}
	consensus := Citation{Short: "EAH consensus 2015", Full: "Hew-Butler et al. 2015, Clinical Journal of Sport Medicine 25:303"}
	mmol, pc, l := quantity.MillimolePerLitre, quantity.PerCent, quantity.Litre
	return []Entry{
		{ID: "plasma.offset", Value: NguyenKurtzOffset, Unit: mmol, Source: nguyenKurtz(), Sure: Read},
		{ID: "plasma.slope", Value: NguyenKurtzSlope, Source: nguyenKurtz(), Sure: Read},
		{ID: "plasma.before", Value: PlasmaSodium, Unit: mmol, Source: ownProposal(), Sure: Proposal},
		{ID: "plasma.before.u", Value: PlasmaSodiumU, Unit: mmol, Source: ownProposal(), Sure: Proposal},
		{ID: "plasma.hyponatraemia", Value: Hyponatraemia, Unit: mmol, Source: consensus, Sure: Read},
		{ID: "plasma.good.from", Value: PlasmaGoodFrom, Unit: pc, Source: baker, Sure: Read},
		{ID: "plasma.good.to", Value: PlasmaGoodTo, Unit: pc, Source: baker, Sure: Read},
		{ID: "plasma.gain.believed", Value: GainToBelieve, Unit: pc, Source: ownProposal(), Sure: Proposal},
		{ID: "plasma.adult", Value: AdultAge, Unit: "years", Source: ownProposal(), Sure: Proposal},
		{ID: "body-water.men.base", Value: WaterMenBase, Unit: l, Source: watson, Sure: Read},
		{ID: "body-water.men.age", Value: WaterMenAge, Unit: "L/year", Source: watson, Sure: Read},
		{ID: "body-water.men.height", Value: WaterMenHeight, Unit: "L/cm", Source: watson, Sure: Read},
		{ID: "body-water.men.mass", Value: WaterMenMass, Unit: "L/kg", Source: watson, Sure: Read},
		{ID: "body-water.men.u", Value: WaterMenU, Unit: l, Source: watson, Sure: Memory},
		{ID: "body-water.women.base", Value: WaterWomenBase, Unit: l, Source: watson, Sure: Read},
		{ID: "body-water.women.height", Value: WaterWomenHeight, Unit: "L/cm", Source: watson, Sure: Read},
		{ID: "body-water.women.mass", Value: WaterWomenMass, Unit: "L/kg", Source: watson, Sure: Read},
		{ID: "body-water.women.u", Value: WaterWomenU, Unit: l, Source: watson, Sure: Memory},
	}
}

// nguyenKurtz is the equation for plasma sodium.
func nguyenKurtz() Citation {
	return Citation{Short: "Nguyen & Kurtz", Full: "Nguyen, Kurtz: quantitative interrelationship of plasma sodium, exchangeable ions and body water"}
}
