package consult

import (
	"slices"
	"testing"

	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// Drinking half a litre more than was lost lowers the predicted plasma sodium
// of an adult; a minor and a sheet without sweat sodium get no figure.
func TestOverDrinking(t *testing.T) {
	known := func(x float64, u quantity.Unit) figure.Figure {
		return figure.Figure{Known: true, Value: x, Unit: u, Ranged: true}
	}
	var f Findings
	f.Test.Session.Date = "2026-05-14"
	f.Sweat.Fluid.Loss, f.Sweat.Fluid.Deficit = known(1, quantity.Litre), known(-0.5, quantity.Litre)
	f.Sweat.Sodium.Millimoles = known(38, quantity.Millimole)
	a := record.Athlete{
		Born: "1999-02-03", Sex: record.Female, Height: record.Num(1.71, quantity.Metre), UsualMass: record.Num(64, quantity.Kilogram),
	}
	c, ok := OverDrinking(f, a)
	if !ok || !c.Plasma.Known || !c.Plasma.Estimate || c.Change >= 0 || !slices.Contains(c.Codes, sweat.PlasmaTeaching) {
		t.Errorf("an adult: %+v, %v", c, ok)
	}
	a.Born = "2011-02-03"
	if c, _ := OverDrinking(f, a); c.Plasma.Known || !slices.Contains(c.Codes, sweat.PlasmaMinor) {
		t.Errorf("a minor: %+v", c)
	}
	f.Sweat.Sodium.Millimoles = figure.Figure{}
	if _, ok := OverDrinking(f, a); ok {
		t.Error("a figure without sweat sodium")
	}
}
