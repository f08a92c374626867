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
	// wraps: the words may stand in several lines.
	wraps bool
}

var _ Field = (*Check)(nil)

// NewCheck makes an empty box with words beside it.
func NewCheck(h *Host, name, text string) *Check {
	c := &Check{text: text}
	c.init(c, h, name)
	return c
}

// Wrap lets the words stand in several lines where they have no room in one, and returns
// the box.
func (c *Check) Wrap() *Check {
	c.wraps = true
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

// beside is how far right of the box's own edge the words begin, px.
func (c *Check) beside() float32 { return look.Scaled(16) + 8 }

// leastWrapped is the least width of words that may stand in several lines, px at 100 %.
const leastWrapped float32 = 180

// rows are the words in lines at a width.
func (c *Check) rows(width float32) []string {
	if !c.wraps || width <= 0 {
		return []string{c.text}
	}
	return look.Wrap(c.text, look.Body, width-c.beside()-checkRing)
}

// HeightFor returns the height at a width.
func (c *Check) HeightFor(width float32) float32 {
	return c.line() + float32(len(c.rows(width))-1)*look.Body.Pitch()
}

// line is the height of one line of words.
func (c *Check) line() float32 { return max(look.Body.Height()+8, 26) }

// Baseline is where the words stand.
func (c *Check) Baseline() float32 {
	return float32(int((c.line()-look.Body.Height())/2)) + look.Body.Baseline()
}

// CreateRenderer draws box, tick and words.
func (c *Check) CreateRenderer() fyne.WidgetRenderer {
	r := &checkRenderer{c: c, box: look.NewOutline(), ring: newRing()}
	r.tick = canvas.NewText("", nil)
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
	// lines are the words, a line each.
	lines []*canvas.Text
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
	rows := c.rows(c.Size().Width)
	for len(r.lines) < len(rows) {
		r.lines = append(r.lines, canvas.NewText("", nil))
	}
	widest := float32(0)
	r.lines = r.lines[:len(rows)]
	for i, text := range rows {
		width := look.Body.Width(text)
		widest = max(widest, width)
		look.Write(r.lines[i], look.Body, ink, text, fyne.NewPos(c.beside(), c.Baseline()-look.Body.Baseline()+float32(i)*look.Body.Pitch()), width)
	}
	ring := fyne.NewSize(float32(int(widest+c.beside()+2*checkRing+0.99)), c.HeightFor(c.Size().Width))
	placeRing(r.ring, p.Ink, fyne.NewPos(-checkRing, 0), ring)
	show(r.ring, c.ringed())
}

func (r *checkRenderer) Layout(fyne.Size) { r.set() }

func (r *checkRenderer) MinSize() fyne.Size {
	words := look.Body.Width(r.c.text)
	if r.c.wraps {
		words = min(words, look.Scaled(leastWrapped))
	}
	return fyne.NewSize(float32(int(words+r.c.beside()+checkRing+0.99)), r.c.HeightFor(r.c.Size().Width))
}

func (r *checkRenderer) Refresh() {
	r.set()
	canvas.Refresh(r.c)
}

func (r *checkRenderer) Objects() []fyne.CanvasObject {
	list := r.box.With(r.tick, r.ring)
	for _, line := range r.lines {
		list = append(list, line)
	}
	return list
}

func (r *checkRenderer) Destroy() {}
