package planner

import (
	"context"
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/store"
)

// askCorrection asks why an agreed plan is to be corrected, and opens it as a
// draft again; what was agreed stays kept.
func (v *View) askCorrection() {
	h, say := v.desk.Host, v.sp.say
	why := field.NewNotes(h, "planner.correct.why", 3)
	trouble := look.NewParagraph("", look.Note, look.Ink)
	h.Ask(v.canvas(), field.Question{
		Name: "planner.correct.ask", Title: say("planner.correct.title"), Sentence: say("planner.correct.sentence"), Content: look.VBox(6, why, trouble),
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("planner.correct.yes"), Kind: field.Primary, Do: func() (stay bool) {
				reason := strings.TrimSpace(why.Text())
				if reason == "" {
					trouble.SetText(say("planner.correct.needed"))
					return true
				}
				return !v.correct(reason)
			}},
		},
	})
}

// correct opens an agreed plan as a draft.
func (v *View) correct(why string) bool {
	if !v.b.FlushNow() {
		return false
	}
	p, err := v.desk.Store.ReopenPlan(context.Background(), v.now.plan.ID, why)
	if err != nil {
		v.desk.Trouble(err)
		return false
	}
	v.replace(p)
	return true
}

// goOn begins a new plan from this one and opens it.
func (v *View) goOn() {
	if !v.b.FlushNow() {
		return
	}
	kept, err := v.desk.Store.SavePlan(context.Background(), successor(v.now.plan), store.Edit{})
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	v.desk.Go(desk.Place{Screen: desk.Plan, Athlete: v.file.athlete.ID, Record: kept.ID})
}
