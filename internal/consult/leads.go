package consult

import (
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// LeadsTo reports whether the steps that are kept lead to an option: it is one of
// them, or every amount of the last lies between the habit's and the option's. Without
// steps there is nothing to contradict it.
func (c Case) LeadsTo(o record.Option) bool {
	if len(c.Plan.Steps) == 0 {
		return true
	}
	for _, s := range c.Plan.Steps {
		if s.OptionID == o.ID {
			return true
		}
	}
	last, ok := OptionByID(c.Plan, c.Plan.Steps[len(c.Plan.Steps)-1].OptionID)
	habit, has := OptionOf(c.Plan, record.OptionHabit)
	if !ok || !has {
		return false
	}
	from, at, to := c.MixOf(habit), c.MixOf(last), c.MixOf(o)
	for s := range plan.Slots {
		if at[s] < min(from[s], to[s])-leadTolerance || at[s] > max(from[s], to[s])+leadTolerance {
			return false
		}
	}
	return true
}

// leadTolerance forgives a mL of rounding.
const leadTolerance = 1
