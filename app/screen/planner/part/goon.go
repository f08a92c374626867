package part

import (
	"context"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// GoOn keeps a new plan that goes on from this one, changed by a function, with the
// products frozen in this one, and opens it.
func (v *Plan) GoOn(change func(p *record.Plan)) {
	if !v.Binder.FlushNow() {
		return
	}
	ctx, was := context.Background(), v.Now.Plan
	next := consult.Successor(was, v.Speaker.Say("planner.named.next", v.Speaker.PlanName(was), v.Desk.Words.Day(v.Desk.Now())))
	change(&next)
	copies, err := v.Desk.KeptOfPlan(ctx, was.ID)
	if err != nil {
		v.Desk.Trouble(err)
		return
	}
	kept, err := v.Desk.Store.SavePlan(ctx, next, store.Edit{})
	if err == nil && len(copies) > 0 {
		_, err = v.Desk.Store.Freeze(ctx, RefOf(kept), store.Freezing{
			Inputs: copies[0].Inputs, Results: copies[0].Results, Evidence: copies[0].Evidence, Why: v.Speaker.Say("planner.named.products"),
		})
	}
	if err != nil {
		v.Desk.Trouble(err)
		return
	}
	v.Desk.Go(desk.Place{Screen: desk.Plan, Athlete: v.File.Athlete.ID, Record: kept.ID})
}
