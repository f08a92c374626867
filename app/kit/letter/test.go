package letter

import (
	"time"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/figure"
	"ebbwell/internal/handout"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// known is what has to be known first: red flags, guards, conditions.
func (w writer) known() []string {
	var list []string
	if w.in.Test != nil {
		list = append(list, w.redFlags(*w.in.Test)...)
	}
	alerts := consult.AlertsOf(w.in.Athlete, nil, w.in.At)
	if w.in.Plan != nil {
		alerts = consult.WithPlan(alerts, consult.PlanAlerts(*w.in.Plan, record.DateOf(w.in.At)))
	}
	var conditions []string
	for _, a := range alerts {
		switch a.Kind {
		case consult.AlertCondition, consult.AlertToday:
			conditions = append(conditions, w.Say("flag."+string(a.Flag)+".name"))
		case consult.AlertReview: // told under what will be checked
		default:
			_, full := desk.AlertWords(w.Words, w.By, w.in.Practice, w.in.Athlete, a)
			list = append(list, full)
		}
	}
	if len(conditions) > 0 {
		list = append(list, w.Say("letter.conditions", w.Words.List(conditions)))
	}
	if w.in.Plan != nil {
		list = append(list, w.guards(*w.in.Plan, true)...)
	}
	return list
}

// redFlags are those of a test, with what was asked and done about them.
func (w writer) redFlags(f consult.Findings) []string {
	var list []string
	for _, flag := range f.Sweat.Flags {
		if text := desk.LetterFlag(w.Words, w.By, flag); text != "" {
			list = append(list, text)
		}
	}
	if len(f.Test.Safety) > 0 {
		list = append(list, desk.SafetyLines(w.Speaker, f.Test, w.in.At.Location())...)
	}
	return list
}

// guards are those that speak at what is to be done now: the grave ones, of drinking
// too much, or the others.
func (w writer) guards(c consult.Case, grave bool) []string {
	o, ok := consult.InForce(c.Plan)
	if !ok {
		return nil
	}
	q := c.Planner.Evaluate(plan.Expected, c.Carried(o))
	var list []string
	for _, one := range q.Guards.Each() {
		if grave != one.Has(plan.GainInMass|plan.OverCeiling|plan.LowPlasmaSodium) {
			continue
		}
		text := w.Guard(care.SayGuard(one, care.GuardCase{Athlete: c.Athlete.Name, Planner: c.Planner, Length: plan.Expected, At: q, Hidden: w.By.Hidden}))
		if text != "" {
			list = append(list, text)
		}
	}
	return list
}

// assessment is what the test says; without one, what the plan is based on.
func (w writer) assessment() []string {
	var list []string
	if w.in.Test != nil {
		list = w.tested(*w.in.Test)
	}
	if w.in.Plan != nil && len(w.in.Plan.Basis.Tests) > 1 {
		list = append(list, w.Say("letter.pool", len(w.in.Plan.Basis.Tests)))
	}
	if w.in.Plan != nil && w.in.Plan.Basis.Kind == record.BasisEstimate {
		list = append(list, w.estimated(*w.in.Plan)...)
	}
	if len(list) == 0 {
		return []string{w.Say("letter.notest")}
	}
	return list
}

// estimated says that the plan is based on no test of its conditions, and the range.
func (w writer) estimated(c consult.Case) []string {
	key := "letter.estimate"
	if c.Place() != "" {
		return []string{w.Say(key+".place", c.Place()), w.Say(key+".range", w.Rates(rateOf(c)))}
	}
	return []string{w.Say(key), w.Say(key+".range", w.Rates(rateOf(c)))}
}

// rateOf is the range of the sweat rate that a plan is based on, L/h.
func rateOf(c consult.Case) quantity.Range {
	return quantity.Range{Low: c.Basis.Plan.SweatRate.Low, High: c.Basis.Plan.SweatRate.High}
}

// figures are those that are told of a test, by their names in package consult.
func figures() []string {
	return []string{
		"sweat-loss", "sweat-rate", "drunk", "deficit", "deficit-share", "drinking-rate", "sodium-concentration", "sodium-lost-rate", "carbohydrate-rate",
	}
}

// tested is what a test says.
func (w writer) tested(f consult.Findings) []string {
	day := consult.TestDay(f.Test)
	list := []string{w.Say("letter.test", w.Words.Date(day))}
	if _, ok := f.Test.Session.Date.Time(); !ok {
		list = []string{w.Say("letter.test.undated")}
	}
	terms := handout.TermsOf(w.in.Practice, f.Care, w.Words)
	terms.MassHidden = w.By.Hidden
	for _, d := range handout.ReportDone(f, terms, w.Words)[:2] { // the session and its air
		list = append(list, w.Say("letter.line", d.Label, d.Value))
	}
	for _, name := range figures() {
		if line := w.figure(name, f.FigureNamed(name)); line != "" {
			list = append(list, line)
		}
	}
	if !f.Sweat.Fluid.Rate.Known {
		list = append(list, w.Say("letter.norate"))
	}
	return append(list, w.state(f)...)
}

// figure is one figure with its range; empty where it is not known, or tells of body
// mass where that is hidden.
func (w writer) figure(name string, f figure.Figure) string {
	if !f.Known || w.By.Hidden && name == "deficit-share" {
		return ""
	}
	label := w.Say("findings.figure." + name)
	if (name == "deficit" || name == "deficit-share") && f.Value < 0 {
		f.Value, f.Range = -f.Value, quantity.Range{Low: -f.Range.High, High: -f.Range.Low}
		label = w.Say("findings.figure.gain")
		if name == "deficit-share" {
			label = w.Say("findings.figure.gain-share")
		}
	}
	within := w.By.Range(f)
	if f.Ranged && f.Range.Low < 0 { // a stroke would read as a second minus
		within = w.Say("findings.to", w.By.Number(f.Range.Low, f.Unit), w.By.Number(f.Range.High, f.Unit))
	}
	switch {
	case f.Ranged && w.By.Number(f.Range.Low, f.Unit) == w.By.Number(f.Range.High, f.Unit):
		return w.Say("letter.figure.alone", label, w.By.Found(f))
	case f.Estimate && f.Ranged:
		return w.Say("letter.figure.estimate", label, w.By.Found(f), within)
	case f.Ranged && w.By.Hidden: // no per cent stands where body mass is hidden
		return w.Say("letter.figure.hidden", label, w.By.Found(f), within)
	case f.Ranged:
		return w.Say("letter.figure", label, w.By.Found(f), within)
	}
	return w.Say("letter.figure.provisional", label, w.By.Found(f))
}

// state says how far the sheet is, and by whom it was closed.
func (w writer) state(f consult.Findings) []string {
	t := f.Test
	switch {
	case t.State == record.TestOpen || t.ClosedAt == nil:
		return []string{w.Say("letter.open")}
	case t.ClosedBy == "":
		return []string{w.Say("letter.closed", w.onDay(*t.ClosedAt))}
	}
	return []string{w.Say("letter.closed.by", w.onDay(*t.ClosedAt), t.ClosedBy)}
}

// onDay writes the day of an instant where the practice is.
func (w writer) onDay(at time.Time) string { return w.Words.Date(at.In(w.in.At.Location())) }
