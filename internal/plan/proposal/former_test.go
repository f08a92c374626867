package proposal

import (
	"testing"

	"ebbwell/internal/evidence"
)

// What once went wrong with proposals, each held over many drawn sessions: how much is
// eaten for its water, how many gels and bananas a long day gets, and how much
// carbohydrate one step brings.
func TestFormerFaultsOfProposals(t *testing.T) {
	var m former
	for seed := range uint64(6000) {
		c := seeded(seed).draw()
		p := Propose(&c)
		for way, r := range p.Routes {
			if r.Exists {
				m.eaten(&c, r)
				m.climbed(&c, r)
			}
			if k, more := moreWhileLess(&c, r); r.Exists && p.Outcome == DrinkLess && more > 1e-6 {
				t.Errorf("seed %d, way %d, step %d: %g g more while drinking less", seed, way, k, more)
			}
		}
	}
	gels, bananas, rise := m.gels, m.bananas, m.rise
	t.Logf("at most %g gels in 7 h, %g bananas in 5 h, %.1f g/h in one step", gels, bananas, rise)
	if gels == 0 || gels > evidence.GelsMost {
		t.Errorf("%g gels in 7 h", gels)
	}
	if bananas == 0 || bananas > evidence.FoodKindMost {
		t.Errorf("%g bananas in 5 h", bananas)
	}
}

// former is the most of what once went wrong: gels in 7 h, bananas in 5 h, and how much
// carbohydrate one step brings, g/h.
type former struct{ gels, bananas, rise float64 }

// eaten takes in what a route adds to the habit.
func (m *former) eaten(c *Case, r Route) {
	for i := range c.Sources {
		switch src := &c.Sources[i]; {
		case r.Aim[i] <= c.Habit[i]:
		case src.Kind == Gel && c.Minutes == 420:
			m.gels = max(m.gels, r.Aim[i])
		case src.Kind == Food && src.FoodWaterML > 80 && c.Minutes == 300:
			m.bananas = max(m.bananas, r.Aim[i])
		}
	}
}

// climbed takes in what each step of a route brings.
func (m *former) climbed(c *Case, r Route) {
	before := c.SumOf(c.Habit).CarbohydrateG
	for _, s := range r.Steps {
		now := c.SumOf(s.Mix).CarbohydrateG
		if !s.Cut {
			m.rise = max(m.rise, (now-before)/c.hours())
		}
		before = now
	}
}

// moreWhileLess is by how much carbohydrate the step rises that cuts the drink, g, and
// which step that is; 0 where none does.
func moreWhileLess(c *Case, r Route) (step int, more float64) {
	before := c.SumOf(c.Habit).CarbohydrateG
	for k, s := range r.Steps {
		now := c.SumOf(s.Mix).CarbohydrateG
		if s.Cut && now-before > more {
			step, more = k, now-before
		}
		before = now
	}
	return step, more
}

// A runner with low blood sodium before, whose habit meets the fluid that is aimed at,
// drinks no less and no more on any step, and that it was low is said first.
func TestPastLowSodiumKeepsAHabitThatMeets(t *testing.T) {
	w := writtenCases(t)["ultra man, past hyponatraemia, meets aim"]
	p := Propose(&w.Case)
	habit := w.SumOf(w.Habit)
	if p.Said[0].Code != SayPastSodium || p.Outcome == DrinkLess {
		t.Fatalf("outcome %d, said %v", p.Outcome, p.Said)
	}
	for way, r := range p.Routes {
		for k, s := range r.Steps {
			if got := w.SumOf(s.Mix).DrunkML; got != habit.DrunkML {
				t.Errorf("way %d, step %d: %g mL, the habit has %g", way, k, got, habit.DrunkML)
			}
		}
		t.Logf("way %d: %s", way, w.mix(r.Aim))
	}
}
