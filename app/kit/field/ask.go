package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// Action is one button of a [Dialog].
type Action struct {
	// Name is put behind the name of the question: "delete.yes".
	Name, Text string
	Kind       Kind
	// Do is what it does; true keeps the dialog open. Nil only closes.
	Do func() (stay bool)
}

// Question is what a [Dialog] asks.
type Question struct {
	Name            string
	Title, Sentence string
	// Content is fields between the sentence and the buttons; it may be nil.
	Content fyne.CanvasObject
	// Width of the dialog in px at 100 % text; 460 when zero.
	Width float32
	// Actions from left to right. Enter presses the primary one, unless Loses says
	// that this takes something away.
	Actions []Action
	Loses   bool
	// Help names the page of help that F1 shows; empty for that of the screen below.
	Help string
	// OnClosed is told when the dialog is gone, however that came.
	OnClosed func()
}

// Dialog is a sheet over the window that keeps the keyboard until it is
// closed. Escape closes it, Enter presses the primary action. As it opens the keyboard
// is on its first input and never on a button.
type Dialog struct {
	widget.BaseWidget

	host      *Host
	on        fyne.Canvas
	q         Question
	parts     dialogParts
	buttons   []*Button
	closeKeys func()
	closed    bool
}

// dialogParts are what is on the sheet.
type dialogParts struct {
	veil          *canvas.Rectangle
	sheet         *look.Outline
	head, actions *fyne.Container
	content       *look.Scroll
}

var _ look.Holder = (*Dialog)(nil)

// Ask shows a question over a window.
func (h *Host) Ask(on fyne.Canvas, q Question) *Dialog {
	d := &Dialog{host: h, on: on, q: q}
	d.parts = dialogParts{veil: canvas.NewRectangle(nil), sheet: look.NewOutline()}
	d.parts.head = look.VBox(8, look.NewParagraph(q.Title, look.Title, look.Ink))
	if q.Sentence != "" {
		d.parts.head.Add(look.NewParagraph(q.Sentence, look.Body, look.Ink))
	}
	if q.Content != nil {
		d.parts.content = look.NewScroll(look.Pad(0, barRoom, 0, ringRoom, q.Content))
	}
	d.parts.actions = look.HBox(10, d.actionButtons()...)
	d.ExtendBaseWidget(d)
	d.closeKeys = h.Hold(d.typed)
	if on.OnTypedKey() == nil { // while nothing has the keyboard
		on.SetOnTypedKey(h.Key)
	}
	on.Overlays().Add(d)
	d.takeFocus()
	return d
}

// Confirm asks whether to go on with what takes something away: only a click, or Enter
// on its own button, does it. The sentence says what will happen, yes is
// the word on the button that does it.
func (h *Host) Confirm(on fyne.Canvas, name, title, sentence, yes string, do func()) *Dialog {
	return h.Ask(on, Question{Name: name, Title: title, Sentence: sentence, Loses: true, Actions: []Action{
		{Name: "no", Text: h.Words.Say("field.ask.cancel")},
		{Name: "yes", Text: yes, Kind: Primary, Do: func() bool { do(); return false }},
	}})
}

func (d *Dialog) actionButtons() []fyne.CanvasObject {
	var list []fyne.CanvasObject
	for _, a := range d.q.Actions {
		b := NewButton(d.host, d.q.Name+"."+a.Name, a.Text, a.Kind, func() {
			if a.Do == nil || !a.Do() {
				d.Close()
			}
		})
		d.buttons = append(d.buttons, b)
		list = append(list, b)
	}
	return list
}

// primary is the button that Enter presses, nil when there is none.
func (d *Dialog) primary() *Button {
	for _, b := range d.buttons {
		if b.kind == Primary {
			return b
		}
	}
	return nil
}

// takeFocus gives the keyboard to the first input of the content; where there is none
// the dialog has the keys without it.
func (d *Dialog) takeFocus() {
	if d.parts.content == nil {
		return
	}
	d.on.FocusNext()
	for first := d.on.Focused(); d.on.Focused() != nil && presses(d.on.Focused()); {
		if d.on.FocusNext(); d.on.Focused() == first {
			d.on.Unfocus()
		}
	}
}

// presses reports that something with the keyboard is pressed and not filled in.
func presses(f fyne.Focusable) bool {
	switch f.(type) {
	case *Button, *Link:
		return true
	}
	return false
}

// typed takes the keys the fields have no use for.
func (d *Dialog) typed(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyEscape:
		d.Close()
	case fyne.KeyReturn, fyne.KeyEnter:
		if b := d.primary(); b != nil && !d.q.Loses {
			b.Press()
		}
	case fyne.KeyF1:
		if d.host.OnHelp != nil {
			d.host.OnHelp(d.q.Help)
		}
	case fyne.KeyPageDown:
		d.scroll(1)
	case fyne.KeyPageUp:
		d.scroll(-1)
	}
}

// scroll moves the content by so many times most of what is seen of it.
func (d *Dialog) scroll(by float32) {
	c := d.parts.content
	if c == nil {
		return
	}
	most := max(d.q.Content.Size().Height-c.Size().Height, 0)
	c.ScrollTo(min(max(c.Offset()+by*0.8*c.Size().Height, 0), most))
}

// Close takes the dialog away.
func (d *Dialog) Close() {
	if d.closed {
		return
	}
	d.closed = true
	d.on.Unfocus() // lets a field in the dialog end its visit
	d.closeKeys()
	d.on.Overlays().Remove(d)
	if d.q.OnClosed != nil {
		d.q.OnClosed()
	}
}

// Name is the name of the question.
func (d *Dialog) Name() string { return d.q.Name }

// Action returns the button of an action, nil when there is none.
func (d *Dialog) Action(name string) *Button {
	for i, a := range d.q.Actions {
		if a.Name == name {
			return d.buttons[i]
		}
	}
	return nil
}

// Tapped keeps the keyboard in the dialog: the click was beside the fields.
func (d *Dialog) Tapped(*fyne.PointEvent) {
	if last := d.host.last; last != nil && Find(d, last.Name()) != nil {
		last.Focus()
		return
	}
	d.takeFocus()
}

// Parts returns texts, content and buttons.
func (d *Dialog) Parts() []fyne.CanvasObject {
	if d.parts.content == nil {
		return []fyne.CanvasObject{d.parts.head, d.parts.actions}
	}
	return []fyne.CanvasObject{d.parts.head, d.parts.content, d.parts.actions}
}
