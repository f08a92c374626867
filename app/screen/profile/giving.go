package profile

import (
	"context"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// newGivingPart leads to where the athlete's records are given away.
func newGivingPart(v *View) fyne.CanvasObject {
	say := v.sp.Say
	give := field.NewButton(v.desk.Host, "profile.give", say("give.go"), field.Outline, func() {
		v.desk.Go(desk.Place{Screen: desk.Give, Athlete: v.now().ID})
	})
	box := look.VBox(10, look.NewParagraph(say("profile.give.note"), look.Note, look.Ink2), look.HBox(0, give))
	if open, err := v.desk.Store.Questions(context.Background(), v.now().ID); err == nil && len(open) > 0 {
		decide := field.NewButton(v.desk.Host, "profile.questions", say("profile.questions.open"), field.Outline, func() { v.desk.Go(desk.Place{Screen: desk.Colleague}) })
		box.Add(look.NewCaution("", say("profile.questions"), decide))
	}
	return look.NewPanel(say("give.title"), nil, box)
}
