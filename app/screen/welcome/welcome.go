// Package welcome is what a person sees before there is a practice, and when
// the data folder cannot be opened.
package welcome

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

// Actions are what the welcome can do.
type Actions struct {
	// Try opens the invented practice.
	Try func()
	// Begin makes a practice of one's own.
	Begin func(record.Practice) error
	// Sentence says an error in words.
	Sentence func(error) string
}

// Welcome offers the invented practice or one's own athletes.
type Welcome struct {
	host    *field.Host
	actions Actions

	practice, person, registration, telephone, emergency *field.Line
	begin                                                *field.Button
	trouble                                              *look.Caution
}

// New makes the welcome.
func New(h *field.Host, a Actions) fyne.CanvasObject {
	w := &Welcome{host: h, actions: a, trouble: look.NewCaution("", "", nil)}
	say := h.Words.Say
	line := func(name string) *field.Line {
		l := field.NewLine(h, "welcome."+name, 120)
		l.OnChanged = func(string) { w.check() }
		l.OnEnter = func(string) { w.begin.Press() }
		return l
	}
	w.practice, w.person, w.registration = line("practice"), line("person"), line("registration")
	w.telephone, w.emergency = line("telephone"), line("emergency")
	w.begin = field.NewButton(h, "welcome.begin", say("welcome.begin"), field.Primary, w.start)
	w.check()
	try := field.NewButton(h, "welcome.try", say("welcome.try"), field.Outline, a.Try)
	own := look.NewSheet(look.VBox(12,
		look.NewLabel(say("welcome.own.title"), look.Strong, look.Ink),
		look.NewParagraph(say("welcome.own.sentence"), look.Note, look.Ink2),
		w.row("person", w.person), w.row("practice", w.practice), w.row("registration", w.registration),
		w.row("telephone", w.telephone), w.row("emergency", w.emergency),
		w.trouble, look.HBox(0, w.begin),
	))
	invented := look.NewSheet(look.VBox(12,
		look.NewLabel(say("welcome.invented.title"), look.Strong, look.Ink),
		look.NewParagraph(say("welcome.invented.sentence"), look.Note, look.Ink2),
		look.HBox(0, try),
	))
	page := look.VBox(20,
		look.VBox(6, look.NewLabel(say("program.name"), look.Key, look.Ink), look.NewParagraph(say("welcome.sentence"), look.Body, look.Ink2)),
		look.Panels(16, []look.Track{look.Share(3), look.Share(2)}, own, invented),
		look.NewParagraph(say("welcome.data"), look.Note, look.Ink3),
	)
	return look.NewScroll(container.New(centred{}, page))
}

// row is a named line.
func (w *Welcome) row(name string, input fyne.CanvasObject) fyne.CanvasObject {
	return look.Columns(12, []look.Track{look.Fixed(150), look.Share(1)},
		look.NewParagraph(w.host.Words.Say("welcome."+name), look.Body, look.Ink2), input)
}

// check lets one begin once a name is there: every entry records who made it.
func (w *Welcome) check() {
	if w.begin == nil {
		return
	}
	if w.person.Text() == "" {
		w.begin.Disable()
		return
	}
	w.begin.Enable()
}

// start makes the practice.
func (w *Welcome) start() {
	err := w.actions.Begin(record.Practice{
		Meta: record.Meta{ID: record.NewID()}, Name: w.practice.Text(), Practitioner: w.person.Text(),
		Registration: w.registration.Text(), Telephone: w.telephone.Text(), Emergency: w.emergency.Text(),
	})
	if err != nil {
		w.trouble.SetText(w.host.Words.Say("welcome.failed"), w.actions.Sentence(err))
	}
}

// centred keeps a page of a readable width in the middle, a little above it.
type centred struct{}

func (centred) width(size fyne.Size) float32 { return min(size.Width-48, look.Scaled(860)) }

func (c centred) Layout(o []fyne.CanvasObject, size fyne.Size) {
	width := c.width(size)
	height := look.HeightFor(o[0], width)
	o[0].Move(fyne.NewPos((size.Width-width)/2, max(32, (size.Height-height)/3)))
	o[0].Resize(fyne.NewSize(width, height))
}

// MinSize asks for the height the page has at the width it was given last.
func (c centred) MinSize(o []fyne.CanvasObject) fyne.Size {
	width := look.Scaled(860)
	if w := o[0].Size().Width; w > 0 {
		width = w
	}
	return fyne.NewSize(400, look.HeightFor(o[0], width)+64)
}
