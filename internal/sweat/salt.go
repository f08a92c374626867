package sweat

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// Millimoles of an amount of sodium: 22.990 mg each.
func Millimoles(sodium quantity.Milligrams) float64 {
	return float64(sodium) / evidence.SodiumMolarMass
}

// SodiumOfLabel is the sodium behind the salt that a label of the European
// Union gives: salt is sodium times 2.5 there, a rounded factor.
func SodiumOfLabel(salt quantity.Grams) quantity.Milligrams {
	return salt.Milligrams() / evidence.LabelSaltPerSodium
}

// LabelOfSodium is the salt that such a label gives for an amount of sodium.
func LabelOfSodium(sodium quantity.Milligrams) quantity.Grams {
	return sodium.Grams() * evidence.LabelSaltPerSodium
}
