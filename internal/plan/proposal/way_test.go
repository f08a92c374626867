package proposal

import (
	"math"
	"testing"
)

// aimFor draws a mix that a practitioner might set as the aim: some of the sources by
// their increments, fluid inside the limit.
func (d dice) aimFor(c *Case) Mix {
	m, l := c.Habit, LimitsOf(c)
	for i := range m {
		if c.Sources[i].Fixed || d.chance(3) {
			continue
		}
		switch c.Sources[i].Kind {
		case Water:
			m[i] = 50 * math.Round(d.between(0, 0.8)*l.LimitML/50)
		case Drink:
			m[i] = 100 * float64(d.IntN(8))
		case Gel:
			m[i] = float64(d.IntN(4))
		case Food:
			m[i] = 0.5 * float64(d.IntN(5))
		case Salt:
			m[i] = 0.5 * float64(d.IntN(3))
		case None:
		}
	}
	return m
}

// The way to an aim that was set by hand ends there, or after six steps; two things
// change at a time, fluid by no more than a step and 15 %, carbohydrate by no more than a
// step or the smallest portion on the way, with 15 % and half a gram; what goes further is
// called large. No step drinks less than the one before, or more than the aim, where the
// aim is more; and there are no fewer steps than the way is long.
func TestWayToAnAimSetByHand(t *testing.T) { //nolint:gocognit,funlen // one rule after the other
	ways, large, six, whole := 0, 0, 0, 0
	for seed := range uint64(1500) {
		d := seeded(seed + 90_000)
		c := d.draw()
		aim := d.aimFor(&c)
		to, l := c.SumOf(aim), LimitsOf(&c)
		if to.DrunkML+to.FoodWaterML > l.LimitML {
			continue
		}
		steps := Ladder(&c, aim)
		from := c.Habit
		if l.Case == Less {
			from = c.cut(&l)
		}
		if aim == c.Habit || len(steps) == 0 {
			if aim != c.Habit || len(steps) != 0 {
				t.Fatalf("seed %d: %d steps from %v to %v", seed, len(steps), c.Habit, aim)
			}
			continue
		}
		ways++
		if last := steps[len(steps)-1].Mix; len(steps) > 6 || last != aim && len(steps) < 6 {
			t.Fatalf("seed %d: %d steps end at %v, not %v", seed, len(steps), last, aim)
		}
		if len(steps) == 6 {
			six++
		}
		stepML, stepG := 150*c.hours(), 15*c.hours()
		if c.PastLowSodium || c.Confidence.Known && c.Confidence.Value < 7 {
			stepML, stepG = stepML/2, stepG/2
		}
		if wholeFuel(&c, aim, steps) {
			stepG, whole = 15*c.hours(), whole+1
		}
		before, rungs := from, 0
		for k, s := range steps {
			was, now := c.SumOf(before), c.SumOf(s.Mix)
			switch {
			case s.Cut || s.Held:
			case s.Large:
				large++
			default:
				rungs++
				portion := math.Inf(1)
				for i := range aim {
					if aim[i] <= before[i] {
						continue
					}
					switch c.Sources[i].Kind {
					case Gel:
						portion = min(portion, c.Sources[i].CarbohydrateG)
					case Food:
						portion = min(portion, 0.5*c.Sources[i].CarbohydrateG)
					case None, Water, Drink, Salt:
					}
				}
				if math.IsInf(portion, 1) {
					portion = 0
				}
				if n := moved(before, s.Mix); n > 2 {
					t.Errorf("seed %d, step %d: %d things at once", seed, k, n)
				}
				if now.DrunkML > was.DrunkML+1.15*stepML+1e-6 || now.CarbohydrateG > was.CarbohydrateG+1.15*max(stepG, portion)+0.5+1e-6 {
					t.Errorf("seed %d, step %d: from %g mL and %g g to %g and %g", seed, k, was.DrunkML, was.CarbohydrateG, now.DrunkML, now.CarbohydrateG)
				}
			}
			if !s.Cut && (now.DrunkML < min(was.DrunkML, to.DrunkML)-1e-6 || now.DrunkML > max(was.DrunkML, to.DrunkML)+1e-6) {
				t.Errorf("seed %d, step %d: %g mL between %g and %g", seed, k, now.DrunkML, was.DrunkML, to.DrunkML)
			}
			if s.Cut && c.rises(s.Mix) {
				t.Errorf("seed %d, step %d: the cut brings more than the habit: %v", seed, k, s.Mix)
			}
			if k > 0 && s.Mix == steps[k-1].Mix {
				t.Errorf("seed %d, step %d: nothing changes", seed, k)
			}
			before = s.Mix
		}
		start := c.SumOf(from)
		long := max((to.DrunkML-start.DrunkML)/stepML, (to.CarbohydrateG-start.CarbohydrateG)/max(stepG, 30))
		if steps[len(steps)-1].Mix == aim && large == 0 && float64(rungs)*1.25 < long-0.25 {
			t.Errorf("seed %d: %d steps for a way of %.2f", seed, rungs, long)
		}
	}
	if ways < 300 || large == 0 || six == 0 || whole == 0 {
		t.Errorf("%d ways, %d large steps, %d of six steps, %d in whole steps of carbohydrate", ways, large, six, whole)
	}
}

// Steps to an aim that was set by hand go as far as it does where it passes what would be
// proposed, and as far as that where it does not; the limit of fluid holds.
func TestStepsReachAsFarAsTheAim(t *testing.T) {
	c := runner()
	c.Habit = Mix{water: 300}
	l, w := LimitsOf(&c), WantsOf(&c)
	from := c.SumOf(c.Habit)
	for name, to := range map[string]Sum{
		"little": {DrunkML: 400, FoodWaterML: 10, CarbohydrateG: 5, DrinksG: 4, OneSourceG: 3, SodiumMg: 20, GelWaterML: 400},
		"much":   {DrunkML: 1250, FoodWaterML: 45, CarbohydrateG: 200, DrinksG: 150, OneSourceG: 180, SodiumMg: 3000, Gels: 5, Portions: 7, SaltG: 3, GelWaterML: 1250},
		"more":   {DrunkML: 1400, FoodWaterML: 100, CarbohydrateG: 100, DrinksG: 100, OneSourceG: 100, SodiumMg: 500, Gels: 1, Portions: 1, SaltG: 1, GelWaterML: 1400},
	} {
		p := c.aimed(&l, &w)
		was := p
		p.reaching(&l, &from, &to)
		for what, x := range map[string][2]float64{
			"intake":       {p.intakeML, math.Max(was.intakeML, math.Min(l.LimitML, to.DrunkML+to.FoodWaterML))},
			"fluid":        {p.leastML, math.Min(from.DrunkML, to.DrunkML)},
			"carbohydrate": {p.mostG, math.Max(was.mostG, to.CarbohydrateG)},
			"one source":   {p.mostOneG, math.Max(was.mostOneG, to.OneSourceG)},
			"sodium":       {p.mostSodiumMg, math.Max(was.mostSodiumMg, to.SodiumMg)},
			"gels":         {p.gels, math.Max(was.gels, to.Gels)},
			"portions":     {p.portions, math.Max(was.portions, to.Portions)},
			"salt":         {p.saltG, math.Max(was.saltG, to.SaltG)},
			"strength":     {p.strength, math.Max(was.strength, to.DrinksG/to.DrunkML)},
		} {
			if math.Abs(x[0]-x[1]) > 1e-9 {
				t.Errorf("%s: %s to %g, want %g", name, what, x[0], x[1])
			}
		}
	}
	dry := Sum{DrunkML: 300, Gels: 3, GelWaterML: 300}
	p := c.aimed(&l, &w)
	p.from = from
	if p.reaching(&l, &from, &dry); p.lacksWater(&dry) {
		t.Error("an aim that lacks water for its gels was set, and no step goes there")
	}
}

// wholeFuel reports a way after low blood sodium that would go on to the review in half
// steps, so that carbohydrate may take whole ones. Who is not confident takes half steps
// of both.
func wholeFuel(c *Case, aim Mix, steps []Step) bool {
	half := *c
	half.Confidence = Is(6)
	return c.PastLowSodium && !c.doubted() && len(Ladder(&half, aim)) == 6 && len(steps) < 6
}

// wayFrom is the way from a mix to an aim on which nothing but the size of a step is
// a limit.
func wayFrom(c *Case, last, aim Mix) *climb {
	from, to := c.SumOf(last), c.SumOf(aim)
	p := program{
		c: c, base: last, from: from, foodWaterFrom: math.Inf(1),
		mostML: 1e4, intakeML: 1e4, mostG: 1e3, mostOneG: 1e3, mostSodiumMg: 1e5, strength: 1, gels: 9, portions: 9, saltG: 100,
	}
	p.from.Portions = 9
	return &climb{p: p, base: last, aim: aim, from: from, to: to, mostG: 1e3, stepG: c.stepG()}
}

// Where the rest of the way is three things, a step takes the one or two of them that
// leave the cheapest. By 90 min a step is 225 mL and 22.5 g, with 15 % and half a gram.
func TestNearestPartOfTheWay(t *testing.T) {
	c := runner()
	light := c
	light.Sources[gel].CarbohydrateG, light.Sources[banana].CarbohydrateG = 10, 10
	nine := c
	var all, one Mix
	for i := range nine.Sources {
		nine.Sources[i] = Source{Kind: Food, CarbohydrateG: 20}
		all[i] = 1
	}
	one[0] = 1
	last := Mix{water: 2000}
	for name, x := range map[string]struct {
		c               *Case
		last, aim, want Mix
	}{
		// Left are drink for 5.2 (2, 1 that it is not taken, 2.2 for 100 mL), gel for 5 and
		// banana for 5.9; no two of 6, 26 and 24 g are 26.4.
		"one thing": {&c, last, Mix{water: 2000, sport: 100, gel: 1, banana: 1}, Mix{water: 2000, banana: 1}},
		// 300 mL are more than a step, 20 g are not.
		"two side by side": {&light, last, Mix{water: 2000, sport: 300, gel: 1, banana: 1}, Mix{water: 2000, gel: 1, banana: 1}},
		"one of nine":      {&nine, Mix{}, all, one},
	} {
		u := wayFrom(x.c, x.last, x.aim)
		if got, ok := u.toward(x.last, false); !ok || got != x.want {
			t.Errorf("%s: %v, %v; want %v", name, got, ok, x.want)
		}
	}
	u := wayFrom(&c, last, Mix{water: 2000, sport: 500})
	if got, ok := u.toward(last, false); ok {
		t.Errorf("half a litre is a step: %v", got)
	}
	if got, ok := u.toward(last, true); !ok || got[sport] != 500 {
		t.Errorf("half a litre is no large step: %v", got)
	}
}
