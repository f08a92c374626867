package proposal

import "testing"

// The breaks are asked about where they carry clearly less than was drunk at them, and
// not for what is lost in whole mouthfuls.
func TestWhatBreaksLackIsAskedAbout(t *testing.T) {
	for _, x := range []struct {
		drunk, carried float64
		asks           bool
	}{
		{850, 510, true}, {1000, 890, true}, {437, 190, true},
		{1100, 1000, false}, {900, 840, false}, {500, 500, false}, {510, 505, false}, {400, 850, false},
	} {
		c := runner()
		for i := range c.Chances {
			c.Chances[i].Seconds = 60 // at stations, with no bottle carried
		}
		c.Habit, c.BreaksML = Mix{water: x.drunk}, x.carried
		if got := c.lacks(&Proposal{}); got != x.asks {
			t.Errorf("%g mL drunk where breaks carry %g: asks %v", x.drunk, x.carried, got)
		}
		c.BreaksSettled = true
		if c.lacks(&Proposal{}) {
			t.Errorf("%g mL: asks although it was answered", x.drunk)
		}
	}
}
