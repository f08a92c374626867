package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// StepCardData is what a [StepCard] shows.
type StepCardData struct {
	// Note stands at the right of the head; the name has its room at the left.
	Note string
	// Figure is the deficit at the end, Second the carbohydrate.
	Figure, Second string
	Parts          []Part
	// Max is the end of the bar, the same for all cards of a row.
	Max float64
	// Amount is what is drunk in all, Change how that differs from the step
	// before.
	Amount, Change string
	// Chosen frames the card in ink.
	Chosen  bool
	Summary string
}

// StepCard is a step as a card: its figures, a bar of what is taken, and what
// changes. The name is set over it.
type StepCard struct {
	base
	data StepCardData
	// OnTapped is told a click.
	OnTapped func()
}

var _ fyne.Tappable = (*StepCard)(nil)

// CardPad is the room within a card, px.
const CardPad float32 = 12

// NewStepCard makes an empty card.
func NewStepCard() *StepCard {
	c := &StepCard{}
	c.start(c, func() fyne.Size {
		return fyne.NewSize(look.Scaled(150), 2*CardPad-6+2*look.Strong.Height()+look.Scaled(16)+look.Note.Height()+4)
	}, c.paint)
	return c
}

// Tapped tells the click.
func (c *StepCard) Tapped(*fyne.PointEvent) {
	if c.OnTapped != nil {
		c.OnTapped()
	}
}

// Set shows other data. The parts are copied.
func (c *StepCard) Set(d StepCardData) {
	parts := append(c.data.Parts[:0], d.Parts...)
	c.data = d
	c.data.Parts = parts
	c.summary = d.Summary
	c.redraw()
}

func (c *StepCard) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	frame, thick := k.Hairline, float32(1)
	if d.Chosen {
		frame, thick = k.Ink, 2
	}
	c.pen.round(0, 0, size.Width, size.Height, look.SheetRadius, frame)
	c.pen.round(thick, thick, size.Width-2*thick, size.Height-2*thick, look.SheetRadius-thick, k.Sheet)
	wide, y := size.Width-2*CardPad, CardPad-3
	c.pen.text(d.Note, CardPad+wide*0.4, y+look.Strong.Baseline()-look.Note.Baseline(), wide*0.6, look.Note, k.Ink2, right)
	y += look.Strong.Height() + 2
	second := look.Strong.Width(d.Second)
	c.pen.text(d.Figure, CardPad, y, wide-second-8, look.Strong, k.Ink, left)
	c.pen.text(d.Second, CardPad+wide-second, y, second, look.Strong, k.Ink, right)
	y += look.Strong.Height() + look.Scaled(3)
	bar := look.Scaled(8)
	c.pen.rect(CardPad, y, wide, bar, k.Sunk)
	c.pen.stack(d.Parts, scale{from: 0, to: max(d.Max, 1e-9), start: CardPad, end: CardPad + wide}, y, bar)
	y += bar + look.Scaled(4)
	change := look.Note.Width(d.Change)
	c.pen.text(d.Amount, CardPad, y, max(wide-change-8, 0), look.Note, k.Ink, left)
	c.pen.text(d.Change, CardPad+wide-min(change, wide), y, min(change, wide), look.Note, k.Ink2, right)
}
