package planner

import (
	"testing"

	"pgregory.net/rapid"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/chart"
	"ebbwell/app/screen/agreement"
	"ebbwell/app/screen/planner/breaks"
	"ebbwell/app/screen/planner/session"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Whatever is moved, and however far, the mix stays under the ceiling, and what
// is written into the plan is what is in hand.
func TestNoMovePassesTheCeiling(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	start := b.v.Now
	rapid.Check(t, func(t *rapid.T) {
		s := start
		for range rapid.IntRange(1, 12).Draw(t, "moves") {
			slot := plan.Slot(rapid.IntRange(0, int(plan.Slots)-1).Draw(t, "slot"))
			s = s.Move(slot, rapid.Float64Range(-100, 9000).Draw(t, "to"))
		}
		q := s.PlanCase.Planner.Evaluate(s.Length, s.Mix)
		if q.Guards.Stops() || q.Fluid.DrunkL+q.Fluid.FoodWaterL > q.Ceiling.FluidL+1e-9 {
			t.Fatalf("%v passes the ceiling of %v L", s.Mix, q.Ceiling.FluidL)
		}
		p := s.Plan.Clone()
		s.Into(&p)
		o, _ := consult.OptionByID(p, s.Option)
		if got := s.PlanCase.MixOf(o); got != s.Mix {
			t.Fatalf("written as %v, in hand is %v", got, s.Mix)
		}
	})
}

// A copy shares nothing with its option, and says nothing in the athlete's name.
func TestDuplicate(t *testing.T) {
	p := record.Plan{Meta: record.Meta{ID: "p"}, Options: []record.Option{{
		Meta: record.Meta{ID: "o"}, Name: "With food", Kind: record.OptionFood, Words: "yes", Confidence: record.Num(8, quantity.None),
		Items: []record.Item{{Meta: record.Meta{ID: "i"}, OptionID: "o"}},
	}}}
	id := state.Duplicate(&p, p.Options[0], "Other")
	o, ok := consult.OptionByID(p, id)
	if !ok || id == "o" || o.Items[0].ID == "i" || o.Items[0].OptionID != id || o.Words != "" || o.Confidence.Known() || o.Kind != record.OptionOwn {
		t.Errorf("the copy is %+v", o)
	}
	state.RemoveOption(&p, "o")
	if len(p.Options) != 2 {
		t.Error("an option the consult began with was taken out")
	}
	state.RemoveOption(&p, id)
	if len(p.Options) != 1 {
		t.Error("an option of one's own was not taken out")
	}
}

func stepsOf(states ...record.StepState) record.Plan {
	var p record.Plan
	for i, s := range states {
		id := record.ID(rune('a' + i))
		p.Steps = append(p.Steps, record.Step{Meta: record.Meta{ID: id}, OptionID: id, State: s})
		p.Options = append(p.Options, record.Option{Meta: record.Meta{ID: id}, Kind: record.OptionStep})
	}
	return p
}

func TestDecide(t *testing.T) {
	ahead, now, done := record.StepAhead, record.StepNow, record.StepDone
	for name, c := range map[string]struct {
		plan     record.Plan
		decision record.Decision
		want     []record.StepState
	}{
		"hold":              {stepsOf(now, ahead), record.DecisionHold, []record.StepState{now, ahead}},
		"next":              {stepsOf(now, ahead), record.DecisionNext, []record.StepState{done, now}},
		"next at the last":  {stepsOf(done, now), record.DecisionNext, []record.StepState{done, now}},
		"back":              {stepsOf(done, now, ahead), record.DecisionBack, []record.StepState{now, ahead, ahead}},
		"back at the first": {stepsOf(now, ahead), record.DecisionBack, []record.StepState{now, ahead}},
		"no steps":          {record.Plan{}, record.DecisionNext, nil},
	} {
		t.Run(name, func(t *testing.T) {
			consult.Decide(&c.plan, record.Review{Decision: c.decision})
			for i, want := range c.want {
				if c.plan.Steps[i].State != want {
					t.Errorf("step %d is %s, not %s", i+1, c.plan.Steps[i].State, want)
				}
			}
		})
	}
}

// A plan that goes on from another begins with what was reviewed and went well.
func TestSuccessor(t *testing.T) {
	p := stepsOf(record.StepDone, record.StepNow)
	p.Options = append(p.Options, record.Option{Meta: record.Meta{ID: "habit"}, Kind: record.OptionHabit, Name: "Habit"}, record.Option{Meta: record.Meta{ID: "aim"}, Kind: record.OptionAim})
	p.Options[0].Salt, p.Options[1].Salt = record.Num(0.1, quantity.Gram), record.Num(0.2, quantity.Gram)
	p.Reviews = []record.Review{{StepID: "b", Decision: record.DecisionBack}}
	p.Agreement = record.Agreement{OptionID: "a", Words: "yes"}
	habit := func() float64 {
		next := state.Successor(p)
		if next.State != record.PlanDraft || next.Agreement.Words != "" || len(next.Reviews)+len(next.Steps) != 0 || len(next.Options) != 2 || next.Options[0].ID == "habit" {
			t.Fatalf("the successor is %+v", next)
		}
		return next.Options[0].Salt.Or(0)
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
	if list := state.Replaceable([]record.Plan{trip, home}, draft); len(list) != 1 || list[0].ID != "home" {
		t.Errorf("a new plan for home may replace %+v", list)
	}
	again := made("again", record.PlanDraft, "s")
	if list := state.Replaceable([]record.Plan{trip, home}, again); len(list) != 1 || list[0].ID != "trip" {
		t.Errorf("a new plan for the stop may replace %+v", list)
	}
}

func TestStartAt(t *testing.T) {
	for option, want := range map[record.ID][]record.StepState{
		"a": {record.StepNow, record.StepAhead, record.StepAhead},
		"b": {record.StepDone, record.StepNow, record.StepAhead},
		"x": {record.StepNow, record.StepAhead, record.StepAhead},
	} {
		p := stepsOf(record.StepAhead, record.StepNow, record.StepAhead)
		agreement.StartAt(&p, option)
		for i := range want {
			if p.Steps[i].State != want[i] {
				t.Errorf("agreed on %s: step %d is %s", option, i+1, p.Steps[i].State)
			}
		}
	}
}

func TestReadScore(t *testing.T) {
	for text, want := range map[string]int{"6-4 6-4": 2, " 7–6, 3-6,6-2 ": 3, "": 0, "6": 0, "6-x": 0, "six-four": 0} {
		if sets, ok := breaks.ReadScore(text); len(sets) != want && want > 0 || ok != (want > 0) {
			t.Errorf("%q is %v, %v", text, sets, ok)
		}
	}
}

func TestReadBottles(t *testing.T) {
	sp := wording.Speaker{Words: apptest.Words(t)}
	for text, want := range map[string]int{"500 750": 2, "500, 750;330": 3, "": 0} {
		if sizes, ok := session.ReadBottles(text, sp); !ok || len(sizes) != want {
			t.Errorf("%q is %v, %v", text, sizes, ok)
		}
	}
	for _, text := range []string{"big", "500 x", "0", "-500"} {
		if sizes, ok := session.ReadBottles(text, sp); ok {
			t.Errorf("%q is read as %v", text, sizes)
		}
	}
}

func TestSpells(t *testing.T) {
	take := func(minute, seconds float64) plan.Take {
		return plan.Take{Chance: plan.Chance{Minute: minute, Seconds: seconds}}
	}
	got := breaks.Spells(nil, plan.Schedule{Takes: []plan.Take{take(0, 60), take(20, 120), take(21, 60), take(90, 600)}}, 95)
	want := []chart.Spell{{From: 1, To: 20}, {From: 22, To: 90}}
	if len(got) != len(want) {
		t.Fatalf("spells are %v", got)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("spell %d is %v, not %v", i, got[i], want[i])
		}
	}
}
