package field

import (
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
	"ebbwell/internal/plain"
)

// Choice is one of a closed list. Enter, Space or Down opens the list, letters
// jump to what begins with them, Left and Right step without opening.
type Choice struct {
	control
	// OnChosen is told the key the person chose.
	OnChosen func(key string)

	options     []Option
	chosen      int
	placeholder string
	least       float32
	typed       typeAhead
	open        *popup
}

// typeAhead gathers letters typed in quick succession.
type typeAhead struct {
	text string
	last time.Time
}

// typeAheadPause is how long letters belong together.
const typeAheadPause = time.Second

var (
	_ Field      = (*Choice)(nil)
	_ popupOwner = (*Choice)(nil)
)

// NewChoice makes a choice with nothing chosen.
func NewChoice(h *Host, name string, options []Option) *Choice {
	c := &Choice{options: options, chosen: -1, least: 120}
	c.init(c, h, name)
	return c
}

// SetPlaceholder sets the words that stand while nothing is chosen.
func (c *Choice) SetPlaceholder(text string) {
	c.placeholder = text
	c.Refresh()
}

// SetLeast sets the least width in px at 100 % text.
func (c *Choice) SetLeast(px float32) {
	c.least = px
	c.Refresh()
}

// SetOptions changes the list; the chosen key stays chosen when it is there.
func (c *Choice) SetOptions(options []Option) {
	key := c.Chosen()
	c.options = options
	c.chosen = optionAt(options, key)
	c.Refresh()
}

// Options returns the list.
func (c *Choice) Options() []Option { return c.options }

// Chosen returns the chosen key, empty when there is none.
func (c *Choice) Chosen() string {
	return chosenOf(c.options, c.chosen).Key
}

// Choose chooses a key, or nothing when it is not in the list; nobody is told.
func (c *Choice) Choose(key string) {
	if i := optionAt(c.options, key); i != c.chosen {
		c.chosen = i
		c.Refresh()
	}
}

// Open shows the list; where nothing is chosen nothing is at hand, so that Enter
// takes nothing unasked.
func (c *Choice) Open() {
	if c.open == nil && !c.Disabled() && len(c.options) > 0 {
		c.open = openPopup(c, c.options, c.chosen)
	}
}

func (c *Choice) pick(i int) {
	if i < 0 || i >= len(c.options) || i == c.chosen {
		return
	}
	c.chosen = i
	c.Refresh()
	tell(c.OnChosen, c.Chosen())
}

func (c *Choice) picked(i int, _ Option) { c.pick(i) }
func (c *Choice) closed()                { c.open = nil }

// letter jumps to the option that begins with what was typed just now.
func (c *Choice) letter(r rune) {
	now := time.Now()
	if now.Sub(c.typed.last) > typeAheadPause {
		c.typed.text = ""
	}
	c.typed.last = now
	c.typed.text += string(r)
	for i, o := range c.options {
		if strings.HasPrefix(plain.Text(o.Text), plain.Text(c.typed.text)) {
			if c.open != nil {
				c.open.list.move(i)
			} else {
				c.pick(i)
			}
			return
		}
	}
}

func (c *Choice) otherKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyHome:
		c.open.list.move(0)
	case fyne.KeyEnd:
		c.open.list.move(len(c.options) - 1)
	case fyne.KeyReturn, fyne.KeyEnter: // nothing was at hand
		if on := canvasOf(c); on != nil {
			Next(on)
		}
	}
}

func (c *Choice) otherShortcut(s fyne.Shortcut) { c.host.shortcut(c, s) }

// Tapped opens the list.
func (c *Choice) Tapped(*fyne.PointEvent) {
	if c.press() {
		c.Open()
	}
}

// TypedRune jumps by letter.
func (c *Choice) TypedRune(r rune) {
	if r != ' ' {
		c.letter(r)
	}
}

// TypedKey opens and steps.
func (c *Choice) TypedKey(e *fyne.KeyEvent) {
	c.keyed()
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace, fyne.KeyDown, fyne.KeyUp:
		c.Open()
	case fyne.KeyLeft:
		c.pick(max(c.chosen, 1) - 1)
	case fyne.KeyRight:
		c.pick(c.chosen + 1)
	case fyne.KeyHome:
		c.pick(0)
	case fyne.KeyEnd:
		c.pick(len(c.options) - 1)
	default:
		c.host.Key(e)
	}
}

// Baseline is where the words stand.
func (c *Choice) Baseline() float32 {
	return float32(int((look.ControlHeight()-look.Body.Height())/2)) + look.Body.Baseline()
}

// CreateRenderer draws the box, the chosen words and a small caret.
func (c *Choice) CreateRenderer() fyne.WidgetRenderer {
	r := &choiceRenderer{c: c, box: look.NewOutline(), text: canvas.NewText("", nil), caret: look.NewTriangle(nil)}
	r.caret.Points = []fyne.Position{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 0.5, Y: 1}}
	r.set()
	return r
}

type choiceRenderer struct {
	c     *Choice
	box   *look.Outline
	text  *canvas.Text
	caret *canvas.ArbitraryPolygon
}

func (r *choiceRenderer) set() {
	c, p, h := r.c, look.PaletteNow(), look.ControlHeight()
	paintBox(r.box, p, &c.control)
	r.box.Place(fyne.Position{}, fyne.NewSize(c.Size().Width, h))
	text, ink := c.placeholder, p.Ink3
	if c.chosen >= 0 && c.chosen < len(c.options) {
		text, ink = c.options[c.chosen].Text, p.Ink
	}
	if c.Disabled() {
		ink = p.Ink2
	}
	side := look.Scaled(8)
	room := c.Size().Width - 2*boxPad - side - unitGap
	look.Write(r.text, look.Body, ink, look.Ellipsis(text, look.Body, room), fyne.NewPos(boxPad, c.Baseline()-look.Body.Baseline()), room)
	r.caret.FillColor = p.Ink2
	r.caret.Move(fyne.NewPos(c.Size().Width-boxPad-side-2, float32(int((h-side*0.6)/2+0.5))))
	r.caret.Resize(fyne.NewSize(side, float32(int(side*0.6+0.5))))
}

func (r *choiceRenderer) Layout(fyne.Size) { r.set() }

func (r *choiceRenderer) MinSize() fyne.Size {
	return fyne.NewSize(look.Scaled(r.c.least), look.ControlHeight())
}

func (r *choiceRenderer) Refresh() {
	r.set()
	canvas.Refresh(r.c)
}

func (r *choiceRenderer) Objects() []fyne.CanvasObject {
	return r.box.With(r.text, r.caret)
}

func (r *choiceRenderer) Destroy() {}
