package planner

import (
	"time"

	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// climb is the way from the habit to the aim by some rules, from the day the
// plan begins.
func (s state) climb(rules plan.StepRules, today time.Time) plan.Climb {
	habit, _ := consult.OptionOf(s.plan, record.OptionHabit)
	aim, _ := consult.OptionOf(s.plan, record.OptionAim)
	event, _ := s.plan.Target.EventDate.Time()
	return plan.Climb{
		Length: plan.Expected, Habit: s.planCase.MixOf(habit), Aim: s.planCase.MixOf(aim), Rules: rules,
		Start: consult.Start(s.plan, today), Event: event,
	}
}

// sameSteps reports whether the steps kept are those of a ladder.
func (s state) sameSteps(l plan.Ladder) bool {
	if len(l.Steps) != len(s.plan.Steps) {
		return false
	}
	for i, st := range s.plan.Steps {
		o, ok := consult.OptionByID(s.plan, st.OptionID)
		if !ok || s.planCase.MixOf(o) != l.Steps[i].Mix {
			return false
		}
	}
	return true
}

// doneOn counts the sessions recorded on a step.
func doneOn(p record.Plan, step record.ID) int {
	n := 0
	for _, r := range p.Reviews {
		if r.StepID == step && r.Decision == "" {
			n++
		}
	}
	return n
}
