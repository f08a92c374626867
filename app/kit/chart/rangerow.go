package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// RangeRowData is what a [RangeRow] shows.
type RangeRowData struct {
	// Ticks are the scale, the first and last its ends; Labelled writes them.
	Ticks    []Tick
	Labelled bool
	// Range is drawn when Ranged, with Text behind it; Dashed draws it as the
	// dashed box of an estimate.
	Range  Span
	Ranged bool
	Dashed bool
	Text   string
	// Middle is a dot, drawn when Middled.
	Middle  float64
	Middled bool
	// Points are dots on a level line, named above and below in turn.
	Points  []StripPoint
	Summary string
}

// RangeRow is one row of a column of ranges that share a scale: its head, a
// range, or measured points.
type RangeRow struct {
	base
	data   RangeRowData
	labels []label
}

// NewRangeRow makes an empty row.
func NewRangeRow() *RangeRow {
	c := &RangeRow{}
	c.start(c, func() fyne.Size {
		switch {
		case c.data.Labelled:
			return fyne.NewSize(look.Scaled(140), look.Note.Height())
		case len(c.data.Points) > 0:
			return fyne.NewSize(look.Scaled(140), 2*look.Note.Pitch()+look.Scaled(20))
		}
		return fyne.NewSize(look.Scaled(140), look.Scaled(36))
	}, c.paint)
	return c
}

// Set shows other data. The slices are copied.
func (c *RangeRow) Set(d RangeRowData) {
	kept := c.data
	c.data = d
	c.data.Ticks = append(kept.Ticks[:0], d.Ticks...)
	c.data.Points = append(kept.Points[:0], d.Points...)
	c.shown(d.Summary)
}

// rowText is the room a range's text needs behind the end of the scale, px at
// 100 % text.
const rowText float32 = 64

// across is the scale: it leaves room for a text behind the highest range.
func (c *RangeRow) across(size fyne.Size) scale {
	at := scale{from: 0, to: 1, start: look.Scaled(6), end: max(size.Width-look.Scaled(rowText), look.Scaled(40))}
	if n := len(c.data.Ticks); n > 1 {
		at.from, at.to = c.data.Ticks[0].At, c.data.Ticks[n-1].At
	}
	return at
}

func (c *RangeRow) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	at := c.across(size)
	if d.Labelled {
		c.pen.ticks(d.Ticks, at, 0, size.Width)
		return
	}
	if len(d.Points) > 0 {
		c.paintPoints(at, size)
		return
	}
	for _, t := range d.Ticks {
		c.pen.rect(at.at(t.At), 0, 1, size.Height, k.Hairline)
	}
	if !d.Ranged {
		return
	}
	high := look.Scaled(14)
	y := px((size.Height - high) / 2)
	x1, x2 := px(at.inside(d.Range.Low)), px(at.inside(d.Range.High))
	if d.Dashed {
		c.pen.rect(x1, y, x2-x1, high, k.area)
		c.pen.dashedBox(x1, y, max(x2-x1-1, 1), high-1, 16, 2)
	} else {
		c.pen.edged(x1, y, max(x2-x1, 2), high, k.area)
	}
	if d.Middled {
		c.pen.dot(at.inside(d.Middle), y+high/2, look.Scaled(6.5), k.Loss, nil)
	}
	width := look.Body.Width(d.Text)
	x := min(x2+look.Scaled(8), size.Width-width)
	c.pen.rect(max(x, 0)-2, (size.Height-look.Body.Height())/2, width+4, look.Body.Height(), k.Sheet) // no tick strikes it through
	c.pen.text(d.Text, max(x, 0), (size.Height-look.Body.Height())/2, width+1, look.Body, k.Ink, left)
}

// paintPoints draws measured points with their names, in the order of the scale
// above and below the line in turn.
func (c *RangeRow) paintPoints(at scale, size fyne.Size) {
	d, k := &c.data, c.pen.ink
	line := px(size.Height / 2)
	c.pen.rect(at.start, line, at.end-at.start, 1, k.Ink3)
	for _, p := range d.Points {
		c.pen.dot(at.inside(p.At), line+0.5, look.Scaled(6.5), k.Sheet, nil)
		c.pen.dot(at.inside(p.At), line+0.5, look.Scaled(5), k.Loss, nil)
	}
	for _, side := range [2]int{0, 1} {
		c.labels = c.labels[:0]
		for i := side; i < len(d.Points); i += 2 {
			c.labels = append(c.labels, label{at: at.inside(d.Points[i].At), width: look.Note.Width(d.Points[i].Name)})
		}
		if !spread(c.labels, 0, size.Width) {
			continue // a name that has no room stands in the list beside
		}
		y := line + look.Scaled(8)
		if side == 1 {
			y = line - look.Scaled(8) - look.Note.Height()
		}
		for j := range c.labels {
			c.pen.text(d.Points[side+2*j].Name, c.labels[j].x, y, c.labels[j].width+1, look.Note, k.Ink2, left)
		}
	}
}
