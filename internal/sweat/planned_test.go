package sweat

import (
	"math"
	"testing"

	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

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
