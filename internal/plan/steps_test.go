package plan

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func day(s string) time.Time {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		panic(err)
	}
	return t
}

// From rung to rung fluid and carbohydrate go one way; none passes the loss
// or what the stomach is used to; one that is larger than the rules is marked,
// and where it is larger than an increment nothing lies between; the last is the aim, unless it is said why not.
func TestStepsHold(t *testing.T) {
	list := products(t)
	many := 0
	rapid.Check(t, func(t *rapid.T) {
		d := roll(t)
		p := d.planner(t, list)
		c := Climb{
			Length: Expected, Habit: d.mix(p.menu), Aim: d.mix(p.menu),
			Rules: DefaultStepRules(), Start: day("2026-05-18"),
		}
		ladder := p.Steps(c)
		checkLadder(t, p, c, ladder)
		if len(ladder.Steps) > 2 {
			many++
		}
	})
	if many == 0 {
		t.Error("no ladder had more than two rungs")
	}
}

func checkLadder(t tester, p *Planner, c Climb, ladder Ladder) {
	t.Helper()
	from, to := p.totalsOf(c.Length, c.Habit), p.totalsOf(c.Length, c.Aim)
	habit := p.Evaluate(c.Length, c.Habit)
	before, last := from, c.Habit
	for k, step := range ladder.Steps {
		now := p.totalsOf(c.Length, step.Mix)
		if !oneWay(from.fluid, before.fluid, now.fluid, to.fluid) || !oneWay(from.carbohydrate, before.carbohydrate, now.carbohydrate, to.carbohydrate) {
			t.Fatalf("rung %d turns back: %+v after %+v, from %+v to %+v", k, now, before, from, to)
		}
		q := step.Prediction
		if q.Guards.Stops() {
			t.Fatalf("rung %d over-drinks", k)
		}
		if u := p.basis.Usual; u.Known && q.Fluid.RateLH > math.Max(u.LH, habit.Fluid.RateLH)+1e-9 {
			t.Fatalf("rung %d at %g L/h, used to %g", k, q.Fluid.RateLH, u.LH)
		}
		large := math.Abs(now.fluid-before.fluid) > c.Rules.FluidLH+1e-6 || math.Abs(now.carbohydrate-before.carbohydrate) > c.Rules.CarbohydrateGH+1e-6
		if large != step.Large {
			t.Fatalf("rung %d from %+v to %+v: large %v", k, before, now, step.Large)
		}
		rule := p.coarse(c, totals{fluid: c.Rules.FluidLH, carbohydrate: c.Rules.CarbohydrateGH})
		if !habit.Guards.Stops() && !within(before, now, rule) {
			nothingBetween(t, p, c, rule, last, step.Mix)
		}
		for s := range step.Mix {
			if !oneWay(c.Habit[s], last[s], step.Mix[s], c.Aim[s]) {
				t.Fatalf("rung %d turns slot %d back", k, s)
			}
		}
		if want := c.Start.AddDate(0, 0, 7*k); !step.From.Equal(want) {
			t.Fatalf("rung %d from %s", k, step.From)
		}
		before, last = now, step.Mix
	}
	if ladder.Ends == EndsAtAim && last != c.Aim {
		t.Fatalf("ends at %v, the aim is %v", last, c.Aim)
	}
}

// nothingBetween tries every mix in whole increments between two rungs: none
// that keeps fluid and carbohydrate on their way keeps to the rules. Rungs with
// very many mixes between are left to the search itself, which is tested apart.
func nothingBetween(t tester, p *Planner, c Climb, rule totals, a, b Mix) {
	t.Helper()
	from, to := p.totalsOf(c.Length, a), p.totalsOf(c.Length, c.Aim)
	var values [Slots][]float64
	count := 1
	for s := range values {
		values[s] = []float64{a[s]}
		if p.menu[s].InUse {
			values[s] = increments(a[s], b[s], p.menu[s].Step)
		}
		count *= len(values[s])
	}
	if count > 20000 {
		return
	}
	for i := range count {
		mix, rest := a, i
		for s := range values {
			mix[s], rest = values[s][rest%len(values[s])], rest/len(values[s])
		}
		now := p.totalsOf(c.Length, mix)
		if mix != a && mix != b && within(from, now, rule) && oneWay(from.fluid, from.fluid, now.fluid, to.fluid) && oneWay(from.carbohydrate, from.carbohydrate, now.carbohydrate, to.carbohydrate) {
			t.Fatalf("from %v to %v at once, though %v lies between", a, b, mix)
		}
	}
}

// within reports whether a step is no larger than the rules.
func within(a, b, rule totals) bool {
	return math.Abs(b.fluid-a.fluid) <= rule.fluid+1e-9 && math.Abs(b.carbohydrate-a.carbohydrate) <= rule.carbohydrate+1e-7
}

func oneWay(from, before, now, to float64) bool {
	if to >= from {
		return now >= before-1e-9 && now <= to+1e-9
	}
	return now <= before+1e-9 && now >= to-1e-9
}

// 0.55 L to 1.10 L in 95 min, and 9 to 32 g/h: three rungs, dated, with what
// the event leaves time for.
func TestStepsToAnEvent(t *testing.T) {
	b, s := courtBasis(), courtSession()
	s.Minutes = [Lengths]float64{95, 95, 95}
	p := newPlanner(t, b, s, menuOf(t, []string{"drink-6"}, []string{"fig-bar"}), Aim{})
	c := Climb{
		Length: Expected, Habit: Mix{Water: 300, Drink1: 250}, Aim: Mix{Water: 550, Drink1: 550, Food1: 1},
		Rules: DefaultStepRules(), Start: day("2026-05-18"), Event: day("2026-06-06"),
	}
	ladder := p.Steps(c)
	checkLadder(t, p, c, ladder)
	if len(ladder.Steps) != 3 || ladder.Reached != 1 {
		t.Fatalf("%d rungs, %d reached", len(ladder.Steps), ladder.Reached)
	}
	for k, inTime := range []bool{true, true, false} {
		if ladder.Steps[k].InTime != inTime {
			t.Errorf("rung %d from %s: in time %v", k, ladder.Steps[k].From.Format(time.DateOnly), ladder.Steps[k].InTime)
		}
	}
	c.Event = day("2026-05-20")
	if ladder := p.Steps(c); ladder.Reached != -1 {
		t.Errorf("two days before the event rung %d is reached", ladder.Reached)
	}
	c.Rules.PerWeek, c.Event = 1, time.Time{}
	if ladder := p.Steps(c); !ladder.Steps[1].From.Equal(day("2026-06-08")) {
		t.Errorf("three sessions at one a week: rung 1 from %s", ladder.Steps[1].From)
	}
}

func TestLadderEnds(t *testing.T) {
	b, s := courtBasis(), courtSession()
	build := func(b Basis, habit, aim Mix) Ladder {
		p := newPlanner(t, b, s, fullMenu(t), Aim{})
		return p.Steps(Climb{Length: Expected, Habit: habit, Aim: aim, Rules: DefaultStepRules()})
	}
	if l := build(b, courtHabit(), Mix{Water: 1400, Drink1: 600}); l.Ends != EndsAtTolerance || len(l.Steps) == 0 {
		t.Errorf("used to 1 L/h: %q after %d", l.Ends, len(l.Steps))
	}
	free := b
	free.Usual = Usual{}
	if l := build(free, courtHabit(), Mix{Water: 1700, Drink1: 600}); l.Ends != EndsAtStomach {
		t.Errorf("over 1.2 L/h: %q", l.Ends)
	}
	free.Usual = Usual{Known: true, LH: 2}
	if l := build(free, courtHabit(), Mix{Water: 2200, Drink1: 600}); l.Ends != EndsAtCeiling {
		t.Errorf("over the loss: %q", l.Ends)
	}
	if l := build(b, Mix{Water: 3400}, Mix{Water: 1700}); len(l.Steps) != 1 || l.Ends != EndsAtAim {
		t.Errorf("an over-drinking habit comes down in %d steps", len(l.Steps))
	}
	if l := build(b, courtHabit(), courtHabit()); len(l.Steps) != 0 || l.Ends != EndsAtAim || l.Reached != -1 {
		t.Errorf("no way to go: %+v", l)
	}
}

func TestSmallerStep(t *testing.T) {
	r := DefaultStepRules()
	if s, ok := r.Smaller(6); !ok || s.FluidLH != r.FluidLH/2 || s.CarbohydrateGH != r.CarbohydrateGH/2 {
		t.Errorf("confidence 6: %+v", s)
	}
	if s, ok := r.Smaller(7); ok || s != r {
		t.Errorf("confidence 7: %+v", s)
	}
	r.Share = 0.25
	if f := r.fluid(0.8); math.Abs(f-0.2) > 1e-12 {
		t.Errorf("a quarter of 0.8 is %g", f)
	}
}

func TestReview(t *testing.T) {
	good := Done{Share: 0.9, DrunkLH: 0.8, Stomach: 2, Asked: true}
	with := func(f func(*Done)) Done { d := good; f(&d); return d }
	bad := with(func(d *Done) { d.Stomach = 7 })
	gained := with(func(d *Done) { d.Gained = true })
	cases := []struct {
		name     string
		done     []Done
		decision Decision
		reason   string
		used     float64
	}{
		{"none", nil, Hold, ReviewTooFew, 0.7},
		{"one", []Done{good}, Hold, ReviewTooFew, 0.7},
		{"two good", []Done{good, good}, Next, ReviewComfortable, 0.9},
		{"stomach 4", []Done{good, with(func(d *Done) { d.Stomach = 4 })}, Hold, ReviewUnsettled, 0.7},
		{"stomach 3", []Done{good, with(func(d *Done) { d.Stomach = 3 })}, Next, ReviewComfortable, 0.9},
		{"stomach 7", []Done{good, good, bad}, Back, ReviewStomachBad, 0.7},
		{"one, and bad", []Done{bad}, Back, ReviewStomachBad, 0.7},
		{"79 % done", []Done{good, with(func(d *Done) { d.Share = 0.68 })}, Hold, ReviewNotDone, 0.7},
		{"80 % done", []Done{good, with(func(d *Done) { d.Share = 0.7 })}, Next, ReviewComfortable, 0.9},
		{"not asked", []Done{good, with(func(d *Done) { d.Asked = false })}, Hold, ReviewNotAsked, 0.7},
		{"gained", []Done{good, gained}, Back, ReviewGained, 0.7},
		{"an old bad one no longer counts", []Done{bad, good, good, good}, Next, ReviewComfortable, 0.9},
		{"not a number", []Done{good, with(func(d *Done) { d.Share = math.NaN() })}, Hold, ReviewNotDone, 0.7},
	}
	for _, c := range cases {
		p := Review(c.done, Usual{Known: true, LH: 0.7}, false)
		if p.Decision != c.decision || p.Reason != c.reason || math.Abs(p.Usual.LH-c.used) > 1e-9 {
			t.Errorf("%s: %+v, want %s %s %g", c.name, p, c.decision, c.reason, c.used)
		}
	}
	fast := with(func(d *Done) { d.DrunkLH = 1.18 })
	if p := Review([]Done{fast, fast}, Usual{Known: true, LH: 1.1}, false); p.Usual.LH != 1.2 {
		t.Errorf("tolerance past the stomach: %g", p.Usual.LH)
	}
	slow := with(func(d *Done) { d.DrunkLH = 0.4 })
	if p := Review([]Done{fast, fast}, Usual{Known: true, LH: 0.8}, true); p.Usual.LH != 1.0 {
		t.Errorf("in running it rises to %v", p.Usual.LH)
	}
	if p := Review([]Done{slow, slow}, Usual{Known: true, LH: 1.0}, false); p.Usual.LH != 1.0 {
		t.Errorf("tolerance falls to %g", p.Usual.LH)
	}
	if p := Review([]Done{good, good}, Usual{}, false); !p.Usual.Known || math.Abs(p.Usual.LH-0.9) > 1e-9 {
		t.Errorf("first tolerance: %+v", p.Usual)
	}
}

// Tolerance rises only at a review that says next, and never falls at one.
func TestToleranceRisesOnlyOnNext(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var done []Done
		for range rapid.IntRange(0, 6).Draw(t, "sessions") {
			done = append(done, Done{
				Share: rapid.Float64Range(0, 1.2).Draw(t, "share"), DrunkLH: rapid.Float64Range(0, 2).Draw(t, "rate"),
				Stomach: rapid.Float64Range(0, 10).Draw(t, "stomach"), Asked: rapid.Bool().Draw(t, "asked"),
				Gained: rapid.IntRange(0, 9).Draw(t, "gained") == 0,
			})
		}
		before := Usual{Known: true, LH: rapid.Float64Range(0, 1.5).Draw(t, "before")}
		p := Review(done, before, false)
		if p.Usual.LH < before.LH || p.Decision != Next && p.Usual != before {
			t.Fatalf("%+v after %+v", p, before)
		}
		if p.Usual.LH > math.Max(before.LH, 1.2) {
			t.Fatalf("tolerance %g", p.Usual.LH)
		}
	})
}
