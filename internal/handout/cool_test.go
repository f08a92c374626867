package handout

import (
	"slices"
	"strings"
	"testing"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"

	"ebbwell/internal/consult"
)

// In cool air, where little has to evaporate, the athlete's page and card say that the loss
// is uncertain, to drink to thirst, and to weigh; in mild air they do not.
func TestCoolAirOnThePage(t *testing.T) {
	h, w := openHouse(t), english(t)
	const sentence = "In cool air, how much you lose is uncertain. Drink to thirst. Weigh before and after."
	a := h.athlete(t, "Ravka")
	p, home := h.plan(t, a)
	for celsius, cool := range map[float64]bool{5: true, 24: false} {
		p.Basis.Air = home.Air
		p.Basis.Air.Temperature, p.Basis.Air.Sun = record.Num(celsius, quantity.DegreeCelsius), record.SunNone
		b, err := consult.BasisFor(p, a, home.Tests, p.CreatedAt, h.desk)
		if err != nil || b.Plan.Cool != cool {
			t.Fatalf("%g °C: cool %v, %v", celsius, b.Plan.Cool, err)
		}
		c := h.open(t, p, a, b)
		for _, o := range p.Options {
			over := len(c.Planner.Evaluate(0, c.MixOf(o)).Guards.Codes()) > 0 && c.Planner.Evaluate(0, c.MixOf(o)).Guards.Stops()
			page, card := AthletePageOf(c, o, h.practice, w), KitBagCardOf(c, o, h.practice, w)
			want := cool && !over
			if got := slices.Contains(page.Terms.Cautions, sentence); got != want {
				t.Errorf("%g °C, %s: the page says %q", celsius, o.Name, page.Terms.Cautions)
			}
			if got := slices.Contains(card.Terms.Cautions, sentence); got != want {
				t.Errorf("%g °C, %s: the card says %q", celsius, o.Name, card.Terms.Cautions)
			}
			doc := press(t).AthletePage(page)
			if len(doc.Pages) != 1 && !over {
				t.Errorf("%g °C, %s: %d sides", celsius, o.Name, len(doc.Pages))
			}
			if laid := strings.Join(strings.Fields(all(doc)), " "); strings.Contains(laid, "how much you lose is uncertain") != want {
				t.Errorf("%g °C, %s: printed is %q", celsius, o.Name, laid)
			}
		}
	}
}
