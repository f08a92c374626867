package session

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/review"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// tolerance is the drinking rate that the athlete tolerates, and the way to raise
// it here.
type tolerance struct {
	v     *part.Plan
	rate  *look.Paragraph
	raise *field.Link
	box   fyne.CanvasObject
}

func newTolerance(v *part.Plan) *tolerance {
	t := &tolerance{v: v, rate: look.NewParagraph("", look.Body, look.Ink)}
	t.raise = field.NewLink(v.Desk.Host, "planner.tolerance", v.Speaker.Say("planner.tolerance.raise"), func() { AskTolerance(v) })
	t.raise.SetStyle(look.Body)
	t.box = look.VBox(2, t.rate, look.Pad(0, 0, 0, -field.LinkPad, look.HBox(0, t.raise)))
	return t
}

// open shows the rate: as it stands in the profile, or as it was drunk in a test
// with a calm stomach.
func (t *tolerance) open() {
	sp := t.v.Speaker
	text := sp.Say("planner.tolerance.unknown")
	if u := t.v.Now.PlanCase.Planner.Basis().Usual; u.Known {
		text = sp.Say("planner.tolerance", sp.Rate(u.LH))
	}
	t.rate.SetText(text)
	look.EnableIf(t.raise, t.v.Now.Draft())
}

// AskTolerance asks for a higher rate and for the reason. Once a plan is agreed the
// rate rises only by a review of sessions done, and that is said.
func AskTolerance(v *part.Plan) {
	say := v.Speaker.Say
	if consult.ToTakeAlong(v.File.Plans) != nil {
		v.Desk.Host.Ask(v.Canvas(), field.Question{
			Name: "planner.tolerance.agreed", Title: say("planner.tolerance.raise"), Sentence: say("planner.tolerance.agreed"),
			Actions: []field.Action{{Name: "done", Text: say("planner.done"), Kind: field.Primary}},
		})
		return
	}
	rate := field.NewNumber(v.Desk.Host, "planner.tolerance.rate", evidence.DrinkingRate, quantity.LitrePerHour)
	rate.SetBox(110)
	why := field.NewNotes(v.Desk.Host, "planner.tolerance.why", 2)
	trouble := look.NewParagraph("", look.Note, look.Ink)
	v.Desk.Host.Ask(v.Canvas(), field.Question{
		Name: "planner.tolerance.ask", Title: say("planner.tolerance.raise"), Sentence: say("planner.tolerance.sentence"),
		Content: look.VBox(8, part.NewForm(look.NewEntry(say("planner.tolerance.rate"), rate), look.NewEntry(say("planner.tolerance.why"), why)), trouble),
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("planner.tolerance.keep"), Kind: field.Primary, Do: func() (stay bool) {
				x, ok := rate.Value()
				reason := strings.TrimSpace(why.Text())
				usual := v.Now.PlanCase.Planner.Basis().Usual
				switch {
				case !ok || usual.Known && x <= usual.LH:
					trouble.SetText(say("planner.tolerance.higher"))
					return true
				case reason == "":
					trouble.SetText(say("planner.tolerance.needed"))
					return true
				}
				was := v.Now.Proposal()
				review.SetUsual(v, record.Num(x, quantity.LitrePerHour), reason)
				v.Reopen(v.Binder.Doc.Now().Record)
				v.OfferAnew("planner.tolerance", was)
				return false
			}},
		},
	})
}
