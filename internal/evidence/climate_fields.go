package evidence

import "ebbwell/internal/quantity"

// The fields of weather, effort and travel that have limits beside the
// common ones.
const (
	DewPointField      Field = "dew point"
	GlobeField         Field = "globe temperature"
	NaturalWetBulb     Field = "natural wet bulb temperature"
	RadiantTemperature Field = "radiant temperature"
	Irradiance         Field = "strength of the sun"
	DirectShare        Field = "direct share of the sun"
	CosZenith          Field = "cosine of the sun's zenith"
	SunField           Field = "sun"
	Insulation         Field = "clothing insulation"
	HeatStateField     Field = "used to heat"
	MetabolicRate      Field = "metabolic rate"
	OwnSpeed           Field = "own speed"
	Gradient           Field = "gradient"
	TestMonths         Field = "months since the test"
	TestUncertainty    Field = "uncertainty of the sweat rate"
	PlaceField         Field = "place"
	MonthField         Field = "month"
	HourField          Field = "hour"
	HeatDay            Field = "day of acclimatisation"
	StopDates          Field = "dates of the stop"
	TripSessions       Field = "sessions"
	Servings           Field = "servings a session"
	PackingMargin      Field = "packing margin"
	FlightHours        Field = "hours awake on a flight"
	PostureField       Field = "posture"
	WalkingSpeed       Field = "walking speed"

	EvaporationNeeded   Field = "evaporation needed"
	EvaporationPossible Field = "evaporation possible"
)

// Problem codes of weather, effort and travel.
const (
	CodeDewPoint  = "dew-point-above-air" // more vapour than the air can hold
	CodeInWater   = "in-water"            // exercise in water is not reckoned
	CodeUnknown   = "unknown"             // a name no table has
	CodeOutOfFit  = "outside-the-fit"     // beyond where a formula was fitted
	CodeEndBefore = "ends-before-start"   // a stop that ends before it begins
)

// climateLimits lists the limits of these fields. They are judgement.
func climateLimits() []Limit {
	r := func(low, high float64) quantity.Range { return quantity.Range{Low: low, High: high} }
	return []Limit{
		{DewPointField, quantity.DegreeCelsius, r(-20, 30), r(-60, 40), Proposal},
		{GlobeField, quantity.DegreeCelsius, r(0, 70), r(-30, 90), Proposal},
		{NaturalWetBulb, quantity.DegreeCelsius, r(-5, 35), r(-30, 45), Proposal},
		{RadiantTemperature, quantity.DegreeCelsius, r(-10, 80), r(-40, 110), Proposal},
		{Irradiance, quantity.WattPerSquareMetre, r(0, 1150), r(0, 1400), Proposal},
		{DirectShare, quantity.None, r(0, 0.9), r(0, 1), Proposal},
		{CosZenith, quantity.None, r(0, 1), r(-1, 1), Proposal},
		{Insulation, "clo", r(0.1, 1.0), r(0, ClothingMax), Proposal},
		{MetabolicRate, quantity.WattPerSquareMetre, r(60, 900), r(30, 1500), Proposal},
		{OwnSpeed, quantity.MetrePerSecond, r(0, 14), r(0, 30), Proposal},
		{Gradient, quantity.None, r(0, 0.15), r(-0.4, 0.4), Proposal},
		{TestMonths, "months", r(0, 24), r(0, 600), Proposal},
		{TestUncertainty, quantity.LitrePerHour, r(0, 0.5), r(0, 6), Proposal},
		{MonthField, quantity.None, r(1, 12), r(1, 12), Proposal},
		{HourField, quantity.Hour, r(0, 24), r(0, 24), Proposal},
		{HeatDay, "days", r(0, 30), r(0, 365), Proposal},
		{TripSessions, quantity.None, r(0, 60), r(0, 1000), Proposal},
		{Servings, quantity.None, r(0, 12), r(0, 100), Proposal},
		{PackingMargin, quantity.None, r(0, 0.5), r(0, 2), Proposal},
		{FlightHours, quantity.Hour, r(0, 20), r(0, 48), Proposal},
		{WalkingSpeed, quantity.MetrePerSecond, r(0, 2.5), r(0, 6), Proposal},
	}
}
