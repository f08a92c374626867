package evidence

import (
	"slices"

	"ebbwell/internal/quantity"
)

// What is proposed keeps a distance from what may not be passed. All of it is
// our own proposal, tried on written cases and read by strict practitioners.
const (
	ReachShare        = 0.9  // of the limit that is aimed at
	ReachShareCareful = 0.8  // after low blood sodium, or where mass was gained at the test
	ReachShareNear    = 0.95 // where the habit lies between the low end and the mean of the loss
	ReachShareBreaks  = 0.9  // of what the breaks carry
	ReachShareIntake  = 0.95 // of the limit that drinks and food water may come to
	ReachStomach      = 1.0  // L/h
	ReachStomachRun   = 0.8  // L/h
	CarefulDeficit    = 3.0  // % of body mass, aimed at after low blood sodium or a gain
	TestedEnds        = 1.0  // % of body mass: a test that ended this low was not over the limit
	TestedTaken       = 0.5  // of what was lost, breath and gas exchange with it: nor was one in which no more was taken
	TestedTakenClear  = 0.65 // nor one in which no more of it was taken and mass fell clearly: of one test the widest range reaches 34 % down
	TestedFall        = 0.4  // kg that mass fell clearly by, six times what two weighings tell
	CutLeast          = 50.0 // mL that a cut has to be more than, where no more than the mean of the loss is drunk; less is what a scale cannot tell
)

// The target of fluid.
const (
	TargetKeepHidden = 100.0 // mL that it may miss it by where body mass is hidden
	TargetKeep       = 0.2   // % of body mass that a habit may miss what is needed by
	TargetAboveMass  = 0.3   // % of body mass above what is needed
	TargetAbovePart  = 4.0   // or one part of this many of the room
	TargetLeastRoom  = 50.0  // mL, less is no room
	TargetLeastMore  = 100.0 // mL, least that is worth asking for
	TargetHidden     = 250.0 // mL, steps of the target with a hidden mass
	RiseForFuel      = 100.0 // mL/h that drinks may rise past the target for carbohydrate
	BottlesShort     = 100.0 // mL that whole bottles may come to less than any volumes would
)

// The carbohydrate asked for, without a jump.
const (
	FuelAimFrom       = 75.0  // min, from where any is asked for
	FuelAimFull       = 90.0  // min, from where the first level is
	FuelAimLongFrom   = 150.0 // min
	FuelAimLongFull   = 180.0 // min
	FuelAimMiddle     = 30.0  // g/h
	FuelAimLong       = 60.0  // g/h
	FuelAimStep       = 5.0   // g/h
	FuelAimLeast      = 15.0  // g/h, less is none
	FuelAimYoung      = 30.0  // g/h at most for the young
	FuelAimYoungUnder = 16.0  // years
)

// The sodium asked for.
const (
	SodiumAim        = 450.0 // mg a litre drunk
	SodiumAimKept    = 350.0 // mg a litre in the habit that is left alone
	SodiumAimMet     = 405.0 // mg a litre that will do
	SodiumAimStep    = 50.0  // mg/h
	SodiumAimHours   = 4.0   // h, from where always
	SodiumAimSooner  = 2.0   // h, past it for those who lose much
	SodiumAimRate    = 1.2   // L/h of sweat, much
	SodiumAimMmol    = 45.0  // mmol/L of sweat, salty
	SodiumAimFrom    = 300.0 // mL drunk, below it none
	SodiumShare      = 0.9   // of the sodium lost that a plan may bring
	SodiumUnknown    = 25.0  // mmol/L, taken for that where it is not known
	SaltStrengthMost = 1.5   // g/L of salt in what is drunk
)

// The amounts that are proposed.
const (
	ProposalWater      = 50.0  // mL
	ProposalWaterLong  = 100.0 // mL, in a long session
	ProposalDrink      = 100.0 // mL
	ProposalDrinkLong  = 250.0 // mL, where a step is large enough
	ProposalDrinkStep  = 300.0 // mL, a step that is large enough for it
	ProposalSalt       = 0.5   // g
	ProposalLeast      = 100.0 // mL of a source
	ProposalLeastShort = 50.0  // mL of a source, in a short session
	ProposalShort      = 60.0  // min, shorter is short
	ProposalLong       = 150.0 // min, longer is long
	ThingsChanged      = 3.0
	ThingsChangedLong  = 4.0
	ThingsAStep        = 2.0
	WaterKept          = 400.0 // mL of plain water that is not given up in a very long session
	WaterKeptPast      = 360.0 // min, longer is very long
)

// What eating asks for.
const (
	GelWater       = 220.0   // mL for each gel
	GelWaterUsed   = 120.0   // mL at least, where gels are taken with a calm stomach
	GelWaterStep   = 2 / 3.0 // of the water they were taken with
	PieceWater     = 130.0   // mL drunk for each gel or portion
	PieceEvery     = 45.0    // min for a gel or portion where little is drunk
	LittleDrunk    = 0.3     // L/h, below it little is drunk
	GelDrinkPart   = 0.5     // of a drink that counts as water for gels
	GelEvery       = 45.0    // min, one gel in
	FoodEvery      = 45.0    // min, one portion in where food is carried
	GelsMost       = 8.0     // gels in a session, unless more were taken
	FoodKindMost   = 3.0     // portions of one kind in a session, unless more were taken
	FoodKindAnHour = 0.75    // portions an hour of one kind
	FoodBreak      = 300.0   // s, a break with time for a portion
	FoodBreakShort = 90.0    // s, one with time for half
	FoodHalf       = 0.5     // portion
	FoodQuarter    = 0.25    // portion in a shorter break
	FoodShare      = 0.5     // of the carbohydrate missing that the way with food brings by food
	FoodShareLess  = 0.25    // or this part, where that cannot be
	CutStrength    = 10.0    // g per 100 mL of drinks and gels after a cut
	SugarVolume    = 0.65    // mL that a g of carbohydrate takes up in a gel
)

// What a change costs.
const (
	CostThing       = 2.0
	CostNew         = 2.0  // more, for what was not taken before
	CostDropped     = 1.0  // for a drink given up
	CostWater       = 1.0  // for 50 mL
	CostDrink       = 1.1  // for 50 mL
	CostHalfPortion = 1.5  // for half a portion
	CostHalfRunning = 1.95 // for half a portion, running
	CostGel         = 3.0
	CostSalt        = 2.0  // for 0.5 g
	CostOff         = 0.2  // for each 50 mL away from the target
	CostFluid       = 50.0 // mL that a cost of fluid is for
	StepOver        = 1.15 // times a step that a rung may come to
	StepLeft        = 0.15 // of a step that is no step of its own
	StepPortionOver = 0.5  // g of carbohydrate that a rung may be over
	StepsMost       = 6.0  // then a review
	StomachHold     = 4.0  // of 10, from where the habit is held first
	DeepDeficit     = 4.0  // % of body mass, past it a word
	ThirstWeaker    = 60.0 // years
	YoungUnder      = 18.0 // years
	UpToMinutes     = 240.0
	RinseUnder      = 30.0  // min
	AskedRoom       = 200.0 // mL that asking for more breaks has to be worth
	AskedFuel       = 0.5   // of the carbohydrate asked for that a long session has to come to, not to ask
	AskedGap        = 0.1   // of the habit that all breaks together have to lack, to ask
)

// proposalEntries lists what a proposal is made with.
func proposalEntries() []Entry {
	return slices.Concat(proposalLimitsEntries(), proposalTargetEntries(), proposalCarbohydrateEntries(), proposalSodiumEntries(), proposalAmountsEntries(), proposalEatingEntries(), proposalCostsEntries())
}

// proposalLimitsEntries lists the limits of a proposal.
func proposalLimitsEntries() []Entry {
	own := ownProposal()
	return []Entry{
		{ID: "proposal.reach-share", Value: ReachShare, Source: own, Sure: Proposal},
		{ID: "proposal.reach-share-careful", Value: ReachShareCareful, Source: own, Sure: Proposal},
		{ID: "proposal.reach-share-near", Value: ReachShareNear, Source: own, Sure: Proposal},
		{ID: "proposal.reach-share-breaks", Value: ReachShareBreaks, Source: own, Sure: Proposal},
		{ID: "proposal.reach-share-intake", Value: ReachShareIntake, Source: own, Sure: Proposal},
		{ID: "proposal.reach-stomach", Value: ReachStomach, Unit: quantity.LitrePerHour, Source: own, Sure: Proposal},
		{ID: "proposal.reach-stomach-run", Value: ReachStomachRun, Unit: quantity.LitrePerHour, Source: own, Sure: Proposal},
		{ID: "proposal.careful-deficit", Value: CarefulDeficit, Unit: quantity.PerCent, Source: own, Sure: Proposal},
		{ID: "proposal.tested-ends", Value: TestedEnds, Unit: quantity.PerCent, Source: own, Sure: Proposal},
		{ID: "proposal.tested-taken", Value: TestedTaken, Source: own, Sure: Proposal},
		{ID: "proposal.tested-taken-clear", Value: TestedTakenClear, Source: own, Sure: Proposal},
		{ID: "proposal.tested-fall", Value: TestedFall, Unit: quantity.Kilogram, Source: own, Sure: Proposal},
		{ID: "proposal.cut-least", Value: CutLeast, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
	}
}

// proposalTargetEntries lists the target of a proposal.
func proposalTargetEntries() []Entry {
	own := ownProposal()
	return []Entry{
		{ID: "proposal.target-keep-hidden", Value: TargetKeepHidden, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.target-keep", Value: TargetKeep, Unit: quantity.PerCent, Source: own, Sure: Proposal},
		{ID: "proposal.target-above-mass", Value: TargetAboveMass, Unit: quantity.PerCent, Source: own, Sure: Proposal},
		{ID: "proposal.target-above-part", Value: TargetAbovePart, Source: own, Sure: Proposal},
		{ID: "proposal.target-least-room", Value: TargetLeastRoom, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.target-least-more", Value: TargetLeastMore, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.target-hidden", Value: TargetHidden, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.rise-for-fuel", Value: RiseForFuel, Unit: "mL/h", Source: own, Sure: Proposal},
		{ID: "proposal.bottles-short", Value: BottlesShort, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
	}
}

// proposalCarbohydrateEntries lists the carbohydrate of a proposal.
func proposalCarbohydrateEntries() []Entry {
	own := ownProposal()
	return []Entry{
		{ID: "proposal.fuel-aim-from", Value: FuelAimFrom, Unit: quantity.Minute, Source: own, Sure: Proposal},
		{ID: "proposal.fuel-aim-full", Value: FuelAimFull, Unit: quantity.Minute, Source: own, Sure: Proposal},
		{ID: "proposal.fuel-aim-long-from", Value: FuelAimLongFrom, Unit: quantity.Minute, Source: own, Sure: Proposal},
		{ID: "proposal.fuel-aim-long-full", Value: FuelAimLongFull, Unit: quantity.Minute, Source: own, Sure: Proposal},
		{ID: "proposal.fuel-aim-middle", Value: FuelAimMiddle, Unit: quantity.GramPerHour, Source: own, Sure: Proposal},
		{ID: "proposal.fuel-aim-long", Value: FuelAimLong, Unit: quantity.GramPerHour, Source: own, Sure: Proposal},
		{ID: "proposal.fuel-aim-step", Value: FuelAimStep, Unit: quantity.GramPerHour, Source: own, Sure: Proposal},
		{ID: "proposal.fuel-aim-least", Value: FuelAimLeast, Unit: quantity.GramPerHour, Source: own, Sure: Proposal},
		{ID: "proposal.fuel-aim-young", Value: FuelAimYoung, Unit: quantity.GramPerHour, Source: own, Sure: Proposal},
		{ID: "proposal.fuel-aim-young-under", Value: FuelAimYoungUnder, Unit: "a", Source: own, Sure: Proposal},
	}
}

// proposalSodiumEntries lists the sodium of a proposal.
func proposalSodiumEntries() []Entry {
	own := ownProposal()
	return []Entry{
		{ID: "proposal.sodium-aim", Value: SodiumAim, Unit: "mg/L", Source: own, Sure: Proposal},
		{ID: "proposal.sodium-aim-kept", Value: SodiumAimKept, Unit: "mg/L", Source: own, Sure: Proposal},
		{ID: "proposal.sodium-aim-met", Value: SodiumAimMet, Unit: "mg/L", Source: own, Sure: Proposal},
		{ID: "proposal.sodium-aim-step", Value: SodiumAimStep, Unit: quantity.MilligramPerHour, Source: own, Sure: Proposal},
		{ID: "proposal.sodium-aim-hours", Value: SodiumAimHours, Unit: quantity.Hour, Source: own, Sure: Proposal},
		{ID: "proposal.sodium-aim-sooner", Value: SodiumAimSooner, Unit: quantity.Hour, Source: own, Sure: Proposal},
		{ID: "proposal.sodium-aim-rate", Value: SodiumAimRate, Unit: quantity.LitrePerHour, Source: own, Sure: Proposal},
		{ID: "proposal.sodium-aim-mmol", Value: SodiumAimMmol, Unit: quantity.MillimolePerLitre, Source: own, Sure: Proposal},
		{ID: "proposal.sodium-aim-from", Value: SodiumAimFrom, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.sodium-share", Value: SodiumShare, Source: own, Sure: Proposal},
		{ID: "proposal.sodium-unknown", Value: SodiumUnknown, Unit: quantity.MillimolePerLitre, Source: own, Sure: Proposal},
		{ID: "proposal.salt-strength-most", Value: SaltStrengthMost, Unit: "g/L", Source: own, Sure: Proposal},
	}
}

// proposalAmountsEntries lists the amounts of a proposal.
func proposalAmountsEntries() []Entry {
	own := ownProposal()
	return []Entry{
		{ID: "proposal.proposal-water", Value: ProposalWater, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.proposal-water-long", Value: ProposalWaterLong, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.proposal-drink", Value: ProposalDrink, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.proposal-drink-long", Value: ProposalDrinkLong, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.proposal-drink-step", Value: ProposalDrinkStep, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.proposal-salt", Value: ProposalSalt, Unit: quantity.Gram, Source: own, Sure: Proposal},
		{ID: "proposal.proposal-least", Value: ProposalLeast, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.proposal-least-short", Value: ProposalLeastShort, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.proposal-short", Value: ProposalShort, Unit: quantity.Minute, Source: own, Sure: Proposal},
		{ID: "proposal.proposal-long", Value: ProposalLong, Unit: quantity.Minute, Source: own, Sure: Proposal},
		{ID: "proposal.things-changed", Value: ThingsChanged, Source: own, Sure: Proposal},
		{ID: "proposal.things-changed-long", Value: ThingsChangedLong, Source: own, Sure: Proposal},
		{ID: "proposal.things-a-step", Value: ThingsAStep, Source: own, Sure: Proposal},
		{ID: "proposal.water-kept", Value: WaterKept, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.water-kept-past", Value: WaterKeptPast, Unit: quantity.Minute, Source: own, Sure: Proposal},
	}
}

// proposalEatingEntries lists the eating of a proposal.
func proposalEatingEntries() []Entry {
	own := ownProposal()
	return []Entry{
		{ID: "proposal.gel-water", Value: GelWater, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.piece-water", Value: PieceWater, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.piece-every", Value: PieceEvery, Unit: quantity.Minute, Source: own, Sure: Proposal},
		{ID: "proposal.little-drunk", Value: LittleDrunk, Unit: quantity.LitrePerHour, Source: own, Sure: Proposal},
		{ID: "proposal.gel-water-used", Value: GelWaterUsed, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.gel-water-step", Value: GelWaterStep, Source: own, Sure: Proposal},
		{ID: "proposal.gel-drink-part", Value: GelDrinkPart, Source: own, Sure: Proposal},
		{ID: "proposal.gel-every", Value: GelEvery, Unit: quantity.Minute, Source: own, Sure: Proposal},
		{ID: "proposal.food-every", Value: FoodEvery, Unit: quantity.Minute, Source: own, Sure: Proposal},
		{ID: "proposal.gels-most", Value: GelsMost, Source: own, Sure: Proposal},
		{ID: "proposal.food-kind-most", Value: FoodKindMost, Unit: quantity.Portion, Source: own, Sure: Proposal},
		{ID: "proposal.food-kind-an-hour", Value: FoodKindAnHour, Unit: quantity.Portion, Source: own, Sure: Proposal},
		{ID: "proposal.food-break", Value: FoodBreak, Unit: quantity.Second, Source: own, Sure: Proposal},
		{ID: "proposal.food-break-short", Value: FoodBreakShort, Unit: quantity.Second, Source: own, Sure: Proposal},
		{ID: "proposal.food-half", Value: FoodHalf, Unit: quantity.Portion, Source: own, Sure: Proposal},
		{ID: "proposal.food-quarter", Value: FoodQuarter, Unit: quantity.Portion, Source: own, Sure: Proposal},
		{ID: "proposal.food-share", Value: FoodShare, Source: own, Sure: Proposal},
		{ID: "proposal.food-share-less", Value: FoodShareLess, Source: own, Sure: Proposal},
		{ID: "proposal.cut-strength", Value: CutStrength, Unit: "g/100 mL", Source: own, Sure: Proposal},
		{ID: "proposal.sugar-volume", Value: SugarVolume, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
	}
}

// proposalCostsEntries lists the costs of a proposal.
func proposalCostsEntries() []Entry {
	own := ownProposal()
	return []Entry{
		{ID: "proposal.cost-thing", Value: CostThing, Source: own, Sure: Proposal},
		{ID: "proposal.cost-new", Value: CostNew, Source: own, Sure: Proposal},
		{ID: "proposal.cost-dropped", Value: CostDropped, Source: own, Sure: Proposal},
		{ID: "proposal.cost-water", Value: CostWater, Source: own, Sure: Proposal},
		{ID: "proposal.cost-drink", Value: CostDrink, Source: own, Sure: Proposal},
		{ID: "proposal.cost-half-portion", Value: CostHalfPortion, Source: own, Sure: Proposal},
		{ID: "proposal.cost-half-running", Value: CostHalfRunning, Source: own, Sure: Proposal},
		{ID: "proposal.cost-gel", Value: CostGel, Source: own, Sure: Proposal},
		{ID: "proposal.cost-salt", Value: CostSalt, Source: own, Sure: Proposal},
		{ID: "proposal.cost-off", Value: CostOff, Source: own, Sure: Proposal},
		{ID: "proposal.cost-fluid", Value: CostFluid, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
		{ID: "proposal.step-over", Value: StepOver, Source: own, Sure: Proposal},
		{ID: "proposal.step-left", Value: StepLeft, Source: own, Sure: Proposal},
		{ID: "proposal.step-portion-over", Value: StepPortionOver, Unit: quantity.Gram, Source: own, Sure: Proposal},
		{ID: "proposal.steps-most", Value: StepsMost, Source: own, Sure: Proposal},
		{ID: "proposal.stomach-hold", Value: StomachHold, Source: own, Sure: Proposal},
		{ID: "proposal.deep-deficit", Value: DeepDeficit, Unit: quantity.PerCent, Source: own, Sure: Proposal},
		{ID: "proposal.thirst-weaker", Value: ThirstWeaker, Unit: "a", Source: own, Sure: Proposal},
		{ID: "proposal.young-under", Value: YoungUnder, Unit: "a", Source: own, Sure: Proposal},
		{ID: "proposal.up-to-minutes", Value: UpToMinutes, Source: own, Sure: Proposal},
		{ID: "proposal.rinse-under", Value: RinseUnder, Unit: quantity.Minute, Source: own, Sure: Proposal},
		{ID: "proposal.asked-fuel", Value: AskedFuel, Source: own, Sure: Proposal},
		{ID: "proposal.asked-gap", Value: AskedGap, Source: own, Sure: Proposal},
		{ID: "proposal.asked-room", Value: AskedRoom, Unit: quantity.Millilitre, Source: own, Sure: Proposal},
	}
}
