package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// shape is a small mark that takes its colour from the theme.
type shape struct {
	widget.BaseWidget
	min    func() fyne.Size
	object fyne.CanvasObject
	paint  func(Palette)
	// place puts the drawing into a size: at the left unless said otherwise.
	place func(fyne.Size)
}

func newShape(object fyne.CanvasObject, size func() fyne.Size, paint func(Palette)) *shape {
	s := &shape{min: size, object: object, paint: paint}
	s.place = func(room fyne.Size) {
		least := size()
		object.Resize(least)
		object.Move(fyne.NewPos(0, round((room.Height-least.Height)/2)))
	}
	s.ExtendBaseWidget(s)
	return s
}

// CreateRenderer draws the mark.
func (s *shape) CreateRenderer() fyne.WidgetRenderer {
	s.paint(PaletteNow())
	return &shapeRenderer{s}
}

type shapeRenderer struct{ s *shape }

func (r *shapeRenderer) Layout(size fyne.Size)        { r.s.place(size) }
func (r *shapeRenderer) MinSize() fyne.Size           { return r.s.min() }
func (r *shapeRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.s.object} }
func (r *shapeRenderer) Destroy()                     {}
func (r *shapeRenderer) Refresh() {
	r.s.paint(PaletteNow())
	r.s.place(r.s.Size())
	r.s.object.Refresh()
}

// NewRule makes a hairline: 1 px, filling the width or height it is given.
func NewRule() fyne.Widget {
	r := canvas.NewRectangle(nil)
	least := func() fyne.Size { return fyne.NewSize(1, 1) }
	s := newShape(r, least, func(p Palette) { r.FillColor = p.Hairline })
	s.place = func(size fyne.Size) { r.Resize(size) }
	return s
}

// Swatch is a small square in the hue of a substance, with an edge of ink 3 so that it
// can be told from every ground.
type Swatch struct{ *shape }

// NewSwatch makes the square of a substance; it stands on the baseline.
func NewSwatch(of Substance) *Swatch {
	r := canvas.NewRectangle(nil)
	r.CornerRadius, r.StrokeWidth = 2, 1
	side := func() fyne.Size { return fyne.NewSquareSize(Scaled(10)) }
	return &Swatch{newShape(r, side, func(p Palette) { r.FillColor, r.StrokeColor = p.Hue(of), p.Ink3 })}
}

// Baseline puts the square on the line.
func (s *Swatch) Baseline() float32 { return s.min().Height }

// Band is a small piece of a band of advice.
type Band struct{ *shape }

// NewBand makes it; it stands on the baseline.
func NewBand() *Band {
	r := canvas.NewRectangle(nil)
	r.StrokeWidth = 1
	size := func() fyne.Size { return fyne.NewSize(Scaled(14), Scaled(10)) }
	return &Band{newShape(r, size, func(p Palette) { r.FillColor, r.StrokeColor = Mix(p.Sheet, p.Ink3, 0.26), p.Ink3 })}
}

// Baseline puts the band on the line.
func (b *Band) Baseline() float32 { return b.min().Height }

// NewTriangle draws a filled triangle pointing up, filling its size.
func NewTriangle(fill color.Color) *canvas.ArbitraryPolygon {
	t := canvas.NewArbitraryPolygon([]fyne.Position{{X: 0.5, Y: 0}, {X: 1, Y: 1}, {X: 0, Y: 1}}, fill)
	t.NormalizedPoints = true
	return t
}
