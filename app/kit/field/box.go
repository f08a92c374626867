package field

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// paintBox colours the outline of something that can be typed in or pressed.
func paintBox(o *look.Outline, p look.Palette, c *control) {
	switch {
	case c.Disabled() && p.Dark:
		// a darker box would look like one to type in
		o.Paint(color.Transparent, color.Transparent, 1, look.ControlRadius)
	case c.Disabled():
		// ink 3 can be read on paper, and not on a darker ground
		o.Paint(p.Paper, p.Hairline, 1, look.ControlRadius)
	case c.ringed():
		o.Paint(p.Sheet, p.Ink, 2, look.ControlRadius)
	case c.hovered:
		o.Paint(p.Sheet, p.Ink2, 1, look.ControlRadius)
	default:
		o.Paint(p.Sheet, p.Edge, 1, look.ControlRadius)
	}
}

// newRing makes the border of ink that shows the focus where there is no box.
func newRing() *canvas.Rectangle {
	r := canvas.NewRectangle(color.Transparent)
	r.StrokeWidth, r.CornerRadius = 2, look.ControlRadius
	return r
}

// placeRing puts a ring into a size so that its stroke stays inside.
func placeRing(r *canvas.Rectangle, ink color.Color, at fyne.Position, size fyne.Size) {
	r.StrokeColor = ink
	r.Move(at.AddXY(1, 1))
	r.Resize(size.SubtractWidthHeight(2, 2))
}

// show shows or hides an object and reports whether that changed anything; it
// leaves the drawing to whoever asked.
func show(o fyne.CanvasObject, on bool) bool {
	if o.Visible() == on {
		return false
	}
	if on {
		o.Show()
	} else {
		o.Hide()
	}
	return true
}
