package sweat

import (
	"math"
	"slices"
	"testing"

	"ebbwell/internal/evidence"
)

func TestCompareRates(t *testing.T) {
	with := func(value, u float64) Result { return Result{Fluid: Fluid{Rate: ranged(value, u)}} }
	for _, c := range []struct {
		name     string
		a, b     Result
		code     string
		smallest float64
	}{
		{"1.2 to 1.3", with(1.2, 0.04), with(1.3, 0.04), DifferenceWithin, 1.96 * math.Sqrt2 * 0.11 * 1.25},
		{"1.2 to 1.7", with(1.2, 0.04), with(1.7, 0.04), DifferenceReal, 1.96 * math.Sqrt2 * 0.11 * 1.45},
		{"1.7 to 1.2", with(1.7, 0.04), with(1.2, 0.04), DifferenceReal, 1.96 * math.Sqrt2 * 0.11 * 1.45},
		{"1.2 to 1.7, badly measured", with(1.2, 0.3), with(1.7, 0.3), DifferenceWithin, 1.96 * math.Sqrt2 * 0.3},
		{"provisional", Result{}, with(1.7, 0.04), DifferenceUnknown, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := Compare(c.a, c.b).Rate
			if d.Code != c.code {
				t.Errorf("%+v", d)
			}
			near(t, "smallest", d.Smallest, c.smallest, 1e-9)
		})
	}
}

// TestCompareSodium: on one site by one method the equation's error cancels;
// on another site it counts.
func TestCompareSodium(t *testing.T) {
	fore := withPatches(t, goodPatch(evidence.ForearmDorsal, 40))
	more := withPatches(t, goodPatch(evidence.ForearmDorsal, 65))
	thigh := withPatches(t, goodPatch(evidence.Thigh, 50))
	same := Compare(fore, more)
	if same.Concentration.Code != DifferenceReal || len(same.Concentration.Beside) != 0 {
		t.Errorf("%+v", same.Concentration)
	}
	mean := (fore.Sodium.Concentration.Value + more.Sodium.Concentration.Value) / 2
	near(t, "smallest", same.Concentration.Smallest, 1.96*math.Sqrt2*0.104*mean, 1e-9)
	other := Compare(fore, thigh)
	if !slices.Contains(other.Concentration.Beside, CompareOtherSite) || other.Concentration.Code != DifferenceWithin {
		t.Errorf("%+v", other.Concentration)
	}
	if other.Concentration.Smallest <= same.Concentration.Smallest {
		t.Error("another site can show as small a difference as the same")
	}
	conduct := goodPatch(evidence.ForearmDorsal, 40)
	conduct.Method = evidence.Conductivity
	if c := Compare(fore, withPatches(t, conduct)); !slices.Contains(c.SodiumRate.Beside, CompareOtherMethod) {
		t.Errorf("%+v", c.SodiumRate)
	}
	if c := Compare(fore, withPatches(t, goodPatch(evidence.Chest, 60))); c.Concentration.Code != DifferenceUnknown {
		t.Errorf("a range compared with a value: %+v", c.Concentration)
	}
	near(t, "mg/h", same.SodiumRate.Smallest,
		1.96*math.Sqrt2*math.Hypot(0.11, 0.104)*(fore.Sodium.LossRate.Value+more.Sodium.LossRate.Value)/2, 1e-9)
}
