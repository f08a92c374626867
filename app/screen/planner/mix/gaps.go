package mix

import (
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
)

// gaps says what of the habit a plan cannot calculate with: what counts as plain
// water, and what is left out.
func gaps(sp wording.Speaker, c consult.Case) string {
	var drinks, foods []string
	for _, g := range c.Gaps() {
		name, at := g.Name, sp.Words.Number(float64(g.Item), 0)
		switch {
		case g.Food && name == "":
			foods = append(foods, sp.Say("planner.gap.food", at))
		case g.Food:
			foods = append(foods, name)
		case name == "":
			drinks = append(drinks, sp.Say("planner.gap.bottle", at))
		default:
			drinks = append(drinks, name)
		}
	}
	text := ""
	if len(drinks) > 0 {
		text = sp.Say("planner.gap.drinks", sp.Words.List(drinks))
	}
	if len(foods) > 0 {
		text = wording.Sentences(text, sp.Say("planner.gap.foods", sp.Words.List(foods)))
	}
	if urine := c.HabitUrine(); urine > 0 {
		text = wording.Sentences(text, sp.Say("planner.gap.urine", sp.By.Amount(urine, quantity.Litre)))
	}
	return text
}
