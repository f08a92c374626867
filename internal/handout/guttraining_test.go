package handout

import (
	"strings"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// The weeks of gut training stand on the athlete's page where that was chosen, and
// nowhere else.
func TestGutTrainingOnThePage(t *testing.T) {
	h, w := openHouse(t), english(t)
	c, _ := h.caseOf(t, "Ravka")
	o, _ := consult.InForce(c.Plan)
	for _, chosen := range [...]bool{false, true} {
		p := c.Plan.Clone()
		p.Aims.CarbohydrateLow, p.Aims.CarbohydrateHigh = record.Num(60, quantity.GramPerHour), record.Num(80, quantity.GramPerHour)
		consult.SetWish(&p, consult.GutOnPage, chosen)
		page := AthletePageOf(h.open(t, p, c.Athlete, c.Basis), o, h.practice, w)
		text := plain(all(press(t).AthletePage(page)))
		has := strings.Contains(text, w.Say("handout.gut.title")) && strings.Contains(text, "60 g of carbohydrate an hour, as 20 g every 20 minutes")
		if has != chosen || (len(page.Gut) > 2) != chosen {
			t.Errorf("chosen: %v, %d weeks: %s", chosen, len(page.Gut), text)
		}
	}
}
