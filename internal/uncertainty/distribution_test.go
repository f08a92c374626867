package uncertainty

import (
	"math"
	"math/rand/v2"
)

// Shape is the form of a distribution.
type Shape int

// The forms that inputs have (JCGM 101:2008, 6.4).
const (
	// Normal has standard deviation Spread.
	Normal Shape = iota
	// Rectangular lies within Spread either side of its centre.
	Rectangular
	// Arcsine is U-shaped within Spread either side: a cycling temperature.
	Arcsine
)

// Distribution is how an input may lie about its centre.
type Distribution struct {
	Shape  Shape
	Centre float64
	// Spread is the standard deviation of a normal distribution and the half
	// width of the others.
	Spread float64
}

// U is the standard uncertainty of the distribution.
func (d Distribution) U() float64 {
	switch d.Shape {
	case Rectangular:
		return d.Spread / math.Sqrt(3)
	case Arcsine:
		return d.Spread / math.Sqrt2
	}
	return d.Spread
}

// draw takes one value from a source of random numbers.
func (d Distribution) draw(from *rand.Rand) float64 {
	switch d.Shape {
	case Rectangular:
		return d.Centre + d.Spread*(2*from.Float64()-1)
	case Arcsine:
		return d.Centre + d.Spread*math.Sin(2*math.Pi*from.Float64())
	}
	return d.Centre + d.Spread*from.NormFloat64()
}
