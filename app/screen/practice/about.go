package practice

import (
	"context"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/assets"
	"ebbwell/internal/evidence"
)

// about is what the program is, its licences and its cautions.
type about struct {
	body fyne.CanvasObject
	// folder says where the records are.
	folder *look.Paragraph
}

// newAbout builds the tab.
func newAbout(v *View) *about {
	say := v.desk.Words.Say
	text := func(key string) fyne.CanvasObject { return look.NewParagraph(say(key), look.Body, look.Ink) }
	link := func(name string, follow func()) fyne.CanvasObject {
		return look.HBox(0, field.NewLink(v.desk.Host, "practice.about."+name, say("practice.about."+name), follow))
	}
	read := func(name, title, whole string) fyne.CanvasObject {
		return link(name, func() { showText(v.desk.Host, v.canvas(), name, title, whole) })
	}
	tour := look.HBox(0, field.NewButton(v.desk.Host, "practice.about.tour", say("tour.again"), field.Outline, func() { v.desk.Tour() }))
	look.ShowIf(tour, v.desk.Tour != nil)
	folder := look.NewParagraph(say("practice.about.folder", v.desk.Store.Dir()), look.Note, look.Ink2)
	changes := link("changes", func() { ShowChanges(v.desk.Host, v.canvas()) })
	program := v.panel(say("program.name"), say("practice.about.edition", assets.Version, evidence.Version), changes, text("practice.about"), text("practice.about.not"),
		tour, look.NewParagraph(engineWords(v), look.Note, look.Ink2), folder)
	cautions := v.panel(say("practice.cautions"), "", text("practice.cautions.overdrinking"), text("practice.cautions.conditions"), text("practice.cautions.estimate"), text("practice.cautions.doctor"))
	credits := v.panel(say("practice.credits"), "", text("practice.credits.foods"), text("practice.credits.climate"), text("practice.credits.colours"),
		text("practice.credits.typeface"), read("licence", "practice.about.typeface", assets.FontLicence()), text("practice.credits.modules"), read("notices", "practice.about.notices.title", assets.Notices()))
	left, right := look.VBox(14, program, cautions), look.VBox(14, credits)
	return &about{folder: folder, body: scrolled(look.Panels(14, []look.Track{look.Share(1), look.Share(1)}, left, right))}
}

// engineWords says what keeps the records; who reports a fault needs it.
func engineWords(v *View) string {
	name, err := v.desk.Store.Engine(context.Background())
	if err != nil {
		v.desk.Trouble(err)
		return ""
	}
	return v.desk.Words.Say("practice.about.engine", name)
}

func (a *about) box() fyne.CanvasObject { return a.body }
func (a *about) follow()                {}
