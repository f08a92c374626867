package consult

import (
	"fmt"
	"math"
	"testing"
)

// A dot is the test's rate times what the heat balance expects of the curve's session
// over what it expects of the test's own, as the why of the curve lists both; the test
// of the curve's own session stays where it was measured.
func TestHeatDotsAreOnTheBasisOfTheCurve(t *testing.T) {
	a, tests, _, d := tripCase(t)
	r, err := Calculate(Again(tests[0]), a, tests, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	dots := r.HeatDots(a, d)
	if len(dots) != len(r.Compared) || len(dots) == 0 {
		t.Fatalf("%d dots of %d tests", len(dots), len(r.Compared))
	}
	for i, dot := range dots {
		at := r.HeatCurve(a, dot.Temperature, dot.Temperature, 1, d)
		if len(at) != 1 {
			t.Fatalf("no curve at %g °C", dot.Temperature)
		}
		input := map[string]float64{}
		for _, in := range at[0].Rate.Rate.Why.Inputs {
			input[in.Symbol] = in.Value
		}
		n := fmt.Sprint(i + 1)
		want := input["rate"+n] * input["first"] / input["first"+n]
		if math.Abs(dot.Rate-want) > 1e-9 || want <= 0 {
			t.Errorf("test %d at %g, want %g", i, dot.Rate, want)
		}
		if math.Abs(dot.U/dot.Rate-float64(r.Compared[i].U)/dot.Measured) > 1e-9 {
			t.Errorf("test %d: the uncertainty is another share of the rate", i)
		}
		if dot.Test.Test.ID == tests[0].Test.ID && math.Abs(dot.Rate-dot.Measured) > 1e-9 {
			t.Errorf("the test of the curve moved from %g to %g", dot.Measured, dot.Rate)
		}
	}
}
