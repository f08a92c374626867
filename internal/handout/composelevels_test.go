package handout

import (
	"strings"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Where the bottles are known the page says at each break down to which line; what is
// poured is what the rows add up to, and each line is where the rows have come to.
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
	a := c.Athlete
	a.Bottles = ""
	consult.SetBottles(&p, nil)
	unknown := AthletePageOf(h.open(t, p, a, c.Basis), o, h.practice, w)
	consult.SetBottles(&p, []float64{600})
	page := AthletePageOf(h.open(t, p, a, c.Basis), o, h.practice, w)
	poured, total := quantity.Millilitres(0), sum(page.During.Total)
	for _, b := range page.Bag {
		if b.Substance != Food {
			poured += b.Fill
		}
	}
	if poured != total {
		t.Errorf("%v mL are poured, the rows come to %v", poured, total)
	}
	lines := 0
	for _, ch := range page.During.Chances {
		for _, s := range ch.Stands {
			lines++
			if s.Holds != 600 || s.Before-s.Left != ch.Volumes[s.Drink] || s.Before > s.Holds || s.Left < 0 {
				t.Errorf("at %s the bottle stands %+v, drunk are %v", ch.Name, s, ch.Volumes)
			}
		}
	}
	if lines < 3 {
		t.Errorf("%d lines", lines)
	}
	text := plain(all(press(t).AthletePage(page)))
	for _, must := range []string{"down to line 1, ", "Stop at the line on the bottle"} {
		if !strings.Contains(text, must) {
			t.Errorf("the page does not say %q: %s", must, text)
		}
	}
	text = plain(all(press(t).AthletePage(unknown)))
	if strings.Contains(text, "line 1") || strings.Contains(text, "Stop at the line") || !strings.Contains(text, "mouthfuls about ") {
		t.Errorf("bottles that nobody knows have lines: %s", text)
	}
	if !strings.Contains(text, "Bottle size not known: 500 mL assumed.") {
		t.Errorf("a size that is assumed is not said: %s", text)
	}
	consult.SetOwnBottles(&a, []consult.OwnBottle{{Name: "Blue bottle", Full: 600}, {Name: "Green bottle", Full: 500}})
	text = plain(all(press(t).AthletePage(AthletePageOf(h.open(t, p, a, c.Basis), o, h.practice, w))))
	for _, must := range []string{"Blue bottle (water), down to line 1, 150 mL left", "Green bottle (sports drink 6 %), at most to the end", "Green bottle: sports drink 6 %, filled to 380 mL"} {
		if !strings.Contains(text, must) {
			t.Errorf("the page of own bottles does not say %q: %s", must, text)
		}
	}
}

// A bottle that is filled several times says so in the bag.
func TestBagTellsHowOftenABottleIsFilled(t *testing.T) {
	p := press(t)
	am := p.amounts(Terms{})
	item := BagItem{Substance: Drink, Name: "sports drink", Bottle: "Right flask", Volume: 500, Fill: 500, Count: 4}
	if got := am.bagItem(item); !strings.HasSuffix(got, "filled to 500\u00a0mL, 4 times") {
		t.Errorf("four fillings read %q", got)
	}
	if item.Count = 1; strings.Contains(am.bagItem(item), "times") {
		t.Errorf("one filling reads %q", am.bagItem(item))
	}
}
