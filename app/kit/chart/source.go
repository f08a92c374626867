package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// SourceData is what a [SourceBar] shows.
type SourceData struct {
	// Name and Figure stand above the bar: "Carbohydrate", "25 g/h".
	Name, Figure string
	Parts        []Part
	// Band is the advice, Limit a hard limit, Habit the habit; each is drawn
	// when its flag is set.
	Band    Span
	Banded  bool
	Limit   float64
	Limited bool
	Habit   float64
	Marked  bool
	// Max is the end of the scale; what goes beyond is drawn to the end.
	Max float64
	// Notes are the two lines below; Brief shows the first alone, or Short where it has
	// no room, and a low bar, Bare the bar alone, Line name and figure alone.
	Notes [2]string
	Short string
	Brief bool
	Bare  bool
	Line  bool
	// Summary says the bar in words, when it is asked for.
	Summary func() string
}

// SourceBar draws an amount by substance against its advice.
type SourceBar struct {
	base
	data SourceData
}

// NewSourceBar makes an empty bar.
func NewSourceBar() *SourceBar {
	c := &SourceBar{}
	c.start(c, func() fyne.Size {
		switch {
		case c.data.Bare:
			return fyne.NewSize(look.Scaled(120), barHigh)
		case c.data.Line:
			return fyne.NewSize(look.Scaled(120), look.Strong.Height())
		case c.data.Brief:
			return fyne.NewSize(look.Scaled(120), BriefHeight())
		}
		return fyne.NewSize(look.Scaled(140), look.Second.Height()+look.Scaled(38)+2*look.Note.Pitch())
	}, c.paint)
	return c
}

// BriefHeight is the height of a brief bar with its line of words.
func BriefHeight() float32 { return look.Strong.Height() + briefHigh + look.Note.Pitch() }

// Set shows other data. The parts are copied.
func (c *SourceBar) Set(d SourceData) {
	parts := append(c.data.Parts[:0], d.Parts...)
	c.data = d
	c.data.Parts = parts
	c.redraw()
}

// AccessibilityLabel is the bar in words.
func (c *SourceBar) AccessibilityLabel() string {
	if c.data.Summary == nil {
		return ""
	}
	return c.data.Summary()
}

// briefHigh is the height of a low bar with its marks, px.
const briefHigh float32 = 21

func (c *SourceBar) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	switch {
	case d.Bare:
		c.paintBar(8, 12, 4, size)
		return
	case d.Brief:
		figure, low := look.Strong.Width(d.Figure), look.Strong.Height()+briefHigh
		drop := float32(0)
		if d.Line {
			drop = look.Strong.Baseline() - look.Note.Baseline()
		}
		c.pen.text(d.Name, 0, drop, size.Width-figure-8, look.Note, k.Ink, left)
		c.pen.text(d.Figure, size.Width-figure, 0, figure, look.Strong, k.Ink, right)
		if d.Line {
			return
		}
		c.paintBar(look.Strong.Height()+4, 7, 3, size)
		note := d.Notes[0]
		for _, less := range []string{d.Short, ""} { // whole or not at all: the why says it too
			if look.Note.Width(note) > size.Width {
				note = less
			}
		}
		c.pen.text(note, 0, low, size.Width, look.Note, k.Ink2, left)
		return
	}
	const thick, over = 12, 8
	figure := look.Second.Width(d.Figure)
	drop := look.Second.Baseline() - look.Strong.Baseline()
	c.pen.text(d.Name, 0, drop, size.Width-figure-8, look.Strong, k.Ink, left)
	c.pen.text(d.Figure, size.Width-figure, 0, figure, look.Second, k.Ink, right)

	y := look.Second.Height() + look.Scaled(12)
	c.paintBar(y, thick, over, size)
	y += thick + over + look.Scaled(6)
	for i, note := range d.Notes {
		c.pen.text(note, 0, y+float32(i)*look.Note.Pitch(), size.Width, look.Note, k.Ink2, left)
	}
}

// paintBar draws the bar with its marks, which stand over by so many px.
func (c *SourceBar) paintBar(y, thick, over float32, size fyne.Size) {
	d, k := &c.data, c.pen.ink
	at := scale{from: 0, to: max(length(d.Max), 1e-9), start: 0, end: size.Width}
	c.pen.edged(0, y, size.Width, thick, k.Sheet)
	if d.Banded {
		low, high := at.inside(d.Band.Low), at.inside(d.Band.High)
		c.pen.edged(low, y-over, max(high-low, 2), thick+2*over, k.band)
	}
	c.pen.stack(d.Parts, at, y, thick)
	if d.Limited {
		c.pen.rect(at.inside(d.Limit)-1, y-over, 2, thick+2*over, k.Ink)
	}
	if d.Marked {
		c.pen.habit(at.inside(d.Habit), y+thick+over)
	}
}

// stack draws parts of a level bar one after the other from zero, within an edge so
// that each can be told from what lies under the bar, with a thin line of the sheet
// between them.
func (p *pen) stack(parts []Part, at scale, y, thick float32) {
	end := px(at.inside(total(parts)))
	p.rect(at.start, y, end-at.start, thick, p.ink.Ink3)
	from := 0.0
	for i, part := range parts {
		to := from + length(part.Value)
		x1, x2 := px(at.inside(from)), px(at.inside(to))
		if x2 >= end && x2 > x1 {
			x2-- // the edge closes the bar
		}
		if x1 <= at.start && x2 > x1 {
			x1++
		}
		p.rect(x1, y+1, x2-x1, thick-2, p.ink.hue(part.Of, false))
		between := float32(0)
		if i > 0 && x2 > x1+1 && from > 0 {
			between = 1
		}
		p.rect(x1, y+1, between, thick-2, p.ink.Sheet)
		from = to
	}
}
