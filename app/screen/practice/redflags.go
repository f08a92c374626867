package practice

import (
	"context"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/preview"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/care"
	"ebbwell/internal/handout"
	"ebbwell/internal/handout/paper"
)

// redFlags is the list of the sentences of red flags and emergencies, for a
// clinician to read and sign.
type redFlags struct {
	v    *View
	list *fyne.Container
	body fyne.CanvasObject
}

// newRedFlags builds the tab.
func newRedFlags(v *View) *redFlags {
	say := v.desk.Words.Say
	r := &redFlags{v: v, list: look.VBox(14)}
	save := field.NewButton(v.desk.Host, "practice.redflags.save", say("redflags.save"), field.Primary, r.save)
	r.body = scrolled(look.VBox(14, look.NewParagraph(say("redflags.under"), look.Body, look.Ink), look.HBox(0, save), r.list))
	r.follow()
	return r
}

func (r *redFlags) box() fyne.CanvasObject { return r.body }

// follow shows the sentences with the emergency number as it stands.
func (r *redFlags) follow() {
	r.list.RemoveAll()
	for _, g := range handout.RedFlagWords(r.v.desk.Words, r.v.now().Emergency) {
		var lines []fyne.CanvasObject
		for _, s := range g.Sentences {
			lines = append(lines, look.NewParagraph(s, look.Body, look.Ink))
		}
		r.list.Add(r.v.panel(g.Title, "", lines...))
	}
	r.list.Refresh()
}

// save saves the list as a PDF with lines to sign, over the page as it will print.
func (r *redFlags) save() {
	d, w := r.v.desk, r.v.desk.Words
	terms := handout.TermsOf(r.v.now(), care.Care{}, w)
	preview.Ask(d, r.v.canvas(), saveto.Request{
		Name: "practice.redflags.ask", Title: w.Say("redflags.save"), Sentence: w.Say("redflags.under"), Yes: w.Say("handoutview.save.yes"),
		File: saveto.FileName(w.Say("redflags.title"), ".pdf"),
		Done: func(path string) {
			d.Say(w.Say("handoutview.saved", path), w.Say("saveto.open"), func() { saveto.Show(d, path) })
		},
	}, preview.Printable{Lay: func(context.Context, bool) (paper.Document, error) {
		press, err := handout.NewPress(w, paper.A4())
		if err != nil {
			return paper.Document{}, err
		}
		return press.RedFlagPage(terms), nil
	}})
}
