package quantity

import "math"

// Range is a low and a high end; the 95 % range unless its owner says otherwise.
type Range struct {
	Low, High float64
}

// Width is High - Low; never negative for a range made by this program.
func (r Range) Width() float64 { return r.High - r.Low }

// Contains reports whether x lies in the range, ends included.
func (r Range) Contains(x float64) bool { return x >= r.Low && x <= r.High }

// Round rounds x to a number of decimals, halves away from zero; decimals may
// be negative to round to tens and hundreds. It never returns a negative zero.
func Round(x float64, decimals int) float64 {
	p := math.Pow(10, float64(decimals))
	r := math.Round(x*p) / p
	if r == 0 {
		return 0
	}
	return r
}

// RoundTo rounds x to the nearest multiple of step, halves away from zero;
// a step of zero or less leaves x as it is.
func RoundTo(x, step float64) float64 {
	if step <= 0 {
		return x
	}
	return math.Round(x/step) * step
}

// Decimals is how many decimals a figure in a unit is shown with: no more
// than a field test can carry.
func Decimals(u Unit) int {
	switch u {
	case Kilogram, Litre, LitrePerHour, LitrePerKilogram, FluidOuncePerHour:
		return 2
	case Pound, PerCent, DegreeCelsius, DegreeFahrenheit, MetrePerSecond,
		KilometrePerHour, MilePerHour, Kilometre, Mile, Met, MillilitrePerKilogram, Hour:
		return 1
	case GramPerMillilitre:
		return 3
	}
	return 0
}
