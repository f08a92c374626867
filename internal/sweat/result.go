package sweat

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// Result is what a sheet says, as far as it is filled.
type Result struct {
	// Balance are the lines of the running balance, in order; those that are
	// known add up to the sweat loss.
	Balance     []Line
	Bottles     []BottleResult
	Corrections []Correction
	Fluid       Fluid
	Sodium      Sodium
	Markers     []MarkerResult
	Flags       []Flag
	// Narrowing is what would make the two headline ranges narrower.
	Narrowing Narrowing
	Problems  []evidence.Problem
	Missing   []Missing
}

// The lines of the balance, in their order.
const (
	LineBody        = "line.body-mass"
	LineDrunk       = "line.drunk"
	LineEaten       = "line.eaten"
	LineUrine       = "line.urine"
	LineStool       = "line.stool"
	LineRespiratory = "line.respiratory"
	LineExchange    = "line.exchange"
)

// Line is one line of the balance.
type Line struct {
	ID string
	// Kilograms is signed as it enters the sweat loss.
	Kilograms float64
	// Known is false for a line that is missing or refused.
	Known bool
	// Bounds are the ends where the line is only known between two.
	Bounds quantity.Range
}

// Fluid are the figures of the mass balance.
type Fluid struct {
	Loss       figure.Figure // sweat loss, L
	Rate       figure.Figure // sweat rate, L/h
	RateByMass figure.Figure // mL/kg/h
	MassChange figure.Figure // change of body mass, %; negative for a loss
	// Deficit is the deficit at the end, what the scale says, in L (a kilogram is
	// a litre); DeficitShare is it in % of the mass before.
	Deficit, DeficitShare figure.Figure
	// NotReplaced is the sweat that was not drunk again, L: beside the deficit
	// there are foods, breath, gas exchange and urine.
	NotReplaced  figure.Figure
	Drunk        figure.Figure // fluid drunk, L
	DrinkingRate figure.Figure // L/h
	Replaced     figure.Figure // share of the sweat loss drunk, %
	FoodWater    float64       // L, for information
	// Bias is how much too high the field method's rate may be, L/h: the low end
	// of its range reaches down for it. Zero where breath and gas exchange were
	// taken off.
	Bias float64
}

// Sodium are the figures of the patches. Where only sites without an equation
// are there, a figure has no single value: Known is false, Ranged is true and
// Range is all there is.
type Sodium struct {
	Concentration figure.Figure // whole body, mmol/L
	Loss          figure.Figure // mg
	LossRate      figure.Figure // mg/h
	Millimoles    figure.Figure // mmol
	MillimoleRate figure.Figure // mmol/h
	// Hold is the intake that would hold plasma sodium, mg/h, given the share
	// of the loss replaced; never above the loss.
	Hold    figure.Figure
	Patches []PatchResult
	// Sites are the equation sites the concentration is based on.
	Sites []evidence.Site
	// Methods are the methods of the patches used.
	Methods []evidence.Method
}

// Missing is something not entered yet.
type Missing struct {
	ID string
	// Item counts from 1 where there are several.
	Item int
	// Effect is how much too high the sweat loss reads without it, kg, from
	// Low to High; negative for too low, zero when it cannot be said.
	Effect quantity.Range
	// Optional: figures have their range without it.
	Optional bool
}

// Flag is something in the figures that must be spoken of.
type Flag struct {
	ID string
	// Size in the unit the flag's id names.
	Size float64
	// Certain is false while the range of the figure still holds the other
	// side.
	Certain bool
}

// miss notes something missing.
func (s *sheet) miss(m Missing) { s.missing = append(s.missing, m) }
