package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// paintCompact draws two bars: what went out, and below it what came in with what
// was left over behind it.
func (c *InOutBars) paintCompact(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	bar := look.Scaled(28)
	at := c.across(size)
	second := bar + look.Scaled(12)
	in, out := total(d.In), length(d.Out)
	beside := min(length(d.Beside), out)
	sweat := at.at(out - beside)
	c.pen.rect(at.start, 0, sweat-at.start, bar, k.Loss)
	if beside > 0 { // 1 px of sheet keeps the two apart
		c.pen.rect(sweat+1, 0, at.at(out)-sweat-1, bar, k.Salt)
	}
	c.pen.stack(d.In, at, second, bar)
	c.pen.edged(at.at(in), second, max(at.at(out)-at.at(in), 0), bar, k.rest)
	c.pen.rect(at.at(out), second, max(at.at(in)-at.at(out), 0), bar, k.Ink2) // a gain, as a warning is drawn
	c.compactNames(at, second, bar)
	end := at.end + look.Scaled(12)
	c.beside(d.OutWords, end, 0, bar, size)
	c.beside(d.LeftWords, end, second, bar, size)
	c.compactLimit(at, second, bar, size)
}

// compactNames are the names before the bars, and of what was left over in it
// where there is room.
func (c *InOutBars) compactNames(at scale, second, bar float32) {
	d, k := &c.data, c.pen.ink
	names := at.start - look.Scaled(12)
	c.pen.text(d.OutWords.Name, 0, (bar-look.Body.Height())/2, names, look.Body, k.Ink, right)
	c.pen.text(d.InWords.Name, 0, second+(bar-look.Body.Height())/2, names, look.Body, k.Ink, right)
	x, room := at.at(total(d.In)), at.at(length(d.Out))-at.at(total(d.In))
	if d.LimitText != "" {
		if limit := at.inside(c.limitAt()); limit < x+room {
			room = max(limit-x, 0)
		}
	}
	text := d.LeftWords.Name
	if look.Note.Width(text)+8 > room {
		text = ""
	}
	c.pen.text(text, x+4, second+(bar-look.Note.Height())/2, max(room-8, 0), look.Note, k.Ink, centre)
}

// compactLimit draws the limit through the lower bar; its name, and how much came
// in, stand below and leave each other room.
func (c *InOutBars) compactLimit(at scale, second, bar float32, size fyne.Size) {
	d, k := &c.data, c.pen.ink
	y := second + bar + look.Scaled(5)
	taken := look.Note.Width(d.InWords.Note)
	c.pen.text(d.InWords.Note, at.start, y, taken, look.Note, k.Ink2, left)
	if d.LimitText == "" {
		return
	}
	x := px(at.inside(c.limitAt()))
	c.pen.dashed(x+0.5, second-4, x+0.5, second+bar+4, 2, k.Ink)
	w := look.Note.Width(d.LimitText)
	from := min(max(x-w/2, at.start+taken+look.Scaled(12)), max(size.Width-w, 0))
	c.pen.text(d.LimitText, from, y, w, look.Note, k.Ink2, left)
}

// beside are the two lines at the right of a bar.
func (c *InOutBars) beside(w Wording, x, y, bar float32, size fyne.Size) {
	k := c.pen.ink
	top := y + (bar-look.Strong.Height()-look.Note.Height())/2
	c.pen.text(w.Title, x, top, size.Width-x, look.Strong, k.Ink, left)
	c.pen.text(w.Note, x, top+look.Strong.Height(), size.Width-x, look.Note, k.Ink2, left)
}
