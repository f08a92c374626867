package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Ground is a large rounded box with an edge of whole px, put together from plain
// rectangles with a small round piece at each corner: a rounded rectangle costs both
// painters so much for each px that a sheet of one piece takes as long to draw as all
// that stands on it.
type Ground struct {
	// lines are the edge above, below, left and right; bands the ground between the
	// upper corners, across the whole width, and between the lower ones.
	lines [4]*canvas.Rectangle
	bands [3]*canvas.Rectangle
	// edges and corners are the round pieces, the second upon the first.
	edges, corners [4]*canvas.Circle
	width, radius  float32
}

// NewGround makes a box; it has no colours until it is painted.
func NewGround() *Ground {
	g := &Ground{}
	for i := range g.lines {
		g.lines[i] = canvas.NewRectangle(color.Transparent)
		g.edges[i], g.corners[i] = canvas.NewCircle(color.Transparent), canvas.NewCircle(color.Transparent)
	}
	for i := range g.bands {
		g.bands[i] = canvas.NewRectangle(color.Transparent)
	}
	return g
}

// Paint sets the colours, the width of the edge and the radius, in px.
func (g *Ground) Paint(ground, edge color.Color, width, radius float32) {
	g.width, g.radius = width, radius
	for i := range g.lines {
		g.lines[i].FillColor, g.edges[i].FillColor, g.corners[i].FillColor = edge, edge, ground
	}
	for _, b := range g.bands {
		b.FillColor = ground
	}
}

// Place moves the box; its edge lies inside the size.
func (g *Ground) Place(at fyne.Position, size fyne.Size) {
	w, r := g.width, min(g.radius, size.Width/2, size.Height/2)
	put := func(o fyne.CanvasObject, x, y, width, height float32) {
		o.Move(at.AddXY(x, y))
		o.Resize(fyne.NewSize(max(width, 0), max(height, 0)))
	}
	put(g.lines[0], r, 0, size.Width-2*r, w)
	put(g.lines[1], r, size.Height-w, size.Width-2*r, w)
	put(g.lines[2], 0, r, w, size.Height-2*r)
	put(g.lines[3], size.Width-w, r, w, size.Height-2*r)
	put(g.bands[0], r, w, size.Width-2*r, r-w)
	put(g.bands[1], w, r, size.Width-2*w, size.Height-2*r)
	put(g.bands[2], r, size.Height-r, size.Width-2*r, r-w)
	for i := range g.edges {
		x, y := float32(i%2)*(size.Width-2*r), float32(i/2)*(size.Height-2*r)
		put(g.edges[i], x, y, 2*r, 2*r)
		put(g.corners[i], x+w, y+w, 2*(r-w), 2*(r-w))
	}
}

// With lists the box and what lies upon it, for a renderer.
func (g *Ground) With(upon ...fyne.CanvasObject) []fyne.CanvasObject {
	list := make([]fyne.CanvasObject, 0, 2*len(g.edges)+len(g.bands)+len(g.lines)+len(upon))
	for i := range g.edges {
		list = append(list, g.edges[i], g.corners[i])
	}
	for _, b := range g.bands {
		list = append(list, b)
	}
	for _, l := range g.lines {
		list = append(list, l)
	}
	return append(list, upon...)
}
