package desk

import (
	"context"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// AlertWords are an alert in short, for the head, and in full, for the list.
func AlertWords(w *words.Words, by amount.Writer, p record.Practice, a record.Athlete, x consult.Alert) (short, full string) {
	switch x.Kind {
	case consult.AlertGain:
		return GainWords(w, by, p, x.Gain)
	case consult.AlertOutstanding:
		if a.Born == "" {
			return w.Say("alert.born"), w.Say("overview.due.born")
		}
		return w.Say("alert.unsettled"), w.Say("planner.notyet.minor")
	case consult.AlertWithdrawn:
		return w.Say("alert.withdrawn"), w.Say("alert.withdrawn.full")
	case consult.AlertSince:
		return w.Say("alert.since"), w.Say("alert.since.full")
	case consult.AlertHeat:
		return w.Say("alert.heat." + heatLevel(x.Heat)), w.Say("alert.heat.full." + heatLevel(x.Heat))
	case consult.AlertReview:
		day, _ := x.Day.Time()
		return w.Say("alert.review", w.Day(day)), w.Say("alert.review.full", w.Date(day))
	case consult.AlertPhysician:
		name := w.Say("flag." + string(x.Flag) + ".name")
		return w.Say("alert.physician"), w.Say("alert.physician.full", name)
	}
	return w.Say("flag." + string(x.Flag) + ".name"), w.Say("flag." + string(x.Flag) + ".effect")
}

// Alerts lists what has to be known of an athlete now, the gravest first, with the
// newest sheet's gain.
func (d *Desk) Alerts(ctx context.Context, id record.ID) (a record.Athlete, list []consult.Alert, err error) {
	if a, err = d.Store.LoadAthlete(ctx, id); err != nil {
		return a, nil, err
	}
	tests, err := d.Store.TestsListed(ctx, id)
	if err != nil || len(tests) == 0 {
		return a, consult.AlertsOf(a, nil, d.Now()), err
	}
	found, err := d.SomeFindings(ctx, a, []record.ID{tests[0].ID})
	if err != nil || len(found) == 0 {
		return a, nil, err
	}
	return a, consult.AlertsOf(a, &found[0], d.Now()), nil
}

// heatLevel is a level in the keys of the texts.
func heatLevel(l climate.Level) string {
	switch l {
	case climate.Limit:
		return "limit"
	case climate.Cancel:
		return "cancel"
	case climate.UsualCare, climate.Watch, climate.Reduce:
	}
	return "reduce"
}

// PlanAlerts lists what has to be known of the plan an athlete takes along; nothing
// where none is agreed or it cannot be opened, which its own screen says.
func (d *Desk) PlanAlerts(ctx context.Context, id record.ID) ([]consult.Alert, error) {
	plans, err := d.Store.Plans(ctx, id)
	if err != nil {
		return nil, err
	}
	p := consult.ToTakeAlong(plans)
	if p == nil {
		return nil, nil
	}
	a, err := d.Store.LoadAthlete(ctx, id)
	if err != nil {
		return nil, err
	}
	tests, err := d.SomeFindings(ctx, a, consult.NamedTests(p.Basis))
	if err != nil {
		return nil, err
	}
	c, err := d.OpenPlan(ctx, *p, a, tests)
	if err != nil {
		return nil, err
	}
	if c.Basis.Calculation == nil { // by its copy alone: its heat is asked of all tests
		if tests, err = d.AllFindings(ctx, a); err != nil {
			return nil, err
		}
	}
	d.JudgeHeat(*p, a, tests, &c.Basis)
	return consult.PlanAlerts(c, d.Today()), nil
}

// JudgeHeat looks at the heat of a plan's session where the air is known, so that its
// caution is said of a measured loss too.
func (d *Desk) JudgeHeat(p record.Plan, a record.Athlete, tests []consult.Findings, b *consult.Basis) {
	if b.Calculation != nil {
		return
	}
	if r, err := consult.Calculate(consult.OutingFor(p, a, tests, b.Air), a, tests, d.Now(), d.Calculate()); err == nil {
		b.Calculation = &r
	}
}
