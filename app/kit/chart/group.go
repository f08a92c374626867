package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// CurvePoint is a place on the curve of a group.
type CurvePoint struct {
	At, Density float64
}

// GroupData is what a [GroupPlace] shows.
type GroupData struct {
	// Curve is how the values of the group are spread; in order of At.
	Curve []CurvePoint
	// Mark is the athlete's value, Range its 95 % range when Ranged.
	Mark   float64
	Range  Span
	Ranged bool
	Ticks  []Tick
	// Text says the place in words, Note which group it is.
	Text, Note string
	Summary    string
}

// GroupPlace draws where a value lies in a published group: a hump with a
// mark, and the place in words under it.
type GroupPlace struct {
	base
	data GroupData
}

// NewGroupPlace makes an empty picture.
func NewGroupPlace() *GroupPlace {
	c := &GroupPlace{}
	c.start(c, func() fyne.Size { return fyne.NewSize(look.Scaled(220), look.Scaled(60)+c.foot()) }, c.paint)
	return c
}

// foot is the room of the texts below the hump.
func (c *GroupPlace) foot() float32 {
	return look.Note.Pitch() + look.Body.Height() + look.Note.Height() + look.Scaled(12)
}

// Set shows other data. The slices are copied.
func (c *GroupPlace) Set(d GroupData) {
	kept := c.data
	c.data = d
	c.data.Curve = append(kept.Curve[:0], d.Curve...)
	c.data.Ticks = append(kept.Ticks[:0], d.Ticks...)
	c.summary = d.Summary
	c.redraw()
}

func (c *GroupPlace) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	if len(d.Curve) < 2 {
		c.say(size)
		return
	}
	ground := px(size.Height - c.foot())
	across := scale{from: d.Curve[0].At, to: d.Curve[len(d.Curve)-1].At, start: look.Scaled(6), end: size.Width - look.Scaled(6)}
	across.to, across.from = reach(across.to, across.from, d.Mark)
	up := scale{from: 0, to: 1e-9, start: ground, end: look.Scaled(8)}
	for _, p := range d.Curve {
		up.to = max(up.to, length(p.Density))
	}
	for i := 1; i < len(d.Curve); i++ {
		a, b := d.Curve[i-1], d.Curve[i]
		c.pen.quad(across.at(a.At), up.inside(a.Density), ground, across.at(b.At)+0.4, up.inside(b.Density), ground, k.Sunk)
	}
	for i := 1; i < len(d.Curve); i++ {
		a, b := d.Curve[i-1], d.Curve[i]
		c.pen.line(across.at(a.At), up.inside(a.Density), across.at(b.At), up.inside(b.Density), 1, k.Ink3)
	}
	if d.Ranged {
		x1, x2 := across.inside(d.Range.Low), across.inside(d.Range.High)
		c.pen.rect(x1, ground-3, max(x2-x1, 1), 3, k.Loss)
	}
	c.pen.rect(across.start, ground, across.end-across.start, 1, k.Ink2)
	x := across.inside(d.Mark)
	c.pen.rect(x-1, look.Scaled(8), 2, ground-look.Scaled(8), k.Loss)
	c.pen.dot(x, look.Scaled(8), look.Scaled(5), k.Loss, nil)
	c.pen.ticks(d.Ticks, across, ground+look.Scaled(3), size.Width)
	y := ground + look.Scaled(8) + look.Note.Pitch()
	c.pen.text(d.Text, 0, y, size.Width, look.Body, k.Ink, left)
	c.pen.text(d.Note, 0, y+look.Body.Height(), size.Width, look.Note, k.Ink2, left)
}
