package planner

import (
	"errors"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// headButtons stand in the head above the plan.
type headButtons struct {
	agree, correct, next, handout *field.Button
}

func newHeadButtons(v *View) headButtons {
	h, say := v.desk.Host, v.sp.say
	return headButtons{
		agree:   field.NewButton(h, "planner.agree", say("planner.agree"), field.Primary, v.askAgreement),
		correct: field.NewButton(h, "planner.correct", say("planner.correct"), field.Outline, v.askCorrection),
		next:    field.NewButton(h, "planner.next", say("planner.next"), field.Outline, v.goOn),
		handout: field.NewButton(h, "planner.handout", say("planner.handout"), field.Primary, v.goToHandout),
	}
}

// shown are the buttons for a plan, the main one last.
func (b headButtons) shown(s state) []fyne.CanvasObject {
	if s.draft() {
		return []fyne.CanvasObject{b.agree}
	}
	return []fyne.CanvasObject{b.correct, b.next, b.handout}
}

// goToHandout opens the athlete's page of this plan.
func (v *View) goToHandout() {
	if v.b == nil {
		return
	}
	v.desk.Go(desk.Place{Screen: desk.Handout, Athlete: v.file.athlete.ID, Record: v.now.plan.ID})
}

// goToPlan opens another plan of the athlete's.
func (v *View) goToPlan(id record.ID) {
	v.desk.Go(desk.Place{Screen: desk.Plan, Athlete: v.file.athlete.ID, Record: id})
}

// goToNew begins another plan from the newest test.
func (v *View) goToNew() {
	v.desk.Go(desk.Place{Screen: desk.Plan, Athlete: v.file.athlete.ID, New: true})
}

// planOptions are the athlete's plans to choose from.
func (v *View) planOptions() []field.Option {
	var list []field.Option
	for _, p := range v.file.plans {
		state := v.sp.say("planner.state." + string(p.State))
		day := p.CreatedAt
		if p.Agreement.AgreedAt != nil {
			day = *p.Agreement.AgreedAt
		}
		list = append(list, field.Option{
			Key: string(p.ID), Text: titleOf(p, v.sp.say("planner.plan.unnamed")), Note: v.sp.say("planner.plan.note", state, v.desk.Words.Day(day)),
		})
	}
	return list
}

// noTest is what a person sees whose athlete has no test to plan on: what is
// missing, and the way to the sheet.
func (v *View) noTest() fyne.CanvasObject {
	say, h := v.sp.say, v.desk.Host
	place := desk.Place{Screen: desk.Tests, Athlete: v.file.athlete.ID}
	title, sentence, button := "planner.notest.title", "planner.notest", "planner.notest.new"
	list := look.VBox(4)
	if len(v.file.tests) > 0 {
		title, sentence, button = "planner.norate.title", "planner.norate", "planner.norate.open"
		place.Record = v.file.tests[0].Test.ID
		for _, m := range v.file.tests[0].Sweat.Missing {
			list.Add(look.NewParagraph(desk.MissingSentence(v.desk.Words, m), look.Body, look.Ink))
		}
	} else {
		place.New = true
	}
	open := field.NewButton(h, "planner.test", say(button), field.Primary, func() { v.desk.Go(place) })
	return look.OnPaper(look.VBox(12, look.NewLabel(say(title), look.Strong, look.Ink), look.NewParagraph(say(sentence), look.Body, look.Ink2),
		list, look.HBox(0, open)))
}

// noPlan offers to begin a plan from the newest test.
func (v *View) noPlan() fyne.CanvasObject {
	say, h := v.sp.say, v.desk.Host
	found, _ := v.file.usable()
	day := v.desk.Words.Day(consult.TestDay(found.Test))
	begin := field.NewButton(h, "planner.begin", say("planner.begin", day), field.Primary, func() {
		v.desk.Go(desk.Place{Screen: desk.Plan, Athlete: v.file.athlete.ID, New: true, Part: string(found.Test.ID)})
	})
	return look.OnPaper(look.VBox(12, look.NewLabel(say("planner.noplan.title"), look.Strong, look.Ink),
		look.NewParagraph(say("planner.noplan"), look.Body, look.Ink2), look.HBox(0, begin)))
}

// cannotOpen says why a plan cannot be calculated, and what to do.
func (v *View) cannotOpen(err error) fyne.CanvasObject {
	say, h := v.sp.say, v.desk.Host
	sentence := v.sp.problems(err)
	if errors.Is(err, consult.ErrNoBasis) || errors.Is(err, consult.ErrTestGone) {
		sentence = say("planner.cannot.basis")
	}
	tests := field.NewButton(h, "planner.test", say("planner.norate.open"), field.Primary, func() {
		v.desk.Go(desk.Place{Screen: desk.Tests, Athlete: v.file.athlete.ID})
	})
	fresh := field.NewButton(h, "planner.new", say("planner.new"), field.Outline, v.goToNew)
	return look.OnPaper(look.VBox(12, look.NewCaution(say("planner.cannot"), sentence, nil), look.HBox(10, tests, fresh)))
}
