package chart

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// IntakeCardData is what a [IntakeCard] shows.
type IntakeCardData struct {
	// Name and Note head the card: "Step 1", "now, since 18 May".
	Name, Note string
	// Drink is what is drunk, L, and Fuel the carbohydrate, g/h, both by source;
	// the maxima are the ends of the two scales, the same on all cards.
	Drink, Fuel       []Part
	DrinkMax, FuelMax float64
	// DrinkText and FuelText are the two sums in words.
	DrinkText, FuelText string
	// Advice is the carbohydrate advised, drawn where Advised.
	Advice  Span
	Advised bool
	// Foot is the deficit, Change what is different from the card before;
	// ChangeShort is it for a narrow card.
	Foot, Change, ChangeShort string
	Summary                   string
}

// IntakeCard draws what is drunk and what carbohydrate is taken on a step, as two
// bars.
type IntakeCard struct {
	base
	data IntakeCardData
}

// NewIntakeCard makes an empty card.
func NewIntakeCard() *IntakeCard {
	c := &IntakeCard{}
	c.start(c, func() fyne.Size {
		return fyne.NewSize(look.Scaled(170), look.Strong.Height()+2*intakeRow()+look.Note.Height()+look.Scaled(8))
	}, c.paint)
	return c
}

// intakeRow is the height of a bar with its room.
func intakeRow() float32 { return look.Scaled(28) }

// Set shows other data. The parts are copied.
func (c *IntakeCard) Set(d IntakeCardData) {
	drink, fuel := append(c.data.Drink[:0], d.Drink...), append(c.data.Fuel[:0], d.Fuel...)
	c.data = d
	c.data.Drink, c.data.Fuel = drink, fuel
	c.shown(d.Summary)
}

func (c *IntakeCard) paint(size fyne.Size) {
	d, k := &c.data, c.pen.ink
	c.pair(d.Name, d.Note, "", look.Strong, 0, size.Width)
	y := look.Strong.Height() + look.Scaled(4)
	bar := scale{from: 0, start: 0, end: size.Width - max(look.Strong.Width(d.DrinkText), look.Strong.Width(d.FuelText)) - look.Scaled(12)}
	bar.to = max(length(d.DrinkMax), total(d.Drink), 1e-9)
	c.ground(bar, y)
	c.row(d.Drink, d.DrinkText, bar, y, size.Width)
	y += intakeRow()
	bar.to = max(length(d.FuelMax), total(d.Fuel), 1e-9)
	c.ground(bar, y)
	if d.Advised {
		low, high := px(bar.inside(d.Advice.Low)), px(bar.inside(d.Advice.High))
		thick := look.Scaled(22)
		up := y + (intakeRow()-thick)/2
		c.pen.edged(low, up, max(high-low, 2), thick, k.band)
	}
	c.row(d.Fuel, d.FuelText, bar, y, size.Width)
	c.pair(d.Foot, d.Change, d.ChangeShort, look.Note, y+intakeRow()+look.Scaled(4), size.Width)
}

// ground is what a bar lies on, over the whole scale, with an edge that can be told
// from the sheet.
func (c *IntakeCard) ground(at scale, y float32) {
	thick := look.Scaled(14)
	c.pen.edged(at.start, y+(intakeRow()-thick)/2, at.end-at.start, thick, c.pen.ink.Sheet)
}

// row draws one bar, with its sum at the right.
func (c *IntakeCard) row(parts []Part, text string, at scale, y, width float32) {
	thick := look.Scaled(14)
	top := y + (intakeRow()-thick)/2
	between := float32(0) // of sheet, to keep bar and band apart
	if total(parts) > 0 {
		between = at.at(total(parts)) + 1 - at.start
	}
	c.pen.rect(at.start, top-1, between, thick+2, c.pen.ink.Sheet)
	c.pen.stack(parts, at, top, thick)
	c.pen.text(text, at.end, y+(intakeRow()-look.Strong.Height())/2, width-at.end, look.Strong, c.pen.ink.Ink, right)
}

// pair are two texts at the ends of a line; the second is shortened to other, or
// left out, where both have no room.
func (c *IntakeCard) pair(first, second, other string, style look.Style, y, width float32) {
	own := style.Width(first)
	rest := width - own - look.Scaled(10)
	if look.Note.Width(second) > rest {
		second = other
	}
	if look.Note.Width(second) > rest {
		second = ""
	}
	c.pen.text(first, 0, y, min(own+1, width), style, c.pen.ink.Ink, left)
	c.pen.text(second, width-max(rest, 0), y+style.Baseline()-look.Note.Baseline(), max(rest, 0), look.Note, c.pen.ink.Ink2, right)
}
