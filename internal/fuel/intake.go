package fuel

import (
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// Intake is what was eaten and drunk in a session beside the water.
type Intake struct {
	Carbohydrate     figure.Figure // available, g
	CarbohydrateRate figure.Figure // g/h
	Sodium           figure.Figure // mg
	SodiumRate       figure.Figure // mg/h
	// Share of the sodium lost that was taken in, %.
	SodiumShare figure.Figure
	// Bottles and Foods are the parts, in the order of the sheet.
	Bottles, Foods []Part
	// Unknown names the products whose carbohydrate or sodium is not known.
	Unknown []string
}

// Part is one bottle or food and what it held.
type Part struct {
	Item    int
	Product Product
	// Known is false while the amount, or the product, is not.
	Known bool
	// Grams is the mass taken; Millilitres the volume of a drink.
	Grams, Millilitres float64
	// Bounds of the volume of a shared bottle, mL.
	Bounds       quantity.Range
	Carbohydrate Content // g
	Sodium       Content // mg
}

// Filled is the part with what it held, where the amount is known.
func (p Part) Filled() Part {
	if p.Known {
		p.Carbohydrate = p.Product.Per100.AvailableCarbohydrate().Times(p.Grams / 100)
		p.Sodium = p.Product.Per100.Sodium.Times(p.Grams / 100)
	}
	return p
}
