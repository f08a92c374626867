package sweat

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

func TestSpread(t *testing.T) {
	for _, c := range []struct {
		name string
		u    float64
		n    int
		want float64
	}{
		{"one test", 0.03, 1, 0.11 * math.Sqrt(1+1/1.134)},
		{"three tests", 0.03, 3, 0.11 * math.Sqrt(1+1/3.134)},
		{"no test", 0, 0, 0.11 * math.Sqrt(1+1/0.134)},
		{"a doubtful test", 0.2, 1, 0.2 * math.Sqrt(1+1/1.134)},
		{"not a number", math.NaN(), 1, 0.11 * math.Sqrt(1+1/1.134)},
		{"fewer than none", 0, -2, 0.11 * math.Sqrt(1+1/0.134)},
	} {
		near(t, c.name, Spread(c.u, c.n), c.want, 1e-12)
	}
}

func TestPlannedRate(t *testing.T) {
	one, ok := PlannedRate([]figure.Figure{ranged(1.2, 0.05)})
	if !ok {
		t.Fatal("one test gives no rate")
	}
	near(t, "value", one.Value, 1.2, 1e-12)
	near(t, "low", one.Range.Low, 1.2*0.744, 0.002)
	near(t, "high", one.Range.High, 1.2*1.344, 0.002)

	three, _ := PlannedRate([]figure.Figure{ranged(1.1, 0.05), ranged(1.2, 0.05), ranged(1.3, 0.05)})
	near(t, "middle of three", three.Value, math.Cbrt(1.1*1.2*1.3), 1e-12)
	if three.Range.Width() >= one.Range.Width() {
		t.Errorf("three tests leave %v, one %v", three.Range, one.Range)
	}
	apart, _ := PlannedRate([]figure.Figure{ranged(0.6, 0.03), ranged(1.2, 0.03), ranged(2.4, 0.03)})
	if apart.Range.High/apart.Range.Low <= three.Range.High/three.Range.Low {
		t.Error("tests that lie far apart leave no wider range")
	}
	for name, list := range map[string][]figure.Figure{
		"none": nil, "provisional": {{Known: true, Value: 1}}, "below zero": {ranged(-1, 0.1)}, "unknown": {{}},
	} {
		if _, ok := PlannedRate(list); ok {
			t.Errorf("%s gives a rate to plan on", name)
		}
	}
}

// TestPlannedHoldsMeasured: the range to plan on never lies inside the measured
// one, however wide a shared bottle made that.
func TestPlannedHoldsMeasured(t *testing.T) {
	wide := ranged(1, 0.05)
	wide.Range = quantity.Range{Low: 0.4, High: 1.9}
	p, _ := PlannedRate([]figure.Figure{wide})
	if p.Range.Low > 0.4 || p.Range.High < 1.9 {
		t.Errorf("planned %v, measured %v", p.Range, wide.Range)
	}
}

func TestPlannedProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var list []figure.Figure
		for range rapid.IntRange(1, 6).Draw(t, "tests") {
			rate := rapid.Float64Range(0.2, 4).Draw(t, "rate")
			list = append(list, ranged(rate, rate*rapid.Float64Range(0, 0.3).Draw(t, "relative u")))
		}
		p, ok := PlannedRate(list)
		if !ok {
			t.Fatal("no rate")
		}
		if wrong := checkFigure(p); wrong != "" {
			t.Fatal(wrong)
		}
		if len(list) == 1 && p.Range.Width() < list[0].Range.Width()-1e-9 {
			t.Fatalf("planned %v, measured %v", p.Range, list[0].Range)
		}
	})
}

func TestPlannedConcentration(t *testing.T) {
	r, ok := PlannedConcentration(ranged(38, 7.2))
	near(t, "low", r.Low, 38-1.96*math.Hypot(7.2, 3.952), 1e-9)
	near(t, "high", r.High, 38+1.96*math.Hypot(7.2, 3.952), 1e-9)
	if !ok {
		t.Error("a ranged figure gives no range")
	}
	only := figure.Figure{Ranged: true, Range: quantity.Range{Low: 10, High: 60}}
	if r, ok := PlannedConcentration(only); !ok || r != only.Range {
		t.Errorf("range only gives %v", r)
	}
	if _, ok := PlannedConcentration(figure.Figure{Known: true, Value: 38}); ok {
		t.Error("a provisional figure gives a range")
	}
}
