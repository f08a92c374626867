package look

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Sizes that do not follow the text size.
const (
	// SheetRadius rounds sheets, ControlRadius inputs and buttons.
	SheetRadius   float32 = 6
	ControlRadius float32 = 4
	// SheetPadX and SheetPadY keep content off the edge of a sheet.
	SheetPadX float32 = 18
	SheetPadY float32 = 16
	// Grid is the unit of spacing.
	Grid float32 = 4
)

// Style is a size and weight of type.
type Style int

// The styles; sizes in px at 100 %.
const (
	// Body is 14 regular.
	Body Style = iota
	// Strong is 14 semibold.
	Strong
	// Note is 12 regular.
	Note
	// NoteStrong is 12 semibold.
	NoteStrong
	// Title is 18 semibold.
	Title
	// Second is 20 semibold: the second figure.
	Second
	// Key is 28 semibold: the figure that answers the question.
	Key
)

// Size returns the text size of a style in the running program.
func (s Style) Size() float32 {
	size := float32(14)
	switch s {
	case Note, NoteStrong:
		size = 12
	case Title:
		size = 18
	case Second:
		size = 20
	case Key:
		size = 28
	}
	return size * Factor()
}

// Text returns the toolkit's name for the weight of a style.
func (s Style) Text() fyne.TextStyle {
	switch s {
	case Body, Note:
		return fyne.TextStyle{}
	}
	return fyne.TextStyle{Bold: true}
}

// Width returns how wide a text is in a style, in px.
func (s Style) Width(text string) float32 {
	size, _ := s.measure(text)
	return size.Width
}

// Height returns the height of one line of a style, in whole px.
func (s Style) Height() float32 { return ceil(s.exact()) }

// exact is the height of one line as the toolkit measures it.
func (s Style) exact() float32 { return s.line().height }

// line is the height of a line of a style and its baseline, px.
type line struct{ height, baseline float32 }

// line is measured once a theme: a quarter of a keystroke in the planner went into
// looking it up among all texts, and the toolkit forgets what it measured a minute ago.
// Another text size is another theme.
func (s Style) line() line {
	t := themeNow()
	if t == nil {
		size, base := s.measure("M")
		return line{size.Height, base}
	}
	if l := t.lines[s].Load(); l != nil {
		return *l
	}
	size, base := s.measure("M")
	l := line{size.Height, base}
	t.lines[s].Store(&l)
	return l
}

// measure is the size of a text as the painters draw it, and its baseline.
func (s Style) measure(text string) (fyne.Size, float32) {
	return fyne.CurrentApp().Driver().RenderedTextSize(text, s.Size(), s.Text(), s.Source(text))
}

// Pitch returns the distance between lines of running text, in whole px.
func (s Style) Pitch() float32 {
	return float32(math.Round(float64(s.Size() * 1.42)))
}

// Baseline returns the distance from the top of a line to its baseline, in
// whole px: that is where the painters set it.
func (s Style) Baseline() float32 {
	return ceil(s.line().baseline)
}

// Write sets all there is to set of a text object: its words in a style and an
// ink, with its upper left corner at a place, aligned within a width. It draws
// nothing anew.
func Write(t *canvas.Text, s Style, ink color.Color, text string, at fyne.Position, width float32) {
	text = s.Shown(text)
	t.Text, t.Color, t.TextSize, t.TextStyle, t.FontSource = text, ink, s.Size(), s.Text(), s.Source(text)
	t.Move(at)
	if t.Alignment == fyne.TextAlignLeading {
		width = min(width, ceil(s.Width(text))) // a painter takes as long as the box of a text is wide
	}
	// not a px higher: the painters would centre the line in what is left
	t.Resize(fyne.NewSize(width, s.exact()))
}

func ceil(x float32) float32 { return float32(math.Ceil(float64(x) - 1e-3)) }

// ControlHeight returns the height of inputs and buttons: 30 px at 100 %,
// growing with the text and never under the 24 px a pointer needs (WCAG 2.2,
// success criterion 2.5.8).
func ControlHeight() float32 {
	return Body.Height() + 11
}

// Scaled returns a length that follows the text size, in whole px.
func Scaled(px float32) float32 {
	return float32(math.Round(float64(px * Factor())))
}
