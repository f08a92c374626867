package chart

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/look"
)

// The places of a text in its width.
const (
	left   = fyne.TextAlignLeading
	centre = fyne.TextAlignCenter
	right  = fyne.TextAlignTrailing
)

// shortKey names a text that was shortened.
type shortKey struct {
	text  string
	style look.Style
	width float32
}

// text draws one line in a width, shortened with an ellipsis where it must be.
// y is the top of the line.
func (p *pen) text(s string, x, y, width float32, style look.Style, c color.Color, align fyne.TextAlign) {
	o, ok := p.slot().(*canvas.Text)
	if !ok {
		o = canvas.NewText("", c)
		p.put(o)
	}
	p.next++
	s = p.fit(style.Shown(s), style, width)
	size, weight := style.Size(), style.Text()
	changed := o.Text != s || o.Color != c || o.TextSize != size || o.TextStyle != weight
	// A painter takes as long as the box of a text is wide: it is no wider than the text.
	own := min(ceil(style.Width(s)), px(width))
	switch align {
	case right:
		x = px(x) + px(width) - own
	case centre:
		x = px(px(x) + (px(width)-own)/2)
	default:
		x = px(x)
	}
	o.Text, o.Color, o.TextSize, o.TextStyle, o.Alignment, o.FontSource = s, c, size, weight, align, style.Source(s)
	o.Move(fyne.NewPos(x, px(y)))
	o.Resize(fyne.NewSize(own, style.Height()))
	if changed {
		canvas.Refresh(o)
	}
}

// fit shortens a text to a width. What was shortened once is remembered: a
// chart that is redrawn while a slider moves has the same long names each time.
func (p *pen) fit(s string, style look.Style, width float32) string {
	if s == "" || style.Width(s) <= width+0.5 {
		return s
	}
	key := shortKey{s, style, width}
	if short, ok := p.short[key]; ok {
		return short
	}
	if p.short == nil || len(p.short) > 200 {
		p.short = map[shortKey]string{}
	}
	short := ""
	if width > style.Width("…") {
		short = look.Ellipsis(s, style, width)
	}
	p.short[key] = short
	return short
}

// ticks labels an axis. A label that would touch the one before it or the last is
// left out; the ends stay inside the width.
func (p *pen) ticks(list []Tick, at scale, y, width float32) {
	place := func(t Tick) (x, w float32) {
		w = look.Note.Width(t.Text)
		return min(max(at.at(t.At)-w/2, 0), width-w), w
	}
	end, last := float32(-labelGap), width
	if n := len(list); n > 2 {
		last, _ = place(list[n-1])
	}
	for i, t := range list {
		x, w := place(t)
		text := t.Text
		if x < end+labelGap || i > 0 && i < len(list)-1 && x+w+labelGap > last {
			text = ""
		} else {
			end = x + w
		}
		p.text(text, x, y, w, look.Note, p.ink.Ink2, left)
	}
}

// widest is the greatest width among texts.
func widest(style look.Style, texts ...string) float32 {
	var w float32
	for _, s := range texts {
		w = max(w, style.Width(s))
	}
	return w
}

// wrapped is a text broken into lines of a width, kept until either changes.
type wrapped struct {
	text  string
	width float32
	kept  []string
}

// lines breaks the text, or gives the lines there are.
func (w *wrapped) lines(text string, width float32) []string {
	if w.text != text || w.width != width {
		w.text, w.width, w.kept = text, width, nil
		if text != "" && width > 0 {
			w.kept = look.Wrap(text, look.Note, width)
		}
	}
	return w.kept
}
