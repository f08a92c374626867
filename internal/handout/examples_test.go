package handout

import (
	"math"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// A test that ends 1.84 % lighter by the scale: sheet, page and the plan of the same day
// mean that one figure. The plan's is of a similar day, drawn a little towards what is
// usual, and lies within its range; what was not replaced is less, by breath and gas
// exchange, and has its own name.
func TestOneDeficitEverywhere(t *testing.T) {
	h, w := openHouse(t), english(t)
	a := h.athlete(t, "Ravka")
	_, b := h.plan(t, a)
	sheet := b.Tests[0].Test.Clone()
	var before float64
	for _, x := range sheet.Weighings {
		if x.Moment == record.Before {
			before = x.Mass.Or(0)
		}
	}
	for i, x := range sheet.Weighings {
		if x.Moment == record.After {
			sheet.Weighings[i].Mass = record.Num(quantity.Round(before*(1-0.0184), 3), quantity.Kilogram)
		}
	}
	f := consult.Find(sheet, a, nil, h.desk)
	fluid, scale := f.Sweat.Fluid, -f.Sweat.Fluid.MassChange.Value
	basis, err := consult.BasisOf(a, []consult.Findings{f}, composeDay(), h.desk)
	if err != nil {
		t.Fatal(err)
	}
	p, err := consult.NewPlan(a, basis, h.desk, consult.Names{Habit: "Habit", Fluid: "A", Food: "B", Aim: "Aim"}, composeDay())
	if err != nil {
		t.Fatal(err)
	}
	c := h.open(t, p, a, basis)
	habit, _ := consult.OptionOf(p, record.OptionHabit)
	q, bar := c.Planner.Evaluate(plan.Expected, c.MixOf(habit)), TestBar(f, false, w)
	t.Logf("scale %.2f %%, sheet %.2f %%, page %.2f %%; plan of a similar day %.2f %% (%.2f-%.2f); not replaced %.2f L of %.2f L lighter",
		scale, fluid.DeficitShare.Value, float64(bar.Deficit.Percent), q.Deficit.Value, q.Deficit.Low, q.Deficit.High, fluid.NotReplaced.Value, fluid.Deficit.Value)
	if math.Abs(scale-1.84) > 0.005 {
		t.Fatalf("the scale says %g %%", scale)
	}
	for name, x := range map[string]float64{"sheet": fluid.DeficitShare.Value, "page": float64(bar.Deficit.Percent)} {
		if math.Abs(x-scale) > 1e-9 {
			t.Errorf("%s: %g %%, the scale says %g", name, x, scale)
		}
	}
	if scale < q.Deficit.Low || scale > q.Deficit.High || math.Abs(q.Deficit.Value-scale) > 0.25 {
		t.Errorf("the plan has %g %% (%g to %g), the scale says %g", q.Deficit.Value, q.Deficit.Low, q.Deficit.High, scale)
	}
	breath := f.OtherLosses().Breath
	if math.Abs(fluid.Deficit.Value-f.OtherLosses().Urine+f.OtherLosses().Food-breath-fluid.NotReplaced.Value) > 0.02 || breath <= 0 {
		t.Errorf("%.3f L lighter, breath %.3f, not replaced %.3f", fluid.Deficit.Value, breath, fluid.NotReplaced.Value)
	}
}
