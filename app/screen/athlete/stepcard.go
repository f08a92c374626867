package athlete

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// stepCard is a card that opens its step in the planner, by click, Enter or Space.
type stepCard struct {
	widget.BaseWidget
	host             *field.Host
	name             string
	card             card
	picture          *chart.IntakeCard
	open             func()
	hovered, focused bool
}

var (
	_ fyne.Tappable      = (*stepCard)(nil)
	_ fyne.Focusable     = (*stepCard)(nil)
	_ desktop.Hoverable  = (*stepCard)(nil)
	_ desktop.Cursorable = (*stepCard)(nil)
	_ look.Holder        = (*stepCard)(nil)
)

func newStepCard(h *field.Host, name string, c card, open func()) *stepCard {
	s := &stepCard{host: h, name: name, card: c, picture: chart.NewIntakeCard(), open: open}
	s.picture.Set(c.IntakeCardData)
	s.ExtendBaseWidget(s)
	return s
}

// Name is how tests and drivers find the card.
func (s *stepCard) Name() string { return s.name }

// Parts returns the picture on the card.
func (s *stepCard) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{s.picture} }

// AccessibilityLabel is the card in words.
func (s *stepCard) AccessibilityLabel() string { return s.card.Summary }

// AccessibilityRole is button.
func (s *stepCard) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// Tapped opens the step.
func (s *stepCard) Tapped(*fyne.PointEvent) { s.open() }

// TypedKey opens the step at Enter and Space.
func (s *stepCard) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		s.open()
	default:
		s.host.Key(e)
	}
}

// TypedRune has no use for letters.
func (s *stepCard) TypedRune(rune) {}

// FocusGained shows the focus.
func (s *stepCard) FocusGained() { s.focused = true; s.Refresh() }

// FocusLost hides it.
func (s *stepCard) FocusLost() { s.focused = false; s.Refresh() }

// MouseIn shows that the pointer is over the card.
func (s *stepCard) MouseIn(*desktop.MouseEvent) { s.hovered = true; s.Refresh() }

// MouseMoved changes nothing.
func (s *stepCard) MouseMoved(*desktop.MouseEvent) {}

// MouseOut shows that the pointer has gone.
func (s *stepCard) MouseOut() { s.hovered = false; s.Refresh() }

// Cursor is the pointing hand.
func (s *stepCard) Cursor() desktop.Cursor { return desktop.PointerCursor }

// Room inside a card, in px.
const (
	cardPadX float32 = 12
	cardPadY float32 = 8
)

// CreateRenderer draws the frame, in ink for the step in force.
func (s *stepCard) CreateRenderer() fyne.WidgetRenderer {
	r := &stepCardRenderer{s: s, box: look.NewOutline(), ring: canvas.NewRectangle(color.Transparent)}
	r.paint()
	return r
}

type stepCardRenderer struct {
	s    *stepCard
	box  *look.Outline
	ring *canvas.Rectangle
}

func (r *stepCardRenderer) paint() {
	p := look.PaletteNow()
	edge, width := p.Hairline, float32(1)
	if r.s.hovered {
		edge = p.Edge
	}
	if r.s.card.now {
		edge, width = p.Ink, 2
	}
	r.box.Paint(p.Sheet, edge, width, look.ControlRadius)
	r.ring.CornerRadius, r.ring.StrokeWidth, r.ring.StrokeColor = look.ControlRadius-2, 2, color.Transparent
	if r.s.focused {
		r.ring.StrokeColor = p.Ink
	}
}

func (r *stepCardRenderer) Layout(size fyne.Size) {
	r.box.Place(fyne.Position{}, size)
	r.ring.Move(fyne.NewPos(3, 3))
	r.ring.Resize(size.SubtractWidthHeight(6, 6))
	r.s.picture.Move(fyne.NewPos(cardPadX, cardPadY))
	r.s.picture.Resize(size.SubtractWidthHeight(2*cardPadX, 2*cardPadY))
}

func (r *stepCardRenderer) MinSize() fyne.Size {
	return r.s.picture.MinSize().AddWidthHeight(2*cardPadX, 2*cardPadY)
}

func (r *stepCardRenderer) Refresh() {
	r.paint()
	r.Layout(r.s.Size())
	r.s.picture.Refresh()
	canvas.Refresh(r.s)
}

func (r *stepCardRenderer) Objects() []fyne.CanvasObject {
	return r.box.With(r.ring, r.s.picture)
}

func (r *stepCardRenderer) Destroy() {}
