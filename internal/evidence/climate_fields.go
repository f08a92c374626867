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
	AirPastBody         Field = "air past the body"
)

// Problem codes of weather, effort and travel.
const (
	CodeDewPoint  = "dew-point-above-air" // more vapour than the air can hold
	CodeInWater   = "in-water"            // exercise in water is not calculated
	CodeUnknown   = "unknown"             // a name no table has
	CodeOutOfFit  = "outside-the-fit"     // beyond where a formula was fitted
	CodeEndBefore = "ends-before-start"   // a stop that ends before it begins
)

// climateLimits lists the limits of these fields. They are judgement.
func climateLimits() []limitRow {
	return []limitRow{
		{DewPointField, quantity.DegreeCelsius, span{-20, 30}, span{-60, 40}, Proposal},
		{GlobeField, quantity.DegreeCelsius, span{0, 70}, span{-30, 90}, Proposal},
		{NaturalWetBulb, quantity.DegreeCelsius, span{-5, 35}, span{-30, 45}, Proposal},
		{RadiantTemperature, quantity.DegreeCelsius, span{-10, 80}, span{-40, 110}, Proposal},
		{Irradiance, quantity.WattPerSquareMetre, span{0, 1150}, span{0, 1400}, Proposal},
		{DirectShare, quantity.None, span{0, 0.9}, span{0, 1}, Proposal},
		{CosZenith, quantity.None, span{0, 1}, span{-1, 1}, Proposal},
		{Insulation, "clo", span{0.1, 1.0}, span{0, ClothingMax}, Proposal},
		{MetabolicRate, quantity.WattPerSquareMetre, span{60, 900}, span{30, 1500}, Proposal},
		{OwnSpeed, quantity.MetrePerSecond, span{0, 14}, span{0, 30}, Proposal},
		{Gradient, quantity.None, span{0, 0.15}, span{-0.4, 0.4}, Proposal},
		{TestMonths, "months", span{0, 24}, span{0, 600}, Proposal},
		{TestUncertainty, quantity.LitrePerHour, span{0, 0.5}, span{0, 6}, Proposal},
		{MonthField, quantity.None, span{1, 12}, span{1, 12}, Proposal},
		{HourField, quantity.Hour, span{0, 24}, span{0, 24}, Proposal},
		{HeatDay, "days", span{0, 30}, span{0, 365}, Proposal},
		{TripSessions, quantity.None, span{0, 60}, span{0, 1000}, Proposal},
		{Servings, quantity.None, span{0, 12}, span{0, 100}, Proposal},
		{PackingMargin, quantity.None, span{0, 0.5}, span{0, 2}, Proposal},
		{FlightHours, quantity.Hour, span{0, 20}, span{0, 48}, Proposal},
		{WalkingSpeed, quantity.MetrePerSecond, span{0, 2.5}, span{0, 6}, Proposal},
	}
}
