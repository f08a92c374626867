package desk

import (
	"context"
	"strings"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// GainWords say a gain in mass: the title, and what to do, gravest first, with this
// athlete's own conditions and the practice's own emergency number. Where body mass
// is hidden the amount is left out.
func GainWords(w *words.Words, by amount.Writer, p record.Practice, g consult.Gain) (title, sentence string) {
	key := "gain.red"
	if g.WeighAgain {
		key = "gain.again"
	}
	title = w.Say(key + ".title")
	call := w.Say("gain.number.unset")
	if p.Emergency != "" {
		call = w.Say("gain.number", p.Emergency)
	}
	list := []string{w.Say("gain.emergency", call)}
	if by.Hidden {
		list = append(list, w.Say("gain.heavier.hidden"))
	} else {
		list = append(list, w.Say("flag.gained", by.Amount(g.Kilograms, quantity.Kilogram)))
	}
	list = append(list, w.Say(key))
	if len(g.Risks) > 0 {
		var names []string
		for _, kind := range g.Risks {
			names = append(names, w.Say("flag."+string(kind)+".name"))
		}
		list = append(list, w.Say("gain.risks", w.List(names)))
	}
	return title, strings.Join(list, " ")
}

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
	tests, err := d.Store.Tests(ctx, id)
	if err != nil || len(tests) == 0 {
		return a, consult.AlertsOf(a, nil, d.Now()), err
	}
	found, err := d.Findings(ctx, tests[0], a)
	if err != nil {
		return a, nil, err
	}
	return a, consult.AlertsOf(a, &found, d.Now()), nil
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
	tests, err := d.AllFindings(ctx, a)
	if err != nil {
		return nil, err
	}
	c, err := d.OpenPlan(ctx, *p, a, tests)
	if err != nil {
		return nil, err
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
