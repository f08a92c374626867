package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// RangeBarData is what a [RangeBar] shows.
type RangeBarData struct {
	// At is the value, Range its range; both from nothing at the left to Max.
	At, Max float64
	Range   Span
	// Habit is marked below, Limit with a dashed line when Limited.
	Habit, Limit float64
	Limited      bool
	// Estimate outlines the range dashed.
	Estimate bool
	Summary  string
}

// RangeBar draws a value with its range on one level bar.
type RangeBar struct {
	base
	data RangeBarData
}

// NewRangeBar makes an empty bar.
func NewRangeBar() *RangeBar {
	c := &RangeBar{}
	c.start(c, func() fyne.Size { return fyne.NewSize(look.Scaled(120), barHigh) }, c.paint)
	return c
}

// barHigh is the height of a bar with its marks, px.
const barHigh float32 = 32

// Set shows other data.
func (c *RangeBar) Set(d RangeBarData) {
	c.data = d
	c.shown(d.Summary)
}

func (c *RangeBar) paint(size fyne.Size) {
	const y, thick, over = 8, 12, 4
	d, k := &c.data, c.pen.ink
	at := scale{from: 0, to: max(d.Max, 1e-9), start: 0, end: size.Width}
	c.pen.edged(0, y, size.Width, thick, k.Sheet)
	x1, x2 := px(at.inside(d.Range.Low)), px(at.inside(d.Range.High))
	if d.Estimate {
		c.pen.rect(x1, y, x2-x1, thick, k.rest)
		c.pen.dashedBox(x1, y, max(x2-x1, 1), thick, 12, 3)
	} else {
		c.pen.rect(x1, y, x2-x1, thick, k.Loss)
		c.pen.rect(x1+1, y+1, x2-x1-2, thick-2, k.rest)
	}
	if d.Limited {
		c.pen.dashed(at.inside(d.Limit), y-over, at.inside(d.Limit), y+thick+over, 2, k.Ink)
	}
	dot := min(max(at.inside(d.At), 8), size.Width-8)
	c.pen.dot(dot, y+thick/2, 8, k.Sheet, nil)
	c.pen.dot(dot, y+thick/2, 6, k.Loss, nil)
	c.pen.habit(min(max(at.inside(d.Habit), 5), size.Width-5), y+thick+3)
}
