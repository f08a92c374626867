package consult

import (
	"encoding/json"
	"errors"
	"testing"

	"ebbwell/internal/care"
	"ebbwell/internal/frozen"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// agreed is a plan as it was agreed: its record, whose it is, the test it is based on and
// the copy that was kept.
type agreed struct {
	p     record.Plan
	a     record.Athlete
	sheet record.Test
	kept  []record.Frozen
	then  Case
	d     Setup
}

// agree agrees a plan of the case, with a body mass that is hidden or not.
func agree(t *testing.T, hidden bool) agreed {
	t.Helper()
	sheet, a := caseSheet()
	a.MassHidden, a.MassHiddenSettled = hidden, true
	d := testSetup(t)
	c := caseOf(t, sheet, a, d)
	inputs, results, err := c.FreezePlan()
	if err != nil {
		t.Fatal(err)
	}
	p := c.Plan
	p.State = record.PlanAgreed
	return agreed{p, a, sheet, []record.Frozen{{Record: p.ID, Inputs: inputs, Results: results}}, c, d}
}

// open opens the plan with a test as it is now; nil for none.
func (g agreed) open(t *testing.T, sheet *record.Test, kept []record.Frozen) (Case, error) {
	t.Helper()
	var tests []Findings
	if sheet != nil {
		tests = []Findings{Find(*sheet, g.a, nil, g.d)}
	}
	return OpenPlan(g.p, g.a, tests, kept, day(), g.d)
}

// corrected is a sheet whose mass after was half a kilogram higher.
func corrected(sheet record.Test) *record.Test {
	sheet = sheet.Clone()
	for i, w := range sheet.Weighings {
		if w.Moment == record.After {
			sheet.Weighings[i].Mass = record.Num(w.Mass.Or(0)+0.5, quantity.Kilogram)
		}
	}
	return &sheet
}

// older is a copy as an earlier version wrote it, without tests, air and products.
func (g agreed) older(t *testing.T) []record.Frozen {
	t.Helper()
	var was frozen.Plan
	if err := json.Unmarshal(g.kept[0].Inputs, &was); err != nil {
		t.Fatal(err)
	}
	was.Kind, was.Findings, was.Products = "", nil, nil
	inputs, err := json.Marshal(was)
	if err != nil {
		t.Fatal(err)
	}
	return []record.Frozen{{Record: g.p.ID, Inputs: inputs}}
}

// An agreed plan opens as it was agreed, with its test as it then was, whatever became
// of the test; what would be another now is said.
func TestAgreedPlanOpensAsAgreed(t *testing.T) {
	g := agree(t, false)
	c, err := g.open(t, &g.sheet, g.kept)
	if err != nil || c.Anew || c.Since.Changed || c.Basis.Plan != g.then.Basis.Plan || len(c.Basis.Tests) != 1 || c.Basis.Tests[0].Test.ID != "t" {
		t.Fatalf("unchanged: %v, anew %v, %+v", err, c.Anew, c.Since)
	}
	c, err = g.open(t, corrected(g.sheet), g.kept)
	if err != nil || c.Anew || !c.Since.Changed || c.Since.Gone || c.Basis.Plan != g.then.Basis.Plan {
		t.Fatalf("corrected: %v, anew %v, %+v", err, c.Anew, c.Since)
	}
	if s := c.Since; s.Test.ID != "t" || s.Products || s.Before.Value-s.After.Value < 0.45 || s.Before.Value-s.After.Value > 0.55 {
		t.Errorf("what changed: %+v", s)
	}
	c, err = g.open(t, nil, g.kept)
	if err != nil || !c.Since.Changed || !c.Since.Gone || c.Basis.Plan != g.then.Basis.Plan || len(c.Basis.Tests) != 1 {
		t.Errorf("its test gone: %v, %+v", err, c.Since)
	}
	for s := range c.Slots {
		if c.Slots[s].Named != g.then.Slots[s].Named || c.Slots[s].InUse != g.then.Slots[s].InUse {
			t.Errorf("slot %d holds %q, was %q", s, c.Slots[s].Named, g.then.Slots[s].Named)
		}
	}
	if _, err := g.open(t, nil, nil); !errors.Is(err, ErrTestGone) {
		t.Errorf("no test and no copy: %v", err)
	}
	if _, err := g.open(t, nil, g.older(t)); !errors.Is(err, ErrTestGone) {
		t.Errorf("no test and a copy without one: %v", err)
	}
	if c, err := g.open(t, &g.sheet, nil); err != nil || !c.Anew {
		t.Errorf("no copy: %v, anew %v", err, c.Anew)
	}
}

// A copy of an earlier version has the calculation but no tests: what stands beside it
// is of now.
func TestOlderCopyKeepsTheCalculation(t *testing.T) {
	g := agree(t, false)
	c, err := g.open(t, corrected(g.sheet), g.older(t))
	if err != nil || c.Anew || c.Basis.Plan != g.then.Basis.Plan || !c.Since.Changed {
		t.Fatalf("%v, anew %v, %+v", err, c.Anew, c.Since)
	}
	if c.Basis.Kind == "" || len(c.Basis.Tests) != 1 || c.said != nil {
		t.Errorf("%q, %d tests", c.Basis.Kind, len(c.Basis.Tests))
	}
}

// A plan that was agreed while the mass was seen is calculated again in the class of the
// mass once that is hidden: nothing of the mass itself is in it, what was agreed to drink
// stays, and it is said where the records of now would give another.
func TestPlanAgreedBeforeTheMassWasHidden(t *testing.T) {
	g := agree(t, false)
	g.a.MassHidden = true
	class := care.HiddenMass(72.4)
	c, err := g.open(t, &g.sheet, g.kept)
	if err != nil {
		t.Fatal(err)
	}
	if c.Anew || c.Since.Changed || !c.Care.MassHidden || !c.Planner.Basis().Body.Hidden || c.Planner.Basis().Body.MassKg != class {
		t.Errorf("anew %v, %+v, body %+v of class %g", c.Anew, c.Since, c.Planner.Basis().Body, class)
	}
	if c.Athlete.ID != g.a.ID || !c.Athlete.MassHidden || c.Planner.Session() != g.then.Planner.Session() {
		t.Errorf("%+v", c.Planner.Session())
	}
	c, err = g.open(t, corrected(g.sheet), g.kept)
	if err != nil || c.Anew || !c.Since.Changed || c.Since.Gone || c.Since.now == nil {
		t.Errorf("corrected: %v, %+v", err, c.Since)
	}
	if hidden, err := g.open(t, &g.sheet, g.kept); err != nil || hidden.Basis.Plan != c.Basis.Plan {
		t.Errorf("the test of then is calculated with, not the corrected one: %v", err)
	}
	c, err = g.open(t, nil, g.kept)
	if err != nil || !c.Since.Gone || !c.Since.Changed || c.Planner.Basis().Body.MassKg != class {
		t.Errorf("its test gone: %v, %+v", err, c.Since)
	}
	c, err = g.open(t, &g.sheet, g.older(t))
	if err != nil || !c.Planner.Basis().Body.Hidden || c.Planner.Basis().Body.MassKg != class {
		t.Errorf("a copy without tests, with the test at hand: %v, %+v", err, c.Planner.Basis().Body)
	}
	if _, err := g.open(t, nil, g.older(t)); err == nil {
		t.Error("neither test nor copy of it, and it opens")
	}
}

// Hidden when it was agreed and still in the same class, it opens as it was agreed; in
// another class it is calculated again.
func TestPlanAgreedWithAHiddenMass(t *testing.T) {
	g := agree(t, true)
	if _, open := agreedOpen(g.p, g.a, g.kept); open {
		t.Error("hidden in the same class, and it is open")
	}
	c, err := g.open(t, &g.sheet, g.kept)
	if err != nil || c.Since.Changed || c.Basis.Plan != g.then.Basis.Plan {
		t.Errorf("%v, %+v", err, c.Since)
	}
	other := g.a
	other.UsualMass = record.Num(45, quantity.Kilogram)
	if _, open := agreedOpen(g.p, other, g.kept); !open {
		t.Error("another class, and nothing is calculated again")
	}
	seen := g.a
	seen.MassHidden = false
	if _, open := agreedOpen(g.p, seen, g.kept); open {
		t.Error("the mass is seen now")
	}
	if _, open := agreedOpen(g.p, g.a, nil); open {
		t.Error("no copy, and it is open")
	}
	if _, open := agreedOpen(g.p, g.a, []record.Frozen{{Inputs: []byte("{")}}); open {
		t.Error("a copy that cannot be read, and it is open")
	}
}
