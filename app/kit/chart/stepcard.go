package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// StepCardData is what a [StepCard] shows.
type StepCardData struct {
	// Note stands at the right of the head, where the name, which is set over the
	// card at the left, leaves room.
	Name, Note string
	// Figure is the deficit at the end, Second the carbohydrate; their notes say so
	// where there is room.
	Figure, Second         string
	FigureNote, SecondNote string
	Parts                  []Part
	// Max is the end of the bar, the same for all cards of a row.
	Max float64
	// Amount is what is drunk and eaten, Drunk the drinks alone, in place of it where
	// room is short; Change how that differs from the step before.
	Amount, Drunk, Change string
	// Chosen frames the card in ink.
	Chosen  bool
	Summary string
}

// StepCard is a step as a card: its figures, a bar of what is taken, and what
// changes. The name is set over it.
type StepCard struct {
	base
	data StepCardData
	// line: all of it stands in one line, without the bar.
	line bool
	// OnTapped is told a click.
	OnTapped func()
}

var _ fyne.Tappable = (*StepCard)(nil)

// CardPad is the room within a card, px.
const CardPad float32 = 12

// NewStepCard makes an empty card.
func NewStepCard() *StepCard {
	c := &StepCard{}
	c.start(c, func() fyne.Size { return fyne.NewSize(look.Scaled(150), StepCardHeight(c.line)) }, c.paint)
	return c
}

// StepCardHeight is how high a card is, in px: whole, or in one line.
func StepCardHeight(line bool) float32 {
	if line {
		return 2*CardPad - 6 + look.Strong.Height()
	}
	return 2*CardPad - 6 + 2*look.Strong.Height() + look.Scaled(16) + look.Note.Height() + 4
}

// InOneLine sets the card in one line, where room is short, or whole again.
func (c *StepCard) InOneLine(on bool) {
	if c.line != on {
		c.line = on
		c.redraw()
	}
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
	c.shown(d.Summary)
}

func (c *StepCard) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	frame, thick := k.Hairline, float32(1)
	if d.Chosen {
		frame, thick = k.Ink, 2
	}
	c.pen.board(size, look.SheetRadius, thick, frame, k.Sheet)
	wide, y := size.Width-2*CardPad, CardPad-3
	if c.line {
		c.inLine(y, wide)
		return
	}
	note := d.Note
	if look.Note.Width(note)+look.Strong.Width(d.Name)+16 > wide {
		note = ""
	}
	c.pen.text(note, CardPad, y+look.Strong.Baseline()-look.Note.Baseline(), wide, look.Note, k.Ink2, right)
	y += look.Strong.Height() + 2
	c.figures(y, wide)
	y += look.Strong.Height() + look.Scaled(3)
	bar := look.Scaled(8)
	c.pen.edged(CardPad, y, wide, bar, k.Sheet)
	c.pen.stack(d.Parts, scale{from: 0, to: max(d.Max, 1e-9), start: CardPad, end: CardPad + wide}, y, bar)
	y += bar + look.Scaled(4)
	amount, change := d.Amount, d.Change
	if look.Note.Width(amount)+look.Note.Width(change)+8 > wide {
		amount = d.Drunk
	}
	if look.Note.Width(amount)+look.Note.Width(change)+8 > wide {
		change = ""
	}
	c.pen.text(amount, CardPad, y, wide, look.Note, k.Ink, left)
	c.pen.text(change, CardPad, y, wide, look.Note, k.Ink2, right)
}

// inLine writes the two figures and what is taken behind the name, as many of them as
// have room: the deficit goes last.
func (c *StepCard) inLine(y, wide float32) {
	d, k := &c.data, c.pen.ink
	gap := look.Scaled(14)
	room := wide - look.Strong.Width(d.Name) - gap
	first, second := look.Strong.Width(d.Figure), look.Strong.Width(d.Second)+gap
	amount := d.Amount
	if first+second+gap+look.Note.Width(amount) > room {
		amount = d.Drunk
	}
	third := look.Note.Width(amount) + gap
	if first+second+third > room {
		amount, third = "", 0
	}
	right, carbohydrate, deficit := CardPad+wide, d.Second, d.Figure
	if first+second > room {
		carbohydrate, second = "", 0
	}
	if first > room {
		deficit = ""
	}
	c.pen.text(amount, right-max(third-gap, 0), y+look.Strong.Baseline()-look.Note.Baseline(), max(third-gap, 0), look.Note, k.Ink, left)
	c.pen.text(carbohydrate, right-third-max(second-gap, 0), y, max(second-gap, 0), look.Strong, k.Ink, left)
	c.pen.text(deficit, right-third-second-first, y, first, look.Strong, k.Ink, left)
}

// figures writes the two figures, each with its note where both have room.
func (c *StepCard) figures(y, wide float32) {
	d, k := &c.data, c.pen.ink
	const gap = 5
	first := min(look.Strong.Width(d.Figure), wide)
	second := min(look.Strong.Width(d.Second), max(wide-first-gap, 0))
	note, other := look.Note.Width(d.FigureNote)+gap, look.Note.Width(d.SecondNote)+gap
	if first+second+note+other+12 > wide {
		note, other = 0, 0
	}
	drop := look.Strong.Baseline() - look.Note.Baseline()
	words := func(s string, x, w float32) {
		if w <= 0 {
			s = ""
		}
		c.pen.text(s, x, y+drop, max(w, 0), look.Note, k.Ink2, left)
	}
	c.pen.text(d.Figure, CardPad, y, first, look.Strong, k.Ink, left)
	words(d.FigureNote, CardPad+first+gap, note-gap)
	figure := d.Second
	if second <= 0 {
		figure = ""
	}
	c.pen.text(figure, CardPad+wide-second-other, y, second, look.Strong, k.Ink, left)
	words(d.SecondNote, CardPad+wide-other+gap, other-gap)
}
