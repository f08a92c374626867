package planner

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/consult"
)

// question is what has to be settled about the breaks before a plan is agreed, with
// both answers beside it.
type question struct {
	v       *View
	caution *look.Caution
	settled *field.Button
	box     *fyne.Container
}

func newQuestion(v *View) *question {
	q := &question{v: v, caution: look.NewCaution("", "", nil)}
	h, say := v.Desk.Host, v.Speaker.Say
	change := field.NewButton(h, "planner.ask.breaks", say("planner.proposal.breaks"), field.Outline, func() { v.OpenTab(part.TabBreaks) })
	q.settled = field.NewButton(h, "planner.ask.settled", say("planner.proposal.settled"), field.Outline, func() {
		v.Binder.Pick("planner.ask", func(s *part.Sheet) { consult.SetWish(&s.Record, consult.BreaksSettled, true) })
	})
	q.box = &fyne.Container{Layout: questionLayout{}, Objects: []fyne.CanvasObject{q.caution, look.HBox(8, change, q.settled)}}
	return q
}

// open shows the question where there is one.
func (q *question) open() {
	text := q.v.Speaker.BreaksAsked(q.v.Now)
	q.caution.SetText("", text)
	look.ShowIf(q.box, text != "")
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
