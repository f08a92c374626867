package evidence

import "ebbwell/internal/quantity"

// Carbohydrate during a session, by its length.
const (
	FuelNoneBelow      = 45.0  // min, nothing needed under it
	FuelRinseBelow     = 75.0  // min, mouth rinse to small amounts under it when hard
	FuelLongAbove      = 150.0 // min, up to the high figure above it
	FuelSmallHigh      = 30.0  // g/h
	FuelMiddleLow      = 30.0  // g/h
	FuelMiddleHigh     = 60.0  // g/h
	FuelLongHigh       = 90.0  // g/h, glucose with fructose
	FuelStopStartLow   = 45.0  // g/h, hard intermittent play
	FuelStopStartHigh  = 60.0  // g/h
	FuelStopStartFrom  = 90.0  // min
	FuelStopStartUntil = 120.0 // min
)

// Sources and strength of carbohydrate.
const (
	OneSourceHigh         = 60.0  // g/h from glucose alone
	FructoseToGlucoseLow  = 0.5   // g per g: 2 to 1
	FructoseToGlucoseHigh = 0.8   // g per g: 1 to 0.8
	StrengthLow           = 4.0   // g per 100 mL
	StrengthHigh          = 8.0   // g per 100 mL, emptying slows above it
	GutTrainingEvery      = 20.0  // min
	GutTrainingWeeks      = 2.0   // weeks at the aim's dose
	StudiedHigh           = 120.0 // g/h, trials in trained athletes with gut training; not advised
)

// Carbohydrate before and after.
const (
	FuelBeforeLow   = 1.0  // g/kg in the hours before
	FuelBeforeHigh  = 4.0  // g/kg
	FuelBeforeFrom  = 1.0  // h before
	FuelBeforeUntil = 4.0  // h before
	FuelBeforeOver  = 60.0 // min, for sessions longer than this
	FuelAfterLow    = 1.0  // g/kg/h
	FuelAfterHigh   = 1.2  // g/kg/h
	FuelAfterHours  = 4.0  // h
	FuelAfterWithin = 8.0  // h to the next session
)

// Effort classes of a rating from 0 to 10.
const (
	EffortModerateFrom = 4.0
	EffortHardFrom     = 7.0
)

// What is dissolved in a drink.
const (
	GlucoseMolarMass    = 180.16 // g/mol, fructose too
	SucroseMolarMass    = 342.30 // g/mol, lactose and maltose too
	SaltMolarMass       = 58.44  // g/mol, NaCl
	PotassiumSaltMass   = 74.55  // g/mol, KCl
	CitrateMolarMass    = 294.10 // g/mol, trisodium citrate dihydrate
	PotassiumMolarMass  = 39.098 // g/mol
	SaltIons            = 2.0
	CitrateIons         = 4.0
	DextroseEquivalent  = 15.0  // of a maltodextrin nobody measured
	SugarSpecificVolume = 0.62  // mL per g of dissolved sugar
	UsualBottle         = 500.0 // mL, the portion of a drink made up
	IsotonicLow         = 270.0
	IsotonicHigh        = 330.0
)

// fuelEntries lists carbohydrate and drinks.
func fuelEntries() []Entry {
	list := carbohydrateEntries()
	list = append(list, sourceEntries()...)
	list = append(list, carbohydrateAroundEntries()...)
	return append(list, soluteEntries()...)
}

// carbohydrateEntries lists the bands during a session.
func carbohydrateEntries() []Entry {
	acsm, own, practice := acsmNutrition2016(), ownProposal(), commonPractice()
	minutes, gh := quantity.Minute, quantity.GramPerHour
	return []Entry{
		{ID: "fuel.none-below", Value: FuelNoneBelow, Unit: minutes, Source: acsm, Sure: Second},
		{ID: "fuel.rinse-below", Value: FuelRinseBelow, Unit: minutes, Source: acsm, Sure: Second},
		{ID: "fuel.long-above", Value: FuelLongAbove, Unit: minutes, Source: acsm, Sure: Second},
		{ID: "fuel.small.high", Value: FuelSmallHigh, Unit: gh, Source: acsm, Sure: Second},
		{ID: "fuel.middle.low", Value: FuelMiddleLow, Unit: gh, Source: acsm, Sure: Second},
		{ID: "fuel.middle.high", Value: FuelMiddleHigh, Unit: gh, Source: acsm, Sure: Second},
		{ID: "fuel.long.high", Value: FuelLongHigh, Unit: gh, Source: acsm, Sure: Second},
		{ID: "fuel.stop-start.low", Value: FuelStopStartLow, Unit: gh, Source: practice, Sure: Practice},
		{ID: "fuel.stop-start.high", Value: FuelStopStartHigh, Unit: gh, Source: practice, Sure: Practice},
		{ID: "fuel.stop-start.from", Value: FuelStopStartFrom, Unit: minutes, Source: practice, Sure: Practice},
		{ID: "fuel.stop-start.until", Value: FuelStopStartUntil, Unit: minutes, Source: practice, Sure: Practice},
		{ID: "effort.moderate-from", Value: EffortModerateFrom, Source: own, Sure: Proposal},
		{ID: "effort.hard-from", Value: EffortHardFrom, Source: own, Sure: Proposal},
	}
}

// sourceEntries lists sources, strength and gut training.
func sourceEntries() []Entry {
	jeukendrup := Citation{Short: "Jeukendrup 2014", Full: "Jeukendrup 2014, Sports Medicine 44(S1):25"}
	emptying := Citation{Short: "Bartoli; Murray", Full: "Bartoli; Murray: gastric emptying of carbohydrate drinks"}
	costa := Citation{Short: "Costa et al. 2017", Full: "Costa et al. 2017, Applied Physiology, Nutrition and Metabolism 42:547"}
	gPer100 := quantity.Unit("g/100 mL")
	return []Entry{
		{ID: "fuel.one-source", Value: OneSourceHigh, Unit: quantity.GramPerHour, Source: jeukendrup, Sure: Second},
		{ID: "fuel.fructose-ratio.low", Value: FructoseToGlucoseLow, Source: jeukendrup, Sure: Memory},
		{ID: "fuel.fructose-ratio.high", Value: FructoseToGlucoseHigh, Source: jeukendrup, Sure: Memory},
		{ID: "drink.strength.low", Value: StrengthLow, Unit: gPer100, Source: emptying, Sure: Memory},
		{ID: "drink.strength.high", Value: StrengthHigh, Unit: gPer100, Source: emptying, Sure: Memory},
		{ID: "gut-training.every", Value: GutTrainingEvery, Unit: quantity.Minute, Source: costa, Sure: Read},
		{ID: "gut-training.weeks", Value: GutTrainingWeeks, Unit: "weeks", Source: costa, Sure: Read},
		{ID: "fuel.studied.high", Value: StudiedHigh, Unit: quantity.GramPerHour, Source: studied(), Sure: Memory},
	}
}

// carbohydrateAroundEntries lists carbohydrate before and after.
func carbohydrateAroundEntries() []Entry {
	acsm := acsmNutrition2016()
	gkg, gkgh, h := quantity.GramPerKilogram, quantity.Unit("g/(kg·h)"), quantity.Hour
	return []Entry{
		{ID: "fuel.before.low", Value: FuelBeforeLow, Unit: gkg, Source: acsm, Sure: Read},
		{ID: "fuel.before.high", Value: FuelBeforeHigh, Unit: gkg, Source: acsm, Sure: Read},
		{ID: "fuel.before.from", Value: FuelBeforeFrom, Unit: h, Source: acsm, Sure: Read},
		{ID: "fuel.before.until", Value: FuelBeforeUntil, Unit: h, Source: acsm, Sure: Read},
		{ID: "fuel.before.over", Value: FuelBeforeOver, Unit: quantity.Minute, Source: acsm, Sure: Read},
		{ID: "fuel.after.low", Value: FuelAfterLow, Unit: gkgh, Source: acsm, Sure: Memory},
		{ID: "fuel.after.high", Value: FuelAfterHigh, Unit: gkgh, Source: acsm, Sure: Memory},
		{ID: "fuel.after.hours", Value: FuelAfterHours, Unit: h, Source: acsm, Sure: Memory},
		{ID: "fuel.after.within", Value: FuelAfterWithin, Unit: h, Source: acsm, Sure: Memory},
	}
}

// soluteEntries lists molar masses and osmolality bands.
func soluteEntries() []Entry {
	chemistry := Citation{Code: "molar-weights"}
	solution := Citation{Code: "sucrose"}
	isotonic := Citation{Short: "EU advice in Stasiuk & Przybyłowski 2017", Full: "European Union advice, quoted in Stasiuk, Przybyłowski 2017, Polish Journal of Natural Sciences 32:161"}
	own := ownProposal()
	mol, osm := quantity.Unit("g/mol"), quantity.MilliosmolePerKilogram
	return []Entry{
		{ID: "molar-mass.glucose", Value: GlucoseMolarMass, Unit: mol, Source: chemistry, Sure: Memory},
		{ID: "molar-mass.sucrose", Value: SucroseMolarMass, Unit: mol, Source: chemistry, Sure: Memory},
		{ID: "molar-mass.salt", Value: SaltMolarMass, Unit: mol, Source: chemistry, Sure: Memory},
		{ID: "molar-mass.potassium-chloride", Value: PotassiumSaltMass, Unit: mol, Source: chemistry, Sure: Memory},
		{ID: "molar-mass.citrate", Value: CitrateMolarMass, Unit: mol, Source: chemistry, Sure: Memory},
		{ID: "molar-mass.potassium", Value: PotassiumMolarMass, Unit: mol, Source: chemistry, Sure: Memory},
		{ID: "ions.salt", Value: SaltIons, Source: chemistry, Sure: Memory},
		{ID: "ions.citrate", Value: CitrateIons, Source: chemistry, Sure: Memory},
		{ID: "maltodextrin.dextrose-equivalent", Value: DextroseEquivalent, Unit: quantity.PerCent, Source: own, Sure: Proposal},
		{ID: "sugar.specific-volume", Value: SugarSpecificVolume, Unit: "mL/g", Source: solution, Sure: Memory},
		{ID: "bottle.usual", Value: UsualBottle, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "osmolality.isotonic.low", Value: IsotonicLow, Unit: osm, Source: isotonic, Sure: Second},
		{ID: "osmolality.isotonic.high", Value: IsotonicHigh, Unit: osm, Source: isotonic, Sure: Second},
	}
}

// acsmNutrition2016 is the joint position on nutrition and athletic performance.
func acsmNutrition2016() Citation {
	return Citation{Short: "ACSM/AND/DC 2016", Full: "Thomas, Erdman, Burke 2016, Medicine and Science in Sports and Exercise 48:543"}
}

// studied are the trials of more carbohydrate than is advised.
func studied() Citation {
	return Citation{Short: "Viribay 2020; Hearris 2022; Podlogar & Wallis 2022", Full: "Viribay et al. 2020; Hearris et al. 2022; Podlogar, Wallis 2022, Sports Medicine 52(S1):5"}
}

// commonPractice marks what practitioners do without a source.
func commonPractice() Citation {
	return Citation{Code: "practice"}
}
