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
		{CarbohydrateAlternatives(105, Hard, true)[0], 1}, {Strength(), 1},
		{BeforeFourHours(kg), kg / 1000}, {BeforeTwoHours(kg), kg / 1000},
		{CarbohydrateBefore(kg, 90), kg}, {CarbohydrateAfter(kg, 5), kg}, {After(2, kg, 5), 2},
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
		CarbohydrateAlternatives(105, Hard, true)[0], Strength(), BeforeFourHours(70), BeforeTwoHours(70),
		CarbohydrateBefore(70, 90), After(-1, 70, 1), After(0, 70, 1), After(1, 70, 1), After(1, 70, 20),
		After(5, 70, 0), After(1, 70, 0), CarbohydrateAfter(70, 1), CarbohydrateAfter(70, 20),
	} {
		if !have[a.Code] {
			t.Errorf("%q is not listed", a.Code)
		}
	}
}

// Above the advice stands what was studied, in long sessions only; it is no advice.
func TestStudiedIsNoAdvice(t *testing.T) {
	if _, ok := Studied(150); ok {
		t.Error("said of a session of 150 min")
	}
	a, ok := Studied(180)
	advised := CarbohydrateDuring(180, Hard)
	if !ok || a.Range.High != 120 || a.Sure != evidence.Memory || advised.Range.High != 90 {
		t.Errorf("studied %+v, advised %+v", a, advised)
	}
}

// The weeks rise by at most 15 g/h and end with two at the aim, in doses of every
// 20 min: 90 g/h is 30 g each time (Costa et al. 2017).
func TestGutTrainingWeeks(t *testing.T) {
	for _, c := range []struct {
		from, aim float64
		weeks     int
	}{{45, 90, 4}, {22, 60, 4}, {60, 60, 0}, {70, 60, 0}, {59, 60, 2}} {
		list := GutTraining(c.from, c.aim)
		if len(list) != c.weeks {
			t.Fatalf("%g to %g: %d weeks, want %d", c.from, c.aim, len(list), c.weeks)
		}
		at := c.from
		for i, w := range list {
			if w.GramsHour-at > evidence.StepFuelHigh+1e-9 || w.GramsHour > c.aim || w.Dose*60/w.Every != w.GramsHour || w.Holds != (i >= len(list)-2) {
				t.Errorf("%g to %g, week %d: %+v after %g", c.from, c.aim, i+1, w, at)
			}
			at = w.GramsHour
		}
	}
	if list := GutTraining(45, 90); list[len(list)-1].Dose != 30 {
		t.Errorf("90 g/h is %g g each time", list[len(list)-1].Dose)
	}
}
