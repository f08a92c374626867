package sweat

// Codes lists every id of this package that the catalogue of texts must have a
// sentence or word for.
func Codes() []string {
	var list []string
	for _, s := range []string{
		SourceBefore, SourceAfter, SourceTowel, SourceOffset, SourceKit, SourceBottle, SourcePoured, SourceShared,
		SourceFood, SourceUrine, SourceStool, SourceCorrection, SourceUncorrected, SourceTime, SourceEquation,
		SourceLaboratory, SourceSite, SourcePotassium, SourceMorning, SourceWater, SourcePlasma, SourceIons, SourceWaterGain, SourceDayToDay, SourceMeasured,
	} {
		list = append(list, "source."+s)
	}
	list = append(list, missingCodes()...)
	list = append(list, noteCodes()...)
	list = append(list, adviceCodes()...)
	list = append(list, plasmaCodes()...)
	return append(list, otherCodes()...)
}

func missingCodes() []string {
	return []string{
		MissingDuration, MissingBefore, MissingAfter, MissingKit, MissingKitDry, MissingKitWet, MissingDrinks,
		MissingBottle, MissingBottleBefore, MissingBottleAfter, MissingFood, MissingUrine, MissingSodium,
	}
}

func noteCodes() []string {
	return []string{
		NoteAsWeighed, NoteRateAsWeighed, NoteFieldMethod, NoteEffortRated, NoteEffortOfSport, NoteEffortAssumed, NoteSharedBottles, NoteLossTooSmall, NoteDressNotSaid, NotePouredInKit, NoteRangeOnly,
		NoteForearmOutside, NoteForearmRaises, NoteConductivity, NoteMethodUnknown, NoteMethodsMixed, NoteSitesAveraged, NoteAgreement,
		NoteRawAgreement, NoteFiveSiteLimits, NotePatchTime, NotePatchesDiffer, NoteUncorrectedNa, NoteHoldNotNeeded,
		NoteHoldCapped, NoteDayToDay, NoteSpotMarker, NoteSpecificity, NoteSpecificities, NoteDimLight, NoteMornings,
		NoteMorningUsual, NoteMorningUnusual,
	}
}

func adviceCodes() []string {
	return []string{
		AdviceDuplicate, AdviceFinerScale, AdviceOneScale, AdviceMinimalClothing, AdviceOwnBottle, AdviceWeighBottles,
		AdviceGiveEffort, AdviceCorrect, AdviceExactTimes, AdviceEquationSite, AdviceSecondSite, AdviceSecondPatch,
		AdviceLaboratory,
	}
}

func otherCodes() []string {
	return []string{
		FlagGained, FlagOverdrank, FlagNearLoss, FlagDeficit, FlagSodiumRate, FlagSodiumSalty, FlagSodiumLong,
		ReasonEffort, ReasonEnergy, ReasonRating, ReasonSport, ReasonAssumed, ReasonField, ReasonWaits,
		LeftDetached, LeftSaturated, LeftRefused, LeftWaiting, LeftTimes, LeftNoEquation, LeftNoAgreement, LeftFiveSite,
		DifferenceReal, DifferenceWithin, DifferenceUnknown, CompareOtherSite, CompareOtherMethod,
	}
}

func plasmaCodes() []string {
	return []string{PlasmaTeaching, PlasmaMinor, PlasmaNoAge, PlasmaNoWater, PlasmaOutside, PlasmaGainLow, PlasmaFall,
		PlasmaBelow, PlasmaMayBelow, PlasmaNoProtect}
}
