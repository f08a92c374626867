package evidence

import "slices"

// climateEntries lists air, sun, heat balance, estimate and travel.
func climateEntries() []Entry {
	return slices.Concat(
		saturationEntries(),
		pressureEntries(),
		wbgtWeightEntries(),
		wbgtBandEntries(),
		wbgtErrorEntries(),
		instrumentEntries(),
		moistAirEntries(),
		exchangeEntries(),
		stabilityEntries(),
		solarEntries(),
		strainBodyEntries(),
		strainSweatEntries(),
		strainClothingEntries(),
		strainHeatEntries(),
		strainSkinEntries(),
		strainDomainEntries(),
		sunEntries(),
		metabolicEntries(),
		airPastEntries(),
		clothingEntries(),
		balanceEntries(),
		latentEntries(),
		wettednessEntries(),
		firstFigureEntries(),
		weaknessEntries(),
		dayEntries(),
		likenessEntries(),
		testWeightEntries(),
		heldEntries(),
		retestEntries(),
		militaryEntries(),
		heatCautionEntries(),
		acclimatisationEntries(),
		climateTableEntries(),
		packingEntries(),
		dailyWaterEntries(),
		flightEntries(),
	)
}
