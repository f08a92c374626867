package welcome

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/store"
)

// Opening is what a person sees while the data folder is opened: what is being
// done, in words, and a way to stop it.
type Opening struct {
	host *field.Host
	what *look.Paragraph
	body fyne.CanvasObject
}

// NewOpening makes the page; stop ends the opening.
func NewOpening(h *field.Host, stop func()) *Opening {
	say := h.Words.Say
	o := &Opening{host: h, what: look.NewParagraph(say("opening.begin"), look.Body, look.Ink)}
	button := field.NewButton(h, "opening.stop", say("opening.stop"), field.Outline, stop)
	o.body = container.New(centred{}, look.VBox(16,
		look.NewLabel(say("program.name"), look.Key, look.Ink), o.what,
		look.NewParagraph(say("opening.note"), look.Note, look.Ink2), look.HBox(0, button)))
	return o
}

// Body is the page.
func (o *Opening) Body() fyne.CanvasObject { return o.body }

// Tell says what is being done.
func (o *Opening) Tell(p store.Progress) {
	w := o.host.Words
	o.what.SetText(w.Say("opening."+string(p.Stage), w.Say("practice.megabytes", w.Number(float64(p.Bytes)/1e6, 0))))
}
