package breaks

import (
	"context"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// AskMouthful weighs ten mouthfuls: the bottle before and after.
func AskMouthful(v *part.Plan) {
	h, say := v.Desk.Host, v.Speaker.Say
	before := field.NewNumber(h, "planner.mouthful.before", evidence.BottleMass, quantity.Gram)
	after := field.NewNumber(h, "planner.mouthful.after", evidence.BottleMass, quantity.Gram)
	before.SetBox(110)
	after.SetBox(110)
	result := look.NewParagraph(" ", look.Body, look.Ink)
	show := func(field.Reading) {
		result.SetText(" ")
		if m, ok := weighed(v, before, after); ok {
			result.SetText(say("planner.mouthful.own", v.Speaker.Millilitres(float64(m))))
		}
	}
	before.OnChanged, after.OnChanged = show, show
	h.Ask(v.Canvas(), field.Question{
		Name: "planner.mouthful.ask", Title: say("planner.mouthful.weigh"), Sentence: say("planner.mouthful.sentence"),
		Content: look.VBox(8, part.NewForm(look.NewEntry(say("planner.mouthful.before"), before), look.NewEntry(say("planner.mouthful.after"), after)), result),
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("planner.mouthful.keep"), Kind: field.Primary, Do: func() (stay bool) {
				m, ok := weighed(v, before, after)
				if !ok {
					result.SetText(say("planner.mouthful.wrong"))
					return true
				}
				return !keepMouthful(v, m)
			}},
		},
	})
}

// weighed is the mouthful of two weighings of a bottle of water.
func weighed(v *part.Plan, before, after *field.Number) (plan.Mouthful, bool) {
	x, okX := before.Value()
	y, okY := after.Value()
	water, _ := v.Desk.Products().Find(consult.Water)
	if !okX || !okY || !water.Density.Known {
		return 0, false
	}
	m, err := plan.MouthfulFromTen(x, y, water.Density.Value)
	return m, err == nil
}

// keepMouthful writes the mouthful into the athlete's profile.
func keepMouthful(v *part.Plan, m plan.Mouthful) (kept bool) {
	ctx := context.Background()
	a, err := v.Desk.Store.LoadAthlete(ctx, v.File.Athlete.ID)
	if err == nil {
		a.Mouthful = record.Num(quantity.Round(float64(m), 0), quantity.Millilitre)
		a, err = v.Desk.Store.SaveAthlete(ctx, a, store.Edit{Why: v.Speaker.Say("planner.mouthful.why")})
	}
	if err != nil {
		v.Desk.Trouble(err)
		return false
	}
	v.File.Athlete = a
	v.Reopen(v.Binder.Doc.Now().Record)
	return true
}
