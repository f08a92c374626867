package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/field"
	"ebbwell/app/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// ruleFields are the rules that size and space the steps; no trial sets them, so
// each may be changed.
type ruleFields struct {
	rules                                     plan.StepRules
	fluid, carbohydrate, sessions, week, days *field.Number
	box                                       *fyne.Container
}

func newRuleFields(v *View, changed func(plan.StepRules)) *ruleFields {
	f := &ruleFields{}
	h, say := v.desk.Host, v.sp.say
	number := func(name string, of evidence.Field, u quantity.Unit, take func(x float64)) *field.Number {
		n := field.NewNumber(h, "planner.rule."+name, of, u)
		n.SetBox(96)
		n.OnLeft = func(r field.Reading) {
			if r.Usable() && r.Value > 0 {
				before := f.rules
				if take(r.Value); f.rules != before {
					changed(f.rules)
				}
			}
		}
		return n
	}
	f.fluid = number("fluid", evidence.DrinkingRate, quantity.LitrePerHour, func(x float64) { f.rules.FluidLH = x })
	f.fluid.SetShown(ruleUnit(v.sp))
	f.carbohydrate = number("carbohydrate", "", quantity.GramPerHour, func(x float64) { f.rules.CarbohydrateGH = x })
	f.sessions = number("sessions", "", quantity.None, func(x float64) { f.rules.Sessions = int(x) })
	f.week = number("week", "", quantity.None, func(x float64) { f.rules.PerWeek = x })
	f.days = number("days", "", quantity.None, func(x float64) { f.rules.ClearDays = int(x) })
	f.days.SetSuffix(say("planner.rule.days.unit"))
	f.box = look.VBox(8, look.NewLabel(say("planner.rules"), look.Strong, look.Ink), look.NewParagraph(say("planner.rules.note"), look.Note, look.Ink2),
		newForm(look.NewEntry(say("planner.rule.fluid"), f.fluid), look.NewEntry(say("planner.rule.carbohydrate"), f.carbohydrate),
			look.NewEntry(say("planner.rule.sessions"), f.sessions), look.NewEntry(say("planner.rule.week"), f.week), look.NewEntry(say("planner.rule.days"), f.days)))
	return f
}

// ruleUnit is what a step of fluid is shown in: finer than a rate of drinking.
func ruleUnit(sp speaker) quantity.Unit {
	if sp.by.US {
		return quantity.FluidOuncePerHour
	}
	return quantity.MillilitrePerHour
}

// show sets the fields; they can be changed while the plan is a draft.
func (f *ruleFields) show(r plan.StepRules, draft bool) {
	f.rules = r
	f.fluid.SetValue(r.FluidLH)
	f.carbohydrate.SetValue(r.CarbohydrateGH)
	f.sessions.SetValue(float64(r.Sessions))
	f.week.SetValue(r.PerWeek)
	f.days.SetValue(float64(r.ClearDays))
	for _, n := range []*field.Number{f.fluid, f.carbohydrate, f.sessions, f.week, f.days} {
		enable(n, draft)
	}
}
