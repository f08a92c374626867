package climate

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Body is what heat exchange needs to know of a body.
type Body struct {
	Mass   quantity.Kilograms
	Height quantity.Metres
}

// Area is the body surface area in m².
//
//	A = 0.202 m^0.425 h^0.725
//
// m in kg, h in m. Source: DuBois & DuBois 1916, as ISO 7933 uses it. Example:
// 75 kg and 1.80 m give 1.938 m².
func (b Body) Area() float64 {
	return evidence.BodyAreaScale * math.Pow(float64(b.Mass), evidence.BodyAreaMassPower) *
		math.Pow(float64(b.Height), evidence.BodyAreaHeightPower)
}

// values are the numbers of a body with their fields.
func (b Body) values() []fieldValue {
	return []fieldValue{{evidence.BodyMass, float64(b.Mass)}, {evidence.Height, float64(b.Height)}}
}
