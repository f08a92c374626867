package session

import (
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
)

// AskRests shows what the plan rests on, and what the heat asks for.
func AskRests(v *part.Plan) {
	list := look.VBox(8)
	var dialog *field.Dialog
	again := func() {
		dialog.Close()
		AskRests(v)
	}
	b := v.Now.PlanCase.Basis
	for _, t := range b.Tests {
		rate := t.Sweat.Fluid.Rate
		list.Add(look.NewParagraph(v.Speaker.Say("planner.rests.test", v.Desk.Words.Date(consult.TestDay(t.Test)), v.Speaker.By.Found(rate), v.Speaker.By.Range(rate)), look.Body, look.Ink))
	}
	planned := v.Speaker.Say("planner.rests.planned", v.Speaker.Rate(b.Plan.SweatRate.Value), v.Speaker.Plain(b.Plan.SweatRate.Low, quantity.LitrePerHour), v.Speaker.Rate(b.Plan.SweatRate.High))
	list.Add(look.NewParagraph(planned, look.Body, look.Ink))
	for _, n := range b.Rate.Why.Notes {
		list.Add(look.NewParagraph(desk.NoteSentence(v.Desk.Words, n), look.Note, look.Ink2))
	}
	if others := relatives(v); len(others) > 0 {
		list.Add(look.NewParagraph(v.Speaker.Say("planner.pool"), look.Note, look.Ink2))
		for i, one := range others {
			list.Add(poolCheck(v, i, one, again))
		}
	}
	if heat := HeatWord(v); heat != "" {
		list.Add(look.NewCaution(heat, wording.Sentences(v.Speaker.Say("caution.drinking"), v.Speaker.Say("caution.local-policy-wins")), nil))
	}
	dialog = v.Desk.Host.Ask(v.Canvas(), field.Question{
		Name: "planner.rests.ask", Title: v.Speaker.Say("planner.rests.title"), Width: 560, Content: list,
		Actions: []field.Action{{Name: "done", Text: v.Speaker.Say("planner.done"), Kind: field.Primary}},
	})
}

// heat is what the heat of the session asks for; ok is false where the air or
// the effort is not known well enough.
func heat(v *part.Plan) (r consult.Calculation, ok bool) {
	c := v.Now.PlanCase
	o := consult.Outing{Air: c.Basis.Air, Minutes: v.Now.Plan.Target.Minutes.Or(0)}
	if len(c.Basis.Tests) > 0 {
		o.Session = c.Basis.Tests[0].Test.Session
	}
	r, err := consult.Calculate(o, v.File.Athlete, c.Basis.Tests, v.Desk.Now(), v.Desk.Calculate())
	return r, err == nil && r.CautionKnown
}

// HeatWord says it in short: "WBGT about 30 °C: watch those at risk". Where
// something else than the WBGT decides, the level does not hang on it.
func HeatWord(v *part.Plan) string {
	r, ok := heat(v)
	if !ok {
		return ""
	}
	key := "planner.wbgt"
	if r.Caution.Decides != climate.CautionWBGT {
		key = "planner.wbgt.beside"
	}
	return v.Speaker.Say(key, v.Speaker.Warmth(r.Globe.WBGT.Value), wording.Lower(v.Speaker.Say("level."+r.Caution.Level.Code())))
}
