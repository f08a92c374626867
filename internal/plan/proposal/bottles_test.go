package proposal

import (
	"math"
	"testing"

	"ebbwell/internal/evidence"
)

// TestWholeBottlesFallShortOfNothing: with bottles that are owned every route is there that
// any volumes would find, brings as much carbohydrate and sodium, and no more than a little
// less to drink; and where the volumes are not whole bottles, it is said.
func TestWholeBottlesFallShortOfNothing(t *testing.T) {
	whole, loose := 0, 0
	for seed := range uint64(1500) {
		d := seeded(seed)
		c := d.draw()
		anyVolume := Propose(&c)
		c.Bottles = oneOf(d, []float64{500}, []float64{500, 750}, []float64{330, 600}, []float64{750, 1000})
		p := Propose(&c)
		for way, r := range anyVolume.Routes {
			own := p.Routes[way]
			if !r.Exists {
				continue
			}
			less := float64(own.Misses.Fluid-r.Misses.Fluid) * p.Limits.Increment
			if !own.Exists || own.Misses.Carbohydrate > r.Misses.Carbohydrate || own.Misses.Sodium > r.Misses.Sodium || less > evidence.BottlesShort {
				t.Errorf("seed %d, route %d: %+v with bottles of %v, %+v without", seed, way, own.Misses, c.Bottles, r.Misses)
			}
			if !said(&p, SayBottles) && !c.bottled(own.Aim) && own.Aim != r.Aim {
				t.Errorf("seed %d, route %d: %v is no whole bottles of %v, and it is not said", seed, way, own.Aim, c.Bottles)
			}
		}
		switch {
		case said(&p, SayBottles):
			loose++
		case p.Outcome == Change:
			whole++
		}
	}
	if whole < 100 || loose < 100 {
		t.Errorf("whole bottles were proposed %d times, any volumes %d times: one of them hardly ever", whole, loose)
	}
}

// bottled reports that each drink of a mix that is not as in the habit comes to whole bottles.
func (c *Case) bottled(m Mix) bool {
	for i, x := range m {
		k := c.Sources[i].Kind
		if (k != Water && k != Drink) || alike(x, c.Habit[i]) {
			continue
		}
		ok := false
		for _, sum := range bottleSums(c.Bottles, math.Ceil(x), 0) {
			ok = ok || alike(sum, x)
		}
		if !ok {
			return false
		}
	}
	return true
}

// TestWhatWholeBottlesHaveToReach: each route that any volumes have, as much carbohydrate and
// sodium, and no more than 100 mL less to drink.
func TestWhatWholeBottlesHaveToReach(t *testing.T) {
	one := func(fluid, carbohydrate, sodium int) Route {
		return Route{Exists: true, Misses: Misses{Fluid: fluid, Carbohydrate: carbohydrate, Sodium: sodium}}
	}
	for _, c := range []struct {
		what      string
		own, any  Route
		increment float64
		reaches   bool
	}{
		{"as much", one(4, 1, 2), one(4, 1, 2), 50, true},
		{"50 mL less", one(5, 0, 0), one(4, 0, 0), 50, true},
		{"100 mL less", one(4, 0, 0), one(2, 0, 0), 50, true},
		{"150 mL less", one(5, 0, 0), one(2, 0, 0), 50, false},
		{"100 mL less in a long session", one(3, 0, 0), one(2, 0, 0), 100, true},
		{"200 mL less in a long session", one(2, 0, 0), one(0, 0, 0), 100, false},
		{"more", one(0, 0, 0), one(4, 1, 1), 50, true},
		{"less carbohydrate", one(0, 2, 0), one(4, 1, 0), 50, false},
		{"less sodium", one(0, 0, 2), one(4, 0, 1), 50, false},
		{"no route", Route{}, one(9, 9, 9), 50, false},
		{"a route more", one(9, 9, 9), Route{}, 50, true},
	} {
		for way := range Ways {
			own, other := Proposal{Limits: Limits{Increment: c.increment}}, Proposal{}
			own.Routes[way], other.Routes[way] = c.own, c.any
			if got := own.reaches(&other); got != c.reaches {
				t.Errorf("%s, route %d: %v", c.what, way, got)
			}
		}
	}
}
