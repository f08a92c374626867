package planner

import (
	"context"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/letter"
	"ebbwell/internal/record"
)

// askLetter shows the open plan as text, with the test it is based on.
func (v *View) askLetter() {
	if !v.Binder.FlushNow() {
		return
	}
	a := v.File.Athlete
	letter.Ask(v.Desk, v.Canvas(), letter.Source{
		Name: "planner.letter", File: v.Speaker.Say("letter.file.plan", a.Name), Athlete: a.ID, Kind: record.KindPlan, Record: v.Now.Plan.ID,
		Of: func(ctx context.Context, d *desk.Desk) (letter.Letter, error) {
			p, err := d.Store.LoadPlan(ctx, v.Now.Plan.ID)
			if err != nil {
				return letter.Letter{}, err
			}
			tests, err := d.AllFindings(ctx, a)
			if err != nil {
				return letter.Letter{}, err
			}
			c, err := d.OpenPlan(ctx, p, a, tests)
			if err != nil {
				return letter.Letter{}, err
			}
			in := letter.Input{Speaker: d.SpeakerFor(a), Practice: d.Practice(), Athlete: a, Plan: &c, At: d.Now()}
			if len(c.Basis.Tests) > 0 {
				in.Test = &c.Basis.Tests[0]
			}
			return letter.Of(in), nil
		},
	})
}
