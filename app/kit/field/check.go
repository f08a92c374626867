package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// Check is a box to tick, with words. Space and Enter turn it.
type Check struct {
	control
	// OnChanged is told the new state.
	OnChanged func(on bool)

	text string
	on   bool
}

var _ Field = (*Check)(nil)

// NewCheck makes an empty box with words beside it.
func NewCheck(h *Host, name, text string) *Check {
	c := &Check{text: text}
	c.init(c, h, name)
	return c
}

// On reports whether the box is ticked.
func (c *Check) On() bool { return c.on }

// Set ticks or clears the box; nobody is told.
func (c *Check) Set(on bool) {
	if c.on == on {
		return
	}
	c.on = on
	c.Refresh()
}

// SetText changes the words.
func (c *Check) SetText(text string) {
	c.text = text
	c.Refresh()
}

func (c *Check) turn() {
	c.Set(!c.on)
	tell(c.OnChanged, c.on)
}

// Tapped turns the box.
func (c *Check) Tapped(*fyne.PointEvent) {
	if c.press() {
		c.turn()
	}
}

// TypedKey turns the box at Space; Enter goes on, as everywhere.
func (c *Check) TypedKey(e *fyne.KeyEvent) {
	c.keyed()
	switch e.Name {
	case fyne.KeySpace:
		c.turn()
	default:
		c.host.Key(e)
	}
}

// AccessibilityRole is button.
func (c *Check) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// HeightFor returns the height; the words stay on one line.
func (c *Check) HeightFor(float32) float32 { return max(look.Body.Height()+8, 26) }

// Baseline is where the words stand.
func (c *Check) Baseline() float32 {
	return float32(int((c.HeightFor(0)-look.Body.Height())/2)) + look.Body.Baseline()
}

// CreateRenderer draws box, tick and words.
func (c *Check) CreateRenderer() fyne.WidgetRenderer {
	r := &checkRenderer{c: c, box: look.NewOutline(), ring: newRing()}
	r.tick, r.text = canvas.NewText("", nil), canvas.NewText("", nil)
	r.set()
	return r
}

// checkRing is how far the focus border stands out at the sides, in px: the box
// itself stands on the line of the fields above it.
const checkRing float32 = 4

type checkRenderer struct {
	c    *Check
	box  *look.Outline
	ring *canvas.Rectangle
	tick *canvas.Text
	text *canvas.Text
}

func (r *checkRenderer) set() {
	c, p := r.c, look.PaletteNow()
	side := look.Scaled(16)
	at := fyne.NewPos(0, float32(int(c.Baseline()-side*0.86)))
	ink, ground, edge := p.Ink, p.Sheet, p.Edge
	switch {
	case c.Disabled():
		ink, ground, edge = p.Ink3, p.Sunk, p.Hairline
	case c.hovered:
		edge = p.Ink2
	}
	if c.on {
		ground, edge = ink, ink
	}
	r.box.Paint(ground, edge, 1, 3)
	r.box.Place(at, fyne.NewSquareSize(side))
	r.tick.Alignment = fyne.TextAlignCenter
	look.Write(r.tick, look.Strong, p.Sheet, checkMark, fyne.NewPos(at.X, c.Baseline()-look.Strong.Baseline()), side)
	show(r.tick, c.on)
	look.Write(r.text, look.Body, ink, c.text, fyne.NewPos(side+8, c.Baseline()-look.Body.Baseline()), look.Body.Width(c.text))
	placeRing(r.ring, p.Ink, fyne.NewPos(-checkRing, 0), r.MinSize().AddWidthHeight(checkRing, 0))
	show(r.ring, c.ringed())
}

func (r *checkRenderer) Layout(fyne.Size) { r.set() }

func (r *checkRenderer) MinSize() fyne.Size {
	return fyne.NewSize(float32(int(look.Body.Width(r.c.text)+look.Scaled(16)+8+checkRing+0.99)), r.c.HeightFor(0))
}

func (r *checkRenderer) Refresh() {
	r.set()
	canvas.Refresh(r.c)
}

func (r *checkRenderer) Objects() []fyne.CanvasObject {
	return r.box.With(r.tick, r.text, r.ring)
}

func (r *checkRenderer) Destroy() {}
