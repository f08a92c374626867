package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// MiniData is what a [MiniBar] shows.
type MiniData struct {
	Parts []Part
	// Max is the end of the scale; what goes beyond is cut off there.
	Max float64
	// Habit is marked with a small line when Marked.
	Habit   float64
	Marked  bool
	Pale    bool
	Summary string
}

// MiniBar is a bar for a cell of a table.
type MiniBar struct {
	base
	data MiniData
}

// NewMiniBar makes an empty bar.
func NewMiniBar() *MiniBar {
	c := &MiniBar{}
	c.start(c, func() fyne.Size { return fyne.NewSize(look.Scaled(48), look.Scaled(10)) }, c.paint)
	return c
}

// Set shows other data. The parts are copied.
func (c *MiniBar) Set(d MiniData) {
	parts := append(c.data.Parts[:0], d.Parts...)
	c.data = d
	c.data.Parts = parts
	c.summary = d.Summary
	c.redraw()
}

func (c *MiniBar) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	thick := look.Scaled(8)
	y := (size.Height - thick) / 2
	at := scale{from: 0, to: max(length(d.Max), 1e-9), start: 0, end: size.Width}
	c.pen.rect(0, y, size.Width, thick, k.Sunk)
	from := 0.0
	for _, part := range d.Parts {
		to := from + length(part.Value)
		x1, x2 := at.inside(from), at.inside(to)
		c.pen.rect(x1, y, x2-x1, thick, k.hue(part.Of, d.Pale))
		from = to
	}
	if d.Marked {
		c.pen.rect(at.inside(d.Habit)-1, y-2, 2, thick+4, k.Ink)
	}
}
