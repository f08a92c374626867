package athlete

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// lastSheet is the last test in a few sentences, and what to do next.
func (v *Overview) lastSheet() fyne.CanvasObject {
	f, ok := v.file.last()
	if !ok {
		return v.firstSheet()
	}
	t := v.sp.tell(f, v.file.athlete)
	words := look.VBox(6, look.NewLabel(t.title, look.Strong, look.Ink))
	if t.red != "" {
		words.Add(look.NewCaution("", t.red, nil))
	}
	words.Add(look.NewParagraph(strings.Join(t.sentences, " "), look.Body, look.Ink))
	findings := desk.Place{Screen: desk.Tests, Athlete: v.file.athlete.ID, Record: f.Test.ID, Part: partFindings}
	why := field.NewLink(v.desk.Host, "overview.why", v.sp.Say("overview.why"), v.goTo(findings))
	if t.note != "" {
		words.Add(look.Columns(10, []look.Track{look.Share(1), look.Fit()}, look.NewParagraph(t.note, look.Note, look.Ink2), why))
	}
	plan := v.planButton()
	if plan == nil {
		return look.NewSheet(words)
	}
	return look.NewSheet(look.Panels(20, []look.Track{look.Share(1), look.Fit()}, words, look.VBox(0, plan)))
}

// planButton opens the plan in force, else a draft, else begins one from the
// test; nil where there is no test to plan on.
func (v *Overview) planButton() *field.Button {
	a, h := v.file.athlete.ID, v.desk.Host
	open := func(text string, p desk.Place) *field.Button {
		return field.NewButton(h, "overview.plan", text, field.Primary, v.goTo(p))
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

// firstSheet says what to do for an athlete without a test: a test, or what
// comes before it, for a minor and for one who may be.
func (v *Overview) firstSheet() fyne.CanvasObject {
	title := look.NewLabel(v.sp.Say("overview.first.title"), look.Strong, look.Ink)
	if len(v.file.care.Unsettled) == 0 {
		return look.NewSheet(look.VBox(10, title, look.NewParagraph(v.sp.Say("overview.first"), look.Body, look.Ink2),
			look.HBox(10, v.testButton(field.Primary))))
	}
	settle := field.NewButton(v.desk.Host, "overview.settle", v.sp.Say("overview.settle"), field.Primary,
		v.goTo(desk.Place{Screen: desk.Profile, Athlete: v.file.athlete.ID, Part: desk.PartMinor}))
	sentence := v.sp.Say("overview.minor", desk.Unsettled(v.desk.Words, v.file.care.Unsettled))
	if !care.AgeKnown(v.file.athlete, v.file.now) {
		sentence = v.sp.Say("overview.born")
	}
	return look.NewSheet(look.VBox(10, title, look.NewCaution(v.sp.Say("overview.minor.title"), sentence, nil), look.HBox(10, settle)))
}

// pictures are the sweat rate against the heat and the steps; nil while there
// is nothing to draw.
func (v *Overview) pictures() fyne.CanvasObject {
	data := v.sp.heatData(v.curve())
	if len(data.Points) == 0 && v.file.inForce() == nil {
		return nil
	}
	heat := chart.NewHeatScatter()
	heat.Set(data)
	box := look.VBox(4, look.NewLabel(v.sp.Say("overview.heat"), look.Strong, look.Ink))
	if len(data.Band) > 0 {
		box.Add(look.NewParagraph(v.sp.Say("overview.heat.band"), look.Note, look.Ink2))
	}
	box.Add(look.Grow(heat))
	p := look.NewPair(0.57, 560, look.NewSheet(box), v.stepsSheet())
	p.Level = true
	return p
}

// curve asks the tests about the last test's session at other temperatures.
func (v *Overview) curve() (consult.Calculation, []consult.CurvePoint) {
	f, ok := v.file.planned()
	if !ok {
		return consult.Calculation{}, nil
	}
	o := consult.Again(f)
	if o.Session.Sport == "" {
		o.Session.Sport = v.file.athlete.Sport
	}
	r, err := consult.Calculate(o, v.file.athlete, v.file.tests, v.file.now, v.desk.Calculate())
	if err != nil {
		return consult.Calculation{}, nil // that test cannot be
	}
	if r.AssumedAir {
		return r, nil
	}
	return r, r.HeatCurve(v.file.athlete, heatLow, heatHigh, heatStep, v.desk.Calculate())
}

// stepsSheet is the deficit at the end from the habit to the aim, as they were
// agreed; words where there is no agreed plan, or none that can be opened.
func (v *Overview) stepsSheet() fyne.CanvasObject {
	title := look.NewLabel(v.sp.Say("overview.steps"), look.Strong, look.Ink)
	c, missing := v.agreedCase()
	if missing != "" {
		return look.NewSheet(look.VBox(8, title, look.NewParagraph(v.sp.Say(missing), look.Note, look.Ink2)))
	}
	bars := chart.NewStepBars()
	bars.Set(v.sp.stepsData(c))
	box := look.VBox(4, title, look.NewLabel(v.stepsUnder(c.Basis), look.Note, look.Ink2).Shorten())
	if c.Anew {
		box.Add(look.NewParagraph(v.sp.Say("overview.steps.anew"), look.Note, look.Ink))
	}
	box.Add(look.Grow(bars))
	return look.NewSheet(box)
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

// stepsUnder names what the bars show, and an estimate as one.
func (v *Overview) stepsUnder(b consult.Basis) string {
	unit := "overview.steps.percent"
	if v.sp.By.Hidden {
		unit = "overview.steps.litres"
	}
	text := v.sp.Say(unit, string(v.sp.By.Unit("L")))
	if b.Kind == record.BasisEstimate {
		text = v.sp.Say("overview.steps.estimate", text)
	}
	return text
}

// Widths of the columns of what is due, in px at 100 % text.
const (
	dueDay    float32 = 124
	dueButton float32 = 124
)

// dueSheet is what is to be done, each with the way there.
func (v *Overview) dueSheet() fyne.CanvasObject {
	box := look.VBox(0, look.Pad(0, 0, 6, 0, look.NewLabel(v.sp.Say("overview.due"), look.Strong, look.Ink)))
	columns := []look.Column{{Width: look.Share(1)}, {Width: look.Fixed(dueDay)}, {Width: look.Fixed(dueButton)}}
	for i, d := range v.file.due() {
		t := v.sp.task(v.file, d)
		style, tone := look.Body, look.Ink2
		if t.late {
			style, tone = look.Strong, look.Ink
		}
		box.Add(look.FieldRow(16, columns,
			look.NewParagraph(t.sentence, look.Body, look.Ink), look.NewLabel(t.day, style, tone).Right(),
			look.HBox(0, look.Stretch(), field.NewButton(v.desk.Host, field.PartName("overview.due", i, "open"), t.button, field.Outline, v.goTo(t.opens)))))
	}
	if len(box.Objects) == 1 {
		box.Add(look.NewParagraph(v.sp.Say("overview.due.none"), look.Note, look.Ink2))
	}
	return look.NewSheet(box)
}
