package wording

import "ebbwell/internal/record"

// PlanName is what a plan is called: its own name, else its session's, else its
// sport.
func (sp Speaker) PlanName(p record.Plan) string {
	sport := "sport." + p.Target.Sport
	switch {
	case p.Name != "":
		return p.Name
	case p.Target.SessionName != "":
		return p.Target.SessionName
	case p.Target.Sport != "" && sp.Words.Has(sport):
		return sp.Words.Say(sport)
	}
	return sp.Say("planner.plan.unnamed")
}
