package plan

import (
	"testing"

	"pgregory.net/rapid"
)

// Where the mass is hidden, where a slider stops in a long session leaves it
// open by 15 kg and more; it never stops later than where the mass is shown.
func TestHiddenMassIsNotInTheCeiling(t *testing.T) {
	at := func(t tester, kg float64, hidden bool) Ceiling {
		b := Basis{SweatRate: Between(1, 0.98, 1.02), Body: Body{MassKg: kg, Hidden: hidden}}
		return newPlanner(t, b, Session{Minutes: [Lengths]float64{240, 240, 240}}, NewMenu(), Aim{}).CeilingOf(Expected)
	}
	spans := map[float64][2]float64{}
	for kg := 30.0; kg <= 120; kg++ {
		c := at(t, kg, true)
		if c.Reason != LongSession {
			t.Fatalf("%g kg: the ceiling is that of %s", kg, c.Reason)
		}
		span, seen := spans[c.FluidL]
		if !seen {
			span = [2]float64{kg, kg}
		}
		spans[c.FluidL] = [2]float64{min(span[0], kg), max(span[1], kg)}
	}
	for litres, span := range spans {
		if span[0] > 30 && span[1] < 120 && span[1]-span[0] < 15 {
			t.Errorf("%g L leaves %v kg", litres, span)
		}
	}
	if at(t, 60, false) == at(t, 61, false) {
		t.Error("the ceiling does not differ with a mass that is shown: this test cannot fail")
	}
	rapid.Check(t, func(t *rapid.T) {
		kg := rapid.Float64Range(25, 140).Draw(t, "kg")
		if hidden, shown := at(t, kg, true), at(t, kg, false); hidden.FluidL > shown.FluidL+1e-9 || hidden.FluidL < shown.FluidL-0.2-1e-9 {
			t.Fatalf("%g kg: %+v hidden, %+v shown", kg, hidden, shown)
		}
	})
}

// Nor is it in where the limit of the deficit speaks: within 0.1 L of the limit
// set and 0.1 L past it, the same for all, at a volume that masses of 8 kg and more have in common.
func TestHiddenMassIsNotInTheLimit(t *testing.T) {
	most := func(t tester, kg float64, hidden bool) (litres, aimed float64) {
		b := Basis{SweatRate: Between(2, 1.9, 2.1), Body: Body{MassKg: kg, Hidden: hidden}}
		p := newPlanner(t, b, Session{Minutes: [Lengths]float64{120, 120, 120}}, NewMenu(), Aim{Deficit: Within(0, 2)})
		low, high := 0.0, 4.0 // the guard speaks below, and not above
		for range 40 {
			mid := (low + high) / 2
			if p.Evaluate(Expected, Mix{Water: 1000 * mid}).Guards.Has(PastLimit) {
				low = mid
			} else {
				high = mid
			}
		}
		return 4 - high - 0.1, p.Aim().Deficit.High * kg / 100
	}
	spans := map[int][2]float64{}
	for kg := 40.0; kg <= 120; kg++ {
		litres, aimed := most(t, kg, true)
		if d := litres - 0.02*kg; d > 0.1+1e-6 || d < -0.1-1e-6 || litres-aimed > 1e-6 || aimed-litres > 1e-6 {
			t.Errorf("%g kg: the guard speaks at %g L, the aim ends at %g L", kg, litres, aimed)
		}
		key := int(1000*litres + 0.5)
		span, seen := spans[key]
		if !seen {
			span = [2]float64{kg, kg}
		}
		spans[key] = [2]float64{min(span[0], kg), max(span[1], kg)}
	}
	for ml, span := range spans {
		if span[0] > 40 && span[1] < 120 && span[1]-span[0] < 8 {
			t.Errorf("%d mL leaves %v kg", ml, span)
		}
	}
	a, _ := most(t, 60, false)
	if b, _ := most(t, 61, false); a == b {
		t.Error("the limit does not differ with a mass that is shown: this test cannot fail")
	}
}
