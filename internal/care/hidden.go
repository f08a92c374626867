package care

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// hiddenStep is what an amount per kilogram is rounded down to where mass is
// hidden, mL; down, so that a light child is never told to drink more. In finer
// steps the mass could be worked out of the advice it came from: 100 mL of 6
// mL/kg leave 17 kg open. Our own proposal.
const hiddenStep = 100.0

// rounding keeps the dust of a product from taking a whole step.
const rounding = 1e-9

// BeforeHidden is what is written of the drinks before a session where body mass
// is hidden, mL: early is the amount calculated for four hours before. The later
// drink follows from what is written of the early one, in the proportion of the
// two advices: rounded by itself it would narrow the mass down again. Wherever
// both are written, on screen or on paper, they are these.
func BeforeHidden(early quantity.Millilitres) (shownEarly, shownLate quantity.Millilitres) {
	down := func(x float64) float64 { return max(hiddenStep, math.Floor(x/hiddenStep+rounding)*hiddenStep) }
	const (
		lateLow, lateHigh   = evidence.BeforeLateLow, evidence.BeforeLateHigh
		earlyLow, earlyHigh = evidence.BeforeEarlyLow, evidence.BeforeEarlyHigh
	)
	first := down(quantity.RoundTo(float64(early), evidence.FluidIncrement))
	return quantity.Millilitres(first), quantity.Millilitres(down(first * (lateLow + lateHigh) / (earlyLow + earlyHigh)))
}

// Where mass is hidden everything is calculated with the middle of a class of body
// mass, never with the mass itself: whatever is then shown, in whatever combination,
// leaves the whole class open. The classes begin at massFirst, kg, and each ends at
// massRatio times its beginning, so that a class is at least 31 % of any mass in it.
// What is lost and drunk is not touched; of the corrections for breath and gas
// exchange, about 0.14 L, a fifth at most. Our own proposal.
const (
	massFirst = 20.0
	massRatio = 1.45
)

// HiddenMass is the mass, kg, that is calculated with for one whose body mass is
// hidden; zero for none.
func HiddenMass(mass float64) float64 {
	if !(mass > 0) || math.IsInf(mass, 0) {
		return mass
	}
	low, high := HiddenClass(mass)
	return math.Sqrt(low * high)
}

// HiddenClass is the class of a mass above zero, kg: from low up to high, any mass in
// it shows the same.
func HiddenClass(mass float64) (low, high float64) {
	class := math.Floor(math.Log(mass/massFirst) / math.Log(massRatio))
	return massFirst * math.Pow(massRatio, class), massFirst * math.Pow(massRatio, class+1)
}
