package sweat

import (
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// PlannedConcentration is the range of whole-body sodium, mmol/L, to plan on
// from a measured one: the measurement and 10.4 % from day to day (Hayden 2004).
// ok is false while the figure has no range.
func PlannedConcentration(f figure.Figure) (r quantity.Range, ok bool) {
	if !f.Ranged {
		return r, false
	}
	if !f.Known {
		return f.Range, true
	}
	middle := f.Range.High - evidence.CoverageFactor*f.U // the value less the bias of its equation
	reach := evidence.CoverageFactor * math.Hypot(f.U, evidence.LocalSodiumCV*f.Value)
	return quantity.Range{
		Low:  min(f.Range.Low, max(0, middle-reach)),
		High: max(f.Range.High, middle+reach),
	}, true
}
