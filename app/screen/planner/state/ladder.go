package state

import (
	"time"

	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// Climb is the way from the habit to the aim by some rules, from the day the
// plan begins.
func (s State) Climb(rules plan.StepRules, today time.Time) plan.Climb {
	habit, _ := consult.OptionOf(s.Plan, record.OptionHabit)
	aim, _ := consult.OptionOf(s.Plan, record.OptionAim)
	event, _ := s.Plan.Target.EventDate.Time()
	return plan.Climb{
		Length: plan.Expected, Habit: s.PlanCase.MixOf(habit), Aim: s.PlanCase.MixOf(aim), Rules: rules,
		Start: consult.Start(s.Plan, today), Event: event,
	}
}

// SameSteps reports whether the steps kept are those of a ladder.
func (s State) SameSteps(l plan.Ladder) bool {
	if len(l.Steps) != len(s.Plan.Steps) {
		return false
	}
	for i, st := range s.Plan.Steps {
		o, ok := consult.OptionByID(s.Plan, st.OptionID)
		if !ok || s.PlanCase.MixOf(o) != l.Steps[i].Mix {
			return false
		}
	}
	return true
}

// DoneOn counts the sessions recorded on a step.
func DoneOn(p record.Plan, step record.ID) int {
	n := 0
	for _, r := range p.Reviews {
		if r.StepID == step && r.Decision == "" {
			n++
		}
	}
	return n
}
