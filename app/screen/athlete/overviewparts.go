package athlete

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/copying"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/picture"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// lastSheet is the last test in one sentence and one picture.
func (v *Overview) lastSheet() fyne.CanvasObject {
	f, ok := v.file.last()
	if !ok {
		return look.NewSheet(look.VBox(8, look.NewLabel(v.sp.Say("overview.last.undated"), look.Strong, look.Ink),
			look.NewParagraph(v.sp.Say("overview.last.none"), look.Body, look.Ink2)))
	}
	t := v.sp.summarise(f, v.file.athlete, v.file.limit)
	findings := desk.Place{Screen: desk.Tests, Athlete: v.file.athlete.ID, Record: f.Test.ID, Part: partFindings}
	why := field.NewLink(v.desk.Host, "overview.why", v.sp.Say("overview.why"), v.goTo(findings))
	text := field.NewLink(v.desk.Host, "overview.letter", v.sp.Say("letter.open.ask"), v.askLetter)
	box := look.VBox(4, titled(t.title, text, why))
	if t.red != "" {
		box.Add(look.NewCaution("", t.red, nil))
	}
	box.Add(look.NewParagraph(strings.Join(t.sentences, " "), look.Body, look.Ink))
	if d, ok := v.sp.lastBars(f, v.file.limit); ok {
		bars := chart.NewInOutBars()
		bars.Set(d)
		box.Add(look.Pad(4, 0, 0, 0, bars))
	}
	return look.NewSheet(box)
}

// titled is the title of a sheet with what stands at its right.
func titled(title string, right ...fyne.CanvasObject) fyne.CanvasObject {
	row := look.HBox(12, look.NewLabel(title, look.Strong, look.Ink), look.Stretch())
	for _, o := range right {
		row.Add(o)
	}
	return row
}

// planButton opens the plan in force, else a draft, else begins one from the
// test; nil where there is no test to plan on.
func (v *Overview) planButton(kind field.Kind) *field.Button {
	a, h := v.file.athlete.ID, v.desk.Host
	open := func(text string, p desk.Place) *field.Button {
		return field.NewButton(h, "overview.plan", text, kind, v.goTo(p))
	}
	for _, p := range []*record.Plan{v.file.inForce(), v.file.draft()} {
		if p != nil {
			return open(v.sp.Say("overview.plan.open"), desk.Place{Screen: desk.Plan, Athlete: a, Record: p.ID})
		}
	}
	if f, ok := v.file.planned(); ok {
		return open(v.sp.Say("overview.plan.new"), desk.Place{Screen: desk.Plan, Athlete: a, New: true, Part: string(f.Test.ID)})
	}
	return nil
}

// testButton begins a test sheet.
func (v *Overview) testButton(kind field.Kind) fyne.CanvasObject {
	return field.NewButton(v.desk.Host, "overview.test", v.sp.Say("overview.test"), kind, v.goTo(desk.Place{Screen: desk.Tests, Athlete: v.file.athlete.ID, New: true}))
}

// sweatSheet are the sweat rates by date and against the heat, with one axis; one
// sentence while there is nothing to draw. grows says that there is.
func (v *Overview) sweatSheet() (sheet fyne.CanvasObject, grows bool) {
	days, heat := v.sp.daysData(v.file), v.sp.heatData(v.answer.dots, v.answer.curve, v.answer.untested)
	title := v.sp.Say("overview.heat", string(v.sp.By.Unit("L/h")))
	all := field.NewLink(v.desk.Host, "overview.dates", v.sp.Say("overview.dates"), func() { v.showDates(true) })
	if len(days.Points)+len(heat.Points) == 0 {
		return look.NewSheet(look.VBox(4, titled(title, all), look.NewParagraph(v.sp.Say("overview.heat.none"), look.Note, look.Ink2))), false
	}
	v.sp.share(&days, &heat)
	left := look.VBox(2, subtitle(v.sp.Say("overview.days")), look.Grow(scatter(days)), look.NewParagraph(v.sp.Say("overview.days.note"), look.Note, look.Ink2))
	under := v.sp.Say("overview.heat.none")
	switch {
	case len(heat.Points) > 0 && len(heat.Band) == 0:
		under = v.sp.Say("overview.heat.alone")
	case len(heat.Estimates) > 0:
		under = v.sp.Say("overview.heat.band.box")
	case len(heat.Points) > 0:
		under = v.sp.Say("overview.heat.band")
	}
	right := look.VBox(2, subtitle(v.sp.Say("overview.heat.title", string(v.sp.By.Unit("°C")))), look.Grow(scatter(heat)), look.NewParagraph(under, look.Note, look.Ink2))
	pair := look.NewPair(0.4, 760, left, right)
	pair.Level = true
	links := []fyne.CanvasObject{all, copying.Link(v.desk, "overview.picture.copy", "copy.figures", v.rates), picture.Link(v.desk, "overview.picture", v.sp.Say("picture.overview", v.file.athlete.Name), picture.One(v.file.athlete.ID), func() fyne.CanvasObject { return pair })}
	if c := v.answer.calculation; c != nil && c.Climate.Rate.Known {
		links = append(links, field.NewLink(v.desk.Host, "overview.heat.why", v.sp.Say("overview.why"), v.askWhy))
	}
	return look.NewSheet(look.VBox(0, titled(title, links...), look.Grow(pair))), true
}

// askWhy shows how the rate at the last test's session comes about, which the curve
// goes through.
func (v *Overview) askWhy() {
	on := fyne.CurrentApp().Driver().CanvasForObject(v.body)
	heat.ShowWhy(v.desk.Host, on, heat.Speaker{Speaker: v.sp.Speaker}, *v.answer.calculation)
}

// subtitle is the title of a part of a sheet.
func subtitle(title string) *look.Label { return look.NewLabel(title, look.Note, look.Ink).Shorten() }

// scatter draws sweat rates.
func scatter(d chart.HeatData) *chart.HeatScatter {
	c := chart.NewHeatScatter()
	c.Set(d)
	return c
}

// stepsSheet are the cards from the habit to the aim, as they were agreed; words
// where there is no agreed plan, or none that can be opened.
func (v *Overview) stepsSheet() fyne.CanvasObject {
	var plan []fyne.CanvasObject
	if b := v.planButton(field.Outline); b != nil && !v.planIsNext() {
		plan = append(plan, b)
	}
	c, missing := v.agreedCase()
	if missing != "" {
		return look.NewSheet(look.VBox(8, titled(v.sp.Say("overview.steps"), plan...), look.NewParagraph(v.sp.Say(missing), look.Note, look.Ink2)))
	}
	box := look.VBox(6, titled(v.sp.Say("overview.steps"), append(v.legend(), plan...)...))
	for _, note := range v.stepsNotes(c) {
		box.Add(look.NewParagraph(note, look.Note, look.Ink))
	}
	var cards []fyne.CanvasObject
	for i, made := range v.sp.cards(c) {
		place := desk.Place{Screen: desk.Plan, Athlete: v.file.athlete.ID, Record: c.Plan.ID, Part: string(made.option)}
		cards = append(cards, newStepCard(v.desk.Host, field.PartName("overview.step", i, "open"), made, v.goTo(place)))
	}
	box.Add(newCardRows(cards))
	return look.NewSheet(box)
}

// legend names the hues of the cards.
func (v *Overview) legend() []fyne.CanvasObject {
	entry := func(of look.Substance, key string) fyne.CanvasObject {
		return look.HBox(6, look.NewSwatch(of), look.NewLabel(v.sp.Say(key), look.Note, look.Ink2))
	}
	return []fyne.CanvasObject{entry(look.Water, "overview.steps.water"), entry(look.Drink, "overview.steps.drink"),
		entry(look.Food, "overview.steps.food"), look.HBox(6, look.NewBand(), look.NewLabel(v.sp.Say("overview.steps.advice"), look.Note, look.Ink2))}
}

// stepsNotes say that the steps are based on an estimate, or are not as agreed.
func (v *Overview) stepsNotes(c consult.Case) []string {
	var list []string
	if c.Basis.Kind == record.BasisEstimate {
		list = append(list, v.sp.Say("overview.steps.estimate"))
	}
	if c.Anew {
		list = append(list, v.sp.Say("overview.steps.anew"))
	}
	return list
}

// agreedCase opens the plan in force as it was agreed; missing is the key of the
// words for why there is none.
func (v *Overview) agreedCase() (c consult.Case, missing string) {
	p := v.file.inForce()
	if p == nil {
		return c, "overview.steps.none"
	}
	c, err := v.desk.OpenPlan(context.Background(), *p, v.file.athlete, v.file.tests)
	if err != nil {
		return c, "overview.steps.nobasis"
	}
	return c, ""
}
