package squad

import (
	"context"
	"fmt"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/squad"
	"ebbwell/internal/store"
)

// askPlans asks whether to begin a plan for everybody whose test can carry one.
func (v *View) askPlans() {
	ready := v.planReady()
	if len(ready) == 0 {
		v.desk.Say(v.say("squad.plans.nobody"), "", nil)
		return
	}
	v.desk.Host.Confirm(v.canvas(), "squad.plans", v.say("squad.plans.title", len(ready)), v.say("squad.plans.sentence"), v.say("squad.plans.yes"), func() {
		if v.flushNow() {
			v.beginPlans(ready)
		}
	})
}

// planReady are the rows whose test has a rate with a range, and no red flag of which
// nobody was told.
func (v *View) planReady() []squad.Row {
	var list []squad.Row
	for _, r := range v.rows {
		if r.Rate.Known && r.Rate.Ranged && !consult.Blocks(r.Found, r.Sheet.Athlete) {
			list = append(list, r)
		}
	}
	return list
}

// beginPlans begins a plan from each athlete's own test, but for those who have one
// from it already.
func (v *View) beginPlans(rows []squad.Row) {
	begun, there := 0, 0
	for _, r := range rows {
		made, err := v.beginPlan(r)
		switch {
		case err != nil:
			v.desk.Say(v.say("squad.plans.failed", r.Sheet.Athlete.Name, desk.Sentence(v.desk.Words, err)), "", nil)
			return
		case made:
			begun++
		default:
			there++
		}
	}
	v.desk.Say(v.say("squad.plans.done", begun, there), "", nil)
}

// beginPlan begins a plan as the planner does; false where there is one from this
// test.
func (v *View) beginPlan(r squad.Row) (bool, error) {
	ctx, a := context.Background(), r.Sheet.Athlete
	plans, err := v.desk.Store.Plans(ctx, a.ID)
	if err != nil {
		return false, fmt.Errorf("begin a plan: %w", err)
	}
	for _, p := range plans {
		if p.Basis.TestID == r.Sheet.Test.ID {
			return false, nil
		}
	}
	tests, err := v.desk.AllFindings(ctx, a)
	if err != nil {
		return false, err
	}
	with := v.desk.Calculate()
	basis, err := consult.BasisOf(a, consult.First(tests, r.Sheet.Test.ID), v.desk.Now(), with)
	if err != nil {
		return false, err
	}
	p, err := consult.NewPlan(a, basis, with, desk.OptionNames(v.desk.Words), v.desk.Now())
	if err == nil {
		p, err = consult.AsBefore(p, plans, a, basis, with)
	}
	if err != nil {
		return false, err
	}
	p.Name = v.say("squad.plans.name", v.nameOf(v.doc.Now().session), v.speaker(false).Dated(r.Sheet.Test.Session.Date, ""))
	if _, err := v.desk.Store.SavePlan(ctx, p, store.Edit{}); err != nil {
		return false, fmt.Errorf("begin a plan: %w", err)
	}
	return true, nil
}
