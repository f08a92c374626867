package proposal

import (
	"math"
	"reflect"
	"slices"
	"testing"
)

// TestLimitsSetWithTheAthlete: a drinking rate and a strength that were agreed on
// bound what is proposed.
func TestLimitsSetWithTheAthlete(t *testing.T) {
	c := runner()
	c.NoFood, c.Habit = true, Mix{water: 300}
	free := Propose(&c)
	c.MostLH, c.MostStrength = 0.3, 4
	p := Propose(&c)
	if p.Limits.ReachML != 450 || p.Limits.Bound != BoundStomach || free.Limits.ReachML <= 450 {
		t.Errorf("reach %g, free %g", p.Limits.ReachML, free.Limits.ReachML)
	}
	for _, s := range p.Routes[DrinksAlone].Steps {
		if sum := c.SumOf(s.Mix); sum.DrunkML > 450 || sum.DrinksG > 0.04*sum.DrunkML+1e-9 {
			t.Errorf("%v: %g mL of %g g", s.Mix, sum.DrunkML, sum.DrinksG)
		}
	}
}

// TestOwnIncrements: where the practice has its own increment every drink that changes
// goes by it; one larger than a whole step is not used.
func TestOwnIncrements(t *testing.T) {
	c := runner()
	c.Habit = Mix{water: 300}
	usual := Propose(&c)
	by := func(step float64, p *Proposal) bool {
		for _, r := range p.Routes {
			for _, s := range append(r.Steps, Step{Mix: r.Aim}) {
				for _, slot := range []int{water, sport} {
					if x := s.Mix[slot]; r.Exists && x != c.Habit[slot] && math.Mod(x, step) > 1e-6 {
						return false
					}
				}
			}
		}
		return true
	}
	c.DrinkStepML = 125
	own := Propose(&c)
	if !own.Routes[DrinksAlone].Exists || len(own.Routes[DrinksAlone].Steps) == 0 || !by(125, &own) {
		t.Errorf("by 125 mL: %+v", own.Routes)
	}
	if by(125, &usual) {
		t.Error("the check cannot fail: the usual increments are multiples of 125 mL")
	}
	c.DrinkStepML = 240 // more than the 225 mL of a step
	if large := Propose(&c); !reflect.DeepEqual(large.Routes, usual.Routes) {
		t.Errorf("an increment beyond a step changes %+v to %+v", usual.Routes, large.Routes)
	}
}

// TestOwnBottlesAreForDrinks: water and drinks come in whole bottles that are owned, food,
// gels and salt by their portions.
func TestOwnBottlesAreForDrinks(t *testing.T) {
	c := runner()
	c.Bottles, c.Habit = []float64{500, 750}, Mix{water: 200}
	l, w := LimitsOf(&c), WantsOf(&c)
	p := c.aimed(&l, &w)
	p.base = c.Habit
	p.open(true)
	for slot, want := range map[int][]float64{water: {200, 0, 500, 750}, sport: {0, 500, 750}, gel: {0, 1, 2}, banana: {0, 0.5, 1}} {
		got := slices.DeleteFunc(p.values[slot], func(x float64) bool { return x >= 1000 })
		if !slices.Equal(got, want) {
			t.Errorf("slot %d: %v, want %v", slot, got, want)
		}
	}
	if got := bottleSums([]float64{500, 750}, 1300, 600); !slices.Equal(got, []float64{600, 500, 750, 1000, 0, 1250}) {
		t.Errorf("the nearest first: %v", got)
	}
	if got := bottleSums([]float64{0.3, 500}, 600, 0); !slices.Equal(got, []float64{0, 500}) {
		t.Errorf("a bottle that holds nothing: %v", got)
	}
	p.open(false)
	if len(p.values[gel]) != 1 || len(p.values[banana]) != 1 || len(p.values[salt]) < 2 {
		t.Errorf("drinks alone: %v", p.values)
	}
}

// TestFinerWater: a second search takes water by 50 mL also in a long session, or by an
// increment of the practice that is finer; other drinks by theirs.
func TestFinerWater(t *testing.T) {
	for name, x := range map[string]struct {
		own, by float64
		fine    bool
	}{"long": {0, 100, false}, "long, finer": {0, 50, true}, "own": {25, 25, true}, "own that is coarser": {150, 50, true}} {
		c := runner()
		c.Minutes, c.LossML, c.LowML, c.BreaksML, c.DrinkStepML, c.Habit = 200, 4000, 3000, 3000, x.own, Mix{water: 600}
		l, w := LimitsOf(&c), WantsOf(&c)
		p := c.aimed(&l, &w)
		p.base, p.fine = c.Habit, x.fine
		p.open(false)
		list := slices.DeleteFunc(slices.Clone(p.values[water]), func(ml float64) bool { return ml < 900 })
		slices.Sort(list)
		if len(list) < 2 || list[1]-list[0] != x.by {
			t.Errorf("%s: %v, not by %g mL", name, list, x.by)
		}
	}
}

// TestNobodyPoursASipAway: a habit above the low end of a loss, and no more than its mean, is
// kept where drinks would come down by no more than a scale tells: counted are the drinks,
// beside the water of what is eaten, and both against the mean.
func TestNobodyPoursASipAway(t *testing.T) {
	for name, at := range map[string]struct {
		loss, low float64 // mL; of the low end 95 % are proposed, in whole 50 mL
		habit     Mix
		kept      bool
	}{
		"50 mL from 850":                    {1800, 843, Mix{water: 850}, true},
		"51 mL from 851":                    {1800, 843, Mix{water: 851}, false},
		"71 mL from 821 and a gel's 23":     {1800, 843, Mix{water: 821, gel: 1}, false},
		"45 mL from 795 and a gel's 23":     {1800, 814, Mix{water: 795, gel: 1}, true},
		"so, and together above the mean":   {816, 814, Mix{water: 795, gel: 1}, false},
		"so, and together just at the mean": {818, 814, Mix{water: 795, gel: 1}, true},
		"37 mL, together above a mean":      {308, 305, Mix{water: 287, gel: 1}, false},
		"37 mL, together at the mean":       {310, 305, Mix{water: 287, gel: 1}, true},
	} {
		c := runner()
		c.Tested, c.LossML, c.LowML, c.Habit = false, at.loss, at.low, at.habit
		sum := c.SumOf(c.Habit)
		if l := LimitsOf(&c); (l.LimitML == sum.DrunkML+sum.FoodWaterML) != at.kept {
			t.Errorf("%s: %g mL and %g in food at a limit of %g", name, sum.DrunkML, sum.FoodWaterML, l.LimitML)
		}
	}
}
