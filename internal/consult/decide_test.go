package consult

import (
	"testing"

	"ebbwell/internal/record"
)

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
			Decide(&c.plan, record.Review{Decision: c.decision})
			for i, want := range c.want {
				if c.plan.Steps[i].State != want {
					t.Errorf("step %d is %s, not %s", i+1, c.plan.Steps[i].State, want)
				}
			}
		})
	}
}
