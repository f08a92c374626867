package consult

import (
	"strings"
	"time"

	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// Outrun is the newest test of the plan's sport, done since the plan was agreed,
// by which the mix in force is more to drink than is likely lost in such a
// session: the plan has to be looked at again. ok is false where no test says
// so.
func (c Case) Outrun(tests []Findings, today time.Time, d Setup) (found Findings, ok bool) {
	o, ok := InForce(c.Plan)
	at := c.Plan.Agreement.AgreedAt
	if !ok || at == nil || c.Plan.State != record.PlanAgreed {
		return found, false
	}
	agreed := record.DateOf(*at)
	for _, f := range tests {
		day := f.Test.Session.Date
		if f.Test.State == record.TestOpen || day <= agreed || day <= found.Test.Session.Date {
			continue
		}
		if !strings.EqualFold(sportOf(f.Test, c.Athlete), c.Plan.Target.Sport) || !c.above(f, c.Carried(o), today, d) {
			continue
		}
		found = f
	}
	return found, found.Test.ID != ""
}

// above reports whether a mix passes the ceiling that one test sets.
func (c Case) above(f Findings, mix plan.Mix, today time.Time, d Setup) bool {
	b, err := BasisOf(c.Athlete, []Findings{f}, today, d)
	if err != nil {
		return false
	}
	planner, err := plan.New(b.Plan, c.Planner.Session(), c.Planner.Menu(), c.Planner.Aim())
	return err == nil && planner.Evaluate(plan.Expected, mix).Guards.Has(plan.OverCeiling)
}
