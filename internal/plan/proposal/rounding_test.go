package proposal

import "testing"

// What differs by rounding alone passes nothing, be it large or small, above or below
// nothing; a little more does.
func TestRoundingPassesNothing(t *testing.T) {
	for _, c := range []struct {
		x, most float64
		passes  bool
	}{
		{0.1 + 0.2, 0.3, false}, {1 + 1e-10, 1, false}, {1 + 1e-8, 1, true}, {1e6 + 1e-4, 1e6, false}, {1e6 + 1e-2, 1e6, true},
		{-1e6 + 1e-4, -1e6, false}, {-1e6 + 1e-2, -1e6, true}, {0, 0, false}, {1e-10, 0, false}, {1e-8, 0, true}, {0.9, 1, false},
	} {
		if Passes(c.x, c.most) != c.passes {
			t.Errorf("%v passes %v: %v", c.x, c.most, !c.passes)
		}
	}
	if !alike(0.1+0.2, 0.3) || !alike(0.3, 0.1+0.2) || alike(0.3, 0.3001) || alike(0.3001, 0.3) {
		t.Error("alike is what differs by rounding")
	}
}

// Parts are counted as if nothing had been rounded: 0.3 has three whole parts of 0.1,
// and begins no fourth.
func TestRoundingOfParts(t *testing.T) {
	for _, c := range []struct{ x, part, whole, begun float64 }{
		{0.3, 0.1, 3, 3}, {0.30000000000000004, 0.1, 3, 3}, {0.31, 0.1, 3, 4}, {0.7, 0.1, 7, 7}, {0, 0.1, 0, 0}, {-0.25, 0.1, -3, -2}, {99, 50, 1, 2},
	} {
		if wholes(c.x, c.part) != c.whole || parts(c.x, c.part) != c.begun {
			t.Errorf("%g by %g: %g whole, %g begun", c.x, c.part, wholes(c.x, c.part), parts(c.x, c.part))
		}
	}
	if FloorTo(-30, 50) != 0 || FloorTo(149, 50) != 100 || CeilTo(101, 50) != 150 || CeilTo(100, 50) != 100 {
		t.Error("down to nothing at the least, up to the next")
	}
	if Begun(-3, 50) != 0 || Begun(51, 50) != 2 || fuelParts(-3) != 0 || fuelParts(5) != 1 || fuelParts(4.9) != 0 {
		t.Error("what is not missing counts as nothing")
	}
}

// Misses are ordered fluid first, then carbohydrate, then sodium; the same is not less.
func TestOrderOfMisses(t *testing.T) {
	list := []Misses{{0, 0, 0}, {0, 0, 1}, {0, 1, 0}, {0, 1, 2}, {1, 0, 0}, {1, 0, 3}, {1, 2, 0}}
	for i, a := range list {
		for k, b := range list {
			if a.less(b) != (i < k) {
				t.Errorf("%+v less than %+v: %v", a, b, a.less(b))
			}
		}
	}
}
