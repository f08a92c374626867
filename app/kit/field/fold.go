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

// lines are the name as it stands in a width, in one line or two.
func (f *Fold) lines(width float32) ([]string, look.Style) {
	return look.NameLines(f.text, look.Strong, max(width-look.Scaled(FoldIndent), 1))
}

// HeightFor is the height at a width.
func (f *Fold) HeightFor(width float32) float32 {
	lines, style := f.lines(width)
	return max(float32(len(lines)-1)*style.Pitch()+look.Strong.Height()+4, 24)
}

// one is the height of one line.
func (*Fold) one() float32 { return max(look.Strong.Height()+4, 24) }

func (f *Fold) top() float32 { return whole((f.one() - look.Strong.Height()) / 2) }

// FoldIndent is how far the name of a [Fold] stands in, px at 100 % text.
const FoldIndent float32 = 18

// CreateRenderer draws triangle and name.
func (f *Fold) CreateRenderer() fyne.WidgetRenderer {
	r := &foldRenderer{f: f, text: canvas.NewText("", nil), second: canvas.NewText("", nil), ring: newRing(), tip: look.NewTriangle(nil)}
	r.set()
	return r
}

type foldRenderer struct {
	f *Fold
	// second is the second line of a long name.
	text, second *canvas.Text
	tip          *canvas.ArbitraryPolygon
	ring         *canvas.Rectangle
}

func (r *foldRenderer) set() {
	f, p := r.f, look.PaletteNow()
	width := max(f.Size().Width-look.Scaled(FoldIndent), 1)
	lines, style := f.lines(f.Size().Width)
	at := fyne.NewPos(look.Scaled(FoldIndent), f.top()+look.Strong.Baseline()-style.Baseline())
	look.Write(r.text, style, p.Ink, lines[0], at, width)
	r.second.Text = ""
	if len(lines) > 1 {
		look.Write(r.second, style, p.Ink, lines[1], at.AddXY(0, style.Pitch()), width)
	}
	side := look.Scaled(9)
	points := []fyne.Position{{X: 0, Y: 0}, {X: 0.7, Y: 0.5}, {X: 0, Y: 1}}
	if f.open {
		points = []fyne.Position{{X: 0, Y: 0.15}, {X: 1, Y: 0.15}, {X: 0.5, Y: 0.85}}
	}
	r.tip.Points, r.tip.FillColor = points, p.Ink
	r.tip.Move(fyne.NewPos(0, whole(f.one()/2-side/2)))
	r.tip.Resize(fyne.NewSquareSize(side))
	placeRing(r.ring, p.Ink, fyne.NewPos(-checkRing, 0), fyne.NewSize(f.Size().Width+checkRing, f.HeightFor(f.Size().Width)))
	show(r.ring, f.ringed())
}

func (r *foldRenderer) Layout(fyne.Size) { r.set() }

func (r *foldRenderer) MinSize() fyne.Size {
	return fyne.NewSize(look.Scaled(FoldIndent)+min(look.Strong.Width(r.f.text), look.Scaled(160))+1, r.f.one())
}

func (r *foldRenderer) Refresh() {
	r.set()
	canvas.Refresh(r.f)
}

func (r *foldRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ring, r.tip, r.text, r.second}
}

func (r *foldRenderer) Destroy() {}
