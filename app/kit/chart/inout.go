package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// Wording is a bar's name at the left and the two lines at its right.
type Wording struct {
	Name, Title, Note string
}

// InOutData is what an [InOutBars] shows, all in litres.
type InOutData struct {
	// Out is all that left the body, In what was drunk and eaten by substance.
	Out float64
	In  []Part
	// Beside is the part of Out that was no sweat: a thin end of the bar.
	Beside float64
	// Estimate is what the athlete thought, when EstimateText is not empty.
	Estimate     float64
	EstimateText string
	// Limit is the deficit not to pass, when LimitText is not empty.
	Limit     float64
	LimitText string
	// OutWords, InWords and LeftWords stand beside the bars.
	OutWords, InWords, LeftWords Wording
	// Compact draws what was left over behind what came in, on one line:
	// LeftWords.Name stands in it, InWords.Note below what came in, LeftWords.Title
	// and Note at the right.
	Compact bool
	Summary string
}

// InOutBars draws what went out, what came in and what was left over.
type InOutBars struct {
	base
	data InOutData
}

// NewInOutBars makes an empty picture.
func NewInOutBars() *InOutBars {
	c := &InOutBars{}
	c.start(c, c.room, c.paint)
	return c
}

// room is the least room of the picture.
func (c *InOutBars) room() fyne.Size {
	if c.data.Compact {
		return fyne.NewSize(look.Scaled(300), 2*look.Scaled(28)+look.Scaled(20)+look.Note.Pitch())
	}
	return fyne.NewSize(look.Scaled(420), look.Scaled(216))
}

// Set shows other data. The parts are copied.
func (c *InOutBars) Set(d InOutData) {
	in := append(c.data.In[:0], d.In...)
	c.data = d
	c.data.In = in
	c.shown(d.Summary)
}

func (c *InOutBars) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	if length(d.Out) == 0 && total(d.In) == 0 {
		c.say(size)
		return
	}
	if d.Compact {
		c.paintCompact(size)
		return
	}
	bar := look.Scaled(32)
	step := min((size.Height-bar-look.Scaled(22))/2, look.Scaled(76))
	at := c.across(size)
	in, out := total(d.In), length(d.Out)
	rows := [3]float32{0, px(step), px(2 * step)}

	beside := min(length(d.Beside), out)
	sweat := at.at(out - beside)
	c.pen.rect(at.start, rows[0], sweat-at.start, bar, k.Loss)
	if beside > 0 { // 1 px of sheet keeps the two apart
		c.pen.rect(sweat+1, rows[0], at.at(out)-sweat-1, bar, k.Salt)
	}
	c.paintEstimate(at, bar, size)
	c.pen.stack(d.In, at, rows[1], bar)
	c.pen.edged(at.at(in), rows[2], max(at.at(out)-at.at(in), 0), bar, k.rest)
	// A gain is no substance that was lost: it is ink, as a warning is.
	c.pen.rect(at.at(out), rows[2], max(at.at(in)-at.at(out), 0), bar, k.Ink2)
	c.paintLeads(at, rows, bar)
	c.paintLimit(at, rows[2], bar, size)
	for i, w := range [3]Wording{d.OutWords, d.InWords, d.LeftWords} {
		x := at.at(out)
		if i == 1 || i == 2 && in > out {
			x = at.at(in)
		}
		if i == 2 && d.LimitText != "" { // the limit does not go through the words
			x = max(x, px(at.inside(c.limitAt())))
		}
		c.words(w, at, max(x, at.start), rows[i], bar, size)
	}
}

// paintLeads draws hairlines from the ends of both bars down to what is left
// over. They leave out the height of a text that lies in their way.
func (c *InOutBars) paintLeads(at scale, rows [3]float32, bar float32) {
	d, k := &c.data, c.pen.ink
	in, out := at.at(total(d.In)), at.at(length(d.Out))
	c.pen.rect(in, rows[1]+bar, 1, rows[2]-rows[1]-bar, k.Hairline)
	from := bar
	if d.EstimateText != "" && at.inside(d.Estimate)+look.Scaled(12)+look.Note.Width(d.EstimateText) > out {
		from = rows[1]
	}
	words := in + look.Scaled(18) + max(look.Strong.Width(d.InWords.Title), look.Note.Width(d.InWords.Note))
	c.pen.rect(out, from, 1, rows[1]-from, k.Hairline)
	if words > out {
		c.pen.rect(out, rows[1]+bar, 1, rows[2]-rows[1]-bar, k.Hairline)
	} else {
		c.pen.rect(out, rows[1], 1, rows[2]-rows[1], k.Hairline)
	}
}

// across leaves room for the names at the left and the words at the right.
func (c *InOutBars) across(size fyne.Size) scale {
	d := &c.data
	names := widest(look.Body, d.OutWords.Name, d.InWords.Name)
	if !d.Compact {
		names = max(names, look.Body.Width(d.LeftWords.Name))
	}
	words := max(look.Strong.Width(d.OutWords.Title), look.Strong.Width(d.LeftWords.Title), look.Note.Width(d.OutWords.Note), look.Note.Width(d.LeftWords.Note))
	start := min(names, size.Width*0.2) + look.Scaled(12)
	words = min(words, size.Width*0.36) + look.Scaled(12)
	return scale{from: 0, to: max(length(d.Out), total(d.In), c.limitAt(), 1e-9), start: px(start), end: px(size.Width - words)}
}

// limitAt is where the limit of the deficit lies on the scale of the bars.
func (c *InOutBars) limitAt() float64 {
	if c.data.LimitText == "" {
		return 0
	}
	return total(c.data.In) + length(c.data.Limit)
}

// paintEstimate marks what the athlete thought under the upper bar.
func (c *InOutBars) paintEstimate(at scale, bar float32, size fyne.Size) {
	d := &c.data
	if d.EstimateText == "" {
		return
	}
	x := at.inside(d.Estimate)
	c.pen.rect(x-1, bar+2, 2, look.Scaled(20), c.pen.ink.Ink2)
	y := bar + look.Scaled(12)
	text := look.Note.Width(d.EstimateText)
	if x+8+text <= at.at(length(d.Out)) || x-at.start < text+8 {
		c.pen.text(d.EstimateText, x+8, y-2, size.Width-x-8, look.Note, c.pen.ink.Ink2, left)
		return
	}
	c.pen.text(d.EstimateText, at.start, y-2, x-8-at.start, look.Note, c.pen.ink.Ink2, right)
}

// paintLimit draws the limit through the lowest bar and names it below.
func (c *InOutBars) paintLimit(at scale, y, bar float32, size fyne.Size) {
	d := &c.data
	if d.LimitText == "" {
		return
	}
	x := px(at.inside(c.limitAt()))
	c.pen.dashed(x+0.5, y-5, x+0.5, y+bar+5, 1, c.pen.ink.Ink)
	w := look.Note.Width(d.LimitText)
	text := min(max(x-w/2, 0), size.Width-w)
	c.pen.text(d.LimitText, text, y+bar+6, w, look.Note, c.pen.ink.Ink2, left)
}

// words are a bar's name before it and its two lines behind it.
func (c *InOutBars) words(w Wording, at scale, x, y, bar float32, size fyne.Size) {
	k := c.pen.ink
	c.pen.text(w.Name, 0, y+(bar-look.Body.Height())/2, at.start-look.Scaled(12), look.Body, k.Ink, right)
	x += look.Scaled(12)
	two := look.Strong.Height() + look.Note.Height()
	top := y + (bar-two)/2
	c.pen.text(w.Title, x, top, size.Width-x, look.Strong, k.Ink, left)
	c.pen.text(w.Note, x, top+look.Strong.Height(), size.Width-x, look.Note, k.Ink2, left)
}
