package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Room in a red flag, in px.
const (
	flagBar  float32 = 8
	flagEdge float32 = 2
	flagPad  float32 = 16
)

// Flag is the gravest thing a screen can say: a frame of ink with a wide bar at its
// left, what it is on sunk ground, and below it what to do.
type Flag struct {
	widget.BaseWidget
	head, body fyne.CanvasObject
}

var (
	_ Flowing = (*Flag)(nil)
	_ Holder  = (*Flag)(nil)
)

// NewFlag makes a flag of a head and a body.
func NewFlag(head, body fyne.CanvasObject) *Flag {
	f := &Flag{head: head, body: body}
	f.ExtendBaseWidget(f)
	return f
}

// Parts returns head and body.
func (f *Flag) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{f.head, f.body} }

// heights are those of head and body with their room.
func (f *Flag) heights(width float32) (head, body float32) {
	inner := max(0, width-flagBar-flagEdge-2*flagPad)
	head = HeightFor(f.head, inner) + flagPad + flagEdge
	if f.body.Visible() {
		body = HeightFor(f.body, inner) + flagPad + flagEdge
	}
	return head, body
}

// HeightFor returns the height at a width.
func (f *Flag) HeightFor(width float32) float32 {
	head, body := f.heights(width)
	return head + body
}

// CreateRenderer draws frame, bar and ground.
func (f *Flag) CreateRenderer() fyne.WidgetRenderer {
	r := &flagRenderer{f: f, frame: NewOutline(), bar: canvas.NewRectangle(nil), ground: canvas.NewRectangle(nil)}
	r.Layout(f.Size())
	return r
}

type flagRenderer struct {
	f           *Flag
	frame       *Outline
	bar, ground *canvas.Rectangle
}

func (r *flagRenderer) Layout(size fyne.Size) {
	p, f := PaletteNow(), r.f
	r.frame.Paint(p.Sheet, p.Ink, flagEdge, 0)
	r.frame.Place(fyne.Position{}, size)
	r.bar.FillColor, r.ground.FillColor = p.Ink, p.Sunk
	r.bar.Resize(fyne.NewSize(flagBar, size.Height))
	head, body := f.heights(size.Width)
	r.ground.Move(fyne.NewPos(flagBar, flagEdge))
	r.ground.Resize(fyne.NewSize(max(0, size.Width-flagBar-flagEdge), max(0, head-flagEdge)))
	inner := max(0, size.Width-flagBar-flagEdge-2*flagPad)
	f.head.Move(fyne.NewPos(flagBar+flagPad, flagPad/2))
	f.head.Resize(fyne.NewSize(inner, max(0, head-flagPad)))
	f.body.Move(fyne.NewPos(flagBar+flagPad, head+flagPad/2))
	f.body.Resize(fyne.NewSize(inner, max(0, body-flagPad)))
}

func (r *flagRenderer) MinSize() fyne.Size {
	width := r.f.Size().Width
	if width <= 0 {
		width = Scaled(400)
	}
	return fyne.NewSize(Scaled(200), r.f.HeightFor(width))
}

func (r *flagRenderer) Refresh() {
	r.Layout(r.f.Size())
	canvas.Refresh(r.f)
}

func (r *flagRenderer) Objects() []fyne.CanvasObject {
	return r.frame.With(r.ground, r.bar, r.f.head, r.f.body)
}

func (r *flagRenderer) Destroy() {}
