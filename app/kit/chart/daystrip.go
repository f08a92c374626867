package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// DayCell is one day of a [DayStrip].
type DayCell struct {
	// Top is the date, Big the count, Beside stands small behind it, Note below.
	Top, Big, Beside, Note string
	// Framed is a day on which something is done, in ink; Slim a day of another
	// stop, narrow and on sunk ground.
	Framed, Slim bool
	// Share of the whole course, 0 to 1.
	Share float64
}

// DayStrip is days side by side, in as many lines as they need.
type DayStrip struct {
	base
	days []DayCell
}

// NewDayStrip makes an empty strip.
func NewDayStrip() *DayStrip {
	c := &DayStrip{}
	c.start(c, func() fyne.Size {
		width := c.Size().Width
		if width < 1 {
			width = look.Scaled(600)
		}
		return fyne.NewSize(look.Scaled(140), c.HeightFor(width))
	}, c.paint)
	return c
}

// Set shows other days, which are copied; summary is the strip in words.
func (c *DayStrip) Set(days []DayCell, summary string) {
	c.days = append(c.days[:0], days...)
	c.shown(summary)
}

// The gap between days and the room inside one, px.
const (
	dayGap  float32 = 4
	dayPad  float32 = 8
	dayFoot float32 = 14
)

// cellHigh is the height of a day.
func cellHigh() float32 {
	return 5 + look.Note.Pitch() + look.Strong.Height() + 2 + look.Note.Pitch() + dayFoot
}

// least is the width a day needs.
func (d DayCell) least() float32 {
	width := max(look.Note.Width(d.Top), look.NoteStrong.Width(d.Note), look.Strong.Width(d.Big)) + 2*dayPad
	if d.Beside != "" {
		width = max(width, look.Strong.Width(d.Big)+6+look.Note.Width(d.Beside)+2*dayPad)
	}
	if d.Slim {
		return max(width, look.Scaled(44))
	}
	return max(width, look.Scaled(72))
}

// lines parts the days into lines that fit a width.
func (c *DayStrip) lines(width float32) [][]DayCell {
	var lines [][]DayCell
	var sum float32
	for _, d := range c.days {
		w := d.least()
		if len(lines) == 0 || sum+dayGap+w > width {
			lines, sum = append(lines, nil), -dayGap
		}
		lines[len(lines)-1] = append(lines[len(lines)-1], d)
		sum += dayGap + w
	}
	return lines
}

// HeightFor returns the height at a width.
func (c *DayStrip) HeightFor(width float32) float32 {
	n := float32(len(c.lines(width)))
	return max(n*cellHigh()+(n-1)*dayGap, 0)
}

// mostStretch is how many times its least width a day grows to.
const mostStretch float32 = 1.6

func (c *DayStrip) paint(size fyne.Size) {
	for i, line := range c.lines(size.Width) {
		c.paintLine(line, float32(i)*(cellHigh()+dayGap), size.Width)
	}
}

// paintLine spreads the days of a line over a width; slim ones stay slim.
func (c *DayStrip) paintLine(line []DayCell, y, width float32) {
	room, wide := width+dayGap, float32(0)
	for _, d := range line {
		room -= d.least() + dayGap
		if !d.Slim {
			wide++
		}
	}
	x := float32(0)
	for _, d := range line {
		w := d.least()
		if !d.Slim && wide > 0 {
			w += min(room/wide, w*(mostStretch-1))
		}
		c.paintDay(d, x, y, w)
		x += w + dayGap
	}
}

// paintDay draws one day.
func (c *DayStrip) paintDay(d DayCell, x, y, w float32) {
	k, high := c.pen.ink, cellHigh()
	ground, edge, thick, tone := k.Sheet, k.Hairline, float32(1), k.Ink
	if d.Slim {
		ground, tone = k.Paper, k.Ink2
	}
	if d.Framed {
		edge, thick = k.Ink, 2
	}
	c.pen.round(x, y, w, high, look.ControlRadius, edge)
	c.pen.round(x+thick, y+thick, w-2*thick, high-2*thick, look.ControlRadius-1, ground)
	at, inner := y+5, w-2*dayPad
	c.pen.text(d.Top, x+dayPad, at, inner, look.Note, k.Ink2, left)
	at += look.Note.Pitch()
	c.pen.text(d.Big, x+dayPad, at, inner, look.Strong, tone, left)
	big := look.Strong.Width(d.Big) + 6
	c.pen.text(d.Beside, x+dayPad+big, at+look.Strong.Baseline()-look.Note.Baseline(), max(inner-big, 0), look.Note, k.Ink2, left)
	at += look.Strong.Height() + 2
	style, ink := look.Note, k.Ink2
	if d.Framed {
		style, ink = look.NoteStrong, k.Ink
	}
	c.pen.text(d.Note, x+dayPad, at, inner, style, ink, left)
	bar := y + high - 10
	c.pen.rect(x+dayPad, bar, inner, 4, k.Sunk)
	c.pen.rect(x+dayPad, bar, inner*float32(min(max(d.Share, 0), 1)), 4, k.Ink2)
}
