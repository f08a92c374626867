package proposal

import "testing"

// TestFourSessions holds four sessions that were worked by hand: loss, low end,
// breath in mL, and what comes out.
func TestFourSessions(t *testing.T) {
	cases := writtenCases(t)
	of := func(name string, loss, low, breath float64) (*written, Proposal) {
		w := cases[name]
		if w == nil {
			t.Fatalf("no case %q", name)
		}
		w.LossML, w.LowML, w.BreathML = loss, low, breath
		return w, Propose(&w.Case)
	}
	same := func(what, got, want string) {
		if got != want {
			t.Errorf("%s: %s, want %s", what, got, want)
		}
	}
	w, p := of("tennis man 24, little water", 2275, 1661, 355)
	same("tennis A", w.mix(p.Routes[DrinksAlone].Aim), "437 water + 800 sport6")
	same("tennis A, first", w.mix(p.Routes[DrinksAlone].Steps[0].Mix), "437 water + 300 sport6")
	same("tennis B", w.mix(p.Routes[WithFood].Aim), "1200 water + 2 gel")
	same("tennis B, first", w.mix(p.Routes[WithFood].Steps[0].Mix), "650 water + 1 gel")
	if p.Limits.TargetML != 1200 {
		t.Errorf("tennis: target %g", p.Limits.TargetML)
	}
	w, p = of("football man 23, half-time only", 1650, 1204.5, 296)
	same("football B, first", w.mix(p.Routes[WithFood].Steps[0].Mix), "250 water + 1 gel")
	same("football B, second", w.mix(p.Routes[WithFood].Steps[1].Mix), "250 water + 200 sport6 + 1 gel")
	if p.Limits.TargetML != 450 || p.Limits.Bound != BoundBreaks {
		t.Errorf("football: target %g", p.Limits.TargetML)
	}
	w, p = of("marathon man 41, 5 h, over-drinks", 3000, 2190, 700)
	same("marathon, first", w.mix(p.Picked().Steps[0].Mix), "1600 water + 4 gel")
	if p.Outcome != DrinkLess || !p.Picked().Steps[0].Cut {
		t.Errorf("marathon: %v", p.Outcome)
	}
	if _, p = of("run man, 60 min, nothing", 1000, 730, 187.2); p.Outcome != Nothing {
		t.Errorf("run: %v", p.Outcome)
	}
}
