package squad

import (
	"math"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// TestSegments: half-time splits the loss; the parts add up to the whole.
func TestSegments(t *testing.T) {
	s := newSquad(t, day(), 61.8)
	s.weighIn(0, 61.8)
	s.edit(0, bottles([3]float64{742, 402}, [3]float64{688, 452}))
	s.weighOut(0, 60.7)
	s.edit(0, noUrine)
	s.edit(0, func(t *record.Test) {
		t.Partway = []record.PartwayWeighing{{At: "17:45", Mass: record.Num(61.5, quantity.Kilogram), Drunk: record.Num(200, quantity.Millilitre)}}
	})
	f := s.rows(at18(47))[0].Found
	list := consult.Segments(f)
	if len(list) != 2 || list[0].Minutes != 40 || list[1].Minutes != 55 {
		t.Fatalf("segments %+v", list)
	}
	if sum := list[0].Loss + list[1].Loss; math.Abs(sum-f.Sweat.Fluid.Loss.Value) > 0.005 {
		t.Errorf("the parts add up to %.3f, the whole is %.3f", sum, f.Sweat.Fluid.Loss.Value)
	}
	if !consult.SegmentsChange(list) || consult.SegmentsChange(list[:1]) {
		t.Errorf("rates %v and %v", list[0].Rate, list[1].Rate)
	}
}

// TestLines: the findings of a group sorted, and those who consented to sharing.
func TestLines(t *testing.T) {
	s := newSquad(t, day(), 61.8, 83.2, 70)
	for i, kg := range []float64{61.8, 83.2} {
		s.weighIn(i, kg)
		s.weighOut(i, kg-0.5-float64(i)/2)
		s.edit(i, bottles([3]float64{742, 402}, [3]float64{688, 452}))
	}
	id := s.g.Members[1].TestID
	sheet := s.sheets[id]
	sheet.Athlete.Consents = []record.Consent{{Purpose: record.ConsentCoach, Given: "2026-01-01"}}
	sheet.Athlete.MassHidden, sheet.Athlete.MassHiddenSettled = true, true
	s.sheets[id] = sheet
	lines := Lines(s.rows(at18(47)), ByRate)
	if lines[0].Row.Sheet.Athlete.Name != "Neve Carrowmere" || lines[2].Rate != nil {
		t.Errorf("sorted %s, %s", lines[0].Row.Sheet.Athlete.Name, lines[2].Row.Sheet.Athlete.Name)
	}
	if lines[0].DeficitShare != nil || lines[1].DeficitShare == nil || lines[0].Row.Change.Known {
		t.Error("the share of a hidden mass is told")
	}
	if shared, withheld := ForCoach(lines); len(shared) != 1 || withheld != 2 {
		t.Errorf("%d shared, %d withheld", len(shared), withheld)
	}
	if by := Lines(s.rows(at18(47)), ByScale); by[0].Row.Member.Order != 1 {
		t.Error("the order of the scale is another")
	}
}

// TestDrift: a scale that reads a known mass wrongly is spoken of beyond its step.
func TestDrift(t *testing.T) {
	g := day()
	if _, _, ok := Drift(g); ok {
		t.Error("a check that was not made")
	}
	g.Check.Known, g.Check.Read = record.Num(20, quantity.Kilogram), record.Num(20.1, quantity.Kilogram)
	if kg, beyond, ok := Drift(g); !ok || beyond || math.Abs(kg-0.1) > 1e-9 {
		t.Errorf("%v %v %v", kg, beyond, ok)
	}
	g.Check.Read = record.Num(20.3, quantity.Kilogram)
	if _, beyond, _ := Drift(g); !beyond {
		t.Error("0.3 kg is passed over")
	}
}
