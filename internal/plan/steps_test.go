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

// From the first rung on none passes the loss; rungs are dated, no more than six,
// change two things at a time unless they are marked, and lead to the aim unless
// it is said why not.
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
		checkLadder(t, c, ladder)
		if len(ladder.Steps) > 2 {
			many++
		}
	})
	if many == 0 {
		t.Error("no ladder had more than two rungs")
	}
}

func checkLadder(t tester, c Climb, ladder Ladder) {
	t.Helper()
	last := c.Habit
	for k, step := range ladder.Steps {
		if step.Prediction.Guards.Stops() {
			t.Fatalf("rung %d over-drinks", k)
		}
		if step.Goals > 2 && !step.Large && !step.Cut {
			t.Fatalf("rung %d changes %d things: %v after %v", k, step.Goals, step.Mix, last)
		}
		if want := c.Start.AddDate(0, 0, 7*k); !step.From.Equal(want) {
			t.Fatalf("rung %d from %s", k, step.From)
		}
		last = step.Mix
	}
	if ladder.Ends == EndsAtAim && last != c.Aim {
		t.Fatalf("ends at %v, the aim is %v", last, c.Aim)
	}
	if len(ladder.Steps) > 6 {
		t.Fatalf("%d rungs", len(ladder.Steps))
	}
}

// 0.55 L to 1.10 L in 95 min, and 9 to 35 g/h: rungs of a week, dated, with what
// the event leaves time for.
func TestStepsToAnEvent(t *testing.T) {
	b, s := courtBasis(), courtSession()
	s.Minutes = [Lengths]float64{95, 95, 95}
	p := newPlanner(t, b, s, menuOf(t, []string{"drink-6"}, []string{"banana"}), Aim{})
	c := Climb{
		Length: Expected, Habit: Mix{Water: 300, Drink1: 250}, Aim: Mix{Water: 550, Drink1: 550, Food1: 1},
		Rules: DefaultStepRules(), Start: day("2026-05-18"), Event: day("2026-06-06"),
	}
	ladder := p.Steps(c)
	checkLadder(t, c, ladder)
	if len(ladder.Steps) != 4 || ladder.Reached != 1 {
		t.Fatalf("%d rungs, %d reached: %+v", len(ladder.Steps), ladder.Reached, ladder.Steps)
	}
	for k, inTime := range []bool{true, true, false, false} {
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
	if l := build(b, courtHabit(), Mix{Water: 2200, Drink1: 600}); l.Ends != EndsAtCeiling {
		t.Errorf("over the loss: %q", l.Ends)
	}
	if l := build(b, courtHabit(), Mix{Water: 1700, Drink1: 600}); l.Ends != EndsAtAim && l.Ends != EndsAtReview {
		t.Errorf("far: %q", l.Ends)
	}
	if l := build(b, Mix{Water: 3400}, Mix{Water: 1700}); len(l.Steps) != 1 || l.Ends != EndsAtAim {
		t.Errorf("an over-drinking habit comes down in %d steps, %q", len(l.Steps), l.Ends)
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
		{"stomach 4", []Done{good, with(func(d *Done) { d.Stomach = 4 })}, Hold, ReviewStomachFair, 0.7},
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
