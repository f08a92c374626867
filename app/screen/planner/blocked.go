package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

// blocked is what a person sees who asks for a plan from a test with a red flag of
// which nobody was told: the way to its record.
func (v *View) blocked(test record.ID) fyne.CanvasObject {
	if test == "" {
		if f, ok := v.File.Usable(); ok {
			test = f.Test.ID
		}
	}
	say := v.Desk.Words.Say
	open := field.NewButton(v.Desk.Host, "planner.blocked.open", say("planner.blocked.open"), field.Primary, func() {
		v.Desk.Go(desk.Place{Screen: desk.Tests, Athlete: v.File.Athlete.ID, Record: test, Part: "after"})
	})
	return look.OnPaper(look.VBox(12, look.NewLabel(say("planner.blocked.title"), look.Strong, look.Ink),
		look.NewParagraph(say("planner.blocked"), look.Body, look.Ink2), look.HBox(0, open)))
}
