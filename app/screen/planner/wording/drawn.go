package wording

import (
	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/internal/plan"
)

// foodDrawn is how high a portion of food is drawn on a column of drinks, in the
// mL of the column: food has no volume worth drawing.
const foodDrawn = 60.0

// PartsOf are what a mix is drawn as: drinks by volume, food on top of them.
// What is at nothing has no height, so that there are always as many.
func PartsOf(drink [plan.Drinks]float64, food [plan.Foods]float64) []chart.Part {
	list := make([]chart.Part, 0, len(drink)+1)
	for i, ml := range drink {
		list = append(list, chart.Part{Of: desk.Substance(plan.Slot(i)), Value: ml})
	}
	portions := 0.0
	for _, x := range food {
		portions += x
	}
	return append(list, chart.Part{Of: look.Food, Value: portions * foodDrawn})
}

// MixParts are the parts of a whole mix.
func MixParts(mix plan.Mix) []chart.Part {
	var drink [plan.Drinks]float64
	var food [plan.Foods]float64
	copy(drink[:], mix[plan.Water:plan.Food1])
	copy(food[:], mix[plan.Food1:plan.Salt])
	return PartsOf(drink, food)
}

// Joined are two texts with a comma between them, or the one there is.
func (sp Speaker) Joined(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + sp.Say("format.comma") + b
}

// QuarterHours is how far apart marks of time stand: so that there are no more
// than seven.
func QuarterHours(minutes float64) float64 {
	every := 15.0
	for minutes/every > 7 {
		every *= 2
	}
	return every
}
