package evidence

import "ebbwell/internal/quantity"

// What a session makes a body sweat, before any test.
const (
	FloorShare          = 0.30   // of M - W: sweat that comes however cool it is
	FloorSmooth         = 100.0  // W/m²
	CapacitySmooth      = 80.0   // W/m²
	WettednessSharpness = 8.0    // how sharply the skin stops getting wetter
	SweatFlowMost       = 2000.0 // g/(m²·h)
	SweatFlowSharpness  = 4.0
)

// Where the heat balance is weak.
const (
	CoolNeed        = 90.0 // W/m² over the floor
	CoolWidth       = 70.0 // W/m²
	HotWettedness   = 1.1  // of the highest
	HotWidth        = 0.15
	FastAir         = 4.5 // m/s
	FastAirWidth    = 0.8 // m/s
	CoolWeak        = 2.7
	HotWeak         = 0.5
	FastAirWeak     = 1.5
	CoolLowEnd      = 1.4
	HotLowEnd       = 0.4
	FastAirLowEnd   = 0.6
	LimitUnsureNeed = 150.0 // W/m², below it the limit of drinking is unsure
)

// A session's own noise, variance of the logarithm of a rate.
const (
	DayShare  = 0.09
	DayFlow   = 20.0 // W/m²
	DayEffort = 0.3  // of the error of the metabolic rate
)

// How alike two sessions are: the difference that counts as one step.
const (
	LikeFirst      = 1.0  // ln of the first figure
	LikeEffort     = 1.5  // ln of the metabolic rate
	LikeAir        = 40.0 // °C
	LikeSpeed      = 3.5  // ln of the air past the body
	LikeSpeedLeast = 0.3  // m/s
	LikeClothing   = 0.8  // clo
	LikeState      = 2.0  // steps from untrained to acclimatised
	LikeSeated     = 1.0
	LikeMonths     = 60.0 // months
)

// What tests weigh.
const (
	StartOffset   = 0.33 // ln of a usual rate over the first figure
	StartSD       = 0.23 // ln SD between athletes
	TestErrorMost = 0.4  // of the rate
	AgreeTests    = 6.0  // tests that the usual agreement counts for
	AgreeLeast    = 0.8
	OddTest       = 2.6 // SD: check the inputs
	StartAthletes = 8.0 // of the practice's own, from which they give the start; as many the usual one counts for
	StartMost     = 64  // of them, the last tested: the start's standard error is 0.03 then
	StartInside   = 0.90
	StartBelow    = 0.05
)

// Words read off the share of a range that no test has shown.
const (
	TestedShare = 0.60
	NearShare   = 0.80
	AboveTested = 0.10 // ln of the first figure over that of every test
	NamedApart  = 0.10 // steps of likeness: a difference worth naming
	NamedVapour = 0.7  // kPa
)

// What the ranges were held against: tests left out under three invented truths.
// The package climate's tests count them again.
const (
	HeldTests     = 7299.0
	HeldInside    = 96.0 // %
	HeldBelow     = 2.0  // %, below the low end
	HeldCoolBelow = 13.0 // %, in cool air under the worst of them
)

// heldEntries lists what the ranges were held against.
func heldEntries() []Entry {
	source := Citation{Code: "counted"}
	return []Entry{
		{ID: "climate.held.tests", Value: HeldTests, Source: source, Sure: Derived},
		{ID: "climate.held.inside", Value: HeldInside, Unit: quantity.PerCent, Source: source, Sure: Derived},
		{ID: "climate.held.below", Value: HeldBelow, Unit: quantity.PerCent, Source: source, Sure: Derived},
		{ID: "climate.held.cool-below", Value: HeldCoolBelow, Unit: quantity.PerCent, Source: source, Sure: Derived},
	}
}

// firstFigureEntries lists what a session makes a body sweat, before any test.
func firstFigureEntries() []Entry {
	source := ownProposal()
	return []Entry{
		{ID: "climate.rule.floor.share", Value: FloorShare, Source: source, Sure: Proposal},
		{ID: "climate.rule.floor.smooth", Value: FloorSmooth, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Proposal},
		{ID: "climate.rule.capacity.smooth", Value: CapacitySmooth, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Proposal},
		{ID: "climate.rule.wettedness.sharpness", Value: WettednessSharpness, Source: source, Sure: Proposal},
		{ID: "climate.rule.flow.most", Value: SweatFlowMost, Unit: "g/(m²·h)", Source: source, Sure: Proposal},
		{ID: "climate.rule.flow.sharpness", Value: SweatFlowSharpness, Source: source, Sure: Proposal},
	}
}

// weaknessEntries lists where the heat balance is weak.
func weaknessEntries() []Entry {
	source := ownProposal()
	return []Entry{
		{ID: "climate.rule.cool.need", Value: CoolNeed, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Proposal},
		{ID: "climate.rule.cool.width", Value: CoolWidth, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Proposal},
		{ID: "climate.rule.hot.wettedness", Value: HotWettedness, Source: source, Sure: Proposal},
		{ID: "climate.rule.hot.width", Value: HotWidth, Source: source, Sure: Proposal},
		{ID: "climate.rule.fast-air.speed", Value: FastAir, Unit: quantity.MetrePerSecond, Source: source, Sure: Proposal},
		{ID: "climate.rule.fast-air.width", Value: FastAirWidth, Unit: quantity.MetrePerSecond, Source: source, Sure: Proposal},
		{ID: "climate.rule.cool.weak", Value: CoolWeak, Source: source, Sure: Proposal},
		{ID: "climate.rule.hot.weak", Value: HotWeak, Source: source, Sure: Proposal},
		{ID: "climate.rule.fast-air.weak", Value: FastAirWeak, Source: source, Sure: Proposal},
		{ID: "climate.rule.cool.low-end", Value: CoolLowEnd, Source: source, Sure: Proposal},
		{ID: "climate.rule.hot.low-end", Value: HotLowEnd, Source: source, Sure: Proposal},
		{ID: "climate.rule.fast-air.low-end", Value: FastAirLowEnd, Source: source, Sure: Proposal},
		{ID: "climate.rule.limit-unsure", Value: LimitUnsureNeed, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Proposal},
	}
}

// dayEntries lists a session's own noise.
func dayEntries() []Entry {
	source := ownProposal()
	return []Entry{
		{ID: "climate.rule.day.share", Value: DayShare, Source: source, Sure: Proposal},
		{ID: "climate.rule.day.flow", Value: DayFlow, Unit: quantity.WattPerSquareMetre, Source: source, Sure: Proposal},
		{ID: "climate.rule.day.effort", Value: DayEffort, Source: source, Sure: Proposal},
	}
}

// likenessEntries lists how alike two sessions are.
func likenessEntries() []Entry {
	source := ownProposal()
	return []Entry{
		{ID: "climate.rule.like.first", Value: LikeFirst, Source: source, Sure: Proposal},
		{ID: "climate.rule.like.effort", Value: LikeEffort, Source: source, Sure: Proposal},
		{ID: "climate.rule.like.air", Value: LikeAir, Unit: quantity.DegreeCelsius, Source: source, Sure: Proposal},
		{ID: "climate.rule.like.speed", Value: LikeSpeed, Source: source, Sure: Proposal},
		{ID: "climate.rule.like.speed-least", Value: LikeSpeedLeast, Unit: quantity.MetrePerSecond, Source: source, Sure: Proposal},
		{ID: "climate.rule.like.clothing", Value: LikeClothing, Unit: "clo", Source: source, Sure: Proposal},
		{ID: "climate.rule.like.state", Value: LikeState, Source: source, Sure: Proposal},
		{ID: "climate.rule.like.seated", Value: LikeSeated, Source: source, Sure: Proposal},
		{ID: "climate.rule.like.months", Value: LikeMonths, Unit: "months", Source: source, Sure: Proposal},
	}
}

// testWeightEntries lists what tests weigh, and the words read off the range.
func testWeightEntries() []Entry {
	source := ownProposal()
	return []Entry{
		{ID: "climate.rule.start.offset", Value: StartOffset, Source: source, Sure: Proposal},
		{ID: "climate.rule.start.sd", Value: StartSD, Source: source, Sure: Proposal},
		{ID: "climate.rule.start.athletes", Value: StartAthletes, Source: source, Sure: Proposal},
		{ID: "climate.rule.start.most", Value: StartMost, Source: source, Sure: Proposal},
		{ID: "climate.rule.start.inside", Value: StartInside, Source: source, Sure: Proposal},
		{ID: "climate.rule.start.below", Value: StartBelow, Source: source, Sure: Proposal},
		{ID: "climate.rule.test-error", Value: TestErrorMost, Source: source, Sure: Proposal},
		{ID: "climate.rule.agree.tests", Value: AgreeTests, Source: source, Sure: Proposal},
		{ID: "climate.rule.agree.least", Value: AgreeLeast, Source: source, Sure: Proposal},
		{ID: "climate.rule.odd-test", Value: OddTest, Source: source, Sure: Proposal},
		{ID: "climate.rule.tested", Value: TestedShare, Source: source, Sure: Proposal},
		{ID: "climate.rule.near", Value: NearShare, Source: source, Sure: Proposal},
		{ID: "climate.rule.named.apart", Value: NamedApart, Source: source, Sure: Proposal},
		{ID: "climate.rule.named.vapour", Value: NamedVapour, Unit: quantity.Kilopascal, Source: source, Sure: Proposal},
		{ID: "climate.rule.above-tested", Value: AboveTested, Source: source, Sure: Proposal},
	}
}
