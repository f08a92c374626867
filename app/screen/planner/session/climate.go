package session

import (
	"slices"

	"ebbwell/app/kit/bind"
	"ebbwell/app/screen/otherclimate"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// AskClimate asks what the plan is to be based on in another climate, and shows
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
	v.GoOn(func(p *record.Plan) { p.Basis = b })
}
