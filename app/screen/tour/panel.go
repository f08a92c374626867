package tour

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/words"
)

// Panel says the present step and lets the person skip it or end the tour.
type Panel struct {
	words    *words.Words
	title    *look.Label
	sentence *look.Paragraph
	on       *field.Button
	end      *field.Link
	box      *look.Sheet
}

// NewPanel makes a hidden panel; on is told that its first button was pressed, end its
// second.
func NewPanel(h *field.Host, on, end func()) *Panel {
	p := &Panel{words: h.Words, title: look.NewLabel("", look.Strong, look.Ink), sentence: look.NewParagraph("", look.Note, look.Ink)}
	p.on = field.NewButton(h, "tour.on", "", field.Outline, on)
	p.end = field.NewLink(h, "tour.end", "", end)
	p.box = look.NewSheet(look.VBox(4, p.title, p.sentence, look.Gap(0, 2), p.on, p.end))
	p.box.Hide()
	return p
}

// Box is the panel as it stands in the window.
func (p *Panel) Box() fyne.CanvasObject { return p.box }

// Show says how far a tour is; athlete is the name of the one proposed.
func (p *Panel) Show(s State, athlete string) {
	say := p.words.Say
	look.ShowIf(p.box, s.Stage != Off)
	look.ShowIf(p.on, s.Stage != Done)
	switch s.Stage {
	case Off:
		return
	case Offered:
		p.set(say("tour.offer.title"), say("tour.offer"), say("tour.begin"), say("tour.decline"))
	case Going:
		on := say("tour.skip")
		if s.Step == Page {
			on = say("tour.next")
		}
		p.set(say("tour.step", p.words.Number(float64(s.Step)+1, 0), p.words.Number(float64(Steps), 0)), p.stepWords(s.Step, athlete), on, say("tour.end"))
	case Done:
		p.set(say("tour.done.title"), say("tour.done"), "", say("tour.close"))
	}
	p.box.Refresh()
}

func (p *Panel) set(title, sentence, on, end string) {
	p.title.SetText(title)
	p.sentence.SetText(sentence)
	p.on.SetText(on)
	p.end.SetText(end)
}

// stepWords say what to do.
func (p *Panel) stepWords(s Step, athlete string) string {
	say := p.words.Say
	switch s {
	case Athlete:
		return say("tour.step.athlete", athlete)
	case Findings:
		return say("tour.step.findings")
	case Plan:
		return say("tour.step.plan")
	case Agree:
		return say("tour.step.agree")
	case Page:
		return say("tour.step.page")
	case Save:
	}
	return say("tour.step.save")
}
