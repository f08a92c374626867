package planner

import (
	"errors"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/agreement"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/internal/consult"
)

// headButtons stand in the head above the plan.
type headButtons struct {
	agree, correct, next, review *field.Button
}

func newHeadButtons(v *View) headButtons {
	h, say := v.Desk.Host, v.Speaker.Say
	return headButtons{
		agree:   field.NewButton(h, "planner.agree", say("planner.agree"), field.Primary, func() { agreement.AskAgreement(v.Plan) }),
		correct: field.NewButton(h, "planner.correct", say("planner.correct"), field.Outline, func() { agreement.AskCorrection(v.Plan) }),
		next:    field.NewButton(h, "planner.next", say("planner.next"), field.Outline, func() { agreement.GoOn(v.Plan) }),
		review:  field.NewButton(h, "planner.review", say("planner.review"), field.Primary, func() { v.OpenTab(part.TabSteps) }),
	}
}

// shown are the buttons for a plan, the main one last.
func (b headButtons) shown(s state.State) []fyne.CanvasObject {
	if s.Draft() {
		return []fyne.CanvasObject{b.agree}
	}
	return []fyne.CanvasObject{b.correct, b.next, b.review}
}

// noTest is what a person sees whose athlete has no test to plan on: what is
// missing, and the way to the sheet.
func (v *View) noTest() fyne.CanvasObject {
	say, h := v.Speaker.Say, v.Desk.Host
	place := desk.Place{Screen: desk.Tests, Athlete: v.File.Athlete.ID}
	title, sentence, button := "planner.notest.title", "planner.notest", "planner.notest.new"
	list := look.VBox(4)
	if len(v.File.Tests) > 0 {
		title, sentence, button = "planner.norate.title", "planner.norate", "planner.norate.open"
		place.Record = v.File.Tests[0].Test.ID
		for _, m := range v.File.Tests[0].Sweat.Missing {
			list.Add(look.NewParagraph(desk.MissingSentence(v.Speaker.Speaker, m), look.Body, look.Ink))
		}
	} else {
		place.New = true
	}
	open := field.NewButton(h, "planner.test", say(button), field.Primary, func() { v.Desk.Go(place) })
	return look.OnPaper(look.VBox(12, look.NewLabel(say(title), look.Strong, look.Ink), look.NewParagraph(say(sentence), look.Body, look.Ink2),
		list, look.HBox(0, open)))
}

// noPlan offers to begin a plan from the newest test.
func (v *View) noPlan() fyne.CanvasObject {
	say, h := v.Speaker.Say, v.Desk.Host
	found, _ := v.File.Usable()
	day := v.Desk.Words.Day(consult.TestDay(found.Test))
	begin := field.NewButton(h, "planner.begin", say("planner.begin", day), field.Primary, func() {
		v.Desk.Go(desk.Place{Screen: desk.Plan, Athlete: v.File.Athlete.ID, New: true, Part: string(found.Test.ID)})
	})
	return look.OnPaper(look.VBox(12, look.NewLabel(say("planner.noplan.title"), look.Strong, look.Ink),
		look.NewParagraph(say("planner.noplan"), look.Body, look.Ink2), look.HBox(0, begin)))
}

// cannotOpen says why a plan cannot be calculated, and what to do.
func (v *View) cannotOpen(err error) fyne.CanvasObject {
	say, h := v.Speaker.Say, v.Desk.Host
	sentence := problems(v.Speaker, err)
	if errors.Is(err, consult.ErrNoBasis) || errors.Is(err, consult.ErrTestGone) {
		sentence = say("planner.cannot.basis")
	}
	if gone := (*consult.GoneError)(nil); errors.As(err, &gone) {
		sentence = say("planner.cannot.gone", gone.Name)
	}
	if errors.Is(err, consult.ErrTooMany) {
		sentence = say("planner.cannot.many")
	}
	tests := field.NewButton(h, "planner.test", say("planner.norate.open"), field.Primary, func() {
		v.Desk.Go(desk.Place{Screen: desk.Tests, Athlete: v.File.Athlete.ID})
	})
	fresh := field.NewButton(h, "planner.new", say("planner.new"), field.Outline, v.GoToNew)
	return look.OnPaper(look.VBox(12, look.NewCaution(say("planner.cannot"), sentence, nil), look.HBox(10, tests, fresh)))
}
