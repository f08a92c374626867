package field

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// Kind is how much a [Button] stands out.
type Kind int

// The kinds.
const (
	// Outline is the usual button.
	Outline Kind = iota
	// Primary is paper on ink: the one thing to do next.
	Primary
	// Quiet has no outline until it is pointed at.
	Quiet
	// Warning has the bar of ink of a caution and opens more about it.
	Warning
)

// ButtonPad is the room beside the words of a button, in px.
const ButtonPad float32 = 14

// warningBar is the width of the bar of a [Warning], warningOpen that of the sign that
// it opens, with the room before it, in px.
const (
	warningBar  float32 = 3
	warningOpen float32 = 18
)

// Button is pressed by click, Enter or Space.
type Button struct {
	control
	// OnPressed is what it does.
	OnPressed func()

	text, hint string
	kind       Kind
}

var _ Field = (*Button)(nil)

// NewButton makes a button.
func NewButton(h *Host, name, text string, kind Kind, pressed func()) *Button {
	b := &Button{OnPressed: pressed, text: text, kind: kind}
	b.init(b, h, name)
	return b
}

// Text returns the words on the button.
func (b *Button) Text() string { return b.text }

// SetText changes the words on the button.
func (b *Button) SetText(text string) {
	if b.text == text {
		return
	}
	b.text = text
	b.Refresh()
}

// SetHint shows a key beside the words, in note style: "Enter".
func (b *Button) SetHint(key string) {
	b.hint = key
	b.Refresh()
}

// SetKind changes how much the button stands out.
func (b *Button) SetKind(kind Kind) {
	if b.kind == kind {
		return
	}
	b.kind = kind
	b.Refresh()
}

// Press does what the button does, unless it is disabled.
func (b *Button) Press() {
	if !b.Disabled() && b.OnPressed != nil {
		b.OnPressed()
	}
}

// Tapped presses the button.
func (b *Button) Tapped(*fyne.PointEvent) {
	if b.press() {
		b.Press()
	}
}

// TypedKey presses at Enter and Space.
func (b *Button) TypedKey(e *fyne.KeyEvent) {
	b.keyed()
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		b.Press()
	default:
		b.host.Key(e)
	}
}

// AccessibilityLabel is the words on the button, or longer ones that were given.
func (b *Button) AccessibilityLabel() string {
	if b.spoken != "" {
		return b.spoken
	}
	return b.text
}

// AccessibilityRole is button.
func (b *Button) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// style of the words.
func (b *Button) style() look.Style {
	if b.kind == Primary || b.kind == Warning {
		return look.Strong
	}
	return look.Body
}

// Baseline is where the words stand.
func (b *Button) Baseline() float32 {
	return float32(int((look.ControlHeight()-look.Body.Height())/2)) + look.Body.Baseline()
}

// CreateRenderer draws box, words and hint.
func (b *Button) CreateRenderer() fyne.WidgetRenderer {
	r := &buttonRenderer{b: b, box: look.NewOutline(), ring: canvas.NewRectangle(color.Transparent)}
	r.text, r.hint = canvas.NewText("", nil), canvas.NewText("", nil)
	r.bar, r.opener = canvas.NewRectangle(color.Transparent), look.NewTriangle(nil)
	r.opener.Points = []fyne.Position{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 0.5, Y: 1}}
	r.set()
	return r
}

type buttonRenderer struct {
	b          *Button
	box        *look.Outline
	ring       *canvas.Rectangle
	text, hint *canvas.Text
	bar        *canvas.Rectangle
	opener     *canvas.ArbitraryPolygon
}

func (r *buttonRenderer) set() {
	b, p := r.b, look.PaletteNow()
	ink, soft := r.paint(p)
	size := fyne.NewSize(b.Size().Width, look.ControlHeight())
	r.box.Place(fyne.Position{}, size)
	r.ring.CornerRadius, r.ring.StrokeWidth = look.ControlRadius-2, 2
	r.ring.StrokeColor = p.Paper
	r.ring.Move(fyne.NewPos(4, 4))
	r.ring.Resize(size.SubtractWidthHeight(8, 8))
	show(r.ring, b.ringed() && b.kind == Primary && !b.Disabled())
	s, width := b.style(), b.textWidth()
	x := float32(int((size.Width - width) / 2))
	look.Write(r.text, s, ink, b.text, fyne.NewPos(x, b.Baseline()-s.Baseline()), s.Width(b.text))
	key := look.Note.Width(b.hint)
	look.Write(r.hint, look.Note, soft, b.hint, fyne.NewPos(x+width-key, b.Baseline()-look.Note.Baseline()), key)
	r.setWarning(p, x+width)
}

// setWarning sets the bar and the sign that it opens, before an edge.
func (r *buttonRenderer) setWarning(p look.Palette, edge float32) {
	on, side := r.b.kind == Warning, look.Scaled(8)
	show(r.bar, on)
	show(r.opener, on)
	r.bar.FillColor, r.opener.FillColor = p.Ink, p.Ink
	r.bar.Resize(fyne.NewSize(warningBar, look.ControlHeight()))
	r.opener.Move(fyne.NewPos(edge-side, float32(int((look.ControlHeight()-side*0.6)/2+0.5))))
	r.opener.Resize(fyne.NewSize(side, float32(int(side*0.6+0.5))))
}

// paint colours the box and returns the inks of words and hint.
func (r *buttonRenderer) paint(p look.Palette) (ink, soft color.Color) {
	b := r.b
	paintBox(r.box, p, &b.control)
	r.box.Show(b.kind != Quiet || !b.Disabled() && (b.ringed() || b.hovered))
	switch {
	case b.Disabled():
		if p.Dark { // without an edge it would read as words
			r.box.Paint(p.Paper, p.Hairline, 1, look.ControlRadius)
		}
		return p.Ink3, p.Ink3
	case b.kind == Primary:
		ground := p.Ink
		if b.hovered && !b.ringed() {
			ground = look.Mix(p.Ink, p.Paper, 0.14)
		}
		r.box.Paint(ground, ground, 1, look.ControlRadius)
		return p.Paper, p.Hairline
	case b.kind == Warning && !b.ringed():
		edge := p.Sunk
		if b.hovered {
			edge = p.Ink2
		}
		r.box.Paint(p.Sunk, edge, 1, 0)
	case b.hovered && !b.ringed():
		r.box.Paint(look.Mix(p.Sheet, p.Sunk, 0.5), p.Ink2, 1, look.ControlRadius)
	}
	return p.Ink, p.Ink2
}

// WidthFor is how wide the button is with other words on it, in px.
func (b *Button) WidthFor(text string) float32 {
	return float32(int(b.wordsWidth(text) + 2*ButtonPad + 0.99))
}

// textWidth is the width of words and hint.
func (b *Button) textWidth() float32 { return b.wordsWidth(b.text) }

func (b *Button) wordsWidth(text string) float32 {
	w := b.style().Width(text)
	if b.kind == Warning {
		w += look.Scaled(warningOpen)
	}
	if b.hint != "" {
		w += 10 + look.Note.Width(b.hint)
	}
	return w
}

func (r *buttonRenderer) Layout(fyne.Size) { r.set() }

func (r *buttonRenderer) MinSize() fyne.Size {
	return fyne.NewSize(r.b.WidthFor(r.b.text), look.ControlHeight())
}

func (r *buttonRenderer) Refresh() {
	r.set()
	canvas.Refresh(r.b)
}

func (r *buttonRenderer) Objects() []fyne.CanvasObject {
	return r.box.With(r.ring, r.bar, r.text, r.hint, r.opener)
}

func (r *buttonRenderer) Destroy() {}
