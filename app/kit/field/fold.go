package field

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"

	"ebbwell/app/kit/look"
)

// Fold is a name with a triangle that shows and hides what belongs to it. Enter
// and Space turn it; right opens and left closes it.
type Fold struct {
	control
	// OnTurned is told whether it is open now.
	OnTurned func(open bool)

	text string
	open bool
}

var _ Field = (*Fold)(nil)

// NewFold makes a closed one.
func NewFold(h *Host, name, text string) *Fold {
	f := &Fold{text: text}
	f.init(f, h, name)
	return f
}

// Text is the name.
func (f *Fold) Text() string { return f.text }

// Set changes name and state; nobody is told.
func (f *Fold) Set(text string, open bool) {
	if f.text != text || f.open != open {
		f.text, f.open = text, open
		f.Refresh()
	}
}

// Open reports whether it is open.
func (f *Fold) Open() bool { return f.open }

// turn opens or closes it for the person.
func (f *Fold) turn(open bool) {
	if f.Disabled() || f.open == open {
		return
	}
	f.open = open
	f.Refresh()
	tell(f.OnTurned, open)
}

// Tapped turns it.
func (f *Fold) Tapped(*fyne.PointEvent) {
	if f.press() {
		f.turn(!f.open)
	}
}

// TypedKey turns it.
func (f *Fold) TypedKey(e *fyne.KeyEvent) {
	f.keyed()
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		f.turn(!f.open)
	case fyne.KeyRight:
		f.turn(true)
	case fyne.KeyLeft:
		f.turn(false)
	default:
		f.host.Key(e)
	}
}

// AccessibilityLabel is the name.
func (f *Fold) AccessibilityLabel() string { return f.text }

// AccessibilityRole is button.
func (f *Fold) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// Cursor is the pointing hand.
func (f *Fold) Cursor() desktop.Cursor { return desktop.PointerCursor }

// Baseline is where the name stands.
func (f *Fold) Baseline() float32 { return f.top() + look.Strong.Baseline() }

func (f *Fold) high() float32 { return max(look.Strong.Height()+4, 24) }

func (f *Fold) top() float32 { return whole((f.high() - look.Strong.Height()) / 2) }

// FoldIndent is how far the name of a [Fold] stands in, px at 100 % text.
const FoldIndent float32 = 18

// CreateRenderer draws triangle and name.
func (f *Fold) CreateRenderer() fyne.WidgetRenderer {
	r := &foldRenderer{f: f, text: canvas.NewText("", nil), ring: newRing(), tip: look.NewTriangle(nil)}
	r.set()
	return r
}

type foldRenderer struct {
	f    *Fold
	text *canvas.Text
	tip  *canvas.ArbitraryPolygon
	ring *canvas.Rectangle
}

func (r *foldRenderer) set() {
	f, p := r.f, look.PaletteNow()
	width := f.Size().Width - look.Scaled(FoldIndent)
	look.Write(r.text, look.Strong, p.Ink, look.Ellipsis(f.text, look.Strong, max(width, 1)), fyne.NewPos(look.Scaled(FoldIndent), f.top()), max(width, 1))
	side := look.Scaled(9)
	points := []fyne.Position{{X: 0, Y: 0}, {X: 0.7, Y: 0.5}, {X: 0, Y: 1}}
	if f.open {
		points = []fyne.Position{{X: 0, Y: 0.15}, {X: 1, Y: 0.15}, {X: 0.5, Y: 0.85}}
	}
	r.tip.Points, r.tip.FillColor = points, p.Ink
	r.tip.Move(fyne.NewPos(0, whole(f.high()/2-side/2)))
	r.tip.Resize(fyne.NewSquareSize(side))
	placeRing(r.ring, p.Ink, fyne.NewPos(-checkRing, 0), fyne.NewSize(f.Size().Width+checkRing, f.high()))
	show(r.ring, f.ringed())
}

func (r *foldRenderer) Layout(fyne.Size) { r.set() }

func (r *foldRenderer) MinSize() fyne.Size {
	return fyne.NewSize(look.Scaled(FoldIndent)+min(look.Strong.Width(r.f.text), look.Scaled(160))+1, r.f.high())
}

func (r *foldRenderer) Refresh() {
	r.set()
	canvas.Refresh(r.f)
}

func (r *foldRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ring, r.tip, r.text}
}

func (r *foldRenderer) Destroy() {}
