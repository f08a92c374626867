package evidence

import "ebbwell/internal/quantity"

// The fields of the rules that size and space the steps of a plan.
const (
	StepFluid        Field = "fluid in a step"
	StepCarbohydrate Field = "carbohydrate in a step"
	DrinkStep        Field = "increment of a drink"
	StepSessions     Field = "sessions on a step"
	SessionsAWeek    Field = "sessions a week"
	ClearDays        Field = "days without anything new"
)

// The fields of what a plan is to meet.
const (
	AimCarbohydrate Field = "carbohydrate aim"
	AimSodium       Field = "sodium aim"
	AimDrinking     Field = "drinking rate aim"
	AimStrength     Field = "strength aim"
)

// ruleLimits lists the limits of these fields. They are judgement: within them a
// ladder can be built and practised.
func ruleLimits() []limitRow {
	return []limitRow{
		{StepFluid, quantity.LitrePerHour, span{0.03, 0.4}, span{0.01, 2}, Proposal},
		{StepCarbohydrate, quantity.GramPerHour, span{3, 30}, span{1, 120}, Proposal},
		{DrinkStep, quantity.Millilitre, span{50, 250}, span{50, 250}, Proposal},
		{StepSessions, quantity.None, span{1, 12}, span{1, 100}, Proposal},
		{SessionsAWeek, quantity.None, span{1, 14}, span{0.25, 28}, Proposal},
		{ClearDays, quantity.None, span{0, 28}, span{0, 365}, Proposal},
		{AimCarbohydrate, quantity.GramPerHour, span{0, 90}, span{0, 150}, Proposal},
		{AimSodium, quantity.MilligramPerHour, span{0, 1500}, span{0, 4000}, Proposal},
		{AimDrinking, quantity.LitrePerHour, span{0.1, 1.2}, span{0.05, 3}, Proposal},
		{AimStrength, quantity.PerCent, span{2, 8}, span{0, 16}, Proposal},
	}
}
