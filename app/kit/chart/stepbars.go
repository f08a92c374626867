package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// StepBar is a step with the deficit it ends at.
type StepBar struct {
	// Value is the length of the bar; Figure is it in words: "−2.1".
	Value  float64
	Figure string
	// Name and Note stand below: "step 1", "now".
	Name, Note string
	// Now marks the step in force.
	Now bool
}

// StepBarsData is what a [StepBars] shows.
type StepBarsData struct {
	Bars []StepBar
	// Limit is drawn dashed when LimitText is not empty.
	Limit     float64
	LimitText string
	// Max is the least end of the scale.
	Max     float64
	Summary string
}

// StepBars draws the deficit of the habit, the steps and the aim as bars that
// hang down.
type StepBars struct {
	base
	data StepBarsData
}

// NewStepBars makes an empty picture.
func NewStepBars() *StepBars {
	c := &StepBars{}
	c.start(c, func() fyne.Size { return fyne.NewSize(look.Scaled(200), look.Scaled(180)) }, c.paint)
	return c
}

// Set shows other data. The bars are copied.
func (c *StepBars) Set(d StepBarsData) {
	bars := append(c.data.Bars[:0], d.Bars...)
	c.data = d
	c.data.Bars = bars
	c.summary = d.Summary
	c.redraw()
}

// paint puts the figures over the bars, not on them: a hue is never under text.
func (c *StepBars) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	if len(d.Bars) == 0 {
		c.say(size)
		return
	}
	top := look.Strong.Height() + look.Scaled(4)
	at := scale{from: 0, to: c.end(), start: top, end: size.Height - look.Scaled(14) - look.Body.Height() - look.Note.Pitch()}
	each := size.Width / float32(len(d.Bars))
	width := min(each*0.8, look.Scaled(68))
	for i, b := range d.Bars {
		x := (float32(i) + 0.5) * each
		fill, style := k.rest, look.Body
		if b.Now {
			fill, style = k.Loss, look.Strong
		}
		c.pen.rect(x-width/2, top, width, at.inside(length(b.Value))-top, fill)
		c.pen.text(b.Figure, x-each/2, 0, each, style, k.Ink, centre)
		name := at.end + look.Scaled(12)
		c.pen.text(b.Name, x-each/2+2, name, each-4, style, k.Ink, centre)
		c.pen.text(b.Note, x-each/2+2, name+look.Body.Height(), each-4, look.Note, k.Ink2, centre)
	}
	c.pen.rect(0, top, size.Width, 1.4, k.Ink2)
	if d.LimitText == "" {
		return
	}
	y := px(at.inside(d.Limit))
	c.pen.dashed(0, y+0.5, size.Width, y+0.5, 1, k.Ink)
	c.paintLimitName(each, width, y, at, size)
}

// paintLimitName puts the name of the limit under its line where no bar is in
// the way, else at the right.
func (c *StepBars) paintLimitName(each, width, y float32, at scale, size fyne.Size) {
	d := &c.data
	last := d.Bars[len(d.Bars)-1]
	room := min(look.Note.Width(d.LimitText), size.Width)
	below := y + 2
	if at.inside(length(last.Value)) > below && room > (each-width)/2 {
		below = at.end - look.Note.Height() + look.Scaled(8)
	}
	c.pen.text(d.LimitText, size.Width-room, below, room, look.Note, c.pen.ink.Ink2, right)
}

// end is the end of the scale.
func (c *StepBars) end() float64 {
	end := max(length(c.data.Max), 1e-9)
	for _, b := range c.data.Bars {
		end = max(end, length(b.Value))
	}
	if c.data.LimitText != "" {
		end = max(end, length(c.data.Limit)*1.1)
	}
	return end
}
