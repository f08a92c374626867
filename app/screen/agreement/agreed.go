package agreement

import (
	"context"
	"slices"
	"strings"

	"ebbwell/app/kit/field"
	"ebbwell/app/screen/planner/state"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// Agree keeps the plan as agreed with what it was calculated from, and goes to the
// page; false when something stands in the way.
func (a *Agreement) Agree() bool {
	v := a.v
	if wrong := a.Wrong(); wrong != "" {
		a.Trouble.SetText(v.Speaker.Say("planner.notyet"), wrong)
		return false
	}
	ctx := context.Background()
	if !v.Binder.FlushNow() {
		return false
	}
	p, err := v.Desk.Store.LoadPlan(ctx, v.Now.Plan.ID)
	if err != nil {
		v.Desk.Trouble(err)
		return false
	}
	a.into(&p)
	c, err := v.File.Open(p, v.Desk)
	if err != nil {
		v.Desk.Trouble(err)
		return false
	}
	if o, _ := a.chosen(); c.MayAgree(o) != nil {
		a.Trouble.SetText(v.Speaker.Say("planner.notyet"), v.Speaker.Say("planner.agree.stops"))
		return false
	}
	c.Plan = c.WithCarried(p)
	inputs, results, err := c.FreezePlan()
	if err != nil {
		v.Desk.Trouble(err)
		return false
	}
	kept, err := v.Desk.Store.AgreePlan(ctx, c.Plan, store.Freezing{Inputs: inputs, Results: results, Evidence: evidence.Version}, store.Edit{}, a.replaced()...)
	if err != nil {
		v.Desk.Trouble(err)
		return false
	}
	v.Replace(kept)
	v.GoToHandout()
	return true
}

// into writes the agreement into a plan.
func (a *Agreement) into(p *record.Plan) {
	o, _ := a.chosen()
	words := strings.TrimSpace(a.words.Text())
	g := &p.Agreement
	g.OptionID, g.Words, g.Physician = o.ID, words, strings.TrimSpace(a.Physician.Text())
	g.Review, _ = a.review.Date()
	g.From, _ = a.from.Date()
	g.Until, _ = a.until.Date()
	state.Edit(p, o.ID, func(o *record.Option) {
		o.Words = words
		o.Importance, o.Confidence = rated(a.importance), rated(a.confidence)
	})
	startAt(p, o.ID)
}

// startAt makes the step of an option the one in force, where it is one.
func startAt(p *record.Plan, option record.ID) {
	at := slices.IndexFunc(p.Steps, func(s record.Step) bool { return s.OptionID == option })
	for i := range p.Steps {
		switch {
		case at < 0 && i == 0 || i == at:
			p.Steps[i].State = record.StepNow
		case i < at:
			p.Steps[i].State = record.StepDone
		default:
			p.Steps[i].State = record.StepAhead
		}
	}
}

// rated is what a rating says as it is kept.
func rated(r *field.Rating) record.Number {
	if r.Value() == field.Unrated {
		return record.Number{}
	}
	return record.Num(float64(r.Value()), quantity.None)
}

// replaced are the plans that this one takes the place of.
func (a *Agreement) replaced() (ids []record.ID) {
	for i, c := range a.Replaces {
		if c.On() {
			ids = append(ids, a.Older[i].ID)
		}
	}
	return ids
}
