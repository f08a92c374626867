package otherclimate

import (
	"errors"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/picture"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// dialogWidth is the width of the panel in px at 100 % text; besideBar keeps its
// content off the bar it scrolls by.
const (
	dialogWidth = 860
	besideBar   = 14
)

// panel is the question with what it comes to.
type panel struct {
	desk   *desk.Desk
	sp     heat.Speaker
	in     inputs
	s      state
	now    answer
	dialog *field.Dialog
	ui     parts
}

// parts are the widgets of the panel.
type parts struct {
	way     *field.Toggle
	form    *form
	tests   *heat.Tests
	caution *heat.Cautions
	change  *changes
	credit  *look.Paragraph
	tell    *look.Paragraph
	result  *fyne.Container
	column  *fyne.Container
}

// Ask asks over a window what the plan of an athlete should be based on in another
// climate, and hands the chosen basis to done; nothing happens when it is
// closed. tests are the athlete's closed tests, the newest first.
func Ask(d *desk.Desk, on fyne.Canvas, athlete record.Athlete, tests []consult.Findings, plan record.Plan, done func(record.PlanBasis)) {
	places, err := climate.LoadPlaces()
	if err != nil {
		d.Trouble(err)
		return
	}
	p := newPanel(d, inputs{athlete: athlete, tests: tests, plan: plan, places: places.Named(d.Words.City, d.Words.Country), today: d.Now(), desk: d.Calculate()})
	say := d.Words.Say
	p.dialog = d.Host.Ask(on, field.Question{
		Name: "climate", Title: say("otherclimate.title"), Sentence: say("otherclimate.sentence"), Content: look.Pad(0, besideBar, 0, 0, p.ui.column), Width: dialogWidth, Help: string(desk.HelpClimate),
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("otherclimate.take"), Kind: field.Primary, Do: func() (stay bool) { return p.take(done) }},
		},
	})
	p.follow()
}

// newPanel makes the widgets.
func newPanel(d *desk.Desk, in inputs) *panel {
	p := &panel{desk: d, in: in, s: begin(in)}
	p.sp = heat.Speaker{Speaker: d.SpeakerFor(in.athlete)}
	say := d.Words.Say
	u := &p.ui
	u.way = field.NewToggle(d.Host, "climate.way", []field.Option{
		{Key: byCity, Text: say("otherclimate.city")}, {Key: byAir, Text: say("otherclimate.air")}, {Key: byTest, Text: say("otherclimate.test")},
	})
	u.way.Choose(p.s.way)
	u.way.OnChosen = func(key string) {
		p.s.way = key
		p.follow()
	}
	u.form = newForm(p)
	u.tests, u.caution, u.change = heat.NewTests(d, "climate", p.sp, picture.One(in.athlete.ID)), heat.NewCautions(), newChanges(p)
	u.credit, u.tell = look.NewParagraph("", look.Note, look.Ink2), look.NewParagraph("", look.Body, look.Ink)
	title := func(text string) fyne.CanvasObject { return look.NewLabel(text, look.Strong, look.Ink) }
	u.result = look.VBox(12, look.NewRule(), title(say("otherclimate.change")), u.change.box, title(say("otherclimate.heat")), u.caution.Body(),
		title(say("otherclimate.tests")), u.tests.Body())
	u.column = look.VBox(12, look.MaxWidth(420, u.way), u.form.box, u.credit, u.tell, u.result)
	return p
}

// follow shows what the choice comes to.
func (p *panel) follow() {
	u := &p.ui
	u.form.show()
	out, err := p.s.work(p.in)
	var unknown climate.UnknownPlaceError
	if errors.As(err, &unknown) && u.form.city.Focused() {
		return // still being typed
	}
	p.now = out
	u.form.trouble(p.sp, err, p.s.asked())
	show(u.credit, p.credit(out))
	u.form.hints(out)
	show(u.tell, p.telling(err))
	look.ShowIf(u.result, err == nil && out.ok)
	if err == nil && out.ok {
		p.showResult(out)
	}
	u.column.Refresh()
	if p.dialog != nil {
		p.dialog.Refresh()
	}
}

// showResult shows coverage, rate, difference and caution.
func (p *panel) showResult(out answer) {
	u := &p.ui
	u.tests.Show(out.calculation, heat.NoDays)
	u.caution.Show(p.sp.Caution(out.calculation, care.Of(p.in.athlete, p.desk.Now()), p.desk.Practice().Emergency))
	u.change.show(out)
	u.result.Refresh()
}

// credit is the credit of the climate table where it was used.
func (p *panel) credit(out answer) string {
	if !out.air.FromTable {
		return ""
	}
	say := p.sp.Words.Say
	text := say("otherclimate.table", p.sp.Words.City(out.air.City.Name), p.sp.Words.Country(out.air.City.Country), p.sp.Air(out.air.Air), out.air.Place.Grade) + " " + say("otherclimate.credit", p.in.places.Credit)
	if out.air.Place.HighGuessed && p.s.stop.TimeOfDay != consult.MeanOfDay {
		text += " " + p.sp.Guessed()
	}
	return text
}

// telling says what is still to be chosen, or what is wrong.
func (p *panel) telling(err error) string {
	switch {
	case err == nil:
		return ""
	case errors.Is(err, errNothing) && p.s.way == byTest:
		return p.sp.Words.Say("otherclimate.notest")
	case errors.Is(err, errNothing):
		return p.sp.Words.Say("otherclimate.nocity")
	}
	var list []string
	for _, t := range p.sp.Troubles(err, p.s.asked()) {
		list = append(list, t.Sentence)
	}
	return strings.Join(list, " ")
}

// take hands the basis on; the panel stays while there is none.
func (p *panel) take(done func(record.PlanBasis)) (stay bool) {
	p.follow()
	if !p.now.ok {
		return true
	}
	done(consult.PlanBasisOf(p.now.basis, ""))
	return false
}

// show sets a paragraph and hides it while it is empty.
func show(o *look.Paragraph, text string) {
	o.SetText(text)
	look.ShowIf(o, text != "")
}
