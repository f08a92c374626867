package session

import (
	"context"
	"slices"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/otherclimate"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// AskClimate asks what the plan is to rest on in another climate, and shows
// what that does to it.
func AskClimate(v *part.Plan) {
	closed := slices.DeleteFunc(slices.Clone(v.File.Tests), func(f consult.Findings) bool {
		return f.Test.State == record.TestOpen
	})
	otherclimate.Ask(v.Desk, v.Canvas(), v.File.Athlete, closed, v.Now.Plan, func(b record.PlanBasis) { TakeClimate(v, b) })
}

// TakeClimate moves a draft to another basis. An agreed plan stays as it was
// agreed, and a new one begins from it there.
func TakeClimate(v *part.Plan, b record.PlanBasis) {
	if v.Now.Draft() {
		v.Binder.Pick("planner.climate", func(s *bind.Sheet[record.Plan]) { s.Record.Basis = b })
		return
	}
	if !v.Binder.FlushNow() {
		return
	}
	next := state.Successor(v.Now.Plan)
	next.Basis = b
	kept, err := v.Desk.Store.SavePlan(context.Background(), next, store.Edit{})
	if err != nil {
		v.Desk.Trouble(err)
		return
	}
	v.Desk.Go(desk.Place{Screen: desk.Plan, Athlete: v.File.Athlete.ID, Record: kept.ID})
}
