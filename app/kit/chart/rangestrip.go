package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// StripPoint is a measured value on a strip.
type StripPoint struct {
	At   float64
	Name string
}

// StripData is what a [RangeStrip] shows.
type StripData struct {
	Points []StripPoint
	// Range and Middle are drawn when Ranged.
	Range  Span
	Middle float64
	Ranged bool
	// RangeOnly leaves the middle away.
	RangeOnly bool
	// Estimate draws a dashed box round the range.
	Estimate bool
	// Ticks are labelled above; the first and last are the ends, which the
	// data may stretch.
	Ticks   []Tick
	Summary string
}

// RangeStrip draws values and a range on one level line.
type RangeStrip struct {
	base
	data   StripData
	labels []label
}

// NewRangeStrip makes an empty strip.
func NewRangeStrip() *RangeStrip {
	c := &RangeStrip{}
	c.start(c, func() fyne.Size {
		return fyne.NewSize(look.Scaled(240), 2*look.Note.Pitch()+look.Scaled(36))
	}, c.paint)
	return c
}

// Set shows other data. The slices are copied.
func (c *RangeStrip) Set(d StripData) {
	kept := c.data
	c.data = d
	c.data.Points = append(kept.Points[:0], d.Points...)
	c.data.Ticks = append(kept.Ticks[:0], d.Ticks...)
	c.shown(d.Summary)
}

func (c *RangeStrip) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	if len(d.Points) == 0 && !d.Ranged {
		c.say(size)
		return
	}
	at := c.across(size)
	line := px(look.Note.Height() + look.Scaled(16))
	if d.Ranged {
		high := look.Scaled(20)
		x1, x2 := px(at.inside(d.Range.Low)), px(at.inside(d.Range.High))
		if d.Estimate {
			c.pen.round(x1, line-high/2, x2-x1, high, 2, k.area)
			c.pen.dashedBox(x1, line-high/2, max(x2-x1-1, 1), high-1, 22, 3)
		} else {
			c.pen.edged(x1, line-high/2, x2-x1, high, k.area)
		}
	}
	c.pen.rect(at.start, line, at.end-at.start, 1, k.Ink3)
	if d.Ranged && !d.RangeOnly {
		c.pen.rect(at.inside(d.Middle)-3, line-look.Scaled(8), 6, look.Scaled(16), k.Sheet)
		c.pen.rect(at.inside(d.Middle)-1.5, line-look.Scaled(14), 3, look.Scaled(28), k.Loss)
	}
	for _, t := range d.Ticks {
		x := at.at(t.At)
		c.pen.rect(x, line-3, 1, 7, k.Ink3)
	}
	c.pen.ticks(d.Ticks, at, 0, size.Width)
	for _, p := range d.Points {
		c.pen.dot(at.inside(p.At), line+0.5, look.Scaled(6.5), k.Sheet, nil)
		c.pen.dot(at.inside(p.At), line+0.5, look.Scaled(5), k.Loss, nil)
	}
	c.paintNames(at, line+look.Scaled(16), size)
}

// across is the scale: the ticks, and the data where they go beyond.
func (c *RangeStrip) across(size fyne.Size) scale {
	d := &c.data
	at := scale{from: 0, to: 1, start: look.Scaled(30), end: size.Width - look.Scaled(30)}
	if n := len(d.Ticks); n > 1 {
		at.from, at.to = d.Ticks[0].At, d.Ticks[n-1].At
	}
	for _, p := range d.Points {
		at.to, at.from = reach(at.to, at.from, p.At)
	}
	if d.Ranged {
		at.to, at.from = reach(at.to, at.from, d.Range.High)
		at.to, at.from = reach(at.to, at.from, d.Range.Low)
	}
	return at
}

// paintNames writes the names of the points, which may lie in any order,
// below the line where they all fit.
func (c *RangeStrip) paintNames(at scale, y float32, size fyne.Size) {
	d := &c.data
	c.labels = c.labels[:0]
	for _, p := range d.Points {
		c.labels = append(c.labels, label{at: at.inside(p.At), width: min(look.Note.Width(p.Name), size.Width/2)})
	}
	placed := c.spreadUnordered(size)
	for i, p := range d.Points {
		if !placed {
			p.Name = ""
		}
		c.pen.text(p.Name, c.labels[i].x, y, c.labels[i].width, look.Note, c.pen.ink.Ink2, left)
	}
}

// spreadUnordered spreads labels that are not in order: it sorts them and the
// points together by where they are.
func (c *RangeStrip) spreadUnordered(size fyne.Size) bool {
	for i := 1; i < len(c.labels); i++ {
		for j := i; j > 0 && c.labels[j].at < c.labels[j-1].at; j-- {
			c.labels[j], c.labels[j-1] = c.labels[j-1], c.labels[j]
			c.data.Points[j], c.data.Points[j-1] = c.data.Points[j-1], c.data.Points[j]
		}
	}
	return spread(c.labels, 0, size.Width)
}
