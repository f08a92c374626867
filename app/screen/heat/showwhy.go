package heat

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
)

// whyWidth is the width of the dialog in px at 100 % text; besideBar keeps its
// content off the bar it scrolls by.
const (
	whyWidth  = 640
	besideBar = 14
)

// ShowWhy shows over a window why a sweat rate is what it is.
func ShowWhy(h *field.Host, on fyne.Canvas, sp Speaker, r consult.Calculation) *field.Dialog {
	w := sp.Why(r)
	column := look.VBox(6, look.NewLabel(w.Figure, look.Second, look.Ink), look.NewParagraph(w.Beside, look.Note, look.Ink2))
	add := func(key string, o fyne.CanvasObject) {
		column.Add(look.VBox(3, look.Gap(0, 6), look.NewLabel(sp.Say(key), look.NoteStrong, look.Ink), o))
	}
	if w.Rests != "" {
		add("heat.why.rests", look.NewParagraph(w.Rests, look.Note, look.Ink))
	}
	if w.Rule != "" {
		add("heat.why.how", look.NewParagraph(w.Rule, look.Note, look.Ink))
	}
	if len(w.Tests) > 0 {
		add("heat.why.tests", look.NewParagraph(strings.Join(w.Tests, "\n"), look.Note, look.Ink))
	}
	if w.Formula != "" {
		add("heat.why.formula", look.VBox(2, look.NewParagraph("= "+w.Formula, look.Note, look.Ink2), look.NewParagraph(w.Numbers, look.Body, look.Ink)))
	}
	if len(w.Inputs) > 0 {
		add("heat.why.inputs", lineList(w.Inputs))
	}
	if len(w.Budget) > 0 {
		bars := chart.NewBudgetBars()
		bars.Set(chart.BudgetData{Shares: w.Budget, Summary: sp.Say("heat.why.budget")})
		add("heat.why.budget", bars)
	}
	if w.Held != "" {
		add("heat.why.against", look.NewParagraph(w.Held, look.Note, look.Ink2))
	}
	if len(w.Steps) > 0 {
		add("heat.why.steps", look.VBox(4, lineList(w.Steps), look.NewParagraph(sp.Say("heat.why.steps.note"), look.Note, look.Ink2)))
	}
	if w.Soldiers != "" {
		add("heat.why.soldiers", look.NewParagraph(w.Soldiers, look.Note, look.Ink2))
	}
	if len(w.Stated) > 0 {
		add("heat.why.stated", look.NewParagraph(strings.Join(w.Stated, "\n"), look.Note, look.Ink2))
	}
	if len(w.Sources) > 0 {
		add("heat.why.sources", look.NewParagraph(strings.Join(w.Sources, "\n"), look.Note, look.Ink2))
	}
	if sp.By.Hidden {
		column.Add(look.NewParagraph(sp.Say("heat.why.hidden"), look.Note, look.Ink2))
	}
	return h.Ask(on, field.Question{
		Name: "heat.why", Title: sp.Say("heat.why.title"), Content: look.Pad(0, besideBar, 0, 0, column), Width: whyWidth,
		Actions: []field.Action{{Name: "close", Text: sp.Say("heat.close"), Kind: field.Primary}},
	})
}

// lineList is names and values in two columns.
func lineList(list []Line) fyne.CanvasObject {
	box := look.VBox(2)
	for _, l := range list {
		box.Add(look.Columns(8, []look.Track{look.Share(1), look.Fit()}, look.NewLabel(l.Name, look.Note, look.Ink2).Shorten(),
			look.NewLabel(l.Value, look.Note, look.Ink).Right()))
	}
	return box
}
