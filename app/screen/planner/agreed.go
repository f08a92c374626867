package planner

import (
	"context"
	"slices"
	"strings"

	"ebbwell/app/kit/field"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// agree keeps the plan as agreed with what it was calculated from, and goes to the
// page; false when something stands in the way.
func (a *agreement) agree() bool {
	v := a.v
	if wrong := a.wrong(); wrong != "" {
		a.trouble.SetText(v.sp.say("planner.notyet"), wrong)
		return false
	}
	ctx := context.Background()
	if !v.b.FlushNow() {
		return false
	}
	p, err := v.desk.Store.LoadPlan(ctx, v.now.plan.ID)
	if err != nil {
		v.desk.Trouble(err)
		return false
	}
	a.into(&p)
	c, err := v.file.open(p, v.desk)
	if err != nil {
		v.desk.Trouble(err)
		return false
	}
	inputs, results, err := c.FreezePlan()
	if err != nil {
		v.desk.Trouble(err)
		return false
	}
	kept, err := v.desk.Store.AgreePlan(ctx, p, store.Freezing{Inputs: inputs, Results: results, Evidence: evidence.Version}, store.Edit{})
	if err != nil {
		v.desk.Trouble(err)
		return false
	}
	a.replaceOlder(ctx)
	v.replace(kept)
	v.goToHandout()
	return true
}

// into writes the agreement into a plan.
func (a *agreement) into(p *record.Plan) {
	o, _ := a.chosen()
	words := strings.TrimSpace(a.words.Text())
	g := &p.Agreement
	g.OptionID, g.Words, g.Physician = o.ID, words, strings.TrimSpace(a.physician.Text())
	g.Review, _ = a.review.Date()
	g.From, _ = a.from.Date()
	g.Until, _ = a.until.Date()
	edit(p, o.ID, func(o *record.Option) {
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

// replaceOlder marks the plans that this one takes the place of.
func (a *agreement) replaceOlder(ctx context.Context) {
	for i, c := range a.replaces {
		if !c.On() {
			continue
		}
		old, err := a.v.desk.Store.LoadPlan(ctx, a.older[i].ID)
		if err == nil {
			old.State = record.PlanReplaced
			_, err = a.v.desk.Store.SavePlan(ctx, old, store.Edit{})
		}
		if err != nil {
			a.v.desk.Trouble(err)
		}
	}
}
