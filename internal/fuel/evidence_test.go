package fuel

import (
	"math"
	"testing"

	"ebbwell/internal/evidence"
)

// Every end of every advice stands in evidence under the id it names.
func TestAdviceStandsInEvidence(t *testing.T) {
	const kg = 70.0
	list := []struct {
		a     Advice
		scale float64
	}{
		{CarbohydrateDuring(60, Hard), 1}, {CarbohydrateDuring(105, Hard), 1}, {CarbohydrateDuring(200, Hard), 1},
		{CarbohydrateAlternatives(105, Hard, true)[0], 1}, {Strength(), 1}, {SportsDrinkOsmolality(), 1},
		{BeforeFourHours(kg), kg / 1000}, {BeforeTwoHours(kg), kg / 1000}, {BeforeAlternative(kg), kg / 1000},
		{StartPoint(), 1}, {CarbohydrateBefore(kg, 90), kg}, {CarbohydrateAfter(kg, 5), kg}, {After(2, kg, 5), 2},
	}
	for _, c := range list {
		for _, end := range []struct {
			id string
			x  float64
		}{{c.a.LowID, c.a.Range.Low}, {c.a.HighID, c.a.Range.High}} {
			if end.id == "" && end.x == 0 {
				continue
			}
			e, ok := evidence.Find(end.id)
			if !ok || math.Abs(e.Value*c.scale-end.x) > 1e-9 {
				t.Errorf("%s: %q is %g, the end is %g", c.a.Code, end.id, e.Value*c.scale, end.x)
			}
		}
	}
}

// Codes lists every code that advice comes with.
func TestCodesAreComplete(t *testing.T) {
	have := map[string]bool{}
	for _, c := range Codes() {
		if have[c] {
			t.Errorf("%s twice", c)
		}
		have[c] = true
	}
	for _, a := range []Advice{
		CarbohydrateDuring(10, Hard), CarbohydrateDuring(60, Hard), CarbohydrateDuring(105, Hard), CarbohydrateDuring(200, Hard),
		CarbohydrateAlternatives(105, Hard, true)[0], Strength(), SportsDrinkOsmolality(), BeforeFourHours(70), BeforeTwoHours(70),
		BeforeAlternative(70), StartPoint(), CarbohydrateBefore(70, 90), After(-1, 70, 1), After(0, 70, 1), After(1, 70, 1), After(1, 70, 20),
		After(5, 70, 0), After(1, 70, 0), CarbohydrateAfter(70, 1), CarbohydrateAfter(70, 20),
	} {
		if !have[a.Code] {
			t.Errorf("%q is not listed", a.Code)
		}
	}
}
