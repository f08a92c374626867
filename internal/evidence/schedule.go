package evidence

import (
	"slices"

	"ebbwell/internal/quantity"
)

// Mouthfuls and what a chance to drink can carry.
const (
	MouthfulMen   = 25.0 // mL, from a cup
	MouthfulWomen = 20.0 // mL, from a cup
)

// What one chance to drink carries, and how chances are filled one after
// another.
const (
	DrinkingPace       = 8.0   // mL/s while at the bottle
	DrinkingShare      = 0.35  // of a break's seconds that are left for drinking
	DrinkingLeast      = 8.0   // s, the least that is left; a station is no longer
	ComfortableShare   = 0.7   // of the most a chance carries
	CarriedComfortable = 150.0 // mL from a carried bottle at one time
	CarriedMost        = 250.0 // mL
	LongBreak          = 300.0 // s; such a break is filled past comfort before the others
	MaybeShare         = 0.5   // of comfort, what a chance that may not happen is counted for
	StomachAtOnce      = 500.0 // mL, the most that may stand in the stomach
	StomachEmpties     = 18.0  // mL/min
	StomachEmptiesRun  = 12.0  // mL/min, running
	FillComfortable    = 3.0   // fill up to which only half-time and long breaks are above comfort
	FillMost           = 4.0   // fill at which each chance carries its most
	OneBottleOver      = 1.1   // times comfort that a break is filled to, so that one bottle stands there
	ScheduleRound      = 5.0   // mL, to which whole mouthfuls are rounded down
)

// Rests of a tennis match.
const (
	TennisFirstRest = 3.0   // game of a set after which the first rest comes
	TennisRest      = 90.0  // s
	TennisSetBreak  = 120.0 // s
)

// How large a step is and how long it is held.
const (
	StepFluidLow      = 0.10 // L/h
	StepFluidHigh     = 0.15 // L/h
	StepFuelHigh      = 15.0 // g/h
	StepSessionsLow   = 2.0  // sessions on a step
	StepSessionsHigh  = 3.0
	StepStomachGood   = 3.0  // of 10, move on at or below
	StepDoneShare     = 80.0 // % of the plan, move on at or above
	StepStomachBad    = 7.0  // of 10, go back at or above
	StepClearDaysHigh = 10.0
	GoalsAtOnce       = 2.0
	ConfidenceEnough  = 7.0  // of 10
	SmallerStepShare  = 50.0 // % of the usual step where confidence is low
)

// Increments a plan moves in.
const (
	FluidIncrement   = 50.0 // mL
	PortionIncrement = 0.5  // portion
	WholePieceUnder  = 30.0 // g, a portion that is lighter is not halved
	SaltIncrement    = 0.1  // g
	FluidSliderEnd   = 1.5  // L/h of one drink
	PortionsAtLeast  = 4.0  // portions at the end of a food's slider
	PortionsAtMost   = 60.0
	SaltSliderEnd    = 3.0   // g/h
	RoundFluid       = 1.0   // mL, what a schedule adds up to
	LeastCarry       = 100.0 // mL, deficit left below this is not carried over
)

// scheduleEntries lists mouthfuls, steps and increments.
func scheduleEntries() []Entry {
	return slices.Concat(mouthfulEntries(), chanceEntries(), stepEntries(), incrementEntries())
}

// mouthfulEntries lists mouthfuls and the rests of tennis.
func mouthfulEntries() []Entry {
	lawless := Citation{Short: "Lawless et al. 2003", Full: "Lawless et al. 2003, Dysphagia 18:196"}
	rules := Citation{Code: "tennis"}
	ml := quantity.Millilitre
	return []Entry{
		{ID: "mouthful.men", Value: MouthfulMen, Unit: ml, Source: lawless, Sure: Read},
		{ID: "mouthful.women", Value: MouthfulWomen, Unit: ml, Source: lawless, Sure: Read},
		{ID: "tennis.first-rest", Value: TennisFirstRest, Source: rules, Sure: Read},
		{ID: "tennis.rest", Value: TennisRest, Unit: quantity.Second, Source: rules, Sure: Read},
		{ID: "tennis.set-break", Value: TennisSetBreak, Unit: quantity.Second, Source: rules, Sure: Read},
	}
}

// chanceEntries lists what a chance carries and how chances are filled.
func chanceEntries() []Entry {
	own := ownProposal()
	pace := Citation{Code: "pace"}
	ml, perMin := quantity.Millilitre, quantity.Unit("mL/min")
	return []Entry{
		{ID: "chance.pace", Value: DrinkingPace, Unit: "mL/s", Source: pace, Sure: Memory},
		{ID: "chance.share", Value: DrinkingShare, Source: own, Sure: Proposal},
		{ID: "chance.least", Value: DrinkingLeast, Unit: quantity.Second, Source: own, Sure: Proposal},
		{ID: "chance.comfortable", Value: ComfortableShare, Source: own, Sure: Proposal},
		{ID: "chance.carried.comfortable", Value: CarriedComfortable, Unit: ml, Source: own, Sure: Proposal},
		{ID: "chance.carried.most", Value: CarriedMost, Unit: ml, Source: own, Sure: Proposal},
		{ID: "chance.long-break", Value: LongBreak, Unit: quantity.Second, Source: own, Sure: Proposal},
		{ID: "chance.maybe", Value: MaybeShare, Source: own, Sure: Proposal},
		{ID: "chance.stomach-at-once", Value: StomachAtOnce, Unit: ml, Source: own, Sure: Proposal},
		{ID: "chance.empties", Value: StomachEmpties, Unit: perMin, Source: own, Sure: Proposal},
		{ID: "chance.empties.running", Value: StomachEmptiesRun, Unit: perMin, Source: own, Sure: Proposal},
		{ID: "fill.comfortable", Value: FillComfortable, Source: own, Sure: Proposal},
		{ID: "fill.most", Value: FillMost, Source: own, Sure: Proposal},
		{ID: "schedule.one-bottle", Value: OneBottleOver, Source: own, Sure: Proposal},
		{ID: "schedule.round-mouthfuls", Value: ScheduleRound, Unit: ml, Source: own, Sure: Proposal},
	}
}

// stepEntries lists the size and the spacing of steps. No trial sets them.
func stepEntries() []Entry {
	own, practice := ownProposal(), commonPractice()
	brauer := Citation{Short: "Brauer et al. 2022", Full: "Brauer et al. 2022, BMC Nutrition 8:45"}
	interview := Citation{Code: "ruler"}
	lh, gh, pc := quantity.LitrePerHour, quantity.GramPerHour, quantity.PerCent
	return []Entry{
		{ID: "step.fluid.low", Value: StepFluidLow, Unit: lh, Source: practice, Sure: Practice},
		{ID: "step.fluid.high", Value: StepFluidHigh, Unit: lh, Source: practice, Sure: Practice},
		{ID: "step.carbohydrate.high", Value: StepFuelHigh, Unit: gh, Source: practice, Sure: Practice},
		{ID: "step.sessions.low", Value: StepSessionsLow, Source: practice, Sure: Practice},
		{ID: "step.sessions.high", Value: StepSessionsHigh, Source: practice, Sure: Practice},
		{ID: "step.stomach.good", Value: StepStomachGood, Source: practice, Sure: Practice},
		{ID: "step.done", Value: StepDoneShare, Unit: pc, Source: practice, Sure: Practice},
		{ID: "step.stomach.bad", Value: StepStomachBad, Source: practice, Sure: Practice},
		{ID: "step.clear-days.high", Value: StepClearDaysHigh, Unit: "d", Source: practice, Sure: Practice},
		{ID: "goals.at-once", Value: GoalsAtOnce, Source: brauer, Sure: Derived},
		{ID: "confidence.enough", Value: ConfidenceEnough, Source: interview, Sure: Memory},
		{ID: "step.smaller", Value: SmallerStepShare, Unit: pc, Source: own, Sure: Proposal},
	}
}

// incrementEntries lists the increments and slider ends.
func incrementEntries() []Entry {
	own := ownProposal()
	ml, portion, g := quantity.Millilitre, quantity.Portion, quantity.Gram
	return []Entry{
		{ID: "increment.fluid", Value: FluidIncrement, Unit: ml, Source: own, Sure: Proposal},
		{ID: "increment.portion", Value: PortionIncrement, Unit: portion, Source: own, Sure: Proposal},
		{ID: "increment.whole-piece", Value: WholePieceUnder, Unit: quantity.Gram, Source: own, Sure: Proposal},
		{ID: "increment.salt", Value: SaltIncrement, Unit: g, Source: own, Sure: Proposal},
		{ID: "slider.fluid", Value: FluidSliderEnd, Unit: quantity.LitrePerHour, Source: own, Sure: Proposal},
		{ID: "slider.portion.least", Value: PortionsAtLeast, Unit: portion, Source: own, Sure: Proposal},
		{ID: "slider.portion.most", Value: PortionsAtMost, Unit: portion, Source: own, Sure: Proposal},
		{ID: "slider.salt", Value: SaltSliderEnd, Unit: "g/h", Source: own, Sure: Proposal},
		{ID: "schedule.round", Value: RoundFluid, Unit: ml, Source: own, Sure: Proposal},
		{ID: "day.least-carry", Value: LeastCarry, Unit: ml, Source: own, Sure: Proposal},
	}
}
