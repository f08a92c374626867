package state

import (
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// A copy shares nothing with its option, and says nothing in the athlete's name.
func TestDuplicate(t *testing.T) {
	p := record.Plan{Meta: record.Meta{ID: "p"}, Options: []record.Option{{
		Meta: record.Meta{ID: "o"}, Name: "With food", Kind: record.OptionFood, Words: "yes", Confidence: record.Num(8, quantity.None),
		Items: []record.Item{{Meta: record.Meta{ID: "i"}, OptionID: "o"}},
	}}}
	id := Duplicate(&p, p.Options[0], "Other")
	o, ok := consult.OptionByID(p, id)
	if !ok || id == "o" || o.Items[0].ID == "i" || o.Items[0].OptionID != id || o.Words != "" || o.Confidence.Known() || o.Kind != record.OptionOwn {
		t.Errorf("the copy is %+v", o)
	}
	RemoveOption(&p, "o")
	if len(p.Options) != 2 {
		t.Error("an option the consult began with was taken out")
	}
	RemoveOption(&p, id)
	if len(p.Options) != 1 {
		t.Error("an option of one's own was not taken out")
	}
}

// A plan that goes on from another begins with what was reviewed and went well.
func TestSuccessor(t *testing.T) {
	p := apptest.Steps(record.StepDone, record.StepNow)
	p.Options = append(p.Options, record.Option{Meta: record.Meta{ID: "habit"}, Kind: record.OptionHabit, Name: "Habit"}, record.Option{Meta: record.Meta{ID: "aim"}, Kind: record.OptionAim})
	p.Options[0].Salt, p.Options[1].Salt = record.Num(0.1, quantity.Gram), record.Num(0.2, quantity.Gram)
	p.Reviews = []record.Review{{StepID: "b", Decision: record.DecisionBack}}
	p.Agreement = record.Agreement{OptionID: "a", Words: "yes"}
	habit := func() float64 {
		next := consult.Successor(p, "")
		if next.State != record.PlanDraft || next.Agreement.Words != "" || len(next.Reviews)+len(next.Steps) != 0 || len(next.Options) != 3 || next.Options[1].ID == "habit" || next.Options[0].Kind != record.OptionOwn ||
			next.Agreement.OptionID != next.Options[0].ID {
			t.Fatalf("the successor is %+v", next)
		}
		return next.Options[1].Salt.Or(0)
	}
	if got := habit(); got != 0.1 {
		t.Errorf("after a step back the habit has %v g, not that of the step done", got)
	}
	p.Reviews = append(p.Reviews, record.Review{StepID: "b", Decision: record.DecisionHold})
	if got := habit(); got != 0.2 {
		t.Errorf("after holding the habit has %v g, not that of the step in force", got)
	}
	p.Steps[0].State, p.Reviews = record.StepNow, nil
	p.Steps[1].State = record.StepAhead
	if got := habit(); got != 0 {
		t.Errorf("before any review the habit has %v g", got)
	}
}

// A plan made for a stop of a trip is not replaced by one for home.
func TestPlanOfATripIsNotReplaced(t *testing.T) {
	made := func(id record.ID, state record.PlanState, stop record.ID) record.Plan {
		p := record.Plan{Meta: record.Meta{ID: id}, State: state, Target: record.Target{Sport: "tennis"}}
		p.Basis.StopID = stop
		return p
	}
	trip, home, draft := made("trip", record.PlanAgreed, "s"), made("home", record.PlanAgreed, ""), made("draft", record.PlanDraft, "")
	if list := Replaceable([]record.Plan{trip, home}, draft); len(list) != 1 || list[0].ID != "home" {
		t.Errorf("a new plan for home may replace %+v", list)
	}
	again := made("again", record.PlanDraft, "s")
	if list := Replaceable([]record.Plan{trip, home}, again); len(list) != 1 || list[0].ID != "trip" {
		t.Errorf("a new plan for the stop may replace %+v", list)
	}
}
