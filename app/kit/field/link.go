package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"

	"ebbwell/app/kit/look"
)

// Link is underlined words that lead somewhere: "why". It is as high as a
// pointer needs, with its words in the middle.
type Link struct {
	control
	// OnPressed is where it leads.
	OnPressed func()

	text  string
	style look.Style
}

var _ Field = (*Link)(nil)

// NewLink makes a link in note style.
func NewLink(h *Host, name, text string, pressed func()) *Link {
	l := &Link{OnPressed: pressed, text: text, style: look.Note}
	l.init(l, h, name)
	return l
}

// SetText changes the words.
func (l *Link) SetText(text string) {
	if l.text == text {
		return
	}
	l.text = text
	l.Refresh()
}

// SetStyle changes size and weight of the words.
func (l *Link) SetStyle(s look.Style) {
	l.style = s
	l.Refresh()
}

// Tapped follows the link.
func (l *Link) Tapped(*fyne.PointEvent) {
	if l.press() {
		l.Press()
	}
}

// Press follows the link, unless it is disabled.
func (l *Link) Press() {
	if !l.Disabled() && l.OnPressed != nil {
		l.OnPressed()
	}
}

// TypedKey follows the link at Enter and Space.
func (l *Link) TypedKey(e *fyne.KeyEvent) {
	l.keyed()
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		l.Press()
	default:
		l.host.Key(e)
	}
}

// AccessibilityLabel is the words.
func (l *Link) AccessibilityLabel() string { return l.text }

// AccessibilityRole is link.
func (l *Link) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleLink }

// Cursor is the pointing hand.
func (l *Link) Cursor() desktop.Cursor { return desktop.PointerCursor }

// top is the room above the words.
func (l *Link) top() float32 { return whole((l.high() - l.style.Height()) / 2) }

// high is the height of the link.
func (l *Link) high() float32 { return max(l.style.Height()+8, 24) }

// Baseline is where the words stand.
func (l *Link) Baseline() float32 { return l.top() + l.style.Baseline() }

// CreateRenderer draws the words and the line under them.
func (l *Link) CreateRenderer() fyne.WidgetRenderer {
	r := &linkRenderer{l: l, text: canvas.NewText("", nil), under: canvas.NewRectangle(nil), ring: newRing()}
	r.set()
	return r
}

type linkRenderer struct {
	l           *Link
	text        *canvas.Text
	under, ring *canvas.Rectangle
}

func (r *linkRenderer) set() {
	l, p := r.l, look.PaletteNow()
	ink := p.Ink
	if l.Disabled() {
		ink = p.Ink3
	}
	width := l.style.Width(l.text)
	look.Write(r.text, l.style, ink, l.text, fyne.NewPos(LinkPad, l.top()), width)
	thick := float32(1)
	if l.hovered && !l.Disabled() {
		thick = 2
	}
	r.under.FillColor = ink
	r.under.Move(fyne.NewPos(LinkPad, l.Baseline()+2))
	r.under.Resize(fyne.NewSize(width, thick))
	placeRing(r.ring, p.Ink, fyne.Position{}, fyne.NewSize(width+2*LinkPad, r.MinSize().Height))
	show(r.ring, l.ringed())
}

// leastTarget is the least width of what is pointed at, px (WCAG 2.2, success
// criterion 2.5.8).
const leastTarget float32 = 24

// LinkPad is the room beside the words of a link for the focus border, in px: a
// link at the left of a sheet is moved out by it.
const LinkPad float32 = 4

func (r *linkRenderer) Layout(fyne.Size) { r.set() }

func (r *linkRenderer) MinSize() fyne.Size {
	return fyne.NewSize(max(r.l.style.Width(r.l.text)+2*LinkPad, leastTarget), r.l.high())
}

func (r *linkRenderer) Refresh() {
	r.set()
	canvas.Refresh(r.l)
}

func (r *linkRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ring, r.text, r.under}
}

func (r *linkRenderer) Destroy() {}
