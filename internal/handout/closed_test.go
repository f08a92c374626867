package handout

import (
	"strings"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Where one may not drink, page and card say so in the place of a schedule, and the
// page still says what to drink before and after.
func TestPageOfASessionWithoutDrinking(t *testing.T) {
	h, w := openHouse(t), english(t)
	c, _ := h.caseOf(t, "Ravka")
	o, _ := consult.InForce(c.Plan)
	p := c.Plan.Clone()
	p.Chances = []record.Chance{{Name: plan.NoDrinking, AtMinute: record.Num(0, quantity.Minute), Seconds: record.Num(0, quantity.Second)}}
	closed := h.open(t, p, c.Athlete, c.Basis)
	page := AthletePageOf(closed, o, h.practice, w)
	if !page.During.Closed || len(page.During.Chances)+len(page.During.PerHour)+len(page.Bag) > 0 || page.Before.Early <= 0 {
		t.Errorf("%+v", page)
	}
	text := plain(all(press(t).AthletePage(page)))
	card := plain(all(press(t).KitBagCard(KitBagCardOf(closed, o, h.practice, w))))
	for name, has := range map[string]string{"page": text, "card": card} {
		if !strings.Contains(has, w.Say("handout.during.closed")) || strings.Contains(has, w.Say("handout.during.stop")) || strings.Contains(has, w.Say("handout.caution.breaks")) {
			t.Errorf("the %s: %s", name, has)
		}
	}
}
