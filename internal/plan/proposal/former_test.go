package proposal

import (
	"testing"

	"ebbwell/internal/evidence"
)

// What once went wrong with proposals, each held over many drawn sessions: how much is
// eaten for its water, how many gels and bananas a long day gets, and how much
// carbohydrate one step brings.
func TestFormerFaultsOfProposals(t *testing.T) {
	gels, bananas, rise := 0.0, 0.0, 0.0
	for seed := range uint64(6000) {
		c := seeded(seed).draw()
		p := Propose(&c)
		for way, r := range p.Routes {
			if !r.Exists {
				continue
			}
			for i := range c.Sources {
				more := r.Aim[i] - c.Habit[i]
				switch src := &c.Sources[i]; {
				case more <= 0:
				case src.Kind == Gel && c.Minutes == 420:
					gels = max(gels, r.Aim[i])
				case src.Kind == Food && src.FoodWaterML > 80 && c.Minutes == 300:
					bananas = max(bananas, r.Aim[i])
				}
			}
			before := c.SumOf(c.Habit).CarbohydrateG
			for k, s := range r.Steps {
				now := c.SumOf(s.Mix).CarbohydrateG
				if step := (now - before) / c.hours(); !s.Cut && step > rise {
					rise = step
				}
				if p.Outcome == DrinkLess && s.Cut && now > before+1e-6 {
					t.Errorf("seed %d, way %d, step %d: %g g more while drinking less", seed, way, k, now-before)
				}
				before = now
			}
		}
	}
	t.Logf("at most %g gels in 7 h, %g bananas in 5 h, %.1f g/h in one step", gels, bananas, rise)
	if gels == 0 || gels > evidence.GelsMost {
		t.Errorf("%g gels in 7 h", gels)
	}
	if bananas == 0 || bananas > evidence.FoodKindMost {
		t.Errorf("%g bananas in 5 h", bananas)
	}
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
