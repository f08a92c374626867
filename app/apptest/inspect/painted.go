package inspect

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Painted is what one picture of a window costs to paint, counted.
type Painted struct {
	// Objects are painted, Outside of them where nothing of them is seen.
	Objects, Outside int
	// Rounded is how many windows rectangles with round corners cover together.
	Rounded float32
}

// PaintedOn counts what a canvas paints.
func PaintedOn(c fyne.Canvas) Painted {
	window := areaOf(fyne.Position{}, c.Size())
	s := &sight{}
	s.look(c.Content(), fyne.Position{}, window)
	var p Painted
	for _, d := range s.drawn {
		p.Objects++
		seen := d.place.and(d.clip)
		if d.place.width() > 0 && d.place.height() > 0 && seen.empty() {
			p.Outside++
			continue
		}
		r, ok := d.object.(*canvas.Rectangle)
		if !ok || r.CornerRadius == 0 || seen.empty() || seenThrough(r.FillColor) && (r.StrokeWidth == 0 || seenThrough(r.StrokeColor)) {
			continue
		}
		p.Rounded += seen.width() * seen.height() / (window.width() * window.height())
	}
	return p
}
