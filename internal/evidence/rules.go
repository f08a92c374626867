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
func ruleLimits() []Limit {
	r := func(low, high float64) quantity.Range { return quantity.Range{Low: low, High: high} }
	return []Limit{
		{StepFluid, quantity.LitrePerHour, r(0.03, 0.4), r(0.01, 2), Proposal},
		{StepCarbohydrate, quantity.GramPerHour, r(3, 30), r(1, 120), Proposal},
		{DrinkStep, quantity.Millilitre, r(50, 250), r(50, 250), Proposal},
		{StepSessions, quantity.None, r(1, 12), r(1, 100), Proposal},
		{SessionsAWeek, quantity.None, r(1, 14), r(0.25, 28), Proposal},
		{ClearDays, quantity.None, r(0, 28), r(0, 365), Proposal},
		{AimCarbohydrate, quantity.GramPerHour, r(0, 90), r(0, 150), Proposal},
		{AimSodium, quantity.MilligramPerHour, r(0, 1500), r(0, 4000), Proposal},
		{AimDrinking, quantity.LitrePerHour, r(0.1, 1.2), r(0.05, 3), Proposal},
		{AimStrength, quantity.PerCent, r(2, 8), r(0, 16), Proposal},
	}
}
