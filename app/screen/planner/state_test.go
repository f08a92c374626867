package planner

import (
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// Whatever is moved, and however far, the mix stays under the ceiling, and what
// is written into the plan is what is selected.
func TestNoMovePassesTheCeiling(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	start := b.v.Now
	rapid.Check(t, func(t *rapid.T) {
		s := start
		for range rapid.IntRange(1, 12).Draw(t, "moves") {
			slot := plan.Slot(rapid.IntRange(0, int(plan.Slots)-1).Draw(t, "slot"))
			s = s.Move(slot, rapid.Float64Range(-100, 9000).Draw(t, "to"))
		}
		q := s.PlanCase.Planner.Evaluate(s.Length, s.Mix)
		if q.Guards.Stops() || q.Fluid.DrunkL+q.Fluid.FoodWaterL > q.Ceiling.FluidL+1e-9 {
			t.Fatalf("%v passes the ceiling of %v L", s.Mix, q.Ceiling.FluidL)
		}
		p := s.Plan.Clone()
		s.Into(&p)
		o, _ := consult.OptionByID(p, s.Option)
		if got := s.PlanCase.MixOf(o); got != s.Mix {
			t.Fatalf("written as %v, in hand is %v", got, s.Mix)
		}
	})
}
