package agreement

import (
	"context"
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/record"
)

// AskCorrection asks why an agreed plan is to be corrected, and opens it as a
// draft again; what was agreed stays kept.
func AskCorrection(v *part.Plan) {
	h, say := v.Desk.Host, v.Speaker.Say
	why := field.NewNotes(h, "planner.correct.why", 3)
	trouble := look.NewParagraph("", look.Note, look.Ink)
	h.Ask(v.Canvas(), field.Question{
		Name: "planner.correct.ask", Title: say("planner.correct.title"), Sentence: say("planner.correct.sentence"), Content: look.VBox(6, why, trouble), Help: string(desk.HelpAgreement),
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("planner.correct.yes"), Kind: field.Primary, Do: func() (stay bool) {
				reason := strings.TrimSpace(why.Text())
				if reason == "" {
					trouble.SetText(say("planner.correct.needed"))
					return true
				}
				return !correct(v, reason)
			}},
		},
	})
}

// correct opens an agreed plan as a draft.
func correct(v *part.Plan, why string) bool {
	if !v.Binder.FlushNow() {
		return false
	}
	p, err := v.Desk.Store.ReopenPlan(context.Background(), v.Now.Plan.ID, why)
	if err != nil {
		v.Desk.Trouble(err)
		return false
	}
	v.Replace(p)
	return true
}

// GoOn begins a new plan from this one and opens it.
func GoOn(v *part.Plan) { v.GoOn(func(*record.Plan) {}) }
