package proposal

import "math"

// roundingTolerance is what rounding may come to, of a value or of one.
const roundingTolerance = 1e-9

// Passes reports that a value is above a limit by more than rounding.
func Passes(x, most float64) bool { return x > most+roundingTolerance*(1+math.Abs(most)) }

// alike reports that two values differ by no more than rounding.
func alike(a, b float64) bool { return !Passes(a, b) && !Passes(b, a) }

// wholes counts the whole parts of a value: what lacks no more than rounding is one.
func wholes(x, part float64) float64 { return math.Floor(x/part + roundingTolerance) }

// parts counts the parts of a value, a begun one as one.
func parts(x, part float64) float64 { return math.Ceil(x/part - roundingTolerance) }

// FloorTo rounds down to a multiple of a grain, never below zero.
func FloorTo(x, grain float64) float64 { return max(0, wholes(x, grain)*grain) }

// CeilTo rounds up to a multiple of a grain.
func CeilTo(x, grain float64) float64 { return parts(x, grain) * grain }
