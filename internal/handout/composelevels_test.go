package handout

import (
	"strings"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// The page says how far each bottle is filled and where it stands after half-time;
// what is poured is what the rows add up to.
func TestComposedLevels(t *testing.T) {
	h := openHouse(t)
	w := english(t)
	c, _ := h.caseOf(t, "Ravka")
	o, _ := consult.InForce(c.Plan)
	p := c.Plan.Clone()
	p.Chances = []record.Chance{
		{Name: "quarter-interval", AtMinute: record.Num(20, quantity.Minute), Seconds: record.Num(120, quantity.Second)},
		{Name: "half-time", AtMinute: record.Num(45, quantity.Minute), Seconds: record.Num(600, quantity.Second)},
		{Name: "quarter-interval", AtMinute: record.Num(70, quantity.Minute), Seconds: record.Num(120, quantity.Second)},
	}
	page := AthletePageOf(h.open(t, p, c.Athlete, c.Basis), o, h.practice, w)
	poured, total := quantity.Millilitres(0), sum(page.During.Total)
	for _, b := range page.During.Bottles {
		poured += b.Fill
		if b.By != "half-time" || b.Left >= b.Fill || b.Left < 0 {
			t.Errorf("bottle %+v", b)
		}
	}
	if len(page.During.Bottles) == 0 || poured != total {
		t.Errorf("%v mL in %d bottles, the rows come to %v", poured, len(page.During.Bottles), total)
	}
	press, err := NewPress(w, paper.A4())
	if err != nil {
		t.Fatal(err)
	}
	note := plain(press.duringNote(page.During, press.amounts(page.Terms)))
	if !strings.Contains(note, ": fill to ") || !strings.Contains(note, "after half-time") {
		t.Errorf("the page says %q", note)
	}
	p.Chances = p.Chances[:1]
	p.Chances[0].Maybe = true
	for _, b := range AthletePageOf(h.open(t, p, c.Athlete, c.Basis), o, h.practice, w).During.Bottles {
		if b.By != "" {
			t.Errorf("a break that may not happen is a landmark: %+v", b)
		}
	}
}
