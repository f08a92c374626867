package sweat

// Sources of error, as budgets name them. The catalogue of texts has their
// words under "source." and the name.
const (
	SourceBefore     = "scale.before"
	SourceAfter      = "scale.after"
	SourceTowel      = "scale.towel"
	SourceOffset     = "scale.offset"
	SourceKit        = "kit"
	SourceBottle     = "bottle.weighing"
	SourcePoured     = "bottle.volume"
	SourceShared     = "bottle.shared"
	SourceFood       = "food"
	SourceUrine      = "urine"
	SourceStool      = "stool"
	SourceCorrection = "correction"
	// SourceUncorrected is breath and gas exchange left in by the field method.
	SourceUncorrected = "uncorrected"
	SourceTime        = "time"
	SourceEquation    = "patch.equation"
	SourceLaboratory  = "patch.laboratory"
	SourceSite        = "patch.site-to-site"
	SourcePotassium   = "patch.potassium"
	SourceMorning     = "morning.day-to-day"
	SourceWater       = "body-water"
	SourcePlasma      = "plasma-before"
	SourceIons        = "ions"
	SourceWaterGain   = "water-gain"
	SourceDayToDay    = "day-to-day"
	SourceMeasured    = "measured"
)

// What is missing. The catalogue has the sentences under these ids.
const (
	MissingDuration     = "missing.duration"
	MissingBefore       = "missing.mass-before"
	MissingAfter        = "missing.mass-after"
	MissingKit          = "missing.kit"
	MissingKitDry       = "missing.kit-dry"
	MissingKitWet       = "missing.kit-wet"
	MissingDrinks       = "missing.drinks"
	MissingBottle       = "missing.bottle"
	MissingBottleBefore = "missing.bottle-before"
	MissingBottleAfter  = "missing.bottle-after"
	MissingFood         = "missing.food"
	MissingUrine        = "missing.urine"
	MissingSodium       = "missing.patch-sodium"
)

// Sentences beside figures.
const (
	NoteAsWeighed      = "note.as-weighed"            // args: L without the corrections
	NoteRateAsWeighed  = "note.as-weighed-rate"       // args: L/h without the corrections
	NoteFieldMethod    = "note.field-method"          // args: g/kcal by which the low end reaches down
	NoteEffortRated    = "note.effort-rated"          // corrected by a rating
	NoteEffortOfSport  = "note.effort-of-sport"       // corrected by the sport's usual MET
	NoteEffortAssumed  = "note.effort-assumed"        // args: MET assumed
	NoteSharedBottles  = "note.shared-bottles"        // args: L low, L high
	NoteLossTooSmall   = "note.loss-too-small"        // the loss could be nought: no share of it
	NoteDressNotSaid   = "note.dress-not-said"        //
	NotePouredInKit    = "note.poured-over-in-kit"    //
	NoteRangeOnly      = "note.range-only"            // no equation for the site
	NoteForearmOutside = "note.forearm-outside"       // args: raw, from, to
	NoteForearmRaises  = "note.forearm-raises"        // args: raw, below which it raises
	NoteConductivity   = "note.conductivity"          // reads high, not converted
	NoteMethodUnknown  = "note.method-unknown"        // taken as the worst
	NoteMethodsMixed   = "note.methods-mixed"         //
	NoteSitesAveraged  = "note.sites-averaged"        // our own proposal
	NoteAgreement      = "note.agreement"             // args: bias, limits, after the equation
	NoteRawAgreement   = "note.raw-agreement"         // args: bias, limits, without an equation
	NoteFiveSiteLimits = "note.five-site-limits"      // args: limits taken
	NotePatchTime      = "note.patch-time"            // args: on, from, to
	NotePatchesDiffer  = "note.patches-differ"        // args: difference %, most expected %
	NoteUncorrectedNa  = "note.site-uncorrected"      // raw value, uncorrected
	NoteHoldNotNeeded  = "note.hold-not-needed"       // args: share, sodium from which
	NoteHoldCapped     = "note.hold-capped"           // never above loss
	NoteDayToDay       = "note.day-to-day"            // args: L/h
	NoteSpotMarker     = "note.spot-marker"           // context, never a driver
	NoteSpecificity    = "note.specificity"           // args: %
	NoteSpecificities  = "note.specificity-both"      // args: % women, % men
	NoteDimLight       = "note.dim-light"             // args: steps low, high
	NoteMornings       = "note.mornings"              // args: mornings there are, needed
	NoteMorningUsual   = "note.morning-within-usual"  // args: %
	NoteMorningUnusual = "note.morning-outside-usual" // args: %
)

// Flags.
const (
	FlagGained      = "flag.gained"       // size: kg gained
	FlagOverdrank   = "flag.drank-more"   // size: % of the loss replaced
	FlagNearLoss    = "flag.drank-near"   // size: % of the loss replaced
	FlagDeficit     = "flag.deficit"      // size: % deficit
	FlagSodiumRate  = "flag.sodium-rate"  // size: L/h
	FlagSodiumSalty = "flag.sodium-salty" // size: mmol/L, whole body
	FlagSodiumLong  = "flag.sodium-long"  // size: min
)

// What would narrow a range.
const (
	AdviceDuplicate       = "advice.duplicate-weighing"
	AdviceFinerScale      = "advice.finer-scale"
	AdviceOneScale        = "advice.one-scale"
	AdviceMinimalClothing = "advice.minimal-clothing"
	AdviceOwnBottle       = "advice.own-bottle"
	AdviceWeighBottles    = "advice.weigh-bottles"
	AdviceGiveEffort      = "advice.give-effort"
	AdviceCorrect         = "advice.switch-corrections-on"
	AdviceExactTimes      = "advice.exact-times"
	AdviceEquationSite    = "advice.equation-site"
	AdviceSecondSite      = "advice.second-equation-site"
	AdviceSecondPatch     = "advice.second-patch"
	AdviceLaboratory      = "advice.better-laboratory"
)
