package planner

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// askWhy shows how each figure of the mix in hand comes about: the formula in
// words and with its numbers, what the range is made of, the sources.
func (v *View) askWhy() {
	f := v.now.planCase.Planner.Explain(v.now.length, v.now.mix)
	list := look.VBox(16)
	deficit := f.Deficit
	if v.sp.by.Hidden {
		deficit = f.DeficitL
	}
	for _, one := range []struct {
		key string
		f   figure.Figure
	}{
		{"planner.deficit", deficit}, {"planner.carbohydrate", f.Carbohydrate}, {"planner.strength.name", f.Strength}, {"planner.drinking", f.Drinking},
		{"planner.sodium", f.SodiumIn}, {"planner.sodium.lost", f.SodiumLoss},
	} {
		if one.f.Known {
			list.Add(v.sp.whyBox(v.now.planCase, v.sp.say(one.key), one.f))
		}
	}
	if text := v.sp.hold(v.now, v.live.at.Sodium); text != "" {
		list.Add(look.NewParagraph(text, look.Note, look.Ink))
	}
	if text := v.sp.plasma(v.live.at.Plasma); text != "" {
		list.Add(look.NewParagraph(text, look.Note, look.Ink))
	}
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "planner.why", Title: v.sp.say("planner.why.title", v.sp.optionName(v.now.hand())), Width: 680, Content: list,
		Actions: []field.Action{{Name: "done", Text: v.sp.say("planner.done"), Kind: field.Primary}},
	})
}

// hold says what sodium would hold that of the blood while this much is drunk;
// empty where advice to add salt is withheld or the loss is not known.
func (sp speaker) hold(s state, n plan.Sodium) string {
	switch {
	case !s.salted() || !n.HoldMgH.Known:
		return ""
	case !n.HoldMatters:
		return sp.say("planner.hold.needless")
	}
	return sp.say("planner.hold.sodium", sp.sodium(n.HoldMgH.Value), sp.plain(n.HoldMgH.Low, quantity.MilligramPerHour), sp.plain(n.HoldMgH.High, quantity.MilligramPerHour))
}

// whyBox is the why of one figure.
func (sp speaker) whyBox(c consult.Case, name string, f figure.Figure) fyne.CanvasObject {
	box := look.VBox(3, look.NewLabel(sp.say("planner.why.figure", name, sp.figure(f)), look.Strong, look.Ink))
	if f.Ranged && f.Range.Low != f.Range.High {
		box.Add(look.NewParagraph(sp.say("planner.why.range", sp.by.Range(f)), look.Note, look.Ink2))
	}
	if !sp.by.Hidden || !tellsMass(f.Why) {
		box.Add(look.NewParagraph("= "+f.Why.Print(func(s string) string { return sp.symbol(c, s) }), look.Note, look.Ink2))
		box.Add(look.NewParagraph("= "+f.Why.PrintValues(sp.input), look.Note, look.Ink))
	}
	if len(f.Why.Budget) > 1 {
		bars := chart.NewBudgetBars()
		var shares []chart.BudgetShare
		for _, s := range f.Why.Budget {
			shares = append(shares, chart.BudgetShare{Name: sp.say("planner.source." + s.Source), Part: s.Part, Text: sp.share(s.Part)})
		}
		bars.Set(chart.BudgetData{Shares: shares, Summary: sp.say("planner.why.budget")})
		box.Add(bars)
	}
	for _, n := range f.Why.Notes {
		box.Add(look.NewParagraph(desk.NoteSentence(sp.w, n), look.Note, look.Ink2))
	}
	said := map[string]bool{}
	for _, id := range f.Why.Sources {
		e, ok := evidence.Find(id)
		if text := sp.say("planner.view.source", e.Source.Full, desk.Sureness(sp.w, e.Sure)); ok && !said[text] {
			said[text] = true
			box.Add(look.NewParagraph(text, look.Note, look.Ink3))
		}
	}
	return box
}

// tellsMass reports whether a why holds the body mass.
func tellsMass(w figure.Why) bool {
	for _, in := range w.Inputs {
		if in.Unit == quantity.Kilogram {
			return true
		}
	}
	return false
}

// share is a part of a range.
func (sp speaker) share(part float64) string { return sp.doneShare(100 * part) }

// figure writes a figure with its unit; a deficit with the sign it has elsewhere.
func (sp speaker) figure(f figure.Figure) string {
	if strings.HasPrefix(string(f.Unit), "g/100") {
		return sp.strength(f.Value)
	}
	return sp.by.Found(f)
}

// symbol is the word for a symbol of a formula; a number behind it is a slot.
func (sp speaker) symbol(c consult.Case, symbol string) string {
	base := strings.TrimRight(symbol, "0123456789")
	text := sp.say("planner.symbol." + base)
	slot, err := strconv.Atoi(symbol[len(base):])
	if err != nil || slot >= int(plan.Slots) {
		return text
	}
	return sp.say("planner.symbol.of", text, lower(sp.product(c, plan.Slot(slot))))
}

// input is a value with its unit.
func (sp speaker) input(in figure.Input) string {
	return strings.TrimSpace(sp.digits(in.Value) + "\u00a0" + string(in.Unit))
}

// digits writes a number with four significant digits and no idle zeros.
func (sp speaker) digits(x float64) string { return sp.w.Number(x, figure.Decimals(x, 4, 3)) }

// askRests shows what the plan rests on, and what the heat asks for.
func (v *View) askRests() {
	list := look.VBox(8)
	var dialog *field.Dialog
	again := func() {
		dialog.Close()
		v.askRests()
	}
	b := v.now.planCase.Basis
	for _, t := range b.Tests {
		rate := t.Sweat.Fluid.Rate
		list.Add(look.NewParagraph(v.sp.say("planner.rests.test", v.desk.Words.Date(consult.TestDay(t.Test)), v.sp.by.Found(rate), v.sp.by.Range(rate)), look.Body, look.Ink))
	}
	planned := v.sp.say("planner.rests.planned", v.sp.rate(b.Plan.SweatRate.Value), v.sp.plain(b.Plan.SweatRate.Low, quantity.LitrePerHour), v.sp.rate(b.Plan.SweatRate.High))
	list.Add(look.NewParagraph(planned, look.Body, look.Ink))
	for _, n := range b.Rate.Why.Notes {
		list.Add(look.NewParagraph(desk.NoteSentence(v.desk.Words, n), look.Note, look.Ink2))
	}
	if others := v.relatives(); len(others) > 0 {
		list.Add(look.NewParagraph(v.sp.say("planner.pool"), look.Note, look.Ink2))
		for i, one := range others {
			list.Add(v.poolCheck(i, one, again))
		}
	}
	if heat := v.heatWord(); heat != "" {
		list.Add(look.NewCaution(heat, sentences(v.sp.say("caution.drinking"), v.sp.say("caution.local-policy-wins")), nil))
	}
	dialog = v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "planner.rests.ask", Title: v.sp.say("planner.rests.title"), Width: 560, Content: list,
		Actions: []field.Action{{Name: "done", Text: v.sp.say("planner.done"), Kind: field.Primary}},
	})
}

// heat is what the heat of the session asks for; ok is false where the air or
// the effort is not known well enough.
func (v *View) heat() (r consult.Calculation, ok bool) {
	c := v.now.planCase
	o := consult.Outing{Air: c.Basis.Air, Minutes: v.now.plan.Target.Minutes.Or(0)}
	if len(c.Basis.Tests) > 0 {
		o.Session = c.Basis.Tests[0].Test.Session
	}
	r, err := consult.Calculate(o, v.file.athlete, c.Basis.Tests, v.desk.Now(), v.desk.Calculate())
	return r, err == nil && r.CautionKnown
}

// heatWord says it in short: "WBGT about 30 °C: watch those at risk". Where
// something else than the WBGT decides, the level does not hang on it.
func (v *View) heatWord() string {
	r, ok := v.heat()
	if !ok {
		return ""
	}
	key := "planner.wbgt"
	if r.Caution.Decides != climate.CautionWBGT {
		key = "planner.wbgt.beside"
	}
	return v.sp.say(key, v.sp.warmth(r.Globe.WBGT.Value), lower(v.sp.say("level."+r.Caution.Level.Code())))
}
