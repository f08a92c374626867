package consult

import (
	"math"
	"testing"

	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// TestSplitOfAPlan: a plan of a session that was weighed within bends where the rate
// changed; that of one weighed only at its ends is even.
func TestSplitOfAPlan(t *testing.T) {
	sheet, a := caseSheet()
	d := testSetup(t)
	b, err := BasisOf(a, []Findings{Find(sheet, a, nil, d)}, day(), d)
	if err != nil || b.Plan.Split != (plan.Split{}) {
		t.Fatalf("split %+v, %v", b.Plan.Split, err)
	}
	start, _ := sheet.Session.Start.Minutes()
	minutes, _ := sheet.Session.Minutes()
	before := masses(sheet, record.Before)[0]
	sheet.Partway = []record.PartwayWeighing{{
		At: record.ClockAt(start + math.Round(minutes/2)), Mass: record.Num(float64(before)-0.5, quantity.Kilogram), Drunk: record.Num(200, quantity.Millilitre),
	}}
	f := Find(sheet, a, nil, d)
	list := Segments(f)
	if len(list) != 2 {
		t.Fatalf("segments %+v", list)
	}
	b, err = BasisOf(a, []Findings{f}, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	want := plan.Split{At: list[0].Minutes / minutes, Share: list[0].Loss / f.Sweat.Fluid.Loss.Value}
	if math.Abs(b.Plan.Split.At-want.At) > 1e-9 || math.Abs(b.Plan.Split.Share-want.Share) > 0.005 {
		t.Errorf("split %+v, want %+v", b.Plan.Split, want)
	}
}
