package desk

import (
	"ebbwell/app/kit/look"
	"ebbwell/internal/plan"
)

// Substance is the hue of a slot.
func Substance(slot plan.Slot) look.Substance {
	switch {
	case slot == plan.Water:
		return look.Water
	case slot.IsDrink():
		return look.Drink
	case slot.IsFood():
		return look.Food
	}
	return look.Salt
}
