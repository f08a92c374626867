package plan

import (
	"math"
	"testing"
)

// What would hold plasma sodium, and how far that may be off, worked by hand:
// 1.2 L/h of sweat (1.1 to 1.3) with 50 mmol/L of sodium (45 to 55) and 5 of
// potassium, 0.96 L/h drunk, by max(0, 55 - 159 (1 - 0.96/rate)) x rate x 22.99
// mg/h. In the middle 640.04; 879.14 at the slow end of the rate and 400.95 at
// the fast one, 502.10 and 777.98 at the ends of the sodium; both errors added
// as squares: 364.00 to 916.08.
func TestHoldHasBothEnds(t *testing.T) {
	p := &Planner{basis: Basis{SweatRate: Between(1.2, 1.1, 1.3), Sodium: Between(50, 45, 55), PotassiumMmolL: 5}}
	got := p.hold(0.96, Between(1380, 1000, 2000))
	for name, c := range map[string]struct{ got, want float64 }{
		"value": {got.Value, 640.04}, "low": {got.Low, 364.00}, "high": {got.High, 916.08},
	} {
		if math.Abs(c.got-c.want) > 0.02 {
			t.Errorf("%s: %.3f, want %.2f", name, c.got, c.want)
		}
	}
	p.basis.SweatRate = Between(1.2, 1.15, 1.3) // 759.6 at the slow end
	got = p.hold(0.96, Between(1380, 1000, 2000))
	if math.Abs(got.Low-364.00) > 0.02 || math.Abs(got.High-(640.04+math.Hypot(119.55, 137.94))) > 0.05 {
		t.Errorf("with an uneven rate: %+v", got)
	}
	p.basis.SweatRate = Between(1.2, 1.1, 1.3)
	if capped := p.hold(0.96, Between(700, 650, 800)); capped.High != 800 {
		t.Errorf("up to %v mg/h would hold it, more than the 800 that may be lost", capped.High)
	}
}

// The drinks of a mix may come to what the ceiling leaves beside the water in
// foods: of 0.9 L in an hour all, beside a food that holds half a litre 400 mL,
// beside one that holds more than all of it nothing; and never to more than the
// mix has.
func TestRoomForDrinks(t *testing.T) {
	p := &Planner{basis: Basis{SweatRate: Between(1.2, 0.9, 1.5)}}
	p.session.Minutes[Expected] = 60
	p.menu[Food1].InUse = true
	for _, c := range []struct {
		foodWater     float64
		planned, want int
	}{{0, 700, 700}, {0, 1200, 900}, {0.5, 700, 400}, {0.5, 300, 300}, {1.2, 700, 0}} {
		p.menu[Food1].Unit.FoodWaterL = c.foodWater
		mix := Mix{}
		mix[Food1] = 1
		if got := p.roomFor(Expected, mix, c.planned); got != c.want {
			t.Errorf("%v L in food, %d mL in the mix: %d mL, want %d", c.foodWater, c.planned, got, c.want)
		}
	}
}
