package consult

import (
	"encoding/json"
	"reflect"
	"testing"

	"ebbwell/internal/frozen"
	"ebbwell/internal/record"
)

// An agreed plan opens with the calculation it was agreed on, whatever was
// corrected since, and says so.
func TestAsAgreed(t *testing.T) {
	c, _ := newCase(t)
	inputs, _, err := c.FreezePlan()
	if err != nil {
		t.Fatal(err)
	}
	kept := []record.Frozen{{Inputs: inputs}, {Inputs: []byte("an older copy")}}
	same, changed := c.AsAgreed(kept)
	if changed || same.Anew {
		t.Errorf("unchanged records: changed %v, anew %v", changed, same.Anew)
	}
	corrected := c
	corrected.Basis.Plan.SweatRate.Value *= 1.2
	corrected.Basis.Rate.Value *= 1.2
	agreed, changed := corrected.AsAgreed(kept)
	if !changed || agreed.Anew || agreed.Basis.Plan.SweatRate != c.Basis.Plan.SweatRate || agreed.Basis.Rate.Value != c.Basis.Rate.Value ||
		agreed.Planner.Basis().SweatRate != c.Basis.Plan.SweatRate {
		t.Errorf("corrected records: changed %v, anew %v, rate %g", changed, agreed.Anew, agreed.Basis.Rate.Value)
	}
}

// An agreed plan keeps from sight what the profile now hides, and from a
// suggestion what cannot be drunk at its chances.
func TestAsAgreedHidesAndKeepsToTheChances(t *testing.T) {
	c, _ := newCase(t)
	inputs, _, err := c.FreezePlan()
	if err != nil {
		t.Fatal(err)
	}
	kept := []record.Frozen{{Inputs: inputs}}
	if agreed, _ := c.AsAgreed(kept); agreed.Planner.Basis().Body.Hidden {
		t.Error("hidden, and nobody asked for it")
	}
	c.Care.MassHidden = true
	agreed, _ := c.AsAgreed(kept)
	if !agreed.Planner.Basis().Body.Hidden {
		t.Error("the planner of the agreed plan does not know that mass is hidden")
	}
	c.Planner = agreed.Planner.At(PlanChances(c.Plan))
	if !reflect.DeepEqual(agreed.Planner, c.Planner) {
		t.Error("the planner of the agreed plan does not know its chances")
	}
}

// What was kept and cannot be read is never passed off as what was agreed.
func TestAsAgreedUnreadable(t *testing.T) {
	c, _ := newCase(t)
	noMass := frozen.Plan{Basis: c.Basis.Plan, Session: c.Planner.Session(), Menu: c.Planner.Menu(), Aim: c.Planner.Aim()}
	noMass.Basis.Body.MassKg = 0
	refused, err := json.Marshal(noMass)
	if err != nil {
		t.Fatal(err)
	}
	for name, kept := range map[string][]record.Frozen{
		"none": nil, "garbage": {{Inputs: []byte("{")}}, "another shape": {{Inputs: []byte("{}")}}, "refused": {{Inputs: refused}},
	} {
		t.Run(name, func(t *testing.T) {
			got, changed := c.AsAgreed(kept)
			if !got.Anew || changed || got.Planner != c.Planner || got.Basis.Rate.Value != c.Basis.Rate.Value {
				t.Errorf("anew %v, changed %v, rate %g", got.Anew, changed, got.Basis.Rate.Value)
			}
		})
	}
}
