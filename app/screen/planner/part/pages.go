package part

import (
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/internal/record"
)

// GoToHandout opens the athlete's page of this plan.
func (v *Plan) GoToHandout() {
	if v.Binder == nil {
		return
	}
	v.Desk.Go(desk.Place{Screen: desk.Handout, Athlete: v.File.Athlete.ID, Record: v.Now.Plan.ID})
}

// GoToPlan opens another plan of the athlete's.
func (v *Plan) GoToPlan(id record.ID) {
	v.Desk.Go(desk.Place{Screen: desk.Plan, Athlete: v.File.Athlete.ID, Record: id})
}

// GoToNew begins another plan from the newest test.
func (v *Plan) GoToNew() {
	v.Desk.Go(desk.Place{Screen: desk.Plan, Athlete: v.File.Athlete.ID, New: true})
}

// PlanOptions are the athlete's plans to choose from.
func (v *Plan) PlanOptions() []field.Option {
	var list []field.Option
	for _, p := range v.File.Plans {
		standing := v.Speaker.Say("planner.state." + string(p.State))
		day := p.CreatedAt
		if p.Agreement.AgreedAt != nil {
			day = *p.Agreement.AgreedAt
		}
		list = append(list, field.Option{
			Key: string(p.ID), Text: v.Speaker.PlanName(p), Note: v.Speaker.Say("planner.plan.note", standing, v.Desk.Words.Day(day)),
		})
	}
	return list
}
