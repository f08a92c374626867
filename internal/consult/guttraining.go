package consult

import (
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// GutTraining is the carbohydrate of the habit, g/h, and the weeks of training the gut
// from there to the least that the plan aims at, see [fuel.GutTraining]; no weeks where
// the habit has as much, nothing is aimed at, or one may not take anything.
func (c Case) GutTraining() (from float64, weeks []fuel.GutWeek) {
	habit, has := OptionOf(c.Plan, record.OptionHabit)
	aim := c.Planner.Aim().Carbohydrate
	if !has || !aim.On || plan.Closed(PlanChances(c.Plan)) {
		return 0, nil
	}
	from = c.Planner.Evaluate(plan.Expected, c.MixOf(habit)).Carbohydrate.TotalGH
	return from, fuel.GutTraining(from, aim.Low)
}
