package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// Strip says what has just been done, and lets it be undone. It stays until it
// is undone, closed or followed by another message, or whoever shows it takes it
// away after a while.
type Strip struct {
	widget.BaseWidget

	text        *look.Paragraph
	act, closer *Button
	row         *fyne.Container
	do          func()
}

var _ look.Holder = (*Strip)(nil)

// NewStrip makes a hidden strip. Its buttons are called name.act and
// name.close.
func NewStrip(h *Host, name string) *Strip {
	s := &Strip{text: look.NewParagraph("", look.Body, look.Ink)}
	s.act = NewButton(h, name+".act", "", Outline, s.done)
	s.closer = NewButton(h, name+".close", h.Words.Say("field.strip.close"), Quiet, s.Hide)
	s.row = look.HBox(8, look.Grow(s.text), s.act, s.closer)
	s.Hidden = true
	s.ExtendBaseWidget(s)
	return s
}

// Say shows a message with an action; without words for the action there is
// none.
func (s *Strip) Say(message, action string, do func()) {
	s.text.SetText(message)
	s.act.SetText(action)
	s.do = do
	show(s.act, action != "")
	s.Show()
	s.Refresh()
}

// SayUndo shows a message with Undo.
func (s *Strip) SayUndo(message string, undo func()) {
	s.Say(message, s.act.host.Words.Say("field.strip.undo"), undo)
}

// Message returns the message in sight, empty when there is none.
func (s *Strip) Message() string {
	if !s.Visible() {
		return ""
	}
	return s.text.Text()
}

func (s *Strip) done() {
	s.Hide()
	if s.do != nil {
		s.do()
	}
}

// Parts returns message and buttons.
func (s *Strip) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{s.row} }

// HeightFor returns the height: a message that is longer than the strip goes on below.
func (s *Strip) HeightFor(width float32) float32 {
	return max(look.ControlHeight(), look.HeightFor(s.row, width-look.SheetPadX-8)) + 2*stripPad
}

// stripPad is the room above and below the row, in px.
const stripPad float32 = 5

// CreateRenderer draws the strip.
func (s *Strip) CreateRenderer() fyne.WidgetRenderer {
	r := &stripRenderer{s: s, ground: canvas.NewRectangle(nil), bar: canvas.NewRectangle(nil)}
	r.paint()
	return r
}

type stripRenderer struct {
	s           *Strip
	ground, bar *canvas.Rectangle
}

func (r *stripRenderer) paint() {
	p := look.PaletteNow()
	r.ground.FillColor, r.bar.FillColor = p.Sunk, p.Ink
}

func (r *stripRenderer) Layout(size fyne.Size) {
	r.ground.Resize(size)
	r.bar.Resize(fyne.NewSize(3, size.Height))
	r.s.row.Move(fyne.NewPos(look.SheetPadX, stripPad))
	r.s.row.Resize(fyne.NewSize(size.Width-look.SheetPadX-8, size.Height-2*stripPad))
}

func (r *stripRenderer) MinSize() fyne.Size {
	words := min(look.Body.Width(r.s.text.Text())+1, look.Scaled(560))
	width := whole(words + r.s.row.MinSize().Width + look.SheetPadX + 8)
	return fyne.NewSize(width, r.s.HeightFor(max(width, r.s.Size().Width)))
}

func (r *stripRenderer) Refresh() {
	r.paint()
	r.Layout(r.s.Size())
	r.s.row.Refresh()
	canvas.Refresh(r.s)
}

func (r *stripRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.bar, r.s.row}
}

func (r *stripRenderer) Destroy() {}
