package handoutview

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"
	"golang.org/x/text/language"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/preview"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/record"
)

// View is the pages of a plan as they will print.
type View struct {
	desk    *desk.Desk
	file    file
	choice  choice
	render  rendering
	ui      widgets
	drawing *preview.Drawing
	body    fyne.CanvasObject
	// toPrinter hands a file to the system's printing.
	toPrinter func(ctx context.Context, path string) error
}

// widgets are what stands beside the preview.
type widgets struct {
	save     *field.Button
	print    *field.Button
	picture  *field.Button
	compare  *field.Check
	short    *field.Check
	bottles  *bottleForm
	plan     *field.Choice
	page     *field.Choice
	option   *field.Choice
	size     *field.Toggle
	language *field.Choice
	form     *fyne.Container
	nothing  *look.Caution
	trouble  *look.Caution
	added    *fyne.Container
	prints   *printed
	scroll   *look.Scroll
}

var (
	_ desk.View    = (*View)(nil)
	_ desk.Printer = (*View)(nil)
)

// New opens the pages of a place's plan; where it names none, of the newest
// agreed one, else of the newest. An athlete without a plan has the blank sheet.
func New(d *desk.Desk, place desk.Place) (*View, error) {
	f, err := load(d, place.Athlete, place.Record)
	if err != nil {
		return nil, err
	}
	v := &View{desk: d, file: f, toPrinter: saveto.Print}
	settings := f.subject.practice.Settings
	reads, err := d.In(d.ReadBy(f.subject.athlete))
	if err != nil {
		return nil, fmt.Errorf("open a handout: %w", err)
	}
	v.choice = choice{page: pages(f.subject.planned)[0], size: a4, words: reads.Words}
	if settings.Units == "us" {
		v.choice.size = letter
	}
	if f.subject.planned {
		v.choice.option = f.subject.optionOf("").ID
	}
	if Page(place.Part) == BlankSheet {
		v.choice.page = BlankSheet
	}
	v.build()
	return v, nil
}

// build makes the screen.
func (v *View) build() {
	say, h := v.desk.Words.Say, v.desk.Host
	v.ui.save = field.NewButton(h, "handoutview.save", say("handoutview.save"), field.Primary, v.Print)
	v.ui.print = field.NewButton(h, "handoutview.print", say("saveto.print"), field.Outline, v.SendToPrinter)
	v.ui.picture = field.NewButton(h, "handoutview.picture", say("handoutview.picture"), field.Outline, v.SavePicture)
	v.ui.bottles = newBottleForm(v)
	v.ui.nothing, v.ui.trouble, v.ui.added = look.NewCaution("", "", nil), look.NewCaution("", "", nil), look.VBox(8)
	v.drawing = preview.NewDrawing(v.desk, v.job)
	v.ui.prints = newPrinted(v)
	v.ui.form = v.form()
	if v.file.nothing != "" {
		v.ui.nothing.SetText(say("handoutview."+v.file.nothing), say("handoutview."+v.file.nothing+".sentence"))
	}
	if since := v.sinceWords(); since != "" {
		v.ui.nothing.SetText(say("handoutview.since"), since)
	}
	side := look.VBox(14, v.ui.nothing, look.NewSheet(look.VBox(12, look.NewLabel(say("handoutview.what"), look.Strong, look.Ink), v.ui.form)), v.ui.bottles.box,
		look.NewSheet(look.VBox(10, look.NewLabel(say("handoutview.added"), look.Strong, look.Ink), v.ui.added)), v.ui.prints.box)
	v.ui.scroll = look.NewScroll(look.Pad(14, 8, 20, 0, look.VBox(12, v.ui.trouble, v.drawing.Pages)))
	v.body = look.Panels(16, []look.Track{look.Share(10), look.Share(23)}, look.NewScroll(look.Pad(14, 8, 20, 0, side)), v.ui.scroll)
	v.follow()
}

// form is what can be chosen.
func (v *View) form() *fyne.Container {
	say, h := v.desk.Words.Say, v.desk.Host
	v.ui.plan = field.NewChoice(h, "handoutview.plan", v.plans())
	v.ui.plan.Choose(string(v.file.subject.planCase.Plan.ID))
	v.ui.plan.OnChosen = func(key string) {
		v.desk.Go(desk.Place{Screen: desk.Handout, Athlete: v.file.subject.athlete.ID, Record: record.ID(key)})
	}
	v.ui.page = field.NewChoice(h, "handoutview.page", v.pageOptions())
	v.ui.page.OnChosen = func(key string) { v.choose(func(c *choice) { c.page = Page(key) }) }
	v.ui.option = field.NewChoice(h, "handoutview.option", v.options())
	v.ui.option.OnChosen = func(key string) { v.choose(func(c *choice) { c.option = record.ID(key) }) }
	v.ui.size = field.NewToggle(h, "handoutview.size", []field.Option{{Key: a4, Text: say("handoutview.size.a4")}, {Key: letter, Text: say("handoutview.size.letter")}})
	v.ui.size.OnChosen = func(key string) { v.choose(func(c *choice) { c.size = key }) }
	v.ui.language = field.NewChoice(h, "handoutview.language", v.desk.LanguageOptions())
	v.ui.language.OnChosen = v.speak
	set := func(name string, f fyne.CanvasObject) *fyne.Container {
		return look.VBox(4, look.NewLabel(say("handoutview."+name), look.Note, look.Ink2), f)
	}
	var parts []fyne.CanvasObject
	if len(v.file.plans) > 1 {
		parts = append(parts, set("plan", v.ui.plan))
	}
	parts = append(parts, set("page", v.ui.page))
	if v.file.subject.planned {
		v.ui.compare = field.NewCheck(h, "handoutview.compare", say("handoutview.compare"))
		v.ui.compare.OnChanged = func(on bool) { v.choose(func(c *choice) { c.compare = on }) }
		parts = append(parts, set("option", v.ui.option), v.ui.compare)
	}
	parts = append(parts, set("size", v.ui.size))
	if len(v.desk.Languages) > 1 { // nothing to choose from one
		parts = append(parts, set("language", v.ui.language))
	}
	v.ui.short = field.NewCheck(h, "handoutview.short", say("handoutview.short"))
	v.ui.short.OnChanged = func(on bool) { v.choose(func(c *choice) { c.short = on }) }
	return look.VBox(10, append(parts, v.ui.short)...)
}

// speak sets the language of the page.
func (v *View) speak(key string) {
	other, err := v.desk.In(language.Make(key))
	if err != nil {
		v.showFailure(err)
		return
	}
	v.choose(func(c *choice) { c.words = other.Words })
}

// choose changes what is to be printed.
func (v *View) choose(f func(*choice)) {
	f(&v.choice)
	v.follow()
	v.drawing.Want()
}

// follow shows what is chosen.
func (v *View) follow() {
	v.ui.page.Choose(string(v.choice.page))
	v.ui.option.Choose(string(v.choice.option))
	v.ui.size.Choose(v.choice.size)
	v.ui.language.Choose(v.choice.words.Language().String())
	look.ShowIf(v.ui.short, v.choice.page == BlankSheet)
	look.ShowIf(v.ui.bottles.box, v.choice.page == BottleBands)
	if v.ui.compare != nil {
		look.ShowIf(v.ui.compare, v.choice.page == AthletePage)
	}
	if v.choice.page == BlankSheet {
		v.ui.option.Disable()
	} else {
		v.ui.option.Enable()
	}
}

// showPage says what was added to a page that is shown now.
func (v *View) showPage(page laid) {
	v.ui.trouble.SetText("", "")
	say := v.desk.Words.Say
	v.ui.added.RemoveAll()
	for _, s := range page.cautions {
		v.ui.added.Add(look.NewCaution("", s, nil))
	}
	if len(page.cautions) == 0 {
		v.ui.added.Add(look.NewParagraph(say("handoutview.added.none"), look.Body, look.Ink2))
	}
	for _, s := range v.remarks() {
		v.ui.added.Add(look.Remark(look.NewParagraph(s, look.Note, look.Ink)))
	}
	v.ui.added.Add(look.NewParagraph(say("handoutview.added.always"), look.Note, look.Ink2))
	v.body.Refresh()
	v.ui.scroll.Refresh()
}

// showFailure says that a page could not be laid out.
func (v *View) showFailure(err error) {
	v.ui.trouble.SetText(v.desk.Words.Say("handoutview.failed"), desk.Sentence(v.desk.Words, err))
	v.ui.scroll.Refresh()
}

// remarks are for the practitioner alone: they do not stand on the page.
func (v *View) remarks() []string {
	w, s := v.desk.Words, v.file.subject
	var list []string
	add := func(on bool, sentence string) {
		if on {
			list = append(list, sentence)
		}
	}
	planned := v.choice.page != BlankSheet && s.planned
	add(planned && !s.handsOut(v.choice) && s.planCase.Plan.State != record.PlanReplaced, w.Say("handoutview.remark.draft"))
	add(planned && s.planCase.Plan.State == record.PlanReplaced, w.Say("handoutview.remark.replaced"))
	add(planned && s.planCase.Anew, w.Say("handoutview.remark.anew"))
	add(planned && len(s.care.NeedsPhysician) > 0, w.Say("handoutview.remark.physician", v.conditions(s.care.NeedsPhysician)))
	add(s.care.MassHidden, w.Say("handoutview.remark.hidden"))
	add(planned && len(s.care.WithholdSalt) > 0, w.Say("handoutview.remark.salt", v.conditions(s.care.WithholdSalt)))
	if planned && v.render.fresh && v.render.asked == v.choice {
		for _, what := range v.render.laid.document.Folded {
			add(true, w.Say("handoutview.remark.folded."+what))
		}
	}
	add(s.practice.Emergency == "", w.Say("handoutview.remark.emergency"))
	if letters := v.letters(v.choice); len(letters) > 0 {
		list = append(list, w.Say("handoutview.remark.letters", w.Commas(letters), paper.Lacking))
	}
	return list
}

// sinceWords say what was corrected since the plan was agreed; empty where nothing
// was.
func (v *View) sinceWords() string {
	w, s := v.desk.Words, v.file.subject
	if !s.planned || s.planCase.Plan.State != record.PlanAgreed {
		return ""
	}
	by := amount.Writer{Words: w, US: s.practice.Settings.Units == "us", Hidden: s.care.MassHidden}
	return desk.SinceWords(w, by, s.planCase, func(place int) string { return w.Say("option.step", w.Number(float64(place), 0)) })
}

// conditions names conditions of the profile.
func (v *View) conditions(kinds []record.FlagKind) string {
	var list []string
	for _, k := range kinds {
		list = append(list, v.desk.Words.Say("flag."+string(k)+".name"))
	}
	return v.desk.Words.List(list)
}

// Head is the athlete.
func (v *View) Head() desk.Head {
	a := v.file.subject.athlete
	h := desk.AthleteHead(a, desk.Handout, v.desk.FactsOf(a).WithoutMass())
	h.Spare = []fyne.CanvasObject{v.ui.picture}
	h.Actions = []fyne.CanvasObject{v.ui.print, v.ui.save}
	return h
}

// Body is the preview with what can be chosen.
func (v *View) Body() fyne.CanvasObject { return v.body }

// Place names what is shown, so that the window can open it again.
func (v *View) Place() desk.Place {
	p := desk.Place{Screen: desk.Handout, Athlete: v.file.subject.athlete.ID, Record: v.file.subject.planCase.Plan.ID}
	if v.choice.page == BlankSheet {
		p.Part = string(BlankSheet)
	}
	return p
}

// Leave has nothing to save.
func (v *View) Leave() {}

// canvas is the canvas the screen stands on.
func (v *View) canvas() fyne.Canvas { return fyne.CurrentApp().Driver().CanvasForObject(v.body) }

// planName is a plan in short: its name, and how far it is.
func (v *View) planName(p record.Plan) string {
	w := v.desk.Words
	name := p.Name
	if name == "" {
		name = p.Target.SessionName
	}
	if name == "" {
		name = w.Say("handoutview.unnamed")
	}
	return w.Say("handoutview.plan.named", name, w.Say("handoutview.state."+string(p.State)))
}

// optionNote marks the option that is in force.
func (v *View) optionNote(o record.Option) string {
	p := v.file.subject.planCase.Plan
	if now, ok := consult.InForce(p); ok && o.ID == now.ID && p.State == record.PlanAgreed {
		return v.desk.Words.Say("handoutview.option.now")
	}
	return ""
}
