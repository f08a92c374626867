package planner

import (
	"context"
	"slices"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/otherclimate"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// askClimate asks what the plan is to rest on in another climate, and shows
// what that does to it.
func (v *View) askClimate() {
	closed := slices.DeleteFunc(slices.Clone(v.file.tests), func(f consult.Findings) bool {
		return f.Test.State == record.TestOpen
	})
	otherclimate.Ask(v.desk, v.canvas(), v.file.athlete, closed, v.now.plan, v.takeClimate)
}

// takeClimate moves a draft to another basis. An agreed plan stays as it was
// agreed, and a new one begins from it there.
func (v *View) takeClimate(b record.PlanBasis) {
	if v.now.draft() {
		v.b.Pick("planner.climate", func(s *bind.Sheet[record.Plan]) { s.Record.Basis = b })
		return
	}
	if !v.b.FlushNow() {
		return
	}
	next := successor(v.now.plan)
	next.Basis = b
	kept, err := v.desk.Store.SavePlan(context.Background(), next, store.Edit{})
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	v.desk.Go(desk.Place{Screen: desk.Plan, Athlete: v.file.athlete.ID, Record: kept.ID})
}
