package steps

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// ruleFields are the rules that size and space the steps; no trial sets them, so
// each may be changed. What is usual stands in a field while nothing is set.
type ruleFields struct {
	fluid, carbohydrate, sessions, week, days *field.Number
	box                                       *fyne.Container
}

// rule is the place of a rule of the plan's own.
func rule(path string, of func(r *record.StepRules) *record.Number) bind.NumberAt[record.Plan] {
	return bind.At("rules."+path, func(p *record.Plan) *record.Number { return of(&p.Rules) })
}

func newRuleFields(v *part.Plan) *ruleFields {
	f, say := &ruleFields{}, v.Speaker.Say
	number := func(name string, of evidence.Field, u quantity.Unit, at bind.NumberAt[record.Plan]) *field.Number {
		n := v.Binder.Number("", "planner.rule."+name, of, u, at)
		n.SetBox(96)
		return n
	}
	f.fluid = number("fluid", evidence.StepFluid, quantity.LitrePerHour, rule("fluid", func(r *record.StepRules) *record.Number { return &r.Fluid }))
	f.fluid.SetShown(ruleUnit(v.Speaker))
	f.carbohydrate = number("carbohydrate", evidence.StepCarbohydrate, quantity.GramPerHour, rule("carbohydrate", func(r *record.StepRules) *record.Number { return &r.Carbohydrate }))
	f.sessions = number("sessions", evidence.StepSessions, quantity.None, rule("sessions", func(r *record.StepRules) *record.Number { return &r.Sessions }))
	f.week = number("week", evidence.SessionsAWeek, quantity.None, rule("perWeek", func(r *record.StepRules) *record.Number { return &r.PerWeek }))
	f.days = number("days", evidence.ClearDays, quantity.None, rule("clearDays", func(r *record.StepRules) *record.Number { return &r.ClearDays }))
	unit := say("planner.rule.days.unit")
	f.days.SetSuffix(unit)
	f.days.SetBox(max(96, daysRoom+look.Body.Width(unit)/look.Scaled(1)))
	f.usual(v, plan.DefaultStepRules())
	f.box = look.VBox(8, look.NewLabel(say("planner.rules"), look.Strong, look.Ink), look.NewParagraph(say("planner.rules.note"), look.Note, look.Ink2),
		part.NewForm(look.NewEntry(say("planner.rule.fluid"), f.fluid), look.NewEntry(say("planner.rule.carbohydrate"), f.carbohydrate),
			look.NewEntry(say("planner.rule.sessions"), f.sessions), look.NewEntry(say("planner.rule.week"), f.week), look.NewEntry(say("planner.rule.days"), f.days)))
	return f
}

// daysRoom is what a number of days takes beside its unit, px at 100 % text.
const daysRoom float32 = 30

// usual shows what holds where a field is empty.
func (f *ruleFields) usual(v *part.Plan, r plan.StepRules) {
	w, shown := v.Desk.Words, ruleUnit(v.Speaker)
	fluid, err := quantity.Convert(r.FluidLH, quantity.LitrePerHour, shown)
	if err == nil {
		f.fluid.SetPlaceholder(w.Number(fluid, quantity.Decimals(shown)))
	}
	f.carbohydrate.SetPlaceholder(w.Number(r.CarbohydrateGH, 0))
	f.sessions.SetPlaceholder(w.Number(float64(r.Sessions), 0))
	f.week.SetPlaceholder(w.Number(r.PerWeek, 0))
	f.days.SetPlaceholder(w.Number(float64(r.ClearDays), 0))
}

// ruleUnit is what a step of fluid is shown in: finer than a rate of drinking.
func ruleUnit(sp wording.Speaker) quantity.Unit {
	if sp.By.US {
		return quantity.FluidOuncePerHour
	}
	return quantity.MillilitrePerHour
}
