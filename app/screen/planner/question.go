package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan/proposal"
)

// question is what has to be answered about the breaks before a plan is agreed, with
// both answers beside it.
type question struct {
	v       *View
	caution *look.Caution
	confirm *field.Button
	// asked is the proposal that asks; nil while none does.
	asked *proposal.Proposal
	box   *fyne.Container
}

func newQuestion(v *View) *question {
	q := &question{v: v, caution: look.NewCaution("", "", nil)}
	h, say := v.Desk.Host, v.Speaker.Say
	change := field.NewButton(h, "planner.ask.breaks", say("planner.proposal.breaks"), field.Outline, func() { v.OpenTab(part.TabBreaks) })
	q.confirm = field.NewButton(h, "planner.ask.settled", say("planner.proposal.settled"), field.Outline, func() {
		v.Binder.Pick("planner.ask", func(s *part.Sheet) { consult.SetWish(&s.Record, consult.BreaksConfirmed, true) })
	})
	q.box = &fyne.Container{Layout: questionLayout{}, Objects: []fyne.CanvasObject{q.caution, look.HBox(8, change, q.confirm)}}
	return q
}

// open shows the question where there is one.
func (q *question) open() {
	text := ""
	if v := q.v; v.Now.Draft() {
		found := v.Now.Proposal()
		text = v.Speaker.BreaksAsked(found)
		if found.Ask {
			q.asked = &found
		}
	}
	q.caution.SetText("", text)
	look.ShowIf(q.box, text != "")
}

// answered gives the options that waited with the habit's amount what is proposed once
// the breaks are confirmed.
func (q *question) answered() {
	v, was := q.v, q.asked
	if was == nil || !v.Now.Draft() || v.Now.Proposal().Ask {
		return
	}
	q.asked = nil
	v.OfferAnew("planner.ask", *was)
}

// questionLayout sets the answers at the right of the question.
type questionLayout struct{}

const questionGap float32 = 12

func (questionLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	answers := o[1].MinSize()
	o[0].Move(fyne.Position{})
	o[0].Resize(fyne.NewSize(size.Width-answers.Width-questionGap, size.Height))
	o[1].Move(fyne.NewPos(size.Width-answers.Width, float32(int((size.Height-answers.Height)/2))))
	o[1].Resize(answers)
}

// height is what the question needs at a width.
func (questionLayout) height(o []fyne.CanvasObject, width float32) float32 {
	answers := o[1].MinSize()
	return max(look.HeightFor(o[0], width-answers.Width-questionGap), answers.Height)
}

func (questionLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(o[1].MinSize().Width+look.Scaled(160), o[1].MinSize().Height)
}
