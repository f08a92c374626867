package proposal

import "testing"

// TestNoCrumbs: half a banana that is new and brings 3 g/h to a run of three and a half
// hours is left out; what was eaten before, a whole one, and half of one in an hour and a
// half stay, and so does the half where a way with food has nothing else.
func TestNoCrumbs(t *testing.T) {
	long, short := runner(), runner()
	long.Minutes, short.Minutes = 215, 90
	long.Sources[banana], short.Sources[banana] = things()["banana"], things()["banana"]
	of := func(carbohydrate float64) Case { // a step of the aim is 17.9 g in 215 min
		c := long
		c.Sources[banana].CarbohydrateG = carbohydrate
		return c
	}
	used := long
	used.Habit[banana] = 0.5
	for name, at := range map[string]struct {
		c           Case
		mix         Mix
		leastFood   float64
		takes, want float64
	}{
		"new, half, 3 g/h":    {c: long, mix: Mix{water: 400}, takes: 0.5, want: 0},
		"new, whole":          {c: long, mix: Mix{water: 400}, takes: 1, want: 1},
		"new, half, 8 g/h":    {c: short, mix: Mix{water: 400}, takes: 0.5, want: 0.5},
		"eaten before":        {c: used, mix: Mix{water: 400}, takes: 1, want: 1},
		"half as before":      {c: used, mix: Mix{water: 400}, takes: 0.5, want: 0.5},
		"half, 17.5 g":        {c: of(35), mix: Mix{water: 400}, takes: 0.5, want: 0},
		"half, 18.5 g":        {c: of(37), mix: Mix{water: 400}, takes: 0.5, want: 0.5},
		"whole, 12 g":         {c: of(12), mix: Mix{water: 400}, takes: 1, want: 1},
		"not whole, 11 g":     {c: of(12), mix: Mix{water: 400}, takes: 0.92, want: 0},
		"nothing else to eat": {c: long, mix: Mix{water: 400}, leastFood: foodAtAll, takes: 0.5, want: 0.5},
	} {
		c := at.c
		l, w := LimitsOf(&c), WantsOf(&c)
		p := c.aimed(&l, &w)
		p.base, p.mostML, p.intakeML, p.portions, p.leastML, p.leastG, p.leastFoodG = c.Habit, 2000, 2000, 3, 0, 0, at.leastFood
		f := found{ok: true, mix: at.mix}
		f.mix[banana] = at.takes
		p.withoutCrumbs(&f)
		if f.mix[banana] != at.want {
			t.Errorf("%s: %g bananas, want %g", name, f.mix[banana], at.want)
		}
		if sum := c.SumOf(f.mix); at.want != at.takes && (f.misses != p.misses(&sum) || f.cost != p.costFrom(c.Habit, f.mix)) {
			t.Errorf("%s: %+v at %g", name, f.misses, f.cost)
		}
	}
}
