package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Outline is a rounded box with an edge of whole px. It is drawn as one filled
// box upon another: a stroke of 1 px would lie across two rows of pixels and
// be smeared over both.
type Outline struct {
	edge, ground *canvas.Rectangle
	width        float32
}

// NewOutline makes a box; it has no colours until it is painted.
func NewOutline() *Outline {
	return &Outline{edge: canvas.NewRectangle(color.Transparent), ground: canvas.NewRectangle(color.Transparent)}
}

// Paint sets the colours, the width of the edge and the radius, in px.
func (o *Outline) Paint(ground, edge color.Color, width, radius float32) {
	o.ground.FillColor, o.edge.FillColor = ground, edge
	o.edge.CornerRadius, o.ground.CornerRadius = radius, max(radius-width, 0)
	o.width = width
}

// Place moves the box; its edge lies inside the size.
func (o *Outline) Place(at fyne.Position, size fyne.Size) {
	o.edge.Move(at)
	o.edge.Resize(size)
	o.ground.Move(at.AddXY(o.width, o.width))
	o.ground.Resize(fyne.NewSize(max(size.Width-2*o.width, 0), max(size.Height-2*o.width, 0)))
}

// Show shows or hides the box and reports whether that changed anything; it
// draws nothing anew.
func (o *Outline) Show(on bool) bool {
	if o.edge.Hidden != on {
		return false
	}
	o.edge.Hidden, o.ground.Hidden = !on, !on
	return true
}

// With lists the box and what lies upon it, for a renderer.
func (o *Outline) With(upon ...fyne.CanvasObject) []fyne.CanvasObject {
	return append([]fyne.CanvasObject{o.edge, o.ground}, upon...)
}
