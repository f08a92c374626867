package letter

import (
	"regexp"
	"strings"

	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// agreed is what was agreed, or that nothing was.
func (w writer) agreed() []string {
	switch {
	case w.in.Lost:
		return []string{w.Say("letter.lost")}
	case w.in.Plan == nil:
		return []string{w.Say("letter.nothing")}
	}
	c := *w.in.Plan
	list := []string{w.standing(c.Plan)}
	o, ok := consult.InForce(c.Plan)
	if !ok {
		return list
	}
	if step, i, ok := consult.StepNow(c.Plan); ok && step.OptionID == o.ID {
		list = append(list, w.Say("letter.step", i, len(c.Plan.Steps)))
	}
	mix := c.Carried(o)
	q := c.Planner.Evaluate(plan.Expected, mix)
	list = append(list, w.Say("planner.agree.mix", w.mix(c, mix)), w.comesTo(c, q))
	list = append(list, w.Say("planner.agree.limits", w.By.Amount(care.StopsAt(q.Ceiling, w.By.Hidden), quantity.Litre)))
	list = append(list, w.guards(c, false)...)
	if name := strings.TrimSpace(c.Plan.Agreement.Physician); name != "" {
		list = append(list, w.Say("letter.physician", name))
	}
	if c.Over(mix) {
		list = append(list, w.Say("letter.over"))
	}
	return list
}

// standing says what a plan is for and whether it was agreed, when and by whom.
func (w writer) standing(p record.Plan) string {
	name := w.planName(p)
	g := p.Agreement
	switch {
	case p.State == record.PlanReplaced:
		return w.Say("letter.plan.replaced", name)
	case p.State != record.PlanAgreed || g.AgreedAt == nil:
		return w.Say("letter.plan.draft", name)
	case g.AgreedBy == "":
		return w.Say("letter.plan.agreed", name, w.onDay(*g.AgreedAt))
	}
	return w.Say("letter.plan.agreed.by", name, w.onDay(*g.AgreedAt), g.AgreedBy)
}

// planName is what a plan is for.
func (w writer) planName(p record.Plan) string {
	switch {
	case p.Target.SessionName != "":
		return w.plain(p.Target.SessionName)
	case p.Name != "":
		return w.plain(p.Name)
	case w.Words.Has("sport." + p.Target.Sport):
		return w.Say("sport." + p.Target.Sport)
	case p.Target.Sport != "":
		return w.plain(p.Target.Sport)
	}
	return w.Say("letter.plan.unnamed")
}

// plain is a typed text without quotes.
func (w writer) plain(text string) string {
	if w.By.Hidden {
		return handout.Concealed(text, w.Words)
	}
	return text
}

// mix is what is drunk and eaten, in words.
func (w writer) mix(c consult.Case, mix plan.Mix) string {
	var list []string
	for slot := plan.Water; slot < plan.Slots; slot++ {
		switch x := mix[slot]; {
		case !c.Slots[slot].InUse || !(x > 0):
		case slot.IsFood():
			list = append(list, w.Words.Portions(x, w.product(c, slot)))
		case slot == plan.Salt:
			list = append(list, w.Words.AmountOf(w.Words.Amount(x, quantity.Gram), w.product(c, slot)))
		default:
			list = append(list, w.Words.AmountOf(w.By.Amount(x/1000, quantity.Litre), w.product(c, slot)))
		}
	}
	if len(list) == 0 {
		return w.Say("planner.split.nothing")
	}
	return w.Words.List(list)
}

// product is the name of what stands in a slot, within a line. Where mass is hidden a
// strength in per cent is written as grams in 100 mL.
func (w writer) product(c consult.Case, slot plan.Slot) string {
	p := c.Slots[slot].Product
	switch {
	case slot == plan.Salt:
		return w.Say("planner.salt.within")
	case p.Name == "":
		return w.Say("planner.water.within")
	}
	name := w.Words.FoodWithin(p.ID, p.Name)
	if !w.By.Hidden {
		return name
	}
	strength := regexp.MustCompile(`(\d+(?:[.,]\d+)?)[\s\x{00a0}\x{202f}]*%`)
	return strength.ReplaceAllString(name, w.Say("planner.strength.hidden", "${1}"))
}

// comesTo is what the mix comes to: the deficit at the end with its range, and the
// carbohydrate.
func (w writer) comesTo(c consult.Case, q plan.Prediction) string {
	x, u := q.Deficit, quantity.PerCent
	if w.By.Hidden {
		x, u = q.DeficitL, quantity.Litre
	}
	spread := w.Say("planner.to", w.By.Number(-x.Low, u), w.By.Signed(-x.High, u))
	carbohydrate := w.By.Amount(q.Carbohydrate.TotalGH, quantity.GramPerHour)
	if c.Basis.Kind == record.BasisEstimate {
		return w.Say("letter.plan.estimate", w.By.Signed(-x.Value, u), spread, carbohydrate)
	}
	return w.Say("planner.agree.figures", w.By.Signed(-x.Value, u), spread, carbohydrate)
}

// checked is what will be checked, and when.
func (w writer) checked() []string {
	var list []string
	if w.in.Test != nil && w.in.Test.Test.State == record.TestWaiting {
		list = append(list, w.Say("letter.laboratory"))
	}
	if w.in.Plan == nil || w.in.Plan.Plan.State != record.PlanAgreed {
		if len(list) == 0 {
			list = append(list, w.Say("letter.nocheck"))
		}
		return list
	}
	p := w.in.Plan.Plan
	if step, _, ok := consult.StepNow(p); ok && step.Sessions > 0 {
		list = append(list, w.Say("letter.sessions", step.Sessions))
	}
	if day, ok := p.Agreement.Review.Time(); ok {
		list = append(list, w.Say("letter.review", w.Words.Date(day)))
	} else {
		list = append(list, w.Say("letter.review.none"))
	}
	return append(list, w.Say("letter.looked"))
}
