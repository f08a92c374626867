package figures

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/copying"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
)

// AskWhy shows how each figure of the selected mix comes about: the formula in
// words and with its numbers, what the range is made of, the sources.
func AskWhy(v *part.Plan) {
	f := v.Now.PlanCase.Planner.Explain(v.Now.Length, v.Live.Mix)
	list := look.VBox(16, look.HBox(0, look.Stretch(), copying.Link(v.Desk, "planner.deficit.copy", "copy.figures", func() copying.Table { return Copied(v) })))
	deficit := f.Deficit
	if v.Speaker.By.Hidden {
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
			box := whyBox(v.Speaker, v.Now.PlanCase, v.Speaker.Say(one.key), one.f)
			for _, text := range Stated(v.Speaker, v.Now, one.key) {
				box.Add(look.NewParagraph(text, look.Note, look.Ink2))
			}
			list.Add(box)
		}
	}
	if text := Hold(v.Speaker, v.Now, v.Live.At.Sodium); text != "" {
		list.Add(look.NewParagraph(text, look.Note, look.Ink))
	}
	if text := v.Speaker.Plasma(v.Live.At.Plasma); text != "" {
		list.Add(look.NewParagraph(text, look.Note, look.Ink))
	}
	v.Desk.Host.Ask(v.Canvas(), field.Question{
		Name: "planner.why", Title: v.Speaker.Say("planner.why.title", v.Speaker.OptionName(v.Now.Selected())), Width: 680, Content: list,
		Actions: []field.Action{{Name: "done", Text: v.Speaker.Say("planner.done"), Kind: field.Primary}},
	})
}

// Stated is what is known beside a figure of the why and no number follows from.
func Stated(sp wording.Speaker, s state.State, key string) []string {
	var ids []string
	switch key {
	case "planner.deficit":
		ids = []string{"deficit.by-heat", "hyponatraemia.update", "hyponatraemia.other-view"}
	case "planner.carbohydrate":
		ids = []string{"fuel.studied", "fuel.recent"}
		if _, weeks := s.PlanCase.GutTraining(); len(weeks) > 0 {
			ids = append(ids, "gut-training.trial", "gut-training.review", "gut-training.recent")
		}
	case "planner.drinking":
		ids = []string{"steps.size", "steps.goals", "heat.nutrition"}
	case "planner.sodium":
		if s.Salted() {
			ids = []string{"sodium.drink", "sodium.drink-long"}
		}
	}
	return desk.Statements(sp.Words, sp.By.Hidden, ids...)
}

// Hold says what sodium would hold that of the blood while this much is drunk;
// empty where advice to add salt is withheld or the loss is not known.
func Hold(sp wording.Speaker, s state.State, n plan.Sodium) string {
	switch {
	case !s.Salted() || !n.HoldMgH.Known:
		return ""
	case !n.HoldMatters:
		return sp.Say("planner.hold.needless")
	}
	return sp.Say("planner.hold.sodium", sp.Sodium(n.HoldMgH.Value), sp.Plain(n.HoldMgH.Low, quantity.MilligramPerHour), sp.Plain(n.HoldMgH.High, quantity.MilligramPerHour))
}

// whyBox is the why of one figure.
func whyBox(sp wording.Speaker, c consult.Case, name string, f figure.Figure) *fyne.Container {
	box := look.VBox(3, look.NewLabel(sp.Say("planner.why.figure", name, found(sp, f)), look.Strong, look.Ink))
	if f.Ranged && f.Range.Low != f.Range.High {
		box.Add(look.NewParagraph(sp.Say("planner.why.range", sp.By.Range(f)), look.Note, look.Ink2))
	}
	if !sp.By.Hidden || !tellsMass(f.Why) {
		box.Add(look.NewParagraph("= "+f.Why.Print(func(s string) string { return symbol(sp, c, s) }), look.Note, look.Ink2))
		box.Add(look.NewParagraph("= "+f.Why.PrintValues(func(in figure.Input) string { return input(sp, in) }), look.Note, look.Ink))
	}
	if len(f.Why.Budget) > 1 {
		bars := chart.NewBudgetBars()
		var shares []chart.BudgetShare
		for _, s := range f.Why.Budget {
			shares = append(shares, chart.BudgetShare{Name: sp.Say("planner.source." + s.Source), Part: s.Part, Text: share(sp, s.Part)})
		}
		bars.Set(chart.BudgetData{Shares: shares, Summary: sp.Say("planner.why.budget")})
		box.Add(bars)
	}
	for _, n := range f.Why.Notes {
		box.Add(look.NewParagraph(desk.NoteSentence(sp.Speaker, n), look.Note, look.Ink2))
	}
	said := map[string]bool{}
	for _, id := range f.Why.Sources {
		e, ok := evidence.Find(id)
		if text := sp.Say("planner.view.source", e.Source.Title(sp.Words.Say), desk.Sureness(sp.Words, e.Sure)); ok && !said[text] {
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
func share(sp wording.Speaker, part float64) string { return sp.DoneShare(100 * part) }

// found writes a figure with its unit; a deficit with the sign it has elsewhere.
func found(sp wording.Speaker, f figure.Figure) string {
	if strings.HasPrefix(string(f.Unit), "g/100") {
		return sp.Strength(f.Value)
	}
	return sp.By.Found(f)
}

// symbol is the word for a symbol of a formula; a number behind it is a slot.
func symbol(sp wording.Speaker, c consult.Case, symbol string) string {
	base := strings.TrimRight(symbol, "0123456789")
	text := sp.Say("planner.symbol." + base)
	slot, err := strconv.Atoi(symbol[len(base):])
	if err != nil || slot >= int(plan.Slots) {
		return text
	}
	return sp.Say("planner.symbol.of", text, sp.ProductWithin(c, plan.Slot(slot)))
}

// input is a value with its unit.
func input(sp wording.Speaker, in figure.Input) string {
	return strings.TrimSpace(digits(sp, in.Value) + "\u00a0" + string(in.Unit))
}

// digits writes a number with four significant digits and no idle zeros.
func digits(sp wording.Speaker, x float64) string {
	return sp.Words.Number(x, figure.Decimals(x, 4, 3))
}
