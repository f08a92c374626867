package proposal

import "testing"

// TestEased: after a session on a bad stomach, gels go first, then water takes the place of
// a drink, then food goes: a step of carbohydrate, never less than one portion, and all of a
// drink of which a sip would stay. Who took water alone holds it.
func TestEased(t *testing.T) {
	for name, at := range map[string]struct {
		stepGH      float64 // of 90 min
		fixed       int     // a slot that is not changed
		habit, want Mix
	}{
		"gels before all else":          {16, salt, Mix{water: 200, sport: 500, gel: 3, banana: 1}, Mix{water: 200, sport: 500, gel: 2, banana: 1}},
		"two gels are nearer":           {34, salt, Mix{water: 200, gel: 3}, Mix{water: 200, gel: 1}},
		"one gel at least":              {4, salt, Mix{water: 200, gel: 3}, Mix{water: 200, gel: 2}},
		"no more gels than there are":   {34, salt, Mix{water: 200, gel: 1}, Mix{water: 200}},
		"water for a drink":             {16, salt, Mix{water: 200, sport: 1000, banana: 1}, Mix{water: 600, sport: 600, banana: 1}},
		"no more of a drink than it is": {16, salt, Mix{water: 200, sport: 150}, Mix{water: 350}},
		"no sip stays":                  {16, salt, Mix{water: 200, sport: 420}, Mix{water: 620}},
		"what is no sip stays":          {16, salt, Mix{water: 200, sport: 500}, Mix{water: 600, sport: 100}},
		"gels that are fixed stay":      {16, gel, Mix{water: 200, sport: 1000, gel: 3}, Mix{water: 600, sport: 600, gel: 3}},
		"no water to take its place":    {16, water, Mix{water: 200, sport: 1000}, Mix{water: 200, sport: 600}},
		"food where nothing else is":    {16, salt, Mix{water: 300, banana: 2}, Mix{water: 300, banana: 1}},
		"a bite of food may stay":       {16, salt, Mix{water: 300, banana: 1.25}, Mix{water: 300, banana: 0.25}},
		"water alone":                   {16, salt, Mix{water: 600}, Mix{water: 600}},
	} {
		c := runner()
		c.StepGH, c.Habit = at.stepGH, at.habit
		c.Sources[at.fixed].Fixed = true
		if got := c.eased(); got != at.want {
			t.Errorf("%s: %v becomes %v, want %v", name, at.habit, got, at.want)
		}
	}
}
