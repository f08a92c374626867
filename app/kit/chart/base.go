package chart

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/look"
)

// base is what all charts share: a pen, and a drawing that is made from the
// data each time they or the size change.
type base struct {
	widget.BaseWidget
	pen     pen
	draw    func(size fyne.Size)
	least   func() fyne.Size
	summary string
	// drawn is the size that what is shown was drawn at.
	drawn fyne.Size
}

// start readies a chart; self is the widget that holds the base.
func (b *base) start(self fyne.Widget, least func() fyne.Size, draw func(size fyne.Size)) {
	b.draw, b.least = draw, least
	b.pen.ink = newInks(look.PaletteNow())
	b.ExtendBaseWidget(self)
}

// redraw draws the data at the size the chart has.
func (b *base) redraw() {
	if b.Size().Width < 1 || b.Size().Height < 1 {
		return
	}
	b.drawn = b.Size()
	b.pen.begin()
	b.pen.rect(0, 0, 1, 1, b.pen.ink.clear)
	b.draw(b.Size())
	// Asking to refresh one shape is enough for a frame, and costs no texture.
	canvas.Refresh(b.pen.objects[0])
}

// shown draws other data, which is said by a summary.
func (b *base) shown(summary string) {
	b.summary = summary
	b.redraw()
}

// shownHigher is shown for data of which the chart may be higher or lower than before.
func (b *base) shownHigher(summary string, resized bool) {
	b.summary = summary
	if resized {
		b.Refresh()
		return
	}
	b.redraw()
}

// say writes the summary into a chart that has nothing to draw.
func (b *base) say(size fyne.Size) {
	y := (size.Height - look.Note.Height()) / 2
	b.pen.text(b.summary, 0, y, size.Width, look.Note, b.pen.ink.Ink2, centre)
}

// AccessibilityLabel is the chart in words.
func (b *base) AccessibilityLabel() string { return b.summary }

// AccessibilityRole is text.
func (b *base) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// CreateRenderer draws the chart.
func (b *base) CreateRenderer() fyne.WidgetRenderer {
	b.pen.ink = newInks(look.PaletteNow())
	b.redraw()
	return &renderer{b}
}

type renderer struct{ b *base }

// Layout draws where the size is another: the toolkit also lays out what has its size
// when something beside it grew, and a drawing then asks for one more frame.
func (r *renderer) Layout(size fyne.Size) {
	if size != r.b.drawn {
		r.b.redraw()
	}
}

func (r *renderer) MinSize() fyne.Size { return r.b.least() }

// Refresh takes the colours of the theme.
func (r *renderer) Refresh() {
	r.b.pen.ink = newInks(look.PaletteNow())
	r.b.redraw()
}

func (r *renderer) Objects() []fyne.CanvasObject { return r.b.pen.drawn() }

func (r *renderer) Destroy() {}

// Tick is a labelled place on an axis.
type Tick struct {
	At   float64
	Text string
}

// Span is a low and a high end.
type Span struct {
	Low, High float64
}

// Part is a share of a bar in the hue of a substance.
type Part struct {
	Of    look.Substance
	Value float64
}

// scale maps values to px.
type scale struct {
	from, to   float64
	start, end float32
}

// at is the px of a value.
func (s scale) at(x float64) float32 {
	if !(s.to > s.from) && !(s.to < s.from) {
		return s.start
	}
	part := (x - s.from) / (s.to - s.from)
	if !(part > -4) {
		part = -4
	}
	if part > 5 {
		part = 5
	}
	return s.start + float32(part)*(s.end-s.start)
}

// inside is the px of a value, no further than the ends.
func (s scale) inside(x float64) float32 {
	low, high := min(s.start, s.end), max(s.start, s.end)
	return min(max(s.at(x), low), high)
}

// total adds parts up; what is no number or below zero counts as nothing.
func total(parts []Part) float64 {
	var sum float64
	for _, part := range parts {
		sum += length(part.Value)
	}
	return sum
}

// length is a value as the length of a bar.
func length(x float64) float64 {
	if !(x > 0) || x > 1e9 {
		return 0
	}
	return x
}
